package bind

import (
	"ebbwell/app/kit/field"
	"ebbwell/internal/record"
)

// Text is a place for text in a record.
type Text[R any] func(r *R) *string

// Line binds a line of text, up to most runes long.
func (b *Binder[R]) Line(group, name string, most int, at Text[R]) *field.Line {
	l := field.NewLine(b.Desk.Host, name, most)
	var v visit
	l.OnChanged = func(text string) { b.typed(&v, name, func(s *Sheet[R]) { *at(&s.Record) = text }) }
	l.OnLeft = func(string) { b.left(&v) }
	b.add(&Bound[R]{Name: name, Group: group, Field: l, show: func(s Sheet[R]) { l.SetText(*at(&s.Record)) }})
	return l
}

// Notes binds text of many lines.
func (b *Binder[R]) Notes(group, name string, rows int, at Text[R]) *field.Notes {
	n := field.NewNotes(b.Desk.Host, name, rows)
	var v visit
	n.OnChanged = func(text string) { b.typed(&v, name, func(s *Sheet[R]) { *at(&s.Record) = text }) }
	n.OnLeft = func(string) { b.left(&v) }
	b.add(&Bound[R]{Name: name, Group: group, Field: notes{n}, show: func(s Sheet[R]) { n.SetText(*at(&s.Record)) }})
	return n
}

// notes has no keyboard of its own to ask for; its entry has.
type notes struct{ *field.Notes }

// Focus is left to the entry inside.
func (notes) Focus() {}

// DateAt is a place for a day in a record, with its path.
type DateAt[R any] func(r *R) (d *record.Date, path string)

// Date binds a day. One that cannot be read is kept as it was typed.
func (b *Binder[R]) Date(group, name string, side field.Side, at DateAt[R]) *field.Date {
	d := field.NewDate(b.Desk.Host, name, side)
	var v visit
	set := func(s *Sheet[R], value record.Date, raw string) {
		day, path := at(&s.Record)
		*day = value
		s.keepText(path, raw)
	}
	d.OnChanged = func(value record.Date) { b.typed(&v, name, func(s *Sheet[R]) { set(s, value, "") }) }
	d.OnLeft = func(_ record.Date, ok bool) {
		if text := d.Text(); !ok {
			b.typed(&v, name, func(s *Sheet[R]) { set(s, "", text) })
		}
		b.left(&v)
	}
	b.add(&Bound[R]{
		Name: name, Group: group, Field: d,
		Path: func(r R) string { _, path := at(&r); return path },
		show: func(s Sheet[R]) {
			day, path := at(&s.Record)
			if raw := s.Raw[path]; raw != "" {
				d.SetText(raw)
				d.SetTrouble(field.Wrong, d.WrongWords())
				return
			}
			d.SetDate(*day)
		},
	})
	return d
}

// ClockAt is a place for a time of day in a record, with its path.
type ClockAt[R any] func(r *R) (c *record.Clock, path string)

// Clock binds a time of day. One that cannot be read is kept as it was typed.
func (b *Binder[R]) Clock(group, name string, at ClockAt[R]) *field.Clock {
	c := field.NewClock(b.Desk.Host, name)
	var v visit
	set := func(s *Sheet[R], value record.Clock, raw string) {
		clock, path := at(&s.Record)
		*clock = value
		s.keepText(path, raw)
	}
	c.OnChanged = func(value record.Clock) { b.typed(&v, name, func(s *Sheet[R]) { set(s, value, "") }) }
	c.OnLeft = func(_ record.Clock, ok bool) {
		if text := c.Text(); !ok {
			b.typed(&v, name, func(s *Sheet[R]) { set(s, "", text) })
		}
		b.left(&v)
	}
	b.add(&Bound[R]{
		Name: name, Group: group, Field: c,
		Path: func(r R) string { _, path := at(&r); return path },
		show: func(s Sheet[R]) {
			clock, path := at(&s.Record)
			if raw := s.Raw[path]; raw != "" {
				c.SetText(raw)
				c.SetTrouble(field.Wrong, b.Say("field.clock.unreadable"))
				return
			}
			c.SetClock(*clock)
		},
	})
	return c
}

package bind

import (
	"ebbwell/app/kit/field"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Word is a place for one word out of a closed list in a record.
type Word[R any] struct {
	Get func(r R) string
	Set func(r *R, word string)
}

// Choice binds one of a closed list.
func (b *Binder[R]) Choice(group, name string, options []field.Option, at Word[R]) *field.Choice {
	c := field.NewChoice(b.Desk.Host, name, options)
	c.OnChosen = func(key string) { b.Pick(name, func(s *Sheet[R]) { at.Set(&s.Record, key) }) }
	b.add(&Bound[R]{Name: name, Group: group, Field: c, show: func(s Sheet[R]) { c.Choose(at.Get(s.Record)) }})
	return c
}

// Toggle binds one of two or three words.
func (b *Binder[R]) Toggle(group, name string, options []field.Option, at Word[R]) *field.Toggle {
	c := field.NewToggle(b.Desk.Host, name, options)
	c.OnChosen = func(key string) { b.Pick(name, func(s *Sheet[R]) { at.Set(&s.Record, key) }) }
	b.add(&Bound[R]{Name: name, Group: group, Field: c, show: func(s Sheet[R]) { c.Choose(at.Get(s.Record)) }})
	return c
}

// Options makes a list out of words whose texts stand under a beginning.
func (b *Binder[R]) Options(beginning string, words ...string) []field.Option {
	list := make([]field.Option, len(words))
	for i, w := range words {
		list[i] = field.Option{Key: w, Text: b.Say(beginning + w)}
	}
	return list
}

// Check binds a box to tick; its words are given.
func (b *Binder[R]) Check(group, name, text string, get func(r R) bool, set func(s *Sheet[R], on bool)) *field.Check {
	c := field.NewCheck(b.Desk.Host, name, text)
	c.OnChanged = func(on bool) { b.Pick(name, func(s *Sheet[R]) { set(s, on) }) }
	b.add(&Bound[R]{Name: name, Group: group, Field: c, show: func(s Sheet[R]) { c.Set(get(s.Record)) }})
	return c
}

// Rating binds a rating from 0 to 10 with words at both ends.
func (b *Binder[R]) Rating(group, name, low, high string, at NumberAt[R]) *field.Rating {
	r := field.NewRating(b.Desk.Host, name, low, high)
	r.OnChanged = func(value int) {
		b.Pick(name, func(s *Sheet[R]) {
			n, path := at(&s.Record, true)
			*n = record.Number{}
			if value != field.Unrated {
				*n = record.Num(float64(value), quantity.None)
			}
			s.keepText(path, "")
		})
	}
	b.add(&Bound[R]{Name: name, Group: group, Field: r, show: func(s Sheet[R]) {
		n, _ := at(&s.Record, false)
		if n == nil {
			r.SetValue(field.Unrated)
			return
		}
		r.SetValue(int(n.Or(field.Unrated)))
	}})
	return r
}

// Suggest binds a text with matches while typing; put takes in what was typed
// or taken, key empty for a text that is no match.
func (b *Binder[R]) Suggest(group, name string, matches func(text string) []field.Option, get func(r R) field.Option, put func(r *R, o field.Option)) *field.Suggest {
	c := field.NewSuggest(b.Desk.Host, name, true, matches)
	var v visit
	c.OnChanged = func(text string) {
		b.typed(&v, name, func(s *Sheet[R]) { put(&s.Record, field.Option{Text: text}) })
	}
	c.OnChosen = func(o field.Option) { b.typed(&v, name, func(s *Sheet[R]) { put(&s.Record, o) }) }
	c.OnLeft = func(string, bool) { b.left(&v) }
	b.add(&Bound[R]{Name: name, Group: group, Field: c, show: func(s Sheet[R]) { c.Set(get(s.Record)) }})
	return c
}

package trip

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// stopList is the stops in their order.
type stopList struct {
	v       *View
	columns []look.Column
	rows    []*stopRow
	table   *fyne.Container
	none    *look.Paragraph
	head    fyne.CanvasObject
	body    *look.Sheet
}

// stopRow is one stop of the list.
type stopRow struct {
	from, until        *field.Date
	up, down, takeAway *field.Link
	note               *look.Paragraph
	box                *fyne.Container
}

func newStopList(v *View) *stopList {
	say := v.desk.Words.Say
	p := &stopList{v: v, table: look.VBox(0), none: look.NewParagraph(say("trip.stops.none"), look.Note, look.Ink2)}
	p.columns = []look.Column{
		{Width: look.Fixed(20)}, {Title: say("trip.stop.from"), Width: look.Fixed(158)}, {Title: say("trip.stop.until"), Width: look.Fixed(158)},
		{Title: say("trip.stop.place"), Width: look.Share(34)}, {Width: look.Fixed(126)},
	}
	p.head = look.HeaderRow(10, p.columns)
	add := field.NewButton(v.desk.Host, "trip.stop.add", say("trip.stop.add"), field.Outline, p.add)
	p.body = look.NewPanel(say("trip.stops.title"), nil, look.VBox(0, p.head, p.table), p.none, look.HBox(0, add), look.NewParagraph(say("trip.stops.note"), look.Note, look.Ink2))
	return p
}

// add adds a stop and gives its first field the keyboard.
func (p *stopList) add() {
	v := p.v
	v.b.Pick("trip.stop.add", func(s *sheet) { addStop(&s.Record) })
	v.b.Show()
	v.b.GoTo("trip.stop." + strconv.Itoa(len(v.now().Stops)) + ".from")
}

// show follows the trip.
func (p *stopList) show() {
	stops := p.v.now().Stops
	for len(p.rows) < len(stops) {
		p.grow(len(p.rows))
	}
	for i, r := range p.rows {
		look.ShowIf(r.box, i < len(stops))
		if i >= len(stops) {
			continue
		}
		look.ShowIf(r.up, i > 0)
		look.ShowIf(r.down, i+1 < len(stops))
		sentence := ""
		if s := stops[i]; s.From != "" && s.Until != "" && s.Until < s.From {
			sentence = p.endsBefore(s)
		}
		setText(r.note, sentence)
	}
	look.ShowIf(p.none, len(stops) == 0)
	look.ShowIf(p.head, len(stops) > 0)
}

// endsBefore says that a stop ends before it begins, unless its days are still
// being typed.
func (p *stopList) endsBefore(s record.Stop) string {
	if strings.HasPrefix(p.v.b.Typing(), "trip.stop.") {
		return ""
	}
	from, _ := s.From.Time()
	until, _ := s.Until.Time()
	return p.v.desk.Words.Say("heat.trouble.ends", p.v.desk.Words.Date(from), p.v.desk.Words.Date(until))
}

// grow makes the row of the i-th stop.
func (p *stopList) grow(i int) {
	v, b := p.v, p.v.b
	name := "trip.stop." + strconv.Itoa(i+1) + "."
	day := func(what string, of func(s *record.Stop) *record.Date) *field.Date {
		return b.Date("edit", name+what, field.Coming, func(t *record.Trip) (*record.Date, string) {
			s := stopAt(t, i)
			if s == nil {
				return new(record.Date), ""
			}
			return of(s), "stops." + string(s.ID) + "." + what
		})
	}
	r := &stopRow{note: look.NewParagraph("", look.Note, look.Ink)}
	r.from = day("from", func(s *record.Stop) *record.Date { return &s.From })
	r.until = day("until", func(s *record.Stop) *record.Date { return &s.Until })
	place := b.Line("edit", name+"place", 60, func(t *record.Trip) *string {
		if s := stopAt(t, i); s != nil {
			return &s.Place
		}
		return new(string)
	})
	link := func(what string, do func()) *field.Link {
		return field.NewLink(v.desk.Host, name+what, v.desk.Words.Say("trip.stop."+what), do)
	}
	r.up, r.down = link("up", func() { p.move(i, -1) }), link("down", func() { p.move(i, 1) })
	r.takeAway = link("remove", func() { p.remove(i) })
	number := look.NewLabel(v.desk.Words.Number(float64(i+1), 0), look.Body, look.Ink2)
	links := look.Columns(8, []look.Track{look.Fit(), look.Fit(), look.Fit()}, r.takeAway, r.up, r.down)
	r.box = look.VBox(0, look.FieldRow(10, p.columns, number, r.from, r.until, place, links), look.Pad(0, 8, 0, 8, r.note))
	p.rows = append(p.rows, r)
	p.table.Add(r.box)
	b.Show()
}

// move moves a stop.
func (p *stopList) move(i, by int) {
	p.v.b.Pick("trip.stop.move", func(s *sheet) { moveStop(&s.Record, i, by) })
	p.v.b.Show()
}

// remove takes a stop out.
func (p *stopList) remove(i int) {
	v := p.v
	stops := v.now().Stops
	if i >= len(stops) {
		return
	}
	name := stopName(v.speaker(nil), stops[i], i)
	v.b.Pick("trip.stop.remove", func(s *sheet) {
		forget(s, s.Record.Stops[i].ID)
		removeStop(&s.Record, i)
	})
	v.b.Show()
	v.desk.Offer(v.desk.Words.Say("trip.stop.removed", name), v.desk.Words.Say("trip.undo"), func() { v.Undo() })
}

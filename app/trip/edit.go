package trip

import (
	"context"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/desk"
	"ebbwell/app/field"
	"ebbwell/app/look"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// editPart is the trip itself: its name, who travels, its stops in their order.
type editPart struct {
	v          *View
	travellers *travellerList
	stops      *stopList
	body       *look.Scroll
}

func newEditPart(v *View) *editPart {
	say := v.desk.Words.Say
	p := &editPart{v: v, travellers: newTravellerList(v), stops: newStopList(v)}
	name := v.b.Line("edit", "trip.name", 80, func(t *record.Trip) *string { return &t.Name })
	name.SetPlaceholder(say("trip.name.type"))
	remove := field.NewLink(v.desk.Host, "trip.delete", say("trip.delete"), v.askDelete)
	named := panel(say("trip.name"), nil, name, look.HBox(0, remove))
	p.body = scrolled(look.VBox(gap, newSides(named, p.travellers.body), p.stops.body))
	return p
}

// show follows the trip.
func (p *editPart) show() {
	p.travellers.show()
	p.stops.show()
	p.body.Refresh()
}

// askDelete asks whether the trip is to go.
func (v *View) askDelete() {
	say, t := v.desk.Words.Say, v.now()
	v.desk.Host.Confirm(v.canvas(), "trip.delete", say("trip.delete.title"), say("trip.delete.sentence"), say("trip.delete.yes"), func() {
		if !v.b.FlushNow() {
			return
		}
		ref := record.Ref{Kind: record.KindTrip, ID: t.ID}
		err := v.desk.Store.Delete(context.Background(), ref, store.Edit{})
		if err != nil && store.CodeOf(err) != store.CodeNotFound { // a new trip nothing was entered in is not kept
			v.desk.Trouble(err)
			return
		}
		v.desk.Go(desk.Place{Screen: desk.Trips})
		v.desk.Say(say("trip.deleted", title(v.speaker(nil), t)), say("trip.undo"), func() {
			if err := v.desk.Store.Undelete(context.Background(), ref, store.Edit{}); err != nil {
				v.desk.Trouble(err)
				return
			}
			v.desk.Go(desk.Place{Screen: desk.Trip, Record: t.ID})
		})
	})
}

// travellerList is who is on the trip.
type travellerList struct {
	v      *View
	add    *field.Suggest
	rows   []*travellerRow
	table  *fyne.Container
	none   *look.Paragraph
	roster []field.Option
	body   *look.Sheet
}

// travellerRow is one traveller.
type travellerRow struct {
	name, sport, note *look.Label
	remove            *field.Link
	id                record.ID
	box               fyne.CanvasObject
}

func newTravellerList(v *View) *travellerList {
	say := v.desk.Words.Say
	p := &travellerList{v: v, table: look.VBox(0), none: look.NewParagraph(say("trip.nobody.sentence"), look.Note, look.Ink2)}
	p.add = field.NewSuggest(v.desk.Host, "trip.traveller.add", false, p.matches)
	p.add.SetPlaceholder(say("trip.traveller.type"))
	p.add.OnChosen = p.take
	p.body = panel(say("trip.who.title"), nil, p.none, p.table, p.add)
	p.load()
	return p
}

// load lists the athletes who may travel.
func (p *travellerList) load() {
	list, err := p.v.desk.Store.Athletes(context.Background())
	if err != nil {
		p.v.desk.Trouble(err)
	}
	for _, a := range list {
		p.roster = append(p.roster, field.Option{Key: string(a.ID), Text: a.Name})
	}
}

// matches are the athletes whose name holds every word of a text and who are
// not on the trip yet.
func (p *travellerList) matches(text string) []field.Option {
	t := p.v.now()
	var list []field.Option
	for _, o := range p.roster {
		name, all := strings.ToLower(o.Text), true
		for _, w := range strings.Fields(strings.ToLower(text)) {
			all = all && strings.Contains(name, w)
		}
		if all && !travels(t, record.ID(o.Key)) {
			list = append(list, o)
		}
	}
	return list
}

// take puts an athlete on the trip.
func (p *travellerList) take(o field.Option) {
	p.v.b.Pick("trip.traveller.add", func(s *sheet) { addTraveller(&s.Record, record.ID(o.Key)) })
	p.add.Set(field.Option{})
}

// remove takes the traveller of a row off the trip.
func (p *travellerList) remove(r *travellerRow) {
	v, name := p.v, r.name.Text()
	v.b.Pick("trip.traveller.remove", func(s *sheet) { removeTraveller(&s.Record, r.id) })
	v.desk.Say(v.desk.Words.Say("trip.traveller.removed", name), v.desk.Words.Say("trip.undo"), func() { v.Undo() })
}

// show follows the trip.
func (p *travellerList) show() {
	crew := p.v.crew()
	for len(p.rows) < len(crew) {
		p.grow()
	}
	for i, r := range p.rows {
		visible(r.box, i < len(crew))
		if i < len(crew) {
			p.showRow(r, crew[i])
		}
	}
	visible(p.none, len(crew) == 0)
	visible(p.table, len(crew) > 0)
}

// grow makes a further row.
func (p *travellerList) grow() {
	r := &travellerRow{name: look.NewLabel("", look.Strong, look.Ink).Shorten(), sport: look.NewLabel("", look.Note, look.Ink2).Shorten(),
		note: look.NewLabel("", look.Note, look.Ink2).Shorten()}
	r.remove = field.NewLink(p.v.desk.Host, "trip.traveller."+strconv.Itoa(len(p.rows)+1)+".remove", p.v.desk.Words.Say("trip.traveller.remove"), func() { p.remove(r) })
	text := look.VBox(1, r.name, r.sport, r.note)
	r.box = look.VBox(0, look.Pad(7, 0, 7, 0, look.Columns(10, []look.Track{look.Share(1), look.Fit()}, text, r.remove)), look.NewRule())
	p.rows = append(p.rows, r)
	p.table.Add(r.box)
}

// showRow shows a traveller: the sport, and which plan goes along.
func (p *travellerList) showRow(r *travellerRow, m *member) {
	v, say := p.v, p.v.desk.Words.Say
	sp := v.speaker(m)
	r.id = m.athlete.ID
	r.name.SetText(m.athlete.Name)
	r.sport.SetText(desk.SportWord(v.desk.Words, m.athlete.Sport))
	note := say("trip.traveller.noplan")
	if m.along != nil {
		note = fromPlan(sp, m)
	}
	r.note.SetText(say("trip.traveller.note", say("trip.tests.count", len(m.tests)), note))
}

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
	from, until              *field.Date
	up, down, open, takeAway *field.Link
	note                     *look.Paragraph
	box                      *fyne.Container
}

func newStopList(v *View) *stopList {
	say := v.desk.Words.Say
	p := &stopList{v: v, table: look.VBox(0), none: look.NewParagraph(say("trip.stops.none"), look.Note, look.Ink2)}
	p.columns = []look.Column{
		{Width: look.Fixed(20)}, {Title: say("trip.stop.from"), Width: look.Share(20)}, {Title: say("trip.stop.until"), Width: look.Share(20)},
		{Title: say("trip.place"), Width: look.Share(26)}, {Width: look.Fixed(192)},
	}
	p.head = look.HeaderRow(10, p.columns)
	add := field.NewButton(v.desk.Host, "trip.stop.add", say("trip.stop.add"), field.Outline, p.add)
	p.body = panel(say("trip.stops.title"), nil, look.VBox(0, p.head, p.table), p.none, look.HBox(0, add), look.NewParagraph(say("trip.stops.note"), look.Note, look.Ink2))
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
		visible(r.box, i < len(stops))
		if i >= len(stops) {
			continue
		}
		visible(r.up, i > 0)
		visible(r.down, i+1 < len(stops))
		sentence := ""
		if s := stops[i]; s.From != "" && s.Until != "" && s.Until < s.From {
			sentence = p.endsBefore(s)
		}
		setText(r.note, sentence)
	}
	visible(p.none, len(stops) == 0)
	visible(p.head, len(stops) > 0)
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
	r.open, r.takeAway = link("open", func() { p.open(i) }), link("remove", func() { p.remove(i) })
	number := look.NewLabel(v.desk.Words.Number(float64(i+1), 0), look.Body, look.Ink2)
	links := look.HBox(10, r.open, r.up, r.down, r.takeAway)
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

// open shows a stop.
func (p *stopList) open(i int) {
	if stops := p.v.now().Stops; i < len(stops) {
		p.v.ShowPart(string(stops[i].ID))
	}
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
	v.desk.Say(v.desk.Words.Say("trip.stop.removed", name), v.desk.Words.Say("trip.undo"), func() { v.Undo() })
}

package trip

import (
	"context"
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

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
	name, note *look.Label
	remove     *field.Link
	id         record.ID
	box        fyne.CanvasObject
}

func newTravellerList(v *View) *travellerList {
	say := v.desk.Words.Say
	p := &travellerList{v: v, table: look.VBox(0), none: look.NewParagraph(say("trip.nobody.sentence"), look.Note, look.Ink2)}
	p.add = field.NewSuggest(v.desk.Host, "trip.traveller.add", false, p.matches)
	p.add.SetPlaceholder(say("trip.traveller.type"))
	p.add.OnChosen = p.take
	p.body = look.NewPanel(say("trip.who.title"), nil, p.none, p.table, p.add)
	p.load()
	return p
}

// load lists the athletes who may travel.
func (p *travellerList) load() {
	list, err := p.v.desk.Store.People(context.Background())
	if err != nil {
		p.v.desk.Trouble(err)
	}
	for _, a := range list {
		p.roster = append(p.roster, field.Option{Key: string(a.ID), Text: a.Name})
	}
}

// matches are the athletes that fit a text and are not on the trip yet.
func (p *travellerList) matches(text string) []field.Option {
	t := p.v.now()
	var list []field.Option
	for _, o := range p.roster {
		if !travels(t, record.ID(o.Key)) {
			list = append(list, o)
		}
	}
	return field.Matching(list, text)
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
	v.desk.Offer(v.desk.Words.Say("trip.traveller.removed", name), v.desk.Words.Say("trip.undo"), func() { v.Undo() })
}

// show follows the trip.
func (p *travellerList) show() {
	crew := p.v.crew()
	for len(p.rows) < len(crew) {
		p.grow()
	}
	for i, r := range p.rows {
		look.ShowIf(r.box, i < len(crew))
		if i < len(crew) {
			p.showRow(r, crew[i])
		}
	}
	look.ShowIf(p.none, len(crew) == 0)
	look.ShowIf(p.table, len(crew) > 0)
}

// grow makes a further row.
func (p *travellerList) grow() {
	r := &travellerRow{name: look.NewLabel("", look.Strong, look.Ink).Shorten(), note: look.NewLabel("", look.Note, look.Ink2).Shorten()}
	r.remove = field.NewLink(p.v.desk.Host, "trip.traveller."+strconv.Itoa(len(p.rows)+1)+".remove", p.v.desk.Words.Say("trip.traveller.remove"), func() { p.remove(r) })
	text := look.VBox(1, r.name, r.note)
	r.box = look.VBox(0, look.Pad(7, 0, 7, 0, look.Columns(10, []look.Track{look.Share(1), look.Fit()}, text, r.remove)), look.NewRule())
	p.rows = append(p.rows, r)
	p.table.Add(r.box)
}

// showRow shows a traveller: how many tests there are, and which plan goes along.
func (p *travellerList) showRow(r *travellerRow, m *member) {
	v, say := p.v, p.v.desk.Words.Say
	sp := v.speaker(m)
	r.id = m.athlete.ID
	r.name.SetText(m.athlete.Name)
	note := say("trip.traveller.noplan")
	if m.along != nil {
		note = fromPlan(sp, m)
	}
	r.note.SetText(say("trip.traveller.note", say("trip.tests.count", len(m.tests)), note))
}

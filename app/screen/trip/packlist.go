package trip

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// packList is a packing list, with the lots written beside it.
type packList struct {
	v       *View
	columns []look.Column
	rows    []*packRow
	table   *fyne.Container
	none    *look.Paragraph
	now     []climate.PackedSupply
	box     fyne.CanvasObject
}

// packRow is one product.
type packRow struct {
	what, amount, hand *look.Label
	where              *field.Choice
	lot                *field.Line
	visit              string
	box                fyne.CanvasObject
}

func newPackList(v *View) *packList {
	say := v.desk.Words.Say
	p := &packList{v: v, table: look.VBox(0), none: look.NewParagraph(say("trip.packing.none"), look.Body, look.Ink2)}
	p.columns = []look.Column{
		{Title: say("trip.packing.what"), Width: look.Share(30)}, {Title: say("trip.packing.amount"), Width: look.Fixed(150), Right: true},
		{Title: say("trip.packing.hand"), Width: look.Fixed(70), Right: true}, {Title: say("trip.packing.where"), Width: look.Fixed(132)},
		{Title: say("trip.packing.lot"), Width: look.Share(14)},
	}
	p.box = look.VBox(0, look.HeaderRow(12, p.columns), p.table, p.none)
	return p
}

// show shows a list.
func (p *packList) show(list climate.PackingList) {
	p.now = list.Supplies
	for len(p.rows) < len(p.now) {
		p.grow(len(p.rows))
	}
	sp, t := p.v.speaker(nil), p.v.now()
	for i, r := range p.rows {
		look.ShowIf(r.box, i < len(p.now))
		if i >= len(p.now) {
			continue
		}
		s := p.now[i]
		r.what.SetText(p.v.productName(s.Supply.ID))
		r.amount.SetText(packAmount(sp, s))
		r.hand.SetText(handText(sp, s))
		r.where.Choose(sourceOf(t, s))
		if kept := supplyOf(&t, record.ID(s.Supply.ID), "", false); kept == nil {
			r.lot.SetText("")
		} else {
			r.lot.SetText(kept.Lot)
		}
		r.lot.SetPlaceholder("")
		if s.Problem == climate.LotMissing {
			r.lot.SetPlaceholder(sp.Words.Say("trip.packing.lot.missing"))
		}
	}
	look.ShowIf(p.none, len(p.now) == 0)
}

// grow makes the row of the i-th product.
func (p *packList) grow(i int) {
	v := p.v
	name := "trip.packing." + strconv.Itoa(i+1) + "."
	right := func() *look.Label { return look.NewLabel("", look.Body, look.Ink).Right().Shorten() }
	r := &packRow{what: look.NewLabel("", look.Body, look.Ink).Shorten(), amount: right(), hand: right(), lot: field.NewLine(v.desk.Host, name+"lot", 60)}
	r.where = field.NewChoice(v.desk.Host, name+"where", v.b.Options("trip.where.", climate.Carry, climate.Hold, climate.Buy))
	r.where.OnChosen = func(key string) { p.change(i, name+"where", "", func(s *record.Supply) { s.Source = key }) }
	r.lot.OnChanged = func(text string) {
		if r.visit == "" {
			r.visit = string(record.NewID())
		}
		p.change(i, name+"lot", r.visit, func(s *record.Supply) { s.Lot = strings.TrimSpace(text) })
	}
	r.lot.OnLeft = func(string) {
		r.visit = ""
		v.b.Doc.EndVisit()
		v.b.Flush()
		v.follow()
	}
	r.box = look.FieldRow(12, p.columns, r.what, r.amount, r.hand, r.where, r.lot)
	p.rows = append(p.rows, r)
	p.table.Add(r.box)
}

// change writes down something about a product of the list.
func (p *packList) change(i int, label, visit string, f func(*record.Supply)) {
	if i >= len(p.now) {
		return
	}
	id := record.ID(p.now[i].Supply.ID)
	name := p.v.productName(string(id))
	set := func(s *sheet) { f(supplyOf(&s.Record, id, name, true)) }
	if visit == "" {
		p.v.b.Pick(label, set)
		return
	}
	p.v.b.Doc.Change(visit, label, set) // the list itself waits until the lot is typed
	p.v.desk.HeadChanged()
}

// sourceOf is where a product travels: as chosen, else as proposed.
func sourceOf(t record.Trip, s climate.PackedSupply) string {
	if kept := supplyOf(&t, record.ID(s.Supply.ID), "", false); kept != nil && kept.Source != "" {
		return kept.Source
	}
	if s.Rest == climate.Hold && s.HandLuggage >= s.Servings {
		return climate.Carry
	}
	return s.Rest
}

// handText is how much of a product travels in hand luggage.
func handText(sp heat.Speaker, s climate.PackedSupply) string {
	if s.HandLuggage == 0 {
		return sp.Words.Say("heat.none")
	}
	return sp.Words.Number(float64(s.HandLuggage), 0)
}

// productName is the name of a product by its id.
func (v *View) productName(id string) string {
	if q, ok := v.desk.Products().Find(record.ID(id)); ok {
		return q.Name
	}
	return id
}

// bottle is the bottle that is counted.
func bottle(sp heat.Speaker) string { return sp.By.Amount(consult.PackedBottle, quantity.Millilitre) }

// packAmount is how much of a product is packed: "for 11 bottles, 330 g".
func packAmount(sp heat.Speaker, s climate.PackedSupply) string {
	mass := packMass(sp, s.Mass)
	switch s.Supply.Form {
	case climate.Salt:
		return mass
	case climate.Powder:
		return sp.Words.Say("trip.pack.powder", s.Servings, mass)
	case climate.ReadyMix:
		return sp.Words.Say("trip.pack.ready", packLitres(sp, float64(s.Supply.Volume)*float64(s.Servings)/1000))
	case climate.Gel:
		return sp.Words.Say("trip.pack.gels", s.Servings)
	}
	return sp.Words.Say("trip.pack.portions", s.Servings, mass)
}

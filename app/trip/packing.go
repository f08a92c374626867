package trip

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/field"
	"ebbwell/app/look"
	"ebbwell/app/trip/heat"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// everybody stands for the sum over all travellers in the choice of a list.
const everybody = "everybody"

// packPart is what to take: by traveller, or summed over the squad.
type packPart struct {
	v      *View
	whose  *field.Choice
	margin *field.Toggle
	hours  *field.Number
	sums   *sumLine
	list   *packList
	flight *look.Paragraph
	lack   *look.Paragraph
	share  float64
	shown  string
	body   *look.Scroll
}

func newPackPart(v *View) *packPart {
	say := v.desk.Words.Say
	p := &packPart{v: v, sums: newSumLine(v), list: newPackList(v), flight: look.NewParagraph("", look.Body, look.Ink), lack: look.NewParagraph("", look.Note, look.Ink),
		share: evidence.PackingMarginLow, shown: everybody}
	p.whose = field.NewChoice(v.desk.Host, "trip.packing.whose", nil)
	p.whose.SetLeast(220)
	p.whose.OnChosen = func(key string) {
		p.shown = key
		v.follow()
	}
	p.margin = field.NewToggle(v.desk.Host, "trip.packing.margin", p.margins())
	p.margin.OnChosen = func(key string) {
		if x, err := strconv.ParseFloat(key, 64); err == nil {
			p.share = x / 100
		}
		v.follow()
	}
	p.hours = field.NewNumber(v.desk.Host, "trip.packing.hours", evidence.FlightHours, quantity.Hour)
	p.hours.OnChanged = func(field.Reading) { p.showFlight() }
	top := look.HBox(14, look.NewLabel(say("trip.packing.whose"), look.Body, look.Ink2), p.whose, look.Gap(10, 0), look.NewLabel(say("trip.packing.margin"), look.Body, look.Ink2), p.margin)
	list := look.NewSheet(look.VBox(12, top, p.sums.box, p.list.box, p.lack))
	way := panel(say("trip.flight"), nil, row(say("trip.flight.hours"), smallField, p.hours), p.flight)
	notes := panel(say("trip.care"), nil, look.NewParagraph(strings.Join(careNotes(say), "\n"), look.Note, look.Ink))
	lots := panel(say("trip.lots"), nil, look.NewParagraph(say("trip.lots.note"), look.Note, look.Ink))
	p.body = scrolled(look.VBox(gap, list, newSides(look.VBox(gap, way, lots), notes)))
	return p
}

// margins are the margins of common practice.
func (p *packPart) margins() []field.Option {
	var list []field.Option
	for _, x := range []float64{evidence.PackingMarginLow, evidence.PackingMarginHigh} {
		number := p.v.desk.Words.Number(100*x, 0)
		list = append(list, field.Option{Key: strconv.FormatFloat(100*x, 'f', 0, 64), Text: number + "\u00a0" + string(quantity.PerCent)})
	}
	return list
}

// careNotes are the sentences about food, water and supplements on a journey:
// common practice of travelling teams, no source.
func careNotes(say func(string, ...any) string) []string {
	return []string{say("trip.care.water"), say("trip.care.food"), say("trip.care.hands"), say("trip.care.ill"), say("trip.care.customs")}
}

// show reckons and shows the lists.
func (p *packPart) show() {
	v := p.v
	crew := v.crew()
	p.showWhose(crew)
	p.margin.Choose(strconv.FormatFloat(100*p.share, 'f', 0, 64))
	list, lacking := v.packed(p.shown, p.share)
	p.sums.show(v.speaker(nil), list)
	p.list.show(list)
	setText(p.lack, strings.Join(lacking, "\n"))
	p.showFlight()
	p.body.Refresh()
}

// showWhose offers the travellers, and all of them together.
func (p *packPart) showWhose(crew []*member) {
	var options []field.Option
	if len(crew) != 1 {
		options = append(options, field.Option{Key: everybody, Text: p.v.desk.Words.Say("trip.packing.everybody")})
	}
	known := p.shown == everybody && len(crew) != 1
	for _, m := range crew {
		options = append(options, field.Option{Key: string(m.athlete.ID), Text: m.athlete.Name})
		known = known || p.shown == string(m.athlete.ID)
	}
	if !known && len(options) > 0 {
		p.shown = options[0].Key
	}
	p.whose.SetOptions(options)
	p.whose.Choose(p.shown)
}

// showFlight says what to take in over the hours awake.
func (p *packPart) showFlight() {
	setText(p.flight, p.v.flightSentence())
}

// flightSentence is what to take in on the flight over the hours typed; empty
// while none are.
func (v *View) flightSentence() string {
	hours, ok := v.ui.pack.hours.Value()
	if !ok {
		return ""
	}
	f, err := climate.FlightFluid(hours)
	if err != nil {
		return sentences(v.speaker(nil), err)
	}
	sp := v.speaker(nil)
	return sp.Words.Say("trip.flight.sentence", sp.Words.Number(hours, 0), sp.By.Amount(f.Range.Low, quantity.Litre), sp.By.Amount(f.Range.High, quantity.Litre))
}

// packed is the packing list of one traveller, or of everybody together, and
// what keeps a stop from being packed for.
func (v *View) packed(whose string, margin float64) (list climate.PackingList, lacking []string) {
	var lists []climate.PackingList
	for _, m := range v.crew() {
		if whose != everybody && whose != string(m.athlete.ID) {
			continue
		}
		one, missing := v.packFor(m, margin)
		lists = append(lists, one)
		lacking = append(lacking, missing...)
	}
	return climate.SumPacking(lists...), lacking
}

// packFor is the packing list of a traveller.
func (v *View) packFor(m *member, margin float64) (list climate.PackingList, lacking []string) {
	sp, t := v.speaker(m), v.now()
	var stops []consult.StopPlan
	for i, s := range t.Stops {
		there, err := v.plan(m, s)
		switch {
		case err != nil || !there.Planned:
			lacking = append(lacking, sp.Words.Say("trip.packing.unplanned", m.athlete.Name, stopName(sp, s, i)))
			continue
		case there.Length == 0:
			lacking = append(lacking, sp.Words.Say("trip.packing.open", stopName(sp, s, i)))
		}
		stops = append(stops, there)
	}
	list, err := consult.PackTrip(stops, t.Supplies, margin, v.desk.Reckon())
	if err != nil {
		lacking = append(lacking, sentences(sp, err))
	}
	return list, lacking
}

// sumLine are the figures above a packing list.
type sumLine struct {
	figures, names [5]*look.Label
	box            fyne.CanvasObject
}

func newSumLine(v *View) *sumLine {
	l, say := &sumLine{}, v.desk.Words.Say
	var objects []fyne.CanvasObject
	for i, name := range []string{say("trip.sum.powder"), say("trip.sum.salt"), say("trip.sum.gels"), say("trip.sum.bottles", bottle(v.speaker(nil))), say("trip.sum.water")} {
		l.figures[i] = look.NewLabel("", look.Second, look.Ink).Shorten()
		l.names[i] = look.NewLabel(name, look.Note, look.Ink2).Shorten()
		objects = append(objects, look.VBox(0, l.figures[i], l.names[i]))
	}
	l.box = look.Columns(16, nil, objects...)
	return l
}

// show shows the sums of a list.
func (l *sumLine) show(sp heat.Speaker, list climate.PackingList) {
	for i, text := range []string{
		sp.By.Amount(float64(list.Powder), quantity.Gram), sp.By.Amount(float64(list.Salt), quantity.Gram),
		sp.Words.Number(float64(list.Gels), 0), sp.Words.Number(float64(list.Bottles), 0), sp.By.Amount(float64(list.SafeWater), quantity.Litre),
	} {
		l.figures[i].SetText(text)
	}
}

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
		{Title: say("trip.packing.what"), Width: look.Share(26)}, {Title: say("trip.packing.amount"), Width: look.Share(24), Right: true},
		{Title: say("trip.packing.hand"), Width: look.Fixed(70), Right: true}, {Title: say("trip.packing.where"), Width: look.Fixed(150)},
		{Title: say("trip.packing.lot"), Width: look.Share(20)},
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
		visible(r.box, i < len(p.now))
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
	visible(p.none, len(p.now) == 0)
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
	if s.Rest == climate.Hold && s.InHand >= s.Servings {
		return climate.Carry
	}
	return s.Rest
}

// handText is how much of a product travels in hand luggage.
func handText(sp heat.Speaker, s climate.PackedSupply) string {
	if s.InHand == 0 {
		return sp.Words.Say("heat.none")
	}
	return sp.Words.Number(float64(s.InHand), 0)
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

// packAmount is how much of a product is packed: "11 bottles' worth, 330 g".
func packAmount(sp heat.Speaker, s climate.PackedSupply) string {
	mass := sp.By.Amount(float64(s.Mass), quantity.Gram)
	switch s.Supply.Form {
	case climate.Salt:
		return mass
	case climate.Powder:
		return sp.Words.Say("trip.pack.powder", s.Servings, mass)
	case climate.ReadyMix:
		return sp.Words.Say("trip.pack.bottles", s.Servings, bottle(sp))
	case climate.Gel:
		return sp.Words.Say("trip.pack.gels", s.Servings)
	}
	return sp.Words.Say("trip.pack.portions", s.Servings, mass)
}

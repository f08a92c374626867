package trip

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
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
	shown  string
	body   *look.Scroll
}

func newPackPart(v *View) *packPart {
	say := v.desk.Words.Say
	p := &packPart{v: v, sums: newSumLine(v), list: newPackList(v), flight: look.NewParagraph("", look.Body, look.Ink), lack: look.NewParagraph("", look.Note, look.Ink),
		shown: everybody}
	p.whose = field.NewChoice(v.desk.Host, "trip.packing.whose", nil)
	p.whose.SetLeast(220)
	p.whose.OnChosen = func(key string) {
		p.shown = key
		if key != everybody {
			v.who = record.ID(key)
		}
		v.follow()
	}
	p.margin = v.b.Toggle(PartPacking, "trip.packing.margin", p.margins(), bind.Word[record.Trip]{Get: marginKey, Set: setMargin})
	p.hours = v.b.Number(PartPacking, "trip.packing.hours", evidence.FlightHours, quantity.Hour, bind.At("hoursAwake", func(t *record.Trip) *record.Number { return &t.HoursAwake }))
	top := look.HBox(14, look.NewLabel(say("trip.packing.whose"), look.Body, look.Ink2), p.whose, look.Gap(10, 0), look.NewLabel(say("trip.packing.margin"), look.Body, look.Ink2), p.margin)
	list := look.NewSheet(look.VBox(12, top, p.sums.box, p.list.box, p.lack))
	way := look.NewPanel(say("trip.flight"), nil, row(say("trip.flight.hours"), smallField, p.hours), p.flight)
	notes := look.NewPanel(say("trip.care"), nil, look.NewParagraph(strings.Join(careNotes(say), "\n"), look.Note, look.Ink))
	lots := look.NewPanel(say("trip.lots"), nil, look.NewParagraph(say("trip.lots.note"), look.Note, look.Ink))
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

// marginOf is what is packed beyond the need, 0.15 for 15 %: as it is kept, else
// the lower of common practice.
func marginOf(t record.Trip) float64 { return t.Margin.Or(100*evidence.PackingMarginLow) / 100 }

// marginKey is a trip's margin as it stands in the choice.
func marginKey(t record.Trip) string { return strconv.FormatFloat(100*marginOf(t), 'f', 0, 64) }

// setMargin keeps a margin out of the choice.
func setMargin(t *record.Trip, key string) {
	if x, err := strconv.ParseFloat(key, 64); err == nil {
		t.Margin = record.Num(x, quantity.PerCent)
	}
}

// careNotes are the sentences about food, water and supplements on a journey:
// common practice of travelling teams, no source.
func careNotes(say func(string, ...any) string) []string {
	return []string{say("trip.care.water"), say("trip.care.food"), say("trip.care.hands"), say("trip.care.ill"), say("trip.care.customs")}
}

// show calculates and shows the lists.
func (p *packPart) show() {
	v := p.v
	crew := v.crew()
	p.showWhose(crew)
	list, lacking := v.packed(p.shown, marginOf(v.now()))
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

// flightSentence is what to take in on the flight over the hours awake; empty
// while none are given.
func (v *View) flightSentence() string {
	awake := v.now().HoursAwake
	if !awake.Known() {
		return ""
	}
	hours := *awake.Value
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
	var unplanned, undated []string
	for i, s := range t.Stops {
		there, err := v.plan(m, s)
		if err != nil || !there.Planned {
			unplanned = append(unplanned, shortPlace(sp, s, i))
			continue
		}
		if there.Length == 0 {
			undated = append(undated, shortPlace(sp, s, i))
		}
		stops = append(stops, there)
	}
	if len(unplanned) > 0 {
		lacking = append(lacking, sp.Words.Say("trip.packing.unplanned", m.athlete.Name, sp.Words.List(unplanned)))
	}
	if len(undated) > 0 {
		lacking = append(lacking, sp.Words.Say("trip.packing.open", m.athlete.Name, sp.Words.List(undated)))
	}
	list, err := consult.PackTrip(stops, t.Supplies, margin, v.desk.Calculate())
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

package trip

import (
	"context"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/climate"
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
	each   *eachList
	flight *look.Paragraph
	lack   *look.Paragraph
	shown  string
	body   fyne.CanvasObject
	// run counts the times the lists were asked for: what comes late is not shown.
	run  int
	stop func()
}

func newPackPart(v *View) *packPart {
	say := v.desk.Words.Say
	p := &packPart{v: v, sums: newSumLine(v), list: newPackList(v), flight: look.NewParagraph("", look.Body, look.Ink), lack: look.NewParagraph("", look.Note, look.Ink),
		each: newEachList(v), shown: everybody, stop: func() {}}
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
	p.body = scrolled(look.VBox(gap, list, p.each.body, newSides(look.VBox(gap, way, lots), notes)))
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

// show works the lists out beside the window, and shows them when they are there.
func (p *packPart) show() {
	v := p.v
	p.showWhose(v.crew())
	p.showFlight()
	p.stop()
	p.run++
	run, jobs := p.run, v.packJobs(p.shown)
	var made []packed
	p.stop = v.desk.Beside.Run(func(ctx context.Context) error {
		made = packAll(ctx, jobs)
		return ctx.Err()
	}, func(err error) {
		if err == nil && run == p.run {
			p.showMade(made)
		}
	})
	p.body.Refresh()
}

// showMade shows lists that were worked out.
func (p *packPart) showMade(made []packed) {
	v := p.v
	var lacking []string
	for _, one := range made {
		lacking = append(lacking, v.lackingOf(one)...)
	}
	list := sumOf(made)
	p.sums.show(v.speaker(nil), list)
	p.list.show(list)
	p.each.show(made)
	setText(p.lack, strings.Join(lacking, "\n"))
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

package trip

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// crewPart is a row for each traveller, on one scale.
type crewPart struct {
	v      *View
	scale  *chart.RangeRow
	rows   []*crewRow
	table  *fyne.Container
	frame  *rowsFrame
	credit *look.Paragraph
	body   *look.Sheet
}

func newCrewPart(v *View) *crewPart {
	say := v.desk.Words.Say
	note := func(text string) *look.Label { return look.NewLabel(text, look.Note, look.Ink2) }
	unit := string(v.speaker(nil).By.Unit(quantity.LitrePerHour))
	p := &crewPart{v: v, scale: chart.NewRangeRow(), table: look.VBox(0)}
	head := newCells(false,
		look.VBox(0, note(""), look.Pad(0, 0, 0, look.Scaled(18), note(say("trip.column.athlete")))),
		look.VBox(0, look.NewParagraph(say("trip.column.rate", unit), look.Note, look.Ink2), p.scale),
		look.VBox(0, note(""), note(say("trip.column.basis"))),
		look.VBox(0, note(""), note(say("trip.column.plan"))),
		look.VBox(0, note(say("trip.column.deficit")).Right(), note(say("trip.column.end")).Right()),
		look.VBox(0, note(say("trip.column.carbohydrate")).Right(), note("").Right()),
	)
	p.frame = newRowsFrame(p.table)
	p.credit = look.NewParagraph("", look.Note, look.Ink2)
	foot := look.NewPair(footShare, footStack, look.NewParagraph(say("trip.crew.foot"), look.Body, look.Ink), p.credit)
	p.body = look.NewSheet(look.VBox(0, look.Pad(0, 0, 4, 0, head), look.NewRule(), p.frame, look.Pad(6, 0, 0, 0, foot)))
	return p
}

// The foot of the table leaves room for the credit of the climate table: its share of
// the width, and the px at 100 % text below which the credit stands under it.
const (
	footShare float32 = 0.64
	footStack float32 = 900
)

// show shows everybody at a stop.
func (p *crewPart) show(crew []*member, s record.Stop) {
	v := p.v
	look.ShowIf(p.body, len(crew) > 0)
	for len(p.rows) < len(crew) {
		r := newCrewRow(v, "trip.row."+strconv.Itoa(len(p.rows)+1))
		p.rows = append(p.rows, r)
		p.table.Add(r.body)
	}
	ticks, most := p.measure(crew, s)
	p.scale.Set(chart.RangeRowData{Ticks: ticks, Labelled: true, Summary: v.desk.Words.Say("trip.column.rate", string(v.speaker(nil).By.Unit(quantity.LitrePerHour)))})
	for i, r := range p.rows {
		look.ShowIf(r.body, i < len(crew))
		if i < len(crew) {
			r.show(crew[i], s, ticks, most)
		}
	}
	air, _ := consult.AirOf(s, v.places)
	credit := ""
	if air.FromTable {
		credit = v.places.Credit
	}
	setText(p.credit, credit)
	refresh(p.body)
}

// measure is the scale that holds everybody, and the highest limit of drinking.
func (p *crewPart) measure(crew []*member, s record.Stop) (ticks []chart.Tick, most float64) {
	rate := 0.0
	for _, m := range crew {
		there, err := p.v.plan(m, s)
		if err != nil {
			continue
		}
		rate = max(rate, there.Calculation.Climate.Rate.Range.High)
		for _, t := range there.Calculation.Compared {
			rate = max(rate, float64(t.Rate))
		}
		most = max(most, there.At.Ceiling.FluidL, there.At.Fluid.DrunkL+there.At.Fluid.FoodWaterL)
	}
	return p.v.speaker(nil).RateScale(rate, mostTicks), most
}

// mostTicks is how many ticks a column of ranges has at most.
const mostTicks = 5

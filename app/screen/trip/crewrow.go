package trip

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// crewRow is one traveller: the range of the sweat rate, what it is based on, the
// plan, the deficit, carbohydrate; and opened the tests and why.
type crewRow struct {
	v        *View
	name     *field.Fold
	note     *look.Paragraph
	rate     *chart.RangeRow
	basis    *look.Label
	basisOf  *look.Paragraph
	plan     *look.Paragraph
	bar      *chart.SourceBar
	step     *look.Paragraph
	warn     *look.Paragraph
	over     *look.Paragraph
	frame    *rowFrame
	troubled fyne.CanvasObject
	line     fyne.CanvasObject
	deficit  *look.Label
	ends     *look.Label
	carb     *look.Label
	trouble  *look.Paragraph
	more     *crewMore
	body     fyne.CanvasObject
	member   *member
	there    consult.StopPlan
	err      error
	pageStop record.Stop
}

func newCrewRow(v *View, name string) *crewRow {
	right := func(s look.Style, t look.Tone) *look.Label { return look.NewLabel("", s, t).Right() }
	r := &crewRow{v: v, name: field.NewFold(v.desk.Host, name, ""), note: look.NewParagraph("", look.Note, look.Ink2), rate: chart.NewRangeRow(),
		basis: look.NewLabel("", look.Strong, look.Ink), basisOf: look.NewParagraph("", look.Note, look.Ink2), plan: look.NewParagraph("", look.Body, look.Ink),
		bar: chart.NewSourceBar(), step: look.NewParagraph("", look.Note, look.Ink2), deficit: right(look.Strong, look.Ink), ends: right(look.Note, look.Ink2),
		carb: right(look.Strong, look.Ink), trouble: look.NewParagraph("", look.Body, look.Ink)}
	r.name.OnTurned = func(open bool) {
		v.turn(r.member, open)
	}
	r.warn, r.over = look.NewParagraph("", look.Note, look.Ink), look.NewParagraph("", look.NoteStrong, look.Ink)
	r.line = look.Columns(8, []look.Track{look.Share(3), look.Share(2)}, look.Pad(-3, 0, -9, 0, r.bar), r.step)
	r.more = newCrewMore(v, name)
	indent := look.Scaled(field.FoldIndent)
	row := newCells(false,
		look.VBox(0, r.name, look.Pad(0, 0, 0, indent, r.note)), r.rate, look.Pad(2, 0, 0, 0, look.VBox(0, r.basis, r.basisOf)),
		look.Pad(2, 0, 0, 0, look.VBox(0, r.plan, r.line, r.over, r.warn)),
		look.Pad(2, 0, 0, 0, look.VBox(0, r.deficit, r.ends)), look.Pad(2, 0, 0, 0, r.carb))
	r.troubled = look.Pad(0, 0, 5, indent, r.trouble)
	r.frame = newRowFrame(look.VBox(0, look.Pad(3, 0, 4, 0, row), r.troubled))
	r.body = look.VBox(0, r.frame, r.more.body, look.NewRule())
	return r
}

// show shows a traveller at a stop. most is the highest limit of drinking, L.
func (r *crewRow) show(m *member, s record.Stop, ticks []chart.Tick, most float64) {
	v := r.v
	sp := v.speaker(m)
	r.member, r.pageStop = m, s
	r.there, r.err = v.plan(m, s)
	open := v.open == m.athlete.ID
	r.name.Set(m.athlete.Name, open)
	r.note.SetText(personNote(sp, m))
	r.showRate(sp, ticks)
	r.showBasis(sp)
	r.showPlan(sp, most)
	r.showEnd(sp)
	var trouble string
	if r.err != nil && bodyTrouble(r.err) {
		trouble = troubleSentences(sp, r.err, s)
	}
	r.trouble.SetText(trouble)
	look.ShowIf(r.troubled, trouble != "")
	look.ShowIf(r.more.body, open)
	if open {
		r.more.show(sp, m, r.there, r.err, ticks)
	}
}

// personNote is who it is in a few words: "midfield, 64.0 kg".
func personNote(sp heat.Speaker, m *member) string {
	var parts []string
	if m.athlete.Position != "" {
		parts = append(parts, m.athlete.Position)
	} else if m.athlete.Sport != "" {
		parts = append(parts, desk.SportWord(sp.Words, m.athlete.Sport))
	}
	switch {
	case sp.By.Hidden:
		parts = append(parts, sp.Words.Say("trip.mass.hidden"))
	case m.athlete.UsualMass.Known():
		parts = append(parts, massNote(sp, *m.athlete.UsualMass.Value))
	}
	return sp.Words.Dots(parts)
}

// massNote is a body mass to one decimal: the day's mass is no surer than that.
func massNote(sp heat.Speaker, kg float64) string {
	u := sp.By.Unit(quantity.Kilogram)
	shown, err := quantity.Convert(kg, quantity.Kilogram, u)
	if err != nil {
		shown = kg // the two units are of one kind
	}
	return sp.Words.Number(shown, 1) + "\u00a0" + string(u)
}

// far reports whether a rate is an estimate far from any test, of which only the
// range is said.
func far(there consult.StopPlan) bool {
	c := there.Calculation.Climate
	return c.RangeOnly || len(c.From) == 0 || c.Rate.Estimate && c.Grade == gradeFar
}

// showRate draws the range.
func (r *crewRow) showRate(sp heat.Speaker, ticks []chart.Tick) {
	rate := r.there.Calculation.Climate.Rate
	d := chart.RangeRowData{Ticks: ticks}
	if r.err == nil && rate.Ranged {
		d.Ranged, d.Range = true, chart.Span{Low: rate.Range.Low, High: rate.Range.High}
		d.Dashed, d.Text, d.Summary = far(r.there), sp.RatesShort(rate.Range), sp.Rates(rate.Range)
		d.Middle, d.Middled = rate.Value, !far(r.there)
	}
	r.rate.Set(d)
}

// showBasis says what the range is based on.
func (r *crewRow) showBasis(sp heat.Speaker) {
	say, c := sp.Words.Say, r.there.Calculation
	switch {
	case r.err != nil || !c.Climate.Rate.Known:
		r.basis.SetText("–")
		r.basisOf.SetText("")
	case len(c.Climate.From) == 0:
		r.basis.SetText(say("trip.basis.none"))
		r.basisOf.SetText(say("trip.basis.body"))
	default:
		r.basis.SetText(say("trip.basis.grade." + c.Climate.Grade.Code()))
		f := c.Tests[c.Climate.From[0]].Test
		r.basisOf.SetText(say("trip.basis.test", sp.Words.ShortDate(consult.TestDay(f), sp.Today), testAir(sp, f.Air)))
	}
}

// showPlan shows the plan as a line, a bar under its limit, and which it is.
func (r *crewRow) showPlan(sp heat.Speaker, most float64) {
	there := r.there
	show := r.amounts()
	look.ShowIf(r.line, show)
	var lower, lacks string
	if show {
		lower = planWarning(sp, there)
	} else {
		lacks = lackingShort(sp, r.member, there, r.err)
	}
	r.frame.warn(lower != "")
	setText(r.over, lower)
	setText(r.warn, lacks)
	if !show {
		r.plan.SetText("–")
		return
	}
	text := drinkAmounts(sp, there)
	if foods := foodNames(sp, there); foods != "" {
		text = sp.Words.Say("trip.plan.line", text, foods)
	}
	r.plan.SetText(text)
	r.bar.Set(chart.SourceData{Bare: true, Parts: planParts(there), Limited: true, Limit: there.At.Ceiling.FluidL, Max: most * barEnd, Summary: func() string { return text }})
	r.step.SetText(planNote(sp, r.member, there))
}

// amounts reports whether the row says what to drink: there is a plan, and the rate
// is not too uncertain to drink by.
func (r *crewRow) amounts() bool {
	return r.err == nil && r.there.Planned && !r.there.TooUncertain()
}

// barEnd is how far the bars go beyond the highest limit.
const barEnd = 1.06

// planParts are the drinks and the water of the foods, L.
func planParts(there consult.StopPlan) []chart.Part {
	parts := []chart.Part{{Of: look.Water, Value: there.Mix[plan.Water] / 1000}}
	drink := 0.0
	for s := plan.Drink1; s <= plan.Drink3; s++ {
		drink += there.Mix[s] / 1000
	}
	return append(parts, chart.Part{Of: look.Drink, Value: drink}, chart.Part{Of: look.Food, Value: there.At.Fluid.FoodWaterL})
}

// planWarning says to what a plan that is over its new limit comes down there; empty
// for one that is not.
func planWarning(sp heat.Speaker, there consult.StopPlan) string {
	switch {
	case there.At.Guards.Stops():
		return sp.Words.Say("trip.note.over", sp.By.Amount(there.At.Ceiling.FluidL, quantity.Litre))
	case there.Cut:
		return sp.Words.Say("trip.note.over", sp.By.Amount(there.At.Fluid.DrunkL, quantity.Litre))
	}
	return ""
}

// planNote says which plan it is in a word or two.
func planNote(sp heat.Speaker, m *member, there consult.StopPlan) string {
	say := sp.Words.Say
	if agreed := consult.AgreedFor(there.Stop.ID, m.plans); agreed != nil && agreed.Agreement.AgreedAt != nil {
		return say("trip.note.agreed", sp.Words.ShortDay(*agreed.Agreement.AgreedAt))
	}
	if _, place, ok := consult.StepNow(*m.along); ok {
		return say("trip.note.step", sp.Words.Number(float64(place), 0))
	}
	return say("trip.note.home")
}

// showEnd shows deficit and carbohydrate.
func (r *crewRow) showEnd(sp heat.Speaker) {
	there := r.there
	if !r.amounts() {
		look.ShowIf(r.deficit, true)
		r.deficit.SetText("–")
		r.ends.SetText("")
		r.carb.SetText("–")
		return
	}
	q := there.At
	text := deficitRange(sp, q.Deficit, q.DeficitL)
	middle := deficitAt(sp, q.Deficit.Value, q.DeficitL.Value)
	style := look.Note
	if highEnd(sp, there) {
		style = look.NoteStrong
	}
	if far(there) { // a range only
		middle = ""
	}
	r.deficit.SetText(middle)
	look.ShowIf(r.deficit, middle != "")
	r.ends.SetText(text)
	r.ends.SetStyle(style)
	r.carb.SetText(sp.By.Amount(q.Carbohydrate.TotalGH, quantity.GramPerHour))
}

// highEnd reports whether the high end of a deficit stands out: past what trials in
// heat find harm at. Where mass is hidden it is the limit in litres, which the athlete
// knows: a per cent would tell the mass.
func highEnd(sp heat.Speaker, there consult.StopPlan) bool {
	if sp.By.Hidden {
		passes, _ := there.HighEnd()
		return passes
	}
	return there.PastHarm()
}

// testAir is the air of a test in a word: its temperature, where that is known.
func testAir(sp heat.Speaker, air record.Air) string {
	if air.Temperature.Known() {
		return sp.Degrees(*air.Temperature.Value)
	}
	return sp.Air(air)
}

// troubleSentences are the troubles of a stop, each once.
func troubleSentences(sp heat.Speaker, err error, s record.Stop) string {
	var list []string
	for _, t := range sp.Troubles(err, s) {
		if text := strings.Join(list, " "); !strings.Contains(text, t.Sentence) {
			list = append(list, t.Sentence)
		}
	}
	return strings.Join(list, " ")
}

// profileTrouble reports whether an error is put right in the profile.
func profileTrouble(sp heat.Speaker, err error, s record.Stop) bool {
	return troubleAt(sp, err, s, evidence.BodyMass) != "" || troubleAt(sp, err, s, evidence.Height) != ""
}

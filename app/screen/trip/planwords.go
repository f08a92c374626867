package trip

import (
	"strings"

	"ebbwell/app/screen/heat"
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// gradeFar is the grade of an estimate far from any test.
const gradeFar = climate.Far

// expected is the length of session a stop is planned for.
const expected = plan.Expected

// deficitAt is a deficit at the end, of body mass and in litres; litres alone
// where mass is hidden. A deficit stands below zero.
func deficitAt(sp heat.Speaker, percent, litres float64) string {
	if !sp.By.Hidden {
		return sp.Words.Signed(-percent, 1) + "\u00a0" + string(quantity.PerCent)
	}
	return sp.By.Signed(-litres, quantity.Litre)
}

// drinkAmounts are their amounts: "0.30 + 0.45 L".
func drinkAmounts(sp heat.Speaker, there consult.StopPlan) string {
	var litres []float64
	for s := plan.Water; s <= plan.Drink3; s++ {
		if there.Case.Slots[s].InUse && there.Home[s] > 0 {
			litres = append(litres, there.Mix[s]/1000)
		}
	}
	if len(litres) == 0 {
		return sp.Words.Say("trip.nothing")
	}
	return sp.By.Sum(litres, quantity.Litre)
}

// foodNames are the foods with their portions: "½ fig bar".
func foodNames(sp heat.Speaker, there consult.StopPlan) string {
	var parts []string
	for s := plan.Food1; s <= plan.Food4; s++ {
		if there.Case.Slots[s].InUse && there.Mix[s] > 0 {
			p := there.Case.Slots[s].Product
			parts = append(parts, sp.Words.Portions(there.Mix[s], sp.Words.FoodWithin(p.ID, p.Name)))
		}
	}
	return sp.Words.Commas(parts)
}

// guardSentence says what a guard of the plan there means; empty for those that
// stand in the table or in the caution already.
func guardSentence(sp heat.Speaker, there consult.StopPlan, g plan.Guard) string {
	switch g {
	case plan.PastLimit, plan.LossOutruns:
		return ""
	}
	return sp.Guard(care.SayGuard(g, care.GuardCase{
		Athlete: there.Case.Athlete.Name, Planner: there.Case.Planner, Length: expected, At: there.At, Hidden: sp.By.Hidden,
	}))
}

// deficitRange is the range of a deficit: "−0.6 to −2.6 %", the smaller loss first.
func deficitRange(sp heat.Speaker, percent, litres plan.Ranged) string {
	if !sp.By.Hidden {
		return sp.Words.Say("trip.deficit.range", sp.Words.Signed(-percent.Low, 1), sp.Words.Signed(-percent.High, 1)+"\u00a0"+string(quantity.PerCent))
	}
	return sp.Words.Say("trip.deficit.range", sp.By.Number(-litres.Low, quantity.Litre), sp.By.Signed(-litres.High, quantity.Litre))
}

// lacking says why there is no plan at a stop.
func lacking(sp heat.Speaker, m *member, there consult.StopPlan) string {
	switch {
	case there.Planned:
		return ""
	case there.Trouble != nil:
		return sp.Words.Say("trip.plan.trouble")
	case m.along == nil:
		return sp.Words.Say("trip.plan.none", m.athlete.Name)
	}
	return sp.Words.Say("trip.plan.norate")
}

// lackingShort is the same in a few words, for a row.
func lackingShort(sp heat.Speaker, m *member, there consult.StopPlan, err error) string {
	switch {
	case err != nil:
		return ""
	case there.Planned, there.Unlike():
		return sp.Words.Say("trip.note.uncertain") // there is a plan, and the rate is too uncertain for it
	case there.Trouble != nil:
		return sp.Words.Say("trip.note.trouble")
	case len(there.Calculation.Climate.From) == 0:
		return sp.Words.Say("trip.note.testfirst")
	case m.along == nil:
		return sp.Words.Say("trip.note.noplan")
	}
	return sp.Words.Say("trip.plan.norate")
}

// fromPlan names the plan that is taken along.
func fromPlan(sp heat.Speaker, m *member) string {
	if m.along == nil || m.along.Agreement.AgreedAt == nil {
		return ""
	}
	return sp.Words.Say("trip.plan.from", sp.Day(*m.along.Agreement.AgreedAt))
}

// cutSentences say that and why the plan was cut down.
func cutSentences(sp heat.Speaker, there consult.StopPlan) []string {
	if !there.Cut {
		return nil
	}
	home := there.Case.Planner.Evaluate(expected, there.Home)
	return []string{sp.Words.Say("trip.plan.cut", sp.By.Amount(home.Fluid.DrunkL, quantity.Litre), sp.By.Amount(there.At.Fluid.DrunkL, quantity.Litre))}
}

// otherDays say on a page what to do on a cooler and on a hotter day.
func otherDays(sp heat.Speaker, there consult.StopPlan) []string {
	var list []string
	if cool, ok := there.OnAnotherDay(-evidence.PlanAirReach); ok && cool.Planned {
		at := sp.Degrees(cool.Air.Temperature.Or(0))
		if cool.At.Fluid.DrunkL < there.At.Fluid.DrunkL {
			list = append(list, sp.Words.Say("trip.cooler", at, sp.By.Amount(cool.At.Fluid.DrunkL, quantity.Litre)))
		} else {
			list = append(list, sp.Words.Say("trip.cooler.same", at))
		}
	}
	if hot, ok := there.OnAnotherDay(evidence.HotDayAdds); ok && hot.Planned {
		list = append(list, sp.Words.Say("trip.hotter", sp.Degrees(hot.Air.Temperature.Or(0)), deficitAt(sp, hot.At.Deficit.High, hot.At.DeficitL.High)))
	}
	return list
}

// planCaution is what has to be said about the plan there: first whether it may
// be agreed at all, then the high end of the loss, then the stomach.
func planCaution(sp heat.Speaker, there consult.StopPlan) (title, sentence string) {
	var list []string
	if there.At.Guards.Stops() {
		list = append(list, sp.Words.Say("planner.agree.stops"))
	}
	passes, outruns := there.HighEnd()
	switch {
	case outruns:
		title = sp.Words.Say("caution.outruns")
	case passes:
		title = sp.Words.Say("trip.high")
	}
	for _, g := range there.At.Guards.Each() {
		if text := guardSentence(sp, there, g); text != "" {
			list = append(list, text)
		}
	}
	return title, strings.Join(list, " ")
}

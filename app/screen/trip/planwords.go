package trip

import (
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// expected is the length of session a stop is planned for.
const expected = plan.Expected

// endRows are the titles and the lines of the plan at the low end, the middle
// and the high end of the loss.
func endRows(sp heat.Speaker, there consult.StopPlan) (titles [3]string, rows []endRow) {
	say, q := sp.Words.Say, there.At
	rate := there.Calculation.Climate.Rate
	titles = [3]string{say("trip.at.low", sp.LowRate(rate.Range)), sp.Rate(rate.Value), sp.HighRate(rate.Range)}
	if rate.Estimate {
		titles[1] = sp.MiddleRate(rate.Value)
	}
	same := func(name, text string) endRow { return endRow{name: name, cells: [3]string{text, text, text}} }
	rows = append(rows, same(drinkNames(there), drinkAmounts(sp, there)))
	limit := there.Case.Limit()
	rows = append(rows, endRow{
		name: say("trip.deficit"),
		cells: [3]string{deficitAt(sp, q.Deficit.Low, q.DeficitL.Low), deficitAt(sp, q.Deficit.Value, q.DeficitL.Value),
			deficitAt(sp, q.Deficit.High, q.DeficitL.High)},
		strong: [3]bool{q.Deficit.Low > limit, q.Deficit.Value > limit, q.Deficit.High > limit},
	})
	carbohydrate := say("trip.carbohydrate")
	if foods := foodNames(sp, there); foods != "" {
		carbohydrate = say("trip.carbohydrate.food", foods)
	}
	rows = append(rows, same(carbohydrate, sp.By.Amount(q.Carbohydrate.TotalGH, quantity.GramPerHour)))
	if salt := there.Mix[plan.Salt]; salt > 0 && len(there.Case.Care.WithholdSalt) == 0 {
		rows = append(rows, same(say("trip.salt"), sp.By.Amount(salt, quantity.Gram)))
	}
	if take, ok := there.LongestBreak(); ok {
		name := say("trip.mouthfuls", capital(desk.ChanceWord(sp.Words, take.Chance.Code)), say("trip.mouthfuls.count", take.Mouthfuls))
		rows = append(rows, same(name, sp.By.Amount(float64(take.ML), quantity.Millilitre)))
	}
	if there.Calculation.Climate.RangeOnly {
		titles[1] = ""
		for i := range rows {
			rows[i].cells[1] = ""
		}
	}
	return titles, rows
}

// deficitAt is a deficit at the end, of body mass and in litres; litres alone
// where mass is hidden. A deficit stands below zero.
func deficitAt(sp heat.Speaker, percent, litres float64) string {
	if !sp.By.Hidden {
		return sp.Words.Signed(-percent, 1) + "\u00a0" + string(quantity.PerCent)
	}
	return sp.By.Signed(-litres, quantity.Litre)
}

// drinkNames are the drinks of the plan.
func drinkNames(there consult.StopPlan) string {
	var names []string
	for s := plan.Water; s <= plan.Drink3; s++ {
		if there.Case.Slots[s].InUse && there.Home[s] > 0 {
			names = append(names, there.Case.Slots[s].Product.Name)
		}
	}
	return capital(strings.ToLower(strings.Join(names, ", ")))
}

// drinkAmounts are their amounts: "0.30 + 0.45 L".
func drinkAmounts(sp heat.Speaker, there consult.StopPlan) string {
	var parts []string
	for s := plan.Water; s <= plan.Drink3; s++ {
		if there.Case.Slots[s].InUse && there.Home[s] > 0 {
			parts = append(parts, sp.By.Number(there.Mix[s]/1000, quantity.Litre))
		}
	}
	if len(parts) == 0 {
		return sp.Words.Say("trip.nothing")
	}
	return strings.Join(parts, " + ") + "\u00a0" + string(sp.By.Unit(quantity.Litre))
}

// foodNames are the foods with their portions: "½ fig bar".
func foodNames(sp heat.Speaker, there consult.StopPlan) string {
	var parts []string
	for s := plan.Food1; s <= plan.Food4; s++ {
		if there.Case.Slots[s].InUse && there.Mix[s] > 0 {
			parts = append(parts, sp.Words.Say(portionsKey(there.Mix[s]), sp.Words.Half(there.Mix[s]), strings.ToLower(there.Case.Slots[s].Product.Name)))
		}
	}
	return strings.Join(parts, sp.Words.Say("format.comma"))
}

// portionsKey is the text for one portion at most, or for more.
func portionsKey(x float64) string {
	if x > 1 {
		return "trip.portions.more"
	}
	return "trip.portions"
}

// guardSentence says what a guard of the plan there means; empty for those that
// stand in the table or in the caution already.
func guardSentence(sp heat.Speaker, there consult.StopPlan, g plan.Guard) string {
	rate := sp.Rate(there.At.Fluid.RateLH)
	switch g {
	case plan.GainInMass, plan.OverCeiling, plan.PastLimit, plan.LossOutruns:
		return ""
	case plan.OverStomach, plan.NearStomach:
		takes := plan.StomachTakes(there.Case.Planner.Session().Running)
		return sp.Words.Say("trip."+g.Code(), rate, sp.Rates(takes))
	case plan.OverUsual:
		return sp.Words.Say("trip."+g.Code(), rate, sp.Rate(there.Case.Basis.Plan.Usual.LH))
	}
	key := g.Code()
	if hidden := key + ".hidden"; sp.By.Hidden && sp.Words.Has(hidden) {
		key = hidden
	}
	return sp.Words.Say(key)
}

// capital makes the first letter of a text large.
func capital(s string) string {
	for i, r := range s {
		return strings.ToUpper(string(r)) + s[i+len(string(r)):]
	}
	return s
}

package planner

import (
	"strconv"
	"strings"

	"ebbwell/app/kit/chart"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// stops are the chances as the line of time shows them.
func (sp speaker) stops(into []chart.BreakStop, t plan.Schedule) []chart.BreakStop {
	for _, take := range t.Takes {
		var drink [plan.Drinks]float64
		for i, ml := range take.ByDrink {
			drink[i] = float64(ml)
		}
		stop := chart.BreakStop{
			Minute: take.Chance.Minute, Parts: partsOf(drink, take.Food), Name: sp.chanceName(take.Chance), Maybe: take.Chance.Certainty != plan.Certain,
		}
		if take.ML > 0 {
			stop.Amount, stop.Mouthfuls = sp.millilitres(float64(take.ML)), sp.say("planner.mouthfuls", take.Mouthfuls)
		}
		if stop.Maybe {
			stop.Note = sp.say("planner.break.maybe")
		}
		into = append(into, stop)
	}
	return into
}

// spells are the times between the chances, in which there is play.
func spells(into []chart.Spell, t plan.Schedule, minutes float64) []chart.Spell {
	from := 0.0
	for _, take := range t.Takes {
		if take.Chance.Minute > from {
			into = append(into, chart.Spell{From: from, To: take.Chance.Minute})
		}
		from = max(from, take.Chance.Minute+take.Chance.Seconds/60)
	}
	if from < minutes {
		into = append(into, chart.Spell{From: from, To: minutes})
	}
	return into
}

// takeWords say what is taken at one chance: "160 mL, 4 mouthfuls, ½ fig bar
// with 120 mL of it".
func (sp speaker) takeWords(s state, t plan.Take) string {
	var parts []string
	if t.ML > 0 {
		parts = append(parts, sp.say("planner.take", sp.millilitres(float64(t.ML)), sp.say("planner.mouthfuls", t.Mouthfuls)))
	}
	for f, x := range t.Food {
		if x > 0 {
			parts = append(parts, sp.portions(x, sp.product(s.planCase, plan.Food1+plan.Slot(f))))
		}
	}
	if t.WaterWantedML > 0 {
		key := "planner.take.water"
		if t.Dry {
			key = "planner.take.dry"
		}
		parts = append(parts, sp.say(key, sp.millilitres(float64(t.WaterWantedML))))
	}
	if len(parts) == 0 {
		return sp.say("planner.none")
	}
	return strings.Join(parts, sp.say("format.comma"))
}

// scheduleWords say whether the plan can be drunk at these chances, and what is
// left when those that may fall out do.
func (sp speaker) scheduleWords(s state, k *calculation) []string {
	t := k.take
	if k.even() {
		return []string{sp.say("planner.breaks.none")}
	}
	list := sp.notTaken(s, t)
	if w := t.WithoutMaybe; w.MissedML > 0 {
		x, u := sp.end(w.DeficitL, w.Deficit)
		y, _ := sp.end(t.DeficitL, t.Deficit)
		if w.Holds {
			list = append(list, sp.say("planner.breaks.holds", sp.change(x.Value, u), sp.change(y.Value, u)))
		} else {
			list = append(list, sp.say("planner.breaks.without", sp.change(x.Value, u), sp.change(y.Value, u), sp.millilitres(float64(w.CertainML))))
		}
	}
	return list
}

// notTaken says what of the plan the breaks leave no time for.
func (sp speaker) notTaken(s state, t plan.Schedule) []string {
	var list []string
	if !t.Fits {
		list = append(list, sp.say("planner.breaks.notdrunk", sp.millilitres(float64(t.DrinkableML)), sp.millilitres(float64(t.PlannedML))))
	}
	for f, x := range t.FoodLeft {
		if x > 0 {
			list = append(list, sp.say("planner.breaks.noteaten", sp.portions(x, sp.product(s.planCase, plan.Food1+plan.Slot(f)))))
		}
	}
	return list
}

// mouthfulWords say what a mouthful of the athlete's is.
func (sp speaker) mouthfulWords(s state, k *calculation) string {
	key := "planner.mouthful.usual"
	if s.planCase.Athlete.Mouthful.Known() {
		key = "planner.mouthful.own"
	}
	return sp.say(key, sp.millilitres(float64(k.mouthful)))
}

// readScore reads the score of a match: "6-4 6-4"; ok is false when it is none.
func readScore(text string) (sets []plan.TennisSet, ok bool) {
	for _, one := range strings.Fields(strings.ReplaceAll(text, ",", " ")) {
		won, lost, found := strings.Cut(strings.ReplaceAll(one, "–", "-"), "-")
		a, errA := strconv.Atoi(won)
		b, errB := strconv.Atoi(lost)
		if !found || errA != nil || errB != nil {
			return nil, false
		}
		sets = append(sets, plan.TennisSet{Won: a, Lost: b})
	}
	return sets, len(sets) > 0
}

// minute writes a minute of the session.
func (sp speaker) minute(x float64) string { return sp.by.Amount(x, quantity.Minute) }

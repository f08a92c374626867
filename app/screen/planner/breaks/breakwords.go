package breaks

import (
	"strconv"
	"strings"

	"ebbwell/app/kit/chart"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// stop is a chance as the line of time shows it; name is what it is called, where that
// is known already.
func stop(sp wording.Speaker, take plan.Take, name string) chart.BreakStop {
	if name == "" {
		name = sp.ChanceName(take.Chance)
	}
	var drink [plan.Drinks]float64
	for i, ml := range take.ByDrink {
		drink[i] = float64(ml)
	}
	s := chart.BreakStop{
		Minute: take.Chance.Minute, Parts: wording.PartsOf(drink, take.Food), Name: name, Maybe: take.Chance.Certainty != plan.Certain,
	}
	if take.ML > 0 {
		s.Number = sp.Plain(float64(take.ML), quantity.Millilitre)
		s.Amount, s.Mouthfuls = sp.Millilitres(float64(take.ML)), sp.Say("planner.mouthfuls", take.Mouthfuls)
	}
	if s.Maybe {
		s.Note = sp.Say("planner.break.maybe")
	}
	return s
}

// Spells are the times between the chances, in which there is play.
func Spells(into []chart.Spell, t plan.Schedule, minutes float64) []chart.Spell {
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

// takeWords say what is taken at one chance: "160 mL water, 4 mouthfuls, ½ fig bar,
// with 120 mL of it".
func takeWords(sp wording.Speaker, s state.State, t plan.Take) string {
	var parts []string
	for d, ml := range t.ByDrink {
		if ml > 0 {
			parts = append(parts, sp.Words.AmountOf(sp.Millilitres(float64(ml)), sp.ProductWithin(s.PlanCase, plan.Slot(d))))
		}
	}
	if t.ML > 0 {
		parts = append(parts, sp.Say("planner.mouthfuls", t.Mouthfuls))
	}
	if most := t.Chance.MostML(); t.Chance.Fixed.On && t.Chance.Fixed.ML > most {
		parts = append(parts, sp.Say("planner.take.most", sp.Millilitres(most)))
	}
	for f, x := range t.Food {
		if x > 0 {
			parts = append(parts, sp.Words.Portions(x, sp.ProductWithin(s.PlanCase, plan.Food1+plan.Slot(f))))
		}
	}
	if t.WaterWantedML > 0 {
		key := "planner.take.water"
		if t.Dry {
			key = "planner.take.dry"
		}
		parts = append(parts, sp.Say(key, sp.Millilitres(float64(t.WaterWantedML))))
	}
	if len(parts) == 0 {
		return sp.Say("planner.none")
	}
	return sp.Words.Commas(parts)
}

// takeTexts say what is taken at one chance, the longest first: all of it, the volume
// with the mouthfuls, the volume.
func takeTexts(sp wording.Speaker, s state.State, t plan.Take) []string {
	whole := takeWords(sp, s, t)
	if t.ML == 0 {
		return []string{whole}
	}
	ml := sp.Millilitres(float64(t.ML))
	return []string{whole, sp.Joined(ml, sp.Say("planner.mouthfuls", t.Mouthfuls)), ml}
}

// scheduleWords say whether the plan can be drunk at these chances, and what is
// left when those that may fall out do.
func scheduleWords(sp wording.Speaker, s state.State, k *state.Calculation) []string {
	t := k.Take
	if k.Even() {
		return []string{sp.Say("planner.breaks.none")}
	}
	list := sp.NotTaken(s, t)
	if w := t.WithoutMaybe; w.MissedML > 0 {
		x, u := sp.End(w.DeficitL, w.Deficit)
		y, _ := sp.End(t.DeficitL, t.Deficit)
		list = append(list, sp.Say("planner.breaks.missed", sp.Millilitres(float64(w.MissedML)), sp.Change(x.Value, u), sp.Change(y.Value, u)))
	}
	return list
}

// mouthfulWords say what a mouthful of the athlete's is.
func mouthfulWords(sp wording.Speaker, s state.State, k *state.Calculation) string {
	key := "planner.mouthful.usual"
	if s.PlanCase.Athlete.Mouthful.Known() {
		key = "planner.mouthful.own"
	}
	return sp.Say(key, sp.Millilitres(float64(k.Mouthful)))
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

package wording

import (
	"strings"

	"ebbwell/app/screen/planner/state"
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// Caution is what speaks about a mix: in a word or two, and as a sentence.
type Caution struct{ Short, Text string }

// Cautions are what speaks about the selected mix, the gravest first: what stopped a
// movement, the guards, the athlete's conditions. The limit has a place of its own, and
// so has the deficit: they are not said again.
func (sp Speaker) Cautions(s state.State, q plan.Prediction) []Caution {
	var list []Caution
	add := func(short, text string) {
		if text != "" {
			list = append(list, Caution{sp.Say("planner.caution." + short), text})
		}
	}
	said := q.Guards &^ (plan.OverCeiling | plan.PastLimit)
	for _, one := range said.Each() {
		add(one.Code(), sp.guard(s.PlanCase, s.Length, q, one))
	}
	add("stopped", sp.stopped(s))
	add("plasma", sp.Plasma(q.Plasma))
	add("water", sp.WaterCare(s.PlanCase.Care))
	if s.PlanCase.Planner.Basis().Cool {
		add("cool", sp.Say("basis.code."+climate.LimitUnsure))
	}
	if own := s.PlanCase.OwnTests(); own != "" {
		add("own", sp.Say("basis.code."+own))
	}
	return list
}

// Plasma says what the blood sodium might come to where what is drunk nears or
// passes the loss; empty elsewhere, and where it cannot be said.
func (sp Speaker) Plasma(p plan.Plasma) string {
	if !p.Known || !p.Show {
		return ""
	}
	return sp.Say("planner.plasma", sp.Words.Number(p.MmolL, 0))
}

// stopped says why a slider went no further, where that is not the limit of the
// plan, which is said in its own place; the end of the slider needs no words.
func (sp Speaker) stopped(s state.State) string {
	if s.Stop == plan.SodiumLost {
		return sp.Say(string(s.Stop))
	}
	return ""
}

// Ceiling says where a plan stops, and why there.
func (sp Speaker) Ceiling(c plan.Ceiling, why plan.Reason) string {
	if sp.By.Hidden && why == plan.LongSession {
		return sp.Say("reason.long-session.hidden", sp.StopsAt(c))
	}
	return sp.Say(string(why), sp.StopsAt(c))
}

// StopsAt is the volume a plan stops at. Past three hours it is made with the
// body mass, so where that is hidden it is rounded down, as coarse as leaves the
// mass open.
func (sp Speaker) StopsAt(c plan.Ceiling) string {
	return sp.Litres(care.StopsAt(c, sp.By.Hidden))
}

// StopsAtBare is it without its unit, for a mark.
func (sp Speaker) StopsAtBare(c plan.Ceiling) string {
	return strings.TrimSuffix(sp.StopsAt(c), "\u00a0"+string(sp.By.Unit(quantity.Litre)))
}

// Guards are the sentences of the guards that speak.
func (sp Speaker) Guards(c consult.Case, l plan.Length, q plan.Prediction) []string {
	var list []string
	for _, one := range q.Guards.Each() {
		if text := sp.guard(c, l, q, one); text != "" {
			list = append(list, text)
		}
	}
	return list
}

// guard is the sentence of one guard; the table is that of package care.
func (sp Speaker) guard(c consult.Case, l plan.Length, q plan.Prediction, one plan.Guard) string {
	return sp.Speaker.Guard(care.SayGuard(one, care.GuardCase{Athlete: c.Athlete.Name, Planner: c.Planner, Length: l, At: q, Hidden: sp.By.Hidden}))
}

// Limits says what the limits are, and in title that the last movement stopped
// there.
func (sp Speaker) Limits(s state.State, q plan.Prediction) (title, text string) {
	text = sp.Ceiling(q.Ceiling, q.Ceiling.Reason)
	if s.Stop == plan.LowEnd || s.Stop == plan.LongSession || s.Stop == q.Ceiling.Reason && s.Stop != plan.Free {
		title = sp.Say("planner.limit.reached")
	}
	if q.Guards.Has(plan.OverCeiling) {
		title = sp.Say("planner.limit.over")
	}
	if !q.Guards.Has(plan.OverUsual) {
		if usual := sp.guard(s.PlanCase, s.Length, q, plan.OverUsual); usual != "" {
			text = Sentences(text, usual)
		}
	}
	return title, text
}

// WaterCare says that drinking too much is the greater danger, and why for this
// athlete; empty where nothing of the profile says so.
func (sp Speaker) WaterCare(needs care.Care) string {
	if !needs.WaterCaution {
		return ""
	}
	var names []string
	for _, kind := range needs.Flags {
		if care.EffectOf(kind).WaterCaution {
			names = append(names, sp.Say("flag."+string(kind)+".name"))
		}
	}
	return sp.Say("planner.care.water", sp.Words.List(names))
}

// SaltCare says why salt is not offered; empty where it is.
func (sp Speaker) SaltCare(needs care.Care) string {
	if len(needs.WithholdSalt) == 0 {
		return ""
	}
	var names []string
	for _, kind := range needs.WithholdSalt {
		names = append(names, sp.Say("flag."+string(kind)+".name"))
	}
	return sp.Say("planner.care.salt", sp.Words.List(names))
}

// TwoBottles lists the breaks at which two drinks stand, each with its minute; empty where
// there are none.
func (sp Speaker) TwoBottles(t plan.Schedule) string {
	var list []string
	for i := range t.Takes {
		if take := &t.Takes[i]; take.Bottles() > 1 {
			list = append(list, sp.Joined(sp.ChanceName(take.Chance), sp.Minute(take.Chance.Minute)))
		}
	}
	return sp.Words.Semicolons(list)
}

// NotTaken says what of the plan the breaks leave no time for.
func (sp Speaker) NotTaken(s state.State, t plan.Schedule) []string {
	var list []string
	if t.Closed() {
		return []string{sp.Say("planner.breaks.closed")}
	}
	if !t.DrinksFit {
		list = append(list, sp.Say("planner.breaks.notdrunk", sp.Millilitres(float64(t.DrinkableML)), sp.Millilitres(float64(t.PlannedML))))
	}
	if !t.FoodFits {
		list = append(list, sp.Say("planner.breaks.noteaten", sp.Words.List(sp.leftOver(s, t))))
	}
	return list
}

// leftOver are the portions that no break leaves time to eat.
func (sp Speaker) leftOver(s state.State, t plan.Schedule) []string {
	var list []string
	for f, x := range t.FoodLeft {
		if x > 0 {
			list = append(list, sp.Words.Portions(x, sp.ProductWithin(s.PlanCase, plan.Food1+plan.Slot(f))))
		}
	}
	return list
}

package session

import (
	"slices"
	"strings"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// AskRests shows what the plan is based on: the rate, each test and how much it
// counts, and what the heat asks for.
func AskRests(v *part.Plan) {
	list := look.VBox(8)
	var dialog *field.Dialog
	b, sp := v.Now.PlanCase.Basis, heat.Speaker{Speaker: v.Speaker.Speaker}
	ceiling := v.Now.PlanCase.Planner.CeilingOf(plan.Expected)
	list.Add(look.NewParagraph(planned(v, ceiling), look.Body, look.Ink))
	if made := limited(b.Calculation, ceiling); made != nil {
		list.Add(look.NewParagraph(sp.Answer(*made, heat.NoDays).Rests, look.Body, look.Ink))
		for _, line := range sp.Weights(*made) {
			list.Add(look.NewParagraph(line, look.Note, look.Ink2))
		}
		list.Add(look.HBox(10, field.NewLink(v.Desk.Host, "planner.basis.why", v.Speaker.Say("heat.why"), func() { heat.ShowWhy(v.Desk.Host, v.Canvas(), sp, *made) })))
	}
	if newer := newer(v); v.Now.Draft() && len(newer) > 0 {
		list.Add(look.HBox(10, field.NewButton(v.Desk.Host, "planner.newer", v.Speaker.Say("planner.newer", len(newer)), field.Outline, func() {
			v.Binder.Pick("planner.newer", func(s *part.Sheet) { takeIn(&s.Record, newer) })
			dialog.Close()
			AskRests(v)
		})))
	}
	if heat := HeatWord(v); heat != "" {
		list.Add(look.NewCaution(heat, wording.Sentences(v.Speaker.Say("caution.drinking"), v.Speaker.Say("caution.local-policy-wins")), nil))
	}
	dialog = v.Desk.Host.Ask(v.Canvas(), field.Question{
		Name: "planner.basis.ask", Title: v.Speaker.Say("planner.basis.title"), Width: 560, Content: list,
		Actions: []field.Action{{Name: "done", Text: v.Speaker.Say("planner.done"), Kind: field.Primary}},
	})
}

// planned says with what rate is planned, and what is the limit.
func planned(v *part.Plan, limit plan.Ceiling) string {
	sp, rate := v.Speaker, v.Now.PlanCase.Basis.Plan.SweatRate
	middle, ends := sp.Rate(rate.Value), sp.Rates(quantity.Range{Low: rate.Low, High: rate.High})
	if limit.Reason == plan.LowEnd {
		return sp.Say("planner.basis.planned", middle, ends)
	}
	return wording.Sentences(sp.Say("planner.basis.rate", middle, ends), sp.Ceiling(limit, limit.Reason))
}

// limited is a calculation that does not name its low end as the limit where another
// holds.
func limited(r *consult.Calculation, limit plan.Ceiling) *consult.Calculation {
	if r == nil || limit.Reason == plan.LowEnd {
		return r
	}
	other := *r
	other.Climate.Codes = slices.DeleteFunc(slices.Clone(r.Climate.Codes), func(code string) bool { return code == climate.CeilingIsLowEnd })
	return &other
}

// newer are the tests with a sweat rate that the plan does not name yet: it was
// begun before they were made.
func newer(v *part.Plan) []record.ID {
	named := append(strings.Fields(v.Now.Plan.Basis.PoolIDs), string(v.Now.Plan.Basis.TestID))
	var list []record.ID
	for _, f := range v.File.Tests {
		if rate := f.Sweat.Fluid.Rate; rate.Known && rate.Ranged && !slices.Contains(named, string(f.Test.ID)) {
			list = append(list, f.Test.ID)
		}
	}
	return list
}

// takeIn names more tests in the basis of a plan.
func takeIn(p *record.Plan, tests []record.ID) {
	ids := strings.Fields(p.Basis.PoolIDs)
	for _, id := range tests {
		ids = append(ids, string(id))
	}
	p.Basis.PoolIDs = strings.Join(ids, " ")
}

// HeatSpeaks reports whether the heat asks for more than usual care.
func HeatSpeaks(v *part.Plan) bool {
	r := v.Now.PlanCase.Basis.Calculation
	return r != nil && r.CautionKnown && r.Caution.Level > climate.Watch
}

// HeatWord says it in short: "WBGT about 30 °C: watch those at risk". Where
// something else than the WBGT decides, the level does not hang on it.
func HeatWord(v *part.Plan) string {
	r := v.Now.PlanCase.Basis.Calculation
	if r == nil || !r.CautionKnown {
		return ""
	}
	key := "planner.wbgt"
	if r.Caution.Decides != climate.CautionWBGT {
		key = "planner.wbgt.beside"
	}
	return v.Speaker.Say(key, v.Speaker.Warmth(r.Globe.WBGT.Value), v.Speaker.Say("level."+r.Caution.Level.Code()+".within"))
}

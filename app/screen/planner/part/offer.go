package part

import (
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/record"
)

// OfferAnew gives the options that still hold what was proposed what is proposed now:
// its ground has changed. Options changed by hand stay, and that is said.
func (v *Plan) OfferAnew(name string, was proposal.Proposal) {
	if !v.Now.Draft() {
		return
	}
	next, byHand := v.Now.PlanCase.OfferAnew(v.Now.Plan, func(kind record.OptionKind) (plan.Mix, bool) {
		return consult.Offered(was, kind)
	})
	v.Binder.Pick(name, func(s *Sheet) { s.Record.Options = next.Options })
	if len(byHand) > 0 {
		var names []string
		for _, o := range byHand {
			names = append(names, v.Speaker.OptionName(o))
		}
		v.Desk.Say(v.Speaker.Say("planner.anew.byhand", v.Speaker.Words.List(names)), "", nil)
	}
}

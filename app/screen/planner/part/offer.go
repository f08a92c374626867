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
	v.sayByHand(byHand)
}

// Restart puts a plan that starts from another habit in the place of the one that is
// open, as one step back: options that still hold what was proposed hold what is proposed
// from there. Options changed by hand stay, and that is said.
func (v *Plan) Restart(name string, p record.Plan) {
	was, open := v.Now.Proposal(), v.Now.PlanCase
	held := map[record.OptionKind]bool{}
	for _, o := range v.Now.Plan.Options {
		mix, ok := consult.Offered(was, o.Kind)
		held[o.Kind] = ok && open.MixOf(o) == mix
	}
	var byHand []record.Option
	if c, wrong, err := v.File.Lenient(p, v.Desk); wrong == nil && err == nil {
		p, byHand = c.OfferAnew(p, func(kind record.OptionKind) (plan.Mix, bool) {
			o, _ := consult.OptionOf(p, kind)
			return c.MixOf(o), held[kind]
		})
	}
	v.Binder.Pick(name, func(s *Sheet) {
		s.Record.Options, s.Record.UsualHabit, s.Record.Target, s.Record.Chances = p.Options, p.UsualHabit, p.Target, p.Chances
	})
	v.sayByHand(byHand)
}

// sayByHand names the options that were changed by hand and stay.
func (v *Plan) sayByHand(byHand []record.Option) {
	if len(byHand) > 0 {
		var names []string
		for _, o := range byHand {
			names = append(names, v.Speaker.OptionName(o))
		}
		v.Desk.Say(v.Speaker.Say("planner.anew.byhand", v.Speaker.Words.List(names)), "", nil)
	}
}

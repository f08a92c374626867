package climate

import (
	"slices"

	"ebbwell/internal/evidence"
)

// What to do so that the next plan is based on more.
const (
	// AdviseTestFirst: test before planning, in conditions like the planned.
	AdviseTestFirst = "advice.test-first"
	// AdviseWeighFirst: weigh before and after the first sessions there.
	AdviseWeighFirst = "advice.weigh-first-sessions"
	// AdviseRetestFirst and AdviseRetestSecond: test there between these
	// days of getting used to heat.
	AdviseRetestFirst  = "advice.retest-first"
	AdviseRetestSecond = "advice.retest-second"
	// AdviseTestAgain: the tests are old.
	AdviseTestAgain = "advice.test-again"
	// AdviseSecondTest: one test carries this; a second narrows the range.
	AdviseSecondTest = "advice.second-test"
)

// Advice is what to do, and on which days there, the first day being 1; both
// zero where no day is meant.
type Advice struct {
	Code              string
	FromDay, UntilDay int
}

// advise says how and when to test for the planned session.
func advise(b Basis, s *TestSet, plan Session) []Advice {
	var list []Advice
	add := func(yes bool, a Advice) {
		if yes {
			list = append(list, a)
		}
	}
	tested := b.Grade == Tested
	add(len(s.used) == 0, Advice{Code: AdviseTestFirst})
	add(tested && len(s.used) == 1, Advice{Code: AdviseSecondTest})
	add(!tested, Advice{Code: AdviseWeighFirst, FromDay: 1, UntilDay: 2})
	away := !tested && plan.State != Acclimatised && s.hotter(plan)
	add(away, Advice{AdviseRetestFirst, int(evidence.FirstRetestFrom), int(evidence.FirstRetestUntil)})
	add(away, Advice{AdviseRetestSecond, int(evidence.SecondRetestFrom), int(evidence.SecondRetestUntil)})
	add(!tested && s.old(), Advice{Code: AdviseTestAgain})
	return list
}

// hotter reports whether there are tests and the plan is clearly hotter than
// each, so that the body will change there.
func (s *TestSet) hotter(plan Session) bool {
	return len(s.used) > 0 && !slices.ContainsFunc(s.used, func(i int) bool {
		return plan.Weather.Temperature-s.tests[i].Session.Weather.Temperature <= evidence.RetestHotter
	})
}

// old reports whether there are tests and each is over a year old.
func (s *TestSet) old() bool {
	return len(s.used) > 0 && !slices.ContainsFunc(s.used, func(i int) bool { return s.tests[i].MonthsAgo <= evidence.TestAge })
}

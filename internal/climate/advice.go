package climate

import "ebbwell/internal/evidence"

// What to do so that the next plan rests on more.
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
func advise(b Basis, tests []Test, plan Session) []Advice {
	switch b.Kind {
	case OneTest:
		return []Advice{{Code: AdviseSecondTest}}
	case PooledTests:
		return nil
	}
	var list []Advice
	if b.Kind != Estimated {
		list = append(list, Advice{Code: AdviseTestFirst})
	}
	list = append(list, Advice{Code: AdviseWeighFirst, FromDay: 1, UntilDay: 2})
	if plan.State != Acclimatised && hotter(tests, plan) {
		list = append(list,
			Advice{AdviseRetestFirst, int(evidence.FirstRetestFrom), int(evidence.FirstRetestUntil)},
			Advice{AdviseRetestSecond, int(evidence.SecondRetestFrom), int(evidence.SecondRetestUntil)})
	}
	for _, c := range b.Coverage {
		for _, d := range c.Differences {
			if d.By == ByMonths && d.Grade > Tested && len(b.From) > 0 && c.Test == b.From[0] {
				list = append(list, Advice{Code: AdviseTestAgain})
			}
		}
	}
	return list
}

// hotter reports whether there are tests and the plan is hotter than each by
// more than a test covers, so that the body will change there.
func hotter(tests []Test, plan Session) bool {
	if len(tests) == 0 {
		return false
	}
	for _, t := range tests {
		if plan.Weather.Temperature-t.Session.Weather.Temperature <= evidence.TestedAir {
			return false
		}
	}
	return true
}

package climate

import "ebbwell/internal/evidence"

// LeftOut is one test against the estimate made from the athlete's others.
type LeftOut struct {
	Test  int
	Basis Basis
	// Inside: the measured rate lies in the estimate's 95 % range.
	Inside bool
}

// LeaveOneOut estimates every test from the others: how well the estimate
// would have done for this athlete. Tests whose estimate rests on nothing of
// the athlete's own (a group, the balance alone) are left out of the answer,
// as are tests that cannot be.
func LeaveOneOut(a Athlete, tests []Test) []LeftOut {
	var list []LeftOut
	known := limits(evidence.Limits())
	for i, t := range tests {
		if t.refused(known) != nil {
			continue
		}
		others := make([]Test, 0, len(tests))
		others = append(append(others, tests[:i]...), tests[i+1:]...)
		b, err := Estimate(a, others, t.Session)
		if err != nil {
			continue
		}
		switch b.Kind {
		case OneTest, PooledTests, Estimated:
			list = append(list, LeftOut{i, b, b.Rate.Ranged && b.Rate.Range.Contains(float64(t.Rate))})
		}
	}
	return list
}

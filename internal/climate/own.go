package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// Own is the basis of a session that no heat balance holds for: one in water, or of a
// body that sweats little however much must evaporate. What the athlete's own tests of
// just that session measured is all that is known; like are those, counted from 0 in
// tests. Without any there is no rate.
//
//	day = min(max(0.11, 0.133/lowest rate), 0.4)   0.133 = 0.15 √π/2 L/h
//	v_i = day² + min(u_i/rate_i, 0.4)²              ln mean = Σ(ln rate_i/v_i)/Σ(1/v_i)
//	h = max(1, (6 + chi2)/(6 + n))                  s² = (1/Σ(1/v_i) + day²) h
//	low = mean exp(-1.96 s)                         high = mean exp(1.96 s)
//
// Like days of one athlete differ by 0.15 L/h on average (Smith, Bello, Price 2021,
// Nutrients 13:1807), which is 11 % of a usual rate and a larger share of a low one. That
// and the rest is ours, with the bounds that [TestSet.Estimate] has.
func Own(tests []Test, like []int) Basis {
	b := Basis{Grade: Far, NotTested: 1, RangeOnly: true, Start: UsualStart(), Wider: 1, Coverage: make([]Coverage, len(tests))}
	for i := range tests {
		b.Coverage[i] = Coverage{Test: i, Grade: Far}
	}
	if len(like) == 0 {
		return b
	}
	day := square(dayToDay(tests, like))
	weights := make([]float64, len(tests))
	var weight, sum, chi2 float64
	for _, i := range like {
		weights[i] = 1 / (day + square(min(float64(tests[i].U/tests[i].Rate), evidence.TestErrorMost)))
		weight += weights[i]
		sum += weights[i] * math.Log(float64(tests[i].Rate))
	}
	mean := sum / weight
	for _, i := range like {
		chi2 += weights[i] * square(math.Log(float64(tests[i].Rate))-mean)
		b.Coverage[i] = Coverage{Test: i, Weight: weights[i] / weight, Grade: Tested}
	}
	b.Wider = max(1, (evidence.AgreeTests+chi2)/(evidence.AgreeTests+float64(len(like))))
	s := math.Sqrt((1/weight + day) * b.Wider)
	middle := math.Exp(mean)
	b.Rate = figure.Figure{Known: true, Value: middle, Unit: quantity.LitrePerHour, U: middle * s, Ranged: true,
		Range: quantity.Range{Low: middle * math.Exp(-evidence.CoverageFactor*s), High: middle * math.Exp(evidence.CoverageFactor*s)},
		Why:   figure.Why{Sources: []string{"day-to-day.rate", "day-to-day.rate.cv"}}}
	b.Grade, b.NotTested, b.RangeOnly, b.From, b.Codes = Tested, 0, false, like, []string{CeilingIsLowEnd}
	if b.Wider > 1 {
		b.Codes = append([]string{TestsDisagree}, b.Codes...)
	}
	return b
}

// dayToDay is how far a rate differs between like days, as a share of the lowest of the
// tests: an SD of its logarithm.
func dayToDay(tests []Test, like []int) float64 {
	lowest := math.Inf(1)
	for _, i := range like {
		lowest = min(lowest, float64(tests[i].Rate))
	}
	return min(max(evidence.DayToDayRateCV, evidence.DayToDayRate*math.Sqrt(math.Pi)/2/lowest), evidence.TestErrorMost)
}

package climate

import (
	"math"

	"ebbwell/internal/evidence"

	"gonum.org/v1/gonum/mat"
)

// Practised is an athlete of a practice, with the tests of one sport.
type Practised struct {
	Body  Body
	Tests []Test
}

// Learnt is what a practice's own tests of a sport say about an athlete who has
// none.
type Learnt struct {
	Start Start
	// Athletes are those with a test that counts; Tests all their tests.
	Athletes, Tests int
	// Inside and Below are how many tests lay inside the range, and below its low
	// end, that the practice's other athletes gave without them.
	Inside, Below int
	// Holds: there are enough athletes, and the ranges held.
	Holds bool
}

// levelled is one athlete's distance from the usual start: its mean over the
// tests, and the variance of that.
type levelled struct {
	set            *TestSet
	mean, variance float64
}

// LearnStart refits the offset and the spread of the usual start to a practice's
// own tests of one sport, drawn towards the usual ones as if these were eight
// athletes more.
//
//	e_a = 1'K⁻¹d / 1'K⁻¹1     v_a = 1 / 1'K⁻¹1          for each athlete
//	m = Σ e_a/v_a / Σ 1/v_a   offset = 0.33 + m n/(n + 8)
//	SD = 0.23 √((8 + Σ (e_a - m)²/v_a) / (8 + n - 1))
//
// It holds from eight athletes on, and while each athlete left out is covered by
// what the others say: at least 90 % of the tests inside, at most 5 % below the
// low end. A proposal. Tests that cannot be are left out.
func LearnStart(list []Practised) Learnt {
	var known []levelled
	l := Learnt{}
	for _, p := range list {
		s, err := NewTestSet(Athlete{Body: p.Body}, p.Tests)
		if err != nil || len(s.used) == 0 {
			continue
		}
		known = append(known, s.level())
		l.Tests += len(s.used)
	}
	l.Athletes, l.Start = len(known), startOf(known)
	for i, one := range known {
		others := append(append([]levelled(nil), known[:i]...), known[i+1:]...)
		without := TestSet{body: one.set.body, start: startOf(others)}
		for j, at := range one.set.used {
			low, _, high := without.outcome(&one.set.demands[j]).ends()
			switch rate := float64(one.set.tests[at].Rate); {
			case rate < low:
				l.Below++
			case rate <= high:
				l.Inside++
			}
		}
	}
	tests := float64(l.Tests)
	l.Holds = float64(l.Athletes) >= evidence.StartAthletes && float64(l.Inside) >= evidence.StartInside*tests && float64(l.Below) <= evidence.StartBelow*tests
	return l
}

// level is an athlete's distance from the usual start.
func (s *TestSet) level() levelled {
	n := len(s.used)
	ones, pull := mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
	for i := range n {
		ones.SetVec(i, 1)
	}
	s.solve(pull, ones)
	weight := mat.Dot(ones, pull)
	return levelled{s, mat.Dot(s.offset, pull) / weight, 1 / weight}
}

// startOf is the start that some athletes give.
func startOf(list []levelled) Start {
	usual, n := UsualStart(), float64(len(list))
	sum, weights := 0.0, 0.0
	for _, a := range list {
		sum += a.mean / a.variance
		weights += 1 / a.variance
	}
	if weights == 0 {
		return usual
	}
	mean, apart := sum/weights, 0.0
	for _, a := range list {
		apart += square(a.mean-mean) / a.variance
	}
	const prior = evidence.StartAthletes
	return Start{
		Offset: usual.Offset + mean*n/(n+prior), SD: usual.SD * math.Sqrt((prior+apart)/(prior+n-1)), Athletes: len(list),
	}
}

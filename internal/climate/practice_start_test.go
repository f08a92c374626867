package climate

import (
	"math"
	"math/rand/v2"
	"testing"

	"ebbwell/internal/quantity"
)

// practised draws athletes of one sport whose rates are the usual ones of the
// rule, times a level of the practice's own, a level of each, and days.
func practised(t *testing.T, athletes int, own, spread float64) []Practised {
	t.Helper()
	r := rand.New(rand.NewPCG(17, 4))
	var list []Practised
	for range athletes {
		a := drawTruthAthlete(r)
		level := own + spread*r.NormFloat64()
		p := Practised{Body: a.body}
		for range 1 + r.IntN(3) {
			s := a.session(t, r)
			usual := must[Basis](t)(Estimate(Athlete{Body: a.body}, nil, s)).Rate.Value
			rate := usual * math.Exp(level+0.1*r.NormFloat64())
			p.Tests = append(p.Tests, Test{Session: s, Rate: quantity.LitresPerHour(min(max(rate, 0.06), 5.9)), U: 0.04})
		}
		list = append(list, p)
	}
	return list
}

// TestPracticeStart: a practice whose athletes sweat less moves the start down,
// by less than they do; it counts from eight athletes on and where it holds.
func TestPracticeStart(t *testing.T) {
	usual := UsualStart()
	less := LearnStart(practised(t, 16, -0.3, 0.15))
	if !less.Holds || less.Athletes != 16 || less.Start.Athletes != 16 || less.Start.Offset >= usual.Offset-0.1 || less.Start.Offset <= usual.Offset-0.3 || less.Start.SD >= usual.SD {
		t.Errorf("sixteen who sweat less: %+v", less)
	}
	if few := LearnStart(practised(t, 7, -0.3, 0.15)); few.Holds || few.Athletes != 7 {
		t.Errorf("seven are enough: %+v", few)
	}
	if same := LearnStart(practised(t, 40, 0, 0.2)); math.Abs(same.Start.Offset-usual.Offset) > 0.1 || !same.Holds {
		t.Errorf("forty of the usual kind: %+v", same)
	}
	if none := LearnStart(nil); none.Holds || none.Start != usual {
		t.Errorf("nobody: %+v", none)
	}
}

// TestPracticeStartMustHold: a practice in two camps, whose athletes left out are
// not covered by the others, does not give the start.
func TestPracticeStartMustHold(t *testing.T) {
	list := append(practised(t, 8, -1.6, 0.05), practised(t, 2, 1.2, 0.05)...)
	if l := LearnStart(list); l.Holds || l.Inside+l.Below >= l.Tests+1 {
		t.Errorf("two camps: %+v", l)
	}
}

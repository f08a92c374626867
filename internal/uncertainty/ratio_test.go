package uncertainty

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestRatioIntervalCovers draws a ratio's two parts many times about their true
// values, correlated, and counts how often the range holds the true ratio: where
// the divisor is known to 5 % and where only to a third. The first-order range
// is counted beside it.
func TestRatioIntervalCovers(t *testing.T) {
	for _, c := range []struct {
		name   string
		q, r   float64
		uq, ur float64
		shared float64
	}{
		{"well known", 0.5, 2, 0.05, 0.1, 0.03},
		{"divisor to a quarter", 0.55, 0.6, 0.02, 0.15, 0.02},
		{"divisor to a third", 0.5, 0.3, 0.05, 0.1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			from := rand.New(rand.NewPCG(21, 22))
			const n = 20_000
			held, straight := 0, 0
			for range n {
				common := c.shared * from.NormFloat64()
				x := c.q + common + c.uq*from.NormFloat64()
				y := c.r + common + c.ur*from.NormFloat64()
				q := Measured(x, c.uq, Source{"q", 0}).With(c.shared, Source{"both", 0})
				r := Measured(y, c.ur, Source{"r", 0}).With(c.shared, Source{"both", 0})
				i, ok := q.RatioInterval(r)
				if !ok || i.Contains(c.q/c.r) {
					held++
				}
				if q.Over(r).Interval().Contains(c.q / c.r) {
					straight++
				}
			}
			// Draws that exclude no ratio count as held, so it may be more.
			if share := float64(held) / n; share < 0.945 || share > 0.98 {
				t.Errorf("the range holds the true ratio in %.3f of draws", share)
			}
			t.Logf("holds the true ratio in %.3f of draws, the first order in %.3f", float64(held)/n, float64(straight)/n)
		})
	}
}

func TestRatioIntervalEdges(t *testing.T) {
	q := Measured(0.5, 0.05, Source{"q", 0})
	if i, ok := q.RatioInterval(Measured(0.1, 0.1, Source{"r", 0})); ok {
		t.Errorf("a divisor that may be nought gives %v", i)
	}
	if i, ok := q.RatioInterval(Exact(2)); !ok || math.Abs(i.Low-(0.25-0.049)) > 1e-12 || math.Abs(i.High-(0.25+0.049)) > 1e-12 {
		t.Errorf("an exact divisor gives %v", i)
	}
	shared := Between(0, 1, Source{"shared", 0})
	if i, ok := shared.RatioInterval(Exact(2).Plus(shared)); !ok || i.Low != 0 || math.Abs(i.High-1.0/3) > 1e-12 {
		t.Errorf("bounded above and below gives %v", i)
	}
}

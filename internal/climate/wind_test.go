package climate

import (
	"math"
	"testing"
)

// The exponent of the wind profile by wind at 10 m and sun, after the urban table of the
// source: 0.15 where the sun stirs the air, to 0.30 in a still night.
func TestWindProfile(t *testing.T) {
	for _, c := range []struct{ wind, sun, want float64 }{
		{1, 0, 0.30}, {2.4, 0, 0.30}, {2.5, 0, 0.25}, {2.6, 0, 0.25}, {8, 0, 0.25},
		{1, 1000, 0.15}, {1, 925, 0.15}, {1, 924, 0.15}, {1, 700, 0.15}, {1, 200, 0.15}, {1, 175, 0.15}, {1, 174, 0.25}, {1, 100, 0.25},
		{2, 300, 0.20}, {2, 700, 0.15}, {2, 1000, 0.15}, {2, 100, 0.25}, {3, 300, 0.20}, {3, 675, 0.15}, {3, 674, 0.20}, {3, 100, 0.25}, {4.9, 950, 0.15},
		{5, 950, 0.20}, {5, 700, 0.20}, {5, 300, 0.25}, {5, 100, 0.25}, {6, 950, 0.20}, {6, 700, 0.25}, {6, 300, 0.25}, {6, 100, 0.25}, {5.9, 700, 0.20},
	} {
		if got := windPower(c.wind, c.sun); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%g m/s, %g W/m²: %g, want %g", c.wind, c.sun, got, c.want)
		}
	}
	if got, want := windAtInstruments(1, 0), math.Pow(0.2, 0.3); math.Abs(got-want) > 1e-12 {
		t.Errorf("1 m/s at night: %g at 2 m, want %g", got, want)
	}
	if got := windAtInstruments(0.05, 0); got != 0.13 {
		t.Errorf("calm: %g m/s", got)
	}
}

// The start of a practice holds from nine of ten tests inside their ranges on.
func TestStartHoldsFromNineOfTen(t *testing.T) {
	between, under := 0, 0
	for _, spread := range []float64{0.2, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4} {
		l := LearnStart(practised(t, 20, 0, spread))
		share, below := float64(l.Inside)/float64(l.Tests), float64(l.Below)/float64(l.Tests)
		if share >= 0.9 && share < 0.99 && below <= 0.025 {
			between++
			if !l.Holds {
				t.Errorf("%.1f %% inside, and it does not hold", 100*share)
			}
		}
		if share < 0.9 {
			under++
			if l.Holds {
				t.Errorf("%.1f %% inside, and it holds", 100*share)
			}
		}
	}
	if between == 0 || under == 0 {
		t.Errorf("%d practices at 90 to 99 %%, %d under", between, under)
	}
}

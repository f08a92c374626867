package uncertainty

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

func TestPropagateRefuses(t *testing.T) {
	one := []Variable{{1, 0.1, 0}}
	two := []Variable{{1, 0.1, 0}, {2, 0.1, 0}}
	same := func(x []float64) float64 { return x[0] }
	for _, c := range []struct {
		name  string
		model func([]float64) float64
		in    []Variable
		cor   [][]float64
		want  error
	}{
		{"rows", same, two, [][]float64{{1, 0}}, ErrCorrelation},
		{"columns", same, two, [][]float64{{1, 0}, {0}}, ErrCorrelation},
		{"not symmetric", same, two, [][]float64{{1, 0.1}, {0.2, 1}}, ErrCorrelation},
		{"beyond one", same, two, [][]float64{{1, 1.1}, {1.1, 1}}, ErrCorrelation},
		{"not a number in it", same, two, [][]float64{{1, math.NaN()}, {math.NaN(), 1}}, ErrCorrelation},
		{"diagonal", same, one, [][]float64{{0.5}}, ErrCorrelation},
		{"model", func([]float64) float64 { return math.NaN() }, one, nil, ErrNotFinite},
		{"input", same, []Variable{{math.Inf(1), 1, 0}}, nil, ErrNotFinite},
		{"uncertainty", same, []Variable{{1, math.Inf(1), 0}}, nil, ErrNotFinite},
	} {
		t.Run(c.name, func(t *testing.T) {
			if p, err := Propagate(c.model, c.in, c.cor); !errors.Is(err, c.want) {
				t.Errorf("got %+v, %v; want %v", p, err, c.want)
			}
		})
	}
}

func TestNoFreedomIsInfinite(t *testing.T) {
	p, err := Propagate(func(x []float64) float64 { return x[0] }, []Variable{{1, 0.1, 0}}, nil)
	if err != nil || !math.IsInf(p.Freedom, 1) {
		t.Errorf("freedom %g, %v", p.Freedom, err)
	}
}

func TestMonteCarloRefuses(t *testing.T) {
	from := rand.New(rand.NewPCG(1, 1))
	if _, err := MonteCarlo(add, make([]Distribution, 4), 99, from); !errors.Is(err, ErrDraws) {
		t.Errorf("99 draws: %v", err)
	}
	bad := func([]float64) float64 { return math.Inf(1) }
	if _, err := MonteCarlo(bad, nil, 100, from); !errors.Is(err, ErrNotFinite) {
		t.Errorf("infinite model: %v", err)
	}
}

func TestMonteCarloRepeats(t *testing.T) {
	run := func() Drawn {
		d, err := MonteCarlo(add, make([]Distribution, 4), 100, rand.New(rand.NewPCG(5, 6)))
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	if a, b := run(), run(); a.Mean != b.Mean || a.U != b.U {
		t.Errorf("one seed gave %v and %v", a, b)
	}
}

func TestQuantile(t *testing.T) {
	d := Drawn{sorted: []float64{1, 2, 3, 4, 5}}
	for _, c := range []struct{ share, want float64 }{{0, 1}, {1, 5}, {0.5, 3}, {0.625, 3.5}, {-1, 1}, {2, 5}} {
		if got := d.Quantile(c.share); got != c.want {
			t.Errorf("quantile %g: got %g, want %g", c.share, got, c.want)
		}
	}
	if !math.IsNaN(d.Quantile(math.NaN())) || !math.IsNaN(Drawn{}.Quantile(0.5)) {
		t.Error("a quantile of nothing is a number")
	}
}

// TestFirstOrderWhereStraight holds the first order against draws for a product
// and a quotient whose inputs are known to 5 % or better: within 5 %.
func TestFirstOrderWhereStraight(t *testing.T) {
	model := func(x []float64) float64 { return x[0] * x[1] / x[2] }
	rapid.Check(t, func(t *rapid.T) {
		in := make([]Variable, 3)
		draws := make([]Distribution, 3)
		for i := range in {
			x := rapid.Float64Range(1, 50).Draw(t, "x")
			u := x * rapid.Float64Range(0.005, 0.05).Draw(t, "relative u")
			in[i], draws[i] = Variable{x, u, 0}, Distribution{Normal, x, u}
		}
		p, err := Propagate(model, in, nil)
		if err != nil {
			t.Fatal(err)
		}
		d, err := MonteCarlo(model, draws, 20_000, rand.New(rand.NewPCG(7, rapid.Uint64().Draw(t, "seed"))))
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(p.U/d.U-1) > 0.05 {
			t.Fatalf("first order %g, drawn %g", p.U, d.U)
		}
	})
}

// TestFirstOrderWhereBent shows the models for which the first order must not
// be used: a square at its lowest point, where the slope is nought; and a
// quotient by something known to a third.
func TestFirstOrderWhereBent(t *testing.T) {
	for _, c := range []struct {
		name  string
		model func([]float64) float64
		in    Distribution
	}{
		{"square at nought", func(x []float64) float64 { return x[0] * x[0] }, Distribution{Normal, 0, 1}},
		{"divided by 1 ± 0.3", func(x []float64) float64 { return 1 / max(0.05, x[0]) }, Distribution{Normal, 1, 0.3}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := Propagate(c.model, []Variable{{c.in.Centre, c.in.U(), 0}}, nil)
			if err != nil {
				t.Fatal(err)
			}
			d, err := MonteCarlo(c.model, []Distribution{c.in}, 50_000, rand.New(rand.NewPCG(9, 9)))
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(p.U/d.U-1) < 0.2 {
				t.Errorf("first order %g and drawn %g agree; they should not", p.U, d.U)
			}
		})
	}
}

// TestDistributionsKeepTheirU draws each shape alone.
func TestDistributionsKeepTheirU(t *testing.T) {
	for _, d := range []Distribution{{Normal, 3, 2}, {Rectangular, 3, 2}, {Arcsine, 3, 2}} {
		got, err := MonteCarlo(func(x []float64) float64 { return x[0] }, []Distribution{d}, 100_000, rand.New(rand.NewPCG(11, 12)))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "u", got.U, d.U(), 0.01)
		near(t, "mean", got.Mean, 3, 0.02)
	}
}

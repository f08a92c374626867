package uncertainty

import (
	"math"
	"math/rand/v2"
	"testing"

	"ebbwell/internal/published"
)

// endGauge is example H.1 of JCGM 100:2008: the length of an end gauge at 20 °C,
// in nm, by comparison with a standard.
func endGauge(x []float64) float64 {
	standard, d, alpha, dAlpha, theta, dTheta := x[0], x[1]+x[2]+x[3], x[4], x[5], x[6]+x[7], x[8]
	return standard + d - standard*(dAlpha*theta+alpha*dTheta)
}

// endGaugeInputs are its inputs with their degrees of freedom.
func endGaugeInputs() ([]Variable, []Distribution) {
	d := []Distribution{
		{Normal, 50_000_623, 25}, {Normal, 215, 5.8}, {Normal, 0, 3.9}, {Normal, 0, 6.7},
		{Rectangular, 11.5e-6, 2e-6}, {Rectangular, 0, 1e-6},
		{Normal, -0.1, 0.2}, {Arcsine, 0, 0.5}, {Rectangular, 0, 0.05},
	}
	freedom := []float64{18, 24, 5, 8, 0, 50, 0, 0, 2}
	v := make([]Variable, len(d))
	for i := range d {
		v[i] = Variable{d[i].Centre, d[i].U(), freedom[i]}
	}
	return v, d
}

// impedance is example H.2: resistance, reactance and impedance from voltage,
// current and phase.
func impedance(of string) func([]float64) float64 {
	return func(x []float64) float64 {
		z := x[0] / x[1]
		switch of {
		case "R":
			return z * math.Cos(x[2])
		case "X":
			return z * math.Sin(x[2])
		}
		return z
	}
}

func impedanceInputs() ([]Variable, [][]float64) {
	return []Variable{{4.9990, 0.0032, 4}, {0.019661, 0.0000095, 4}, {1.04446, 0.00075, 4}},
		[][]float64{{1, -0.355, 0.858}, {-0.355, 1, -0.645}, {0.858, -0.645, 1}}
}

func add(x []float64) float64 { return x[0] + x[1] + x[2] + x[3] }

func TestPublished(t *testing.T) {
	must := func(p Propagated, err error) Propagated {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	gauge := func() Propagated {
		in, _ := endGaugeInputs()
		return must(Propagate(endGauge, in, nil))
	}
	ohm := func(of string) Propagated {
		in, r := impedanceInputs()
		return must(Propagate(impedance(of), in, r))
	}
	root3 := math.Sqrt(3)
	rectangles := []Distribution{{Rectangular, 0, root3}, {Rectangular, 0, root3}, {Rectangular, 0, root3}, {Rectangular, 0, root3}}
	published.Walk(t, "uncertainty", map[string]published.Model{
		"end gauge u":       func(published.In) any { return gauge().U },
		"end gauge freedom": func(published.In) any { return gauge().Freedom },
		"end gauge length":  func(published.In) any { return gauge().Value },
		"end gauge drawn u": func(published.In) any {
			_, in := endGaugeInputs()
			d, err := MonteCarlo(endGauge, in, 200_000, rand.New(rand.NewPCG(1, 2)))
			if err != nil {
				t.Fatal(err)
			}
			return d.U
		},
		"impedance value": func(in published.In) any { return ohm(in.Text("of")).Value },
		"impedance u":     func(in published.In) any { return ohm(in.Text("of")).U },
		"impedance correlation": func(in published.In) any {
			v, r := impedanceInputs()
			return CorrelationOf(ohm(in.Text("of")), ohm(in.Text("with")), v, r)
		},
		"four rectangles drawn": func(published.In) any {
			d, err := MonteCarlo(add, rectangles, 300_000, rand.New(rand.NewPCG(3, 4)))
			if err != nil {
				t.Fatal(err)
			}
			return d.Middle(0.95).Width() / 2
		},
		"four rectangles first order": func(published.In) any {
			q := Exact(0)
			for i, d := range rectangles {
				q = q.Plus(Measured(0, d.U(), Source{"rectangle", i}))
			}
			return q.Interval().High
		},
		"shape u": func(in published.In) any {
			shape := map[string]Shape{"rectangular": Rectangular, "arcsine": Arcsine}[in.Text("shape")]
			return Distribution{shape, 0, in.Number("half")}.U()
		},
		"step u": func(in published.In) any { return Between(0, in.Number("step"), Source{}).U() },
	})
}

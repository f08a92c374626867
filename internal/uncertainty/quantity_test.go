package uncertainty

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// near holds two numbers against each other, relative to their size.
func near(t testing.TB, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*max(1, math.Abs(want))) {
		t.Errorf("%s: got %.12g, want %.12g", what, got, want)
	}
}

func TestSharedOffsetCancels(t *testing.T) {
	offset := Source{"offset", 0}
	before := Measured(70, 0.03, Source{"before", 0}).With(0.2, offset)
	after := Measured(69, 0.04, Source{"after", 0}).With(0.2, offset)
	loss := before.Minus(after)
	near(t, "u of the difference", loss.U(), 0.05, 1e-12)
	if loss.From("offset") != 0 {
		t.Errorf("the offset of one scale gives the difference %g kg", loss.From("offset"))
	}
	if r := before.Correlation(after); r < 0.9 {
		t.Errorf("two weighings on one scale are correlated by %g only", r)
	}
	other := Measured(69, 0.04, Source{"after", 0}).With(0.2, Source{"offset", 1})
	near(t, "u on two scales", before.Minus(other).U(), math.Sqrt(0.05*0.05+0.08), 1e-12)
}

func TestBudget(t *testing.T) {
	q := Sum(
		Measured(1, 3, Source{"scale", 1}), Measured(1, 4, Source{"scale", 2}),
		Measured(1, 12, Source{"patch", 0}), Exact(5),
	)
	budget := q.Budget()
	if len(budget) != 2 || budget[0].Source != "patch" || budget[1].Source != "scale" {
		t.Fatalf("budget %v", budget)
	}
	near(t, "patch", budget[0].Part, 144.0/169, 1e-12)
	near(t, "from scale", q.From("scale"), 5, 1e-12)
	if Exact(3).Budget() != nil {
		t.Error("an exact quantity has a budget")
	}
}

func TestBetweenKeepsItsEnds(t *testing.T) {
	shared := Between(1, 0, Source{"shared", 0}) // turned round on purpose
	loss := Exact(2).Plus(shared)
	if r := loss.Interval(); r.Low != 2 || r.High != 3 {
		t.Errorf("interval %v, want 2 to 3", r)
	}
	// What was drunk comes back out of the loss exactly.
	if r := loss.Minus(shared).Interval(); r.Width() != 0 || r.Low != 2 {
		t.Errorf("interval %v, want 2 to 2", r)
	}
	// A quotient with the same bounded quantity above and below has true ends.
	if r := shared.Over(loss).Interval(); r.Low != 0 || math.Abs(r.High-1.0/3) > 1e-15 {
		t.Errorf("interval %v, want 0 to a third", r)
	}
	if low, high := loss.Scaled(-1).Ends(); low != -3 || high != -2 {
		t.Errorf("ends %g to %g, want -3 to -2", low, high)
	}
}

func TestWidth(t *testing.T) {
	q := Sum(Measured(0, 3, Source{"a", 0}), Measured(0, 4, Source{"b", 0}))
	near(t, "as it is", q.Width(nil), q.Interval().Width(), 1e-12)
	near(t, "without a", q.Width(map[string]float64{"a": 0}), 2*1.96*4, 1e-12)
	near(t, "a quarter of b", q.Width(map[string]float64{"b": 0.25}), 2*1.96*math.Sqrt(13), 1e-12)
	near(t, "bounded", q.Plus(Between(0, 1, Source{"c", 0})).Width(map[string]float64{"c": 0, "a": 0, "b": 0}), 0, 1e-12)
}

// drawn makes a random quantity over a few sources that others share.
func drawn(t *rapid.T, name string) Quantity {
	q := Exact(rapid.Float64Range(-50, 50).Draw(t, name))
	for i := range rapid.IntRange(0, 4).Draw(t, name+" sources") {
		u := rapid.Float64Range(0.01, 2).Draw(t, name+" u")
		q = q.With(u, Source{string(rune('a' + i)), rapid.IntRange(0, 2).Draw(t, name+" item")})
	}
	return q
}

func TestAlgebraProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q, r := drawn(t, "q"), drawn(t, "r")
		cor := q.Correlation(r)
		if !(math.Abs(cor) <= 1+1e-9) {
			t.Fatalf("correlation %g", cor)
		}
		v := q.U()*q.U() + r.U()*r.U() + 2*cor*q.U()*r.U()
		if sum := q.Plus(r).U(); math.Abs(sum*sum-v) > 1e-9*(1+v) {
			t.Fatalf("u² of the sum %g, by correlation %g", sum*sum, v)
		}
		if d := q.Minus(q); d.U() != 0 || d.Value() != 0 {
			t.Fatalf("q - q = %v", d)
		}
		if a, b := q.Times(r).U(), r.Times(q).U(); math.Abs(a-b) > 1e-9*(1+a) {
			t.Fatalf("u of q r %g, of r q %g", a, b)
		}
		total := 0.0
		budget := q.Plus(r).Budget()
		for i, s := range budget {
			total += s.Part
			if i > 0 && s.Part > budget[i-1].Part {
				t.Fatalf("budget not falling: %v", budget)
			}
		}
		if len(budget) > 0 && math.Abs(total-1) > 1e-9 {
			t.Fatalf("budget adds up to %g", total)
		}
		if i := q.Interval(); i.Width() < 0 || !i.Contains(q.Value()) {
			t.Fatalf("interval %v of %g", i, q.Value())
		}
	})
}

// TestAlgebraAgreesWithPropagate works a rate times a concentration out both
// ways, the inputs correlated through an offset they share.
func TestAlgebraAgreesWithPropagate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		before, after := draw("before", 60, 90), draw("after", 55, 59)
		hours, conc := draw("hours", 0.5, 3), draw("conc", 10, 80)
		u1, u2, offset := draw("u1", 0.01, 0.1), draw("u2", 0.01, 0.1), draw("offset", 0.01, 0.3)
		uh, uc := draw("uh", 0.01, 0.05), draw("uc", 1, 8)

		shared := Source{"offset", 0}
		q := Measured(before, u1, Source{"before", 0}).With(offset, shared).
			Minus(Measured(after, u2, Source{"after", 0}).With(offset, shared)).
			Over(Measured(hours, uh, Source{"time", 0})).
			Times(Measured(conc, uc, Source{"patch", 0}))

		ub, ua := math.Hypot(u1, offset), math.Hypot(u2, offset)
		r := offset * offset / (ub * ua)
		in := []Variable{{before, ub, 0}, {after, ua, 0}, {hours, uh, 0}, {conc, uc, 0}}
		cor := [][]float64{{1, r, 0, 0}, {r, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}}
		p, err := Propagate(func(x []float64) float64 { return (x[0] - x[1]) / x[2] * x[3] }, in, cor)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(p.U-q.U()) > 1e-4*p.U || math.Abs(p.Value-q.Value()) > 1e-9*math.Abs(p.Value) {
			t.Fatalf("algebra %g ± %g, propagation %g ± %g", q.Value(), q.U(), p.Value, p.U)
		}
	})
}

// A bias that is left in lowers the low end alone; the high end keeps the spread.
func TestBelow(t *testing.T) {
	q := Measured(2, 0.1, Source{Name: "scale"}).Plus(Below(0.3, Source{Name: "bias"}))
	r := q.Interval()
	if q.Value() != 2 || math.Abs(r.Low-(2-0.3-0.196)) > 1e-12 || math.Abs(r.High-2.196) > 1e-12 {
		t.Errorf("%v from %v to %v", q.Value(), r.Low, r.High)
	}
	half := q.Over(Exact(2))
	if low, high := half.Ends(); math.Abs(low-0.85) > 1e-12 || high != 1 {
		t.Errorf("half of it lies from %v to %v", low, high)
	}
	if u := q.U(); math.Abs(u-math.Hypot(0.1, 0.3/math.Sqrt(12))) > 1e-12 {
		t.Errorf("u %v", u)
	}
}

// A known bias moves the range and leaves the value, through sums and products.
func TestShifted(t *testing.T) {
	q := Measured(40, 5, Source{Name: "patch"}).Shifted(-3)
	if r := q.Interval(); q.Value() != 40 || math.Abs(r.Low-(37-9.8)) > 1e-12 || math.Abs(r.High-(37+9.8)) > 1e-12 {
		t.Errorf("%v, %+v", q.Value(), q.Interval())
	}
	if r := q.Times(Exact(2)).Interval(); math.Abs(r.Low+r.High-4*37) > 1e-12 {
		t.Errorf("twice as much lies in %+v", r)
	}
	if r := q.Plus(Measured(40, 5, Source{Name: "other"})).Scaled(0.5).Interval(); math.Abs(r.Low+r.High-2*38.5) > 1e-12 {
		t.Errorf("the mean with one without a bias lies in %+v", r)
	}
}

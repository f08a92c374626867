package smallest

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// small makes a problem that can be searched by trying everything; draw
// returns a whole number from low to high.
func small(draw func(low, high int) int) Problem {
	n := draw(1, 4)
	p := Problem{}
	for range n {
		step := []float64{50, 0.5, 0.1, 1}[draw(0, 3)]
		count := draw(1, 7)
		s := Slot{Cost: float64(draw(0, 3)) / step}
		for k := range count {
			s.Values = append(s.Values, float64(k)*step)
		}
		s.Home = s.Values[draw(0, count-1)]
		if draw(0, 2) == 0 { // a home between two steps
			s.Home += 0.3 * step
			s.Values = append(s.Values, s.Home)
			slices.Sort(s.Values)
		}
		p.Slots = append(p.Slots, s)
	}
	for range draw(0, 4) {
		r := Row{A: make([]float64, n)}
		counts := draw(0, 1) == 0 // whole numbers of steps, so that sums come in steps
		for i, s := range p.Slots {
			if top := s.Values[len(s.Values)-1]; top > 0 && counts {
				r.A[i] = float64(draw(-2, 3)) / s.Values[1]
			} else if top > 0 {
				r.A[i] = float64(draw(-5, 9)) / 4 / top
			}
			r.Most += r.A[i] * s.Values[draw(0, len(s.Values)-1)]
		}
		r.Most += float64(draw(-4, 4)) / 8
		p.Rows = append(p.Rows, r)
	}
	return p
}

// every calls f with all allowed values.
func every(p Problem, f func(x []float64)) {
	x := make([]float64, len(p.Slots))
	var walk func(i int)
	walk = func(i int) {
		if i == len(x) {
			f(x)
			return
		}
		for _, v := range p.Slots[i].Values {
			x[i] = v
			walk(i + 1)
		}
	}
	walk(0)
}

// judge is cost and moved slots of values.
func judge(p Problem, x []float64) (cost float64, moved int) {
	for i, s := range p.Slots {
		cost += s.cost(x[i])
		if x[i] != s.Home {
			moved++
		}
	}
	return cost, moved
}

// meetsAllBut reports whether values meet the rows, one left out.
func meetsAllBut(p Problem, x []float64, but int) bool {
	for i, r := range p.Rows {
		if i != but && !r.meets(x) {
			return false
		}
	}
	return true
}

func TestSolveAgainstTryingEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		checkSolve(t, small(func(low, high int) int { return rapid.IntRange(low, high).Draw(t, "n") }))
	})
	found := 0
	for i := range seeded {
		p := seededProblem(i)
		checkSolve(t, p)
		if ok, _ := p.Feasible(); ok {
			found++
		}
	}
	if found < seeded/10 || found > seeded-seeded/10 {
		t.Fatalf("%d of %d problems can be met: the draw tests one side only", found, seeded)
	}
}

func TestNearestAgainstTryingEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := small(func(low, high int) int { return rapid.IntRange(low, high).Draw(t, "n") })
		if n := len(p.Rows); n > 0 {
			checkNearest(t, p, rapid.IntRange(0, n-1).Draw(t, "soft"), grains()[rapid.IntRange(0, 2).Draw(t, "grain")])
		}
	})
	missed := 0
	for i := range seeded {
		p := seededProblem(i)
		for soft := range p.Rows {
			checkNearest(t, p, soft, grains()[i%3])
			if p.Nearest(soft, grains()[i%3]).Missed > 0 {
				missed++
			}
		}
	}
	if missed < seeded/10 {
		t.Fatalf("only %d rows were missed", missed)
	}
}

// seeded is how many problems are drawn evenly, beside the ones that rapid
// draws, which lean to small numbers.
const seeded = 1500

func seededProblem(i int) Problem {
	source := rand.New(rand.NewPCG(uint64(i), 2))
	return small(func(low, high int) int { return low + source.IntN(high-low+1) })
}

// failer is what rapid and testing share.
type failer interface {
	Fatalf(format string, args ...any)
}

func checkSolve(t failer, p Problem) {
	best, fewest, found := math.Inf(1), 0, false
	every(p, func(x []float64) {
		if !meetsAllBut(p, x, -1) {
			return
		}
		found = true
		cost, moved := judge(p, x)
		if cost < best-1e-7 || cost < best+1e-7 && moved < fewest {
			best, fewest = math.Min(cost, best), moved
		}
	})
	a := p.Solve()
	if !a.Proved || a.Found != found {
		t.Fatalf("found %v proved %v, want found %v", a.Found, a.Proved, found)
	}
	if ok, proved := p.Feasible(); ok != found || !proved {
		t.Fatalf("feasible %v, want %v", ok, found)
	}
	if !found {
		return
	}
	if !meetsAllBut(p, a.Values, -1) {
		t.Fatalf("%v misses a row", a.Values)
	}
	cost, moved := judge(p, a.Values)
	if math.Abs(cost-best) > 1e-6 || moved != fewest || moved != a.Moved || math.Abs(cost-a.Cost) > 1e-6 {
		t.Fatalf("cost %g moved %d (said %g, %d), want %g and %d", cost, moved, a.Cost, a.Moved, best, fewest)
	}
}

// grains are the sizes in which a miss is counted; zero counts it as it is.
func grains() [3]float64 { return [3]float64{0, 0.05, 0.4} }

func checkNearest(t failer, p Problem, soft int, grain float64) {
	best, found := math.Inf(1), false
	over := func(x []float64) float64 {
		missed := max(0, dot(p.Rows[soft].A, x)-p.Rows[soft].Most)
		if grain > 0 {
			missed = math.Ceil(missed/grain-1e-7) * grain
		}
		return missed
	}
	every(p, func(x []float64) {
		if meetsAllBut(p, x, soft) {
			found, best = true, min(best, over(x))
		}
	})
	least := math.Inf(1)
	every(p, func(x []float64) {
		if meetsAllBut(p, x, soft) && over(x) < best+1e-8 {
			cost, _ := judge(p, x)
			least = min(least, cost)
		}
	})
	a := p.Nearest(soft, grain)
	if a.Found != found || !a.Proved {
		t.Fatalf("found %v proved %v, want found %v", a.Found, a.Proved, found)
	}
	if !found {
		return
	}
	if a.Missed > best+1e-6 || !meetsAllBut(p, a.Values, soft) || math.Abs(over(a.Values)-best) > 1e-6 {
		t.Fatalf("missed %g, want %g", a.Missed, best)
	}
	if math.Abs(a.Cost-least) > 1e-6 {
		t.Fatalf("cost %g, want %g", a.Cost, least)
	}
}

package smallest

import (
	"math"
	"slices"
	"sort"
)

// Slot is one amount that can be moved.
type Slot struct {
	// Values are the allowed amounts, rising; Home is one of them.
	Values []float64
	Home   float64
	// Cost of moving by one unit, zero or more.
	Cost float64
}

// Row is a condition: the sum of A[i] * amount[i] is at most Most.
type Row struct {
	A    []float64
	Most float64
}

// Problem is slots and rows; every row has a coefficient for every slot.
type Problem struct {
	Slots []Slot
	Rows  []Row
}

// Answer of a search.
type Answer struct {
	// Found: Values meet every row (but the one let go).
	Found  bool
	Values []float64
	// Cost of the change, and how many slots it moves.
	Cost  float64
	Moved int
	// Missed is by how much the row that was let go is missed.
	Missed float64
	// Proved: nothing better exists (or nothing at all, when not Found).
	Proved bool
	// Nodes is how many linear programs were solved.
	Nodes int
}

// MaxNodes is where a search gives up; it is far above what plans need.
const MaxNodes = 200000

const (
	// slack is the rounding forgiven, relative to the size of what is summed.
	slack = 1e-9
	// close tells an allowed value from one between two.
	closeTo = 1e-7
)

// Solve returns the allowed values that meet all rows at the least cost, and
// among those of that cost one that moves the fewest slots.
func (p Problem) Solve() Answer {
	s := newSearch(p, -1)
	s.run(s.whole())
	answer := s.answer()
	if answer.Found && s.fewest(answer.Moved) {
		answer = s.answer()
	}
	answer.Nodes, answer.Proved = s.nodes, s.nodes < MaxNodes
	return answer
}

// Feasible reports whether any allowed values meet all rows; proved is false
// if the search gave up.
func (p Problem) Feasible() (found, proved bool) {
	s := newSearch(p, -1)
	s.first = true
	s.run(s.whole())
	return s.found, s.nodes < MaxNodes
}

// Nearest lets one row go: it returns values that meet all others and miss
// that one by least, counted in whole grains (the size of a miss that matters);
// among those, the smallest change.
func (p Problem) Nearest(row int, grain float64) Answer {
	s := newSearch(p, row)
	s.grain = grain
	s.run(s.whole())
	near := s.answer()
	if !near.Found {
		return near
	}
	soft := p.Rows[row]
	rows := slices.Clone(p.Rows)
	rows[row] = Row{A: soft.A, Most: soft.Most + s.best}
	answer := Problem{Slots: p.Slots, Rows: rows}.Solve()
	if answer.Found {
		answer.Missed = max(0, dot(soft.A, answer.Values)-soft.Most)
	}
	answer.Nodes += near.Nodes
	answer.Proved = answer.Proved && near.Proved
	return answer
}

// dot is the left side of a row.
func dot(a, x []float64) float64 {
	t := 0.0
	for i := range a {
		t += a[i] * x[i]
	}
	return t
}

// meets reports whether values meet a row, but for rounding.
func (r Row) meets(x []float64) bool {
	size := 1 + math.Abs(r.Most)
	for i := range r.A {
		size += math.Abs(r.A[i] * x[i])
	}
	return dot(r.A, x) <= r.Most+slack*size
}

// cost of moving a slot to a value.
func (s Slot) cost(x float64) float64 { return s.Cost * math.Abs(x-s.Home) }

// near returns the index of the allowed value nearest to x.
func (s Slot) near(x float64) int {
	i := sort.SearchFloat64s(s.Values, x)
	if i == len(s.Values) || (i > 0 && x-s.Values[i-1] < s.Values[i]-x) {
		i--
	}
	return i
}

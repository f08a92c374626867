package smallest

import (
	"math"
	"math/bits"
)

// span is the allowed values of a slot that are still open: indices, both in.
type span struct{ low, high int }

// room is what of a row's limit is still open to be left over.
type room struct{ low, high float64 }

// branch is a part of the search: what is open of every slot and row.
type branch struct {
	spans []span
	rooms []room
}

// search is one branch and bound.
type search struct {
	p    Problem
	soft int // row that is let go, or -1
	// first: stop at the first values that are good enough.
	first bool
	// grain steps the costs of a change, or what the soft row is missed by;
	// zero where they have no steps. Sums are what each row can come to.
	grain float64
	sums  []sums
	found bool
	best  float64 // cost, or what the soft row is missed by
	// values of the best so far, and room to round in.
	values, trial []float64
	nodes         int
	program       *program
}

func newSearch(p Problem, soft int) *search {
	tight, sums := p.tightened(soft)
	s := &search{p: p, soft: soft, best: math.Inf(1), sums: sums, program: newProgram(tight, soft)}
	if soft < 0 {
		s.grain = p.costGrain()
	}
	s.trial = make([]float64, len(p.Slots))
	return s
}

// whole opens every allowed value.
func (s *search) whole() *branch {
	b := &branch{spans: make([]span, len(s.p.Slots)), rooms: make([]room, len(s.p.Rows))}
	for i, slot := range s.p.Slots {
		b.spans[i] = span{low: 0, high: len(slot.Values) - 1}
	}
	for r := range b.rooms {
		b.rooms[r] = room{high: math.Inf(1)}
	}
	return b
}

// hold keeps the slots outside a set at home.
func (s *search) hold(b *branch, set uint) {
	for i, slot := range s.p.Slots {
		b.spans[i] = span{low: 0, high: len(slot.Values) - 1}
		if set&(1<<i) == 0 {
			at := slot.near(slot.Home)
			b.spans[i] = span{low: at, high: at}
		}
	}
}

// fewest looks for values of the best cost that move fewer slots than n: every
// smaller set of slots is tried, the smallest first.
func (s *search) fewest(n int) bool {
	s.first, s.best = true, s.best+slack*(1+s.best)
	b := s.whole()
	for size := range n {
		for set := range uint(1) << len(s.p.Slots) {
			if bits.OnesCount(set) != size {
				continue
			}
			s.found = false
			s.hold(b, set)
			s.run(b)
			if s.found {
				return true
			}
		}
	}
	return false
}

// answer reports the best found.
func (s *search) answer() Answer {
	a := Answer{Found: s.found, Nodes: s.nodes, Proved: s.nodes < MaxNodes}
	if !s.found {
		return a
	}
	a.Values = append([]float64(nil), s.values...)
	for i, slot := range s.p.Slots {
		a.Cost += slot.cost(s.values[i])
		if slot.Values[slot.near(slot.Home)] != s.values[i] {
			a.Moved++
		}
	}
	return a
}

// run searches one branch. It is left when its bound cannot beat the best.
func (s *search) run(b *branch) {
	if s.nodes >= MaxNodes || s.first && s.found {
		return
	}
	s.nodes++
	bound, ok := s.program.solve(b)
	if !ok || !s.better(s.lift(bound)) {
		return
	}
	at, x, reached := s.try(b)
	if reached {
		return
	}
	if r, below, above := s.between(); r >= 0 {
		s.part(b, r, below, above)
		return
	}
	if at < 0 {
		at, x = s.open(b)
	}
	if at >= 0 {
		s.split(b, at, x)
	}
}

// lift raises a bound to the next cost, or miss, that there can be.
func (s *search) lift(x float64) float64 {
	if s.grain == 0 {
		return x
	}
	return math.Ceil(x/s.grain-closeTo) * s.grain
}

// better reports whether a bound or a value beats the best so far.
func (s *search) better(x float64) bool {
	if math.IsInf(s.best, 1) || s.first && !s.found {
		return x <= s.best
	}
	return x < s.best-slack*(1+s.best)
}

// try rounds the program's answer to allowed values and keeps it when it
// meets the rows. Reached tells that the bound itself is reached, so that
// nothing better lies in the branch; at is the slot furthest from an allowed
// value, -1 when none is.
func (s *search) try(b *branch) (at int, x float64, reached bool) {
	at, off := -1, closeTo
	for i, slot := range s.p.Slots {
		y, sp := s.program.amount(i), b.spans[i]
		k := min(max(slot.near(y), sp.low), sp.high)
		s.trial[i] = slot.Values[k]
		if sp.low == sp.high {
			continue
		}
		gap := slot.Values[min(k+1, sp.high)] - slot.Values[max(k-1, sp.low)]
		if d := math.Abs(y-s.trial[i]) / gap; d > off {
			at, off, x = i, d, y
		}
	}
	met := s.keep()
	return at, x, met && at < 0 && !s.program.gaveUp
}

// keep takes the trial as the best when it meets the rows and is better.
func (s *search) keep() bool {
	value := 0.0
	for i, r := range s.p.Rows {
		if i == s.soft {
			value = s.lift(max(0, dot(r.A, s.trial)-r.Most))
		} else if !r.meets(s.trial) {
			return false
		}
	}
	if s.soft < 0 {
		for i, slot := range s.p.Slots {
			value += slot.cost(s.trial[i])
		}
	}
	if s.better(value) {
		s.found, s.best = true, value
		s.values = append(s.values[:0], s.trial...)
	}
	return true
}

// between returns a row whose sum in the program's answer lies between two
// that there can be; -1 when there is none. Of several it takes the one
// furthest from either.
func (s *search) between() (row int, below, above float64) {
	row, off := -1, 0.0
	for r, list := range s.sums {
		x := s.program.p.Rows[r].Most - s.program.left(r)
		lo, hi, ok := list.between(x)
		if d := min(x-lo, hi-x) / (hi - lo); ok && d > off {
			row, below, above, off = r, lo, hi, d
		}
	}
	return row, below, above
}

// part searches the two sides of a row's sum that lies between two there can be.
func (s *search) part(b *branch, r int, below, above float64) {
	most, open := s.program.p.Rows[r].Most, b.rooms[r]
	left := s.program.left(r)
	upper, lower := room{open.low, min(open.high, most-above)}, room{max(open.low, most-below), open.high}
	sides := [2]room{upper, lower}
	if left-upper.high > lower.low-left {
		sides[0], sides[1] = lower, upper
	}
	for _, side := range sides {
		if side.low <= side.high+closeTo*(1+math.Abs(most)) {
			side.high = max(side.low, side.high)
			b.rooms[r] = side
			s.run(b)
		}
	}
	b.rooms[r] = open
}

// open picks the slot with the most values left, where rounding alone decides.
func (s *search) open(b *branch) (at int, x float64) {
	at = -1
	for i, sp := range b.spans {
		if sp.high > sp.low && (at < 0 || sp.high-sp.low > b.spans[at].high-b.spans[at].low) {
			at, x = i, s.program.amount(i)
		}
	}
	return at, x
}

// split searches below and above a value of a slot, the nearer side first.
func (s *search) split(b *branch, at int, x float64) {
	slot, sp := s.p.Slots[at], b.spans[at]
	k := min(max(slot.near(x), sp.low), sp.high)
	cut := k // highest index of the lower part
	if slot.Values[k] > x && k > sp.low || k == sp.high {
		cut = k - 1
	}
	parts := [2]span{{sp.low, cut}, {cut + 1, sp.high}}
	if k > cut {
		parts[0], parts[1] = parts[1], parts[0]
	}
	for _, part := range parts {
		b.spans[at] = part
		s.run(b)
	}
	b.spans[at] = sp
}

package smallest

import "math"

// program is the linear program of one branch: every slot anywhere between
// its lowest and highest open value. A slot's amount is home + up - down, so
// the cost of a change is linear in up and down. Columns are the ups, the
// downs and, for a row that is let go, by how much it is missed; then the rows'
// own slack. It is solved by the dual simplex method with bounds: all columns
// start at their lower bound, where no cost is negative, and each step puts
// one row right.
type program struct {
	p    Problem
	soft int
	n    int // columns beside the slacks
	low  []float64
	high []float64
	cost []float64
	// The dictionary: basic[r] = b[r] - sum of t[r][k] * rest[k].
	basic, rest []int
	t           [][]float64
	b, d        []float64 // d is the reduced cost of rest[k]
	z           float64
	atHigh      []bool    // of a column in rest
	value       []float64 // of every column
	forgiven    []float64 // how far a column may lie outside its bounds
	gaveUp      bool      // the last program ran too long
}

// maxSteps is where a program is given up as too long; its branch is then
// split without a bound.
const maxSteps = 200

func newProgram(p Problem, soft int) *program {
	n := 2 * len(p.Slots)
	if soft >= 0 {
		n++
	}
	m := len(p.Rows)
	q := &program{p: p, soft: soft, n: n}
	q.low, q.high, q.cost = make([]float64, n+m), make([]float64, n+m), make([]float64, n+m)
	q.value, q.atHigh, q.forgiven = make([]float64, n+m), make([]bool, n+m), sizes(p, n+m)
	q.basic, q.rest = make([]int, m), make([]int, n)
	q.b, q.d = make([]float64, m), make([]float64, n)
	cells := make([]float64, m*n)
	q.t = make([][]float64, m)
	for r := range q.t {
		q.t[r] = cells[r*n : (r+1)*n]
	}
	for i, s := range p.Slots {
		if soft < 0 {
			q.cost[2*i], q.cost[2*i+1] = s.Cost, s.Cost
		}
	}
	if soft >= 0 {
		q.cost[n-1] = 1
	}
	return q
}

// sizes is how far each column may lie outside its bounds: the size of what is
// summed in it, times a little more than a row forgives allowed values.
func sizes(p Problem, columns int) []float64 {
	list := make([]float64, columns)
	at := columns - len(p.Rows)
	for c := range at {
		list[c] = closeTo / 10
	}
	for i, s := range p.Slots {
		most := 1 + math.Abs(s.Values[len(s.Values)-1])
		list[2*i], list[2*i+1] = closeTo/10*most, closeTo/10*most
	}
	for r, row := range p.Rows {
		size := 1 + math.Abs(row.Most)
		for i, a := range row.A {
			size += math.Abs(a * p.Slots[i].Values[len(p.Slots[i].Values)-1])
		}
		list[at+r] = closeTo / 10 * size
	}
	return list
}

// solve returns the least cost of a branch; ok is false when nothing in it
// meets the rows. A program that runs too long has a bound of zero.
func (q *program) solve(b *branch) (bound float64, ok bool) {
	q.start(b)
	q.gaveUp = false
	for range maxSteps {
		q.values()
		r, toHigh := q.worst()
		if r < 0 {
			return q.z + q.restCost(), true
		}
		k := q.entering(r, toHigh)
		if k < 0 {
			return 0, false
		}
		q.pivot(r, k, toHigh)
	}
	q.gaveUp = true
	return 0, true
}

// amount of a slot in the last answer.
func (q *program) amount(i int) float64 {
	return q.p.Slots[i].Home + q.value[2*i] - q.value[2*i+1]
}

// left is what of a row's limit is left in the last answer.
func (q *program) left(r int) float64 { return q.value[q.n+r] }

// start sets the bounds of a branch and the dictionary of slacks.
func (q *program) start(b *branch) {
	for i, s := range q.p.Slots {
		lo, hi := s.Values[b.spans[i].low]-s.Home, s.Values[b.spans[i].high]-s.Home
		q.low[2*i], q.high[2*i] = max(0, lo), max(0, hi)
		q.low[2*i+1], q.high[2*i+1] = max(0, -hi), max(0, -lo)
	}
	if q.soft >= 0 {
		q.low[q.n-1], q.high[q.n-1] = 0, math.Inf(1)
	}
	for k := range q.rest {
		q.rest[k], q.d[k], q.atHigh[k] = k, q.cost[k], false
	}
	q.z = 0
	for r, row := range q.p.Rows {
		slackColumn := q.n + r
		q.basic[r], q.low[slackColumn], q.high[slackColumn] = slackColumn, b.rooms[r].low, b.rooms[r].high
		q.b[r] = row.Most
		for i, a := range row.A {
			q.b[r] -= a * q.p.Slots[i].Home
			q.t[r][2*i], q.t[r][2*i+1] = a, -a
		}
		if q.soft >= 0 {
			q.t[r][q.n-1] = 0
			if r == q.soft {
				q.t[r][q.n-1] = -1
			}
		}
	}
}

// values works out every column from the dictionary.
func (q *program) values() {
	for _, c := range q.rest {
		q.value[c] = q.low[c]
		if q.atHigh[c] {
			q.value[c] = q.high[c]
		}
	}
	for r, c := range q.basic {
		v := q.b[r]
		for k, e := range q.rest {
			v -= q.t[r][k] * q.value[e]
		}
		q.value[c] = v
	}
}

// restCost is the cost of the columns at their bounds.
func (q *program) restCost() float64 {
	sum := 0.0
	for k, c := range q.rest {
		sum += q.d[k] * q.value[c]
	}
	return sum
}

// worst returns the row whose basic column is furthest outside its bounds,
// relative to the size of the row; -1 when all are inside.
func (q *program) worst() (row int, toHigh bool) {
	row, most := -1, 1.0
	for r, c := range q.basic {
		if out := (q.low[c] - q.value[c]) / q.forgiven[c]; out > most {
			row, toHigh, most = r, false, out
		}
		if out := (q.value[c] - q.high[c]) / q.forgiven[c]; out > most {
			row, toHigh, most = r, true, out
		}
	}
	return row, toHigh
}

// entering picks the column whose cost rises least while it puts a row right;
// -1 when none can.
func (q *program) entering(r int, toHigh bool) int {
	best, ratio, size := -1, math.Inf(1), 0.0
	for k, c := range q.rest {
		t := q.t[r][k]
		if toHigh {
			t = -t
		}
		if q.atHigh[c] {
			t = -t
		}
		if t >= -closeTo/100 || q.low[c] == q.high[c] {
			continue
		}
		x := math.Abs(q.d[k] / t)
		if x < ratio-slack || x < ratio+slack && -t > size {
			best, ratio, size = k, min(x, ratio), -t
		}
	}
	return best
}

// pivot swaps the basic column of a row, which goes to one of its bounds,
// with a column of the rest.
func (q *program) pivot(r, k int, toHigh bool) {
	row, t := q.t[r], q.t[r][k]
	for j := range row {
		row[j] /= t
	}
	row[k] = 1 / t
	q.b[r] /= t
	for i := range q.t {
		if i != r {
			q.clear(q.t[i], &q.b[i], row, q.b[r], k, t)
		}
	}
	f := q.d[k]
	q.z += f * q.b[r]
	for j := range q.d {
		q.d[j] -= f * row[j]
	}
	q.d[k] = -f / t
	out := q.basic[r]
	q.basic[r], q.rest[k] = q.rest[k], out
	q.atHigh[out] = toHigh
}

// clear takes the entering column out of another row.
func (q *program) clear(other []float64, b *float64, row []float64, rowB float64, k int, t float64) {
	f := other[k]
	if f == 0 {
		return
	}
	for j := range other {
		other[j] -= f * row[j]
	}
	other[k] = -f / t
	*b -= f * rowB
}

package smallest

import (
	"math"
	"slices"
)

// Amounts come in steps, and so do the costs of a change and the left sides
// of rows that count one thing, such as the volume drunk. A bound is lifted to
// the next cost there can be, and such a row's limit lowered to the next sum
// there can be: both leave the allowed values as they are and the program
// that ignores the steps less room.

// costGrain is the largest step that every cost is a multiple of; zero when
// there is none.
func (p Problem) costGrain() float64 {
	var all []float64
	for _, s := range p.Slots {
		for _, v := range s.Values {
			all = append(all, s.cost(v))
		}
	}
	return grainOf(all)
}

// grainOf is the smallest number above zero, or a half, a fifth or a tenth of
// it, when all are its multiples; otherwise zero.
func grainOf(all []float64) float64 {
	least := math.Inf(1)
	for _, x := range all {
		if x > closeTo {
			least = min(least, x)
		}
	}
	for _, part := range []float64{1, 2, 5, 10} {
		grain := least / part
		if !math.IsInf(grain, 1) && !slices.ContainsFunc(all, func(x float64) bool { return !multiple(x, grain) }) {
			return grain
		}
	}
	return 0
}

func multiple(x, grain float64) bool {
	k := x / grain
	return math.Abs(k-math.Round(k)) < closeTo*(1+k)
}

// tightened lowers the limits of rows whose sums come in steps, and returns
// the sums there can be; one row, that is let go, is left as it is.
func (p Problem) tightened(but int) (tight Problem, sums []sums) {
	tight = Problem{Slots: p.Slots, Rows: slices.Clone(p.Rows)}
	for i, r := range p.Rows {
		var list []float64
		if i != but {
			list = r.sums(p.Slots)
		}
		if n, on := slices.BinarySearch(list, r.Most); len(list) > 0 && !on && n > 0 {
			tight.Rows[i].Most = r.Most
			if n == len(list) || list[n]-r.Most > closeTo*(1+math.Abs(r.Most)) {
				tight.Rows[i].Most = list[n-1]
			}
		}
		sums = append(sums, list)
	}
	return tight, sums
}

// sums are what a row can come to, rising; none when they do not come in steps.
type sums []float64

// mostSums is where sums are too many to be told apart usefully.
const mostSums = 1 << 14

// sums lists what a row can come to when its parts come in steps.
func (r Row) sums(slots []Slot) sums {
	var all []float64
	base, span := 0.0, 0.0
	for i, s := range slots {
		first, last := r.A[i]*s.Values[0], r.A[i]*s.Values[len(s.Values)-1]
		base += min(first, last)
		span += math.Abs(last - first)
		for _, v := range s.Values[1:] {
			all = append(all, math.Abs(r.A[i]*(v-s.Values[0])))
		}
	}
	grain := grainOf(all)
	if grain == 0 || span/grain > mostSums {
		return nil
	}
	reached := newSteps(int(math.Round(span/grain)) + 1)
	for i, s := range slots {
		if r.A[i] != 0 {
			reached = reached.plus(r.A[i], s.Values, grain)
		}
	}
	return reached.list(base, grain)
}

// steps is a set of whole numbers from zero, a bit each.
type steps []uint64

func newSteps(n int) steps {
	s := make(steps, (n+63)/64)
	s[0] = 1
	return s
}

// plus adds each of a slot's parts to each number of the set.
func (s steps) plus(a float64, values []float64, grain float64) steps {
	sum := make(steps, len(s))
	from := values[0]
	if a < 0 {
		from = values[len(values)-1]
	}
	for _, v := range values {
		by := int(math.Round(a * (v - from) / grain))
		words, left := by/64, by%64
		for i := len(s) - 1; i >= words; i-- {
			x := s[i-words] << left
			if left > 0 && i > words {
				x |= s[i-words-1] >> (64 - left)
			}
			sum[i] |= x
		}
	}
	return sum
}

// list turns the set into sums.
func (s steps) list(base, grain float64) sums {
	var list sums
	for i, word := range s {
		for b := range 64 {
			if word&(1<<b) != 0 {
				list = append(list, base+float64(64*i+b)*grain)
			}
		}
	}
	return list
}

// between returns the two neighbouring sums about x; ok is false when x lies
// on one, or outside all.
func (s sums) between(x float64) (below, above float64, ok bool) {
	n, on := slices.BinarySearch(s, x)
	if on || n == 0 || n == len(s) {
		return 0, 0, false
	}
	below, above = s[n-1], s[n]
	near := (above - below) * 1e-5
	return below, above, x-below > near && above-x > near
}

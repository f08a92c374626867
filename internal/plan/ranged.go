package plan

import (
	"math"

	"ebbwell/internal/quantity"
)

// Ranged is a number with its 95 % range, made without allocation. The zero
// Ranged is unknown.
type Ranged struct {
	Known bool
	Value float64
	quantity.Range
}

// Between returns a known number with a range.
func Between(value, low, high float64) Ranged {
	return Ranged{Known: true, Value: value, Range: quantity.Range{Low: low, High: high}}
}

// times scales by a factor of zero or more.
func (r Ranged) times(f float64) Ranged {
	r.Value, r.Low, r.High = r.Value*f, r.Low*f, r.High*f
	return r
}

// plus moves value and range alike.
func (r Ranged) plus(x float64) Ranged {
	r.Value, r.Low, r.High = r.Value+x, r.Low+x, r.High+x
	return r
}

// product multiplies two independent numbers of zero or more. To first order
// (JCGM 100:2008, 5.1.6) the squares of the relative widths add; each side of
// the range is taken by itself, since the two need not be even.
func (r Ranged) product(q Ranged) Ranged {
	if !r.Known || !q.Known {
		return Ranged{}
	}
	v := r.Value * q.Value
	up := math.Hypot((r.High-r.Value)*q.Value, (q.High-q.Value)*r.Value)
	down := math.Hypot((r.Value-r.Low)*q.Value, (q.Value-q.Low)*r.Value)
	return Between(v, max(0, v-down), v+up)
}

// under divides x by the number; a low end of zero leaves the quotient's high
// end infinite, so it is then left without a range above the value.
func (r Ranged) under(x float64) Ranged {
	if !r.Known || !(r.Value > 0) {
		return Ranged{}
	}
	high := x / r.Value
	if r.Low > 0 {
		high = x / r.Low
	}
	return Between(x/r.Value, x/r.High, high)
}

package uncertainty

import (
	"cmp"
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Source is one independent cause of error. Name is what a budget calls it
// ("bottle.weighing"); Item tells apart independent errors of one name, such
// as the first and the second weighing.
type Source struct {
	Name string
	Item int
}

// part is the signed contribution of one source: sensitivity times standard
// uncertainty. A bounded part stands for a quantity known only between two
// ends; its spread is that of a rectangle between them (JCGM 100, 4.3.7).
type part struct {
	source  Source
	size    float64
	bounded bool
}

// Quantity is a value with the contribution of every source to its error.
// The zero Quantity is an exact zero. Quantities are immutable.
type Quantity struct {
	value float64
	// low and high are the value with every bounded quantity at its low, or
	// its high, end at once, and moved by what is known to be off.
	low, high float64
	parts     []part // sorted by source
}

// Exact is a value without error.
func Exact(x float64) Quantity { return Quantity{value: x, low: x, high: x} }

// Measured is a value with the standard uncertainty u of one source.
func Measured(x, u float64, s Source) Quantity {
	q := Exact(x)
	if u != 0 {
		q.parts = []part{{source: s, size: u}}
	}
	return q
}

// Between is a value known only to lie from low to high, both ends included.
// Its value is the middle; in results the two ends are kept as ends. Several
// such quantities go to their low ends together, so a result has to rise with
// all of them, or fall with all of them, for its ends to be the true ones.
func Between(low, high float64, s Source) Quantity {
	if low > high {
		low, high = high, low
	}
	q := Quantity{value: low + (high-low)/2, low: low, high: high}
	if u := (high - low) / math.Sqrt(12); u > 0 {
		q.parts = []part{{source: s, size: u, bounded: true}}
	}
	return q
}

// Below is a zero that may be too high by as much as depth, and never too low:
// a bias that is left in. Its value is the top; its low end is kept as an end.
func Below(depth float64, s Source) Quantity {
	q := Quantity{low: min(0, -depth), high: max(0, -depth)}
	if u := math.Abs(depth) / math.Sqrt(12); u > 0 {
		q.parts = []part{{source: s, size: u, bounded: true}}
	}
	return q
}

// Shifted leaves the value as it is and moves its range by so much: a bias that
// is known but not taken off the value.
func (q Quantity) Shifted(by float64) Quantity {
	q.low, q.high = q.low+by, q.high+by
	return q
}

// Value is the best value.
func (q Quantity) Value() float64 { return q.value }

// U is the standard uncertainty, bounded sources taken as rectangles.
func (q Quantity) U() float64 { return math.Sqrt(q.variance(true)) }

// Ends are the lowest and the highest value over the bounded quantities that
// went into q; both are the value where there are none, but for what it was
// [Quantity.Shifted] by.
func (q Quantity) Ends() (low, high float64) {
	return min(q.low, q.high), max(q.low, q.high)
}

// Interval is the 95 % range: the bounded ends as they are, and beyond them
// the coverage factor times what the other sources give.
func (q Quantity) Interval() quantity.Range {
	reach := evidence.CoverageFactor * math.Sqrt(q.variance(false))
	low, high := q.Ends()
	return quantity.Range{Low: low - reach, High: high + reach}
}

// variance sums the squares of the contributions.
func (q Quantity) variance(withBounded bool) float64 {
	sum := 0.0
	for _, p := range q.parts {
		if withBounded || !p.bounded {
			sum += p.size * p.size
		}
	}
	return sum
}

// Plus is q + r.
func (q Quantity) Plus(r Quantity) Quantity {
	return Quantity{q.value + r.value, q.low + r.low, q.high + r.high, merge(q.parts, 1, r.parts, 1)}
}

// Minus is q - r.
func (q Quantity) Minus(r Quantity) Quantity {
	return Quantity{q.value - r.value, q.low - r.low, q.high - r.high, merge(q.parts, 1, r.parts, -1)}
}

// Times is q × r, to first order.
func (q Quantity) Times(r Quantity) Quantity {
	return Quantity{q.value * r.value, q.low * r.low, q.high * r.high, merge(q.parts, r.value, r.parts, q.value)}
}

// Over is q ÷ r, to first order. Dividing by a zero value gives an infinite or
// undefined value: it is for the caller to ask first.
func (q Quantity) Over(r Quantity) Quantity {
	v := q.value / r.value
	return Quantity{v, q.low / r.low, q.high / r.high, merge(q.parts, 1/r.value, r.parts, -v/r.value)}
}

// Scaled is k × q for an exact k.
func (q Quantity) Scaled(k float64) Quantity {
	return Quantity{k * q.value, k * q.low, k * q.high, merge(q.parts, k, nil, 0)}
}

// With adds the error of one more independent source to q.
func (q Quantity) With(u float64, s Source) Quantity { return q.Plus(Measured(0, u, s)) }

// order sorts sources by name, then item.
func order(a, b Source) int {
	return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.Item, b.Item))
}

// merge combines two sorted lists of parts, each times its factor; parts that
// cancel fall out.
func merge(a []part, fa float64, b []part, fb float64) []part {
	if len(b) == 0 && fa == 1 {
		return a // never written to
	}
	if len(a) == 0 && fb == 1 {
		return b
	}
	list := make([]part, 0, len(a)+len(b))
	i, j := 0, 0
	for i < len(a) || j < len(b) {
		var p part
		switch {
		case j == len(b) || (i < len(a) && order(a[i].source, b[j].source) < 0):
			p = a[i]
			p.size *= fa
			i++
		case i == len(a) || order(a[i].source, b[j].source) > 0:
			p = b[j]
			p.size *= fb
			j++
		default:
			p = a[i]
			p.size = fa*a[i].size + fb*b[j].size
			i++
			j++
		}
		if p.size != 0 {
			list = append(list, p)
		}
	}
	return list
}

// Width is the width of the 95 % range if the sources named in leave kept only
// that share of their variance; a bounded source keeps its root of it. A nil
// map gives the width as it is.
func (q Quantity) Width(leave map[string]float64) float64 {
	low, high := q.Ends()
	spread, bounded, boundedLeft := 0.0, 0.0, 0.0
	for _, p := range q.parts {
		share, ok := leave[p.source.Name]
		if !ok {
			share = 1
		}
		if p.bounded {
			bounded += math.Abs(p.size)
			boundedLeft += math.Abs(p.size) * math.Sqrt(share)
			continue
		}
		spread += share * p.size * p.size
	}
	ends := high - low
	if bounded > 0 {
		ends *= boundedLeft / bounded
	}
	return ends + 2*evidence.CoverageFactor*math.Sqrt(spread)
}

package uncertainty

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// RatioInterval is the 95 % range of q ÷ r by Fieller's theorem (Fieller 1954,
// Journal of the Royal Statistical Society B 16:175): all ratios x for which
// q - x r could be nought. It stays right where r is not known well, and lies
// unevenly about the ratio there. ok is false when r itself could be nought:
// then no ratio can be excluded.
func (q Quantity) RatioInterval(r Quantity) (interval quantity.Range, ok bool) {
	const k2 = evidence.CoverageFactor * evidence.CoverageFactor
	a := r.value*r.value - k2*r.variance(false)
	b := q.value*r.value - k2*q.covariance(r)
	c := q.value*q.value - k2*q.variance(false)
	if !(a > 0) {
		return quantity.Range{}, false
	}
	reach := math.Sqrt(max(0, b*b-a*c)) / a
	ratio := q.Over(r)
	low, high := ratio.Ends()
	return quantity.Range{
		Low:  min(b/a-reach, ratio.value) + low - ratio.value,
		High: max(b/a+reach, ratio.value) + high - ratio.value,
	}, true
}

// covariance of the errors of q and r, bounded sources left out.
func (q Quantity) covariance(r Quantity) float64 {
	sum := 0.0
	i, j := 0, 0
	for i < len(q.parts) && j < len(r.parts) {
		switch order(q.parts[i].source, r.parts[j].source) {
		case -1:
			i++
		case 1:
			j++
		default:
			if !q.parts[i].bounded {
				sum += q.parts[i].size * r.parts[j].size
			}
			i++
			j++
		}
	}
	return sum
}

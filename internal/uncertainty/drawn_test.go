package uncertainty

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"ebbwell/internal/quantity"
)

// ErrDraws is too few draws to say anything about a range.
var ErrDraws = errors.New("too few draws")

// Drawn is what a Monte Carlo run found.
type Drawn struct {
	Mean float64
	// U is the standard deviation of the results.
	U      float64
	sorted []float64
}

// MonteCarlo draws the inputs n times, independently, and runs the model on
// each (JCGM 101:2008, clause 7). The random numbers come from the caller, so
// that a run can be repeated. It returns [ErrDraws] for fewer than 100 draws
// and [ErrNotFinite] when the model gives something that is not a number.
func MonteCarlo(model func([]float64) float64, in []Distribution, n int, from *rand.Rand) (Drawn, error) {
	if n < 100 {
		return Drawn{}, fmt.Errorf("draw %d times: %w", n, ErrDraws)
	}
	x := make([]float64, len(in))
	d := Drawn{sorted: make([]float64, n)}
	for k := range d.sorted {
		for i := range in {
			x[i] = in[i].draw(from)
		}
		y := model(x)
		if math.IsNaN(y) || math.IsInf(y, 0) {
			return Drawn{}, fmt.Errorf("draw %d: %w", k+1, ErrNotFinite)
		}
		d.sorted[k] = y
	}
	d.Mean, d.U = moments(d.sorted)
	slices.Sort(d.sorted)
	return d, nil
}

// Middle is the range that holds a share of the results, as many left out
// below as above (JCGM 101, 7.7); 0.95 for the 95 % range.
func (d Drawn) Middle(share float64) quantity.Range {
	tail := (1 - share) / 2
	return quantity.Range{Low: d.Quantile(tail), High: d.Quantile(1 - tail)}
}

// Quantile is the value below which a share of the results lies, between two
// results in proportion. A share beyond 0 to 1 gives the nearest end.
func (d Drawn) Quantile(share float64) float64 {
	at := share * float64(len(d.sorted)-1)
	i := int(math.Floor(at))
	switch {
	case len(d.sorted) == 0 || math.IsNaN(share):
		return math.NaN()
	case i < 0:
		return d.sorted[0]
	case i >= len(d.sorted)-1:
		return d.sorted[len(d.sorted)-1]
	}
	return d.sorted[i] + (at-float64(i))*(d.sorted[i+1]-d.sorted[i])
}

// moments are the mean and the standard deviation, in two passes.
func moments(list []float64) (mean, sd float64) {
	for _, y := range list {
		mean += y
	}
	mean /= float64(len(list))
	for _, y := range list {
		sd += (y - mean) * (y - mean)
	}
	return mean, math.Sqrt(sd / float64(len(list)-1))
}

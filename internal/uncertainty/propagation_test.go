package uncertainty

import (
	"errors"
	"fmt"
	"math"
)

// What can be wrong with the inputs of a propagation.
var (
	// ErrCorrelation: the matrix has the wrong size, is not symmetric, or
	// holds a coefficient beyond 1.
	ErrCorrelation = errors.New("not a correlation matrix")
	// ErrNotFinite: the model, an input or an uncertainty is not a number.
	ErrNotFinite = errors.New("not a finite number")
)

// Variable is one input of a model.
type Variable struct {
	Value float64
	// U is the standard uncertainty.
	U float64
	// Freedom is the degrees of freedom of U; zero means known exactly.
	Freedom float64
}

// Propagated is a result of a model with its first-order uncertainty.
type Propagated struct {
	Value float64
	U     float64
	// Sensitivity is the partial derivative by each input.
	Sensitivity []float64
	// Freedom is the effective degrees of freedom (JCGM 100, G.4.1); infinite
	// when no input has any. It is meant for inputs without correlation.
	Freedom float64
}

// Propagate carries the uncertainties of the inputs through a model to first
// order (JCGM 100:2008, equation 13). A nil correlation means independent
// inputs. Sensitivities are central differences over a thousandth of a
// standard uncertainty, or over what the precision of the numbers asks for.
//
// Not for models that bend over the spread of their inputs: compare
// [MonteCarlo]. It returns [ErrCorrelation] or [ErrNotFinite].
func Propagate(model func([]float64) float64, in []Variable, correlation [][]float64) (Propagated, error) {
	if err := checkCorrelation(correlation, len(in)); err != nil {
		return Propagated{}, err
	}
	x := make([]float64, len(in))
	for i, v := range in {
		x[i] = v.Value
	}
	p := Propagated{Value: model(x), Sensitivity: make([]float64, len(in))}
	for i, v := range in {
		p.Sensitivity[i] = slope(model, x, i, v.U)
		if math.IsNaN(p.Sensitivity[i]) || math.IsInf(p.Sensitivity[i], 0) || math.IsNaN(v.U) {
			return Propagated{}, fmt.Errorf("propagate input %d: %w", i+1, ErrNotFinite)
		}
	}
	if math.IsNaN(p.Value) || math.IsInf(p.Value, 0) {
		return Propagated{}, fmt.Errorf("propagate: model at its inputs: %w", ErrNotFinite)
	}
	p.U = math.Sqrt(max(0, covariance(p, p, in, correlation)))
	if math.IsNaN(p.U) || math.IsInf(p.U, 0) {
		return Propagated{}, fmt.Errorf("propagate: uncertainty: %w", ErrNotFinite)
	}
	p.Freedom = welchSatterthwaite(p, in)
	return p, nil
}

// CorrelationOf is the coefficient between two results of the same inputs
// (JCGM 100, H.2.3); zero when one of them is exact.
func CorrelationOf(a, b Propagated, in []Variable, correlation [][]float64) float64 {
	if a.U == 0 || b.U == 0 {
		return 0
	}
	return covariance(a, b, in, correlation) / (a.U * b.U)
}

// slope is the partial derivative of a model by input i.
func slope(model func([]float64) float64, x []float64, i int, u float64) float64 {
	step := max(u/1000, math.Cbrt(epsilon)*math.Abs(x[i]))
	if step == 0 {
		step = math.Cbrt(epsilon)
	}
	at := append([]float64(nil), x...)
	at[i] = x[i] + step
	above, high := model(at), at[i]
	at[i] = x[i] - step
	below, low := model(at), at[i]
	return (above - below) / (high - low)
}

// epsilon is the spacing of numbers at 1.
const epsilon = 0x1p-52

// covariance is the double sum over the inputs.
func covariance(a, b Propagated, in []Variable, correlation [][]float64) float64 {
	sum := 0.0
	for i := range in {
		for j := range in {
			r := 0.0
			switch {
			case correlation != nil:
				r = correlation[i][j]
			case i == j:
				r = 1
			}
			sum += a.Sensitivity[i] * b.Sensitivity[j] * in[i].U * in[j].U * r
		}
	}
	return sum
}

// welchSatterthwaite gives the effective degrees of freedom (JCGM 100, G.2b).
func welchSatterthwaite(p Propagated, in []Variable) float64 {
	sum := 0.0
	for i, v := range in {
		if v.Freedom > 0 {
			sum += math.Pow(p.Sensitivity[i]*v.U, 4) / v.Freedom
		}
	}
	if sum == 0 {
		return math.Inf(1)
	}
	return math.Pow(p.U, 4) / sum
}

// checkCorrelation accepts nil, or a symmetric matrix with ones on its diagonal.
func checkCorrelation(r [][]float64, n int) error {
	if r == nil {
		return nil
	}
	if len(r) != n {
		return fmt.Errorf("%w: %d rows for %d inputs", ErrCorrelation, len(r), n)
	}
	for i := range r {
		if len(r[i]) != n {
			return fmt.Errorf("%w: row %d has %d columns for %d inputs", ErrCorrelation, i+1, len(r[i]), n)
		}
	}
	for i := range r {
		for j := range r {
			if (i == j && r[i][j] != 1) || !(math.Abs(r[i][j]) <= 1) || r[i][j] != r[j][i] {
				return fmt.Errorf("%w: %g in row %d, column %d", ErrCorrelation, r[i][j], i+1, j+1)
			}
		}
	}
	return nil
}

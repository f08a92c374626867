package consult

import (
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// HeatDot is a test on the basis of a [Calculation.HeatCurve]: at the curve's
// effort, humidity, sun and wind, in the test's own air temperature.
type HeatDot struct {
	Test *Findings
	// Temperature is the test's, °C.
	Temperature float64
	// Rate is the test's rate on that basis and U its standard uncertainty, L/h;
	// Measured is the rate as measured, L/h, with breath and gas exchange taken off
	// as in Rate.
	Rate, U, Measured float64
}

// HeatDots are the compared tests with an air temperature, newest first. A test that
// cannot be put on the basis of the curve stands as measured.
func (r Calculation) HeatDots(a record.Athlete, d Setup) []HeatDot {
	var list []HeatDot
	for i := range r.Tests {
		f := &r.Tests[i]
		air := f.Test.Air.Temperature
		if !air.Known() {
			continue
		}
		dot := HeatDot{Test: f, Temperature: *air.Value, Rate: float64(r.Compared[i].Rate), U: float64(r.Compared[i].U), Measured: float64(r.Compared[i].Rate)}
		if rate, ok := r.moved(i, dot.Temperature, a, d); ok && dot.Measured > 0 {
			dot.U *= rate / dot.Measured
			dot.Rate = rate
		}
		list = append(list, dot)
	}
	return list
}

// moved is the rate of a compared test in the outing at a temperature, L/h.
func (r Calculation) moved(i int, temperature float64, a record.Athlete, d Setup) (float64, bool) {
	if r.set == nil || r.AssumedAir {
		return 0, false
	}
	o := r.Outing
	o.Air.Temperature = record.Num(temperature, quantity.DegreeCelsius)
	session, err := SessionFor(o, a, r.body, d)
	if err != nil {
		return 0, false
	}
	rate, ok := r.set.Moved(i, session)
	return float64(rate), ok
}

package athlete

import (
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
)

// answer is what the tests of an athlete say of the last test's session at other
// temperatures.
type answer struct {
	// calculation is nil where no test can be asked.
	calculation *consult.Calculation
	// dots are the tests on the basis of that session, curve its rates, untested the
	// stops of trips to come whose air no test covers.
	dots     []consult.HeatDot
	curve    []consult.CurvePoint
	untested []consult.StopPoint
}

// answer asks the tests. An error says that the table of climates cannot be read.
func (f file) answer(with consult.Setup) (a answer, err error) {
	last, ok := f.planned()
	if !ok {
		return a, nil
	}
	o := consult.Again(last)
	if o.Session.Sport == "" {
		o.Session.Sport = f.athlete.Sport
	}
	r, cannot := consult.Calculate(o, f.athlete, f.tests, f.now, with)
	if cannot != nil {
		return a, nil //nolint:nilerr // that test has no curve; the rest of the page stands
	}
	a.calculation, a.dots = &r, r.HeatDots(f.athlete, with)
	if !r.AssumedAir {
		a.curve = r.HeatCurve(f.athlete, heatLow, heatHigh, heatStep, with)
	}
	if len(f.trips) == 0 {
		return a, nil
	}
	places, err := climate.LoadPlaces()
	if err != nil {
		return a, err
	}
	a.untested = r.Untested(f.trips, f.athlete, f.today(), places, with)
	return a, nil
}

// answered asks the tests on the window's thread.
func (v *Overview) answered() answer {
	a, err := v.file.answer(v.desk.Calculate())
	if err != nil {
		v.desk.Trouble(err)
	}
	return a
}

package consult

import (
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// breath is water breathed out and gas exchange, kg/h. They belong to the deficit
// and are no sweat. By the field method both stay in the sweat rate and are zero
// here.
type breath struct{ respiratory, exchange float64 }

// breathOfTest is what a test took off, by the hour.
func breathOfTest(f Findings) breath {
	var b breath
	for _, c := range f.Sweat.Corrections {
		if !c.On || !c.Size.Known || !f.Timed || f.Minutes <= 0 {
			continue
		}
		hourly := c.Size.Value * 60 / f.Minutes
		if c.ID == sweat.Respiratory {
			b.respiratory = max(0, hourly)
		} else {
			b.exchange = hourly
		}
	}
	return b
}

// breathOf is what a session takes off in its air, by the same two formulas as a
// test; weighed is the sheet whose mass counts, nil for the usual mass.
func breathOf(o Outing, a record.Athlete, weighed *record.Test, d Setup) breath {
	t := record.Test{Session: o.Session, Air: o.Air}
	mass := usualMass(a)
	if weighed != nil {
		mass = sessionMass(*weighed, a)
	}
	if mass <= 0 || o.Minutes <= 0 {
		return breath{}
	}
	t.Weighings = []record.Weighing{{Moment: record.Before, Mass: record.Num(mass, quantity.Kilogram)}}
	in := SheetInput(t, a, nil, d)
	minutes := quantity.Minutes(o.Minutes)
	in.Time.Elapsed = &minutes
	r, err := sweat.Evaluate(in)
	if err != nil {
		return breath{}
	}
	return breathOfTest(Findings{Minutes: o.Minutes, Timed: true, Sweat: r})
}

// fieldBias is how much too high the rates of tests by the field method may be, as
// a share: the largest of them. The low end of a plan reaches down for it.
func fieldBias(tests []Findings) float64 {
	share := 0.0
	for _, f := range tests {
		if rate := f.Sweat.Fluid.Rate.Value; rate > 0 {
			share = min(1, max(share, f.Sweat.Fluid.Bias/rate))
		}
	}
	return share
}

package climate

import "ebbwell/internal/evidence"

// marks note when the limits of exposure are reached.
type marks struct{ rectal, mean, most passing }

// newMarks sets the limits for a body mass in kg; grams turns the sum of
// minutes into g.
func newMarks(mass, grams float64) marks {
	body := 1000 * mass / grams
	return marks{
		rectal: passing{level: evidence.RectalLimit},
		mean:   passing{level: evidence.LossLimitMean * body},
		most:   passing{level: evidence.LossLimitMost * body},
	}
}

// note looks at one minute: rectal temperature, and the sum of water.
func (m *marks) note(minute int, rectal, water float64) {
	m.rectal.note(minute, rectal)
	m.mean.note(minute, water)
	m.most.note(minute, water)
}

// fill puts the limits into a result. Who cannot drink has three fifths of the
// time to 5 % for both.
func (m *marks) fill(r *StrainResult, in StrainInput) {
	r.RectalLimit, r.MeanLossLimit, r.MostLossLimit = m.rectal.or(in.Minutes), m.mean.or(in.Minutes), m.most.or(in.Minutes)
	if in.NoDrink {
		r.MostLossLimit *= evidence.NoDrinkFactor
		r.MeanLossLimit = r.MostLossLimit
	}
}

// passing notes the first minute at which a level is reached.
type passing struct {
	level  float64
	minute int
}

// note looks at one minute's value.
func (p *passing) note(minute int, x float64) {
	if p.minute == 0 && x >= p.level {
		p.minute = minute
	}
}

// or is the minute of the passing, or the duration when there was none.
func (p *passing) or(duration int) float64 {
	if p.minute == 0 {
		return float64(duration)
	}
	return float64(p.minute)
}

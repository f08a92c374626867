package plan

import "ebbwell/internal/sweat"

// Kind says what a basis is.
type Kind int

// What a plan can be based on.
const (
	Test Kind = iota
	Pool
	Estimate
)

// Body is what the plan needs to know of the athlete's body. What may be seen of
// it is the screen's business, but for the one limit that is made with the mass.
type Body struct {
	MassKg float64
	// HeightM and AgeYears are zero when unknown.
	HeightM  float64
	AgeYears float64
	Sex      sweat.Sex
	// Hidden: the mass is not to be worked out from where a slider stops.
	Hidden bool
}

// Basis is what a plan is based on.
type Basis struct {
	Kind Kind
	// Code names the basis in the catalogue of texts.
	Code string
	// Tests is how many tests stand behind it.
	Tests int
	// Tested: the athlete's own tests speak for such a session.
	Tested bool
	// Cool: so little has to evaporate that the limit of drinking is unsure.
	Cool bool
	// SweatRate in L/h with the planned 95 % range, day-to-day spread
	// included.
	SweatRate Ranged
	// RespiratoryLH is water lost by breathing and ExchangeLH the mass of gas
	// exchange, kg/h: part of the deficit, which is what the scale says, never of
	// the ceiling. Both are zero where the sweat rate holds them.
	RespiratoryLH, ExchangeLH float64
	// Split is how the loss is shared within the session, where it was weighed there.
	Split Split
	// Sodium is the whole-body sweat sodium concentration in mmol/L; unknown
	// while the laboratory has not answered.
	Sodium Ranged
	// PotassiumMmolL is the sweat potassium; zero where it was not measured.
	PotassiumMmolL float64
	Body           Body
	// Usual is what the stomach is used to.
	Usual Usual
}

// Split is how the loss of a session is shared between two parts of it: the first
// ends at the share At of its time and has the share Share of its loss, both 0 to 1.
// The zero Split is an even rate.
type Split struct{ At, Share float64 }

// by is the share of the loss by a share of the time.
func (s Split) by(time float64) float64 {
	switch {
	case !(s.At > 0 && s.At < 1):
		return time
	case time <= s.At:
		return time / s.At * s.Share
	}
	return s.Share + (time-s.At)/(1-s.At)*(1-s.Share)
}

// BreathLH is water breathed out and gas exchange together, kg/h.
func (b Basis) BreathLH() float64 { return b.RespiratoryLH + b.ExchangeLH }

// Usual is the drinking rate that the athlete's stomach is used to; it rises
// only by a review.
type Usual struct {
	Known bool
	LH    float64 // L/h
}

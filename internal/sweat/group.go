package sweat

import (
	"math"

	"ebbwell/internal/evidence"
)

// Place is where a value stands in a published group.
type Place struct {
	Group evidence.Group
	// Below is the share of the group with less, 0 to 1; approximate.
	Below float64
}

// LogNormal gives the logarithmic mean and standard deviation of a log-normal
// distribution with a mean and a standard deviation, both above zero:
// s² = ln(1 + SD²/mean²), mu = ln mean - s²/2. Sweat is skewed to the right, and
// this is an approximation of the group, not its data.
func LogNormal(mean, sd float64) (mu, s float64) {
	s2 := math.Log1p(sd * sd / (mean * mean))
	return math.Log(mean) - s2/2, math.Sqrt(s2)
}

// PlaceIn places a value in a group. A value of zero or less has nobody below
// it; ok is false for one that is not a number.
func PlaceIn(g evidence.Group, x float64) (p Place, ok bool) {
	if math.IsNaN(x) {
		return Place{}, false
	}
	p.Group = g
	if x > 0 {
		mu, s := LogNormal(g.Mean, g.SD)
		p.Below = math.Erfc(-(math.Log(x)-mu)/(s*math.Sqrt2)) / 2
	}
	return p, true
}

// GroupsFor lists the groups of a measure: the sport's own first, where there
// is one, then the group of many sports.
func GroupsFor(m evidence.Measure, sport string) []evidence.Group {
	var own, many []evidence.Group
	for _, g := range evidence.Groups() {
		switch {
		case g.Measure != m:
		case g.Sport == "":
			many = append(many, g)
		case g.Sport == sport:
			own = append(own, g)
		}
	}
	return append(own, many...)
}

package sweat

import (
	"errors"
	"math"

	"ebbwell/internal/evidence"
)

// checker holds entered values against their limits and gathers what it finds.
type checker struct {
	limits   []evidence.Limit
	kept     []Kept
	problems []evidence.Problem
	fatal    []error
}

// read takes an entered value. It is false when the value was not entered, or
// was refused and not kept.
func read[T ~float64](c *checker, f evidence.Field, item int, p *T) (x float64, ok bool) {
	if p == nil {
		return 0, false
	}
	return float64(*p), c.usable(f, item, float64(*p))
}

// usable holds a value against its limit and notes what is wrong with it. A
// kept value is used with a warning, if it is physically possible.
func (c *checker) usable(f evidence.Field, item int, x float64) bool {
	p := evidence.CheckIn(c.limits, f, item, x)
	if p == nil && f == evidence.UrineColour && x != math.Trunc(x) {
		p = &evidence.Problem{Field: f, Item: item, Code: evidence.CodeNotWhole, Severity: evidence.Refuses, Value: x}
	}
	if p == nil {
		return true
	}
	if p.Severity == evidence.Refuses && p.Code != evidence.CodeNotFinite && possible(f, x) && c.isKept(f, item) {
		p.Severity = evidence.Warns
	}
	c.problems = append(c.problems, *p)
	return p.Severity == evidence.Warns
}

// refuse notes a value that stands in the wrong order to another.
func (c *checker) refuse(f evidence.Field, item int, x float64) {
	c.problems = append(c.problems, evidence.Problem{Field: f, Item: item, Code: evidence.CodeOrder, Severity: evidence.Refuses, Value: x})
}

// essential notes, as an error, a value that makes every figure meaningless:
// one that is not a number, or not above zero.
func (c *checker) essential(f evidence.Field, item int, x float64) {
	if p := evidence.CheckIn(c.limits, f, item, x); p != nil && (p.Code == evidence.CodeNotFinite || x <= 0) {
		c.problems = append(c.problems, *p)
		c.fatal = append(c.fatal, *p)
	}
}

// err joins what makes everything meaningless.
func (c *checker) err() error { return errors.Join(c.fatal...) }

// isKept reports whether somebody kept this value with a reason.
func (c *checker) isKept(f evidence.Field, item int) bool {
	for _, k := range c.kept {
		if k.Field == f && k.Item == item {
			return true
		}
	}
	return false
}

// possible reports whether a value beyond its limit can be at all.
func possible(f evidence.Field, x float64) bool {
	switch f {
	case evidence.AirTemperature, evidence.MassChange, evidence.PatchOn:
		return true
	case evidence.Duration, evidence.MassBefore, evidence.MassAfter, evidence.MorningMass, evidence.Density:
		return x > 0
	case evidence.ShareDrunk:
		return x >= 0 && x <= 100
	case evidence.UrineColour, evidence.EffortRating, evidence.Thirst, evidence.Stomach, evidence.USG:
		return false
	case evidence.SweatRate:
		return x > 0
	}
	return x >= 0
}

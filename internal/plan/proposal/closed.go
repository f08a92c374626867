package proposal

import "ebbwell/internal/evidence"

// sayClosed lists what is said of a session in which one may not drink: what to drink
// before and after instead. Who gained mass, or had low blood sodium, drinks to thirst.
func (c *Case) sayClosed() []Saying {
	s := speech{c: c}
	if c.Gained {
		s.add(SayGained)
	}
	if c.PastLowSodium {
		s.add(SayPastSodium)
	}
	s.add(SayClosed)
	switch {
	case c.careful():
		s.add(SayAfterGain)
		return s.list
	case c.Hidden:
		s.add(SayBeforeBlind, evidence.BeforeEarlyHours)
	default:
		s.add(SayBefore, evidence.BeforeEarlyLow*c.MassKg/1000, evidence.BeforeEarlyHigh*c.MassKg/1000, evidence.BeforeEarlyHours)
	}
	s.add(SayAfter, evidence.RestoreWithin, evidence.RestoreLow, evidence.RestoreHigh)
	return s.list
}

package plan

import "slices"

// NoDrinking is the code of what stands in the place of chances in a session in which
// one may not drink: a race in the pool, a sprint, a match without breaks.
const NoDrinking = "no-drinking"

// Closed reports that one may not drink in a session of these chances, whatever
// others there are.
func Closed(chances []Chance) bool {
	return slices.ContainsFunc(chances, func(c Chance) bool { return c.Code == NoDrinking })
}

// Closed reports that one may not drink in the session that was scheduled.
func (s *Schedule) Closed() bool {
	return slices.ContainsFunc(s.Takes, func(t Take) bool { return t.Chance.Code == NoDrinking })
}

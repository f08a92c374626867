package care

import (
	"slices"
	"strings"
	"time"

	"ebbwell/internal/record"
)

// MassSeen reports whether the body mass of an athlete may have been seen at a past
// moment: changes are what happened to the profile since, from its history. What
// cannot be told for sure counts as seen.
func MassSeen(a record.Athlete, changes []record.Change, at time.Time) bool {
	later := slices.DeleteFunc(slices.Clone(changes), func(c record.Change) bool { return c.At.Before(at) })
	slices.SortStableFunc(later, func(x, y record.Change) int { return y.At.Compare(x.At) })
	for _, c := range later {
		switch {
		case c.Field == "massHidden":
			a.MassHidden = c.Before == "true"
		case c.Field == "massHiddenSettled":
			a.MassHiddenSettled = c.Before == "true"
		case c.Field == "born":
			a.Born = record.Date(c.Before)
		case strings.HasPrefix(c.Field, "flags"):
			return true // a flag that hides the mass may have come since
		}
	}
	return !MassHidden(a, at)
}

package squad

import (
	"slices"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/sweat"
)

// What stands in the way of closing a sheet beside what a row may miss.
const (
	LackRefused    = "refused"    // a value outside its limits, or in the wrong order
	LackUnreadable = "unreadable" // a text that is no number
	LackReason     = "reason"     // an odd value without a second weighing or a reason
	LackFigures    = "figures"    // the sweat rate has no range yet
)

// Closing is whether a sheet can be closed as it stands. Waits says that it stays
// open for the laboratory's values; Lacks is what stands in the way, in the order of
// the hands' work.
type Closing struct {
	Ready, Waits bool
	Lacks        []string
}

// ClosingOf applies the checks of a sheet to a row: everything the balance needs is in,
// nothing is refused or unreadable, every odd value is settled and of a red flag
// somebody was told.
func ClosingOf(r Row) Closing {
	c := Closing{Waits: r.Found.Waits(), Lacks: r.waiting()}
	add := func(id string, on bool) {
		if on && !slices.Contains(c.Lacks, id) {
			c.Lacks = append(c.Lacks, id)
		}
	}
	for _, raw := range r.Sheet.Raw {
		add(LackUnreadable, !raw.Reason)
	}
	for _, p := range r.Found.Sweat.Problems {
		add(LackRefused, p.Severity == evidence.Refuses)
	}
	add(LackReason, slices.ContainsFunc(r.Odd, func(o Odd) bool { return !o.Kept() }))
	add(LackTold, consult.Blocks(r.Found, r.Sheet.Athlete))
	if len(c.Lacks) == 0 {
		for _, m := range r.Found.Sweat.Missing {
			add(LackFigures, !m.Optional && m.ID != sweat.MissingSodium)
		}
		add(LackFigures, !r.Found.Ready())
	}
	c.Ready = len(c.Lacks) == 0 && !r.Closed
	return c
}

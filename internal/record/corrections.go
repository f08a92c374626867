package record

import (
	"slices"
	"strings"
)

// Corrections are those of a test sheet's changes that put a value right, in
// the order of the changes, which is newest first. What was written where
// nothing stood is a first entry and no correction, until the sheet has been
// closed once: from then on every change is one. A correction without a reason
// of its own carries the reason for which the sheet was last opened again.
func Corrections(changes []Change) []Change {
	var list []Change
	closed, why := false, ""
	for _, c := range slices.Backward(changes) {
		switch {
		case c.Field == "state":
			if TestState(c.After) != TestOpen {
				closed = true
			} else {
				why = c.Why
			}
		case keptBeside(c.Field), !closed && firstEntry(c):
		default:
			if c.Why == "" && closed {
				c.Why = why
			}
			list = append(list, c)
		}
	}
	slices.Reverse(list)
	return list
}

// firstEntry reports whether nothing stood there before; a box not ticked is
// nothing.
func firstEntry(c Change) bool { return c.Before == "" || c.Before == "false" }

// keptBeside reports whether a field is no value of the sheet: when and by whom
// it was closed, whose it is, the record itself, and the places of its rows.
func keptBeside(field string) bool {
	name := field[strings.LastIndex(field, ".")+1:]
	switch name {
	case "", "closedAt", "closedBy", "athleteID", "testID", "bottleID", "order":
		return true
	}
	return false
}

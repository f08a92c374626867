// Package field is every input of Ebbwell: lines of text, numbers with a unit
// and limits, days and times, choices, the banded slider, buttons, dialogs.
//
// They share one manner. Each has a stable dotted name ("testsheet.bottle.2.
// before"), so that [Find] and [Names] can drive a whole screen. Each is
// complete from the keyboard, shows its focus as a 2 px border of ink, is at
// least 24 px high, follows theme and text size, and can be disabled. Setting
// a value from code tells nobody; what a person does is told once: per
// keystroke or movement in OnChanged or OnMoved, and once more in OnLeft or
// OnReleased when they are done.
//
// A [Host] stands behind the fields of one window. It has the texts, today's
// date, and takes the keys and shortcuts a field has no use for: a field that
// has the focus would swallow them otherwise, and undo with them.
//
// Fields hold no rules. A [Number] asks the limits of internal/evidence and
// reads with internal/quantity; it keeps what was typed as it was typed, also
// when it cannot be read, and says so under itself or to its OnProblem.
package field

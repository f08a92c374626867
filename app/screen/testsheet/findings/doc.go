// Package findings shows what a test sheet says: what went out, came in and was
// left over; a table of figures, each with its range and what the evidence says
// beside it; and, for the figure chosen, its "why": the formula in words and
// with its numbers, what the range is made of, what would narrow it, sources.
//
// [Rows] lists the figures and [Explain] words a why; both are pure and are
// what the printed report is made of too. A [View] shows them. Everything
// comes from [consult.Findings] and the why that each figure carries: nothing
// is calculated here.
//
// Where body mass is hidden from the athlete, litres are all that is shown: no
// kilograms, no per cent of body mass, nothing per kilogram, and no formula,
// since its inputs hold the weighings.
package findings

import (
	"time"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// Input is what is to be shown.
type Input struct {
	Findings consult.Findings
	Athlete  record.Athlete
	// Others are further tests of the athlete to compare with, newest first.
	Others []Other
	// Practice is where the emergency number stands.
	Practice record.Practice
	// Open is true while the sheet can be changed.
	Open bool
	// Location is the zone that times of day are said in; nil for UTC.
	Location *time.Location
}

// Zone is the zone that times of day are said in.
func (in Input) Zone() *time.Location {
	if in.Location == nil {
		return time.UTC
	}
	return in.Location
}

// Other is a test to compare with.
type Other struct {
	Name     string
	Findings consult.Findings
}

// speaker words figures in the practice's language and units.
type speaker struct{ amount.Speaker }

package consult

import (
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// WhyOpen says why an open sheet is looked at before it is closed.
type WhyOpen string

// Why a sheet is looked at, the gravest first.
const (
	OpenFlag    WhyOpen = "flag"    // a red flag
	OpenRefused WhyOpen = "refused" // a value that is refused, or a text that cannot be read
	OpenMissing WhyOpen = "missing" // something the figures need
	OpenOdd     WhyOpen = "odd"     // a value beyond what is usual
)

// WhyLook says why a sheet is not to be closed together with others, unseen; empty
// where nothing about it asks for a look. It is stricter than closing one sheet by
// hand: a red flag of which somebody was told and an odd value keep it open too. Our
// own rule.
func WhyLook(f Findings, a record.Athlete) WhyOpen {
	_, flagged := RedFlagOf(f, a, TestDay(f.Test))
	severe := func(s evidence.Severity) bool {
		return slices.ContainsFunc(f.Sweat.Problems, func(p evidence.Problem) bool { return p.Severity == s })
	}
	switch {
	case flagged || Gained(f):
		return OpenFlag
	case severe(evidence.Refuses), f.Refused != nil, slices.ContainsFunc(f.reasons, func(r record.RawText) bool { return !r.Reason }):
		return OpenRefused
	case !f.Ready(), slices.ContainsFunc(f.Sweat.Missing, func(m sweat.Missing) bool { return !m.Optional && m.ID != sweat.MissingSodium }):
		return OpenMissing
	case len(f.Sweat.Problems) > 0:
		return OpenOdd
	}
	return ""
}

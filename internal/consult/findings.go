package consult

import (
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/evidence"
	"ebbwell/internal/frozen"
	"ebbwell/internal/fuel"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// Findings is everything one test sheet says.
type Findings struct {
	Test record.Test
	// Minutes is the elapsed time; Timed is false while it is not known.
	Minutes float64
	Timed   bool
	Sweat   sweat.Result
	// Refused is what makes every figure meaningless; nil when nothing does.
	Refused error
	Intake  fuel.Intake
	// RatePlaces and SodiumPlaces are the sweat rate and the sodium loss
	// within published groups, the sport's own first.
	RatePlaces, SodiumPlaces []sweat.Place
	// Advice is the carbohydrate advised for such a session.
	Advice fuel.Advice
	Care   care.Care
	// Limit is the deficit at the end not to pass, %.
	Limit float64

	// Kept says how figures and sheet belong together once a test is closed; see
	// [FindAsClosed]. Empty for an open one.
	Kept Kept
	// Evidence is the version of the evidence a closed test was calculated by.
	Evidence string

	// reasons are the texts kept beside the sheet; then and who the desk and
	// the athlete of a closed one, so that it can be calculated again as it was.
	reasons []record.RawText
	then    *Setup
	who     frozen.Athlete
	zone    *time.Location
}

// Since is the minutes from the start of the session to a time of day, as they passed.
func (f Findings) Since(c record.Clock) (minutes float64, ok bool) {
	return f.Test.Session.Since(c, f.zone)
}

// Find works out a test sheet, whole or partly filled.
func Find(t record.Test, a record.Athlete, raw []record.RawText, d Setup) Findings {
	f := Findings{Test: t, Care: care.Of(a, TestDay(t)), Limit: d.Settings.DeficitAim.Or(evidence.DeficitAim), reasons: raw, zone: d.Zone}
	f.Minutes, f.Timed = t.Session.Elapsed(d.Zone)
	f.Sweat, f.Refused = sweat.Evaluate(SheetInput(coarse(t, a), a, raw, d))
	f.Intake = intakeOf(t, f.Sweat, f.Minutes, f.Timed, d)
	f.RatePlaces = places(evidence.RateMeasure, SportGroup(sportOf(t, a)), f.Sweat.Fluid.Rate.Known, f.Sweat.Fluid.Rate.Value)
	f.SodiumPlaces = places(evidence.SodiumLossMeasure, SportGroup(sportOf(t, a)), f.Sweat.Sodium.MillimoleRate.Known, f.Sweat.Sodium.MillimoleRate.Value)
	if f.Timed {
		f.Advice = fuel.CarbohydrateDuring(f.Minutes, fuel.EffortOf(t.Session.Effort.Or(-1)))
	}
	return f
}

// places puts a known value into every group that fits.
func places(m evidence.Measure, sport string, known bool, x float64) []sweat.Place {
	if !known {
		return nil
	}
	var list []sweat.Place
	for _, g := range sweat.GroupsFor(m, sport) {
		if p, ok := sweat.PlaceIn(g, x); ok {
			list = append(list, p)
		}
	}
	return list
}

// sportOf is the sport of the session, else the athlete's.
func sportOf(t record.Test, a record.Athlete) string {
	if t.Session.Sport != "" {
		return t.Session.Sport
	}
	return a.Sport
}

// TestDay is the day of a test; the day it was made while no date is entered.
func TestDay(t record.Test) time.Time {
	if day, ok := t.Session.Date.Time(); ok {
		return day
	}
	return t.CreatedAt
}

// Ready reports whether the sheet can be closed: everything but the
// laboratory's sodium is in and nothing is refused.
func (f Findings) Ready() bool {
	return f.Refused == nil && f.Sweat.Fluid.Rate.Known && f.Sweat.Fluid.Rate.Ranged
}

// Waits reports whether patches are at the laboratory.
func (f Findings) Waits() bool {
	for _, p := range f.Test.Patches {
		if p.AtLaboratory && !p.Sodium.Known() {
			return true
		}
	}
	return false
}

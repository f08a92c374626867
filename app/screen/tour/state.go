// Package tour is the first five minutes on the invented practice: six steps from an
// athlete to a page, each shown beside the screen while the person works on it. It
// follows what the person does and stands in nobody's way.
package tour

import (
	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
)

// Step is one of the six things to do.
type Step int

// The steps, in order.
const (
	Athlete Step = iota
	Findings
	Plan
	Agree
	Page
	Save
)

// Steps is how many there are.
const Steps = int(Save) + 1

// Stage is how far the tour is.
type Stage int

// The stages: not offered or closed, offered, going on, at its end with a page.
const (
	Off Stage = iota
	Offered
	Going
	Done
)

// PartFindings is the part of a sheet that the second step looks for.
const PartFindings = "findings"

// State is a tour. Its methods return the one that follows.
type State struct {
	Stage Stage
	Step  Step
	// Athlete is the one the tour goes on with: proposed at first, then whoever is
	// opened.
	Athlete record.ID
}

// Seen is what the window shows.
type Seen struct {
	Place desk.Place
	// Athlete is whose screen it is; empty for none.
	Athlete record.ID
	// Agreed says that this athlete has an agreed plan.
	Agreed bool
}

// Offer offers the tour with an athlete.
func Offer(athlete record.ID) State { return State{Stage: Offered, Athlete: athlete} }

// Begin begins the tour from its first step.
func (s State) Begin() State { return State{Stage: Going, Athlete: s.Athlete} }

// End closes the tour.
func (s State) End() State { return State{Athlete: s.Athlete} }

// Follow goes on by as many steps as the window shows to be done.
func (s State) Follow(at Seen) State {
	if s.Stage != Going {
		return s
	}
	if at.Athlete != "" {
		s.Athlete = at.Athlete
	}
	for s.Step < Page && s.done(at) {
		s.Step++
	}
	return s
}

// done reports whether the present step is done; the page is read and saved by hand.
func (s State) done(at Seen) bool {
	paper := at.Place.Screen == desk.Handout
	planned := at.Place.Screen == desk.Plan || paper
	switch s.Step {
	case Athlete:
		return at.Athlete != ""
	case Findings:
		return planned || at.Place.Screen == desk.Tests && at.Place.Part == PartFindings
	case Plan:
		return planned
	case Agree:
		return planned && at.Agreed
	case Page, Save:
	}
	return false
}

// HandedOut is the tour once a page was saved or printed.
func (s State) HandedOut() State {
	if s.Stage == Going {
		s.Stage = Done
	}
	return s
}

// Skip leaves the present step out. The place is where the next one begins; ok is
// false where it begins on the present screen.
func (s State) Skip() (next State, place desk.Place, ok bool) {
	if s.Stage != Going || s.Step == Save {
		return s.End(), place, false
	}
	place.Athlete = s.Athlete
	switch s.Step {
	case Athlete:
		place.Screen = desk.Overview
	case Plan:
		place.Screen = desk.Plan
	case Agree:
		place.Screen = desk.Handout
	case Findings, Page, Save:
	}
	s.Step++
	return s, place, place.Screen != ""
}

// Aim is the name of the control to use next on what the window shows; empty where
// there is only something to read. row is the control of the proposed athlete in the
// list.
func (s State) Aim(at Seen, row string) string {
	if s.Stage != Going {
		return ""
	}
	if at.Athlete == "" {
		if at.Place.Screen == desk.Athletes {
			return row
		}
		return "frame.rail." + string(desk.Athletes)
	}
	switch here := at.Place.Screen; {
	case s.Step == Findings && here == desk.Tests:
		return "testsheet.tabs." + PartFindings
	case s.Step == Findings:
		return "frame.tabs." + string(desk.Tests)
	case s.Step == Plan, s.Step == Agree && here != desk.Plan:
		return "frame.tabs." + string(desk.Plan)
	case s.Step == Agree:
		return "planner.agree"
	case here != desk.Handout:
		return "frame.tabs." + string(desk.Handout)
	case s.Step == Save:
		return "handoutview.save"
	}
	return ""
}

package record

import "slices"

// The clones below share no list with their original, so that a screen can
// keep the state before a change. Values behind a Number are never changed in
// place and stay shared.

// Clone returns a copy that shares no list.
func (a Athlete) Clone() Athlete {
	a.Flags = slices.Clone(a.Flags)
	a.Consents = slices.Clone(a.Consents)
	a.Memberships = slices.Clone(a.Memberships)
	return a
}

// Clone returns a copy that shares no list.
func (t Test) Clone() Test {
	t.Weighings = slices.Clone(t.Weighings)
	t.Bottles = slices.Clone(t.Bottles)
	for i := range t.Bottles {
		t.Bottles[i].Refills = slices.Clone(t.Bottles[i].Refills)
	}
	t.Foods = slices.Clone(t.Foods)
	t.Patches = slices.Clone(t.Patches)
	t.Partway = slices.Clone(t.Partway)
	t.Safety = slices.Clone(t.Safety)
	return t
}

// Clone returns a copy that shares no list.
func (g GroupSession) Clone() GroupSession {
	g.Bottles = slices.Clone(g.Bottles)
	g.Members = slices.Clone(g.Members)
	return g
}

// Clone returns a copy that shares no list.
func (p Plan) Clone() Plan {
	p.Options = slices.Clone(p.Options)
	for i := range p.Options {
		p.Options[i].Items = slices.Clone(p.Options[i].Items)
	}
	p.Steps = slices.Clone(p.Steps)
	p.Chances = slices.Clone(p.Chances)
	p.Reviews = slices.Clone(p.Reviews)
	return p
}

// Clone returns a copy that shares no list.
func (t Trip) Clone() Trip {
	t.Travellers = slices.Clone(t.Travellers)
	t.Stops = slices.Clone(t.Stops)
	t.Supplies = slices.Clone(t.Supplies)
	return t
}

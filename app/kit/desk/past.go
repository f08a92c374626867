package desk

import (
	"reflect"

	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// past is what was read of the closed tests of one athlete, as the athlete was and
// by the method of the practice then.
type past struct {
	athlete record.Athlete
	method  string
	// copies names the copy that was read, by test; found is what it said.
	copies map[record.ID]record.ID
	found  map[record.ID]consult.Findings
}

// of is what is known for an athlete as it is now: all, or nothing.
func (p past) of(a record.Athlete, method string) past {
	if p.found != nil && p.method == method && reflect.DeepEqual(p.athlete, a) {
		return p
	}
	return past{athlete: a, method: method, copies: map[record.ID]record.ID{}, found: map[record.ID]consult.Findings{}}
}

// find is what is known of a test, where neither record nor copy has changed.
func (p past) find(s store.Sheet) (consult.Findings, bool) {
	f, ok := p.found[s.Test.ID]
	if !ok || len(s.Kept) == 0 || s.Kept[0].ID != p.copies[s.Test.ID] || !reflect.DeepEqual(f.Test, s.Test) {
		return consult.Findings{}, false
	}
	return f, true
}

// keep takes in what a test says, where that is what was kept when it was closed.
func (p past) keep(s store.Sheet, f consult.Findings) {
	delete(p.copies, s.Test.ID)
	delete(p.found, s.Test.ID)
	if f.Kept == consult.KeptFigures && len(s.Kept) > 0 {
		p.copies[s.Test.ID], p.found[s.Test.ID] = s.Kept[0].ID, f
	}
}

package desk

import (
	"maps"
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
	// known is which version and which copy was read, by test; found is what they said.
	known map[record.ID]store.Known
	found map[record.ID]*consult.Findings
}

// of is what is known for an athlete as it is now: all, or nothing.
func (p past) of(a record.Athlete, method string) past {
	if p.found != nil && p.method == method && reflect.DeepEqual(p.athlete, a) {
		return p
	}
	return past{athlete: a, method: method, known: map[record.ID]store.Known{}, found: map[record.ID]*consult.Findings{}}
}

// keep takes in what a test says, where that is what was kept when it was closed.
func (p past) keep(s *store.Sheet, f *consult.Findings) {
	delete(p.known, s.Test.ID)
	delete(p.found, s.Test.ID)
	if f.Kept == consult.KeptFigures && len(s.Kept) > 0 {
		kept := *f // who is handed f may change it
		p.known[s.Test.ID], p.found[s.Test.ID] = store.Known{Changed: s.Test.ChangedAt, Copy: s.Kept[0].ID}, &kept
	}
}

// copied is the same, to be added to by itself.
func (p past) copied() past {
	p.known, p.found = maps.Clone(p.known), maps.Clone(p.found)
	return p
}

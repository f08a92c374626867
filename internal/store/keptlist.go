package store

import (
	"slices"
	"sync"

	"ebbwell/internal/record"
)

// keptList is the list of the athletes as it was last read from an open file. Nobody
// else writes to the file, so it holds until a write of this store touches it.
type keptList struct {
	sync.Mutex
	all   []AthleteSummary
	there bool
	// version counts the writes that may have changed the list.
	version int
}

// or is the list as it is kept, else as read reads it; that is kept unless a write
// came between.
func (k *keptList) or(read func() ([]AthleteSummary, error)) ([]AthleteSummary, error) {
	k.Lock()
	all, there, version := k.all, k.there, k.version
	k.Unlock()
	if there {
		return all, nil
	}
	all, err := read()
	if err != nil {
		return nil, err
	}
	all = slices.Clip(all)
	k.Lock()
	defer k.Unlock()
	if k.version == version {
		k.all, k.there = all, true
	}
	return all, nil
}

// drop forgets the list after a write that may have changed it.
func (k *keptList) drop() {
	k.Lock()
	defer k.Unlock()
	k.all, k.there = nil, false
	k.version++
}

// listsAthletes reports whether the list of the athletes shows something of a kind
// of record.
func listsAthletes(kind record.Kind) bool {
	return kind == record.KindAthlete || kind == record.KindGroup
}

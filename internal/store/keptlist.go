package store

import (
	"slices"
	"sync"

	"ebbwell/internal/record"
)

// keptList is the list of the athletes as it was last read from an open file. Nobody
// else writes to the file, so it holds until a write of this store touches it; of
// athletes that were touched one by one, only they are read again.
type keptList struct {
	sync.Mutex
	all   []Person
	there bool
	// touched are athletes that may not be as they stand in all.
	touched []record.ID
	// version counts the writes that may have changed the list.
	version int
}

// or is the list as it is kept, else with what read reads of it: all for nil, else some.
// That is kept unless a write came between. A list that was handed out stays as it is.
func (k *keptList) or(read func(some []record.ID) ([]Person, error)) ([]Person, error) {
	k.Lock()
	all, there, touched, version := k.all, k.there, k.touched, k.version
	k.Unlock()
	if there && len(touched) == 0 {
		return all, nil
	}
	fresh, err := read(touched)
	if err != nil {
		return nil, err
	}
	if there {
		fresh = merged(all, fresh, touched)
	}
	fresh = slices.Clip(fresh)
	k.Lock()
	defer k.Unlock()
	if k.version == version {
		k.all, k.there, k.touched = fresh, true, nil
	}
	return fresh, nil
}

// merged is a list of athletes with some as they are now, in the place of what they were.
func merged(all, now []Person, some []record.ID) []Person {
	list := make([]Person, 0, len(all)+len(now))
	for _, p := range all {
		if slices.Contains(some, p.ID) {
			continue
		}
		for len(now) > 0 && ComparePeople(now[0], p) < 0 {
			list, now = append(list, now[0]), now[1:]
		}
		list = append(list, p)
	}
	return append(list, now...)
}

// drop forgets the list after a write that may have changed any of it.
func (k *keptList) drop() {
	k.Lock()
	defer k.Unlock()
	k.all, k.there, k.touched = nil, false, nil
	k.version++
}

// touchedMost is how many athletes are read one by one; where more were touched, all are
// read: our choice.
const touchedMost = 50

// touch notes the athletes that a write may have changed.
func (k *keptList) touch(some []record.ID) {
	k.Lock()
	defer k.Unlock()
	k.version++
	for _, id := range some {
		if k.there && !slices.Contains(k.touched, id) {
			k.touched = append(slices.Clip(k.touched), id)
		}
	}
	if len(k.touched) > touchedMost {
		k.all, k.there, k.touched = nil, false, nil
	}
}

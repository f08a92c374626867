package store

import (
	"reflect"

	"ebbwell/internal/record"
)

// step is what has to happen to one row so that what is kept becomes what is
// to be saved.
type step struct {
	row
	act act
	// before is the row as it is kept; not set for a new one.
	before row
	fields []fieldChange
}

// act is a sort of step.
type act int

const (
	actNothing act = iota
	actInsert
	actUpdate
	actRemove
	actRevive
)

// fieldChange is one field, or one whole row, that differs.
type fieldChange struct {
	path          string
	before, after string
	act           act
}

// diff lists the steps from the kept rows (deleted ones too) to the wanted
// ones: first the wanted in their order, then those to remove. Rows that stay
// as they are come as actNothing, so that their Meta can be taken over.
func diff(kept, wanted []row) []step {
	type key struct {
		model reflect.Type
		id    record.ID
	}
	old := map[key]row{}
	for _, r := range kept {
		old[key{r.shape.model, r.meta().ID}] = r
	}
	steps := make([]step, 0, len(wanted))
	for _, r := range wanted {
		k := key{r.shape.model, r.meta().ID}
		before, found := old[k]
		delete(old, k)
		steps = append(steps, compare(before, r, found))
	}
	for _, r := range kept {
		if _, left := old[key{r.shape.model, r.meta().ID}]; left && !r.meta().Deleted() {
			steps = append(steps, step{row: r, act: actRemove, before: r,
				fields: []fieldChange{{path: r.path, before: Present, act: actRemove}}})
		}
	}
	return steps
}

// compare finds the step for one wanted row.
func compare(before, wanted row, found bool) step {
	if !found {
		return step{row: wanted, act: actInsert, fields: []fieldChange{{path: wanted.path, after: Present, act: actInsert}}}
	}
	s := step{row: wanted, before: before}
	if before.meta().Deleted() {
		s.act = actRevive
		s.fields = append(s.fields, fieldChange{path: wanted.path, after: Present, act: actRevive})
	}
	for _, l := range wanted.shape.leaves {
		if l.same(before.value, wanted.value) {
			continue
		}
		if s.act == actNothing {
			s.act = actUpdate
		}
		s.fields = append(s.fields, fieldChange{path: join(wanted.path, l.path),
			before: l.text(before.value), after: l.text(wanted.value), act: actUpdate})
	}
	return s
}

// changed reports whether any row is to be written.
func changed(steps []step) bool {
	for _, s := range steps {
		if s.act != actNothing {
			return true
		}
	}
	return false
}

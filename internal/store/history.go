package store

import (
	"context"
	"slices"
	"strings"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Present stands in a [record.Change] for a whole record or row that is
// there: from nothing to Present it was made or brought back, from Present to
// nothing it was deleted.
const Present = "present"

// Gone stands in a [record.Change] for an athlete who was erased for good.
const Gone = "gone"

// History lists the changes of a record, newest first.
func (s *Store) History(ctx context.Context, ref record.Ref) ([]record.Change, error) {
	var list []record.Change
	err := s.read(ctx, "load history", func(tx *gorm.DB) error {
		return tx.Where("kind = ? AND record = ?", ref.Kind, ref.ID).Order("at DESC, id DESC").Find(&list).Error
	})
	for i := range list {
		list[i].At = list[i].At.UTC()
	}
	return list, about(err, ref)
}

// enter writes the changes of some steps into the history of a record.
func (w *work) enter(ref record.Ref, steps []step, e Edit) error {
	var changes []fieldChange
	for _, s := range steps {
		changes = append(changes, s.fields...)
	}
	return w.log(ref, changes, e)
}

// log writes changes into the history. A change that another of the same
// visit, or of the same save, already tells of is joined to it.
func (w *work) log(ref record.Ref, changes []fieldChange, e Edit) error {
	if len(changes) == 0 {
		return nil
	}
	earlier, err := w.ofVisit(ref, e)
	if err != nil {
		return err
	}
	told := tellers(changes, earlier)
	var fresh []record.Change
	for _, c := range changes {
		if c.before == c.after || told.tell(c) {
			continue
		}
		if past, found := earlier[c.path]; found {
			if err := w.merge(past, c.after, e.Why); err != nil {
				return err
			}
			continue
		}
		fresh = append(fresh, record.Change{ID: record.NewID(), Kind: ref.Kind, Record: ref.ID, Field: c.path,
			Before: c.before, After: c.after, At: w.now, By: w.by, Why: e.Why, Visit: e.Visit})
	}
	if len(fresh) == 0 {
		return nil
	}
	return fail(w.tx.CreateInBatches(fresh, 100).Error, "write history")
}

// ofVisit loads what the visit has changed so far, by field.
func (w *work) ofVisit(ref record.Ref, e Edit) (map[string]record.Change, error) {
	byField := map[string]record.Change{}
	if e.Visit == "" {
		return byField, nil
	}
	var list []record.Change
	err := w.tx.Where("kind = ? AND record = ? AND visit = ?", ref.Kind, ref.ID, e.Visit).Find(&list).Error
	for _, c := range list {
		byField[c.Field] = c
	}
	return byField, fail(err, "load visit")
}

// merge makes one change of an earlier and a later one of the same visit;
// none is left when the field is back where it was.
func (w *work) merge(past record.Change, after, why string) error {
	if past.Before == after {
		return fail(w.tx.Delete(&past).Error, "write history")
	}
	past.After, past.At, past.By = after, w.now, w.by
	if why != "" {
		past.Why = why
	}
	return fail(w.tx.Save(&past).Error, "write history")
}

// teller knows which rows appear or go as a whole, so that what is inside
// them need not be told again.
type teller struct {
	made  []string // made in this save or visit: tells of everything inside
	moved []string // deleted or brought back in this save: tells of the rows inside
}

// tellers collects the rows that tell of others.
func tellers(changes []fieldChange, earlier map[string]record.Change) teller {
	var t teller
	for path, c := range earlier {
		if c.Before == "" && c.After == Present {
			t.made = append(t.made, path)
		}
	}
	for _, c := range changes {
		switch c.act {
		case actInsert:
			t.made = append(t.made, c.path)
		case actRemove, actRevive:
			t.moved = append(t.moved, c.path)
		}
	}
	return t
}

// tell reports whether the change of a row around it tells of a change too.
func (t teller) tell(c fieldChange) bool {
	around := func(row string) bool { return within(c.path, row) }
	return slices.ContainsFunc(t.made, around) || c.act != actUpdate && slices.ContainsFunc(t.moved, around)
}

// within reports whether a path lies inside a row; the record itself, "",
// holds every other path.
func within(path, row string) bool {
	if row == "" {
		return path != ""
	}
	return strings.HasPrefix(path, row+".")
}

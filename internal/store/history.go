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

// log writes changes into the history. A change goes on where the same visit
// left the field, as one with it, unless another visit came between; what is
// inside a row that the visit made is told by the row.
func (w *work) log(ref record.Ref, changes []fieldChange, e Edit) error {
	last, err := w.lastOf(ref, changes, e)
	if err != nil {
		return err
	}
	made, err := w.made(ref, changes, e)
	if err != nil {
		return err
	}
	var fresh []record.Change
	for _, c := range changes {
		past, found := last[c.path]
		inside := func(row string) bool { return within(c.path, row) }
		switch {
		case c.before == c.after, !found && slices.ContainsFunc(made, inside):
		case found && past.Visit == e.Visit:
			if err := w.merge(past, c.after, e.Why); err != nil {
				return err
			}
		default:
			fresh = append(fresh, record.Change{ID: record.NewID(), Kind: ref.Kind, Record: ref.ID, Field: c.path,
				Before: c.before, After: c.after, At: w.now, By: w.by, Why: e.Why, Visit: e.Visit})
		}
	}
	if len(fresh) == 0 {
		return nil
	}
	return fail(w.tx.CreateInBatches(fresh, 100).Error, "write history")
}

// lastOf loads the last change of each field that changes in a visit; outside
// of a visit nothing is joined, so nothing is loaded.
func (w *work) lastOf(ref record.Ref, changes []fieldChange, e Edit) (map[string]record.Change, error) {
	last := map[string]record.Change{}
	if e.Visit == "" {
		return last, nil
	}
	for chunk := range slices.Chunk(changes, 200) {
		fields := make([]string, len(chunk))
		for i, c := range chunk {
			fields[i] = c.path
		}
		var list []record.Change
		err := w.tx.Where("kind = ? AND record = ? AND field IN ?", ref.Kind, ref.ID, fields).Order("at, id").Find(&list).Error
		if err != nil {
			return nil, fail(err, "load history")
		}
		for _, c := range list {
			last[c.Field] = c
		}
	}
	return last, nil
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

// made lists the rows that were made in this save or visit: such a row tells
// of everything inside it. One that was there before and was brought back does
// not: what it held is known, so a change of it is a correction.
func (w *work) made(ref record.Ref, changes []fieldChange, e Edit) (rows []string, err error) {
	if e.Visit != "" {
		about := func() *gorm.DB {
			return w.tx.Model(&record.Change{}).Where("kind = ? AND record = ?", ref.Kind, ref.ID)
		}
		removed := about().Select("field").Where("before = ?", Present)
		err = about().Where("visit = ? AND after = ? AND field NOT IN (?)", e.Visit, Present, removed).Pluck("field", &rows).Error
	}
	for _, c := range changes {
		if c.act == actInsert {
			rows = append(rows, c.path)
		}
	}
	return rows, fail(err, "load visit")
}

// within reports whether a path lies inside a row; the record itself, "",
// holds every other path.
func within(path, row string) bool {
	if row == "" {
		return path != ""
	}
	return strings.HasPrefix(path, row+".")
}

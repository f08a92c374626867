package store

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/bundle"
	"ebbwell/internal/record"
)

// Merges lists the bundles that were put together with the records, the last first,
// without what stood before.
func (s *Store) Merges(ctx context.Context) ([]record.Merge, error) {
	var list []record.Merge
	err := s.read(ctx, "list merges", func(tx *gorm.DB) error {
		return tx.Omit("Before").Order("at DESC, id DESC").Find(&list).Error
	})
	for i := range list {
		list[i].At = list[i].At.UTC()
	}
	return list, err
}

// UndoMerge takes a whole merge back, in one transaction: what was not here goes, what
// was here is as it was, with its history. Where something of it was changed or used
// since, nothing is taken back and the error is CodeConflict. Products that came stay.
func (s *Store) UndoMerge(ctx context.Context, id record.ID) error {
	return s.write(ctx, "undo merge", func(w *work) error {
		var m record.Merge
		if err := w.tx.Where("id = ?", id).Take(&m).Error; err != nil {
			return fail(err, "find merge")
		}
		if m.UndoneAt != nil || len(m.Before) == 0 {
			return &Error{Code: CodeInvalid, Doing: "undo merge", Err: errors.New("there is nothing to go back to")}
		}
		var u undoing
		if err := json.Unmarshal(m.Before, &u); err != nil {
			return fmt.Errorf("read what stood before: %w", err)
		}
		if err := w.untouched(u); err != nil {
			return err
		}
		if err := w.undecided(m.ID); err != nil {
			return err
		}
		if err := w.putBack(m.ID, u); err != nil {
			return err
		}
		m.UndoneAt, m.UndoneBy, m.Before = &w.now, w.by, nil
		return w.tx.Save(&m).Error
	})
}

// untouched fails where something that came, or was changed, is not as the merge left
// it, or something else needs it.
func (w *work) untouched(u undoing) error {
	since := func(ref record.Ref) error {
		return &Error{Code: CodeConflict, Doing: "undo merge", Ref: ref, Err: errors.New("it was changed or used since")}
	}
	came := map[record.ID]bool{}
	for _, id := range u.Prints {
		came[id] = true
	}
	var people, tests []record.ID
	for _, list := range [][]stamped{u.New, u.After} {
		for _, one := range list {
			meta, err := w.root(one.Ref)
			if err != nil || meta.Deleted() || !meta.ChangedAt.Equal(one.At) {
				if one.Ref.Kind == record.KindProduct {
					continue
				}
				return since(one.Ref)
			}
		}
	}
	for _, one := range u.New {
		came[one.Ref.ID] = true
		switch one.Ref.Kind {
		case record.KindAthlete:
			people = append(people, one.Ref.ID)
		case record.KindTest:
			tests = append(tests, one.Ref.ID)
		}
	}
	for _, use := range []struct {
		table, column string
		of            []record.ID
	}{{"tests", "athlete_id", people}, {"plans", "athlete_id", people}, {"plans", "basis_test_id", tests}, {"travellers", "athlete_id", people},
		{"members", "athlete_id", people}, {"members", "test_id", tests}, {"prints", "athlete_id", people}} {
		ids, err := w.ids(use.table, use.column, use.of)
		if err != nil {
			return err
		}
		for _, id := range ids {
			if !came[id] {
				return since(record.Ref{ID: id})
			}
		}
	}
	return nil
}

// undecided fails where something the merge left to a person was taken from the other
// practice since.
func (w *work) undecided(merge record.ID) error {
	var taken int64
	if err := w.tx.Model(&record.Question{}).Where("merge_id = ? AND taken", merge).Count(&taken).Error; err != nil {
		return fail(err, "look for decisions")
	}
	if taken > 0 {
		return &Error{Code: CodeConflict, Doing: "undo merge", Err: errors.New("something of it was decided since")}
	}
	return nil
}

// putBack removes what came and puts back what was changed.
func (w *work) putBack(id record.ID, u undoing) error {
	if err := w.tx.Where("id IN ?", u.Prints).Delete(&record.Print{}).Error; err != nil {
		return fail(err, "take back what came")
	}
	for i := len(u.New) - 1; i >= 0; i-- {
		if ref := u.New[i].Ref; ref.Kind != record.KindProduct {
			if err := w.erase(ref.Kind, []record.ID{ref.ID}); err != nil {
				return err
			}
		}
	}
	after := map[record.Ref]time.Time{}
	for _, one := range u.After {
		after[one.Ref] = one.At
	}
	for _, part := range []error{backTo(w, record.KindAthlete, u.Athletes, after), backTo(w, record.KindTest, u.Tests, after), backTo(w, record.KindPlan, u.Plans, after)} {
		if part != nil {
			return part
		}
	}
	for chunk := range slices.Chunk(u.Changes, atOnce) {
		if err := w.tx.Where("id IN ?", chunk).Delete(&record.Change{}).Error; err != nil {
			return fail(err, "take back what came")
		}
	}
	for _, gone := range []*gorm.DB{
		w.tx.Where("visit = ?", id).Delete(&record.Change{}),
		w.tx.Where("id IN ?", u.Frozen).Delete(&record.Frozen{}), w.tx.Where("merge_id = ?", id).Delete(&record.Question{}),
	} {
		if gone.Error != nil {
			return fail(gone.Error, "take back what came")
		}
	}
	for _, r := range u.Raw {
		if err := w.tx.Where("kind = ? AND record = ? AND field = ? AND reason = ?", r.Kind, r.Record, r.Field, r.Reason).Delete(&record.RawText{}).Error; err != nil {
			return fail(err, "take back what came")
		}
	}
	return nil
}

// backTo makes records what they were; a row that came is removed as a deleted one.
func backTo[T any](w *work, kind record.Kind, list []T, after map[record.Ref]time.Time) error {
	for i := range list {
		ref := record.Ref{Kind: kind, ID: rootMeta(&list[i]).ID}
		if _, err := w.write(kind, &list[i], after[ref]); err != nil {
			return about(err, ref)
		}
	}
	return nil
}

// leaveMerges takes an athlete out of what merges left to a person and keep to go back
// to.
func (w *work) leaveMerges(athlete record.ID) error {
	if err := w.tx.Where("athlete_id = ?", athlete).Delete(&record.Question{}).Error; err != nil {
		return err
	}
	return w.tx.Model(&record.Merge{}).Where("people LIKE ?", "%"+string(athlete)+"%").Update("before", nil).Error
}

// Questions lists what merges left to a person and nobody has decided yet: of one
// athlete, or of all for an empty id.
func (s *Store) Questions(ctx context.Context, athlete record.ID) ([]record.Question, error) {
	var list []record.Question
	err := s.read(ctx, "list what is to be decided", func(tx *gorm.DB) error {
		db := tx.Where("decided_at IS NULL").Order("at, id")
		if athlete != "" {
			db = db.Where("athlete_id = ?", athlete)
		}
		return db.Find(&list).Error
	})
	return list, err
}

// Decide answers what a merge left to a person: take the other value, or keep what
// stands. One that was answered before, or whose record is gone, fails with CodeInvalid
// or CodeNotFound.
func (s *Store) Decide(ctx context.Context, id record.ID, take bool) error {
	return s.write(ctx, "decide", func(w *work) error {
		var q record.Question
		if err := w.tx.Where("id = ?", id).Take(&q).Error; err != nil {
			return fail(err, "find what is to be decided")
		}
		if q.DecidedAt != nil {
			return &Error{Code: CodeInvalid, Doing: "decide", Err: errors.New("it was decided already")}
		}
		if take {
			if err := w.takeOther(q); err != nil {
				return err
			}
		}
		q.DecidedAt, q.DecidedBy, q.Taken = &w.now, w.by, take
		return w.tx.Save(&q).Error
	})
}

// takeOther makes a record what the other practice had.
func (w *work) takeOther(q record.Question) error {
	d := bundle.Decision{Path: q.Field, Act: bundle.Act(q.Act), Data: q.Data}
	if q.Kind == record.KindPlan {
		return takeInto[record.Plan](w, q, d)
	}
	return takeInto[record.Athlete](w, q, d)
}

// takeInto applies a decision to a record and saves it.
func takeInto[T any](w *work, q record.Question, d bundle.Decision) error {
	var root T
	ref := record.Ref{Kind: q.Kind, ID: q.Record}
	if err := pick(w.tx, w.shapes[q.Kind], q.Record, &root); err != nil {
		return about(err, ref)
	}
	if err := bundle.Apply(&root, d); err != nil {
		return about(fail(err, "decide"), ref)
	}
	return w.save(q.Kind, &root, Edit{}, reopening)
}

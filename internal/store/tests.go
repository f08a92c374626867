package store

import (
	"context"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Tests lists the tests of an athlete, whole, the newest first.
func (s *Store) Tests(ctx context.Context, athlete record.ID) ([]record.Test, error) {
	return loadAll[record.Test](ctx, s, record.KindTest, func(db *gorm.DB) *gorm.DB {
		return newestSession(db).Where("athlete_id = ?", athlete)
	})
}

// LoadTest loads a test sheet with weighings, bottles, foods and patches.
func (s *Store) LoadTest(ctx context.Context, id record.ID) (record.Test, error) {
	return loadOne[record.Test](ctx, s, record.KindTest, id)
}

// SaveTest saves a test sheet and returns it as it is kept. A closed one is
// refused with CodeClosed, a waiting one but for the laboratory's values.
func (s *Store) SaveTest(ctx context.Context, t record.Test, e Edit) (record.Test, error) {
	return save(ctx, s, record.KindTest, t, e)
}

// CloseTest saves a test as closed, or as waiting for the laboratory when its
// State says so, and freezes it, in one transaction.
func (s *Store) CloseTest(ctx context.Context, t record.Test, f Freezing, e Edit) (record.Test, error) {
	out := copyOf(t)
	err := s.write(ctx, "close test", func(w *work) error {
		w.peopleChange = false
		if out.State != record.TestWaiting {
			out.State = record.TestClosed
		}
		if out.ClosedAt == nil {
			now := w.now
			out.ClosedAt, out.ClosedBy = &now, w.by
		}
		return w.saveFrozen(record.KindTest, &out, f, e)
	})
	if err != nil {
		return t, err
	}
	return out, nil
}

// saveFrozen saves a record and freezes it.
func (w *work) saveFrozen(kind record.Kind, root any, f Freezing, e Edit) error {
	if err := w.save(kind, root, e, withRespect); err != nil {
		return err
	}
	ref := record.Ref{Kind: kind, ID: rootMeta(root).ID}
	_, err := w.freeze(ref, f)
	return about(err, ref)
}

// ReopenTest opens a closed or waiting test for correction; why is required
// (CodeNoReason). Its frozen copies stay.
func (s *Store) ReopenTest(ctx context.Context, id record.ID, why string) (record.Test, error) {
	return reopen(ctx, s, record.Ref{Kind: record.KindTest, ID: id}, why, func(t *record.Test) bool {
		if t.State == record.TestOpen {
			return false
		}
		t.State, t.ClosedAt, t.ClosedBy = record.TestOpen, nil, ""
		return true
	})
}

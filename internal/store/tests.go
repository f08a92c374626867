package store

import (
	"context"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Tests lists the tests of an athlete, whole, the newest first.
func (s *Store) Tests(ctx context.Context, athlete record.ID) ([]record.Test, error) {
	return loadAll[record.Test](ctx, s, record.KindTest, func(db *gorm.DB) *gorm.DB {
		return db.Where("athlete_id = ?", athlete).Order("date DESC, start DESC, id DESC")
	})
}

// oldestFirst sorts tests by the time of their session.
func oldestFirst(db *gorm.DB) *gorm.DB { return db.Order("date, start, id") }

// Latest is the newest test of an athlete with all that it is worked out from.
type Latest struct {
	Athlete record.Athlete
	Test    record.Test
	// Raw are its unread texts and reasons, Kept the copies of it, newest first.
	Raw  []record.RawText
	Kept []record.Frozen
}

// LatestTests loads the newest test of every athlete who has one, by athlete.
func (s *Store) LatestTests(ctx context.Context) (map[record.ID]*Latest, error) {
	lines, err := s.Athletes(ctx)
	if err != nil {
		return nil, err
	}
	var ids []record.ID
	for _, a := range lines {
		if a.LastTest.ID != "" {
			ids = append(ids, a.LastTest.ID)
		}
	}
	tests, err := loadAll[record.Test](ctx, s, record.KindTest, func(db *gorm.DB) *gorm.DB { return db.Where("id IN ?", ids) })
	if err != nil {
		return nil, err
	}
	athletes, err := loadAll[record.Athlete](ctx, s, record.KindAthlete, func(db *gorm.DB) *gorm.DB { return db })
	if err != nil {
		return nil, err
	}
	latest, of := make(map[record.ID]*Latest, len(tests)), make(map[record.ID]*Latest, len(tests))
	for _, t := range tests {
		of[t.ID] = &Latest{Test: t}
		latest[t.AthleteID] = of[t.ID]
	}
	for _, a := range athletes {
		if l := latest[a.ID]; l != nil {
			l.Athlete = a
		}
	}
	return latest, s.addBeside(ctx, ids, of)
}

// addBeside adds what is kept beside tests.
func (s *Store) addBeside(ctx context.Context, tests []record.ID, of map[record.ID]*Latest) error {
	return s.read(ctx, "load what is kept beside tests", func(tx *gorm.DB) error {
		var raw []record.RawText
		if err := tx.Where("kind = ? AND record IN ?", record.KindTest, tests).Order("field, reason").Find(&raw).Error; err != nil {
			return err
		}
		for _, r := range raw {
			of[r.Record].Raw = append(of[r.Record].Raw, r)
		}
		var kept []record.Frozen
		if err := tx.Where("kind = ? AND record IN ?", record.KindTest, tests).Order("number DESC").Find(&kept).Error; err != nil {
			return err
		}
		if err := unpack(kept); err != nil {
			return err
		}
		for _, f := range kept {
			of[f.Record].Kept = append(of[f.Record].Kept, f)
		}
		return nil
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

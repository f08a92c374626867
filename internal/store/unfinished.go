package store

import (
	"context"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Unfinished lists the tests of all athletes that are open or wait for the
// laboratory, whole, the newest first.
func (s *Store) Unfinished(ctx context.Context) ([]record.Test, error) {
	states := []record.TestState{record.TestOpen, record.TestWaiting}
	return loadAll[record.Test](ctx, s, record.KindTest, func(db *gorm.DB) *gorm.DB {
		return db.Where("state IN ? AND athlete_id IN (SELECT id FROM athletes WHERE deleted_at IS NULL)", states).
			Order("date DESC, start DESC, id DESC")
	})
}

package store

import (
	"context"
	"errors"
	"io/fs"
	"os"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// eraseFromSnapshots takes an athlete out of every snapshot of this version, and
// returns those that may hold the athlete still, with an error where another try
// may do it.
func (s *Store) eraseFromSnapshots(ctx context.Context, id record.ID) (left []Snapshot, err error) {
	list, err := s.Snapshots()
	if err != nil {
		return nil, err
	}
	var failed error
	for _, snap := range list {
		clean, err := s.eraseFrom(ctx, snap.Path, id)
		if !clean || err != nil {
			left = append(left, snap) // the person is asked what to do with it
		}
		if CodeOf(err) != CodeDamaged && CodeOf(err) != CodeNewer {
			failed = errors.Join(failed, err)
		}
	}
	return left, errors.Join(failed, ctx.Err())
}

// eraseFrom takes an athlete out of one copy of the database: a new file without
// them takes its place. clean is false where the copy is of an earlier version.
func (s *Store) eraseFrom(ctx context.Context, path string, id record.ID) (clean bool, err error) {
	part := path + unfinished
	if err := copyFile(ctx, path, forCopying, part, part+copyEnd); err != nil {
		if _, gone := os.Stat(path); errors.Is(gone, fs.ErrNotExist) {
			return true, nil // thinned meanwhile
		}
		return false, err
	}
	defer func() { err = errors.Join(err, remove(part)) }()
	db, err := connect(part, forMaking)
	if err != nil {
		return false, fail(err, "open copy")
	}
	clean, err = s.eraseIn(db, id)
	if clean && err == nil {
		err = rewrite(db)
	}
	if err = errors.Join(err, disconnect(db)); !clean || err != nil {
		return clean, err
	}
	if err := sealFile(part); err != nil {
		return false, fail(err, "write copy")
	}
	if err := remove(path + sumEnd); err != nil {
		return false, err
	}
	if err := moveInto(part, path); err != nil {
		return false, fail(err, "write copy")
	}
	_ = writeSum(path, false)
	return true, nil
}

// eraseIn takes an athlete out of a database of this version.
func (s *Store) eraseIn(db *gorm.DB, id record.ID) (clean bool, err error) {
	made, err := madeVersions(db)
	if err != nil {
		return false, err
	}
	if left, err := pending(made, s.options.versions); left > 0 || err != nil {
		return false, err
	}
	s.state.Lock()
	by := s.state.by
	s.state.Unlock()
	err = db.Transaction(func(tx *gorm.DB) error {
		var there int64
		if err := tx.Model(&record.Athlete{}).Where("id = ?", id).Count(&there).Error; err != nil || there == 0 {
			return err
		}
		_, err := (&work{tx: tx, shapes: s.shapes, now: s.now(), by: by}).eraseAthlete(id)
		return err
	})
	return err == nil, fail(err, "erase athlete from copy")
}

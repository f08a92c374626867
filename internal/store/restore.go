package store

import (
	"context"
	"errors"
	"io/fs"
	"os"
)

// Restore puts a snapshot (or a backup: only the path counts) in the place of
// the present file, which is first set aside as a snapshot of its own. When
// the snapshot is damaged, is not as it was written (CodeAltered) or newer than the
// program, the present file stays.
func (s *Store) Restore(ctx context.Context, snap Snapshot) error {
	s.gate.Lock()
	defer s.gate.Unlock()
	if s.files == nil {
		return &Error{Code: CodeNotOpen, Doing: "restore", Path: s.dir}
	}
	if s.options.ReadOnly {
		return &Error{Code: CodeReadOnly, Doing: "restore", Path: s.dir}
	}
	if err := s.prepare(ctx, snap); err != nil {
		return err
	}
	if err := s.closeFiles(); err != nil {
		return fail(err, "restore")
	}
	// The old file is opened again when the new one could not take its place.
	return errors.Join(s.replace(), s.openFiles(ctx))
}

// Restore does for a data folder that is not open, because its database is
// damaged, what [Store.Restore] does for one that is.
func Restore(ctx context.Context, dir string, snap Snapshot, o Options) error {
	s, err := newStore(dir, o)
	if err != nil {
		return err
	}
	if err := s.enter(false); err != nil {
		return err
	}
	err = s.prepare(ctx, snap)
	if err == nil {
		err = s.replace()
	}
	return errors.Join(err, fail(s.lock.Close(), "free data folder"))
}

// prepare copies a snapshot beside the present file and checks the copy.
func (s *Store) prepare(ctx context.Context, snap Snapshot) (err error) {
	if err := openable(snap.Path, os.O_RDONLY); err != nil {
		return err
	}
	if err := sealed(ctx, snap.Path); err != nil {
		return err
	}
	if err := clearUnfinished(s.dir); err != nil {
		return err
	}
	ready := s.path() + unfinished
	if err := copyFile(ctx, snap.Path, forCopying, ready, ready+copyEnd); err != nil {
		return err
	}
	db, err := connect(ready, forCopying)
	if err != nil {
		return errors.Join(fail(err, "check snapshot"), os.Remove(ready))
	}
	if err = check(ctx, db); err == nil {
		var made []string
		if made, err = madeVersions(db); err == nil {
			_, err = pending(made, s.options.versions)
		}
	}
	err = errors.Join(err, disconnect(db))
	if err != nil {
		return errors.Join(err, os.Remove(ready))
	}
	return nil
}

// replace sets the present files aside and moves the prepared one into place;
// when that fails they are put back.
func (s *Store) replace() error {
	aside, err := s.snapshotPath(SnapshotSetAside)
	if err != nil {
		return err
	}
	if err = moveAll(s.path(), aside); err != nil {
		err = &Error{Code: codeOf(err), Doing: "set aside", Path: s.path(), Err: err}
	} else if err = moveInto(s.path()+unfinished, s.path()); err != nil {
		err = &Error{Code: codeOf(err), Doing: "restore", Path: s.path(), Err: err}
	}
	if err != nil {
		return errors.Join(err, moveAll(aside, s.path()))
	}
	return nil
}

// moveAll renames the files of a database, as far as they are there. The log
// goes along: it holds what was saved last, and left behind it would be read
// into the file that takes the place.
func moveAll(from, to string) error {
	for _, end := range besides() {
		if err := os.Rename(from+end, to+end); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	return nil
}

package store

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// mend sees that the file that is open is the one that is in the folder. One that
// was removed is written again from what is open. Where another file has its
// place, that one is left as it is, a copy of what is open is set aside once, and
// the error has CodeMoved.
func (s *Store) mend(ctx context.Context) error {
	s.gate.RLock()
	whole, err := s.inPlace()
	s.gate.RUnlock()
	if whole || err != nil {
		return err
	}
	s.gate.Lock()
	defer s.gate.Unlock()
	if whole, err := s.inPlace(); whole || err != nil {
		return err
	}
	ctx = context.WithoutCancel(ctx) // half a rescue is none
	_, err = os.Lstat(s.path())
	if errors.Is(err, fs.ErrNotExist) {
		return s.putBack(ctx)
	}
	return s.setOpenAside(ctx)
}

// inPlace reports whether the file that is open is where it was; the gate is held.
func (s *Store) inPlace() (bool, error) {
	if s.files == nil || s.files.writer == nil {
		return true, nil // whoever calls says that it is not open, or only looks
	}
	now, err := os.Stat(s.path())
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return false, &Error{Code: codeOf(err), Doing: "find database", Path: s.path(), Err: err}
	}
	return err == nil && os.SameFile(now, s.files.identity), nil
}

// putBack writes the database that is open to its place again, where it was
// removed, and opens it there. The lock must still be in the folder: without it
// another program may have gone in.
func (s *Store) putBack(ctx context.Context) error {
	moved := &Error{Code: CodeMoved, Doing: "put the database back", Path: s.path()}
	if _, err := os.Stat(filepath.Join(s.dir, LockName)); err != nil {
		moved.Err = err
		return moved
	}
	part := s.path() + unfinished
	err := makeEmpty(part)
	if err == nil {
		err = copyInto(ctx, s.files.writer, part)
	}
	if err == nil {
		err = syncFile(part)
	}
	if err != nil {
		moved.Err = errors.Join(err, remove(part))
		return moved
	}
	err = s.closeFiles()
	for _, end := range besides()[1:] { // a log of the lost file is not one of the copy
		err = errors.Join(err, remove(s.path()+end))
	}
	if err == nil {
		err = moveInto(part, s.path())
	}
	if err == nil {
		err = s.openFiles(ctx)
	}
	return fail(err, "put the database back")
}

// setOpenAside copies what is open into the snapshots, once.
func (s *Store) setOpenAside(ctx context.Context) error {
	moved := &Error{Code: CodeMoved, Doing: "find database", Path: s.path()}
	s.state.Lock()
	done := s.state.aside
	s.state.aside = true
	s.state.Unlock()
	if done {
		return moved
	}
	path, err := s.snapshotPath(SnapshotSetAside)
	if err == nil {
		err = makeEmpty(path + unfinished)
	}
	if err == nil {
		err = copyInto(ctx, s.files.writer, path+unfinished)
	}
	if err == nil {
		err = moveInto(path+unfinished, path)
	}
	if err == nil {
		_ = writeSum(path, false)
	}
	moved.Err = err
	return moved
}

// Moved returns an error with CodeMoved when another file has taken the place of
// the database that is open; one that was removed is put back.
func (s *Store) Moved(ctx context.Context) error { return s.mend(ctx) }

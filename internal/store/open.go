package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"gorm.io/gorm"
)

// unfinished is the ending of a file that is being made; one that is found at
// opening was left by a program that was stopped, and is removed.
const unfinished = ".part"

// openFiles connects to the database: made when absent, else checked and
// brought up to date. The folder is locked.
func (s *Store) openFiles(ctx context.Context) error {
	if s.options.ReadOnly {
		return s.openLooking(ctx)
	}
	if err := clearUnfinished(s.dir); err != nil {
		return err
	}
	if err := s.findOrMake(); err != nil {
		return err
	}
	if err := s.bringUpToDate(ctx); err != nil {
		return err
	}
	writer, err := connect(s.path(), forWriting)
	if err != nil {
		return fail(err, "open database")
	}
	reader, err := connect(s.path(), forReading)
	if err != nil {
		return errors.Join(fail(err, "open database"), disconnect(writer))
	}
	// A backup program may be reading; then the log is emptied another time.
	_ = emptyLog(writer)
	s.files = &handles{writer: writer, reader: reader}
	s.written.Add(1)
	if s.files.identity, err = os.Stat(s.path()); err == nil {
		s.snapshotOfDay(ctx)
		err = ctx.Err()
	}
	if err != nil {
		return errors.Join(fail(err, "open database"), s.closeFiles())
	}
	return nil
}

// openLooking connects for reading only, to a file of the present version.
func (s *Store) openLooking(ctx context.Context) error {
	if err := openable(s.path(), os.O_RDONLY); err != nil {
		return err
	}
	if err := s.unaltered(ctx); err != nil {
		return err
	}
	reader, err := connect(s.path(), forLooking)
	if err != nil {
		return fail(err, "open database")
	}
	left := 0
	if err = check(ctx, reader); err == nil {
		var made []string
		if made, err = madeVersions(reader); err == nil {
			left, err = pending(made, s.options.versions)
		}
	}
	if err == nil && left > 0 {
		err = &Error{Code: CodeOlder, Doing: "read version"}
	}
	if err != nil {
		return errors.Join(err, disconnect(reader))
	}
	s.files = &handles{reader: reader}
	s.written.Add(1)
	return nil
}

// findOrMake sees that there is a database that can be opened, and that only
// the user can read it. None beside snapshots is damage: a new database would
// hide that the old one is gone. (An empty file is damage too: a new database
// is never in its place before it is whole.)
func (s *Store) findOrMake() error {
	_, err := os.Stat(s.path())
	if errors.Is(err, fs.ErrNotExist) {
		kept, err := Snapshots(s.dir)
		if err != nil {
			return err
		}
		if len(kept) > 0 {
			return &Error{Code: CodeDamaged, Doing: "find database", Err: errors.New("the file is gone")}
		}
		return s.makeNew()
	}
	if err != nil {
		return fail(err, "find database")
	}
	for _, end := range besides() {
		if err := protect(s.path() + end); err != nil {
			return err
		}
	}
	return openable(s.path(), os.O_RDWR)
}

// protect closes a file to everybody but the user, where it is there. One that
// was made read-only stays so, and is an error even for a user whom modes do not
// bind.
func protect(path string) error {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err == nil && info.Mode().Perm()&0o200 == 0 {
		err = fmt.Errorf("it is marked as read-only: %w", fs.ErrPermission)
	}
	if err == nil && info.Mode().Perm()&0o077 != 0 {
		err = os.Chmod(path, info.Mode().Perm()&^0o077)
	}
	if err != nil {
		return &Error{Code: codeOf(err), Doing: "protect database", Path: path, Err: err}
	}
	return nil
}

// openable tries to open a file, because SQLite would fall back to reading.
func openable(path string, how int) error {
	f, err := os.OpenFile(path, how, 0)
	if errors.Is(err, fs.ErrNotExist) {
		return &Error{Code: CodeNotFound, Doing: "open database", Path: path, Err: err}
	}
	if err != nil {
		return &Error{Code: codeOf(err), Doing: "open database", Path: path, Err: err}
	}
	return fail(f.Close(), "open database")
}

// makeNew makes a database under another name and then moves it into place,
// so that there is a whole one or none.
func (s *Store) makeNew() error {
	// A folder in which no copy could be made is not begun with.
	longest := string(SnapshotSetAside) + "-" + stampLayout + ".db" + unfinished + copyEnd
	if err := shortEnough(filepath.Join(s.dir, snapshotFolder, longest)); err != nil {
		return err
	}
	part := s.path() + unfinished
	if err := makeEmpty(part); err != nil {
		return err
	}
	db, err := connect(part, forMaking)
	if err != nil {
		return fail(err, "make database")
	}
	err = errors.Join(migrate(db, s.options.versions), disconnect(db))
	if err == nil {
		err = sealFile(part)
	}
	if err == nil {
		err = moveInto(part, s.path())
	}
	if err != nil {
		return errors.Join(fail(err, "make database"), os.Remove(part))
	}
	s.state.snapshotDay = s.today() // there is nothing to copy yet
	return nil
}

// makeEmpty makes a new file that only the user can read.
func makeEmpty(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return &Error{Code: codeOf(err), Doing: "make file", Path: path, Err: err}
	}
	return fail(errors.Join(f.Chmod(0o600), f.Close()), "make file")
}

// bringUpToDate checks the file, and takes it through the changes of shape it
// has not seen, with a snapshot of it as it was.
func (s *Store) bringUpToDate(ctx context.Context) (err error) {
	db, err := connect(s.path(), forChanging)
	if err != nil {
		return fail(err, "open database")
	}
	defer func() { err = errors.Join(err, disconnect(db)) }()
	s.tell(StageChecking)
	if err := s.checkAll(ctx, db); err != nil {
		return err
	}
	made, err := madeVersions(db)
	if err != nil {
		return err
	}
	left, err := pending(made, s.options.versions)
	if err != nil || left == 0 {
		return err
	}
	if err := s.snapshot(ctx, SnapshotSchema); err != nil {
		return err
	}
	s.tell(StageChanging)
	return migrate(db.WithContext(patientOf(ctx)), s.options.versions)
}

// checkAll looks for damage, meanwhile compares the file with the digest beside it,
// which it then takes away: from here on the file is written.
func (s *Store) checkAll(ctx context.Context, db *gorm.DB) error {
	compared := make(chan error, 1)
	go func() { compared <- s.unaltered(ctx) }()
	err := check(ctx, db)
	if altered := <-compared; err == nil {
		err = altered
	}
	if err == nil {
		err = s.unseal()
	}
	return err
}

// clearUnfinished removes what a program that was stopped left half made.
func clearUnfinished(dir string) error {
	for _, folder := range []string{dir, filepath.Join(dir, snapshotFolder)} {
		entries, err := os.ReadDir(folder)
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return &Error{Code: codeOf(err), Doing: "find unfinished files", Path: folder, Err: err}
		}
		for _, entry := range entries {
			if !strings.Contains(entry.Name(), unfinished) {
				continue
			}
			path := filepath.Join(folder, entry.Name())
			if err := os.Remove(path); err != nil {
				return &Error{Code: codeOf(err), Doing: "remove unfinished file", Path: path, Err: err}
			}
		}
	}
	return nil
}

package store

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"hash"
	"io"
	"os"
	"path/filepath"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/lock"
	"ebbwell/internal/record"
)

// Backup writes a whole copy of the database to a file of the user's choice,
// replacing one that is there. Lost or half-written copies do not happen: the
// copy is made beside the file, read again from the disk and checked, and then
// moved into its place.
func (s *Store) Backup(ctx context.Context, toFile string) error {
	return s.backup(toFile, true, func(part string, how use) error {
		if err := copyFile(ctx, s.path(), how, part, part+copyEnd); err != nil {
			return err
		}
		return wholeCopy(ctx, part)
	})
}

// BackupLocked is Backup with the copy locked: only the passphrase of the key opens it.
func (s *Store) BackupLocked(ctx context.Context, toFile string, key lock.Key) error {
	return s.backup(toFile, false, func(part string, how use) error {
		plain := filepath.Join(s.dir, partStart+string(record.NewID())+unfinished)
		err := copyFile(ctx, s.path(), how, plain, plain+copyEnd)
		if err == nil {
			err = wholeCopy(ctx, plain)
		}
		if err == nil {
			err = lockFile(ctx, plain, part, key)
		}
		return errors.Join(err, remove(plain))
	})
}

// BackupDays is how many days lie between two copies that are made by themselves,
// BackupReminderDays how old the last may become before one is reminded (own rules).
const (
	BackupDays         = 7
	BackupReminderDays = 14
)

// BackupWith is [Store.BackupLocked], or [Store.Backup] where the key is empty.
func (s *Store) BackupWith(ctx context.Context, toFile string, key lock.Key) error {
	if key == (lock.Key{}) {
		return s.Backup(ctx, toFile)
	}
	return s.BackupLocked(ctx, toFile, key)
}

// backup lets fill make a copy beside a file and gives it its name; one that is plain
// gets its digest beside it.
func (s *Store) backup(toFile string, plain bool, fill func(part string, how use) error) error {
	s.gate.RLock()
	defer s.gate.RUnlock()
	if s.files == nil {
		return &Error{Code: CodeNotOpen, Doing: "back up", Path: s.dir}
	}
	to, err := filepath.Abs(toFile)
	if err != nil {
		return fail(err, "back up")
	}
	if err := s.outside(to); err != nil {
		return err
	}
	how := forCopying
	if s.options.ReadOnly {
		how = forLooking
	}
	// The digest of what was there before would be wrong of what comes.
	before := func() error {
		if err := remove(to + sumEnd); err != nil {
			return err
		}
		return s.keepBackup(to)
	}
	if err := s.outgoing(to, "", func(part string) error { return fill(part, how) }, before); err != nil {
		return err
	}
	if plain {
		_ = s.sumOut(to) // a backup without a digest is a backup too
	}
	return nil
}

// sumOut puts the digest beside a backup as every file that goes out: what a program
// that is killed leaves of it is removed at the next opening.
func (s *Store) sumOut(backup string) error {
	text, err := sumText(backup, false)
	if err != nil {
		return err
	}
	return s.writeOut(context.Background(), backup+sumEnd, "", []byte(text), nil)
}

// wholeCopy opens a copy that was written and checks it and its links.
func wholeCopy(ctx context.Context, path string) error {
	db, err := connect(path, forLooking)
	if err != nil {
		return fail(err, "check copy")
	}
	if err = check(ctx, db); err == nil {
		err = checkLinks(db)
	}
	return errors.Join(err, disconnect(db))
}

// lockFile locks a file into another and reads that again from the disk, to see
// that what is there is what was written.
func lockFile(ctx context.Context, from, to string, key lock.Key) error {
	written := sha256.New()
	if err := lockInto(ctx, from, to, key, written); err != nil {
		return fail(err, "lock copy")
	}
	there := sha256.New()
	f, err := os.Open(to)
	if err == nil {
		_, err = io.Copy(there, f)
		err = errors.Join(err, f.Close())
	}
	if err != nil {
		return fail(err, "check copy")
	}
	if string(there.Sum(nil)) != string(written.Sum(nil)) {
		return &Error{Code: CodeDisk, Doing: "check copy", Path: to, Err: errors.New("the file on the disk is not the one written")}
	}
	return nil
}

// lockInto locks a file into another; written is told every byte of it.
func lockInto(ctx context.Context, from, to string, key lock.Key, written hash.Hash) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close() //nolint:errcheck // it was only read
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	w, err := key.Writer(io.MultiWriter(out, written))
	if err == nil {
		_, err = io.Copy(w, stoppable{ctx.Err, in})
		err = errors.Join(err, w.Close())
	}
	return errors.Join(err, out.Sync(), out.Close())
}

// stoppable reads until it is to stop.
type stoppable struct {
	ended func() error
	r     io.Reader
}

// Read reads on.
func (s stoppable) Read(p []byte) (int, error) {
	if err := s.ended(); err != nil {
		return 0, err
	}
	return s.r.Read(p)
}

// Contents is what a database holds, in numbers to be compared by a person.
type Contents struct {
	Athletes, Tests, Plans int
	// Changed is when something was entered last; the zero time for nothing.
	Changed time.Time
}

// Contents counts what is kept now.
func (s *Store) Contents(ctx context.Context) (c Contents, err error) {
	err = s.read(ctx, "count records", func(tx *gorm.DB) error {
		c, err = contentsOf(tx)
		return err
	})
	return c, err
}

// contentsOf counts the records that are not deleted.
func contentsOf(tx *gorm.DB) (c Contents, err error) {
	for _, q := range []struct {
		of   any
		into *int
	}{{&record.Athlete{}, &c.Athletes}, {&record.Test{}, &c.Tests}, {&record.Plan{}, &c.Plans}} {
		var n int64
		if err := tx.Model(q.of).Where("deleted_at IS NULL").Count(&n).Error; err != nil {
			return c, fail(err, "count records")
		}
		*q.into = int(n)
	}
	var last []record.Change
	if err := tx.Order("at DESC").Limit(1).Find(&last).Error; err != nil {
		return c, fail(err, "find the last change")
	}
	if len(last) > 0 {
		c.Changed = last[0].At
	}
	return c, nil
}

// Locked reports whether a backup is locked with a passphrase.
func Locked(path string) (bool, error) {
	f, err := os.Open(path)
	if err != nil {
		return false, &Error{Code: codeOf(err), Doing: "look at backup", Path: path, Err: err}
	}
	defer f.Close() //nolint:errcheck // it was only read
	head := make([]byte, 64)
	n, err := io.ReadFull(f, head)
	if err != nil && !errors.Is(err, io.EOF) && !errors.Is(err, io.ErrUnexpectedEOF) {
		return false, &Error{Code: codeOf(err), Doing: "look at backup", Path: path, Err: err}
	}
	return lock.Locked(head[:n]), nil
}

// Opened is a backup made ready to be looked at and restored, in a file of its
// own beside nothing else: the present records are not touched.
type Opened struct {
	// Path of the plain copy, in a folder that [Opened.Close] removes.
	Path string
	// Contents of it.
	Contents Contents
	// Seal says whether every byte is as it was written; one that was locked is whole,
	// or does not open.
	Seal   Seal
	folder string
}

// Close removes the plain copy.
func (o *Opened) Close() error {
	if err := os.RemoveAll(o.folder); err != nil {
		return fail(err, "remove the copy that was looked at")
	}
	return nil
}

// OpenBackup puts a backup into a folder of its own that only the user can
// read, unlocked when it is locked, brought to the present version, and checks
// and counts it. Errors: [lock.ErrPassphrase], [lock.ErrDamaged], or an [Error].
func OpenBackup(ctx context.Context, path, passphrase string) (opened *Opened, err error) {
	locked, err := Locked(path)
	if err != nil {
		return nil, err
	}
	folder, err := os.MkdirTemp("", "ebbwell-backup-")
	if err != nil {
		return nil, fail(err, "open backup")
	}
	o := &Opened{Path: filepath.Join(folder, fileName), folder: folder}
	defer func() {
		if err != nil {
			err = errors.Join(err, o.Close())
		}
	}()
	if o.Seal = SealWhole; locked {
		err = unlockFile(ctx, path, o.Path, passphrase)
	} else if o.Seal, err = sealOf(ctx, path); err == nil {
		err = copyFile(ctx, path, forCopying, o.Path, o.Path+copyEnd)
	}
	if err != nil {
		return nil, err
	}
	o.Contents, err = lookInto(ctx, folder)
	return o, err
}

// lookInto opens a folder with a copy as a store, which checks it and brings it
// to the present version, and counts what is in it.
func lookInto(ctx context.Context, folder string) (Contents, error) {
	s, err := Open(folder, Options{})
	if err != nil {
		return Contents{}, err
	}
	c, err := s.Contents(ctx)
	return c, errors.Join(err, s.Close())
}

// unlockFile opens a locked file into a plain one.
func unlockFile(ctx context.Context, from, to, passphrase string) error {
	in, err := os.Open(from)
	if err != nil {
		return &Error{Code: codeOf(err), Doing: "open backup", Path: from, Err: err}
	}
	defer in.Close() //nolint:errcheck // it was only read
	plain, err := lock.Reader(stoppable{ctx.Err, in}, passphrase)
	if err != nil {
		return fmt.Errorf("open backup: %w", err)
	}
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return fail(err, "open backup")
	}
	_, err = io.Copy(out, plain)
	if err = errors.Join(err, out.Close()); err != nil {
		return fmt.Errorf("open backup: %w", err)
	}
	return nil
}

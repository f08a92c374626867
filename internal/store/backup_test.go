package store

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"ebbwell/internal/lock"
	"ebbwell/internal/record"
)

const backupPhrase = "four quiet herons wade"

// backupKey is a key that takes little work to open.
func backupKey(t *testing.T) lock.Key {
	t.Helper()
	return got(lock.NewKey(backupPhrase, 4))(t)
}

// practiceOfTwo is a store with two athletes, one of them with a sheet.
func practiceOfTwo(t *testing.T) *Store {
	t.Helper()
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Cora Lindqvale"}, Edit{}))(t)
	got(s.SaveAthlete(ctx, record.Athlete{Name: "Bram Sedgeley"}, Edit{}))(t)
	got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen, Note: "first heat"}, Edit{}))(t)
	return s
}

func TestBackupsOpenAndSayWhatTheyHold(t *testing.T) {
	s, ctx := practiceOfTwo(t), context.Background()
	now := got(s.Contents(ctx))(t)
	if now.Athletes != 2 || now.Tests != 1 || now.Plans != 0 || now.Changed.IsZero() {
		t.Fatalf("the store holds %+v", now)
	}
	plain, locked := filepath.Join(t.TempDir(), "plain.db"), filepath.Join(t.TempDir(), "locked.ebb")
	must(t, s.Backup(ctx, plain))
	must(t, s.BackupLocked(ctx, locked, backupKey(t)))
	for path, want := range map[string]bool{plain: false, locked: true} {
		if is := got(Locked(path))(t); is != want {
			t.Errorf("%s is locked: %v", filepath.Base(path), is)
		}
		data := got(os.ReadFile(path))(t)
		if named := bytes.Contains(data, []byte("Cora Lindqvale")); named == want {
			t.Errorf("%s names an athlete in plain: %v", filepath.Base(path), named)
		}
		o := got(OpenBackup(ctx, path, backupPhrase))(t)
		if o.Contents != now {
			t.Errorf("%s holds %+v, the store %+v", filepath.Base(path), o.Contents, now)
		}
		copied := open(t, filepath.Dir(o.Path), newClock())
		if list := got(copied.Athletes(ctx))(t); len(list) != 2 {
			t.Errorf("%d athletes come back", len(list))
		}
		must(t, copied.Close())
		must(t, o.Close())
		if _, err := os.Stat(o.Path); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("the copy that was looked at is left: %v", err)
		}
	}
	if left := got(filepath.Glob(filepath.Join(s.Dir(), "*"+unfinished+"*")))(t); len(left) > 0 {
		t.Errorf("left over: %v", left)
	}
}

func TestRestoreFromALockedBackup(t *testing.T) {
	s, ctx := practiceOfTwo(t), context.Background()
	locked := filepath.Join(t.TempDir(), "locked.ebb")
	must(t, s.BackupLocked(ctx, locked, backupKey(t)))
	before := got(s.Contents(ctx))(t)
	got(s.SaveAthlete(ctx, record.Athlete{Name: "Added later"}, Edit{}))(t)
	o := got(OpenBackup(ctx, locked, backupPhrase))(t)
	must(t, s.Restore(ctx, Snapshot{Path: o.Path}))
	must(t, o.Close())
	if now := got(s.Contents(ctx))(t); now != before {
		t.Errorf("after restoring it holds %+v, want %+v", now, before)
	}
}

func TestBackupsThatCannotBeOpened(t *testing.T) {
	s, ctx := practiceOfTwo(t), context.Background()
	locked := filepath.Join(t.TempDir(), "locked.ebb")
	must(t, s.BackupLocked(ctx, locked, backupKey(t)))
	if _, err := OpenBackup(ctx, locked, "four quiet herons sleep"); !errors.Is(err, lock.ErrPassphrase) {
		t.Errorf("another passphrase: %v", err)
	}
	whole := got(os.ReadFile(locked))(t)
	for _, at := range []int{len(whole) / 3, len(whole) / 2, len(whole) - 1} {
		changed := bytes.Clone(whole)
		changed[at] ^= 0x10
		path := filepath.Join(t.TempDir(), "changed.ebb")
		must(t, os.WriteFile(path, changed, 0o600))
		if _, err := OpenBackup(ctx, path, backupPhrase); !errors.Is(err, lock.ErrDamaged) {
			t.Errorf("byte %d changed: %v", at, err)
		}
	}
	wantCode(t, err2(OpenBackup(ctx, filepath.Join(t.TempDir(), "none.db"), "")), CodeDisk)
	strange := filepath.Join(t.TempDir(), "letter.db")
	must(t, os.WriteFile(strange, []byte("Dear colleague"), 0o600))
	wantCode(t, err2(OpenBackup(ctx, strange, "")), CodeDamaged)
}

// err2 drops a result.
func err2[T any](_ T, err error) error { return err }

func TestABackupThatIsStoppedLeavesNothing(t *testing.T) {
	s := practiceOfTwo(t)
	ended, stop := context.WithCancel(context.Background())
	stop()
	to := filepath.Join(t.TempDir(), "locked.ebb")
	if err := s.BackupLocked(ended, to, backupKey(t)); err == nil {
		t.Error("a stopped backup reports success")
	}
	for _, dir := range []string{filepath.Dir(to), s.Dir()} {
		if left := got(filepath.Glob(filepath.Join(dir, "*"+unfinished+"*")))(t); len(left) > 0 {
			t.Errorf("left over: %v", left)
		}
	}
	if _, err := os.Stat(to); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("there is a file: %v", err)
	}
}

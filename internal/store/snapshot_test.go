package store

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"ebbwell/internal/record"
)

// TestDailySnapshots: one each day of use, older ones thinned.
func TestDailySnapshots(t *testing.T) {
	dir, c, ctx := t.TempDir(), newClock(), context.Background()
	open := func() *Store { return got(Open(dir, Options{Clock: c.now}))(t) }
	s := open()
	if list := got(s.Snapshots())(t); len(list) != 0 {
		t.Errorf("a new folder has snapshots %+v", list)
	}
	must(t, s.Close())
	for day := range 20 {
		c.add(24 * time.Hour)
		s = open()
		must(t, s.Trouble())
		must(t, s.Close())
		if day%10 == 0 { // twice a day
			s = open()
			must(t, s.Close())
		}
		list := got(Snapshots(dir))(t)
		want := min(day+1, SnapshotDays)
		if day >= 16 { // 31 May 2026: the last of a week, 17 May, stays beside 14 days
			want++
		}
		if len(list) != want {
			t.Fatalf("day %d: %d snapshots, want %d", day, len(list), want)
		}
	}
	s = open()
	defer func() { must(t, s.Close()) }()
	c.add(24 * time.Hour)
	n := len(got(s.Snapshots())(t))
	got(s.SaveGroup(ctx, record.Group{Name: "past midnight"}, Edit{}))(t)
	list := got(s.Snapshots())(t)
	if len(list) != n || !list[0].At.After(list[1].At) || record.DateOf(list[0].At) != s.today() || list[0].Reason != SnapshotDaily || list[0].Bytes == 0 {
		t.Errorf("after midnight: %d snapshots, the newest %+v", len(list), list[0])
	}
	if info := got(os.Stat(list[0].Path))(t); info.Mode().Perm() != 0o600 {
		t.Errorf("the snapshot has mode %s", info.Mode())
	}
}

// TestRestore puts an earlier day back, sets the present aside, and can be undone.
func TestRestore(t *testing.T) {
	dir, c, ctx := t.TempDir(), newClock(), context.Background()
	s := open(t, dir, c)
	one, _ := sheet(t, s)
	c.add(24 * time.Hour)
	one.Note = "second day"
	second := got(s.SaveTest(ctx, one, Edit{}))(t)
	daily := got(s.Snapshots())(t)[0]
	must(t, s.Restore(ctx, daily))
	if back := got(s.LoadTest(ctx, one.ID))(t); back.Note != "" {
		t.Errorf("restored a test with note %q", back.Note)
	}
	aside := got(s.Snapshots())(t)[0]
	if aside.Reason != SnapshotSetAside {
		t.Fatalf("set aside: %+v", aside)
	}
	must(t, s.Restore(ctx, aside))
	if back := got(s.LoadTest(ctx, one.ID))(t); !reflect.DeepEqual(back, second) {
		t.Errorf("undone to %+v", back)
	}
	checkWhole(t, s)
}

// TestRestoreAfterCrash: what waits in the log of the present file is set
// aside with it, and is not read into the restored one.
func TestRestoreAfterCrash(t *testing.T) {
	dir, crashed, c, ctx := t.TempDir(), t.TempDir(), newClock(), context.Background()
	s := open(t, dir, c)
	one, _ := sheet(t, s)
	c.add(24 * time.Hour)
	one.Note = "in the log"
	one = got(s.SaveTest(ctx, one, Edit{}))(t)
	for _, end := range openFiles() { // as a program that was killed leaves it
		must(t, os.WriteFile(filepath.Join(crashed, fileName+end), got(os.ReadFile(s.path()+end))(t), 0o600))
	}
	must(t, Restore(ctx, crashed, got(s.Snapshots())(t)[0], Options{Clock: c.now}))
	after := got(Open(crashed, Options{Clock: c.now}))(t)
	if back := got(after.LoadTest(ctx, one.ID))(t); back.Note != "" {
		t.Errorf("restored a test with note %q", back.Note)
	}
	aside := got(after.Snapshots())(t)
	must(t, after.Restore(ctx, aside[len(aside)-1]))
	if back := got(after.LoadTest(ctx, one.ID))(t); !reflect.DeepEqual(back, one) {
		t.Errorf("what was set aside has lost the log: %+v", back)
	}
	must(t, after.Close())
}

// TestRestoreBad: a snapshot that cannot be used changes nothing.
func TestRestoreBad(t *testing.T) {
	dir, c, ctx := t.TempDir(), newClock(), context.Background()
	s := open(t, dir, c)
	one, _ := sheet(t, s)
	next := t.TempDir()
	must(t, openAndClose(Open(next, Options{versions: withNext()})))
	bad := filepath.Join(t.TempDir(), "bad.db")
	for name, tt := range map[string]struct {
		content []byte
		code    Code
	}{"garbage": {[]byte("garbage"), CodeDamaged}, "half": {got(os.ReadFile(s.path()))(t)[:20_000], CodeDamaged}, "none": {nil, CodeNotFound},
		"newer": {got(os.ReadFile(filepath.Join(next, fileName)))(t), CodeNewer}} {
		t.Run(name, func(t *testing.T) {
			if tt.content != nil {
				must(t, os.WriteFile(bad, tt.content, 0o600))
				defer func() { must(t, os.Remove(bad)) }()
			}
			wantCode(t, s.Restore(ctx, Snapshot{Path: bad}), tt.code)
			if again := got(s.LoadTest(ctx, one.ID))(t); !reflect.DeepEqual(again, one) {
				t.Errorf("got %+v", again)
			}
			if list := got(s.Snapshots())(t); len(list) != 0 {
				t.Errorf("something was set aside: %+v", list)
			}
		})
	}
}

// TestRestoreFails: when the prepared file cannot take its place the present one
// is put back, and work goes on with it.
func TestRestoreFails(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, _ := sheet(t, s)
	s.gate.Lock()
	must(t, s.closeFiles())
	wantCode(t, s.replace(), CodeDisk) // nothing was prepared
	must(t, s.openFiles(ctx))
	s.gate.Unlock()
	if again := got(s.LoadTest(ctx, one.ID))(t); !reflect.DeepEqual(again, one) {
		t.Errorf("got %+v", again)
	}
	if list := got(s.Snapshots())(t); len(list) != 0 {
		t.Errorf("left aside: %+v", list)
	}
}

// TestBackup makes a file that opens as a data folder of its own.
func TestBackup(t *testing.T) {
	dir, ctx := t.TempDir(), context.Background()
	s := open(t, dir, newClock())
	w := makeWorld(t, s)
	to := filepath.Join(t.TempDir(), "my backup.db")
	must(t, os.WriteFile(to, []byte("an older one"), 0o644))
	must(t, s.Backup(ctx, to))
	if info := got(os.Stat(to))(t); info.Mode().Perm() != 0o600 {
		t.Errorf("the backup has mode %s", info.Mode())
	}
	// Byte 19 of the header is 2 for a file that needs a log beside it
	// (https://www.sqlite.org/fileformat.html): a backup stands alone.
	if kept := got(os.ReadFile(to))(t); kept[18] != 1 || kept[19] != 1 {
		t.Errorf("the backup has format %d, %d", kept[18], kept[19])
	}
	if bytes.Contains(got(os.ReadFile(to))(t), []byte("an older one")) {
		t.Error("the older file is still there")
	}
	other := t.TempDir()
	must(t, Restore(ctx, other, Snapshot{Path: to}, Options{}))
	b := open(t, other, newClock())
	if one := got(b.LoadPlan(ctx, w.plan.ID))(t); !reflect.DeepEqual(one, w.plan) {
		t.Errorf("got %+v", one)
	}
	wantCode(t, s.Backup(ctx, s.path()), CodeInvalid)
	wantCode(t, s.Backup(ctx, filepath.Join(dir, snapshotFolder, "x.db")), CodeInvalid)
	wantCode(t, s.Backup(ctx, filepath.Join(other, "no", "folder", "x.db")), CodeDisk)
}

// TestRemoveSnapshots removes only what is a snapshot of this folder.
func TestRemoveSnapshots(t *testing.T) {
	s := open(t, t.TempDir(), newClock())
	wantCode(t, s.RemoveSnapshots([]Snapshot{{Path: s.path()}}), CodeNotFound)
}

// TestSnapshotTrouble: a day without a snapshot is told, and work goes on.
func TestSnapshotTrouble(t *testing.T) {
	dir, c, ctx := t.TempDir(), newClock(), context.Background()
	s := open(t, dir, c)
	must(t, os.WriteFile(filepath.Join(dir, snapshotFolder), []byte("in the way"), 0o600))
	c.add(24 * time.Hour)
	got(s.SaveGroup(ctx, record.Group{}, Edit{}))(t)
	if s.Trouble() == nil {
		t.Error("no trouble told")
	}
}

package store

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"ebbwell/internal/record"
)

// TestClockYearsAhead: one start with the clock ten years ahead takes no snapshot
// away, and thinning goes on once it is right again.
func TestClockYearsAhead(t *testing.T) {
	dir, c := t.TempDir(), newClock()
	must(t, openAndClose(Open(dir, Options{Clock: c.now})))
	for range 10 {
		c.add(24 * time.Hour)
		must(t, openAndClose(Open(dir, Options{Clock: c.now})))
	}
	before := got(Snapshots(dir))(t)
	ahead := &clock{at: c.now().AddDate(10, 0, 0)}
	must(t, openAndClose(Open(dir, Options{Clock: ahead.now})))
	for range 60 {
		c.add(24 * time.Hour)
		must(t, openAndClose(Open(dir, Options{Clock: c.now})))
		if c.now().Sub(before[0].At) == 24*time.Hour {
			for _, snap := range before {
				if _, err := os.Stat(snap.Path); err != nil {
					t.Errorf("a start ten years ahead took %s away", snap.At)
				}
			}
		}
	}
	if n := len(got(Snapshots(dir))(t)); n > SnapshotDays+SnapshotWeeks+SnapshotMonths {
		t.Errorf("since the clock was ahead once nothing is thinned: %d copies", n)
	}
}

// TestUnreadableCopyHarmsNoOther: one frozen copy whose bytes were damaged in the
// file takes neither the list nor another test with it.
func TestUnreadableCopyHarmsNoOther(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	w := makeWorld(t, s)
	ref := record.Ref{Kind: record.KindTest, ID: w.test.ID}
	got(s.Freeze(ctx, ref, Freezing{Inputs: bytes.Repeat([]byte(`{"a":1} `), 500)}))(t)
	must(t, s.files.writer.Exec("UPDATE frozen SET inputs = ? WHERE kind = ?", []byte("\x78\x9cdamaged bytes"), record.KindTest).Error)
	list := got(s.FrozenOf(ctx, ref))(t)
	if len(list) == 0 || list[0].Inputs != nil {
		t.Errorf("got %d copies, inputs %q", len(list), list[0].Inputs)
	}
	for _, sheet := range got(s.SheetsOf(ctx, w.test.AthleteID))(t) {
		if sheet.Test.ID == w.test.ID && len(sheet.Kept) == 0 {
			t.Error("that there is a copy is not told")
		}
	}
}

// TestDamageOffersCopies: a file that is found to be damaged while it is open
// comes with the copies that can be restored.
func TestDamageOffersCopies(t *testing.T) {
	dir, c, ctx := t.TempDir(), newClock(), context.Background()
	s := open(t, dir, c)
	w := makeWorld(t, s)
	c.add(24 * time.Hour)
	got(s.SaveGroup(ctx, record.Group{Name: "next day"}, Edit{}))(t)
	must(t, emptyLog(s.files.writer))
	f := got(os.OpenFile(s.path(), os.O_RDWR, 0))(t)
	got(f.WriteAt(make([]byte, 4096), int64(rootPage(t, s.path(), "tests")-1)*4096))(t)
	must(t, f.Close())
	must(t, disconnect(s.files.reader))
	s.files.reader = got(connect(s.path(), forReading))(t)
	_, err := s.LoadTest(ctx, w.test.ID)
	wantCode(t, err, CodeDamaged)
	var own *Error
	if !errors.As(err, &own) || len(own.Snapshots) == 0 || own.Path == "" {
		t.Errorf("no copy is offered: %+v", err)
	}
}

// TestAgreeingReplacesAtOnce: the plan that is replaced and the one that takes its
// place change together; when one cannot, neither does.
func TestAgreeingReplacesAtOnce(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	w := makeWorld(t, s)
	first := got(s.AgreePlan(ctx, record.Plan{AthleteID: w.athlete.ID, Name: "first"}, Freezing{}, Edit{}))(t)
	draft := got(s.SavePlan(ctx, record.Plan{AthleteID: w.athlete.ID, Name: "second"}, Edit{}))(t)
	_, err := s.AgreePlan(ctx, draft, Freezing{}, Edit{}, first.ID, "nobody")
	wantCode(t, err, CodeNotFound)
	if p := got(s.LoadPlan(ctx, first.ID))(t); p.State != record.PlanAgreed {
		t.Errorf("the first is %s though the second is not agreed", p.State)
	}
	got(s.AgreePlan(ctx, draft, Freezing{}, Edit{}, first.ID))(t)
	if p := got(s.LoadPlan(ctx, first.ID))(t); p.State != record.PlanReplaced {
		t.Errorf("the first is %s", p.State)
	}
}

// TestHandOut writes a page and keeps it; where it cannot be written it is not
// kept either, and nothing half made stays.
func TestHandOut(t *testing.T) {
	s, ctx, folder := open(t, t.TempDir(), newClock()), context.Background(), t.TempDir()
	w := makeWorld(t, s)
	before := len(got(s.PrintsOf(ctx, w.athlete.ID))(t))
	page := record.Print{AthleteID: w.athlete.ID, Kind: record.KindPlan, Record: w.plan.ID, Page: "page", Bytes: []byte("the page")}
	file := filepath.Join(folder, "page.pdf")
	kept := got(s.HandOut(ctx, page, file))(t)
	if text := got(os.ReadFile(file))(t); string(text) != "the page" || kept.ID == "" || kept.At.IsZero() {
		t.Errorf("wrote %q, kept %+v", text, kept)
	}
	must(t, os.Mkdir(filepath.Join(folder, "taken"), 0o700))
	must(t, os.WriteFile(filepath.Join(folder, "taken", "x"), nil, 0o600))
	if _, err := s.HandOut(ctx, page, filepath.Join(folder, "no", "page.pdf")); CodeOf(err) != CodeDisk {
		t.Errorf("a folder that is not there: %v", err)
	}
	if list := got(s.PrintsOf(ctx, w.athlete.ID))(t); len(list) != before+1 {
		t.Errorf("%d pages are kept, there were %d", len(list), before)
	}
	if left := hidden(t, folder, s.dir); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// hidden lists what is half made in folders.
func hidden(t *testing.T, folders ...string) (list []string) {
	t.Helper()
	for _, folder := range folders {
		for _, entry := range got(os.ReadDir(folder))(t) {
			if strings.HasPrefix(entry.Name(), partStart) || strings.HasPrefix(entry.Name(), noteStart) {
				list = append(list, filepath.Join(folder, entry.Name()))
			}
		}
	}
	return list
}

// TestKilledWhileHandingOut: what a program was killed over is ended by the next
// opening: before the record the file goes, after it the file gets its name.
func TestKilledWhileHandingOut(t *testing.T) {
	for _, recorded := range []bool{false, true} {
		dir, folder, ctx := t.TempDir(), t.TempDir(), context.Background()
		s := open(t, dir, newClock())
		w := makeWorld(t, s)
		file, id := filepath.Join(folder, "page.pdf"), record.NewID()
		part := filepath.Join(folder, partStart+"x"+unfinished)
		must(t, os.WriteFile(part, []byte("the page"), 0o600))
		got(s.noteDown(note{Part: part, To: file, Print: id}))(t)
		if recorded {
			got(s.savePrint(ctx, record.Print{ID: id, AthleteID: w.athlete.ID, Kind: record.KindPlan, Record: w.plan.ID, Bytes: []byte("the page")}))(t)
		}
		must(t, s.Close())
		must(t, openAndClose(Open(dir, Options{})))
		text, err := os.ReadFile(file)
		if recorded != (err == nil) || recorded && string(text) != "the page" {
			t.Errorf("recorded %t: the file holds %q, %v", recorded, text, err)
		}
		if left := hidden(t, folder, dir); len(left) > 0 {
			t.Errorf("left behind: %v", left)
		}
	}
}

// TestNothingIsWrittenOverTheRecords: a page or a backup whose place is the
// database, what goes with it, or anything else in the folder, is refused by
// whatever name.
func TestNothingIsWrittenOverTheRecords(t *testing.T) {
	dir, ctx, elsewhere := t.TempDir(), context.Background(), t.TempDir()
	s := open(t, dir, newClock())
	makeWorld(t, s)
	must(t, os.Symlink(dir, filepath.Join(elsewhere, "link")))
	must(t, os.Link(s.path(), filepath.Join(elsewhere, "other-name.db")))
	whole := got(os.ReadFile(s.path()))(t)
	for _, file := range []string{
		s.path(), s.path() + "-wal", s.path() + "-shm", filepath.Join(dir, LockName), filepath.Join(dir, "page.pdf"),
		filepath.Join(dir, "snapshots", "..", fileName), filepath.Join(elsewhere, "link", fileName), filepath.Join(elsewhere, "other-name.db"),
	} {
		wantCode(t, s.WriteFile(ctx, file, []byte("a page")), CodeInvalid)
		wantCode(t, s.Backup(ctx, file), CodeInvalid)
	}
	if !bytes.Equal(whole, got(os.ReadFile(s.path()))(t)) {
		t.Error("the database was written")
	}
	must(t, s.WriteFile(ctx, filepath.Join(elsewhere, "page.pdf"), []byte("a page")))
}

// TestRemovedWhileOpen: a database that is removed while it is open is written
// again, whole, and work goes on.
func TestRemovedWhileOpen(t *testing.T) {
	dir, ctx := t.TempDir(), context.Background()
	s := open(t, dir, newClock())
	w := makeWorld(t, s)
	for _, what := range [][]string{{""}, {"", "-wal", "-shm"}} {
		for _, end := range what {
			must(t, os.Remove(s.path()+end))
		}
		g := got(s.SaveGroup(ctx, record.Group{Name: "after"}, Edit{}))(t)
		must(t, s.Close())
		s = open(t, dir, newClock())
		got(s.LoadGroup(ctx, g.ID))(t)
		if one := got(s.LoadTest(ctx, w.test.ID))(t); one.ID != w.test.ID {
			t.Errorf("got %+v", one)
		}
		checkWhole(t, s)
	}
}

// TestSwappedWhileOpen: where another file takes the place of the database, it is
// left alone, what was open is set aside, and nothing more is kept.
func TestSwappedWhileOpen(t *testing.T) {
	dir, other, ctx := t.TempDir(), t.TempDir(), context.Background()
	must(t, openAndClose(Open(other, Options{})))
	strange := got(os.ReadFile(filepath.Join(other, fileName)))(t)
	s := open(t, dir, newClock())
	w := makeWorld(t, s)
	must(t, os.Remove(s.path()))
	must(t, os.WriteFile(s.path(), strange, 0o600))
	for range 2 {
		_, err := s.SaveGroup(ctx, record.Group{Name: "after"}, Edit{})
		wantCode(t, err, CodeMoved)
		wantCode(t, s.Moved(ctx), CodeMoved)
	}
	aside := got(s.Snapshots())(t)
	if len(aside) != 1 || aside[0].Reason != SnapshotSetAside {
		t.Fatalf("set aside: %+v", aside)
	}
	if !bytes.Equal(strange, got(os.ReadFile(s.path()))(t)) {
		t.Error("the file that took the place was written")
	}
	again := t.TempDir()
	must(t, Restore(ctx, again, aside[0], Options{}))
	r := open(t, again, newClock())
	got(r.LoadTest(ctx, w.test.ID))(t)
}

// TestBehindALink: two folders with links to one database are one; a link that
// leads nowhere is not replaced by a new database.
func TestBehindALink(t *testing.T) {
	home, ctx := t.TempDir(), context.Background()
	must(t, openAndClose(Open(home, Options{})))
	folder := func() string {
		dir := t.TempDir()
		must(t, os.Symlink(filepath.Join(home, fileName), filepath.Join(dir, fileName)))
		return dir
	}
	first := got(Open(folder(), Options{}))(t)
	for _, dir := range []string{folder(), home} {
		_, err := Open(dir, Options{})
		wantCode(t, err, CodeInUse)
	}
	g := got(first.SaveGroup(ctx, record.Group{Name: "by a link"}, Edit{}))(t)
	must(t, first.Close())
	s := open(t, home, newClock())
	got(s.LoadGroup(ctx, g.ID))(t)
	must(t, s.Close())
	dir := folder()
	must(t, os.Remove(filepath.Join(home, fileName)))
	_, err := Open(dir, Options{})
	wantCode(t, err, CodeDisk)
}

// TestReadOnlyFileStaysSo: a file marked as read-only is told of, not changed.
func TestReadOnlyFileStaysSo(t *testing.T) {
	dir := t.TempDir()
	must(t, openAndClose(Open(dir, Options{})))
	file := filepath.Join(dir, fileName)
	must(t, os.Chmod(file, 0o400))
	_, err := Open(dir, Options{})
	wantCode(t, err, CodeReadOnly)
	if mode := got(os.Stat(file))(t).Mode().Perm(); mode != 0o400 {
		t.Errorf("its mode is %o", mode)
	}
}

// TestFolderIsClosedToOthers: a folder that holds only what the program makes is
// closed; one that holds more is its owner's to close.
func TestFolderIsClosedToOthers(t *testing.T) {
	for _, shared := range []bool{false, true} {
		dir := t.TempDir()
		must(t, openAndClose(Open(dir, Options{})))
		if shared {
			must(t, os.WriteFile(filepath.Join(dir, "letter.txt"), nil, 0o644))
		}
		must(t, os.Chmod(dir, 0o755))
		must(t, openAndClose(Open(dir, Options{})))
		want := os.FileMode(0o700)
		if shared {
			want = 0o755
		}
		if mode := got(os.Stat(dir))(t).Mode().Perm(); mode != want {
			t.Errorf("with something else in it %t: mode %o, want %o", shared, mode, want)
		}
	}
}

// TestErasedFromCopies: who is erased is not in the copies either; everybody else
// is, and a copy of an earlier version is named.
func TestErasedFromCopies(t *testing.T) {
	dir, c, ctx := t.TempDir(), newClock(), context.Background()
	s := open(t, dir, c)
	gone := got(s.SaveAthlete(ctx, record.Athlete{Name: "Quillfeather"}, Edit{}))(t)
	other := got(s.SaveAthlete(ctx, record.Athlete{Name: "Bea Whitlock"}, Edit{}))(t)
	c.add(24 * time.Hour)
	got(s.SaveGroup(ctx, record.Group{Name: "next day"}, Edit{}))(t)
	old := filepath.Join(dir, snapshotFolder, "schema-20260101T000000.000Z.db")
	must(t, os.WriteFile(old, got(os.ReadFile(filepath.Join(keptFolder, "v1.db")))(t), 0o600))
	left := got(s.EraseAthlete(ctx, gone.ID, false))(t)
	if len(left.Snapshots) != 1 || left.Snapshots[0].Path != old {
		t.Errorf("left are %+v", left.Snapshots)
	}
	for _, snap := range got(s.Snapshots())(t) {
		if snap.Path == old {
			continue
		}
		if bytes.Contains(got(os.ReadFile(snap.Path))(t), []byte(gone.Name)) {
			t.Errorf("%s still holds the athlete", snap.Path)
		}
		again := t.TempDir()
		must(t, Restore(ctx, again, snap, Options{}))
		r := open(t, again, newClock())
		got(r.LoadAthlete(ctx, other.ID))(t)
		_, err := r.LoadAthlete(ctx, gone.ID)
		wantCode(t, err, CodeNotFound)
	}
}

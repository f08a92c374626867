package store

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ebbwell/internal/bundle"
	"ebbwell/internal/record"
)

// statesOf are the states of files by their names.
func statesOf(list []Saved) map[string]FileState {
	states := map[string]FileState{}
	for _, f := range list {
		states[filepath.Base(f.Path)] = f.State
	}
	return states
}

// saveAbout saves files about an athlete into a folder, one of them with another, and
// then does to them what people do: one is moved, one is changed, one stands on a disk
// that is not there, one is a link now.
func saveAbout(t testing.TB, s *Store, folder string, athlete, other record.ID) {
	t.Helper()
	ctx := context.Background()
	away := filepath.Join(folder, "stick")
	must(t, os.Mkdir(away, 0o700))
	at := func(name string) string { return filepath.Join(folder, name) }
	for _, name := range []string{"page.png", "moved.pdf", "changed.pdf", "link.pdf", "stick/far.pdf", "twice.pdf"} {
		must(t, s.WriteFile(ctx, at(name), []byte("of one: "+name), athlete))
	}
	must(t, s.WriteFile(ctx, at("twice.pdf"), []byte("another page"), athlete))
	must(t, s.WriteFile(ctx, at("both.pdf"), []byte("of both"), athlete, other))
	must(t, s.WriteFile(ctx, at("all.json"), []byte("of all"), Everyone))
	must(t, s.WriteFile(ctx, at("theirs.pdf"), []byte("of the other"), other))
	must(t, s.WriteFile(ctx, at("nobody.pdf"), []byte("of nobody")))
	must(t, s.Backup(ctx, at("backup.db")))
	got(s.HandOut(ctx, record.Print{AthleteID: athlete, Kind: record.KindAthlete, Record: athlete, Page: "page", Bytes: []byte("%PDF-1.7 handed out")}, at("handed.pdf")))(t)
	must(t, os.Rename(at("moved.pdf"), at("elsewhere.pdf")))
	must(t, os.WriteFile(at("changed.pdf"), []byte("written over by another program"), 0o600))
	must(t, os.Rename(at("link.pdf"), at("target.pdf")))
	must(t, os.Symlink(at("target.pdf"), at("link.pdf")))
	must(t, os.RemoveAll(away))
}

// beforeErasing is what is said of a file before one that is to be removed is.
func beforeErasing(state FileState) FileState {
	if state == FileRemoved {
		return FileThere
	}
	return state
}

// wantFile holds a file to what is said of it.
func wantFile(t *testing.T, path string, state FileState) {
	t.Helper()
	_, err := os.Lstat(path)
	if gone := err != nil; gone != (state == FileRemoved || state == FileGone || state == FileAway) {
		t.Errorf("%s, said to be %s, is gone: %v", path, state, gone)
	}
}

// wantFiles holds what is said of files before and after erasing, and the files, to what is
// wanted where they are removed; else they stay as they were.
func wantFiles(t *testing.T, folder string, wanted, before, after map[string]FileState, remove bool) {
	t.Helper()
	if len(before) != len(wanted) || len(after) != len(wanted) {
		t.Errorf("before %v, after %v", before, after)
	}
	for file, state := range wanted {
		was := beforeErasing(state)
		if !remove {
			state = was
		}
		if before[file] != was || after[file] != state {
			t.Errorf("%s was %s and is %s, want %s and %s", file, before[file], after[file], was, state)
		}
		wantFile(t, filepath.Join(folder, file), state)
	}
}

// TestErasedFiles: erasing says what was saved where and removes what is still that, of
// nobody else; what was moved, changed or is on another disk is said and left alone.
func TestErasedFiles(t *testing.T) {
	wanted := map[string]FileState{
		"page.png": FileRemoved, "twice.pdf": FileRemoved, "handed.pdf": FileRemoved, "moved.pdf": FileGone, "changed.pdf": FileChanged, "link.pdf": FileChanged,
		"far.pdf": FileAway, "both.pdf": FileThere, "all.json": FileThere, "backup.db": FileThere,
	}
	for name, remove := range map[string]bool{"removed": true, "only said": false} {
		t.Run(name, func(t *testing.T) {
			s, ctx, folder := open(t, t.TempDir(), newClock()), context.Background(), t.TempDir()
			a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
			b := got(s.SaveAthlete(ctx, record.Athlete{Name: "Ivo"}, Edit{}))(t)
			saveAbout(t, s, folder, a.ID, b.ID)
			before := statesOf(got(s.SavedOf(ctx, a.ID))(t))
			after := statesOf(got(s.EraseAthlete(ctx, a.ID, remove))(t).Files)
			wantFiles(t, folder, wanted, before, after, remove)
			for _, file := range []string{"theirs.pdf", "nobody.pdf", "elsewhere.pdf", "target.pdf"} {
				got(os.Lstat(filepath.Join(folder, file)))(t)
			}
			if n := countInFiles(t, s.Dir(), "handed.pdf"); n != 0 {
				t.Errorf("the records still hold a path %d times", n)
			}
			if left := statesOf(got(s.SavedOf(ctx, b.ID))(t)); len(left) != 4 || left["both.pdf"] != FileThere {
				t.Errorf("of the other athlete there are %v", left)
			}
		})
	}
}

// TestBackupsDoNotPileUp: of a backup every week only those that are there still are known;
// one on a disk that is away is known on, and other files are left as they were.
func TestBackupsDoNotPileUp(t *testing.T) {
	s, ctx, folder := open(t, t.TempDir(), newClock()), context.Background(), t.TempDir()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
	stick := filepath.Join(folder, "stick")
	must(t, os.Mkdir(stick, 0o700))
	at := func(name string) string { return filepath.Join(folder, name) }
	must(t, s.Backup(ctx, filepath.Join(stick, "away.db")))
	must(t, os.Rename(stick, stick+"-elsewhere"))
	must(t, s.WriteFile(ctx, at("export.json"), []byte("of all"), Everyone))
	must(t, os.Remove(at("export.json")))
	for week := range 60 {
		path := at(fmt.Sprintf("week %02d.db", week))
		must(t, s.Backup(ctx, path))
		if week > 1 { // the practice keeps two
			must(t, os.Remove(at(fmt.Sprintf("week %02d.db", week-2))))
		}
	}
	must(t, s.Backup(ctx, at("last.db")))
	have := statesOf(got(s.SavedOf(ctx, a.ID))(t))
	want := map[string]FileState{"away.db": FileAway, "export.json": FileGone, "week 58.db": FileThere, "week 59.db": FileThere, "last.db": FileThere}
	if !maps.Equal(have, want) {
		t.Errorf("known are %v, want %v", have, want)
	}
}

// TestErasedFilesAfterAKill: a program that was killed once the rows were erased leaves a
// note, by which the next one removes the files.
func TestErasedFilesAfterAKill(t *testing.T) {
	dir, folder, ctx := t.TempDir(), t.TempDir(), context.Background()
	s := got(Open(dir, Options{Clock: newClock().now}))(t)
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
	page := filepath.Join(folder, "page.pdf")
	must(t, s.WriteFile(ctx, page, []byte("a page"), a.ID))
	note := got(s.noteErasing(a.ID, erasing{Files: got(s.savedRows(ctx, a.ID))(t), Remove: true}))(t)
	kept := got(os.ReadFile(note))(t)
	got(s.EraseAthlete(ctx, a.ID, false))(t)
	must(t, s.Close())
	must(t, os.WriteFile(note, kept, 0o600))
	must(t, got(Open(dir, Options{Clock: newClock().now}))(t).Close())
	if _, err := os.Lstat(page); err == nil {
		t.Error("the file is still there")
	}
	if _, err := os.Lstat(note); err == nil {
		t.Error("the note is still there")
	}
}

// TestPathsStayHere: where a file was saved is in no bundle.
func TestPathsStayHere(t *testing.T) {
	s, ctx, folder := open(t, t.TempDir(), newClock()), context.Background(), t.TempDir()
	one, _ := sheet(t, s)
	got(s.HandOut(ctx, record.Print{AthleteID: one.AthleteID, Kind: record.KindTest, Record: one.ID, Page: "report", Bytes: []byte("%PDF")}, filepath.Join(folder, "report.pdf")))(t)
	b := got(s.Pack(ctx, []record.ID{one.AthleteID}, "Saltmarsh (invented)"))(t)
	var out bytes.Buffer
	must(t, bundle.Write(&out, b, "1"))
	text := string(got(json.Marshal(b))(t))
	if len(b.Prints) != 1 || strings.Contains(out.String(), folder) || strings.Contains(text, filepath.Base(folder)) || strings.Contains(text, "report.pdf") {
		t.Errorf("the bundle holds %d pages and tells where they are: %s", len(b.Prints), text)
	}
}

// TestReadOnlySaves: from a folder that is only read files are saved, and nothing is kept.
func TestReadOnlySaves(t *testing.T) {
	dir, ctx := t.TempDir(), context.Background()
	s := got(Open(dir, Options{Clock: newClock().now}))(t)
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
	must(t, s.Close())
	r := got(Open(dir, Options{Clock: newClock().now, ReadOnly: true}))(t)
	must(t, r.WriteFile(ctx, filepath.Join(t.TempDir(), "page.pdf"), []byte("page"), a.ID))
	if list := got(r.SavedOf(ctx, a.ID))(t); len(list) != 0 {
		t.Errorf("kept %v", list)
	}
	must(t, r.Close())
}

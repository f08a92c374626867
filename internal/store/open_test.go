package store

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// TestDefaultDir by system and environment.
func TestDefaultDir(t *testing.T) {
	env := func(pairs ...string) func(string) string {
		return func(name string) string {
			for i := 0; i < len(pairs); i += 2 {
				if pairs[i] == name {
					return pairs[i+1]
				}
			}
			return ""
		}
	}
	tests := []struct {
		name, system string
		env          func(string) string
		want         string
	}{
		{"linux", "linux", env(), "/home/k/.local/share/ebbwell"},
		{"linux with a data folder", "linux", env("XDG_DATA_HOME", "/data"), "/data/ebbwell"},
		{"linux with a relative one", "linux", env("XDG_DATA_HOME", "data"), "/home/k/.local/share/ebbwell"},
		{"mac", "darwin", env("XDG_DATA_HOME", "/data"), "/home/k/Library/Application Support/Ebbwell"},
		{"windows", "windows", env("LOCALAPPDATA", "/local"), "/local/Ebbwell"},
		{"windows without", "windows", env(), "/home/k/AppData/Local/Ebbwell"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if dir := defaultDir(tt.system, "/home/k", tt.env); dir != filepath.FromSlash(tt.want) {
				t.Errorf("got %s, want %s", dir, tt.want)
			}
		})
	}
	if dir, err := DefaultDir(); err != nil || !filepath.IsAbs(dir) {
		t.Errorf("got %q, %v", dir, err)
	}
}

// TestOddFolders: names that mean something in a URL or to a shell.
func TestOddFolders(t *testing.T) {
	for _, name := range []string{"with space", "a?b#c", "100%25", "häß 🏃", "a&b=c;d", "-", "'quote'"} {
		t.Run(name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), name, "data")
			s := got(Open(dir, Options{}))(t)
			g := got(s.SaveGroup(context.Background(), record.Group{Name: "Squad"}, Edit{}))(t)
			must(t, s.Close())
			if _, err := os.Stat(filepath.Join(dir, fileName)); err != nil {
				t.Fatal(err)
			}
			s = got(Open(dir, Options{}))(t)
			got(s.LoadGroup(context.Background(), g.ID))(t)
			must(t, s.Close())
		})
	}
}

// TestSecondOpen: one program has the folder, and frees it by closing.
func TestSecondOpen(t *testing.T) {
	dir := t.TempDir()
	first := got(Open(dir, Options{}))(t)
	_, err := Open(dir, Options{})
	wantCode(t, err, CodeInUse)
	_, err = Open(dir, Options{ReadOnly: true})
	wantCode(t, err, CodeInUse)
	must(t, first.Close())
	must(t, first.Close())
	second := got(Open(dir, Options{}))(t)
	must(t, second.Close())
}

// TestClosedStore: calls after Close fail with a code.
func TestClosedStore(t *testing.T) {
	s, ctx := got(Open(t.TempDir(), Options{}))(t), context.Background()
	must(t, s.Close())
	_, err := s.Athletes(ctx)
	wantCode(t, err, CodeNotOpen)
	_, err = s.SaveAthlete(ctx, record.Athlete{}, Edit{})
	wantCode(t, err, CodeNotOpen)
	wantCode(t, s.Backup(ctx, filepath.Join(t.TempDir(), "b.db")), CodeNotOpen)
	wantCode(t, s.Restore(ctx, Snapshot{}), CodeNotOpen)
}

// TestReadOnly reads everything and writes nothing, also after a crash that
// left saves in the log.
func TestReadOnly(t *testing.T) {
	for _, crashed := range []bool{false, true} {
		dir, ctx := t.TempDir(), context.Background()
		s := got(Open(dir, Options{}))(t)
		w := makeWorld(t, s)
		if crashed { // the files as they are while the program runs
			other := t.TempDir()
			for _, end := range openFiles() {
				must(t, os.WriteFile(filepath.Join(other, fileName+end), got(os.ReadFile(s.path()+end))(t), 0o600))
			}
			dir = other
		}
		must(t, s.Close())
		before := listing(t, dir)
		r := got(Open(dir, Options{ReadOnly: true}))(t)
		if one := got(r.LoadTest(ctx, w.test.ID))(t); !reflect.DeepEqual(one, w.test) {
			t.Errorf("got %+v", one)
		}
		_, err := r.SaveTest(ctx, w.test, Edit{})
		wantCode(t, err, CodeReadOnly)
		_, err = r.EraseAthlete(ctx, w.athlete.ID, false)
		wantCode(t, err, CodeReadOnly)
		wantCode(t, r.Restore(ctx, Snapshot{}), CodeReadOnly)
		wantCode(t, r.RemoveSnapshots(nil), CodeReadOnly)
		if !crashed {
			must(t, r.Backup(ctx, filepath.Join(t.TempDir(), "b.db")))
		}
		again := got(Open(dir, Options{ReadOnly: true}))(t) // two may look
		must(t, again.Close())
		must(t, r.Close())
		if after := listing(t, dir); !crashed && !reflect.DeepEqual(before, after) {
			t.Errorf("looking changed the folder from %v to %v", before, after)
		}
	}
	_, err := Open(filepath.Join(t.TempDir(), "nothing"), Options{ReadOnly: true})
	wantCode(t, err, CodeNotFound)
}

func listing(t testing.TB, dir string) map[string]int64 {
	t.Helper()
	files := map[string]int64{}
	for _, f := range got(os.ReadDir(dir))(t) {
		files[f.Name()] = got(f.Info())(t).Size()
	}
	return files
}

// TestDamaged: a file that is not whole is told with what can be restored,
// and restoring one works and keeps the damaged file.
func TestDamaged(t *testing.T) {
	tests := map[string]func(t *testing.T, path string){
		"garbage":   func(t *testing.T, path string) { must(t, os.WriteFile(path, []byte("no database, only words"), 0o600)) },
		"empty":     func(t *testing.T, path string) { must(t, os.Truncate(path, 0)) },
		"truncated": func(t *testing.T, path string) { must(t, os.Truncate(path, 20_000)) },
		"gone":      func(t *testing.T, path string) { must(t, os.Remove(path)) },
		"scratched": func(t *testing.T, path string) {
			page := rootPage(t, path, "athletes")
			b := got(os.ReadFile(path))(t)
			copy(b[(page-1)*4096:], make([]byte, 90))
			must(t, os.WriteFile(path, b, 0o600))
		},
		"another program's": func(t *testing.T, path string) {
			must(t, os.Remove(path))
			must(t, makeEmpty(path))
			db, err := connect(path, forMaking)
			must(t, err)
			must(t, db.Exec("CREATE TABLE things (id integer)").Error)
			must(t, disconnect(db))
		},
	}
	for name, spoil := range tests {
		t.Run(name, func(t *testing.T) {
			dir, c, ctx := t.TempDir(), newClock(), context.Background()
			s := got(Open(dir, Options{Clock: c.now}))(t)
			w := makeWorld(t, s)
			c.add(24 * time.Hour)
			got(s.SaveGroup(ctx, record.Group{}, Edit{}))(t)
			must(t, s.Close())
			spoil(t, filepath.Join(dir, fileName))
			_, err := Open(dir, Options{Clock: c.now})
			wantCode(t, err, CodeDamaged)
			var own *Error
			if errors.As(err, &own); len(own.Snapshots) != 1 || own.Path == "" {
				t.Fatalf("the error offers %+v for %q", own.Snapshots, own.Path)
			}
			must(t, Restore(ctx, dir, own.Snapshots[0], Options{Clock: c.now}))
			s = got(Open(dir, Options{Clock: c.now}))(t)
			if one := got(s.LoadTest(ctx, w.test.ID))(t); !reflect.DeepEqual(one, w.test) {
				t.Errorf("restored %+v", one)
			}
			checkWhole(t, s)
			aside := 0
			for _, snap := range got(s.Snapshots())(t) {
				if snap.Reason == SnapshotSetAside {
					aside++
				}
			}
			if want := map[bool]int{true: 0, false: 1}[name == "gone"]; aside != want {
				t.Errorf("%d files set aside, want %d", aside, want)
			}
			must(t, s.Close())
		})
	}
}

// rootPage finds the first page of a table.
func rootPage(t testing.TB, path, table string) (page int) {
	t.Helper()
	db, err := connect(path, forCopying)
	must(t, err)
	must(t, db.Raw("SELECT rootpage FROM sqlite_master WHERE name = ?", table).Row().Scan(&page))
	must(t, disconnect(db))
	return page
}

// TestConnections: what is promised about safety holds on every connection.
func TestConnections(t *testing.T) {
	s := open(t, t.TempDir(), newClock())
	for name, want := range map[string]string{"synchronous": "2", "foreign_keys": "1", "journal_mode": "wal", "temp_store": "2", "busy_timeout": "5000"} {
		for _, db := range []*gorm.DB{s.files.writer, s.files.reader} {
			var value string
			must(t, db.Raw("PRAGMA "+name).Row().Scan(&value))
			if value != want {
				t.Errorf("%s is %s, want %s", name, value, want)
			}
		}
	}
	if err := s.files.reader.Create(&record.Group{Meta: record.Meta{ID: "x"}}).Error; err == nil {
		t.Error("a connection for reading wrote")
	}
}

// TestFolderIsAFile and other wrong places.
func TestFolderIsAFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "file")
	must(t, os.WriteFile(path, nil, 0o600))
	_, err := Open(path, Options{})
	wantCode(t, err, CodeInvalid)
	_, err = Open(filepath.Join(path, "below"), Options{})
	wantCode(t, err, CodeDisk)
}

// TestLeftovers: what a stopped program left half made is cleared away.
func TestLeftovers(t *testing.T) {
	dir := t.TempDir()
	must(t, openAndClose(Open(dir, Options{})))
	must(t, os.MkdirAll(filepath.Join(dir, snapshotFolder), 0o700))
	left := []string{fileName + unfinished, fileName + unfinished + "-journal", filepath.Join(snapshotFolder, "daily-x.db"+unfinished)}
	for _, name := range left {
		must(t, os.WriteFile(filepath.Join(dir, name), []byte("half"), 0o600))
	}
	must(t, openAndClose(Open(dir, Options{})))
	for _, name := range left {
		if _, err := os.Stat(filepath.Join(dir, name)); err == nil {
			t.Errorf("%s is still there", name)
		}
	}
}

// openAndClose ends a store that was just opened.
func openAndClose(s *Store, err error) error {
	if err != nil {
		return err
	}
	return s.Close()
}

// TestEngine: the engine is one whose known faults of 2023 to 2025 are mended.
func TestEngine(t *testing.T) {
	s := open(t, t.TempDir(), newClock())
	var major, minor, patch int
	name := got(s.Engine(context.Background()))(t)
	if _, err := fmt.Sscanf(name, "SQLite %d.%d.%d", &major, &minor, &patch); err != nil || major != 3 || minor < 53 {
		t.Errorf("the engine is %q, %v", name, err)
	}
}

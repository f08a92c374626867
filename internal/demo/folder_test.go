package demo

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"ebbwell/internal/store"
)

// A folder left by a program that was killed goes at the next start; one that is
// open stays, and so does one that was just made and everything else.
func TestFoldersLeftBehind(t *testing.T) {
	in, now := t.TempDir(), time.Now()
	created := func(name string) string {
		dir := filepath.Join(in, name)
		if err := os.Mkdir(dir, 0o700); err != nil {
			t.Fatal(err)
		}
		return dir
	}
	killed, open, fresh, other := created("ebbwell-demo-1"), created("ebbwell-demo-2"), created("ebbwell-demo-3"), created("ebbwell-data")
	old := created("ebbwell-demo-4")
	for _, dir := range []string{killed, open, other} {
		s, err := store.Open(dir, store.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if dir == open {
			defer func() {
				if err := s.Close(); err != nil {
					t.Error(err)
				}
			}()
			continue
		}
		if err := s.Close(); err != nil { // the lock goes as it does when a program is killed
			t.Fatal(err)
		}
	}
	if err := os.Chtimes(old, now, now.Add(-2*time.Hour)); err != nil {
		t.Fatal(err)
	}
	dir, err := newFolder(in, now)
	if err != nil {
		t.Fatal(err)
	}
	there := func(dir string) bool { _, err := os.Stat(dir); return err == nil }
	for dir, want := range map[string]bool{killed: false, old: false, open: true, fresh: true, other: true, dir: true} {
		if there(dir) != want {
			t.Errorf("%s is there: %v", dir, !want)
		}
	}
}

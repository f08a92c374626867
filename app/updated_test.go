package app

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/keep/clock"
	"ebbwell/assets"
	"ebbwell/internal/store"
)

// startAfter starts a shell on a computer where a version ran last.
func startAfter(t *testing.T, dir, before string) fyne.Window {
	t.Helper()
	a := test.NewTempApp(t)
	if before != "" {
		a.Preferences().SetString(seenVersion, before)
	}
	w := test.NewTempWindow(t, nil)
	w.Resize(fyne.NewSize(1180, 760))
	s := NewShell(a, w, apptest.Words(t), Options{
		Dir: dir, Now: apptest.Now, Beside: desk.Inline{}, After: clock.New(apptest.Now()).After, OnWindow: func(do func()) { do() },
	})
	s.Start()
	if s.Program() == nil {
		begin(t, w)
	}
	if got := a.Preferences().String(seenVersion); got != assets.Version {
		t.Errorf("after the start %q is kept as the version", got)
	}
	if err := s.Close(); err != nil {
		t.Error(err)
	}
	return w
}

func TestAnUpdateSaysWhatChanged(t *testing.T) {
	dir := t.TempDir()
	news := apptest.Words(t).Say("program.updated", assets.Version, "0.0.9")
	for _, c := range []struct {
		name, before string
		want         bool
	}{
		{"first start", "", false},
		{"after an update", "0.0.9", true},
		{"the same version again", assets.Version, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := startAfter(t, dir, c.before)
			if got := slices.Contains(apptest.VisibleTexts(w.Content()), news); got != c.want {
				t.Errorf("the window says so: %v", got)
			}
		})
	}
}

// TestAnUpdateKeepsTheRecords: the records of every version of the database open in this
// one as after an update: who was there stands in the list, it is said what changed, and
// the file is one of this version from then on.
func TestAnUpdateKeepsTheRecords(t *testing.T) {
	files, err := filepath.Glob("../internal/store/testdata/databases/v*.db")
	if err != nil || len(files) == 0 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	news := apptest.Words(t).Say("program.updated", assets.Version, "0.0.9")
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			dir := t.TempDir()
			data, err := os.ReadFile(file)
			must(t, err)
			must(t, os.WriteFile(filepath.Join(dir, "ebbwell.db"), data, 0o600))
			texts := apptest.VisibleTexts(startAfter(t, dir, "0.0.9").Content())
			if !slices.Contains(texts, news) {
				t.Errorf("what changed is not said: %q", texts)
			}
			for _, name := range namesIn(t, dir) {
				if !slices.Contains(texts, name) {
					t.Errorf("%s is not in the list: %q", name, texts)
				}
			}
		})
	}
}

// namesIn are the athletes in a folder, which also has tests and plans.
func namesIn(t *testing.T, dir string) (names []string) {
	t.Helper()
	s, err := store.Open(dir, store.Options{})
	must(t, err)
	people, err := s.People(context.Background())
	must(t, err)
	for _, p := range people {
		names = append(names, p.Name)
	}
	c, err := s.Contents(context.Background())
	must(t, errors.Join(err, s.Close()))
	if len(names) == 0 || c.Tests == 0 || c.Plans == 0 {
		t.Errorf("%d athletes, %+v", len(names), c)
	}
	return names
}

package app

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/keep/clock"
	"ebbwell/assets"
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

package app

import (
	"context"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/keep/clock"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// startDays starts a shell some days after the tests' day and returns what its
// window shows.
func startDays(t *testing.T, dir string, days int) []string {
	t.Helper()
	now := func() time.Time { return apptest.Now().AddDate(0, 0, days) }
	w := test.NewTempWindow(t, nil)
	w.Resize(fyne.NewSize(1180, 760))
	s := NewShell(test.NewTempApp(t), w, apptest.Words(t), Options{
		Dir: dir, Now: now, Beside: desk.Inline{}, After: clock.New(now()).After, OnWindow: func(do func()) { do() },
	})
	s.Start()
	shown := apptest.VisibleTexts(w.Content())
	if err := s.Close(); err != nil {
		t.Error(err)
	}
	return shown
}

// practiceWithATest makes a data folder with a practice, an athlete and a sheet.
func practiceWithATest(t *testing.T, b record.Backup) string {
	t.Helper()
	dir := t.TempDir()
	s, err := store.Open(dir, store.Options{Clock: apptest.Now, By: "Ada Fennimoor"})
	if err != nil {
		t.Fatal(err)
	}
	p := record.Practice{Name: "Saltmarsh", Practitioner: "Ada Fennimoor"}
	p.Settings.Backup = b
	_, err = s.SavePractice(t.Context(), p, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	a, err := s.SaveAthlete(t.Context(), record.Athlete{Name: "Cora Lindqvale"}, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.SaveTest(t.Context(), record.Test{AthleteID: a.ID, State: record.TestOpen}, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	return dir
}

func TestAnOldBackupIsRemindedOf(t *testing.T) {
	at := apptest.Now()
	dir := practiceWithATest(t, record.Backup{At: &at})
	said := func(shown []string) bool {
		return slices.ContainsFunc(shown, func(s string) bool { return strings.Contains(s, "last backup is") })
	}
	if said(startDays(t, dir, store.BackupReminderDays-1)) {
		t.Error("reminded a day too early")
	}
	if !said(startDays(t, dir, store.BackupReminderDays)) {
		t.Error("not reminded")
	}
}

func TestABackupIsRepeated(t *testing.T) {
	at, folder := apptest.Now(), t.TempDir()
	dir := practiceWithATest(t, record.Backup{At: &at, Folder: folder, Days: store.BackupDays})
	files := func() int {
		list, err := filepath.Glob(filepath.Join(folder, "*.db"))
		if err != nil {
			t.Fatal(err)
		}
		return len(list)
	}
	for _, step := range []struct{ days, want int }{{store.BackupDays - 1, 0}, {store.BackupDays, 1}, {store.BackupDays + 1, 1}, {2 * store.BackupDays, 2}} {
		startDays(t, dir, step.days)
		if got := files(); got != step.want {
			t.Errorf("after %d days there are %d backups, want %d", step.days, got, step.want)
		}
	}
}

func TestABackupThatFailsIsSaid(t *testing.T) {
	at := apptest.Now()
	dir := practiceWithATest(t, record.Backup{At: &at, Folder: filepath.Join(t.TempDir(), "gone"), Days: store.BackupDays})
	shown := startDays(t, dir, store.BackupDays)
	if !slices.ContainsFunc(shown, func(s string) bool { return strings.Contains(s, "could not be written") }) {
		t.Errorf("not said in %q", shown)
	}
}

// A backup that ends while the practice is on the screen takes nothing away from what
// is typed there, before or after.
func TestABackupEndsWhileThePracticeIsTyped(t *testing.T) {
	s, w := start(t, t.TempDir(), false)
	begin(t, w)
	p := s.Program()
	p.Open(desk.Place{Screen: desk.Practice})
	apptest.Type(t, w, "practice.telephone", "555 0100")
	if err := s.noteBackup(); err != nil {
		t.Fatal(err)
	}
	apptest.Type(t, w, "practice.emergency", "112")
	p.Open(desk.Place{Screen: desk.Athletes})
	if p.Place().Screen != desk.Athletes {
		t.Fatalf("the list does not open: %q", p.frame.strip.Message())
	}
	kept, err := p.Desk().Store.Practice(context.Background())
	if err != nil || kept.Telephone != "555 0100" || kept.Emergency != "112" || kept.Settings.Backup.At == nil {
		t.Errorf("kept %+v, %v", kept, err)
	}
}

// A list that is open when the window is drawn anew goes with the view it belongs to:
// what was picked in it would make the new view's next change one of an older record.
func TestOpenListGoesWithItsView(t *testing.T) {
	s, w := start(t, t.TempDir(), false)
	begin(t, w)
	p := s.Program()
	p.Open(desk.Place{Screen: desk.Practice})
	apptest.Click(t, w, "practice.language")
	if w.Canvas().Overlays().Top() == nil {
		t.Fatal("no list is open")
	}
	p.Reload()
	if w.Canvas().Overlays().Top() != nil {
		t.Error("the list of the earlier view is open still")
	}
}

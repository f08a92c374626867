package app

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/keep"
	"ebbwell/app/kit/keep/clock"
	"ebbwell/internal/store"
)

// start starts a shell on a data folder in a window of the software painter.
// Its clock stands still, so that nothing runs beside the test.
func start(t *testing.T, dir string, demo bool) (*Shell, fyne.Window) {
	t.Helper()
	return startBy(t, dir, demo, clock.New(apptest.Now()))
}

// startBy is start with a clock that the test moves on.
func startBy(t *testing.T, dir string, demo bool, c *clock.Clock) (*Shell, fyne.Window) {
	t.Helper()
	if demo {
		dir = apptest.DemoDir(t, apptest.Words(t), apptest.Now)
	}
	return startWith(t, Options{Dir: dir, Tour: true, Now: c.Now, After: c.After})
}

// startWith starts a shell that works on the test's own thread.
func startWith(t *testing.T, o Options) (*Shell, fyne.Window) {
	t.Helper()
	a := test.NewTempApp(t)
	w := test.NewTempWindow(t, nil)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(1180, 760))
	o.Beside, o.OnWindow = desk.Inline{}, func(do func()) { do() }
	s := NewShell(a, w, apptest.Words(t), o)
	s.Start()
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	})
	return s, w
}

// begin makes a practice of one's own.
func begin(t *testing.T, w fyne.Window) {
	t.Helper()
	apptest.Type(t, w, "welcome.person", "Ada Fennimoor")
	apptest.Type(t, w, "welcome.practice", "Saltmarsh")
	apptest.Click(t, w, "welcome.begin")
}

func TestFirstStart(t *testing.T) {
	dir := t.TempDir()
	s, w := start(t, dir, false)
	if s.Program() != nil {
		t.Fatal("the program runs without a practice")
	}
	apptest.Click(t, w, "welcome.begin")
	if s.Program() != nil {
		t.Fatal("a practice began without the name of who makes its entries")
	}
	begin(t, w)
	if s.Program() == nil || s.Program().Place().Screen != desk.Athletes {
		t.Fatal("no roster after the practice began")
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	again, _ := start(t, dir, false)
	if again.Program() == nil || again.Program().Desk().Practice().Practitioner != "Ada Fennimoor" {
		t.Error("the practice is not there at the second start")
	}
}

func TestTryTheInventedPractice(t *testing.T) {
	s, w := start(t, t.TempDir(), false)
	apptest.Click(t, w, "welcome.try")
	leavesNothing(t, s)
	s, _ = startWith(t, Options{Demo: true, Now: apptest.Now, After: clock.New(apptest.Now()).After})
	leavesNothing(t, s)
}

// leavesNothing holds an open invented practice to take its folder away with it.
func leavesNothing(t *testing.T, s *Shell) {
	t.Helper()
	if s.Program() == nil || !s.Program().Desk().Practice().Settings.Invented {
		t.Fatal("the invented practice did not open")
	}
	dir := s.temporary
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(dir); !os.IsNotExist(err) {
		t.Errorf("the temporary folder is still there: %v", err)
	}
}

// The second program on the same folder is told so and can try again.
func TestSecondProgram(t *testing.T) {
	dir := t.TempDir()
	first, w := start(t, dir, false)
	begin(t, w)
	second, w2 := start(t, dir, false)
	if second.Program() != nil || !apptest.Has(w2, "refusal.again") {
		t.Fatal("two programs run on one folder")
	}
	if text := said(w2.Content()); !strings.Contains(text, "Another window of this program") {
		t.Errorf("the second program says %q", text)
	}
	if err := first.Close(); err != nil {
		t.Fatal(err)
	}
	apptest.Click(t, w2, "refusal.again")
	if second.Program() == nil {
		t.Error("it does not open after the first has closed")
	}
}

// A damaged file is said to be so, left as it is, and a copy can be restored.
func TestDamagedFileIsRestored(t *testing.T) {
	dir := t.TempDir()
	s, w := start(t, dir, false)
	begin(t, w)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	s, _ = start(t, dir, false) // the first use of a day makes a snapshot
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	damage(t, dir)
	s, w = start(t, dir, false)
	if s.Program() != nil {
		t.Fatal("a damaged file opened")
	}
	if !apptest.Has(w, "refusal.restore.1") {
		t.Fatalf("no copy is offered: %q", said(w.Content()))
	}
	apptest.Click(t, w, "refusal.restore.1")
	if s.Program() == nil {
		t.Errorf("the copy was not restored: %q", said(w.Content()))
	}
}

// damage writes over the middle of the database.
func damage(t *testing.T, dir string) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.db"))
	if err != nil || len(files) != 1 {
		t.Fatalf("found %v, %v", files, err)
	}
	f, err := os.OpenFile(files[0], os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range []int64{0, 4096, 8192} {
		if _, err := f.WriteAt([]byte(strings.Repeat("damaged ", 256)), at); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
}

func TestEveryPlaceOfTheDemoOpens(t *testing.T) {
	s, _ := start(t, "", true)
	p := s.Program()
	list, err := p.Desk().Store.Athletes(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range list {
		place := desk.Place{Screen: desk.Tests, Athlete: a.ID}
		p.Open(place)
		if p.Place().Screen != place.Screen || p.Place().Athlete != a.ID {
			t.Errorf("%s: %s did not open: %s", a.Name, place.Screen, p.frame.strip.Message())
		}
	}
	p.Back()
	if p.Place().Screen != desk.Tests || p.Place().Athlete == list[len(list)-1].ID {
		t.Errorf("back went to %+v", p.Place())
	}
}

// A save that fails keeps the window where it is, with words, and is tried
// again.
func TestFailedSaveStaysOnTheScreen(t *testing.T) {
	s, _ := start(t, "", true)
	p := s.Program()
	full := true
	p.keeper.Later("test", func(context.Context) error {
		if full {
			return &store.Error{Code: store.CodeNoSpace, Doing: "save"}
		}
		return nil
	})
	before := p.Place()
	list, err := p.Desk().Store.Athletes(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	p.Open(desk.Place{Screen: desk.Tests, Athlete: list[0].ID})
	if p.Place() != before || !strings.Contains(p.frame.strip.Message(), "The disk is full") {
		t.Fatalf("went to %+v and said %q", p.Place(), p.frame.strip.Message())
	}
	if !strings.Contains(p.frame.saved.Text(), "Not saved yet") {
		t.Errorf("the foot of the rail says %q", p.frame.saved.Text())
	}
	if err := s.Close(); err == nil {
		t.Error("the program closed with something not kept")
	}
	full = false
	p.Open(desk.Place{Screen: desk.Tests, Athlete: list[0].ID})
	if p.Place() == before || !strings.Contains(p.frame.saved.Text(), "Last saved") {
		t.Errorf("still at %+v: %q", p.Place(), p.frame.saved.Text())
	}
}

// What is written at once is not said to be being saved, and the words keep the time of
// the last save; what takes long is.
func TestSavingIsSaidWhereItTakesLong(t *testing.T) {
	c := clock.New(apptest.Now())
	s, _ := startBy(t, "", true, c)
	p := s.Program()
	p.keeper.Later("test", func(context.Context) error { return nil })
	c.Advance(keep.Longest)
	before := p.frame.saved.Text()
	if !strings.Contains(before, "Last saved") {
		t.Fatalf("the foot of the rail says %q", before)
	}
	var meanwhile string
	p.keeper.Later("test", func(context.Context) error {
		c.Advance(savingSaid)
		meanwhile = p.frame.saved.Text()
		return nil
	})
	if at := p.frame.saved.Text(); at != before {
		t.Errorf("it flickers: %q", at)
	}
	c.Advance(keep.Longest)
	if after := p.frame.saved.Text(); meanwhile != "Saving …" || !strings.Contains(after, "Last saved") {
		t.Errorf("while it is written %q, then %q", meanwhile, after)
	}
}

func TestShortcuts(t *testing.T) {
	s, _ := start(t, "", true)
	p := s.Program()
	list, err := p.Desk().Store.Athletes(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	p.Open(desk.Place{Screen: desk.Tests, Athlete: list[0].ID})
	p.shortcut(&desktop.CustomShortcut{KeyName: fyne.Key1, Modifier: fyne.KeyModifierControl})
	if p.Place().Screen != desk.Athletes {
		t.Errorf("Ctrl+1 went to %+v", p.Place())
	}
	p.key(&fyne.KeyEvent{Name: fyne.KeyF1}) // nobody's key
	p.print()
}

func TestPlacesAreWritten(t *testing.T) {
	_, w := start(t, t.TempDir(), false)
	file := filepath.Join(t.TempDir(), "places.json")
	ticks, done, ended := make(chan time.Time), make(chan struct{}), make(chan struct{})
	go func() {
		reportPlaces(w, file, ticks, done)
		close(ended)
	}()
	ticks <- apptest.Now() // what is there
	if _, err := os.ReadFile(file); !os.IsNotExist(err) {
		t.Errorf("the places are written before they are known to rest: %v", err)
	}
	ticks <- apptest.Now() // the same: it rests, and is written
	close(done)
	<-ended
	data, err := os.ReadFile(file)
	if err != nil || !strings.Contains(string(data), `"welcome.begin"`) {
		t.Errorf("the places were not written: %v, %s", err, data)
	}
}

// said gathers the texts below an object.
func said(o fyne.CanvasObject) string {
	var list []string
	var walk func(fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case interface{ Text() string }:
			list = append(list, o.Text())
		case interface{ Text() (string, string) }:
			title, sentence := o.Text()
			list = append(list, title, sentence)
		}
		switch o := o.(type) {
		case *fyne.Container:
			for _, c := range o.Objects {
				walk(c)
			}
		case interface{ Parts() []fyne.CanvasObject }:
			for _, c := range o.Parts() {
				walk(c)
			}
		}
	}
	walk(o)
	return strings.ReplaceAll(strings.Join(list, " "), "\u00a0", " ")
}

// A sentence at the foot covers nothing and goes by itself after a while; a newer one
// has its own time.
func TestSentencesAtTheFootGo(t *testing.T) {
	c := clock.New(apptest.Now())
	s, _ := startBy(t, t.TempDir(), true, c)
	f := s.Program().frame
	whole := f.body.Size().Height
	s.Program().desk.Say("Saved.", "", nil)
	if f.strip.Message() != "Saved." {
		t.Fatalf("it says %q", f.strip.Message())
	}
	if foot := f.body.Position().Y + f.body.Size().Height; foot > f.strip.Position().Y || f.body.Size().Height >= whole {
		t.Errorf("the screen ends at %g, the strip begins at %g", foot, f.strip.Position().Y)
	}
	c.Advance(stripStays / 2)
	s.Program().desk.Say("Saved again.", "", nil)
	c.Advance(stripStays * 3 / 4)
	if f.strip.Message() != "Saved again." {
		t.Errorf("the newer one went with the older: %q", f.strip.Message())
	}
	c.Advance(stripStays)
	if f.strip.Message() != "" || f.body.Size().Height != whole {
		t.Errorf("still there: %q, the screen is %g high of %g", f.strip.Message(), f.body.Size().Height, whole)
	}
}

// A value that the disk changed is said before the records open; they open as they are
// when one asks for it.
func TestAlteredFileOpensAsItIs(t *testing.T) {
	dir := t.TempDir()
	s, w := start(t, dir, false)
	begin(t, w)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, "ebbwell.db")
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	at := bytes.Index(data, []byte("Saltmarsh"))
	if at < 0 {
		t.Fatal("the practice's name is nowhere")
	}
	data[at] ^= 1
	if err := errors.Join(os.WriteFile(file, data, 0o600), os.Chtimes(file, info.ModTime(), info.ModTime())); err != nil {
		t.Fatal(err)
	}
	s, w = start(t, dir, false)
	if s.Program() != nil || !strings.Contains(said(w.Content()), "A value in it has changed") {
		t.Fatalf("nothing is said: %q", said(w.Content()))
	}
	apptest.Click(t, w, "refusal.asitis")
	if s.Program() == nil {
		t.Fatalf("it does not open: %q", said(w.Content()))
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
}

package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// press sends a key to what has the keyboard, else to the window.
func press(w fyne.Window, k fyne.KeyName) {
	e := &fyne.KeyEvent{Name: k}
	if on := w.Canvas().Focused(); on != nil {
		on.TypedKey(e)
		return
	}
	w.Canvas().OnTypedKey()(e)
}

// F1 opens the page of the screen; Escape closes it and the keyboard is where it was.
func TestHelpOpensAndCloses(t *testing.T) {
	s, w := start(t, "", true)
	p := s.Program()
	list, err := p.desk.Store.Athletes(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	p.Open(desk.Place{Screen: desk.Profile, Athlete: list[0].ID})
	name := field.Find(w.Content(), "profile.name").(fyne.Focusable)
	w.Canvas().Focus(name)
	at := w.Canvas().Focused()
	press(w, fyne.KeyF1)
	if !p.help.panel.Visible() || p.help.panel.Page() != desk.HelpProfile {
		t.Fatalf("F1 shows %q", p.help.panel.Page())
	}
	if w.Canvas().Focused() != fyne.Focusable(p.help.panel) {
		t.Errorf("the keyboard is on %T", w.Canvas().Focused())
	}
	press(w, fyne.KeyPageDown)
	if p.help.panel.Parts()[1].(*look.Scroll).Offset() == 0 {
		t.Error("Page Down does not scroll the page")
	}
	press(w, fyne.KeyEscape)
	if p.help.panel.Visible() || w.Canvas().Focused() != at {
		t.Errorf("after Escape: open %v, the keyboard on %T", p.help.panel.Visible(), w.Canvas().Focused())
	}
	press(w, fyne.KeyF1)
	press(w, fyne.KeyF1)
	if p.help.panel.Visible() {
		t.Error("F1 does not close its page")
	}
}

// An open page follows to another screen, and to another part of one.
func TestHelpFollows(t *testing.T) {
	s, _ := start(t, "", true)
	p := s.Program()
	list, err := p.desk.Store.Athletes(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	p.Help()
	for _, c := range []struct {
		place desk.Place
		want  desk.HelpPage
	}{
		{desk.Place{Screen: desk.Pantry}, desk.HelpPantry},
		{desk.Place{Screen: desk.TestDay, Part: desk.PartSheets}, desk.HelpTestDay},
		{desk.Place{Screen: desk.TestDay, New: true}, desk.HelpSquad},
		{desk.Place{Screen: desk.Tests, Athlete: list[0].ID, Part: "before"}, desk.HelpSheet},
		{desk.Place{Screen: desk.Tests, Athlete: list[0].ID, Part: "findings"}, desk.HelpFindings},
	} {
		p.Open(c.place)
		if got := p.help.panel.Page(); got != c.want {
			t.Errorf("at %+v the page is %q", c.place, got)
		}
	}
}

// In a wide window the page covers nothing; in others the screen keeps its place.
func TestHelpMakesRoom(t *testing.T) {
	s, w := start(t, "", true)
	p := s.Program()
	for width, covers := range map[float32]bool{1180: true, 1366: true, 1600: false} {
		w.Resize(fyne.NewSize(width, 760))
		p.Help()
		right := p.frame.root.Position().X + p.frame.root.Size().Width
		if got := right > p.help.panel.Position().X; got != covers {
			t.Errorf("%g px: the screen ends at %g and the page begins at %g", width, right, p.help.panel.Position().X)
		}
		if p.frame.root.Size().Width < 1180 {
			t.Errorf("%g px: %g px are left for the screen", width, p.frame.root.Size().Width)
		}
		p.Help()
		if p.frame.root.Size().Width != width {
			t.Errorf("%g px: the screen is %g px wide once help is closed", width, p.frame.root.Size().Width)
		}
	}
}

// A dialog has its own page over it, and is there again afterwards.
func TestHelpInADialog(t *testing.T) {
	s, w := start(t, "", true)
	p := s.Program()
	for _, c := range []struct{ page, want string }{{string(desk.HelpAgreement), "Agreeing a plan"}, {"", "Athletes"}} {
		closed := false
		d := p.desk.Host.Ask(w.Canvas(), field.Question{
			Name: "ask", Title: "A question", Content: field.NewLine(p.desk.Host, "ask.line", 40), Help: c.page, OnClosed: func() { closed = true },
		})
		at := w.Canvas().Focused()
		press(w, fyne.KeyF1)
		top := w.Canvas().Overlays().Top()
		if top == fyne.CanvasObject(d) || !strings.Contains(strings.Join(apptest.Texts(top), "\n"), c.want) {
			t.Fatalf("F1 shows %q", apptest.Texts(top))
		}
		press(w, fyne.KeyEscape)
		if w.Canvas().Overlays().Top() != fyne.CanvasObject(d) || closed {
			t.Fatal("Escape does not close help alone")
		}
		if w.Canvas().Focused() != at || at == nil {
			t.Errorf("the keyboard is on %T", w.Canvas().Focused())
		}
		press(w, fyne.KeyEscape)
		if !closed {
			t.Fatal("the dialog has lost the keys")
		}
	}
}

// Before there is a practice, F1 tells how to begin.
func TestHelpOfTheWelcome(t *testing.T) {
	_, w := start(t, t.TempDir(), false)
	press(w, fyne.KeyF1)
	if !strings.Contains(strings.Join(apptest.VisibleTexts(w.Content()), "\n"), "Starting with Ebbwell") {
		t.Error("F1 shows nothing on the welcome")
	}
	press(w, fyne.KeyEscape)
	if strings.Contains(strings.Join(apptest.VisibleTexts(w.Content()), "\n"), "Starting with Ebbwell") {
		t.Error("Escape does not close it")
	}
}

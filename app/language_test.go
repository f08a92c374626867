package app

import (
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"golang.org/x/text/language"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/keep/clock"
	"ebbwell/internal/words"
)

// startSpeaking starts a shell in the system's language with languages to choose from,
// whether they are complete yet or not.
func startSpeaking(t *testing.T, dir string, system language.Tag, offered ...language.Tag) (*Shell, fyne.Window) {
	t.Helper()
	texts, err := words.New(system)
	if err != nil {
		t.Fatal(err)
	}
	w := test.NewTempWindow(t, nil)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(1180, 760))
	s := NewShell(test.NewTempApp(t), w, texts, Options{
		Dir: dir, Demo: dir == "", Tour: true, Now: apptest.Now, Beside: desk.Inline{}, After: clock.New(apptest.Now()).After,
		OnWindow: func(do func()) { do() }, Languages: offered,
	})
	s.Start()
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	})
	return s, w
}

// point and comma find a number as English and as the others write it.
func point() *regexp.Regexp { return regexp.MustCompile(`[0-9]\.[0-9]+\x{a0}L`) }
func comma() *regexp.Regexp { return regexp.MustCompile(`[0-9],[0-9]+\x{a0}L`) }

// The language of the window is chosen in Practice: the whole window follows at once,
// where it is, and the choice can be undone and is there at the next start.
func TestLanguageOfTheWindow(t *testing.T) {
	dir := t.TempDir()
	s, w := startSpeaking(t, dir, language.English, language.English, language.German)
	begin(t, w)
	s.Program().Open(desk.Place{Screen: desk.TestDay})
	s.Program().Open(desk.Place{Screen: desk.Practice})
	choose := func(key string) {
		t.Helper()
		c, ok := field.Find(w.Content(), "practice.window").(*field.Choice)
		if !ok {
			t.Fatal("the language of the window cannot be chosen")
		}
		w.Canvas().Focus(c)
		c.Choose(key)
		c.OnChosen(key)
	}
	before := s.Program()
	choose("de")
	p := s.Program()
	if p == before || p.Desk().Words.Language() != language.German || p.Desk().Host.Words.Language() != language.German || s.words.Language() != language.German {
		t.Fatalf("the window speaks %s", p.Desk().Words.Language())
	}
	if p.Place().Screen != desk.Practice || p.focused() != "practice.window" {
		t.Errorf("after the change the window is at %+v on %q", p.Place(), p.focused())
	}
	if c := field.Find(w.Content(), "practice.window").(*field.Choice); c.Chosen() != "de" {
		t.Errorf("the choice shows %q", c.Chosen())
	}
	apptest.Click(t, w, "practice.part.records") // what is pressed in the new window answers
	if p.Place().Screen != desk.Practice || !field.Find(w.Content(), "practice.part").(*field.Tabs).Visible() || field.Find(w.Content(), "practice.part").(*field.Tabs).Chosen() != "records" {
		t.Error("the new window does not answer")
	}
	if p.Back(); p.Place().Screen != desk.TestDay {
		t.Errorf("back leads to %+v", p.Place())
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	again, w := startSpeaking(t, dir, language.English, language.English, language.German)
	if got := again.Program().Desk().Words.Language(); got != language.German {
		t.Errorf("the next start speaks %s", got)
	}
	again.Program().Open(desk.Place{Screen: desk.Practice})
	c := field.Find(w.Content(), "practice.window").(*field.Choice)
	c.OnChosen("en")
	if got := again.Program().Desk().Words.Language(); got != language.English {
		t.Errorf("back in English it speaks %s", got)
	}
	if err := again.Close(); err != nil {
		t.Fatal(err)
	}
}

// Figures, in all the window, are those of the language, and what stands in a field can
// be read again.
func TestFiguresOfTheWindow(t *testing.T) {
	for _, c := range []struct {
		system        language.Tag
		wanted, other *regexp.Regexp
	}{{language.English, point(), comma()}, {language.German, comma(), point()}} {
		s, w := startSpeaking(t, "", c.system, language.English, language.German)
		p := s.Program()
		ravka := apptest.AthleteNamed(t, p.Desk(), "Ravka").ID
		for _, place := range []desk.Place{{Screen: desk.Overview, Athlete: ravka}, {Screen: desk.Plan, Athlete: ravka}, {Screen: desk.Tests, Athlete: ravka, Part: "findings"}} {
			p.Open(place)
			text := strings.Join(apptest.Texts(w.Content()), "\n")
			if !c.wanted.MatchString(text) || c.other.MatchString(text) {
				t.Errorf("%s, %s: %q and %q", c.system, place.Screen, c.wanted.FindString(text), c.other.FindString(text))
			}
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// A language that is not offered, or not known, is not taken from the records.
func TestLanguageNotOffered(t *testing.T) {
	dir := t.TempDir()
	s, w := startSpeaking(t, dir, language.English, language.English, language.French)
	begin(t, w)
	s.Program().Open(desk.Place{Screen: desk.Practice})
	field.Find(w.Content(), "practice.window").(*field.Choice).OnChosen("fr")
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	again, w := startSpeaking(t, dir, language.English, language.English)
	if got := again.Program().Desk().Words.Language(); got != language.English {
		t.Errorf("it speaks %s", got)
	}
	again.Program().Open(desk.Place{Screen: desk.Practice})
	if apptest.Has(w, "practice.window") && field.Find(w.Content(), "practice.window").Visible() {
		t.Error("there is one language and it can be chosen")
	}
}

// Before there is a practice the window speaks the system's language, and a practice
// that chose none goes on with it.
func TestWelcomeInTheSystemsLanguage(t *testing.T) {
	s, w := startSpeaking(t, t.TempDir(), language.Spanish, words.Written()...)
	if s.words.Language() != language.Spanish || !apptest.Has(w, "welcome.begin") {
		t.Fatalf("the welcome speaks %s", s.words.Language())
	}
	begin(t, w)
	if d := s.Program().Desk(); d.Words.Language() != language.Spanish || d.Practice().Settings.Language != "" {
		t.Errorf("it goes on in %s, and keeps %q", d.Words.Language(), d.Practice().Settings.Language)
	}
}

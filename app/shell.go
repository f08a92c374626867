package app

import (
	"context"
	"errors"
	"fmt"
	"os"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"golang.org/x/text/language"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/keep"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/sound"
	"ebbwell/app/screen/welcome"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// Options say how a window starts.
type Options struct {
	// Dir is the data folder.
	Dir string
	// Demo opens the invented practice in a temporary folder.
	Demo bool
	// Now is the clock; nil is the machine's.
	Now func() time.Time
	// Beside runs slow work; nil runs it on goroutines.
	Beside desk.Runner
	// After is how saving waits; nil is the machine's clock.
	After keep.After
	// Closing is told just before the window closes for good; may be nil.
	Closing func()
	// Tour offers the tour on the invented practice.
	Tour bool
	// Languages are those that can be chosen; nil is those that are complete.
	Languages []language.Tag
	// Player plays the tone of reminders; nil plays none.
	Player sound.Player
	// OpenGL says that the toolkit's OpenGL painter draws the window.
	OpenGL bool
	// OnWindow runs a function on the window's thread, from any other; nil is
	// the toolkit's own.
	OnWindow func(func())
}

// Shell is one window: it opens the data folder and shows what can be shown.
type Shell struct {
	app    fyne.App
	window fyne.Window
	words  *words.Words
	// system are the texts in the system's language, for a practice that chose none.
	system  *words.Words
	options Options
	program *Program
	// greeted is the open folder behind the welcome, until there is a practice.
	greeted *store.Store
	// opening is set while the data folder is being opened.
	opening *opening
	// bell rings at reminders until the window closes.
	bell *sound.Bell
	// temporary is the folder of the invented practice, removed at the end.
	temporary string
}

// NewShell makes the shell of a window that begins with the texts of the system's
// language; a practice may have chosen another.
func NewShell(a fyne.App, w fyne.Window, texts *words.Words, o Options) *Shell {
	if o.Now == nil {
		o.Now = time.Now
	}
	if o.Beside == nil {
		o.Beside = desk.Aside{}
	}
	if o.After == nil {
		o.After = keep.MachineClock
	}
	if o.OnWindow == nil {
		o.OnWindow = fyne.Do
	}
	if o.Languages == nil {
		o.Languages = words.Languages()
	}
	return &Shell{app: a, window: w, words: texts, system: texts, options: o, bell: sound.NewBell(o.Player, a.Preferences(), o.Beside.Run)}
}

// Program returns what runs in the window; nil before a folder is open.
func (s *Shell) Program() *Program { return s.program }

// Start opens the data folder beside the window and shows the first screen, or
// what is wrong.
func (s *Shell) Start() {
	s.setTheme(record.Settings{})
	s.window.SetCloseIntercept(s.closeAsked)
	if s.options.Demo {
		s.openDemo()
		return
	}
	s.open(s.options.Dir, nil)
}

// begin shows the roster of an open folder, or the welcome when it has no
// practice yet.
func (s *Shell) begin(opened *store.Store) {
	practice, err := opened.Practice(context.Background())
	switch {
	case store.CodeOf(err) == store.CodeNotFound:
		s.welcome(opened)
	case err != nil:
		s.refuse(err)
	default:
		s.run(opened, practice)
	}
}

// run shows the program on an open folder with a practice.
func (s *Shell) run(opened *store.Store, practice record.Practice) {
	s.greeted = nil
	opened.SetBy(practice.Practitioner)
	s.setTheme(practice.Settings)
	if err := s.build(opened, practice.Settings); err != nil {
		s.refuse(err)
		return
	}
	s.show()
	s.program.Open(desk.Place{Screen: desk.Athletes})
	s.sayUpdated()
	s.backUp()
	if s.options.Tour {
		s.program.guide.offer()
	}
	if err := opened.Trouble(); err != nil {
		s.program.desk.Trouble(err)
	}
}

// welcome offers the invented practice or one's own.
func (s *Shell) welcome(opened *store.Store) {
	s.greeted = opened
	host := field.NewHost(s.words)
	view := welcome.New(host, welcome.Actions{
		Try: func() {
			s.greeted = nil
			if err := opened.Close(); err != nil {
				s.refuse(err)
				return
			}
			s.openDemo()
		},
		Begin: func(p record.Practice) error {
			opened.SetBy(p.Practitioner)
			kept, err := opened.SavePractice(context.Background(), p, store.Edit{})
			if err != nil {
				return fmt.Errorf("begin a practice: %w", err)
			}
			s.run(opened, kept)
			return nil
		},
		Sentence: func(err error) string { return desk.Sentence(s.words, err) },
	})
	h := newHelper(host, s.window.Canvas(), helpKeys(s.words, nil), view)
	host.OnKey = func(e *fyne.KeyEvent) {
		switch e.Name {
		case fyne.KeyF1:
			h.toggle(desk.HelpWelcome, nil)
		case fyne.KeyEscape:
			h.close()
		}
	}
	s.window.SetContent(h.box)
	s.window.Canvas().SetOnTypedKey(host.Key)
}

// refuse says why the folder cannot be opened, and what can be restored.
func (s *Shell) refuse(err error) { s.refuseAgain(err, nil) }

// refuseAgain is refuse after a copy could not be restored; failed is why.
func (s *Shell) refuseAgain(err, failed error) {
	host := field.NewHost(s.words)
	s.window.SetContent(welcome.NewRefusal(host, err, welcome.Rescue{
		Sentence: s.whyNot,
		Dir:      s.options.Dir,
		Failed:   failed,
		Again:    s.Start,
		AsItIs:   s.openAsItIs,
		Restore:  func(snap store.Snapshot) { s.restore(snap, err) },
		Quit:     s.closeWindow,
	}))
}

// giveUp closes an open folder whose records turn out to be damaged, and offers
// the copies there are.
func (s *Shell) giveUp(err error) {
	s.program.keeper.Drop()
	closed := s.program.desk.Store.Close()
	s.program = nil
	s.refuse(errors.Join(err, closed))
}

// closeAsked saves before the window closes; when that fails, it asks.
func (s *Shell) closeAsked() {
	if err := s.Close(); err != nil && s.program != nil {
		w := s.words
		s.program.desk.Host.Confirm(s.window.Canvas(), "frame.close", w.Say("frame.close.title"),
			w.Say("frame.close.sentence", desk.Sentence(w, err)), w.Say("frame.close.anyway"), s.closeWindow)
		return
	}
	s.closeWindow()
}

// closeWindow closes the window for good.
func (s *Shell) closeWindow() {
	if s.options.Closing != nil {
		s.options.Closing()
	}
	s.bell.Close()
	s.window.Close()
}

// Close stops an opening that goes on, saves what is open and closes the data
// folder.
func (s *Shell) Close() error {
	if err := s.stopOpening(); err != nil {
		return err
	}
	if s.greeted != nil {
		if err := s.greeted.Close(); err != nil {
			return err
		}
		s.greeted = nil
	}
	if s.program != nil {
		if err := s.program.Close(context.Background()); err != nil {
			return err
		}
		s.program = nil
	}
	if s.temporary != "" {
		if err := os.RemoveAll(s.temporary); err != nil {
			return fmt.Errorf("remove the invented practice: %w", err)
		}
		s.temporary = ""
	}
	s.bell.Close()
	return nil
}

// settingsChanged draws the window in the settings as they are now.
func (s *Shell) settingsChanged() {
	practice := s.program.desk.Practice()
	s.setTheme(practice.Settings)
	s.program.desk.Store.SetBy(practice.Practitioner)
	if s.language(practice.Settings) == s.words.Language() {
		s.program.Reload()
		return
	}
	if err := s.translate(practice.Settings); err != nil {
		s.program.desk.Trouble(err)
	}
}

// setTheme draws the window light or dark and in the text size of the settings.
func (s *Shell) setTheme(settings record.Settings) {
	dark := settings.Theme == "dark" ||
		(settings.Theme == "system" && s.app.Settings().ThemeVariant() == theme.VariantDark)
	size := settings.TextSize
	if size == 0 {
		size = 100
	}
	t := look.NewTheme(dark, size)
	if s.options.OpenGL {
		t = t.OpenGL()
	}
	s.app.Settings().SetTheme(t)
}

package app

import (
	"context"
	"slices"

	"golang.org/x/text/language"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// language is the language of the window: the one chosen where it is offered, else
// the system's.
func (s *Shell) language(settings record.Settings) language.Tag {
	if tag, err := language.Parse(settings.Language); err == nil && slices.Contains(s.options.Languages, tag) {
		return tag
	}
	return s.system.Language()
}

// textsIn are the texts of a language; see [Shell.language].
func (s *Shell) textsIn(tag language.Tag) (*words.Words, error) {
	if tag == s.system.Language() {
		return s.system, nil
	}
	return words.New(tag)
}

// build makes the program on an open folder, in the language of the settings; it is
// not shown yet. When it fails the window has what it had.
func (s *Shell) build(opened *store.Store, settings record.Settings) error {
	texts, err := s.textsIn(s.language(settings))
	if err != nil {
		return err
	}
	d, err := desk.New(opened, texts, s.options.Now)
	if err != nil {
		return err
	}
	s.words = texts
	d.Beside, d.SettingsChanged, d.Languages, d.Bell = s.options.Beside, s.settingsChanged, s.options.Languages, s.bell
	s.program = newProgram(s, d)
	return nil
}

// show puts the program into the window.
func (s *Shell) show() {
	s.window.SetContent(s.program.help.box)
	s.program.bindShortcuts(s.window.Canvas())
}

// translate builds the window anew in the language of the settings, at the place and
// on the control it is on. What is typed is saved first.
func (s *Shell) translate(settings record.Settings) error {
	before := s.program
	if !before.leave() {
		return nil // it says why
	}
	if err := before.keeper.Close(context.Background()); err != nil {
		return err
	}
	at, place := before.focused(), before.place
	if err := s.build(before.desk.Store, settings); err != nil {
		return err
	}
	before.guide.stop()
	before.frame.stopStrip()
	p := s.program
	p.back, p.desk.Round = before.back, before.desk.Round
	p.guide.goOnFrom(before.guide)
	s.show()
	p.Open(place)
	p.focus(at)
	return nil
}

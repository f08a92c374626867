package app

import (
	"context"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"ebbwell/app/kit/desk"
)

// shortcut is a key of the window: what it does, and the key of its words in the
// list of shortcuts.
type shortcut struct {
	key   desktop.CustomShortcut
	words string
	do    func()
}

// keyList is the window's own keys, in the order they are listed.
func (p *Program) keyList() []shortcut {
	const ctrl, shift, alt = fyne.KeyModifierShortcutDefault, fyne.KeyModifierShift, fyne.KeyModifierAlt
	at := func(k fyne.KeyName, m fyne.KeyModifier, words string, do func()) shortcut {
		return shortcut{desktop.CustomShortcut{KeyName: k, Modifier: m}, words, do}
	}
	place := func(s desk.Screen) func() { return func() { p.openPlace(s) } }
	tab := func(s desk.Screen) func() {
		return func() {
			if p.view != nil && p.view.Head().Athlete != "" {
				p.openTab(s)
			}
		}
	}
	return []shortcut{
		at(fyne.KeyZ, ctrl, "keys.undo", p.undo), at(fyne.KeyZ, ctrl|shift, "keys.redo", p.redo), at(fyne.KeyY, ctrl, "keys.redo", p.redo),
		at(fyne.KeyS, ctrl, "keys.save", p.saveNow), at(fyne.KeyP, ctrl, "keys.print", p.print),
		at(fyne.KeyPageDown, ctrl, "keys.part.next", func() { p.nextPart(1) }),
		at(fyne.KeyPageUp, ctrl, "keys.part.before", func() { p.nextPart(-1) }),
		at(fyne.Key1, ctrl, "frame.athletes", place(desk.Athletes)), at(fyne.Key2, ctrl, "frame.test-day", place(desk.TestDay)),
		at(fyne.Key3, ctrl, "frame.trips", place(desk.Trips)), at(fyne.Key4, ctrl, "frame.pantry", place(desk.Pantry)),
		at(fyne.Key5, ctrl, "frame.practice", place(desk.Practice)),
		at(fyne.Key1, alt, "frame.overview", tab(desk.Overview)), at(fyne.Key2, alt, "frame.tests", tab(desk.Tests)),
		at(fyne.Key3, alt, "frame.plan", tab(desk.Plan)), at(fyne.Key4, alt, "frame.handout", tab(desk.Handout)),
		at(fyne.KeyLeft, alt, "keys.back", p.Back),
		at(fyne.KeyPageDown, alt, "keys.athlete.next", func() { p.nextOf(1) }),
		at(fyne.KeyPageUp, alt, "keys.athlete.before", func() { p.nextOf(-1) }),
	}
}

// shortcuts are the window's own keys and what they do.
func (p *Program) shortcuts() map[desktop.CustomShortcut]func() {
	all := map[desktop.CustomShortcut]func(){}
	for _, s := range p.keyList() {
		all[s.key] = s.do
	}
	return all
}

// nextPart shows the next part of what is filled in, or the one before.
func (p *Program) nextPart(step int) {
	if v, ok := p.view.(interface{ NextPart(step int) }); ok {
		v.NextPart(step)
	}
}

// shortcut does what a shortcut stands for; fields pass on what they have no
// use for.
func (p *Program) shortcut(s fyne.Shortcut) {
	var key desktop.CustomShortcut
	switch s := s.(type) {
	case *desktop.CustomShortcut:
		key = *s
	case *fyne.ShortcutUndo:
		p.undo()
		return
	case *fyne.ShortcutRedo:
		p.redo()
		return
	default:
		return
	}
	if do, ok := p.shortcuts()[key]; ok {
		do()
	}
}

// bindShortcuts gives the window's canvas the same keys, for when no field has
// the keyboard.
func (p *Program) bindShortcuts(c fyne.Canvas) {
	for key := range p.shortcuts() {
		c.AddShortcut(&key, p.shortcut)
	}
	c.SetOnTypedKey(p.desk.Host.Key)
	c.SetOnTypedRune(p.desk.Host.Rune)
	c.AddShortcut(&fyne.ShortcutUndo{}, p.shortcut)
	c.AddShortcut(&fyne.ShortcutRedo{}, p.shortcut)
}

// key takes the keys no field has a use for.
func (p *Program) key(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape && p.escape() {
		return
	}
	if e.Name == fyne.KeyF1 {
		p.Help()
		return
	}
	if k, ok := p.view.(interface{ Key(*fyne.KeyEvent) }); ok {
		k.Key(e)
	}
}

// escape closes what is open: a strip, something of the screen, the tour last.
func (p *Program) escape() (closed bool) {
	if p.frame.closeStrip() {
		return true
	}
	if p.help.close() {
		return true
	}
	if v, ok := p.view.(interface{ Escape() bool }); ok && v.Escape() {
		return true
	}
	return p.guide.close()
}

// letter takes the letters no field has a use for.
func (p *Program) letter(r rune) {
	if v, ok := p.view.(interface{ Rune(rune) }); ok {
		v.Rune(r)
	}
}

// nextOf opens what is shown for the next athlete of the group that was come from,
// or for the one before.
func (p *Program) nextOf(step int) {
	if p.view == nil {
		return
	}
	round, at := p.desk.Round, slices.Index(p.desk.Round, p.view.Head().Athlete)
	if at < 0 {
		return
	}
	next := round[(at+step+len(round))%len(round)]
	p.Open(desk.Place{Screen: p.place.Screen, Athlete: next})
}

// saveNow writes what is pending: it would be written by itself, but hands
// know the key.
func (p *Program) saveNow() {
	if err := p.keeper.Flush(context.Background()); err != nil {
		p.desk.Trouble(err)
	}
}

// print asks the present screen to print.
func (p *Program) print() {
	if v, ok := p.view.(desk.Printer); ok {
		v.Print()
	}
}

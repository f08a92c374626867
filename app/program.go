// Package app is the window: the frame, the way from screen to screen, the
// life of the program. Each screen is a package of its own below this one;
// what they share is in desk, look, field and chart.
//
// A [Shell] is one window. It opens the data folder, says what is wrong with
// one that cannot be opened, welcomes a person who has no practice yet, and
// then runs a [Program] on the folder's records.
package app

import (
	"context"
	"fmt"
	"slices"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/keep"
	"ebbwell/app/kit/look"
	"ebbwell/internal/store"
)

// Program is the window on an open data folder.
type Program struct {
	shell  *Shell
	desk   *desk.Desk
	keeper *keep.Keeper
	frame  *frame
	view   desk.View
	place  desk.Place
	back   []desk.Place
	guide  *guide
	help   *helper
	known  knownPlan
	// asksAgain is true while the words on saving are to be looked at again.
	asksAgain bool
}

// newProgram builds the window's content for an open store.
func newProgram(s *Shell, d *desk.Desk) *Program {
	p := &Program{shell: s, desk: d}
	p.keeper = keep.NewAfter(d.Now, s.options.After, func(keep.State) { s.options.OnWindow(p.showSaved) })
	d.Keep = p.keeper
	d.Go = p.Open
	d.HeadChanged = func() {
		p.showHead()
		p.guide.follow()
		p.help.follow(p.helpPage())
	}
	d.Host.OnShortcut = p.shortcut
	d.Host.OnKey = p.key
	d.Host.OnRune = p.letter
	d.Later = func(wait time.Duration, do func()) (stop func()) {
		return s.options.After(wait, func() { s.options.OnWindow(do) })
	}
	d.Host.Today = d.Now
	p.frame = newFrame(d, p.openPlace, p.openTab, p.undo, p.redo)
	p.frame.keys.OnPressed = p.Help
	p.guide = newGuide(p)
	p.frame.build(p.guide.panel.Box(), p.guide.ring.box)
	p.help = newHelper(d.Host, s.window.Canvas(), helpKeys(d.Words, p.keyList()), p.frame.root)
	d.Host.OnHelp = p.helpInDialog
	d.HandedOut = p.guide.handedOut
	d.Say, d.Unsay = p.frame.say, p.frame.unsay
	return p
}

// Place returns where the window is.
func (p *Program) Place() desk.Place { return p.place }

// Desk returns what the screens have at hand.
func (p *Program) Desk() *desk.Desk { return p.desk }

// Open shows a place. What was typed is saved first; when that fails, the
// window stays where it is and says why.
func (p *Program) Open(place desk.Place) {
	p.desk.Withdraw()
	if !p.leave() {
		return
	}
	view, err := p.make(place)
	if err != nil {
		p.stays()
		p.cannotOpen(err)
		return
	}
	if p.view != nil && p.place != place {
		p.back = append(p.back, p.place)
	}
	p.clearUp(place)
	p.view, p.place = view, placeOf(view, place)
	p.known.forget(p.desk.Store.Written(), p.desk.Today())
	p.frame.rail.Choose(string(railOf(place.Screen)))
	p.showHead()
	p.frame.showBody(view.Body())
	p.dropFocus()
	if s, ok := view.(desk.Shower); ok {
		s.Shown()
	}
	p.guide.follow()
	p.help.follow(p.helpPage())
}

// dropFocus takes the keyboard from what is no longer in the window, so that no key
// reaches a button of the screen before.
func (p *Program) dropFocus() {
	c := p.shell.window.Canvas()
	at := c.Focused()
	if at == nil {
		return
	}
	if o, ok := at.(fyne.CanvasObject); ok {
		if n, ok := at.(interface{ Name() string }); ok && field.Find(p.frame.root, n.Name()) == o {
			return
		}
	}
	c.Unfocus()
}

// placeOf is where a view says it is: a new record has a name by then.
func placeOf(v desk.View, asked desk.Place) desk.Place {
	if placed, ok := v.(interface{ Place() desk.Place }); ok {
		return placed.Place()
	}
	return asked
}

// clearUp lets the present view take away what it has made for nothing, once
// another is to take its place.
func (p *Program) clearUp(next desk.Place) {
	if c, ok := p.view.(desk.Clearer); ok {
		c.ClearUp(next)
	}
}

// cannotOpen says why a place cannot be shown. Where the records are damaged, a
// copy may be restored; where nothing is shown yet, that is all there is to do.
func (p *Program) cannotOpen(err error) {
	if store.CodeOf(err) != store.CodeDamaged {
		p.desk.Trouble(err)
		return
	}
	if p.view == nil {
		p.shell.giveUp(err)
		return
	}
	w := p.desk.Words
	p.desk.Say(desk.Sentence(w, err), w.Say("frame.damaged.copies"), func() {
		if p.leave() {
			p.shell.giveUp(err)
		}
	})
}

// hopeless are the troubles that no second try cures.
func hopeless(err error) bool {
	return slices.Contains([]store.Code{store.CodeDeleted, store.CodeNotFound, store.CodeClosed, store.CodeConflict, store.CodeInvalid}, store.CodeOf(err))
}

// leave hands over and writes what the present screen has; false when that
// failed.
func (p *Program) leave() bool {
	if p.view != nil {
		p.view.Leave()
		p.place = placeOf(p.view, p.place)
	}
	err := p.keeper.Flush(context.Background())
	if err == nil {
		return true
	}
	p.stays()
	w := p.desk.Words
	sentence := w.Say("frame.notkept", desk.Sentence(w, err))
	if hopeless(err) {
		p.desk.Say(sentence, w.Say("frame.notkept.drop"), p.keeper.Drop)
		return false
	}
	p.desk.Say(sentence, "", nil)
	return false
}

// stays tells the present screen that it was not left after all.
func (p *Program) stays() {
	if s, ok := p.view.(desk.Stayer); ok {
		s.Stayed()
	}
}

// Back shows the place before this one.
func (p *Program) Back() {
	if len(p.back) == 0 {
		return
	}
	last := p.back[len(p.back)-1]
	p.back = p.back[:len(p.back)-1]
	p.Open(last)
	if len(p.back) > 0 {
		p.back = p.back[:len(p.back)-1]
	}
}

// Reload draws the present place anew, after a change of theme or text size; for
// another language see [Shell.translate]. The view knows best where it is: what was new when it was opened
// may have a record by now. The keyboard stays on the control it is on. A list that
// is open belongs to the view that goes: what is picked in it would be written over
// what the new view shows.
func (p *Program) Reload() {
	at := p.focused()
	for lists := p.shell.window.Canvas().Overlays(); lists.Top() != nil; {
		lists.Remove(lists.Top())
	}
	p.Open(placeOf(p.view, p.place))
	p.focus(at)
}

// focused names the control that has the keyboard; empty for none.
func (p *Program) focused() string {
	if n, ok := p.shell.window.Canvas().Focused().(interface{ Name() string }); ok {
		return n.Name()
	}
	return ""
}

// focus gives the control with a name the keyboard, where there is one.
func (p *Program) focus(name string) {
	if o, ok := field.Find(p.frame.root, name).(fyne.Focusable); ok && name != "" {
		p.shell.window.Canvas().Focus(o)
	}
}

// openPlace is a place on the rail.
func (p *Program) openPlace(s desk.Screen) { p.Open(desk.Place{Screen: s}) }

// openTab is a tab of the athlete shown.
func (p *Program) openTab(s desk.Screen) {
	p.Open(desk.Place{Screen: s, Athlete: p.view.Head().Athlete})
}

// showHead draws the head of the present screen.
func (p *Program) showHead() {
	if p.view == nil {
		return
	}
	u, undoes := p.view.(desk.Undoer)
	if undoes {
		look.EnableIf(p.frame.undo, u.CanUndo())
		look.EnableIf(p.frame.redo, u.CanRedo())
	}
	head := p.view.Head()
	p.showAlerts(head.Athlete)
	p.frame.showHead(head, undoes)
}

// undo takes back the last step on the present screen.
func (p *Program) undo() {
	if u, ok := p.view.(desk.Undoer); ok && u.Undo() {
		p.showHead()
	}
}

// redo does again what was undone.
func (p *Program) redo() {
	if u, ok := p.view.(desk.Undoer); ok && u.Redo() {
		p.showHead()
	}
}

// savingSaid is how long something goes unsaved before the window says that it is being
// saved; until then it says when something was saved last. What is written at once would
// only make the words flicker, and each change of them is a picture of the whole window.
const savingSaid = time.Second

// showSaved says at the foot of the rail how saving stands.
func (p *Program) showSaved() {
	w, s := p.desk.Words, p.keeper.State()
	waited := p.desk.Now().Sub(s.Since)
	switch {
	case s.Err != nil:
		p.frame.saved.SetText(w.Say("frame.saving.failed", desk.Sentence(w, s.Err)))
	case s.Pending > 0 && waited < savingSaid:
		if !p.asksAgain {
			p.asksAgain = true
			p.desk.Later(savingSaid-waited, func() { p.asksAgain = false; p.showSaved() })
		}
	case s.Pending > 0:
		p.frame.saved.SetText(w.Say("frame.saving.now"))
	case !s.At.IsZero():
		p.frame.saved.SetText(w.Say("frame.saving.done", w.Clock(s.At)))
	}
}

// Close saves everything and closes the data folder. When something cannot be
// saved the folder stays open and the error says why.
func (p *Program) Close(ctx context.Context) error {
	if p.view != nil {
		p.view.Leave()
	}
	if err := p.keeper.Close(ctx); err != nil {
		p.stays()
		return fmt.Errorf("save before closing: %w", err)
	}
	p.clearUp(desk.Place{})
	if err := p.desk.Store.Moved(ctx); err != nil {
		return fmt.Errorf("look after the records before closing: %w", err)
	}
	return p.desk.Store.Close()
}

// railOf is the place on the rail that a screen belongs to.
func railOf(s desk.Screen) desk.Screen {
	switch s {
	case desk.TestDay, desk.Pantry, desk.Practice:
		return s
	case desk.Trips, desk.Trip:
		return desk.Trips
	}
	return desk.Athletes
}

package field

import (
	"runtime"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// FocusGained selects the text when the keyboard came by key.
func (t *entry) FocusGained() {
	t.kept = t.editor.string()
	if !t.mouse.down {
		t.editor.selectAll()
	}
	t.control.FocusGained()
}

// FocusLost ends the visit.
func (t *entry) FocusLost() {
	t.shift = false
	t.first = 0
	t.editor.move(t.editor.caret, false)
	t.control.FocusLost()
	if t.hooks.left != nil {
		t.hooks.left()
	}
}

// TypedRune puts a letter in.
func (t *entry) TypedRune(r rune) {
	if t.Disabled() || t.hooks.rune != nil && t.hooks.rune(r) {
		return
	}
	if t.editor.insert(string(r)) {
		t.changed()
	}
}

// KeyDown notes that shift is held.
func (t *entry) KeyDown(e *fyne.KeyEvent) { t.setShift(e, true) }

// KeyUp notes that it is not.
func (t *entry) KeyUp(e *fyne.KeyEvent) { t.setShift(e, false) }

func (t *entry) setShift(e *fyne.KeyEvent, on bool) {
	if e.Name == desktop.KeyShiftLeft || e.Name == desktop.KeyShiftRight {
		t.shift = on
	}
}

// TypedKey moves, erases, reverts, and passes on what it does not know.
func (t *entry) TypedKey(e *fyne.KeyEvent) {
	if t.Disabled() || t.hooks.key != nil && t.hooks.key(e) {
		return
	}
	switch e.Name {
	case fyne.KeyBackspace:
		t.erase(t.editor.left(t.editor.caret))
	case fyne.KeyDelete:
		t.erase(t.editor.right(t.editor.caret))
	case fyne.KeyReturn, fyne.KeyEnter:
		t.enter(e)
	case fyne.KeyEscape:
		if !t.revert() {
			t.host.Key(e)
		}
	default:
		if !t.moveBy(e.Name) && !writes(e.Name) {
			t.host.Key(e)
		}
	}
}

// writes reports whether a key puts a sign in: it comes as a rune as well, and
// belongs to the text.
func writes(k fyne.KeyName) bool { return len(k) <= 1 || k == fyne.KeySpace }

// enter ends the visit without leaving; without anybody to tell, the key
// belongs to the dialog or the window.
func (t *entry) enter(e *fyne.KeyEvent) {
	t.kept = t.editor.string()
	if t.hooks.left != nil {
		t.hooks.left()
	}
	if t.hooks.enter == nil || !t.hooks.enter() {
		t.host.Key(e)
	}
}

func (t *entry) erase(to int) {
	if t.editor.erase(to) {
		t.changed()
	}
}

// moveBy moves the caret and reports whether the key was one that does.
func (t *entry) moveBy(key fyne.KeyName) bool {
	ed := &t.editor
	from, to := ed.selection()
	switch {
	case key == fyne.KeyLeft && from != to && !t.shift:
		ed.move(from, false)
	case key == fyne.KeyRight && from != to && !t.shift:
		ed.move(to, false)
	case key == fyne.KeyLeft:
		ed.move(ed.left(ed.caret), t.shift)
	case key == fyne.KeyRight:
		ed.move(ed.right(ed.caret), t.shift)
	case key == fyne.KeyHome:
		ed.move(0, t.shift)
	case key == fyne.KeyEnd:
		ed.move(len(ed.text), t.shift)
	default:
		return false
	}
	t.self.Refresh()
	return true
}

// TypedShortcut copies, cuts, pastes, selects, moves by words, and passes the
// rest on: undo belongs to the whole screen.
func (t *entry) TypedShortcut(s fyne.Shortcut) {
	switch s := s.(type) {
	case *fyne.ShortcutCopy:
		t.copyTo(s.Clipboard)
	case *fyne.ShortcutCut:
		if t.copyTo(s.Clipboard) && !t.Disabled() {
			t.erase(t.editor.caret)
		}
	case *fyne.ShortcutPaste:
		if !t.Disabled() && s.Clipboard != nil && t.editor.insert(s.Clipboard.Content()) {
			t.changed()
		}
	case *fyne.ShortcutSelectAll:
		t.SelectAll()
	case *desktop.CustomShortcut:
		if !t.wordKey(s) {
			t.host.shortcut(t.self, s)
		}
	default:
		t.host.shortcut(t.self, s)
	}
}

// copyTo puts the selection on a clipboard and reports whether there was one.
func (t *entry) copyTo(c fyne.Clipboard) bool {
	text := t.editor.selected()
	if t.setup.concealed {
		text = ""
	}
	if c == nil || text == "" {
		return false
	}
	c.SetContent(text)
	return true
}

// wordModifier is the key that makes arrows go by words.
func wordModifier() fyne.KeyModifier {
	if runtime.GOOS == "darwin" {
		return fyne.KeyModifierAlt
	}
	return fyne.KeyModifierControl
}

// wordKey moves or erases by words.
func (t *entry) wordKey(s *desktop.CustomShortcut) bool {
	if s.Modifier&^fyne.KeyModifierShift != wordModifier() {
		return false
	}
	keep, ed := s.Modifier&fyne.KeyModifierShift != 0, &t.editor
	switch s.KeyName {
	case fyne.KeyLeft:
		ed.move(ed.wordLeft(ed.caret), keep)
	case fyne.KeyRight:
		ed.move(ed.wordRight(ed.caret), keep)
	case fyne.KeyBackspace:
		t.erase(ed.wordLeft(ed.caret))
	case fyne.KeyDelete:
		t.erase(ed.wordRight(ed.caret))
	default:
		return false
	}
	t.self.Refresh()
	return true
}

// MouseDown puts the caret; twice selects the word, three times all.
func (t *entry) MouseDown(e *desktop.MouseEvent) {
	if e.Button != desktop.MouseButtonPrimary || t.Disabled() {
		return
	}
	t.mouse.down = true
	t.press()
	t.mouse.down, t.mouse.clicked = false, true
	t.click(e.Position, e.Modifier&fyne.KeyModifierShift != 0, time.Now())
}

// MouseUp changes nothing.
func (t *entry) MouseUp(*desktop.MouseEvent) {}

// click places the caret; clicks close in time and place count up.
func (t *entry) click(at fyne.Position, keep bool, now time.Time) {
	d := at.Subtract(t.mouse.at)
	near := d.X*d.X+d.Y*d.Y < 25 && now.Sub(t.mouse.last) < fyne.CurrentApp().Driver().DoubleTapDelay()
	if !near {
		t.mouse.clicks = 0
	}
	t.mouse.clicks++
	t.mouse.last, t.mouse.at = now, at
	i := t.placeAt(at.X)
	switch t.mouse.clicks {
	case 1:
		t.editor.move(i, keep)
	case 2:
		t.editor.selectWord(i)
	default:
		t.editor.selectAll()
	}
	t.self.Refresh()
}

// Dragged selects up to the pointer.
func (t *entry) Dragged(e *fyne.DragEvent) {
	if t.Disabled() {
		return
	}
	t.mouse.clicked = false
	t.editor.move(t.placeAt(e.Position.X), true)
	t.self.Refresh()
}

// DragEnd changes nothing.
func (t *entry) DragEnd() {}

// Tapped takes the keyboard where MouseDown did not come first.
func (t *entry) Tapped(e *fyne.PointEvent) {
	if t.mouse.clicked || t.Disabled() {
		t.mouse.clicked = false
		return
	}
	t.mouse.down = true
	t.press()
	t.mouse.down = false
	t.editor.move(t.placeAt(e.Position.X), false)
	t.self.Refresh()
}

// Cursor is the text cursor.
func (t *entry) Cursor() desktop.Cursor {
	if t.Disabled() {
		return desktop.DefaultCursor
	}
	return desktop.TextCursor
}

package field

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"ebbwell/app/kit/look"
	"ebbwell/internal/words"
)

// Host is what the fields of one window have in common.
type Host struct {
	// Words writes every text a field says by itself.
	Words *words.Words
	// Today returns the present day, for reading and stepping dates.
	Today func() time.Time
	// OnShortcut takes the shortcuts a field has no use for (undo, redo, save
	// …). When nil they go to the canvas the field stands on.
	OnShortcut func(fyne.Shortcut)
	// OnKey takes the keys a field has no use for (Escape, function keys …)
	// when no dialog is open.
	OnKey func(*fyne.KeyEvent)

	// OnRune takes the letters that are typed where no field has a use for them, when
	// no dialog is open.
	OnRune func(rune)

	// OnHelp is asked for help in a dialog, by the page the dialog names; empty for none.
	OnHelp func(page string)

	// dialogs are the key handlers of open dialogs, the topmost last.
	dialogs []func(*fyne.KeyEvent)
	// last is the field that had the keyboard last.
	last Field
}

// NewHost makes a host with the texts of a language and the clock of the
// machine.
func NewHost(w *words.Words) *Host { return &Host{Words: w, Today: time.Now} }

// Key passes on a key that a field, or a table, has no use for: to the topmost
// dialog, else to OnKey.
func (h *Host) Key(e *fyne.KeyEvent) {
	if isModifier(e.Name) {
		return
	}
	if n := len(h.dialogs); n > 0 {
		h.dialogs[n-1](e)
		return
	}
	if h.OnKey != nil {
		h.OnKey(e)
	}
}

// Rune passes on a letter that nothing on the screen has a use for.
func (h *Host) Rune(r rune) {
	if len(h.dialogs) == 0 && h.OnRune != nil {
		h.OnRune(r)
	}
}

// isModifier reports whether a key does nothing by itself.
func isModifier(k fyne.KeyName) bool {
	switch k {
	case desktop.KeyShiftLeft, desktop.KeyShiftRight, desktop.KeyControlLeft, desktop.KeyControlRight, desktop.KeyAltLeft,
		desktop.KeyAltRight, desktop.KeySuperLeft, desktop.KeySuperRight, desktop.KeyCapsLock:
		return true
	}
	return false
}

// shortcut passes on a shortcut that the field at has no use for.
func (h *Host) shortcut(at fyne.CanvasObject, s fyne.Shortcut) {
	if h.OnShortcut != nil {
		h.OnShortcut(s)
		return
	}
	if c, ok := fyne.CurrentApp().Driver().CanvasForObject(at).(fyne.Shortcutable); ok {
		c.TypedShortcut(s)
	}
}

// lettersNote says how many letters of a text no font here draws; empty where all are
// drawn.
func (h *Host) lettersNote(s look.Style, text string) string {
	n := len(s.Unshown(text))
	if n == 0 {
		return ""
	}
	return h.Words.Say("field.letters", n)
}

// Hold lets what lies over the window have the keys first; the function returned ends
// that.
func (h *Host) Hold(keys func(*fyne.KeyEvent)) (closed func()) {
	depth := len(h.dialogs)
	h.dialogs = append(h.dialogs, keys)
	return func() { h.dialogs = h.dialogs[:min(depth, len(h.dialogs))] }
}

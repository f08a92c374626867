package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// editing is what the menu of a text asks of the text.
type editing interface {
	fyne.Shortcutable
	Disabled() bool
	SelectedText() string
}

// TappedSecondary shows the menu of the text: cut, copy, paste, select all.
func (t *entry) TappedSecondary(e *fyne.PointEvent) {
	if !t.focused && !t.Disabled() {
		t.mouse.down = true
		t.press()
		t.mouse.down = false
	}
	showEditMenu(t.self, t, t.host, t.Text() != "", e.AbsolutePosition)
}

// TappedSecondary shows the menu of the text in our words.
func (e *notesEntry) TappedSecondary(at *fyne.PointEvent) {
	if !e.focused && !e.Disabled() {
		e.Focus()
	}
	showEditMenu(e, e, e.host, e.Text != "", at.AbsolutePosition)
}

// showEditMenu opens the menu of a text at a place of the window.
func showEditMenu(at fyne.CanvasObject, text editing, h *Host, filled bool, pos fyne.Position) {
	on := canvasOf(at)
	if on == nil {
		return
	}
	widget.ShowPopUpMenuAtPosition(editMenu(text, h, filled), on, pos)
}

// editMenu is the menu of a text; what would do nothing is greyed out.
func editMenu(text editing, h *Host, filled bool) *fyne.Menu {
	clipboard := fyne.CurrentApp().Clipboard()
	item := func(words string, works bool, s fyne.Shortcut) *fyne.MenuItem {
		i := fyne.NewMenuItem(words, func() { text.TypedShortcut(s) })
		i.Shortcut, i.Disabled = s, !works
		return i
	}
	say, writes, selected := h.Words, !text.Disabled(), text.SelectedText() != ""
	return fyne.NewMenu("",
		item(say.Say("field.menu.cut"), writes && selected, &fyne.ShortcutCut{Clipboard: clipboard}),
		item(say.Say("field.menu.copy"), selected, &fyne.ShortcutCopy{Clipboard: clipboard}),
		item(say.Say("field.menu.paste"), writes && clipboard.Content() != "", &fyne.ShortcutPaste{Clipboard: clipboard}),
		fyne.NewMenuItemSeparator(),
		item(say.Say("field.menu.all"), filled, &fyne.ShortcutSelectAll{}),
	)
}

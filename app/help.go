package app

import (
	"runtime"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/screen/help"
	"ebbwell/internal/words"
)

// helper shows the page of help of what a window shows: beside it, or over a dialog.
type helper struct {
	host *field.Host
	on   fyne.Canvas
	keys []help.Key
	// panel stands beside what the window shows; box holds both.
	panel *help.Panel
	box   *fyne.Container
	// before had the keyboard when the panel was opened.
	before fyne.Focusable
}

// newHelper makes the help of a window that shows main; keys are those of the window.
func newHelper(host *field.Host, on fyne.Canvas, keys []help.Key, main fyne.CanvasObject) *helper {
	h := &helper{host: host, on: on, keys: keys, panel: help.NewPanel(host, keys)}
	h.panel.OnClose = func() { h.close() }
	h.box = help.Beside(main, h.panel)
	return h
}

// toggle shows a page, or closes the one that is open; begin begins the tour, nil where
// there is none.
func (h *helper) toggle(page desk.HelpPage, begin func()) {
	if h.close() {
		return
	}
	h.before = h.on.Focused()
	h.panel.OfferTour(begin)
	h.panel.ShowPage(page)
	h.box.Refresh()
	h.on.Focus(h.panel)
}

// follow shows the page of the screen that was opened meanwhile, where help is open.
func (h *helper) follow(page desk.HelpPage) {
	if h.panel.Visible() && h.panel.Page() != page {
		h.panel.ShowPage(page)
	}
}

// close takes the panel away and gives the keyboard back; false when there is none.
func (h *helper) close() bool {
	if !h.panel.Visible() {
		return false
	}
	held := h.on.Focused() == fyne.Focusable(h.panel) || h.on.Focused() == nil
	h.on.Unfocus()
	h.panel.Hide()
	h.box.Refresh()
	if at, ok := h.before.(fyne.CanvasObject); held && ok && at.Visible() && inside(h.box, at) {
		h.on.Focus(h.before)
	}
	h.before = nil
	return true
}

// inside reports whether an object is still in what the window shows.
func inside(root, o fyne.CanvasObject) bool {
	n, ok := o.(interface{ Name() string })
	return ok && field.Find(root, n.Name()) == o
}

// showOver shows a page over a dialog until it is closed.
func (h *helper) showOver(page desk.HelpPage) {
	panel := help.NewPanel(h.host, h.keys)
	panel.ShowPage(page)
	over := help.ShowOver(h.on, panel)
	release := h.host.Hold(func(e *fyne.KeyEvent) {
		if e.Name == fyne.KeyEscape || e.Name == fyne.KeyF1 {
			panel.OnClose()
		}
	})
	panel.OnClose = func() {
		release()
		over.Close()
	}
}

// helpPage is the page of what is shown.
func (p *Program) helpPage() desk.HelpPage {
	if v, ok := p.view.(desk.Helped); ok {
		if page := v.HelpPage(); page != "" {
			return page
		}
	}
	return desk.HelpOf(p.place.Screen)
}

// Help shows the page of help of the present screen, or closes it.
func (p *Program) Help() {
	if begin := p.desk.Tour; begin != nil {
		p.help.toggle(p.helpPage(), func() {
			p.help.close()
			begin()
		})
		return
	}
	p.help.toggle(p.helpPage(), nil)
}

// helpInDialog shows the page a dialog names over it, or that of the screen below.
func (p *Program) helpInDialog(page string) {
	if page == "" {
		page = string(p.helpPage())
	}
	p.help.showOver(desk.HelpPage(page))
}

// helpKeys lists the keys of the fields and of the window in words.
func helpKeys(w *words.Words, window []shortcut) []help.Key {
	var list []help.Key
	for _, k := range []string{"help", "enter", "tab", "down", "escape"} {
		list = append(list, help.Key{Name: w.Say("keys.key." + k), Does: w.Say("keys." + k)})
	}
	for _, s := range window {
		list = append(list, help.Key{Name: keyWords(w, s.key.KeyName, s.key.Modifier), Does: w.Say(s.words)})
	}
	return list
}

// keyWords writes a key as it stands on the keyboard of who reads: "Ctrl+PgDn".
func keyWords(w *words.Words, k fyne.KeyName, m fyne.KeyModifier) string {
	text := string(k)
	switch k {
	case fyne.KeyPageDown:
		text = w.Say("keys.key.pagedown")
	case fyne.KeyPageUp:
		text = w.Say("keys.key.pageup")
	case fyne.KeyLeft:
		text = "\u2190"
	}
	alt := "keys.with.alt"
	if runtime.GOOS == "darwin" {
		alt = "keys.with.option"
	}
	for _, held := range []struct {
		key  fyne.KeyModifier
		with string
	}{{fyne.KeyModifierShift, "keys.with.shift"}, {fyne.KeyModifierAlt, alt}, {fyne.KeyModifierSuper, "keys.with.command"}, {fyne.KeyModifierControl, "keys.with.control"}} {
		if m&held.key != 0 {
			text = w.Say(held.with, text)
		}
	}
	return text
}

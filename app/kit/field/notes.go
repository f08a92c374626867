package field

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// Notes is text of many lines: what the athlete said, why a value was kept.
// Tab leaves it, Enter breaks the line; ten thousand characters are fine.
type Notes struct {
	widget.BaseWidget

	// OnChanged is told the text at every keystroke, OnLeft when the keyboard
	// leaves.
	OnChanged func(text string)
	OnLeft    func(text string)

	inner *notesEntry
	plain *container.ThemeOverride
	// wheel is in the way of the wheel.
	wheel *notesWheel
	rows  int
	// letters says how many letters of the text no font here draws.
	letters *look.Paragraph
}

var _ look.Holder = (*Notes)(nil)

// NewNotes makes an empty text with room for so many rows; more scroll.
func NewNotes(h *Host, name string, rows int) *Notes {
	n := &Notes{rows: rows, letters: look.NewParagraph("", look.Note, look.Ink2)}
	n.inner = &notesEntry{host: h, name: name, notes: n}
	n.inner.MultiLine = true
	n.inner.Wrapping = fyne.TextWrapWord
	n.inner.Scroll = fyne.ScrollVerticalOnly
	n.inner.OnChanged = func(text string) {
		n.letters.SetText(h.lettersNote(look.Body, text))
		n.Refresh()
		if !n.inner.setting {
			tell(n.OnChanged, text)
		}
	}
	n.inner.ExtendBaseWidget(n.inner)
	n.plain = container.NewThemeOverride(n.inner, notesTheme{})
	n.wheel = newNotesWheel(n)
	n.ExtendBaseWidget(n)
	return n
}

// Text returns the text.
func (n *Notes) Text() string { return n.inner.Text }

// SetText replaces the text; nobody is told.
func (n *Notes) SetText(text string) {
	if n.inner.Text == text {
		return
	}
	n.inner.setting = true
	n.inner.SetText(text)
	n.inner.setting = false
}

// SetPlaceholder sets the words that stand in an empty box.
func (n *Notes) SetPlaceholder(text string) { n.inner.SetPlaceHolder(text) }

// Focus asks for the keyboard.
func (n *Notes) Focus() { n.inner.Focus() }

// Disable keeps the text from being changed, Enable lets it again.
func (n *Notes) Disable() { n.inner.Disable() }

// Enable lets the text be changed.
func (n *Notes) Enable() { n.inner.Enable() }

// Disabled reports whether the text cannot be changed.
func (n *Notes) Disabled() bool { return n.inner.Disabled() }

// Parts returns the editor, which has the name, and what stands below the box.
func (n *Notes) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{n.inner, n.letters} }

// HeightFor returns the height of box and note at a width.
func (n *Notes) HeightFor(width float32) float32 {
	return float32(n.rows)*look.Body.Height() + 2*notesPad + 4 + n.noteHeight(width)
}

// noteHeight is the height of the note with the gap above it.
func (n *Notes) noteHeight(width float32) float32 {
	h := look.HeightFor(n.letters, width)
	if h > 0 {
		h += noteGap
	}
	return h
}

// boxSize is the size without the note.
func (n *Notes) boxSize() fyne.Size {
	return n.Size().SubtractWidthHeight(0, n.noteHeight(n.Size().Width))
}

// notesPad is the room around the text, in px.
const notesPad = boxPad

// Baseline is where the first line stands.
func (n *Notes) Baseline() float32 { return notesPad + look.Body.Baseline() }

// CreateRenderer draws a box of ours around the editor.
func (n *Notes) CreateRenderer() fyne.WidgetRenderer {
	r := &notesRenderer{n: n, box: look.NewOutline()}
	r.set()
	return r
}

type notesRenderer struct {
	n   *Notes
	box *look.Outline
}

func (r *notesRenderer) set() {
	p := look.PaletteNow()
	switch e := r.n.inner; {
	case e.Disabled() && p.Dark:
		r.box.Paint(color.Transparent, color.Transparent, 1, look.ControlRadius)
	case e.Disabled():
		r.box.Paint(p.Paper, p.Hairline, 1, look.ControlRadius)
	case e.focused:
		r.box.Paint(p.Sheet, p.Ink, 2, look.ControlRadius)
	default:
		r.box.Paint(p.Sheet, p.Edge, 1, look.ControlRadius)
	}
	size := r.n.boxSize()
	r.box.Place(fyne.Position{}, size)
	r.n.plain.Move(fyne.NewPos(2, 2))
	r.n.plain.Resize(size.SubtractWidthHeight(4, 4))
	r.n.wheel.Move(fyne.Position{})
	r.n.wheel.Resize(size)
	r.n.letters.Move(fyne.NewPos(0, size.Height+noteGap))
	r.n.letters.Resize(fyne.NewSize(size.Width, look.HeightFor(r.n.letters, size.Width)))
}

func (r *notesRenderer) Layout(fyne.Size) { r.set() }

func (r *notesRenderer) MinSize() fyne.Size {
	least := look.Scaled(160)
	return fyne.NewSize(least, r.n.HeightFor(max(r.n.Size().Width, least)))
}

func (r *notesRenderer) Refresh() {
	r.set()
	r.n.plain.Refresh()
	canvas.Refresh(r.n)
}

func (r *notesRenderer) Objects() []fyne.CanvasObject {
	return r.box.With(r.n.plain, r.n.wheel, r.n.letters)
}
func (r *notesRenderer) Destroy() {}

// notesTheme takes the toolkit's own box away and keeps the rest of the
// running theme.
type notesTheme struct{}

// Color makes ground and border of the toolkit's editor invisible.
func (notesTheme) Color(name fyne.ThemeColorName, v fyne.ThemeVariant) color.Color {
	if name == theme.ColorNameInputBackground || name == theme.ColorNameInputBorder {
		return color.Transparent
	}
	return running().Color(name, v)
}

// Font is the running theme's.
func (notesTheme) Font(s fyne.TextStyle) fyne.Resource { return running().Font(s) }

// Icon is the running theme's.
func (notesTheme) Icon(n fyne.ThemeIconName) fyne.Resource { return running().Icon(n) }

// Size has no border, and the room around the text that our boxes have.
func (notesTheme) Size(n fyne.ThemeSizeName) float32 {
	switch n {
	case theme.SizeNameInputBorder:
		return 0
	case theme.SizeNameInnerPadding:
		return notesPad - 2
	}
	return running().Size(n)
}

func running() fyne.Theme { return fyne.CurrentApp().Settings().Theme() }

// notesEntry is the toolkit's editor with our manners: it passes on Tab, keys
// and shortcuts it has no use for.
type notesEntry struct {
	widget.Entry
	host             *Host
	name             string
	notes            *Notes
	setting, focused bool
	// spoken is the name a screen reader says.
	spoken string
	// text is what the toolkit's editor scrolls in; nil before it is drawn.
	text *container.Scroll
}

// Name is how tests and drivers find the text.
func (e *notesEntry) Name() string { return e.name }

// Focus asks for the keyboard.
func (e *notesEntry) Focus() {
	if on := canvasOf(e); on != nil {
		on.Focus(e)
	}
}

// CreateRenderer draws the editor and remembers what it scrolls in.
func (e *notesEntry) CreateRenderer() fyne.WidgetRenderer {
	r := e.Entry.CreateRenderer()
	for _, o := range r.Objects() {
		if s, ok := o.(*container.Scroll); ok {
			e.text = s
		}
	}
	return r
}

// scrolled scrolls the text while one writes; it reports whether it moved.
func (e *notesEntry) scrolled(by *fyne.ScrollEvent) bool {
	if !e.focused || e.text == nil {
		return false
	}
	was := e.text.Offset
	e.text.Scrolled(by)
	return e.text.Offset != was
}

// AcceptsTab leaves the Tab key to the window.
func (e *notesEntry) AcceptsTab() bool { return false }

// FocusGained shows the focus.
func (e *notesEntry) FocusGained() {
	e.focused = true
	e.Entry.FocusGained()
	e.notes.Refresh()
	reveal(e)
}

// FocusLost ends the visit.
func (e *notesEntry) FocusLost() {
	e.focused = false
	e.Entry.FocusLost()
	e.notes.Refresh()
	tell(e.notes.OnLeft, e.Text)
}

// TypedKey passes Escape on.
func (e *notesEntry) TypedKey(k *fyne.KeyEvent) {
	if k.Name == fyne.KeyEscape {
		e.host.Key(k)
		return
	}
	e.Entry.TypedKey(k)
}

// TypedShortcut passes on what an editor has no use for, undo among it.
func (e *notesEntry) TypedShortcut(s fyne.Shortcut) {
	switch s.(type) {
	case *fyne.ShortcutCopy, *fyne.ShortcutCut, *fyne.ShortcutPaste, *fyne.ShortcutSelectAll:
		e.Entry.TypedShortcut(s)
	default:
		e.host.shortcut(e, s)
	}
}

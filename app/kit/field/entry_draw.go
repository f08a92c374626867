package field

import (
	"image/color"
	"sort"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// Room in and under a box, in px.
const (
	boxPad   float32 = 8
	unitGap  float32 = 6
	noteGap  float32 = 3
	caretWay float32 = 2
)

// boxWidth is how wide the box is.
func (t *entry) boxWidth() float32 {
	w := t.Size().Width
	if t.setup.box > 0 {
		w = min(w, look.Scaled(t.setup.box))
	}
	return w
}

// inner is where the text may stand in the box: from left to right.
func (t *entry) inner() (left, right float32) {
	left, right = boxPad, t.boxWidth()-boxPad
	if t.setup.suffix != "" {
		right -= look.Note.Width(t.setup.suffix) + unitGap
	}
	if t.setup.caret {
		right -= look.Scaled(8) + unitGap
	}
	return left, max(right, left)
}

// width is the width of a piece of the text.
func (t *entry) width(from, to int) float32 {
	if from >= to {
		return 0
	}
	return t.setup.style.Width(t.shown(from, to))
}

// shown is a piece of the text as it is drawn.
func (t *entry) shown(from, to int) string {
	if t.setup.concealed {
		return strings.Repeat("•", to-from)
	}
	return t.setup.style.Drawn(t.editor.slice(from, to))
}

// view is the piece of the text in sight, and where it begins. While the
// keyboard is elsewhere it is the beginning of the text.
func (t *entry) view() (first, last int, x float32) {
	left, right := t.inner()
	room, n := right-left, len(t.editor.text)
	if all := t.width(0, n); all <= room {
		t.first = 0
		if t.setup.right {
			return 0, n, right - all
		}
		return 0, n, left
	}
	if t.focused {
		t.first = t.follow(min(t.first, n), room)
	} else {
		t.first = 0
	}
	return t.first, t.fit(t.first, room), left
}

// fit is the end of the longest piece from first that fits the room.
func (t *entry) fit(first int, room float32) int {
	n := len(t.editor.text) - first
	return first + sort.Search(n, func(i int) bool { return t.width(first, first+i+1) > room })
}

// follow moves the first rune in sight so that the caret is in sight, with no
// more room behind the text than must be.
func (t *entry) follow(first int, room float32) int {
	n, c := len(t.editor.text), t.editor.caret
	first = min(first, c)
	if t.width(first, c) > room {
		first += sort.Search(c-first, func(i int) bool { return t.width(first+i, c) <= room })
	}
	if back := sort.Search(n, func(i int) bool { return t.width(i, n) <= room }); first > back {
		first = back
	}
	return first
}

// placeAt is the place between runes nearest to a distance from the left.
func (t *entry) placeAt(x float32) int {
	first, last, left := t.view()
	n := last - first
	i := sort.Search(n, func(i int) bool {
		return left+(t.width(first, first+i)+t.width(first, first+i+1))/2 > x
	})
	place := first + i
	if i == n && x > left+t.width(first, last)+boxPad && last < len(t.editor.text) {
		place = last + 1
	}
	for place > 0 && place < len(t.editor.text) && joins(t.editor.text, place) {
		place++
	}
	return place
}

// CreateRenderer draws the box and what is in it.
func (t *entry) CreateRenderer() fyne.WidgetRenderer {
	r := &entryRenderer{t: t}
	r.box, r.bar = look.NewOutline(), canvas.NewRectangle(nil)
	r.selection, r.caret = canvas.NewRectangle(nil), canvas.NewRectangle(nil)
	r.text, r.suffix = canvas.NewText("", nil), canvas.NewText("", nil)
	r.opener = look.NewTriangle(nil)
	r.opener.Points = []fyne.Position{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 0.5, Y: 1}}
	r.set()
	return r
}

type entryRenderer struct {
	t                     *entry
	box                   *look.Outline
	bar, selection, caret *canvas.Rectangle
	text, suffix          *canvas.Text
	opener                *canvas.ArbitraryPolygon
}

// set draws the state.
func (r *entryRenderer) set() {
	t, p := r.t, look.PaletteNow()
	h, w := look.ControlHeight(), t.boxWidth()
	paintBox(r.box, p, &t.control)
	r.box.Place(fyne.Position{}, fyne.NewSize(w, h))
	r.setBar(p, h)
	r.setText(p)
	unit, soft := look.Note.Width(t.setup.suffix), p.Ink2
	look.Write(r.suffix, look.Note, soft, t.setup.suffix, fyne.NewPos(w-boxPad-unit, t.Baseline()-look.Note.Baseline()), unit)
	side := look.Scaled(8)
	r.opener.FillColor = p.Ink2
	r.opener.Move(fyne.NewPos(w-boxPad-side, float32(int((h-side*0.6)/2))))
	r.opener.Resize(fyne.NewSize(side, float32(int(side*0.6))))
	show(r.opener, t.setup.caret)
	t.followLetters()
	below := h + noteGap
	for _, note := range []*look.Paragraph{t.trouble.note, t.letters} {
		show(note, note == t.letters || !t.setup.quiet && !t.untold())
		if note.Visible() {
			high := look.HeightFor(note, t.Size().Width)
			note.Move(fyne.NewPos(0, below))
			note.Resize(fyne.NewSize(t.Size().Width, high))
			below += high
		}
	}
}

// setBar draws the bar of trouble: thicker for what is not used.
func (r *entryRenderer) setBar(p look.Palette, h float32) {
	r.bar.FillColor = p.Ink
	width := float32(3)
	if r.t.trouble.weight == Wrong {
		width = 5
	}
	r.bar.Move(fyne.NewPos(0, 0))
	r.bar.Resize(fyne.NewSize(width, h))
	show(r.bar, r.t.trouble.weight != Fine && !r.t.untold())
}

// setText draws text, selection and caret.
func (r *entryRenderer) setText(p look.Palette) {
	t := r.t
	s := t.setup.style
	first, last, x := t.view()
	left, right := t.inner()
	y := t.Baseline() - s.Baseline()
	text, tone := t.shown(first, last), p.Ink
	switch {
	case len(t.editor.text) == 0:
		text, tone = look.Ellipsis(t.setup.placeholder, s, right-left), p.Ink3
		if t.setup.right {
			x = max(right-s.Width(text), left)
		} else if t.focused {
			x += caretWay // clear of the caret
		}
	case t.setup.covered && !t.focused:
		text = coveredText
	case last < len(t.editor.text) && !t.focused:
		text = look.Ellipsis(t.shown(0, len(t.editor.text)), s, right-left)
	}
	if t.Disabled() {
		tone = p.Ink2 // still read: 4.5:1 on the sunk ground too
	}
	look.Write(r.text, s, tone, text, fyne.NewPos(x, y), max(right-x, 0))
	if len(t.editor.text) == 0 {
		x = left
		if t.setup.right {
			x = right
		}
	}
	r.setMarks(p, first, last, x, y)
}

// setMarks draws selection and caret of the piece of text that begins at x.
func (r *entryRenderer) setMarks(p look.Palette, first, last int, x, y float32) {
	t := r.t
	clamp := func(i int) int { return min(max(i, first), last) }
	from, to := t.editor.selection()
	a, b := x+t.width(first, clamp(from)), x+t.width(first, clamp(to))
	height := t.setup.style.Height()
	r.selection.FillColor = selectionColour(p)
	r.selection.Move(fyne.NewPos(a, y))
	r.selection.Resize(fyne.NewSize(b-a, height))
	show(r.selection, t.focused && from != to)
	r.caret.FillColor = p.Ink
	r.caret.Move(fyne.NewPos(x+t.width(first, clamp(t.editor.caret))-caretWay/2, y))
	r.caret.Resize(fyne.NewSize(caretWay, height))
	show(r.caret, t.focused && from == to)
}

func selectionColour(p look.Palette) color.Color { return p.Hairline }

func (r *entryRenderer) Layout(fyne.Size) { r.set() }

func (r *entryRenderer) MinSize() fyne.Size {
	t := r.t
	w := look.Scaled(48)
	if t.setup.least > 0 {
		w = look.Scaled(t.setup.least)
	}
	width := t.Size().Width
	if width <= 0 {
		width = w
	}
	return fyne.NewSize(w, t.HeightFor(width))
}

func (r *entryRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.t.self)
}

func (r *entryRenderer) Objects() []fyne.CanvasObject {
	return r.box.With(r.bar, r.selection, r.text, r.suffix, r.opener, r.caret, r.t.trouble.note, r.t.letters)
}

func (r *entryRenderer) Destroy() {}

// coveredText stands for a text that is covered: always as long, so that it tells
// nothing of it.
const coveredText = "••••"

// Cover draws dots in place of the text once it is left; while it is typed it is
// shown.
func (t *entry) Cover(on bool) {
	if t.setup.covered != on {
		t.setup.covered = on
		t.Refresh()
	}
}

// Conceal draws a dot for each letter of a passphrase, also while it is typed, and lets
// nothing of it be copied.
func (t *entry) Conceal(on bool) {
	if t.setup.concealed != on {
		t.setup.concealed = on
		t.Refresh()
	}
}

// untold: a covered text is odd, which would tell how large it is.
func (t *entry) untold() bool { return t.Covered() && t.trouble.weight == Odd }

// Covered reports whether dots stand in place of the text now.
func (t *entry) Covered() bool { return t.setup.covered && !t.focused && len(t.editor.text) > 0 }

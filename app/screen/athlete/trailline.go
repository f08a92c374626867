package athlete

import (
	"image/color"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// Sizes of a line of the trail, in px at 100 % text: the column of days, the
// least width of the words, the room above and below, and beside.
const (
	trailDay   float32 = 104
	trailLeast float32 = 90
	trailPadY  float32 = 8
	trailPadX  float32 = 8
)

// trailPitch is the height of a line with its hairline.
func trailPitch() float32 {
	return 2*look.Scaled(trailPadY) + look.Body.Height() + 2 + look.Note.Height() + 1
}

// trailLine is one line of a trail.
type trailLine struct {
	widget.BaseWidget
	trail   *trail
	place   int
	line    line
	open    func()
	hovered bool
}

var (
	_ fyne.Tappable      = (*trailLine)(nil)
	_ desktop.Hoverable  = (*trailLine)(nil)
	_ desktop.Cursorable = (*trailLine)(nil)
)

func newTrailLine(t *trail, place int, l line, open func()) *trailLine {
	w := &trailLine{trail: t, place: place, line: l, open: open}
	w.ExtendBaseWidget(w)
	return w
}

// Name is how tests and drivers find the line.
func (l *trailLine) Name() string { return l.trail.Name() + "." + strconv.Itoa(l.place+1) }

// Text is the line in words.
func (l *trailLine) Text() string {
	return l.line.day + " " + l.line.year + " " + l.line.title + " " + l.line.note
}

// Tapped opens the line.
func (l *trailLine) Tapped(*fyne.PointEvent) { l.open() }

// MouseIn shows that the pointer is over the line.
func (l *trailLine) MouseIn(*desktop.MouseEvent) { l.hover(true) }

// MouseMoved changes nothing.
func (l *trailLine) MouseMoved(*desktop.MouseEvent) {}

// MouseOut shows that the pointer has gone.
func (l *trailLine) MouseOut() { l.hover(false) }

func (l *trailLine) hover(on bool) {
	l.hovered = on
	l.Refresh()
}

// Cursor is the pointing hand.
func (l *trailLine) Cursor() desktop.Cursor { return desktop.PointerCursor }

// CreateRenderer draws the line.
func (l *trailLine) CreateRenderer() fyne.WidgetRenderer {
	text := func() *canvas.Text { return canvas.NewText("", nil) }
	r := &trailLineRenderer{
		l: l, ground: canvas.NewRectangle(nil), ring: canvas.NewRectangle(color.Transparent), rule: canvas.NewRectangle(nil),
		day: text(), year: text(), title: text(), note: text(),
	}
	r.ground.CornerRadius = look.ControlRadius
	r.ring.CornerRadius, r.ring.StrokeWidth = look.ControlRadius, 2
	r.set()
	return r
}

type trailLineRenderer struct {
	l                      *trailLine
	ground, ring, rule     *canvas.Rectangle
	day, year, title, note *canvas.Text
}

// set draws everything at its place.
func (r *trailLineRenderer) set() {
	l, p, size := r.l, look.PaletteNow(), r.l.Size()
	x := trailPadX + look.Scaled(trailDay)
	room := max(0, size.Width-x-trailPadX)
	top := look.Scaled(trailPadY)
	below := top + look.Body.Height() + 2
	look.Write(r.day, look.Body, p.Ink2, l.line.day, fyne.NewPos(trailPadX, top), x)
	look.Write(r.year, look.Note, p.Ink2, l.line.year, fyne.NewPos(trailPadX, below), x)
	look.Write(r.title, look.Strong, p.Ink, look.Ellipsis(l.line.title, look.Strong, room), fyne.NewPos(x, top), room)
	look.Write(r.note, look.Note, p.Ink2, look.Ellipsis(l.line.note, look.Note, room), fyne.NewPos(x, below), room)
	r.rule.FillColor = p.Hairline
	r.rule.Move(fyne.NewPos(trailPadX, size.Height-1))
	r.rule.Resize(fyne.NewSize(max(0, size.Width-2*trailPadX), 1))
	box := fyne.NewSize(size.Width, size.Height-1)
	r.ground.FillColor, r.ring.StrokeColor = color.Transparent, color.Transparent
	if l.hovered {
		r.ground.FillColor = p.Sunk
	}
	if l.trail.focused && l.trail.at == l.place {
		r.ring.StrokeColor = p.Ink
	}
	r.ground.Resize(box)
	r.ring.Move(fyne.NewPos(1, 1))
	r.ring.Resize(fyne.NewSize(box.Width-2, box.Height-2))
}

func (r *trailLineRenderer) Layout(fyne.Size) { r.set() }

func (r *trailLineRenderer) MinSize() fyne.Size {
	return fyne.NewSize(look.Scaled(trailDay+trailLeast), trailPitch())
}

func (r *trailLineRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.l)
}

func (r *trailLineRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.day, r.year, r.title, r.note, r.rule, r.ring}
}

func (r *trailLineRenderer) Destroy() {}

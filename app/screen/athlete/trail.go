package athlete

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// trail is what has happened, one line below the other. A click opens a line;
// from the keyboard the trail is one stop, on which the arrow keys go from line
// to line and Enter opens. Lines are made when they come in sight, so that a
// long history costs what a screenful costs.
type trail struct {
	widget.BaseWidget
	host  *field.Host
	lines []line
	made  map[int]*trailLine
	open  func(i int)
	// within is what the trail scrolls in.
	within  *look.Scroll
	at      int
	focused bool
}

var (
	_ fyne.Focusable = (*trail)(nil)
	_ look.Flowing   = (*trail)(nil)
	_ look.Holder    = (*trail)(nil)
)

// newTrail makes a trail; open is told the place of the line that was opened.
func newTrail(h *field.Host, lines []line, open func(i int)) *trail {
	t := &trail{host: h, lines: lines, made: map[int]*trailLine{}, open: open}
	t.within = look.NewScroll(t)
	t.within.OnScrolled(t.Refresh)
	t.ExtendBaseWidget(t)
	return t
}

// Name is how tests and drivers find the trail; its lines are numbered from 1.
func (t *trail) Name() string { return "overview.trail" }

// Parts returns the lines in sight.
func (t *trail) Parts() []fyne.CanvasObject {
	var list []fyne.CanvasObject
	first, last := t.window()
	for i := first; i < last; i++ {
		list = append(list, t.line(i))
	}
	return list
}

// line is the drawing of a line, at its place.
func (t *trail) line(i int) *trailLine {
	if t.made[i] == nil {
		t.made[i] = newTrailLine(t, i, t.lines[i], func() { t.open(i) })
		t.set(i)
	}
	return t.made[i]
}

// set puts a line at its place.
func (t *trail) set(i int) {
	t.made[i].Move(fyne.NewPos(0, float32(i)*trailPitch()))
	t.made[i].Resize(fyne.NewSize(t.Size().Width, trailPitch()))
}

// beforeShown is how many lines there are before the trail has a size.
const beforeShown = 12

// window is the first and the last line in sight, the last excluded.
func (t *trail) window() (first, last int) {
	height := t.within.Size().Height
	if height <= 0 {
		return 0, min(beforeShown, len(t.lines))
	}
	first = max(0, int(t.within.Offset()/trailPitch()))
	last = int((t.within.Offset()+height)/trailPitch()) + 1
	return min(first, len(t.lines)), min(last, len(t.lines))
}

// AccessibilityLabel is the line at hand.
func (t *trail) AccessibilityLabel() string {
	if t.at >= len(t.lines) {
		return ""
	}
	return t.line(t.at).Text()
}

// HeightFor returns the height of all lines.
func (t *trail) HeightFor(float32) float32 { return trailPitch() * float32(len(t.lines)) }

// TypedKey goes from line to line and opens.
func (t *trail) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyUp:
		t.move(t.at - 1)
	case fyne.KeyDown:
		t.move(t.at + 1)
	case fyne.KeyHome:
		t.move(0)
	case fyne.KeyEnd:
		t.move(len(t.lines) - 1)
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		t.open(t.at)
	default:
		t.host.Key(e)
	}
}

// move takes another line in hand and brings it into sight.
func (t *trail) move(to int) {
	before := t.line(t.at)
	t.at = max(0, min(to, len(t.lines)-1))
	before.Refresh()
	t.line(t.at).Refresh()
	top := float32(t.at) * trailPitch()
	t.within.Reveal(top, top+trailPitch())
	t.Refresh()
}

// TypedRune has no use for letters.
func (t *trail) TypedRune(rune) {}

// FocusGained shows the focus on the line at hand.
func (t *trail) FocusGained() { t.focus(true) }

// FocusLost hides it.
func (t *trail) FocusLost() { t.focus(false) }

func (t *trail) focus(on bool) {
	t.focused = on
	t.line(t.at).Refresh()
}

// CreateRenderer sets the lines one below the other.
func (t *trail) CreateRenderer() fyne.WidgetRenderer { return &trailRenderer{t} }

type trailRenderer struct{ t *trail }

func (r *trailRenderer) Layout(fyne.Size) {
	for i := range r.t.made {
		r.t.set(i)
	}
}

func (r *trailRenderer) MinSize() fyne.Size {
	return fyne.NewSize(look.Scaled(trailDay+trailLeast), r.t.HeightFor(0))
}

func (r *trailRenderer) Refresh() {
	r.Layout(r.t.Size())
	for _, l := range r.t.Parts() {
		l.Refresh()
	}
	canvas.Refresh(r.t)
}

func (r *trailRenderer) Objects() []fyne.CanvasObject { return r.t.Parts() }
func (r *trailRenderer) Destroy()                     {}

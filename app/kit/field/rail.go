package field

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// Size of the rail, in px at 100 % text.
const (
	railPitch float32 = 38
	railLeft  float32 = 19
	railBar   float32 = 3
)

// Rail is the window's list of places: words one under the other, the chosen
// one on paper with a bar of ink. Up, Down, Home and End choose.
type Rail struct {
	control
	// OnChosen is told the key of the place the person chose, also when it
	// was chosen already.
	OnChosen func(key string)

	tabs   []Tab
	chosen int
}

var _ Field = (*Rail)(nil)

// NewRail makes a rail with the first place chosen.
func NewRail(h *Host, name string, tabs []Tab) *Rail {
	r := &Rail{tabs: tabs}
	r.init(r, h, name)
	return r
}

// Chosen returns the key of the chosen place; empty when none is.
func (r *Rail) Chosen() string {
	if r.chosen < 0 || r.chosen >= len(r.tabs) {
		return ""
	}
	return r.tabs[r.chosen].Key
}

// Choose chooses a place; a key that is not there chooses none. Nobody is told.
func (r *Rail) Choose(key string) {
	at := -1
	for i, t := range r.tabs {
		if t.Key == key {
			at = i
		}
	}
	if at != r.chosen {
		r.chosen = at
		r.Refresh()
	}
}

// pick chooses for the person.
func (r *Rail) pick(i int) {
	if i < 0 || i >= len(r.tabs) {
		return
	}
	r.chosen = i
	r.Refresh()
	tell(r.OnChosen, r.Chosen())
}

// Tapped chooses the place under the pointer.
func (r *Rail) Tapped(e *fyne.PointEvent) {
	if r.press() {
		r.pick(int(e.Position.Y / look.Scaled(railPitch)))
	}
}

// TypedKey chooses by arrow, Home and End; Enter opens the chosen place again.
func (r *Rail) TypedKey(e *fyne.KeyEvent) {
	r.keyed()
	switch e.Name {
	case fyne.KeyUp:
		r.pick(max(0, r.chosen-1))
	case fyne.KeyDown:
		r.pick(min(len(r.tabs)-1, r.chosen+1))
	case fyne.KeyHome:
		r.pick(0)
	case fyne.KeyEnd:
		r.pick(len(r.tabs) - 1)
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		r.pick(r.chosen)
	default:
		r.host.Key(e)
	}
}

// AccessibilityLabel is the words and which is chosen.
func (r *Rail) AccessibilityLabel() string {
	for _, t := range r.tabs {
		if t.Key == r.Chosen() {
			return r.spokenAs("rail", t.Text)
		}
	}
	return r.spokenAs("rail", "")
}

// AccessibilityRole is button: it changes what is shown.
func (r *Rail) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// CreateRenderer draws the places.
func (r *Rail) CreateRenderer() fyne.WidgetRenderer {
	d := &railRenderer{
		r: r, ground: canvas.NewRectangle(nil), bar: canvas.NewRectangle(nil), ring: canvas.NewRectangle(color.Transparent),
	}
	for range r.tabs {
		d.texts = append(d.texts, canvas.NewText("", nil))
	}
	d.set()
	return d
}

type railRenderer struct {
	r                 *Rail
	texts             []*canvas.Text
	ground, bar, ring *canvas.Rectangle
}

func (d *railRenderer) set() {
	r, p, pitch := d.r, look.PaletteNow(), look.Scaled(railPitch)
	top := float32(r.chosen) * pitch
	width := r.Size().Width
	d.ground.FillColor, d.bar.FillColor = p.Paper, p.Ink
	d.ground.Move(fyne.NewPos(0, top))
	d.ground.Resize(fyne.NewSize(width, pitch))
	d.bar.Move(fyne.NewPos(0, top))
	d.bar.Resize(fyne.NewSize(railBar, pitch))
	d.ring.StrokeColor, d.ring.StrokeWidth, d.ring.CornerRadius = p.Ink, 2, look.ControlRadius
	d.ring.Move(fyne.NewPos(railBar+3, top+3))
	d.ring.Resize(fyne.NewSize(max(0, width-railBar-6), pitch-6))
	show(d.ground, r.chosen >= 0)
	show(d.bar, r.chosen >= 0)
	show(d.ring, r.ringed() && r.chosen >= 0)
	for i, t := range d.texts {
		style, ink := look.Body, p.Ink2
		if i == r.chosen {
			style, ink = look.Strong, p.Ink
		}
		words := style.Shown(r.tabs[i].Text)
		t.Text, t.Color, t.TextSize, t.TextStyle, t.FontSource = words, ink, style.Size(), style.Text(), style.Source(words)
		t.Move(fyne.NewPos(railLeft, float32(i)*pitch+float32(int((pitch-style.Height())/2))))
		t.Resize(fyne.NewSize(max(0, width-railLeft), style.Height()))
	}
}

func (d *railRenderer) Layout(fyne.Size) { d.set() }

func (d *railRenderer) MinSize() fyne.Size {
	w := float32(0)
	for _, t := range d.r.tabs {
		w = max(w, look.Strong.Width(t.Text))
	}
	return fyne.NewSize(w+railLeft+12, look.Scaled(railPitch)*float32(len(d.r.tabs)))
}

func (d *railRenderer) Refresh() {
	d.set()
	canvas.Refresh(d.r)
}

func (d *railRenderer) Objects() []fyne.CanvasObject {
	list := []fyne.CanvasObject{d.ground, d.bar, d.ring}
	for _, t := range d.texts {
		list = append(list, t)
	}
	return list
}

func (d *railRenderer) Destroy() {}

package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// Toggle is two or three words side by side, at most one of them chosen. Arrow
// keys choose.
type Toggle struct {
	control
	// OnChosen is told the key the person chose.
	OnChosen func(key string)

	options []Option
	chosen  int
}

var _ Field = (*Toggle)(nil)

// NewToggle makes a toggle with nothing chosen.
func NewToggle(h *Host, name string, options []Option) *Toggle {
	t := &Toggle{options: options, chosen: -1}
	t.init(t, h, name)
	return t
}

// Chosen returns the chosen key, empty when there is none.
func (t *Toggle) Chosen() string {
	return chosenOf(t.options, t.chosen).Key
}

// Choose chooses a key, or nothing when it is empty; nobody is told.
func (t *Toggle) Choose(key string) {
	if i := optionAt(t.options, key); i != t.chosen {
		t.chosen = i
		t.Refresh()
	}
}

func (t *Toggle) pick(i int) {
	if i < 0 || i >= len(t.options) || i == t.chosen {
		return
	}
	t.chosen = i
	t.Refresh()
	tell(t.OnChosen, t.Chosen())
}

// Tapped chooses the word under the pointer.
func (t *Toggle) Tapped(e *fyne.PointEvent) {
	if !t.press() {
		return
	}
	for i, s := range t.spans() {
		if e.Position.X >= s.from && e.Position.X < s.to {
			t.pick(i)
		}
	}
}

// TypedKey chooses by arrow; Space goes round.
func (t *Toggle) TypedKey(e *fyne.KeyEvent) {
	t.keyed()
	switch e.Name {
	case fyne.KeyLeft:
		t.pick(max(t.chosen, 1) - 1)
	case fyne.KeyRight:
		t.pick(t.chosen + 1)
	case fyne.KeyHome:
		t.pick(0)
	case fyne.KeyEnd:
		t.pick(len(t.options) - 1)
	case fyne.KeySpace:
		t.pick((t.chosen + 1) % len(t.options))
	default:
		t.host.Key(e)
	}
}

// spans is where the words stand; spare width is shared out.
func (t *Toggle) spans() []span {
	list := make([]span, len(t.options))
	total := float32(0)
	for i, o := range t.options {
		list[i].to = float32(int(look.Strong.Width(o.Text) + 2*togglePad + 0.99))
		total += list[i].to
	}
	spare := max(t.Size().Width-total, 0) / float32(max(len(list), 1))
	x := float32(0)
	for i := range list {
		w := list[i].to + spare
		list[i] = span{x, x + w}
		x += w
	}
	return list
}

// togglePad is the room beside the words, in px.
const togglePad float32 = 12

// Baseline is where the words stand.
func (t *Toggle) Baseline() float32 {
	return float32(int((look.ControlHeight()-look.Body.Height())/2)) + look.Body.Baseline()
}

// CreateRenderer draws the box, the words and what divides them.
func (t *Toggle) CreateRenderer() fyne.WidgetRenderer {
	r := &toggleRenderer{t: t, box: look.NewOutline(), chosen: canvas.NewRectangle(nil), under: canvas.NewRectangle(nil)}
	for range t.options {
		r.texts = append(r.texts, canvas.NewText("", nil))
		r.rules = append(r.rules, canvas.NewRectangle(nil))
	}
	r.set()
	return r
}

type toggleRenderer struct {
	t             *Toggle
	box           *look.Outline
	chosen, under *canvas.Rectangle
	texts         []*canvas.Text
	rules         []*canvas.Rectangle
}

func (r *toggleRenderer) set() {
	t, p, h := r.t, look.PaletteNow(), look.ControlHeight()
	paintBox(r.box, p, &t.control)
	r.box.Place(fyne.Position{}, fyne.NewSize(t.Size().Width, h))
	for i, s := range t.spans() {
		style, ink := look.Body, p.Ink2
		if i == t.chosen {
			style, ink = look.Strong, p.Ink
			r.chosen.FillColor, r.under.FillColor = p.Sunk, p.Ink
			r.chosen.Move(fyne.NewPos(s.from+3, 3))
			r.chosen.Resize(fyne.NewSize(s.to-s.from-6, h-6))
			r.under.Move(fyne.NewPos(s.from+3, h-5))
			r.under.Resize(fyne.NewSize(s.to-s.from-6, 2))
		}
		if t.Disabled() {
			if ink = p.Ink3; i == t.chosen {
				ink = p.Ink2 // read all the same, on a darker ground
			}
			r.under.FillColor = p.Ink3
		}
		text := r.texts[i]
		text.Alignment = fyne.TextAlignCenter
		look.Write(text, style, ink, t.options[i].Text, fyne.NewPos(s.from, t.Baseline()-style.Baseline()), s.to-s.from)
		r.rules[i].FillColor = p.Hairline
		r.rules[i].Move(fyne.NewPos(s.from, 6))
		r.rules[i].Resize(fyne.NewSize(1, h-12))
		show(r.rules[i], i > 0 && i != t.chosen && i-1 != t.chosen)
	}
	show(r.chosen, t.chosen >= 0)
	show(r.under, t.chosen >= 0)
}

func (r *toggleRenderer) Layout(fyne.Size) { r.set() }

func (r *toggleRenderer) MinSize() fyne.Size {
	w := float32(0)
	for _, o := range r.t.options {
		w += float32(int(look.Strong.Width(o.Text) + 2*togglePad + 0.99))
	}
	return fyne.NewSize(w, look.ControlHeight())
}

func (r *toggleRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.t)
}

func (r *toggleRenderer) Objects() []fyne.CanvasObject {
	list := r.box.With(r.chosen, r.under)
	for i := range r.texts {
		list = append(list, r.rules[i], r.texts[i])
	}
	return list
}

func (r *toggleRenderer) Destroy() {}

package field

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// ratingCells is the number of cells of a rating: 0 to 10.
const ratingCells = 11

// Unrated is the value of a [Rating] nobody has given.
const Unrated = -1

// Rating is a row of cells, 0 to 10, with words at both ends. Digits choose a
// cell (1 and 0 make 10), arrows move, Backspace takes the rating back.
type Rating struct {
	control
	// OnChanged is told the rating the person gave, or Unrated.
	OnChanged func(value int)

	value     int
	low, high string
	// one is true just after the digit 1, which a 0 may turn into 10.
	one bool
}

var _ Field = (*Rating)(nil)

// NewRating makes a rating that is not given yet; low and high are the words
// at the ends.
func NewRating(h *Host, name, low, high string) *Rating {
	r := &Rating{value: Unrated, low: low, high: high}
	r.init(r, h, name)
	return r
}

// Value returns the rating, or Unrated.
func (r *Rating) Value() int { return r.value }

// SetValue shows a rating, or none when it is not 0 to 10; nobody is told.
func (r *Rating) SetValue(v int) {
	if v < 0 || v >= ratingCells {
		v = Unrated
	}
	if v != r.value {
		r.value = v
		r.Refresh()
	}
}

func (r *Rating) pick(v int) {
	if v == r.value || v >= ratingCells {
		return
	}
	r.SetValue(v)
	tell(r.OnChanged, r.value)
}

// Tapped chooses the cell under the pointer.
func (r *Rating) Tapped(e *fyne.PointEvent) {
	if !r.press() || e.Position.Y > look.ControlHeight() {
		return
	}
	r.one = false
	r.pick(min(max(int(e.Position.X/r.cell()), 0), ratingCells-1))
}

// TypedRune chooses by digit.
func (r *Rating) TypedRune(c rune) {
	if c < '0' || c > '9' {
		return
	}
	if c == '0' && r.one && r.value == 1 {
		r.pick(10)
	} else {
		r.pick(int(c - '0'))
	}
	r.one = c == '1'
}

// TypedKey moves by arrow and takes the rating back.
func (r *Rating) TypedKey(e *fyne.KeyEvent) {
	r.keyed()
	digit := len(e.Name) == 1 && e.Name >= "0" && e.Name <= "9"
	if !digit {
		r.one = false
	}
	switch e.Name {
	case fyne.KeyLeft, fyne.KeyDown:
		r.pick(max(r.value-1, 0))
	case fyne.KeyRight, fyne.KeyUp:
		r.pick(min(r.value+1, ratingCells-1))
	case fyne.KeyHome:
		r.pick(0)
	case fyne.KeyEnd:
		r.pick(ratingCells - 1)
	case fyne.KeyBackspace, fyne.KeyDelete:
		r.pick(Unrated)
	default:
		if !digit {
			r.host.Key(e)
		}
	}
}

// cell is the width of one cell.
func (r *Rating) cell() float32 {
	return min(r.Size().Width/ratingCells, look.Scaled(36))
}

// HeightFor returns the height of cells and words.
func (r *Rating) HeightFor(float32) float32 {
	if r.low == "" && r.high == "" {
		return look.ControlHeight()
	}
	return look.ControlHeight() + noteGap + look.Note.Height()
}

// Baseline is where the digits stand.
func (r *Rating) Baseline() float32 {
	return float32(int((look.ControlHeight()-look.Body.Height())/2)) + look.Body.Baseline()
}

// CreateRenderer draws cells, digits and words.
func (r *Rating) CreateRenderer() fyne.WidgetRenderer {
	d := &ratingRenderer{r: r, box: look.NewOutline(), chosen: canvas.NewRectangle(nil)}
	for range ratingCells {
		d.digits = append(d.digits, canvas.NewText("", nil))
		d.rules = append(d.rules, canvas.NewRectangle(nil))
	}
	d.low, d.high = canvas.NewText("", nil), canvas.NewText("", nil)
	d.set()
	return d
}

type ratingRenderer struct {
	r         *Rating
	box       *look.Outline
	chosen    *canvas.Rectangle
	digits    []*canvas.Text
	rules     []*canvas.Rectangle
	low, high *canvas.Text
}

func (d *ratingRenderer) set() {
	r, p, h, w := d.r, look.PaletteNow(), look.ControlHeight(), d.r.cell()
	paintBox(d.box, p, &r.control)
	d.box.Place(fyne.Position{}, fyne.NewSize(w*ratingCells, h))
	for i := range ratingCells {
		x := float32(i) * w
		style, ink := look.Body, p.Ink2
		switch {
		case i == r.value:
			style, ink = look.Strong, p.Paper
		case r.Disabled():
			ink = p.Ink3
		}
		t := d.digits[i]
		t.Alignment = fyne.TextAlignCenter
		look.Write(t, style, ink, strconv.Itoa(i), fyne.NewPos(x, r.Baseline()-style.Baseline()), w)
		d.rules[i].FillColor = p.Hairline
		d.rules[i].Move(fyne.NewPos(float32(int(x)), 6))
		d.rules[i].Resize(fyne.NewSize(1, h-12))
		show(d.rules[i], i > 0 && i != r.value && i-1 != r.value)
	}
	d.chosen.FillColor, d.chosen.CornerRadius = p.Ink, 2
	if r.Disabled() {
		d.chosen.FillColor = p.Ink3
	}
	d.chosen.Move(fyne.NewPos(float32(r.value)*w+3, 3))
	d.chosen.Resize(fyne.NewSize(w-6, h-6))
	show(d.chosen, r.value >= 0)
	d.setWords(p, w*ratingCells, h)
}

// setWords writes the words under both ends.
func (d *ratingRenderer) setWords(p look.Palette, width, h float32) {
	at := fyne.NewPos(0, h+noteGap)
	d.high.Alignment = fyne.TextAlignTrailing
	look.Write(d.low, look.Note, p.Ink2, d.r.low, at, width)
	look.Write(d.high, look.Note, p.Ink2, d.r.high, at, width)
}

func (d *ratingRenderer) Layout(fyne.Size) { d.set() }

func (d *ratingRenderer) MinSize() fyne.Size {
	return fyne.NewSize(ratingCells*look.Scaled(26), d.r.HeightFor(0))
}

func (d *ratingRenderer) Refresh() {
	d.set()
	canvas.Refresh(d.r)
}

func (d *ratingRenderer) Objects() []fyne.CanvasObject {
	list := d.box.With(d.chosen)
	for i := range d.digits {
		list = append(list, d.rules[i], d.digits[i])
	}
	return append(list, d.low, d.high)
}

func (d *ratingRenderer) Destroy() {}

package squad

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// groupBar is what one athlete lost and drank, L, with the words for both, and those for
// deficit and sodium, which are empty while not known.
type groupBar struct {
	name, lost, took, short, salt string
	loss, drunk                   float64
}

// words are what stands at a bar, in the order of the chart's parts.
func (b *groupBar) words() []string { return []string{b.lost, b.took, b.short, b.salt} }

// groupChart shows loss and drink by athlete on one scale: two bars each, named, with
// deficit and sodium in words where there is room.
type groupChart struct {
	widget.BaseWidget
	bars  []groupBar
	parts []fyne.CanvasObject
	rects []*canvas.Rectangle
}

func newGroupChart() *groupChart {
	c := &groupChart{}
	c.ExtendBaseWidget(c)
	return c
}

// set shows other bars.
func (c *groupChart) set(bars []groupBar) {
	c.bars, c.parts, c.rects = bars, nil, nil
	for _, b := range bars {
		c.parts = append(c.parts, look.NewLabel(b.name, look.NoteStrong, look.Ink).Shorten())
		for _, words := range b.words() {
			c.parts = append(c.parts, look.NewLabel(words, look.Note, look.Ink2))
		}
		c.rects = append(c.rects, canvas.NewRectangle(nil), canvas.NewRectangle(nil))
	}
	c.Refresh()
}

// Parts returns the words.
func (c *groupChart) Parts() []fyne.CanvasObject { return c.parts }

// CreateRenderer draws the bars.
func (c *groupChart) CreateRenderer() fyne.WidgetRenderer { return &groupChartRenderer{c} }

type groupChartRenderer struct{ c *groupChart }

// Sizes of the picture, in px at 100 % text.
const (
	barHeight float32 = 7
	barWords  float32 = 96
	barMore   float32 = 116 // deficit and sodium
	barLeast  float32 = 120 // the bars, beside deficit and sodium
	barPitch  float32 = 46
	barParts          = 5
)

func (r *groupChartRenderer) Layout(size fyne.Size) {
	c, p := r.c, look.PaletteNow()
	if len(c.bars) == 0 {
		return
	}
	most := 0.0
	for _, b := range c.bars {
		most = max(most, b.loss, b.drunk)
	}
	pitch := min(look.Scaled(barPitch), size.Height/float32(len(c.bars)))
	height, words := min(look.Scaled(barHeight), pitch/5), look.Scaled(barWords)
	more, wide := look.Scaled(barMore), size.Width >= look.Scaled(barLeast+barWords+barMore)+16
	room := max(0, size.Width-words-8)
	if wide {
		room -= more + 8
	}
	long := func(x float64) float32 {
		if most <= 0 || x <= 0 {
			return 0
		}
		return room * float32(x/most)
	}
	for i, b := range c.bars {
		y, line := float32(i)*pitch, look.Note.Height()
		place := func(part int, x, y, w float32, seen bool) {
			o := c.parts[barParts*i+part]
			look.ShowIf(o, seen)
			o.Move(fyne.NewPos(x, y))
			o.Resize(fyne.NewSize(w, line))
		}
		two := pitch >= line*2
		place(0, 0, y, room, true)
		place(1, room+8, y, words, two)
		place(2, room+8, y+line, words, two)
		place(3, room+words+16, y, more, two && wide)
		place(4, room+words+16, y+line, more, two && wide)
		loss, drunk := c.rects[2*i], c.rects[2*i+1]
		loss.FillColor, drunk.FillColor = p.Loss, p.Drink
		loss.Move(fyne.NewPos(0, y+line+1))
		loss.Resize(fyne.NewSize(long(b.loss), height))
		drunk.Move(fyne.NewPos(0, y+line+2+height))
		drunk.Resize(fyne.NewSize(long(b.drunk), height))
	}
}

func (r *groupChartRenderer) MinSize() fyne.Size {
	return fyne.NewSize(look.Scaled(220), look.Scaled(barPitch)*float32(max(1, len(r.c.bars))))
}

func (r *groupChartRenderer) Refresh() {
	r.Layout(r.c.Size())
	canvas.Refresh(r.c)
}

func (r *groupChartRenderer) Objects() []fyne.CanvasObject {
	list := append([]fyne.CanvasObject{}, r.c.parts...)
	for _, x := range r.c.rects {
		list = append(list, x)
	}
	return list
}

func (r *groupChartRenderer) Destroy() {}

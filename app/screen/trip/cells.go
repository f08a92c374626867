package trip

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// cells are the cells of one row of the travellers: name, range, basis, plan,
// deficit, carbohydrate. Where large text or a small window leaves no room for six,
// the basis stands under the name. A row of fewer cells spans: its last one takes
// what is left.
type cells struct {
	widget.BaseWidget
	parts []fyne.CanvasObject
	spans bool
}

var (
	_ look.Flowing = (*cells)(nil)
	_ look.Holder  = (*cells)(nil)
)

func newCells(spans bool, parts ...fyne.CanvasObject) *cells {
	c := &cells{parts: parts, spans: spans}
	c.ExtendBaseWidget(c)
	return c
}

// The columns: their shares with and without one of its own for the basis, the gap
// between them, and the width below which there is none.
const (
	cellGap float32 = 12
	sixFrom float32 = 880
	basisAt         = 2
)

func shares(width float32) []float32 {
	if width < look.Scaled(sixFrom) {
		return []float32{25, 24, 0, 21, 17, 15}
	}
	return []float32{19, 28, 17, 19, 11, 9}
}

// span is where a cell stands across.
type span struct{ x, width float32 }

// across places the cells in a width.
func (c *cells) across(width float32) []span {
	list := make([]span, len(c.parts))
	weights, columns, sum := shares(width), float32(0), float32(0)
	for _, w := range weights {
		if w > 0 {
			columns++
			sum += w
		}
	}
	room, x, at := width-cellGap*(columns-1), float32(0), 0
	for i := range list {
		if weights[at] == 0 && c.spans {
			at++
		}
		w := room * weights[at] / sum
		list[i] = span{x, w}
		if weights[at] > 0 {
			x += w + cellGap
		}
		at++
	}
	if last := len(list) - 1; c.spans {
		list[last].width = width - list[last].x
	}
	if !c.spans && weights[basisAt] == 0 {
		indent := look.Scaled(field.FoldIndent)
		list[basisAt] = span{list[0].x + indent, list[0].width - indent}
	}
	return list
}

// HeightFor returns the height at a width.
func (c *cells) HeightFor(width float32) float32 {
	high := float32(0)
	for i, s := range c.across(width) {
		high = max(high, c.top(i, width)+look.HeightFor(c.parts[i], s.width))
	}
	return high
}

// top is how far down a cell begins: the basis below the name where it has no
// column.
func (c *cells) top(i int, width float32) float32 {
	if c.spans || i != basisAt || shares(width)[basisAt] > 0 {
		return 0
	}
	return look.HeightFor(c.parts[0], c.across(width)[0].width)
}

// Parts returns the cells.
func (c *cells) Parts() []fyne.CanvasObject { return c.parts }

// tall is what is as high as its width makes it.
type tall interface {
	Size() fyne.Size
	HeightFor(width float32) float32
}

// leastOf is the least size of rows of cells: as high as they are at the width they
// have, or will have.
func leastOf(o tall) fyne.Size {
	width := o.Size().Width
	if width < 1 {
		width = look.Scaled(sixFrom)
	}
	return fyne.NewSize(look.Scaled(400), o.HeightFor(width))
}

// CreateRenderer places the cells.
func (c *cells) CreateRenderer() fyne.WidgetRenderer { return &cellsRenderer{c} }

type cellsRenderer struct{ c *cells }

func (r *cellsRenderer) Layout(size fyne.Size) {
	for i, s := range r.c.across(size.Width) {
		o := r.c.parts[i]
		o.Move(fyne.NewPos(s.x, r.c.top(i, size.Width)))
		o.Resize(fyne.NewSize(s.width, look.HeightFor(o, s.width)))
	}
}

func (r *cellsRenderer) MinSize() fyne.Size { return leastOf(r.c) }

func (r *cellsRenderer) Refresh() {
	r.Layout(r.c.Size())
	for _, o := range r.c.parts {
		o.Refresh()
	}
}

func (r *cellsRenderer) Objects() []fyne.CanvasObject { return r.c.parts }
func (r *cellsRenderer) Destroy()                     {}

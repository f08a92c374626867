package planner

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/look"
)

// pairs are words with fields beside them, in as many columns as have room, read
// row by row.
type pairs struct {
	widget.BaseWidget
	list []pairOf
}

// pairOf is one field with its words.
type pairOf struct {
	words *look.Label
	field fyne.CanvasObject
}

var (
	_ look.Flowing = (*pairs)(nil)
	_ look.Holder  = (*pairs)(nil)
)

// Sizes of pairs, in px at 100 % text.
const (
	pairWords float32 = 132
	pairWidth float32 = 430
	pairGapX  float32 = 28
	pairGapY  float32 = 8
)

func pair(words string, field fyne.CanvasObject) pairOf {
	return pairOf{words: look.NewLabel(words, look.Body, look.Ink2).Shorten(), field: field}
}

func newPairs(list ...pairOf) *pairs {
	p := &pairs{list: list}
	p.ExtendBaseWidget(p)
	return p
}

// Parts returns words and fields in reading order.
func (p *pairs) Parts() []fyne.CanvasObject {
	var list []fyne.CanvasObject
	for _, one := range p.list {
		list = append(list, one.words, one.field)
	}
	return list
}

// HeightFor returns the height at a width.
func (p *pairs) HeightFor(width float32) float32 {
	return p.arrange(width, func(pairOf, fyne.Position, float32) {})
}

// arrange places the visible pairs at a width and returns the height.
func (p *pairs) arrange(width float32, put func(one pairOf, at fyne.Position, column float32)) float32 {
	columns := max(1, int((width+pairGapX)/(look.Scaled(pairWidth)+pairGapX)))
	column := (width - pairGapX*float32(columns-1)) / float32(columns)
	y, high, n := float32(0), float32(0), 0
	for _, one := range p.list {
		if !one.field.Visible() {
			continue
		}
		if n == columns {
			y, high, n = y+high+pairGapY, 0, 0
		}
		put(one, fyne.NewPos(float32(n)*(column+pairGapX), y), column)
		high = max(high, look.HeightFor(one.field, column-look.Scaled(pairWords)))
		n++
	}
	return y + high
}

// CreateRenderer places words and fields.
func (p *pairs) CreateRenderer() fyne.WidgetRenderer { return &pairsRenderer{p} }

type pairsRenderer struct{ p *pairs }

// Layout sets the words on the baseline of their field.
func (r *pairsRenderer) Layout(size fyne.Size) {
	words := look.Scaled(pairWords)
	for _, one := range r.p.list {
		setVisible(one.words, one.field.Visible())
	}
	r.p.arrange(size.Width, func(one pairOf, at fyne.Position, column float32) {
		one.field.Move(at.AddXY(words, 0))
		one.field.Resize(fyne.NewSize(column-words, look.HeightFor(one.field, column-words)))
		top := at.Y
		if base, ok := look.BaselineOf(one.field); ok {
			top += base - one.words.Baseline()
		}
		one.words.Move(fyne.NewPos(at.X, top))
		one.words.Resize(fyne.NewSize(words-8, look.Body.Height()))
	})
}

func (r *pairsRenderer) MinSize() fyne.Size {
	width := look.Scaled(pairWidth)
	if w := r.p.Size().Width; w > 0 {
		return fyne.NewSize(width, r.p.HeightFor(w))
	}
	return fyne.NewSize(width, r.p.HeightFor(width))
}

func (r *pairsRenderer) Refresh() {
	r.Layout(r.p.Size())
	for _, o := range r.p.Parts() {
		o.Refresh()
	}
}

func (r *pairsRenderer) Objects() []fyne.CanvasObject { return r.p.Parts() }
func (r *pairsRenderer) Destroy()                     {}

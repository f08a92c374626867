package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Pair sets two objects side by side, or the second below the first where the
// window is narrow for the size of its text.
type Pair struct {
	widget.BaseWidget
	first, second fyne.CanvasObject
	// share of the width for the first; stack is the width in px at 100 % text
	// under which they stand one below the other.
	share, stack float32
	// Level gives both the height of the Pair.
	Level bool
}

var (
	_ Flowing = (*Pair)(nil)
	_ Holder  = (*Pair)(nil)
)

// NewPair makes a pair; share and stack as its fields say.
func NewPair(share, stack float32, first, second fyne.CanvasObject) *Pair {
	p := &Pair{first: first, second: second, share: share, stack: stack}
	p.ExtendBaseWidget(p)
	return p
}

// Parts returns the two.
func (p *Pair) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{p.first, p.second} }

// stacked reports whether they stand one below the other at a width.
func (p *Pair) stacked(width float32) bool { return width < Scaled(p.stack) }

// widths are those of the two, in whole px.
func (p *Pair) widths(width float32) (first, second float32) {
	if p.stacked(width) {
		return width, width
	}
	first = float32(int((width - SheetGap) * p.share))
	return first, max(0, width-SheetGap-first)
}

// HeightFor returns the height at a width.
func (p *Pair) HeightFor(width float32) float32 {
	w1, w2 := p.widths(width)
	h1, h2 := HeightFor(p.first, w1), HeightFor(p.second, w2)
	if p.stacked(width) {
		return h1 + SheetGap + h2
	}
	return max(h1, h2)
}

// CreateRenderer places the two.
func (p *Pair) CreateRenderer() fyne.WidgetRenderer { return &pairRenderer{p} }

type pairRenderer struct{ p *Pair }

func (r *pairRenderer) Layout(size fyne.Size) {
	p := r.p
	w1, w2 := p.widths(size.Width)
	h1, h2 := HeightFor(p.first, w1), HeightFor(p.second, w2)
	at := fyne.NewPos(w1+SheetGap, 0)
	switch {
	case p.stacked(size.Width):
		spare := max(0, size.Height-h1-h2-SheetGap)
		h1 += spare / 2
		h2 += spare - spare/2
		at = fyne.NewPos(0, h1+SheetGap)
	case p.Level:
		h1, h2 = size.Height, size.Height
	}
	p.first.Move(fyne.NewPos(0, 0))
	p.first.Resize(fyne.NewSize(w1, h1))
	p.second.Move(at)
	p.second.Resize(fyne.NewSize(w2, h2))
}

// MinSize is wide enough for the wider of the two alone.
func (r *pairRenderer) MinSize() fyne.Size {
	p := r.p
	width := max(p.first.MinSize().Width, p.second.MinSize().Width)
	if now := p.Size().Width; now > width {
		return fyne.NewSize(width, p.HeightFor(now))
	}
	return fyne.NewSize(width, p.HeightFor(width))
}

func (r *pairRenderer) Refresh() {
	r.Layout(r.p.Size())
	r.p.first.Refresh()
	r.p.second.Refresh()
}

func (r *pairRenderer) Objects() []fyne.CanvasObject { return r.p.Parts() }
func (r *pairRenderer) Destroy()                     {}

package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/figures"
)

// keysLayout sets the two figures side by side, as wide as each other, with what is
// small beside them; below them where they would be too narrow so; all below each other
// where even two have no room.
type keysLayout struct{ bars *figures.Bars }

const (
	keyGap    float32 = 20
	keyLeast  float32 = 160
	smallPart float32 = 0.27
	// pairLeast is the least width of a figure with nothing small beside it.
	pairLeast float32 = 148
)

// widths are that of a figure and of what is small; beside is whether the small stands
// beside the figures. The first is nothing where they stand below each other.
func (keysLayout) widths(width float32) (figure, small float32, beside bool) {
	small = width * smallPart
	figure = (width - small - 2*keyGap) / 2
	if figure >= look.Scaled(keyLeast) {
		return figure, small, true
	}
	if figure = (width - keyGap) / 2; figure >= look.Scaled(pairLeast) {
		return figure, width, false
	}
	return 0, width, false
}

func (l keysLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	figure, small, beside := l.widths(size.Width)
	put := func(o fyne.CanvasObject, x, y, width, height float32) {
		o.Move(fyne.NewPos(float32(int(x)), y))
		o.Resize(fyne.NewSize(float32(int(width)), height))
	}
	switch high := max(o[0].MinSize().Height, o[1].MinSize().Height); {
	case beside:
		put(o[0], 0, 0, figure, size.Height)
		put(o[1], figure+keyGap, 0, figure, size.Height)
		put(o[2], 2*(figure+keyGap), 0, small, size.Height)
	case figure > 0:
		put(o[0], 0, 0, figure, high)
		put(o[1], figure+keyGap, 0, figure, high)
		put(o[2], 0, high+l.gap(l.bars.Folded()), small, l.bars.SmallHeight(small, l.bars.Folded()))
	default:
		first, second := o[0].MinSize().Height, o[1].MinSize().Height
		put(o[0], 0, 0, small, first)
		put(o[1], 0, first+pageGap, small, second)
		put(o[2], 0, first+second+2*pageGap, small, l.bars.SmallHeight(small, l.bars.Folded()))
	}
}

// gap is between the figures and what is small below them.
func (keysLayout) gap(folded bool) float32 {
	if folded {
		return tightGap
	}
	return pageGap
}

// height is the height at a width, with what is small folded to a line where it does not
// stand beside the figures.
func (l keysLayout) height(o []fyne.CanvasObject, width float32, folded bool) float32 {
	figure, small, beside := l.widths(width)
	high := max(o[0].MinSize().Height, o[1].MinSize().Height)
	below := l.bars.SmallHeight(small, folded && !beside)
	switch {
	case beside:
		return max(high, below)
	case figure > 0:
		return high + l.gap(folded) + below
	}
	return o[0].MinSize().Height + o[1].MinSize().Height + 2*pageGap + below
}

// HeightFor is the height at a width, with nothing folded.
func (l keysLayout) HeightFor(o []fyne.CanvasObject, width float32) float32 {
	return l.height(o, width, false)
}

func (l keysLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Scaled(keyLeast), l.HeightFor(o, 1e6))
}

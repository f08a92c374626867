package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/mix"
)

// Sizes of the page, in px: those of the panels follow the text.
const (
	pageGap   float32 = 12
	tightGap  float32 = 6 // between the parts, where all can only be in sight so
	pageFoot  float32 = 8
	limitFoot float32 = 12
	leftLeast float32 = 352
	leftMost  float32 = 520
	leftShare float32 = 0.345
	// chartLeast is the least height of the picture of the deficit with its
	// heading and the sheet around it.
	chartLeast float32 = 246
	rightLeast float32 = 396
	// hairlineOver is by how much the page may be higher than the window by
	// rounding alone.
	hairlineOver float32 = 0.1
	// ringLeft is kept at the left for the focus border.
	ringLeft = mix.RingRoom
	// barGap is between the line of buttons and what stands below it.
	barGap float32 = 6
)

// pageLayout places the parts of a page.
type pageLayout struct{ p *page }

// places are where the parts stand at a width.
type places struct {
	strip, trouble, ask, keys, panels, bar, below float32 // heights
	picture                                       float32 // where the panels are stacked
	left, right                                   float32 // widths
	// line: the steps stand in one line each, so that all can be in sight.
	line bool
	// folded: what is small beside the figures stands in one line, for the same reason.
	folded bool
	// stacked: where large text leaves no room side by side, the panels stand
	// one below the other, with the figures that answer above the sliders.
	stacked bool
}

// gap is between the parts.
func (a places) gap() float32 {
	if a.line {
		return tightGap
	}
	return pageGap
}

// height of the whole page.
func (a places) height() float32 {
	foot := pageFoot
	if a.line {
		foot = pageFoot / 2
	}
	return a.gap() + a.strip + a.gap() + a.trouble + a.ask + a.panels + a.gap() + a.bar + barGap + a.below + foot
}

// at works the places out for a width and the height of the window: with as much room as
// there should be; where then not all is in sight, with the steps in one line and less
// room between, and then with sodium and drinking rate folded to a line; where that does
// not help either, as at first, and the page scrolls.
func (l *pageLayout) at(width, window float32) places {
	a, fits := l.sized(width, window, false, false)
	if fits || a.stacked {
		return a
	}
	for _, folded := range []bool{false, true} {
		if tight, fits := l.sized(width, window, true, folded); fits {
			return tight
		}
	}
	return a
}

// sized works the places out in one of the ways, and whether all is in sight then.
func (l *pageLayout) sized(width, window float32, line, folded bool) (a places, fits bool) {
	p := l.p
	a = places{strip: p.strip.height(width), line: line, folded: folded}
	if p.trouble.Visible() {
		a.trouble = p.trouble.HeightFor(width) + a.gap()
	}
	if p.ask.box.Visible() {
		a.ask = questionLayout{}.height(p.ask.box.Objects, width) + a.gap()
	}
	a.bar = barLayout{}.height(p.bar.Objects, width)
	if p.open {
		a.below = p.below.HeightFor(width)
	} else {
		a.below = p.cards.Height(line)
	}
	a.left = min(max(width*leftShare, look.Scaled(leftLeast)), look.Scaled(leftMost))
	a.left = float32(int(a.left))
	a.right = float32(int(width)) - a.left - pageGap
	if a.right < look.Scaled(rightLeast) {
		a.stacked, a.left, a.right = true, width, width
		a.keys = l.keysHeight(width, false) + pageGap
		a.picture = l.pictureHeight(width, false)
		a.panels = a.keys + p.mix.Natural(width) + pageGap + a.picture
		return a, false
	}
	a.keys = l.keysHeight(a.right, folded) + a.gap()
	around := a
	around.panels, around.below = 0, p.cards.Height(line)
	least, room := a.keys+l.pictureHeight(a.right, line), window-around.height()
	a.panels = max(room, least)
	return a, least <= room+hairlineOver
}

// pictureHeight is the least height of the sheet with the picture, or the least of all.
func (l *pageLayout) pictureHeight(width float32, tight bool) float32 {
	if tight {
		return l.p.deficit.Least(width, true)
	}
	return max(look.Scaled(chartLeast), l.p.deficit.Least(width, false))
}

// keysHeight is the height of the sheet with the figures.
func (l *pageLayout) keysHeight(width float32, folded bool) float32 {
	return keysLayout{l.p.bars}.height(l.p.figures.Objects, width-2*look.SheetPadX, folded) + 2*look.SheetPadY
}

func (l *pageLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	p, a := l.p, l.at(size.Width, l.p.scroll.Size().Height)
	if _, _, beside := (keysLayout{}).widths(a.right - 2*look.SheetPadX); !beside {
		p.bars.Fold(a.folded)
	} else {
		p.bars.Fold(false)
	}
	gap := a.gap()
	y := gap
	put := func(o fyne.CanvasObject, x, y, width, height float32) {
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(width, height))
	}
	put(p.strip.box, 0, y, size.Width, a.strip)
	y += a.strip + gap
	if a.trouble > 0 {
		put(p.trouble, 0, y, size.Width, a.trouble-gap)
		y += a.trouble
	}
	if a.ask > 0 {
		put(p.ask.box, 0, y, size.Width, a.ask-gap)
		y += a.ask
	}
	if a.stacked {
		mix := p.mix.Natural(size.Width)
		put(p.keys, 0, y, size.Width, a.keys-gap)
		put(p.mix.Box, 0, y+a.keys, size.Width, mix)
		put(p.deficit.Box, 0, y+a.keys+mix+pageGap, size.Width, a.picture)
	} else {
		x := a.left + pageGap
		put(p.mix.Box, 0, y, a.left, a.panels)
		put(p.keys, x, y, a.right, a.keys-gap)
		put(p.deficit.Box, x, y+a.keys, a.right, a.panels-a.keys)
	}
	y += a.panels + gap
	put(p.bar, 0, y, size.Width, a.bar)
	p.cards.InOneLine(a.line)
	put(p.cards.Row, 0, y+a.bar+barGap, size.Width, a.below)
	put(p.below, 0, y+a.bar+barGap, size.Width, a.below)
}

func (l *pageLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	width, window := l.p.scroll.Size().Width-ringLeft-look.BarRoom, l.p.scroll.Size().Height
	if width < 1 {
		return fyne.NewSize(look.Scaled(leftLeast), look.Scaled(chartLeast))
	}
	return fyne.NewSize(look.Scaled(leftLeast), l.at(width, window).height())
}

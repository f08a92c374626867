package planner

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/figures"
	"ebbwell/app/screen/planner/mix"
)

// Sizes of the page, in px: those of the panels follow the text.
const (
	pageGap   float32 = 12
	pageFoot  float32 = 20
	leftLeast float32 = 388
	leftMost  float32 = 520
	leftShare float32 = 0.37
	// chartLeast is the least height of the picture of the deficit with its
	// heading and the sheet around it.
	chartLeast float32 = 262
	rightLeast float32 = 396
	// barRoom is kept for the bar at the right while the page scrolls.
	barRoom float32 = 10
	// ringLeft is kept at the left for the focus border of the tabs.
	ringLeft = mix.RingRoom
	// hairlineOver is by how much the page may be higher than the window by
	// rounding alone.
	hairlineOver float32 = 0.1
)

// page lays the screen out and scrolls it where it is higher than the window.
// The two panels are always whole in sight together: where there are many
// sliders, they scroll within their panel.
type page struct {
	widget.BaseWidget
	pageParts
	content *fyne.Container
	scroll  *look.Scroll
}

// pageParts are what a page is made of.
type pageParts struct {
	strip   *fyne.Container
	trouble *look.Caution
	mix     *mix.Panel
	deficit *figures.Deficit
	bars    *figures.Bars
	tabs    *fyne.Container
	below   *look.Sheet
}

var _ look.Holder = (*page)(nil)

func newPage(parts pageParts) *page {
	q := &page{pageParts: parts}
	q.content = &fyne.Container{Layout: &pageLayout{q}, Objects: []fyne.CanvasObject{
		q.strip, q.trouble, q.deficit.Brief, q.mix.Box, q.deficit.Box, q.bars.Box, q.tabs, q.below,
	}}
	q.scroll = look.NewScroll(look.Pad(0, 0, 0, ringLeft, q.content))
	q.ExtendBaseWidget(q)
	return q
}

// Parts returns the scroll.
func (p *page) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{p.scroll} }

// Lay lays the page out anew, after something came or went.
func (p *page) Lay() { p.scroll.Refresh() }

// setBelow puts something else under the tabs.
func (p *page) setBelow(o fyne.CanvasObject) {
	p.below.SetContent(o)
	p.Lay()
}

// revealBelow scrolls as little as needed to show what stands below the tabs.
func (p *page) revealBelow() {
	foot := p.below.Position().Y + p.below.Size().Height
	if top := p.tabs.Position().Y; foot-top > p.scroll.Size().Height {
		foot = top + p.scroll.Size().Height - pageFoot
	}
	p.scroll.Reveal(p.tabs.Position().Y, foot)
}

// CreateRenderer fills the room with the scroll.
func (p *page) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(p.scroll) }

// pageLayout places the parts of a page.
type pageLayout struct{ p *page }

// places are where the parts stand at a width.
type places struct {
	strip, trouble, brief, panels, tabs, below float32 // heights
	left, right                                float32 // widths
	// stacked: where large text leaves no room side by side, the panels stand
	// one below the other, with the figure that answers above the sliders.
	stacked bool
}

// height of the whole page.
func (a places) height() float32 {
	return pageGap + a.strip + pageGap + a.trouble + a.panels + pageGap + a.tabs + a.below + pageFoot
}

// at works the places out for a width and the height of the window.
func (l *pageLayout) at(width, window float32) places {
	p := l.p
	a := places{strip: stripLayout{}.height(p.strip.Objects, width)}
	if p.trouble.Visible() {
		a.trouble = p.trouble.HeightFor(width) + pageGap
	}
	a.left = min(max(width*leftShare, look.Scaled(leftLeast)), look.Scaled(leftMost))
	a.right = width - a.left - pageGap
	bars := l.barsHeight(a.right)
	if a.right < look.Scaled(rightLeast) {
		a.stacked, a.left, a.right = true, width, width
		bars = l.barsHeight(width)
		a.brief = p.deficit.Brief.HeightFor(width) + pageGap
		a.panels = a.brief + p.mix.Natural(width) + pageGap + look.Scaled(chartLeast) + pageGap + bars
	} else {
		least := look.Scaled(chartLeast) + pageGap + bars
		most := max(window-a.strip-a.trouble-4*pageGap, least)
		a.panels = min(max(p.mix.Natural(a.left), least), most)
	}
	a.tabs = tabsLayout{}.height(p.tabs.Objects, width)
	above := pageGap + a.strip + pageGap + a.trouble + a.panels + pageGap + a.tabs
	a.below = max(p.below.HeightFor(width), window-above-pageFoot)
	return a
}

// barsHeight is the height of the sheet with the three bars.
func (l *pageLayout) barsHeight(width float32) float32 {
	row := l.p.bars.Row
	in, _ := row.Layout.(*figures.InRow)
	return in.Height(row.Objects, width-2*look.SheetPadX) + 2*look.SheetPadY
}

func (l *pageLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	window := l.p.scroll.Size().Height
	if size.Height > window+hairlineOver {
		size.Width -= barRoom
	}
	p, a := l.p, l.at(size.Width, window)
	y := pageGap
	put := func(o fyne.CanvasObject, x, y, width, height float32) {
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(width, height))
	}
	put(p.strip, 0, y, size.Width, a.strip)
	y += a.strip + pageGap
	if a.trouble > 0 {
		put(p.trouble, 0, y, size.Width, a.trouble-pageGap)
		y += a.trouble
	}
	bars := l.barsHeight(a.right)
	look.ShowIf(p.deficit.Brief, a.stacked)
	if a.stacked {
		mix := p.mix.Natural(size.Width)
		put(p.deficit.Brief, 0, y, size.Width, a.brief-pageGap)
		put(p.mix.Box, 0, y+a.brief, size.Width, mix)
		put(p.deficit.Box, 0, y+a.brief+mix+pageGap, size.Width, look.Scaled(chartLeast))
		put(p.bars.Box, 0, y+a.panels-bars, size.Width, bars)
	} else {
		x := a.left + pageGap
		put(p.mix.Box, 0, y, a.left, a.panels)
		put(p.deficit.Box, x, y, a.right, a.panels-pageGap-bars)
		put(p.bars.Box, x, y+a.panels-bars, a.right, bars)
	}
	y += a.panels + pageGap
	put(p.tabs, 0, y, size.Width, a.tabs)
	put(p.below, 0, y+a.tabs, size.Width, a.below)
}

func (l *pageLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	width, window := l.p.scroll.Size().Width-ringLeft, l.p.scroll.Size().Height
	if width < 1 {
		return fyne.NewSize(look.Scaled(leftLeast), look.Scaled(chartLeast))
	}
	a := l.at(width, window)
	if a.height() > window+hairlineOver {
		a = l.at(width-barRoom, window)
	}
	return fyne.NewSize(look.Scaled(leftLeast), a.height())
}

// tabsLayout sets the tabs at the left and the buttons at the right of one line,
// or below it where both have no room.
type tabsLayout struct{}

func (tabsLayout) wraps(o []fyne.CanvasObject, width float32) bool {
	return o[0].MinSize().Width+stripGap+o[1].MinSize().Width > width
}

func (l tabsLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	tabs, buttons := o[0].MinSize(), o[1].MinSize()
	o[0].Resize(fyne.NewSize(min(tabs.Width, size.Width), tabs.Height))
	o[1].Resize(fyne.NewSize(buttons.Width, buttons.Height))
	if l.wraps(o, size.Width) {
		o[1].Move(fyne.NewPos(0, 0))
		o[0].Move(fyne.NewPos(0, buttons.Height+4))
		return
	}
	o[0].Move(fyne.NewPos(0, size.Height-tabs.Height))
	o[1].Move(fyne.NewPos(size.Width-buttons.Width, 0))
}

func (l tabsLayout) height(o []fyne.CanvasObject, width float32) float32 {
	tabs, buttons := o[0].MinSize(), o[1].MinSize()
	if l.wraps(o, width) {
		return buttons.Height + 4 + tabs.Height
	}
	return max(tabs.Height, buttons.Height+8)
}

func (l tabsLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(o[0].MinSize().Width, l.height(o, 1e6))
}

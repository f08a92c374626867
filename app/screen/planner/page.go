package planner

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/figures"
	"ebbwell/app/screen/planner/mix"
	"ebbwell/app/screen/planner/steps"
)

// page lays the screen out: the mix at the left; what it comes to and when at the
// right; where it leads below. The limit stands at the foot of the window, always
// in sight. What stands behind a button opens in the place of the steps, and the
// page scrolls where it is higher than the window.
type page struct {
	widget.BaseWidget
	pageParts
	// keys is the sheet of the figures.
	keys    *look.Sheet
	figures *fyne.Container
	content *fyne.Container
	scroll  *look.Scroll
	// open is true while something stands in the place of the steps.
	open bool
}

// pageParts are what a page is made of.
type pageParts struct {
	strip   *strip
	trouble *look.Caution
	// ask is what has to be answered about the breaks.
	ask     *question
	mix     *mix.Panel
	deficit *figures.Deficit
	bars    *figures.Bars
	// bar is the line of buttons above the steps.
	bar   *fyne.Container
	cards *steps.Cards
	below *look.Sheet
	limit *look.Caution
}

var _ look.Holder = (*page)(nil)

func newPage(parts pageParts) *page {
	q := &page{pageParts: parts}
	q.figures = &fyne.Container{Layout: keysLayout{q.bars}, Objects: []fyne.CanvasObject{q.deficit.Key, q.bars.Key, q.bars.Small}}
	q.keys = look.NewSheet(q.figures)
	q.content = &fyne.Container{Layout: &pageLayout{q}, Objects: []fyne.CanvasObject{
		q.strip.box, q.trouble, q.ask.box, q.mix.Box, q.keys, q.deficit.Box, q.bar, q.cards.Row, q.below,
	}}
	look.ShowIf(q.below, false)
	q.scroll = look.PageScroll(look.Pad(0, 0, 0, ringLeft, q.content))
	q.ExtendBaseWidget(q)
	return q
}

// Parts returns the scroll, and the limit below it.
func (p *page) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{p.scroll, p.limit} }

// Lay lays the page out anew, after something came or went.
func (p *page) Lay() { p.scroll.Refresh() }

// setBelow puts something in the place of the steps; nil brings them back.
func (p *page) setBelow(o fyne.CanvasObject) {
	p.open = o != nil
	look.ShowIf(p.below, p.open)
	look.ShowIf(p.cards.Row, !p.open)
	if p.open {
		p.below.SetContent(o)
	}
	p.Lay()
}

// revealBelow scrolls as little as needed to show what stands below.
func (p *page) revealBelow() {
	foot := p.below.Position().Y + p.below.Size().Height
	top := p.bar.Position().Y - pageFoot
	if foot-top > p.scroll.Size().Height {
		foot = top + p.scroll.Size().Height - 2*pageFoot // its margin counts twice
	}
	p.scroll.Reveal(top, foot)
}

// CreateRenderer fills the room with the scroll, and the foot with the limit.
func (p *page) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(&fyne.Container{Layout: footLayout{}, Objects: []fyne.CanvasObject{p.scroll, p.limit}})
}

// footLayout gives the second object its height at the foot, and the first the
// rest.
type footLayout struct{}

func (footLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	foot := float32(0)
	if o[1].Visible() {
		wide := float32(int(size.Width - ringLeft - look.BarRoom))
		foot = look.HeightFor(o[1], wide)
		o[1].Move(fyne.NewPos(ringLeft, size.Height-foot-limitFoot))
		o[1].Resize(fyne.NewSize(wide, foot))
		foot += limitFoot
	}
	o[0].Move(fyne.Position{})
	o[0].Resize(fyne.NewSize(size.Width, max(size.Height-foot, 0)))
}

func (footLayout) MinSize(o []fyne.CanvasObject) fyne.Size { return o[0].MinSize() }

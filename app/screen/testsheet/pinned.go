package testsheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// pinned keeps a head in sight above what scrolls. Where the head needs more
// than most of the height it scrolls by itself.
type pinned struct {
	widget.BaseWidget
	head, rest         fyne.CanvasObject
	headScroll, scroll *look.Scroll
}

var _ look.Holder = (*pinned)(nil)

// pinnedShare is the most of the height that the head takes, pinnedGap the room
// below it in px.
const (
	pinnedShare float32 = 0.7
	pinnedGap   float32 = 10
)

func newPinned(head, rest fyne.CanvasObject) *pinned {
	p := &pinned{head: besideBar(head), rest: besideBar(rest)}
	p.headScroll, p.scroll = look.NewScroll(p.head), look.NewScroll(p.rest)
	p.ExtendBaseWidget(p)
	return p
}

// Parts returns both.
func (p *pinned) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{p.headScroll, p.scroll} }

// CreateRenderer places both.
func (p *pinned) CreateRenderer() fyne.WidgetRenderer { return &pinnedRenderer{p} }

type pinnedRenderer struct{ p *pinned }

// headHeight is what the head gets: all it needs where all fits, else its share.
func (r *pinnedRenderer) headHeight(size fyne.Size) float32 {
	head := look.HeightFor(r.p.head, size.Width)
	if head+pinnedGap+look.HeightFor(r.p.rest, size.Width) <= size.Height {
		return head
	}
	return min(head, float32(int(size.Height*pinnedShare)))
}

func (r *pinnedRenderer) Layout(size fyne.Size) {
	head := r.headHeight(size)
	r.p.headScroll.Move(fyne.Position{})
	r.p.headScroll.Resize(fyne.NewSize(size.Width, head))
	r.p.scroll.Move(fyne.NewPos(0, head+pinnedGap))
	r.p.scroll.Resize(fyne.NewSize(size.Width, max(size.Height-head-pinnedGap, 0)))
}

func (r *pinnedRenderer) MinSize() fyne.Size { return fyne.NewSize(120, 60) }

func (r *pinnedRenderer) Refresh() {
	r.Layout(r.p.Size())
	r.p.head.Refresh()
	r.p.rest.Refresh()
	for _, o := range r.p.Parts() {
		o.Refresh()
	}
}

func (r *pinnedRenderer) Objects() []fyne.CanvasObject { return r.p.Parts() }
func (r *pinnedRenderer) Destroy()                     {}

package look

import (
	"runtime"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Scroll lets content be higher than the room there is. Content is laid out
// to the width of the scroll, so text in it wraps.
type Scroll struct {
	widget.BaseWidget
	inner *wheelScroll
}

var _ Holder = (*Scroll)(nil)

// NewScroll makes a scroll around content.
func NewScroll(content fyne.CanvasObject) *Scroll {
	s := &Scroll{inner: newWheelScroll(content)}
	s.ExtendBaseWidget(s)
	return s
}

// Scrolled scrolls by the wheel.
func (s *Scroll) Scrolled(e *fyne.ScrollEvent) { s.inner.Scrolled(e) }

// wheelScroll is the toolkit's scroll with the step of the wheel that other
// programs have.
type wheelScroll struct{ container.Scroll }

func newWheelScroll(content fyne.CanvasObject) *wheelScroll {
	s := &wheelScroll{}
	s.Content, s.Direction = content, container.ScrollVerticalOnly
	s.ExtendBaseWidget(s)
	return s
}

// Scrolled goes as far as other programs do.
func (s *wheelScroll) Scrolled(e *fyne.ScrollEvent) { s.Scroll.Scrolled(WheelStep(e)) }

// WheelStep is a turn of the wheel as far as other programs go: three lines of text
// for a notch, where the toolkit goes 25 px. On macOS the system itself scales what a
// wheel or a hand on the pad sends.
func WheelStep(e *fyne.ScrollEvent) *fyne.ScrollEvent {
	if runtime.GOOS == "darwin" {
		return e
	}
	const toolkitNotch = 25
	step := *e
	step.Scrolled.DY *= 3 * Body.Height() / toolkitNotch
	return &step
}

// Parts returns the content.
func (s *Scroll) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{s.inner.Content} }

// SetContent scrolls something else, from its top.
func (s *Scroll) SetContent(content fyne.CanvasObject) {
	s.inner.Content = content
	s.inner.ScrollToTop()
	s.Refresh()
}

// OnScrolled is told when the content has been scrolled.
func (s *Scroll) OnScrolled(f func()) { s.inner.OnScrolled = func(fyne.Position) { f() } }

// Offset returns how far down the content is scrolled, in px.
func (s *Scroll) Offset() float32 { return s.inner.Offset.Y }

// ScrollTo moves the content so that it starts at an offset, in px.
func (s *Scroll) ScrollTo(y float32) {
	s.inner.ScrollToOffset(fyne.NewPos(0, y))
}

// Reveal scrolls as little as needed to show what lies between top and bottom
// of the content, in px, with a little room around it.
func (s *Scroll) Reveal(top, bottom float32) {
	const room = 12
	switch at, height := s.Offset(), s.Size().Height; {
	case top-room < at:
		s.ScrollTo(max(top-room, 0))
	case bottom+room > at+height:
		s.ScrollTo(min(bottom+room-height, max(s.inner.Content.Size().Height-height, 0)))
	}
}

// CreateRenderer draws the scroll.
func (s *Scroll) CreateRenderer() fyne.WidgetRenderer { return &scrollRenderer{s} }

type scrollRenderer struct{ s *Scroll }

// Layout goes twice: the height of wrapped text is known only after the first.
func (r *scrollRenderer) Layout(size fyne.Size) {
	r.s.inner.Resize(size)
	r.s.inner.Refresh()
}

func (r *scrollRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.s.inner.Content.MinSize().Width, Scaled(80))
}

func (r *scrollRenderer) Refresh() {
	r.s.inner.Refresh()
	r.s.inner.Refresh()
}

func (r *scrollRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.s.inner} }
func (r *scrollRenderer) Destroy()                     {}

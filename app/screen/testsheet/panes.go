package testsheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// Sizes of the two panes, in px: what the left and the right one need at
// least (these follow the text), what around them does not, and the gap.
const (
	leftLeast  float32 = 456
	leftAround float32 = 112
	rightLeast float32 = 230
	rightUsual float32 = 300
	paneGap    float32 = 14
	// lowerShare of the height goes to the second pane when it stands below.
	lowerShare float32 = 0.40
)

// barRoom keeps content clear of the scroll bar, in px.
const barRoom float32 = 12

// besideBar keeps content clear of the bar of the scroll around it.
func besideBar(o fyne.CanvasObject) fyne.CanvasObject { return look.Pad(0, barRoom, 0, 0, o) }

// panes are what is filled in and, always in sight, what it comes to: side by
// side, or one below the other where large text leaves no room for both.
type panes struct {
	widget.BaseWidget
	main, side fyne.CanvasObject
}

var _ look.Holder = (*panes)(nil)

func newPanes(main, side fyne.CanvasObject) *panes {
	p := &panes{main: main, side: side}
	p.ExtendBaseWidget(p)
	return p
}

// Parts returns both.
func (p *panes) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{p.main, p.side} }

// sideWidth is the width of the right pane, zero when it stands below.
func sideWidth(width float32) float32 {
	least := look.Scaled(rightLeast)
	if width < look.Scaled(leftLeast)+leftAround+paneGap+least {
		return 0
	}
	spare := width - look.Scaled(leftLeast) - leftAround - paneGap
	return max(least, min(spare, max(look.Scaled(rightUsual), width*0.29)))
}

// CreateRenderer places both panes.
func (p *panes) CreateRenderer() fyne.WidgetRenderer { return &panesRenderer{p} }

type panesRenderer struct{ p *panes }

func (r *panesRenderer) Layout(size fyne.Size) {
	p := r.p
	p.main.Move(fyne.Position{})
	if side := sideWidth(size.Width); side > 0 {
		p.main.Resize(fyne.NewSize(size.Width-paneGap-side, size.Height))
		p.side.Move(fyne.NewPos(size.Width-side, 0))
		p.side.Resize(fyne.NewSize(side, size.Height))
		return
	}
	lower := float32(int(size.Height * lowerShare))
	p.main.Resize(fyne.NewSize(size.Width, size.Height-lower-paneGap))
	p.side.Move(fyne.NewPos(0, size.Height-lower))
	p.side.Resize(fyne.NewSize(size.Width, lower))
}

func (r *panesRenderer) MinSize() fyne.Size { return fyne.NewSize(200, 120) }

func (r *panesRenderer) Refresh() {
	r.Layout(r.p.Size())
	r.p.main.Refresh()
	r.p.side.Refresh()
}

func (r *panesRenderer) Objects() []fyne.CanvasObject { return r.p.Parts() }
func (r *panesRenderer) Destroy()                     {}

// twoUp sets two objects side by side where there is room, else one below the
// other with a hairline between.
type twoUp struct {
	widget.BaseWidget
	first, second fyne.CanvasObject
	rule          fyne.CanvasObject
}

// twoUpColumn is the least width of a column in px at 100 % text, twoUpGap what
// lies between the two.
const (
	twoUpColumn float32 = 250
	twoUpGap    float32 = 28
)

var (
	_ look.Flowing = (*twoUp)(nil)
	_ look.Holder  = (*twoUp)(nil)
)

func newTwoUp(first, second fyne.CanvasObject) *twoUp {
	t := &twoUp{first: first, second: second, rule: look.NewRule()}
	t.ExtendBaseWidget(t)
	return t
}

// Parts returns both.
func (t *twoUp) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{t.first, t.rule, t.second} }

// column is the width of each where both stand side by side, else zero.
func (t *twoUp) column(width float32) float32 {
	if half := (width - twoUpGap) / 2; half >= look.Scaled(twoUpColumn) {
		return half
	}
	return 0
}

// HeightFor returns the height at a width.
func (t *twoUp) HeightFor(width float32) float32 {
	if w := t.column(width); w > 0 {
		return max(look.HeightFor(t.first, w), look.HeightFor(t.second, w))
	}
	return look.HeightFor(t.first, width) + 21 + look.HeightFor(t.second, width)
}

// CreateRenderer places both.
func (t *twoUp) CreateRenderer() fyne.WidgetRenderer { return &twoUpRenderer{t} }

type twoUpRenderer struct{ t *twoUp }

func (r *twoUpRenderer) Layout(size fyne.Size) {
	t := r.t
	place := func(o fyne.CanvasObject, x, y, width float32) {
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(width, look.HeightFor(o, width)))
	}
	w := t.column(size.Width)
	look.ShowIf(t.rule, w == 0)
	if w > 0 {
		place(t.first, 0, 0, w)
		place(t.second, w+twoUpGap, 0, w)
		return
	}
	y := look.HeightFor(t.first, size.Width)
	place(t.first, 0, 0, size.Width)
	place(t.rule, 0, y+10, size.Width)
	place(t.second, 0, y+21, size.Width)
}

func (r *twoUpRenderer) MinSize() fyne.Size {
	width := max(r.t.Size().Width, look.Scaled(200))
	return fyne.NewSize(look.Scaled(200), r.t.HeightFor(width))
}

func (r *twoUpRenderer) Refresh() {
	r.Layout(r.t.Size())
	for _, o := range r.t.Parts() {
		o.Refresh()
	}
}

func (r *twoUpRenderer) Objects() []fyne.CanvasObject { return r.t.Parts() }
func (r *twoUpRenderer) Destroy()                     {}

// stage holds the panes of each part; they are made once.
type stage struct {
	widget.BaseWidget
	made map[string]*panes
	now  *panes
	// height of the part as it was laid out last.
	height float32
}

func newStage() *stage {
	s := &stage{made: map[string]*panes{}}
	s.ExtendBaseWidget(s)
	return s
}

// set shows a part, with the panes given where it was never shown.
func (s *stage) set(part string, main func() fyne.CanvasObject, side fyne.CanvasObject) {
	if s.made[part] == nil {
		s.made[part] = newPanes(main(), side)
	}
	s.now, s.height = s.made[part], 0
	s.Refresh()
}

// follow lays the part out anew when lines came or went in it: a keystroke
// that changes no line leaves it alone.
func (s *stage) follow(body fyne.CanvasObject) {
	if s.now == nil || body == nil {
		return
	}
	width := s.now.main.Size().Width
	if h := look.HeightFor(body, width); h != s.height {
		s.height = h
		body.Refresh() // the scroll around it does so only when the height grows
		s.now.main.Refresh()
	}
}

// Parts returns the panes in sight.
func (s *stage) Parts() []fyne.CanvasObject {
	if s.now == nil {
		return nil
	}
	return []fyne.CanvasObject{s.now}
}

// CreateRenderer fills the room with the panes.
func (s *stage) CreateRenderer() fyne.WidgetRenderer { return &stageRenderer{s} }

type stageRenderer struct{ s *stage }

func (r *stageRenderer) Layout(size fyne.Size) {
	for _, o := range r.s.Parts() {
		o.Resize(size)
	}
}

func (r *stageRenderer) MinSize() fyne.Size { return fyne.NewSize(200, 120) }

func (r *stageRenderer) Refresh() {
	r.Layout(r.s.Size())
	for _, o := range r.s.Parts() {
		o.Refresh()
	}
}

func (r *stageRenderer) Objects() []fyne.CanvasObject { return r.s.Parts() }
func (r *stageRenderer) Destroy()                     {}

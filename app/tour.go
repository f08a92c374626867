package app

import (
	"context"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/tour"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// guide is the tour of the invented practice in this window.
type guide struct {
	program *Program
	state   tour.State
	panel   *tour.Panel
	ring    *ring
	// name is that of the athlete who is proposed.
	name string
	// at is what the window showed last.
	at tour.Seen
	// stop ends the look at where the control stands.
	stop func()
}

// ringLooks is how often the ring looks where its control stands: a list may have been
// scrolled meanwhile.
const ringLooks = 300 * time.Millisecond

// newGuide makes a tour that is not offered yet.
func newGuide(p *Program) *guide {
	g := &guide{program: p, ring: newRing(), stop: func() {}}
	g.panel = tour.NewPanel(p.desk.Host, g.goOn, g.end)
	return g
}

// offer offers the tour on the invented practice.
func (g *guide) offer() {
	if !g.program.desk.Practice().Settings.Invented {
		return
	}
	g.program.desk.Tour = g.again
	if g.propose() {
		g.state = tour.Offer(g.state.Athlete)
		g.show()
	}
}

// goOnFrom goes on with the tour as it stood in the window before.
func (g *guide) goOnFrom(before *guide) {
	g.state, g.name = before.state, before.name
	if before.program.desk.Tour != nil {
		g.program.desk.Tour = g.again
	}
	g.panel.Show(g.state, g.name)
}

// propose finds the athlete the tour begins with: one whose closed test has a plan that
// is not agreed yet and of whom nothing has to be known first.
func (g *guide) propose() bool {
	ctx, s := context.Background(), g.program.desk.Store
	list, err := s.Athletes(ctx)
	if err != nil {
		g.program.desk.Trouble(err)
		return false
	}
	for _, a := range list {
		if a.LastTest.State != record.TestClosed {
			continue
		}
		plans, err := s.Plans(ctx, a.ID)
		if err != nil || len(plans) == 0 || plans[0].State != record.PlanDraft || consult.ToTakeAlong(plans) != nil {
			continue
		}
		if _, alerts, err := g.program.desk.Alerts(ctx, a.ID); err == nil && len(alerts) == 0 {
			g.state.Athlete, g.name = a.ID, a.Name
			return true
		}
	}
	return false
}

// again begins the tour at the list of athletes.
func (g *guide) again() {
	if g.propose() {
		g.state = g.state.Begin()
	}
	g.program.Open(desk.Place{Screen: desk.Athletes})
}

// goOn begins a tour that is offered, and leaves the present step of one that goes on
// out.
func (g *guide) goOn() {
	p := g.program
	if g.state.Stage == tour.Offered {
		g.state = g.state.Begin()
		p.Open(desk.Place{Screen: desk.Athletes})
		return
	}
	next, place, opens := g.state.Skip()
	g.state = next
	if opens {
		p.Open(place)
	}
	g.show()
}

// end closes the tour.
func (g *guide) end() {
	g.state = g.state.End()
	g.show()
}

// close ends a tour that is in sight; false when none is.
func (g *guide) close() bool {
	if g.state.Stage == tour.Off {
		return false
	}
	g.end()
	return true
}

// handedOut tells the tour that a page was saved or printed.
func (g *guide) handedOut() {
	g.state = g.state.HandedOut()
	g.show()
}

// follow goes on with what the person did.
func (g *guide) follow() {
	if g.state.Stage != tour.Going || g.program.view == nil {
		return
	}
	g.at = g.seen()
	g.state = g.state.Follow(g.at)
	g.show()
}

// seen is what the window shows.
func (g *guide) seen() tour.Seen {
	p := g.program
	at := tour.Seen{Place: placeOf(p.view, p.place), Athlete: p.view.Head().Athlete}
	if at.Athlete != "" && g.state.Step <= tour.Agree && (at.Place.Screen == desk.Plan || at.Place.Screen == desk.Handout) {
		plans, err := p.desk.Store.Plans(context.Background(), at.Athlete)
		at.Agreed = err == nil && consult.ToTakeAlong(plans) != nil
	}
	return at
}

// show shows the panel and the ring.
func (g *guide) show() {
	g.panel.Show(g.state, g.name)
	if box := g.program.frame.railBox; box != nil {
		box.Refresh()
	}
	g.point()
}

// point sets the ring round the control to use next, and looks again after a while.
func (g *guide) point() {
	g.stop()
	g.stop = func() {}
	if g.state.Stage != tour.Going || g.program.view == nil {
		g.ring.away()
		return
	}
	row := ""
	if v, ok := g.program.view.(interface{ RowOf(record.ID) string }); ok {
		row = v.RowOf(g.state.Athlete)
	}
	g.ring.round(g.program.frame.main, g.state.Aim(g.at, row))
	g.stop = g.program.desk.Later(ringLooks, g.point)
}

// ring is drawn round a control and takes no clicks.
type ring struct {
	line *canvas.Rectangle
	at   field.Spot
	box  *fyne.Container
}

// ringGap is the room between a control and the ring, ringWidth the ring's line, in px.
const (
	ringGap   float32 = 3
	ringWidth float32 = 3
)

func newRing() *ring {
	r := &ring{line: canvas.NewRectangle(nil)}
	r.line.StrokeWidth, r.line.CornerRadius = ringWidth, look.ControlRadius+ringGap
	r.line.Hide()
	r.box = &fyne.Container{Layout: unlaid{}, Objects: []fyne.CanvasObject{r.line}}
	return r
}

// away hides the ring.
func (r *ring) away() {
	r.at = field.Spot{}
	r.line.Hide()
}

// round sets the ring round the control with a name, or the table that holds a row
// which is out of sight; no ring where there is neither.
func (r *ring) round(root fyne.CanvasObject, name string) {
	table := name[:max(strings.LastIndex(name, "."), 0)]
	var at, whole field.Spot
	for _, s := range field.Names(root) {
		switch {
		case name == "":
		case s.Name == name:
			at = s
		case s.Name == table && strings.HasSuffix(table, "table"):
			whole = s
		}
	}
	if at.Name == "" {
		at = whole
	}
	if at.Name == "" || at.Disabled {
		r.away()
		return
	}
	if at.Pos == r.at.Pos && at.Size == r.at.Size && r.line.Visible() {
		return
	}
	r.at = at
	r.line.FillColor, r.line.StrokeColor = look.PaletteNow().Ink, look.PaletteNow().Ink
	r.line.FillColor = nil
	r.line.Move(at.Pos.SubtractXY(ringGap, ringGap))
	r.line.Resize(at.Size.AddWidthHeight(2*ringGap, 2*ringGap))
	r.line.Show()
	r.line.Refresh()
}

// unlaid leaves what it holds where it is.
type unlaid struct{}

func (unlaid) Layout([]fyne.CanvasObject, fyne.Size) {}

func (unlaid) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.Size{} }

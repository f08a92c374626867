package app

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/apptest/inspect"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/tour"
)

// pointed is the control the ring of the tour stands round.
func (h hands) pointed() string {
	h.t.Helper()
	r := h.program().guide.ring
	if !r.line.Visible() {
		return ""
	}
	return r.at.Name
}

// The tour ends with an open page: whoever clicks the control it points at, and says
// yes, gets there in at most 20 actions.
func TestTour(t *testing.T) {
	c := counted(t, true)
	if !apptest.Has(c.w, "tour.on") || c.pointed() != "" {
		t.Fatalf("nothing is offered, or pointed at already (%s)", c.pointed())
	}
	c.click("tour.on")
	file := filepath.Join(t.TempDir(), "page.pdf")
	var way []string
	for c.program().guide.state.Stage == tour.Going && *c.actions < 30 {
		at := c.pointed()
		way = append(way, at)
		switch {
		case at == "" && c.program().guide.state.Step == tour.Page:
			c.click("tour.on")
		case at == "planner.agree":
			c.click(at, "planner.agreement.yes")
		case at == "handoutview.save":
			c.save(file)
		case at == "":
			t.Fatalf("nothing is pointed at on step %d: %v", c.program().guide.state.Step, way)
		default:
			c.click(at)
		}
	}
	t.Logf("%d actions: %v", *c.actions, way)
	if c.program().guide.state.Stage != tour.Done || *c.actions > 20 {
		t.Errorf("%d actions, at %+v", *c.actions, c.program().guide.state)
	}
	if info, err := os.Stat(file); err != nil || info.Size() == 0 {
		t.Errorf("no page: %v", err)
	}
	if c.click("tour.end"); apptest.Has(c.w, "tour.end") {
		t.Error("the panel stays after the end")
	}
}

// Every step can be skipped, and Escape ends the tour at each; it begins again from the
// practice and from the list of keys.
func TestTourIsSkipped(t *testing.T) {
	h := counted(t, true).hands
	h.click("tour.on")
	for step := range tour.Steps {
		g := h.program().guide
		if int(g.state.Step) != step {
			t.Fatalf("at step %d, not %d", g.state.Step, step)
		}
		before := g.state
		h.w.Canvas().Unfocus()
		h.w.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
		if apptest.Has(h.w, "tour.end") || h.pointed() != "" {
			t.Errorf("Escape leaves step %d on the screen", step)
		}
		g.state = before
		g.show()
		h.click("tour.on")
	}
	if apptest.Has(h.w, "tour.on") {
		t.Error("the tour goes on after its last step")
	}
	h.program().Open(desk.Place{Screen: desk.Practice, Part: "about"})
	h.click("practice.about.tour")
	if h.program().Place().Screen != desk.Athletes || h.pointed() == "" {
		t.Errorf("begun again at %+v, pointing at %q", h.program().Place(), h.pointed())
	}
}

// Whoever wanders off is shown the way back; a plan that is agreed already is not
// agreed again.
func TestTourFollows(t *testing.T) {
	h := counted(t, true).hands
	h.click("tour.on", "frame.rail.trips")
	if h.pointed() != "frame.rail.athletes" {
		t.Errorf("on the trips it points at %q", h.pointed())
	}
	h.program().Open(desk.Place{Screen: desk.Plan, Athlete: apptest.AthleteNamed(t, h.program().Desk(), "Ravka").ID})
	if at := h.program().guide.state.Step; at != tour.Page || h.pointed() != "frame.tabs.handout" {
		t.Errorf("with an agreed plan it is at step %d and points at %q", at, h.pointed())
	}
}

// One's own practice has no tour.
func TestNoTourOfOnesOwn(t *testing.T) {
	h := counted(t, false).hands
	begin(t, h.w)
	h.program().Open(desk.Place{Screen: desk.Practice, Part: "about"})
	if apptest.Has(h.w, "tour.on") || apptest.Has(h.w, "practice.about.tour") {
		t.Error("the tour is offered beside real athletes")
	}
}

// No step cuts a text or covers one, in any size of window and text; the ring stands
// round its control.
func TestTourLayout(t *testing.T) { //nolint:gocognit // loops over states, sizes and windows
	h := counted(t, true).hands
	g := h.program().guide
	for _, percent := range []int{100, 125, 150} {
		h.s.app.Settings().SetTheme(look.NewTheme(percent == 125, percent).Still())
		for _, size := range []fyne.Size{{Width: 1180, Height: 760}, {Width: 1366, Height: 768}} {
			h.w.Resize(size)
			for step := -1; step <= tour.Steps; step++ {
				g.again()
				switch {
				case step < 0:
					g.state = tour.Offer(g.state.Athlete)
				case step == tour.Steps:
					g.state = g.state.HandedOut()
				default:
					for range step {
						g.goOn()
					}
				}
				g.show()
				for range 3 {
					h.w.Content().Refresh()
				}
				for _, f := range inspect.Canvas(h.w.Canvas()) {
					if strings.Contains(f.Of, "tour.") || strings.Contains(f.What, h.say("tour.skip")) || f.Kind == inspect.Outside {
						t.Errorf("step %d at %v, %d %%: %v", step, size, percent, f)
					}
				}
				room, box := g.program.frame.railBox.Size().Height, g.panel.Box()
				if foot := h.program().frame.saved; foot.Position().Y+foot.Size().Height > room || g.program.frame.railBox.MinSize().Height > room {
					t.Errorf("step %d at %v, %d %%: the rail needs %v of %v px (panel %v)", step, size, percent, g.program.frame.railBox.MinSize().Height, room, box.Size())
				}
			}
		}
	}
}

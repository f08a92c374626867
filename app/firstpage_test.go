package app

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/keep/clock"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// counting does by the names of controls what a person does, and counts: one click,
// one key outside a field and one field that is filled are one action each.
type counting struct {
	hands
	actions *int
}

func (c counting) click(names ...string) {
	c.t.Helper()
	*c.actions += len(names)
	c.hands.click(names...)
}

func (c counting) fill(pairs ...string) {
	c.t.Helper()
	*c.actions += len(pairs) / 2
	c.hands.fill(pairs...)
}

func (c counting) press(name string, keys ...fyne.KeyName) {
	c.t.Helper()
	*c.actions += len(keys)
	c.hands.press(name, keys...)
}

func (c counting) pick(pairs ...string) {
	c.t.Helper()
	*c.actions += len(pairs) / 2
	c.hands.pick(pairs...)
}

// page agrees the plan that is shown and saves the athlete's page.
func (c counting) page(file string) {
	c.t.Helper()
	c.click("planner.agree")
	if !apptest.Has(c.w, "planner.agreement.yes") {
		c.t.Fatalf("no agreement: %s", inSight(c.w.Canvas().Overlays().Top()))
	}
	c.click("planner.agreement.yes")
	if at := c.program().Place(); at.Screen != desk.Handout {
		c.t.Fatalf("after the agreement at %+v: %s", at, said(c.w.Content()))
	}
	c.save(file)
}

// save saves the page that is shown.
func (c counting) save(file string) {
	c.t.Helper()
	c.click("handoutview.save")
	c.typeIn("handoutview.ask.path", file)
	c.click("handoutview.ask.yes")
	if pdf, err := os.ReadFile(file); err != nil || !bytes.HasPrefix(pdf, []byte("%PDF")) {
		c.t.Fatalf("the page: %v", err)
	}
}

// typeIn types into a control that is no plain field.
func (c counting) typeIn(name, text string) {
	c.t.Helper()
	*c.actions++
	apptest.Type(c.t, c.w, name, text)
}

// kept checks what the records hold at the end: the athlete, one closed test of today's
// sheet, the plan agreed on it, and the page as it was saved.
func (c counting) kept(name, file string) {
	c.t.Helper()
	ctx, s := context.Background(), c.program().Desk().Store
	if err := c.program().keeper.Flush(ctx); err != nil {
		c.t.Fatal(err)
	}
	a := apptest.AthleteNamed(c.t, c.program().Desk(), name)
	plans, err := s.Plans(ctx, a.ID)
	if err != nil || len(plans) == 0 || plans[0].State != record.PlanAgreed {
		c.t.Fatalf("no plan is agreed: %v", err)
	}
	test, err := s.LoadTest(ctx, plans[0].Basis.TestID)
	if err != nil || test.State != record.TestClosed || test.AthleteID != a.ID {
		c.t.Fatalf("the plan is agreed on a test that is %q (%v)", test.State, err)
	}
	if frozen, err := s.FrozenOf(ctx, record.Ref{Kind: record.KindTest, ID: test.ID}); err != nil || len(frozen) == 0 {
		c.t.Errorf("the closed test is not frozen: %v", err)
	}
	if o, ok := consult.OptionByID(plans[0], plans[0].Agreement.OptionID); !ok || len(o.Items) == 0 {
		c.t.Errorf("agreed on nothing to drink: %+v", plans[0].Agreement)
	}
	prints, err := s.PrintsOf(ctx, a.ID)
	if err != nil || len(prints) != 1 || prints[0].Record != plans[0].ID {
		c.t.Fatalf("%d pages are kept of the plan (%v)", len(prints), err)
	}
	whole, err := s.LoadPrint(ctx, prints[0].ID)
	saved, err2 := os.ReadFile(file)
	if err != nil || err2 != nil || !bytes.Equal(whole.Bytes, saved) {
		c.t.Errorf("the page kept is not the page saved: %v, %v", err, err2)
	}
}

func counted(t *testing.T, demo bool) counting {
	t.Helper()
	by := clock.New(apptest.Now())
	s, w := startBy(t, t.TempDir(), demo, by)
	return counting{hands{t, s, w, by}, new(int)}
}

// The first page on paper is not far: under 20 actions on the invented practice, and
// under 60 from an empty folder with a whole sheet typed.
func TestFirstPage(t *testing.T) {
	t.Run("invented practice", func(t *testing.T) {
		c := counted(t, true)
		c.click("roster.table.10", "frame.tabs.plan")
		page := filepath.Join(t.TempDir(), "page.pdf")
		c.page(page)
		c.kept("Sefa", page)
		t.Logf("%d actions", *c.actions)
		if *c.actions >= 20 {
			t.Errorf("%d actions", *c.actions)
		}
	})
	t.Run("empty folder", func(t *testing.T) {
		c := counted(t, false)
		c.fill("welcome.person", "Ada Fennimoor")
		c.fill("welcome.practice", "Saltmarsh")
		c.click("welcome.begin", "roster.first")
		c.fill("profile.name", "Sefa Quillonde", "profile.born", "9.1.2002", "profile.sport", "basketball")
		c.press("profile.sex", fyne.KeyHome)
		c.click("profile.consent.add")
		c.wholeSheet()
		c.click("testsheet.tabs.findings", "testsheet.next", "testsheet.plan")
		page := filepath.Join(t.TempDir(), "page.pdf")
		c.page(page)
		c.kept("Sefa", page)
		if a := c.athlete(); a.Sport != "basketball" || len(a.Consents) != 1 || a.Born != "2002-01-09" {
			t.Errorf("the athlete is kept as %+v", a)
		}
		t.Logf("%d actions", *c.actions)
		if *c.actions >= 60 {
			t.Errorf("%d actions", *c.actions)
		}
	})
}

// wholeSheet types two masses, four bottles, one gel, the urine, two patches, the air
// and the effort.
func (c counting) wholeSheet() {
	c.t.Helper()
	c.click("frame.tabs.tests", "testsheet.new")
	c.fill("testsheet.start", "17:00", "testsheet.air.temperature", "26", "testsheet.air.humidity", "50")
	c.typeIn("testsheet.effort", "8")
	c.fill("testsheet.before.mass.1", "72,4")
	c.click("testsheet.tabs.bottles")
	for i := 1; i <= 4; i++ {
		n := strconv.Itoa(i)
		if i > 1 {
			c.click("testsheet.bottle.next")
		}
		c.fill("testsheet.bottle."+n+".before", "700", "testsheet.bottle."+n+".after", "400")
	}
	c.fill("testsheet.food.1.what", "Energy gel", "testsheet.food.1.portions", "1")
	c.click("testsheet.tabs.after")
	c.fill("testsheet.end", "18:45", "testsheet.after.mass.1", "70,6")
	c.click("testsheet.urine.none", "testsheet.tabs.urine")
	for _, n := range []string{"1", "2"} {
		c.click("testsheet.patch.add")
		c.pick("testsheet.patch."+n+".site", c.say("testsheet.site.forearm-dorsal"))
		c.fill("testsheet.patch."+n+".on", "17:25", "testsheet.patch."+n+".off", "18:00", "testsheet.patch."+n+".sodium", "46,2")
	}
}

package app

import (
	"bytes"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/keep/clock"
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
	c.click("handoutview.save")
	apptest.Type(c.t, c.w, "handoutview.ask.path", file) // what is offered would do
	c.click("handoutview.ask.yes")
	if pdf, err := os.ReadFile(file); err != nil || !bytes.HasPrefix(pdf, []byte("%PDF")) {
		c.t.Fatalf("the page: %v", err)
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
		c.page(filepath.Join(t.TempDir(), "page.pdf"))
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
		c.page(filepath.Join(t.TempDir(), "page.pdf"))
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
	*c.actions++
	apptest.Type(c.t, c.w, "testsheet.effort", "8")
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

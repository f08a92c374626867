package app

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/store/storetest"
)

// swum writes a swimmer with one test in the pool, and a camp elsewhere.
func swum(t *testing.T) (dir string) {
	t.Helper()
	o := store.Options{Clock: apptest.Now, By: "Ada Fennimoor"}
	return storetest.Dir(t, "a swimmer", o, func(s *store.Store) error {
		ctx, c := context.Background(), covered{mass: 70, lost: 0.6, hot: 26, effort: 7}
		practice, err := s.SavePractice(ctx, hiding(), store.Edit{})
		must(t, err)
		a := c.athlete()
		a.Sport = "swimming"
		a, err = s.SaveAthlete(ctx, a, store.Edit{})
		must(t, err)
		sheet := c.sheet(1, 20, c.lost)
		sheet.Session.Sport, sheet.Session.Activity, sheet.Session.Place = "swimming", "swim-fast", "Pool, 50 m"
		sheet.Air.Sun, sheet.Air.Wind, sheet.Air.Clothing = record.SunNone, record.Num(0.3, quantity.MetrePerSecond), ""
		kept, err := s.SaveTest(ctx, sheet, store.Edit{})
		must(t, err)
		c.close(t, s, kept, a, c.setup(t, practice))
		_, err = s.SaveTrip(ctx, c.trip(), store.Edit{})
		return err
	})
}

// No heat balance holds in water: the overview draws no range for other air and says so;
// what the plan is based on names the limit that it has, not the low end that was passed
// in the test; and on a trip the test is not called alike.
func TestSwimmersScreens(t *testing.T) {
	s, w := start(t, swum(t), false)
	h := hands{t: t, s: s, w: w}
	shows := func(on string, list []string, want string, never ...string) {
		t.Helper()
		text := strings.ReplaceAll(strings.Join(list, " "), "\u00a0", " ")
		if !strings.Contains(text, want) {
			t.Errorf("%s does not say %q: %s", on, want, text)
		}
		for _, one := range never {
			if strings.Contains(text, one) {
				t.Errorf("%s says %q", on, one)
			}
		}
	}
	p := h.program()
	p.Open(desk.Place{Screen: desk.Overview, Athlete: coveredAthlete})
	shows("the overview", inSight(w.Content()), "No range is estimated for other air.", "Band:")
	p.Open(desk.Place{Screen: desk.Plan, Athlete: coveredAthlete, New: true})
	h.click("planner.basis")
	shows("the plan’s basis", inSight(w.Canvas().Overlays().Top()), "Measured in water: for this pool and effort only.", "low end is the limit", "under the low end")
	shows("the plan’s basis", inSight(w.Canvas().Overlays().Top()), "The test supports 0.60 L")
	h.click("planner.basis.ask.done")
	p.Open(desk.Place{Screen: desk.Trip, Record: coveredTrip})
	shows("the trip", inSight(w.Content()), "holds for its own session only", "about the same")
	shows("the trip", inSight(w.Content()), "Exercise in water is not estimated.")
}

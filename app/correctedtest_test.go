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
)

// When the test behind an agreed plan is corrected, the plan's screen, what is due and the
// view of the page say so, with the figure before and after, and the list of athletes
// names it; nothing of the plan changes by itself.
func TestCorrectedTestIsSaidWhereThePlanIs(t *testing.T) {
	s, w := start(t, t.TempDir(), true)
	d, ctx := s.Program().Desk(), context.Background()
	ravka := apptest.AthleteNamed(t, d, "Ravka")
	places := map[string]desk.Place{
		"plan": {Screen: desk.Plan, Athlete: ravka.ID}, "overview": {Screen: desk.Overview, Athlete: ravka.ID}, "page": {Screen: desk.Handout, Athlete: ravka.ID},
	}
	shown := func(at desk.Place) string {
		s.Program().Open(desk.Place{Screen: desk.Athletes})
		s.Program().Open(at)
		return strings.Join(strings.Fields(strings.Join(apptest.Texts(w.Content()), " ")), " ")
	}
	const sentence = "The test was corrected on 18 May: "
	for name, at := range places {
		if strings.Contains(shown(at), "was corrected") {
			t.Fatalf("%s says it of a test that was not: this test cannot fail", name)
		}
	}
	plans, err := d.Store.Plans(ctx, ravka.ID)
	must(t, err)
	var before record.Plan
	for _, p := range plans {
		if p.State == record.PlanAgreed {
			before = p
		}
	}
	sheet, err := d.Store.ReopenTest(ctx, before.Basis.TestID, "a bottle was forgotten")
	must(t, err)
	for i, x := range sheet.Weighings {
		if x.Moment == record.After {
			sheet.Weighings[i].Mass = record.Num(*x.Mass.Value+0.3, quantity.Kilogram)
		}
	}
	_, err = d.Store.SaveTest(ctx, sheet, store.Edit{})
	must(t, err)
	for name, at := range places {
		if said := shown(at); !strings.Contains(said, sentence) || !strings.Contains(said, "→") || !strings.Contains(said, "Check this plan.") {
			t.Errorf("%s does not say that the test was corrected: %s", name, said)
		}
	}
	after, err := d.Store.LoadPlan(ctx, before.ID)
	must(t, err)
	if after.State != record.PlanAgreed || after.Agreement.OptionID != before.Agreement.OptionID || len(after.Options) != len(before.Options) || len(after.Steps) != len(before.Steps) {
		t.Errorf("the plan became %+v", after)
	}
}

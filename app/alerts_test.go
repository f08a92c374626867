package app

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/store"
)

// The heat and the overdue review of an agreed plan are in every head but that of the
// plan, which says the heat itself; the list leads to the plan.
func TestPlanAlertsInTheHead(t *testing.T) {
	h := counted(t, true).hands
	p := h.program()
	lead, late := apptest.AthleteNamed(t, p.Desk(), "Ravka").ID, apptest.AthleteNamed(t, p.Desk(), "Kester").ID
	for _, screen := range []desk.Screen{desk.Overview, desk.Tests, desk.Handout, desk.Profile} {
		p.Open(desk.Place{Screen: screen, Athlete: lead})
		if said := apptest.Text(t, h.w, "frame.alerts"); !strings.HasPrefix(said, "heat: more rest") {
			t.Errorf("the head of %s says %q", screen, said)
		}
	}
	p.Open(desk.Place{Screen: desk.Plan, Athlete: lead})
	if apptest.Has(h.w, "frame.alerts") && strings.Contains(apptest.Text(t, h.w, "frame.alerts"), "heat") {
		t.Error("the plan says the heat twice")
	}
	p.Open(desk.Place{Screen: desk.Overview, Athlete: late})
	if said := apptest.Text(t, h.w, "frame.alerts"); said != "high blood pressure +1" {
		t.Errorf("with a review overdue the head says %q", said)
	}
	h.click("frame.alerts")
	if said := strings.Join(inSight(h.w.Canvas().Overlays().Top()), " "); !strings.Contains(said, "review overdue since") {
		t.Errorf("the list says %s", said)
	}
	h.click("frame.alert.2.open")
	if at := p.Place(); at.Screen != desk.Plan || at.Athlete != late {
		t.Errorf("the list leads to %+v", at)
	}
}

// What has to be known of an agreed plan is looked for once for all screens of an athlete,
// and again after anything was written.
func TestPlanAlertsAreLookedForAfterAWrite(t *testing.T) {
	p := counted(t, true).program()
	lead := apptest.AthleteNamed(t, p.Desk(), "Ravka").ID
	open := func(screen desk.Screen) knownPlan {
		p.Open(desk.Place{Screen: screen, Athlete: lead})
		return p.known
	}
	first := open(desk.Overview)
	if first.athlete != lead || len(first.alerts) == 0 || first.written != p.Desk().Store.Written() {
		t.Fatalf("known of %q: %v", first.athlete, first.alerts)
	}
	p.known.alerts = nil // what only looking again finds
	if again := open(desk.Profile); len(again.alerts) != 0 {
		t.Error("looked for again though nothing was written")
	}
	if _, err := p.Desk().Store.SavePractice(context.Background(), p.Desk().Practice(), store.Edit{}); err != nil {
		t.Fatal(err)
	}
	if again := open(desk.Overview); len(again.alerts) != len(first.alerts) || again.written == first.written {
		t.Errorf("after a write %v, before %v", again.alerts, first.alerts)
	}
	p.known.alerts, p.known.day = nil, "2020-01-01"
	if again := open(desk.Profile); len(again.alerts) != len(first.alerts) {
		t.Error("not looked for on another day")
	}
}

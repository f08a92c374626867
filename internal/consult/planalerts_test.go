package consult

import (
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/record"
)

// A plan's alerts stand before the conditions of the profile, its review after them.
func TestPlanAlertsByGravity(t *testing.T) {
	c := Case{said: &said{heat: climate.Limit}, Since: Since{Changed: true}}
	c.Plan.Agreement.Review = "2026-05-04"
	ofPlan := PlanAlerts(c, "2026-05-18")
	all := WithPlan([]Alert{{Kind: AlertGain}, {Kind: AlertPhysician}, {Kind: AlertCondition, Flag: record.FlagNSAID}}, ofPlan)
	want := []AlertKind{AlertGain, AlertPhysician, AlertSince, AlertHeat, AlertCondition, AlertReview}
	if len(all) != len(want) {
		t.Fatalf("%d alerts: %+v", len(all), all)
	}
	for i, kind := range want {
		if all[i].Kind != kind {
			t.Errorf("place %d has %q, not %q", i, all[i].Kind, kind)
		}
	}
	c.said.heat, c.Since.Changed = climate.Watch, false
	if list := PlanAlerts(c, "2026-05-04"); len(list) != 0 {
		t.Errorf("on the day of the review, in usual heat, there is %+v", list)
	}
}

package consult

import (
	"testing"

	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// A plan for a race in the pool of a swimmer who drank in training offers nothing to
// drink or eat in it, in any of its options, and its one entry among the breaks says so.
func TestRaceInThePool(t *testing.T) {
	s := readSessions(t)[0]
	s.t = t
	c, p := s.open()
	p.Target.Sport, p.Target.SessionName = "swimming", "Race-pace training"
	c.WithKind(&p, "training")
	if len(p.Chances) == 0 || plan.Closed(PlanChances(p)) {
		t.Fatalf("training in the pool: %+v", p.Chances)
	}
	c.Plan = p
	p.Target.SessionName = "Finale, 1500 m" // in any language: the kind is chosen
	c.WithKind(&p, "race")
	if len(p.Chances) != 1 || p.Chances[0].Name != plan.NoDrinking {
		t.Fatalf("a race: %+v", p.Chances)
	}
	race, err := OpenCase(p, c.Athlete, c.Basis, testSetup(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range race.withOffers(p).Options {
		if o.Kind != record.OptionHabit && race.Carried(o) != (plan.Mix{}) {
			t.Errorf("%s: %v", o.Kind, race.MixOf(o))
		}
		if o.Kind != record.OptionHabit && race.MixOf(o) != (plan.Mix{}) {
			t.Errorf("%s offers %v", o.Kind, race.MixOf(o))
		}
	}
}

package consult

import (
	"testing"

	"ebbwell/internal/record"
)

// A plan for home takes from its test how used to heat the athlete was, one for a stop
// does not; what the plan says goes before.
func TestHowUsedToHeatAPlanIs(t *testing.T) {
	f := Findings{Test: record.Test{Meta: record.Meta{ID: "t"}, Session: record.Session{UsedToHeat: record.AcclimatisedYes}}, Minutes: 60, Timed: true}
	for _, x := range []struct {
		stop record.ID
		said record.Acclimatised
		want record.Acclimatised
	}{{"", "", record.AcclimatisedYes}, {"s", "", ""}, {"", record.AcclimatisedNo, record.AcclimatisedNo}, {"s", record.AcclimatisedNo, record.AcclimatisedNo}} {
		p := record.Plan{Basis: record.PlanBasis{TestID: "t", StopID: x.stop, UsedToHeat: x.said}, Target: record.Target{Minutes: numberOf(60)}}
		if got := outingOf(p, record.Athlete{}, []Findings{f}, record.Number{}).Session.UsedToHeat; got != x.want {
			t.Errorf("%+v: %q", x, got)
		}
	}
}

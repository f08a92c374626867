package consult

import (
	"slices"
	"testing"
	"time"

	"ebbwell/internal/record"
)

// In training there are no race stations: a plan begun from a test on the road takes
// a carried bottle, also where an earlier plan of the athlete has the stations of a
// race. Only a race has those, chosen as the kind of session.
func TestTrainingHasNoStations(t *testing.T) {
	sheet, a := caseSheet()
	sheet.Session.Sport, a.Sport = "road-running", "road-running"
	d := testSetup(t)
	b, err := BasisOf(a, []Findings{Find(sheet, a, nil, d)}, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	p, err := NewPlan(a, b, d, Names{"Habit", "Without food", "With food", "Aim"}, day())
	if err != nil {
		t.Fatal(err)
	}
	only := func(list []record.Chance, name string) bool {
		return len(list) > 0 && !slices.ContainsFunc(list, func(c record.Chance) bool { return c.Name != name })
	}
	if !only(p.Chances, "carried-bottle") {
		t.Fatalf("a test on the road begins with %+v", p.Chances)
	}
	c, err := OpenCase(p, a, b, d)
	if err != nil {
		t.Fatal(err)
	}
	for kind, want := range map[string]string{"training": "carried-bottle", "marathon": "station", "sprint-race": "no-drinking"} {
		of := p.Clone()
		c.WithKind(&of, kind)
		if got, ok := KindOf("road-running", of.Chances); !only(of.Chances, want) || !ok || got.Session != kind {
			t.Errorf("%q has %+v and is %q", kind, of.Chances, got.Session)
		}
	}
	c.WithKind(&p, "swum")
	if !only(p.Chances, "carried-bottle") {
		t.Errorf("a kind that there is none of left %+v", p.Chances)
	}
	race := p.Clone()
	race.ID, race.CreatedAt, race.Target.SessionName = record.NewID(), day().Add(time.Hour), "Spring Marathon"
	c.WithKind(&race, "marathon")
	race.Chances = append(race.Chances, p.Chances[0]) // with a bottle beside the stations
	taken := race.Clone()
	taken.ID, taken.Target.SessionName = record.NewID(), "" // the stations were taken from the table by hand
	own := p.Clone()
	own.ID, own.CreatedAt = record.NewID(), day().Add(-time.Hour)
	own.Chances = own.Chances[:1]
	own.Chances[0].Name = "tap in the park"
	got, err := AsBefore(p, []record.Plan{race, taken, own}, a, b, d)
	if err != nil || !only(got.Chances, "tap in the park") {
		t.Errorf("as before it has %+v, %v", got.Chances, err)
	}
	if got, err := AsBefore(p, []record.Plan{race, taken}, a, b, d); err != nil || !only(got.Chances, "carried-bottle") {
		t.Errorf("after a race it has %+v, %v", got.Chances, err)
	}
}

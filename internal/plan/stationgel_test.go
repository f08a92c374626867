package plan

import (
	"testing"
)

// A gel is carried and taken at a drinks station; a bar has to wait for a break.
func TestGelAtTheStation(t *testing.T) {
	b := courtBasis()
	p := newPlanner(t, b, courtSession(), menuOf(t, nil, []string{"gel", "banana"}), DefaultAim(b.Usual, courtSession()))
	stations := []Chance{{Code: "station", Minute: 30, Seconds: 8}, {Code: "station", Minute: 60, Seconds: 8}, {Code: "station", Minute: 90, Seconds: 8}}
	var s Schedule
	p.Schedule(Expected, Mix{Water: 150, Food1: 2, Food2: 1}, stations, 30, &s)
	gels := 0.0
	for _, take := range s.Takes {
		gels += take.Food[0]
		if take.Food[1] != 0 {
			t.Errorf("a banana in %g s", take.Chance.Seconds)
		}
	}
	if gels != 2 || s.FoodLeft != [Foods]float64{1: 1} {
		t.Errorf("%g gels, left %v", gels, s.FoodLeft)
	}
}

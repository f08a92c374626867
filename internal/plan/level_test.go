package plan

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Three quarters of a litre over four breaks: one bottle of 750 mL goes down by the
// breaks, one of 500 mL is followed by a second that is filled with the rest.
func TestLevels(t *testing.T) {
	s := Schedule{Takes: []Take{
		{ByDrink: [Drinks]int{Drink1: 150}}, {ByDrink: [Drinks]int{Water: 100}},
		{ByDrink: [Drinks]int{Drink1: 300}}, {ByDrink: [Drinks]int{Drink1: 150, Water: 50}}, {ByDrink: [Drinks]int{Drink1: 125}},
	}}
	want := []Level{
		{Take: 0, Bottle: 1, FullML: 725, LeftML: 575, Line: 1, Lines: 4}, {Take: 2, Bottle: 1, FullML: 725, LeftML: 275, Line: 2, Lines: 4},
		{Take: 3, Bottle: 1, FullML: 725, LeftML: 125, Line: 3, Lines: 4}, {Take: 4, Bottle: 1, FullML: 725, LeftML: 0, Line: 4, Lines: 4},
	}
	if got := s.Levels(Drink1, 750, nil); !slices.Equal(got, want) {
		t.Errorf("one bottle: %+v", got)
	}
	want = []Level{
		{Take: 0, Bottle: 1, FullML: 450, LeftML: 300, Line: 1, Lines: 2}, {Take: 2, Bottle: 1, FullML: 450, LeftML: 0, Line: 2, Lines: 2},
		{Take: 3, Bottle: 2, FullML: 275, LeftML: 125, Line: 1, Lines: 2}, {Take: 4, Bottle: 2, FullML: 275, LeftML: 0, Line: 2, Lines: 2},
	}
	if got := s.Levels(Drink1, 500, nil); !slices.Equal(got, want) {
		t.Errorf("two bottles: %+v", got)
	}
	if got := s.Levels(Drink2, 500, nil); len(got) != 0 {
		t.Errorf("of a drink that is not there: %+v", got)
	}
}

// Whatever the schedule, bottles are emptied by the last break, and what is poured
// into them is what is drunk.
func TestLevelsPourWhatIsDrunk(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		var s Schedule
		drunk := 0
		for range d.IntN(20) {
			ml := 5 * d.IntN(60)
			s.Takes = append(s.Takes, Take{ByDrink: [Drinks]int{Water: ml}})
			drunk += ml
		}
		levels := s.Levels(Water, oneOf(d, 300, 500, 750), nil)
		poured := 0
		for i, l := range levels {
			if i+1 == len(levels) || levels[i+1].Bottle != l.Bottle {
				poured += l.FullML
				if l.LeftML != 0 || l.Line != l.Lines {
					t.Fatalf("bottle %d ends with %+v", l.Bottle, l)
				}
			}
			if l.LeftML < 0 || l.LeftML >= l.FullML || i > 0 && levels[i-1].Bottle == l.Bottle && l.LeftML >= levels[i-1].LeftML {
				t.Fatalf("%+v", levels)
			}
		}
		if poured != drunk {
			t.Fatalf("%d mL poured, %d drunk", poured, drunk)
		}
	})
}

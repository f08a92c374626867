package plan

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A plan fits its breaks where all that is drunk and all that is eaten has a place there:
// what is placed and what is left over come to the mix, drinks and food are judged apart,
// and the whole fits where both do, to half an increment.
func TestFitsWhatIsDrunkAndWhatIsEaten(t *testing.T) {
	list := products(t)
	var seen [2][2]int // by drinks and food: left over, placed
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		mix := d.mix(p.menu)
		chances := d.chances(p.session.Minutes[Expected])
		if d.IntN(3) == 0 { // with few breaks, or none to eat at
			chances = chances[:min(2, len(chances))]
		}
		var s Schedule
		p.Schedule(Expected, mix, chances, 25, &s)
		fed := p.checkFed(t, mix, &s)
		carried := p.gut().run(p.place(Expected, chances, nil), func(c Chance) float64 { return c.FillML(p.fillMost()) })
		left := max(0, float64(s.PlannedML)-min(carried, float64(p.roomFor(Expected, mix, s.PlannedML)))) // of the breaks and of the ceiling
		drunk := left <= negligibleML
		if s.DrinksFit != drunk || s.FoodFits != fed || s.Fits() != (drunk && fed) {
			t.Fatalf("drinks fit %v with %g mL left over, food %v with %v, all %v", s.DrinksFit, left, s.FoodFits, s.FoodLeft, s.Fits())
		}
		seen[index(drunk)][index(fed)]++
	})
	for drunk, one := range seen {
		for fed, n := range one {
			if n == 0 {
				t.Errorf("no plan with drinks placed %d and food placed %d: the draw tests one side only", drunk, fed)
			}
		}
	}
}

// checkFed holds the food placed and left over against the mix; it reports whether all was
// placed. The draw has no amount between nothing and half an increment but three tenths.
func (p *Planner) checkFed(t tester, mix Mix, s *Schedule) bool {
	t.Helper()
	fed := true
	for f := range Foods {
		item, placed := &p.menu[int(Food1)+f], 0.0
		if !item.InUse {
			continue
		}
		for i := range s.Takes {
			placed += s.Takes[i].Food[f]
		}
		planned := mix[int(Food1)+f]
		if math.Abs(placed+s.FoodLeft[f]-planned) > 1e-9 {
			t.Fatalf("food %d: %g placed and %g left over of %g", f, placed, s.FoodLeft[f], planned)
		}
		fed = fed && planned-placed <= min(item.Step/2, planned/2)
	}
	return fed
}

func index(on bool) int {
	if on {
		return 1
	}
	return 0
}

// At the stations of a marathon one drinks and does not stop to eat: half a litre finds its
// place, a banana none, a gel does. Boxers neither eat nor have time for half a litre.
func TestFitsByHand(t *testing.T) {
	b := courtBasis()
	p := newPlanner(t, b, courtSession(), menuOf(t, nil, []string{"banana", "gel"}), DefaultAim(b.Usual, courtSession()))
	var stations []Chance
	for minute := 10.0; minute <= 100; minute += 10 {
		stations = append(stations, Chance{Code: "station", Minute: minute, Seconds: 8})
	}
	corner := []Chance{{Code: "between-rounds", Minute: 30, Seconds: 60}}
	pause := []Chance{{Code: "half-time", Minute: 50, Seconds: 900, CanEat: true}}
	for name, c := range map[string]struct {
		mix           Mix
		chances       []Chance
		drinks, foods bool
	}{
		"drinks alone":                 {Mix{Water: 500}, stations, true, true},
		"a banana at stations":         {Mix{Water: 500, Food1: 1}, stations, true, false},
		"a gel at stations":            {Mix{Water: 500, Food2: 1}, stations, true, true},
		"too much, and a gel":          {Mix{Water: 900, Food2: 1}, stations, false, true},
		"too much, and a banana":       {Mix{Water: 900, Food1: 0.5}, corner, false, false},
		"a banana at half-time":        {Mix{Water: 400, Food1: 1}, pause, true, true},
		"what is not on the menu":      {Mix{Water: 400, Food4: 2}, stations, true, true},
		"a banana alone, and no break": {Mix{Food1: 1}, nil, true, false},
	} {
		var s Schedule
		p.Schedule(Expected, c.mix, c.chances, 25, &s)
		if s.DrinksFit != c.drinks || s.FoodFits != c.foods || s.Fits() != (c.drinks && c.foods) {
			t.Errorf("%s: drinks fit %v, food %v, all %v; left over %v", name, s.DrinksFit, s.FoodFits, s.Fits(), s.FoodLeft)
		}
	}
}

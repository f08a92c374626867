package plan

import (
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan/proposal"
)

// breaks makes takes of a minute each at which so much water is drunk.
func breaks(water ...int) []Take {
	var takes []Take
	for i, ml := range water {
		takes = append(takes, Take{Chance: Chance{Minute: float64(10 * (i + 1)), Seconds: 60, CanEat: true}, ML: ml, ByDrink: [Drinks]int{Water: ml}})
	}
	return takes
}

// eaten lists the portions of a food at each chance.
func eaten(takes []Take, food int) (list []float64) {
	for _, t := range takes {
		list = append(list, t.Food[food])
	}
	return list
}

func sameList(t *testing.T, name string, got, want []float64) {
	t.Helper()
	for i := range want {
		if len(got) != len(want) || got[i] != want[i] {
			t.Fatalf("%s: %v, want %v", name, got, want)
		}
	}
}

// Food is spread evenly by half portions; gels whole, as the mix has them; at chances
// that let one eat, at those that may not happen only where there are no others.
func TestFoodIsSpreadByHand(t *testing.T) {
	p := newPlanner(t, courtBasis(), courtSession(), byHand(), Aim{})
	serve := func(mix Mix, takes []Take) *Schedule {
		s := &Schedule{Takes: takes}
		p.serve(mix, s)
		return s
	}
	for _, c := range []struct {
		portions float64
		want     []float64
	}{
		{0.5, []float64{0, 0, 0.5, 0}}, {1, []float64{0, 0.5, 0, 0.5}}, {1.25, []float64{0.5, 0, 0.5, 0.25}}, {2, []float64{0.5, 0.5, 0.5, 0.5}}, {3, []float64{0.5, 1, 0.5, 1}},
	} {
		sameList(t, "food", eaten(serve(Mix{Food1: c.portions}, breaks(300, 300, 300, 300)).Takes, 0), c.want)
	}
	sameList(t, "gels", eaten(serve(Mix{Food2: 2}, breaks(300, 300, 300, 300)).Takes, 1), []float64{0, 1, 0, 1})
	takes := breaks(300, 300, 300)
	takes[0].Chance.CanEat, takes[1].Chance.Certainty = false, Maybe
	sameList(t, "food waits", eaten(serve(Mix{Food1: 1}, append([]Take(nil), takes...)).Takes, 0), []float64{0, 0, 1})
	sameList(t, "a gel does not", eaten(serve(Mix{Food2: 2}, append([]Take(nil), takes...)).Takes, 1), []float64{1, 0, 1})
	sameList(t, "where nothing is certain", eaten(serve(Mix{Food1: 1}, append([]Take(nil), takes[:2]...)).Takes, 0), []float64{0, 1})
	if s := serve(Mix{Food1: 1, Food2: 1}, append([]Take(nil), takes[:1]...)); s.FoodLeft != [Foods]float64{1} || s.Takes[0].Food[1] != 1 {
		t.Errorf("no chance to eat: %+v", s)
	}
	if s := serve(Mix{Food1: -1, Food3: 2}, breaks(300)); s.FoodLeft != [Foods]float64{} || s.Takes[0].Food != [Foods]float64{} {
		t.Errorf("less than nothing, or what is not on the menu: %+v", s)
	}
}

// A gel goes with 220 mL, 120 where one was taken with 180 and a calm stomach; where a chance
// lacks it, to the one before, then to the one after, and where all lack it to the one with
// most; half of another drink counts.
func TestGelsGoWhereTheWaterIs(t *testing.T) {
	p := newPlanner(t, courtBasis(), courtSession(), byHand(), Aim{})
	serve := func(p *Planner, gels float64, takes []Take) *Schedule {
		s := &Schedule{Takes: takes}
		p.serve(Mix{Food2: gels}, s)
		return s
	}
	for _, c := range []struct {
		water, want []float64
	}{
		{[]float64{0, 220, 0}, []float64{0, 1, 0}}, {[]float64{220, 219, 220}, []float64{1, 0, 0}}, {[]float64{219, 219, 220}, []float64{0, 0, 1}},
		{[]float64{100, 219, 100}, []float64{0, 1, 0}},
		{[]float64{25, 25, 75}, []float64{0, 0, 1}}, {[]float64{75, 25, 25}, []float64{1, 0, 0}}, {[]float64{75, 25, 80}, []float64{0, 0, 1}}, {[]float64{60, 60, 60}, []float64{0, 1, 0}},
	} {
		var ml []int
		for _, x := range c.water {
			ml = append(ml, int(x))
		}
		sameList(t, "gel", eaten(serve(p, 1, breaks(ml...)).Takes, 1), c.want)
	}
	used := p.From(Mix{Water: 180, Food2: 1}, Background{Stomach: proposal.Is(evidence.StepStomachGood)})
	s := serve(used, 1, breaks(0, 120, 0))
	if take := s.Takes[1]; take.Food[1] != 1 || take.WaterWantedML != 120 || take.Dry {
		t.Errorf("used to gels: %+v", take)
	}
	for _, b := range []Background{{Stomach: proposal.Is(4)}, {}} {
		if each := p.From(Mix{Food2: 1}, b).gelWaterEach(); each != 220 {
			t.Errorf("a stomach that was not calm: %g mL", each)
		}
	}
	if each := p.From(Mix{Food1: 1}, Background{Stomach: proposal.Is(1)}).gelWaterEach(); each != 220 {
		t.Errorf("used to another food: %g mL", each)
	}
	drink := Take{ML: 500, ByDrink: [Drinks]int{Water: 100, Drink1: 400}}
	if ml := drink.gelWaterML(); ml != 300 {
		t.Errorf("100 mL of water and half of 400: %g", ml)
	}
	// Two gels at one chance want water for both.
	s = serve(p, 2, breaks(440))
	if take := s.Takes[0]; take.WaterWantedML != 440 || take.Food[1] != 2 || take.Dry {
		t.Errorf("two gels: %+v", take)
	}
	// All water of the plan does for its gels: what is drunk here is what they go with.
	s = serve(p, 1, breaks(110, 110))
	for _, take := range s.Takes {
		if take.Dry || take.Food[1] > 0 && take.WaterWantedML != 110 {
			t.Errorf("wet enough in all: %+v", take)
		}
	}
	s = serve(p, 1, breaks(110, 109))
	if take := s.Takes[0]; !take.Dry || take.WaterWantedML != 220 {
		t.Errorf("1 mL lacks in all: %+v", take)
	}
}

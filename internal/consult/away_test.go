package consult

import (
	"math"
	"slices"
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// plannerOf is two hours at 1.2 L/h (1.0 to 1.6) by 60 kg with 0.1 L/h of breath; a drink
// by 50 mL, and a food with 100 mL of water.
func plannerOf(t *testing.T) *plan.Planner {
	t.Helper()
	m := plan.NewMenu()
	m[plan.Drink1] = plan.Item{InUse: true, ID: "drink", Step: 50, Unit: plan.Unit{FluidL: 0.001, MassKg: 0.001, CarbohydrateG: 0.06}}
	m[plan.Food1] = plan.Item{InUse: true, ID: "food", Step: 0.5, Unit: plan.Unit{FoodWaterL: 0.1, MassKg: 0.15, CarbohydrateG: 20}}
	b := plan.Basis{SweatRate: plan.Between(1.2, 1, 1.6), RespiratoryLH: 0.1, Body: plan.Body{MassKg: 60}}
	p, err := plan.New(b, plan.Session{Minutes: [plan.Lengths]float64{120, 120, 120}, Heat: plan.Hot}, m, plan.Aim{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A mix above the limit of 2 L comes down in proportion, each drink to its increment and
// the salt with them; food stays, and its water counts. What is under it stays.
func TestUnderTheCeilingInProportion(t *testing.T) {
	p := plannerOf(t)
	for _, c := range []struct{ mix, want plan.Mix }{
		{plan.Mix{plan.Water: 1200, plan.Drink1: 800}, plan.Mix{plan.Water: 1200, plan.Drink1: 800}},
		{plan.Mix{plan.Water: 1500, plan.Drink1: 1000, plan.Salt: 1}, plan.Mix{plan.Water: 1200, plan.Drink1: 800, plan.Salt: 0.8}},
		{plan.Mix{plan.Water: 1500, plan.Drink1: 1000, plan.Food1: 2}, plan.Mix{plan.Water: 1050, plan.Drink1: 700, plan.Food1: 2}},
		{plan.Mix{plan.Water: 500, plan.Food1: 25}, plan.Mix{plan.Food1: 25}},
		{plan.Mix{plan.Food1: 25}, plan.Mix{plan.Food1: 25}},
	} {
		got := Under(p, c.mix)
		for s := range got {
			if math.Abs(got[s]-c.want[s]) > 1e-9 {
				t.Errorf("%v: %v, want %v", c.mix, got, c.want)
				break
			}
		}
	}
	if got := scaled(p.Menu(), plan.Mix{plan.Water: 437, plan.Food1: 1.25}, 1); got != (plan.Mix{plan.Water: 437, plan.Food1: 1.25}) {
		t.Errorf("as long: %v", got)
	}
	if got := scaled(p.Menu(), plan.Mix{plan.Water: 600, plan.Drink1: 333, plan.Food1: 1.5, plan.Drink2: 500}, 0.5); got != (plan.Mix{plan.Water: 300, plan.Drink1: 150, plan.Food1: 0.5, plan.Drink2: 500}) {
		t.Errorf("half as long: %v", got)
	}
	if got := scaled(p.Menu(), plan.Mix{plan.Water: 600, plan.Food1: 1}, 1.5); got != (plan.Mix{plan.Water: 900, plan.Food1: 1.5}) {
		t.Errorf("half as long again: %v", got)
	}
}

// At the high end of the loss, 1.6 L/h and 0.1 of breath, 3.4 L are lost: with 2 L drunk
// 2.3 % of 60 kg, past the limit of 2; with 1.2 L/h, what stomachs take, 1 L is left, 1.7 %:
// the loss does not outrun the stomach. At 1.8 L/h 1.4 L are left, 2.3 %: it does.
func TestHighEndByHand(t *testing.T) {
	for _, c := range []struct {
		high            float64
		drunk           float64
		passes, outruns bool
	}{{1.6, 2000, true, false}, {1.6, 2250, false, false}, {1.8, 2000, true, true}, {1.72, 2000, true, true}, {1.68, 2000, true, false}} {
		p := plannerOf(t)
		b := p.Basis()
		b.SweatRate.High = c.high
		p, err := plan.New(b, p.Session(), p.Menu(), p.Aim())
		if err != nil {
			t.Fatal(err)
		}
		x := Taken{Planned: true, Case: Case{Planner: p}, At: p.Evaluate(plan.Expected, plan.Mix{plan.Water: c.drunk})}
		if passes, outruns := x.HighEnd(); passes != c.passes || outruns != c.outruns {
			t.Errorf("%+v: %v %v", c, passes, outruns)
		}
		x.Planned = false
		if passes, outruns := x.HighEnd(); passes || outruns || x.PastHarm() {
			t.Error("no plan, and it passes")
		}
	}
	for percent, past := range map[float64]bool{evidence.DeficitHarmHeatHigh: false, evidence.DeficitHarmHeatHigh + 0.04: false, evidence.DeficitHarmHeatHigh + 0.06: true} {
		x := Taken{Planned: true, At: plan.Prediction{Deficit: plan.Between(1, 0, percent)}}
		if x.PastHarm() != past {
			t.Errorf("%g %%: %v", percent, x.PastHarm())
		}
	}
}

// The longest break is the one at which most is drunk, the first of two alike.
func TestLongestBreakByHand(t *testing.T) {
	x := Taken{Planned: true, Spread: plan.Schedule{Takes: []plan.Take{{ML: 100}, {ML: 300, Mouthfuls: 1}, {ML: 300, Mouthfuls: 2}, {ML: 200}}}}
	if take, ok := x.LongestBreak(); !ok || take.ML != 300 || take.Mouthfuls != 1 {
		t.Errorf("%+v %v", take, ok)
	}
	if _, ok := (Taken{Planned: true, Spread: plan.Schedule{Takes: []plan.Take{{}}}}).LongestBreak(); ok {
		t.Error("nothing is drunk, and there is a longest break")
	}
}

// A successor has the options of the plan under new ids, the step in force as an option of
// its own and in hand, other steps not; its habit is what is done now, where that was done.
func TestSuccessorByHand(t *testing.T) {
	c, _ := newCase(t)
	p := c.WithLadder(plan.Ladder{Steps: []plan.Step{{Mix: plan.Mix{plan.Water: 800}}, {Mix: plan.Mix{plan.Water: 900}}, {Mix: plan.Mix{plan.Water: 950}}}}, 3, func(int) string { return "step" })
	water := func(next record.Plan, kind record.OptionKind) []float64 {
		x := c
		x.Plan = next
		var list []float64
		for _, o := range next.Options {
			if o.Kind == kind {
				list = append(list, x.MixOf(o)[plan.Water])
			}
		}
		return list
	}
	next := Successor(p, "next")
	if own := water(next, record.OptionOwn); !slices.Equal(own, []float64{800}) || len(water(next, record.OptionStep)) != 0 || len(next.Steps) != 0 || next.ID == p.ID {
		t.Errorf("own options %v of %d", own, len(next.Options))
	}
	if o, ok := OptionByID(next, next.Agreement.OptionID); !ok || o.Kind != record.OptionOwn {
		t.Errorf("in hand: %+v", o)
	}
	habit := water(p, record.OptionHabit)
	if got := water(next, record.OptionHabit); !slices.Equal(got, habit) {
		t.Errorf("nothing was done, and the habit is %v, was %v", got, habit)
	}
	Decide(&p, record.Review{Decision: record.DecisionNext})
	next = Successor(p, "next")
	if got := water(next, record.OptionHabit); !slices.Equal(got, []float64{800}) {
		t.Errorf("the first step was done, and the habit is %v", got)
	}
	if own := water(next, record.OptionOwn); !slices.Equal(own, []float64{900}) {
		t.Errorf("own options %v", own)
	}
	Decide(&p, record.Review{Decision: record.DecisionHold})
	if got := water(Successor(p, "next"), record.OptionHabit); !slices.Equal(got, []float64{900}) {
		t.Errorf("the second step was held, and the habit is %v", got)
	}
	Decide(&p, record.Review{Decision: record.DecisionBack})
	if got := water(Successor(p, "next"), record.OptionHabit); slices.Equal(got, []float64{900}) {
		t.Errorf("one went back from the second step, and the habit is %v", got)
	}
	for i, ch := range next.Chances {
		if ch.PlanID != next.ID || ch.Order != i || ch.ID == p.Chances[i].ID {
			t.Errorf("chance %d: %+v", i, ch)
		}
	}
}

// What is still as it was offered is offered anew; what was changed by hand stays and is
// named, unless it is what would be offered anyway.
func TestOfferAnewByHand(t *testing.T) {
	c, _ := newCase(t)
	p := c.Plan.Clone()
	was := func(kind record.OptionKind) (plan.Mix, bool) {
		o, ok := OptionOf(p, kind)
		return c.MixOf(o), ok
	}
	offered := c.Planner.Propose(RulesOf(p))
	next, byHand := c.OfferAnew(p, was)
	if len(byHand) != 0 {
		t.Errorf("untouched, and %d by hand", len(byHand))
	}
	for _, o := range next.Options {
		if mix, ok := Offered(offered, o.Kind); ok && c.MixOf(o) != mix {
			t.Errorf("%s: %v, offered %v", o.Kind, c.MixOf(o), mix)
		}
	}
	none := func(record.OptionKind) (plan.Mix, bool) { return plan.Mix{}, false }
	if _, byHand := c.OfferAnew(next, none); len(byHand) != 0 {
		t.Errorf("what would be offered is called by hand: %d", len(byHand))
	}
	changed := next.Clone()
	for i, o := range changed.Options {
		if o.Kind == record.OptionFluid {
			mix := c.MixOf(o)
			mix[plan.Water] += 150
			changed.Options[i] = c.WithMix(o, mix)
		}
	}
	again, byHand := c.OfferAnew(changed, func(kind record.OptionKind) (plan.Mix, bool) {
		o, ok := OptionOf(next, kind)
		return c.MixOf(o), ok
	})
	if len(byHand) != 1 || byHand[0].Kind != record.OptionFluid {
		t.Fatalf("%+v", byHand)
	}
	kept, _ := OptionOf(again, record.OptionFluid)
	want, _ := OptionOf(changed, record.OptionFluid)
	if c.MixOf(kept) != c.MixOf(want) {
		t.Errorf("by hand %v, kept %v", c.MixOf(want), c.MixOf(kept))
	}
}

// The heat of a case is what was said when it was agreed, else what the calculation says,
// else usual care; and whether its range stands alone, and where it is for, alike.
func TestSaidOfAnEstimate(t *testing.T) {
	calculated := &Calculation{CautionKnown: true}
	calculated.Caution.Level, calculated.Climate.RangeOnly, calculated.Outing.Session.Place = climate.Watch, true, "Chennai"
	for name, x := range map[string]struct {
		c     Case
		heat  climate.Level
		alone bool
		place string
	}{
		"nothing":      {Case{}, climate.UsualCare, false, ""},
		"calculated":   {Case{Basis: Basis{Calculation: calculated}}, climate.Watch, true, "Chennai"},
		"not to judge": {Case{Basis: Basis{Calculation: &Calculation{}}}, climate.UsualCare, false, ""},
		"said":         {Case{said: &said{heat: climate.Watch, place: "Hanoi", rangeAlone: true}}, climate.Watch, true, "Hanoi"},
		"said before":  {Case{said: &said{heat: climate.UsualCare}, Basis: Basis{Calculation: calculated}}, climate.UsualCare, false, ""},
	} {
		if x.c.Heat() != x.heat || x.c.RangeAlone() != x.alone || x.c.Place() != x.place {
			t.Errorf("%s: %v %v %q", name, x.c.Heat(), x.c.RangeAlone(), x.c.Place())
		}
	}
}

// What changed since is told of the first test that differs, be it the first or not.
func TestSinceFindsTheTest(t *testing.T) {
	c, _ := newCase(t)
	test := func(id record.ID, loss, low float64) Findings {
		f := Findings{Test: record.Test{Meta: record.Meta{ID: id}}}
		f.Sweat.Fluid.Loss, f.Sweat.Fluid.Rate = known(loss), known(1)
		f.Sweat.Fluid.Rate.Range.Low = low
		return f
	}
	was, now := c, c
	was.Basis.Tests = []Findings{test("a", 2, 1), test("b", 2, 1), test("gone", 2, 1)}
	for name, x := range map[string]struct {
		tests []Findings
		id    record.ID
	}{
		"nothing": {[]Findings{test("a", 2, 1), test("b", 2, 1)}, ""}, "the first": {[]Findings{test("a", 1.8, 1), test("b", 2, 1)}, "a"},
		"the second": {[]Findings{test("a", 2, 1), test("b", 1.8, 1)}, "b"}, "its range": {[]Findings{test("b", 2, 0.9), test("a", 2, 1)}, "b"},
	} {
		now.Basis.Tests = x.tests
		if s := since(was, now); s.Test.ID != x.id || !s.Changed {
			t.Errorf("%s: %q", name, s.Test.ID)
		}
	}
}

// A usual habit is written to whole 10 mL and half portions of the session.
func TestUsualHabitByHand(t *testing.T) {
	c, d := newCase(t)
	hours := c.Planner.Session().Minutes[plan.Expected] / 60
	c.Athlete.Habit = record.Habit{Water: numberOf(0.333), Drink: numberOf(0.217), Portions: numberOf(0.77), FoodID: firstFood}
	o := c.usualHabit(c.Plan, d)
	want := []float64{10 * math.Round(33.3*hours), 10 * math.Round(21.7*hours), 0.5 * math.Round(1.54*hours)}
	if len(o.Items) != 3 || o.Items[0].Volume.Or(0) != want[0] || o.Items[1].Volume.Or(0) != want[1] || o.Items[2].Portions.Or(0) != want[2] {
		t.Errorf("%+v, want %v", o.Items, want)
	}
	if o.Items[1].Order != 1 || o.Items[1].ProductID != firstDrink || o.Items[2].ProductID != firstFood {
		t.Errorf("%+v", o.Items)
	}
	c.Athlete.Habit = record.Habit{Drink: numberOf(0.2), DrinkID: Water, Portions: numberOf(0)}
	if o := c.usualHabit(c.Plan, d); len(o.Items) != 1 {
		t.Errorf("water as a drink, and no portions: %+v", o.Items)
	}
	for h, want := range map[record.Habit]bool{
		{}: false, {Portions: numberOf(1)}: false, {FoodID: firstFood}: false,
	} {
		if got := HasUsualHabit(record.Athlete{Habit: h}); got != want {
			t.Errorf("%+v: %v", h, got)
		}
	}
}

// What is packed of a drink that is heavier than water: a bottle of 500 mL of 1.04 g/mL
// weighs 520 g; of a gel without a density no volume is known; the last food too.
func TestPackedByHand(t *testing.T) {
	d := testSetup(t)
	s := supplyOf(SlotInfo{Product: fuel.Product{ID: "heavy", Density: fuel.Of(1.04)}}, plan.Drink1, 750, d)
	near(t, "serving", float64(s.Serving), 520, 1e-9)
	gel := SlotInfo{InUse: true, Product: fuel.Product{ID: "gel", Form: fuel.Gel, Portion: fuel.Portion{Grams: 50}}}
	if s := supplyOf(gel, plan.Food1, 2, d); s.Volume != 0 || s.Form != climate.Gel {
		t.Errorf("%+v", s)
	}
	var stop StopPlan
	stop.Case.Slots[plan.Food4], stop.Mix[plan.Food4] = gel, 2
	stop.Case.Slots[plan.Food1] = gel
	stop.Mix[plan.Salt] = 0.5
	stay := stayOf(stop, nil, d)
	if len(stay.Supplies) != 2 || stay.Supplies[0].Servings != 2 || stay.Supplies[1].Servings != 0.5 || stay.SessionsADay != 1 || stay.Days != 1 {
		t.Errorf("%+v", stay)
	}
}

// A sheet's food brings its share of water; the mean of masses is their mean.
func TestSmallSums(t *testing.T) {
	d := testSetup(t)
	banana, _ := d.Pantry.Find("generic.banana")
	f := food(record.FoodEaten{ProductID: "generic.banana", Portions: numberOf(2)}, d.Pantry)
	near(t, "water", *f.Water, banana.Per100.Water.Value/100, 1e-12)
	near(t, "mass", float64(*f.Mass), 2*banana.Portion.Grams, 1e-9)
	near(t, "mean", mean([]quantity.Kilograms{70, 71, 75}), 72, 1e-12)
}

// A plan names what it is based on: the session it is again first, then the weightiest, then
// all that were asked, each once.
func TestBasisNamesItsTests(t *testing.T) {
	test := func(id record.ID) Findings { return Findings{Test: record.Test{Meta: record.Meta{ID: id}}} }
	b := Basis{Kind: record.BasisPool, Tests: []Findings{test("b"), test("a")}, Calculation: &Calculation{
		Outing: Outing{Like: "c", Session: record.Session{UsedToHeat: record.AcclimatisedYes}}, Tests: []Findings{test("a"), test("b"), test("c"), test("d")},
	}}
	got := PlanBasisOf(b, "stop")
	if got.TestID != "c" || got.PoolIDs != "b a d" || got.StopID != "stop" || got.UsedToHeat != record.AcclimatisedYes || got.Kind != record.BasisPool {
		t.Errorf("%+v", got)
	}
	b.Calculation = nil
	if got := PlanBasisOf(b, ""); got.TestID != "b" || got.PoolIDs != "a" || got.UsedToHeat != "" {
		t.Errorf("%+v", got)
	}
	if got := PlanBasisOf(Basis{}, ""); got.TestID != "" || got.PoolIDs != "" {
		t.Errorf("%+v", got)
	}
	for sport, want := range map[string]string{"": "judo", "rowing": "rowing"} {
		p := record.Plan{Target: record.Target{Sport: sport, Minutes: numberOf(60)}}
		if o := outingOf(p, record.Athlete{Sport: "judo"}, nil, record.Number{}); o.Session.Sport != want {
			t.Errorf("%q: %q", sport, o.Session.Sport)
		}
	}
}

// Warmer air has the same vapour in it: 30 °C and 50 % are 2.12 kPa, at 35 °C 37.7 %; it is
// never more humid than 98 %, and a reading of its WBGT is not of that day.
func TestWarmerByHand(t *testing.T) {
	air := record.Air{Temperature: numberOf(30), Humidity: numberOf(50), Wbgt: numberOf(27)}
	for by, want := range map[float64]float64{5: 37.7, 0: 50, -5: 66.9, -14: 98, -20: 98} {
		got, ok := warmer(air, by)
		if !ok || math.Abs(got.Humidity.Or(0)-want) > 0.2 || math.Abs(got.Temperature.Or(0)-30-by) > 1e-9 || got.Wbgt.Known() {
			t.Errorf("%g °C warmer: %v %%, want %g", by, got.Humidity.Or(0), want)
		}
	}
	for name, x := range map[string]record.Air{"no temperature": {Humidity: numberOf(50)}, "no humidity": {Temperature: numberOf(30)}, "none that can be": {Temperature: numberOf(30), Humidity: numberOf(150)}} {
		if _, ok := warmer(x, 5); ok {
			t.Errorf("%s: warmer", name)
		}
	}
}

// Of the mornings weighed today's is the marker, those before it the baseline; one without
// a mass, or set aside, is neither.
func TestMorningsOfASheet(t *testing.T) {
	sheet := record.Test{Session: record.Session{Date: "2026-05-14"}, Weighings: []record.Weighing{
		{Moment: record.Morning, Date: "2026-05-12", Mass: numberOf(70.1)}, {Moment: record.Morning, Date: "2026-05-14", Mass: numberOf(69.6)}, {Moment: record.Morning, Date: "2026-05-13", Mass: numberOf(70.3)},
		{Moment: record.Morning, Date: "2026-05-11"}, {Moment: record.Morning, Date: "2026-05-10", Mass: numberOf(60), Aside: true}, {Moment: record.Before, Date: "2026-05-14", Mass: numberOf(71)},
	}}
	m := markers(sheet)
	if m.Morning == nil || *m.Morning != 69.6 || !slices.Equal(m.Baseline, []quantity.Kilograms{70.1, 70.3}) {
		t.Errorf("%+v", m)
	}
}

// A session again over other minutes: play and energy as much longer, what is measured by
// the hour the same; at another effort only that.
func TestSessionAgainByHand(t *testing.T) {
	f := Findings{Minutes: 60, Timed: true}
	f.Test.Session = record.Session{Sport: "rowing", Effort: numberOf(7), Energy: numberOf(600), Played: numberOf(40), Power: numberOf(180), Met: numberOf(8)}
	for _, effort := range []record.Number{{}, numberOf(7)} {
		s := sessionLike(f, effort, record.Athlete{}, 90)
		if s.Energy.Or(0) != 900 || s.Played.Or(0) != 60 || s.Power.Or(0) != 180 || s.Met.Or(0) != 8 || s.Effort.Or(0) != 7 || s.Sport != "rowing" {
			t.Errorf("%+v", s)
		}
	}
	if s := sessionLike(f, numberOf(5), record.Athlete{}, 90); s.Energy.Known() || s.Power.Known() || s.Effort.Or(0) != 5 {
		t.Errorf("easier: %+v", s)
	}
}

// What is drunk and what is eaten of a pantry: a powder is neither until it is made up.
func TestDrinksAndFoodsOfAPantry(t *testing.T) {
	p := testSetup(t).Pantry
	count := map[fuel.Form]int{}
	for _, one := range p.Products() {
		count[one.Form]++
	}
	for _, one := range p.Foods() {
		if one.Form == fuel.Drink || one.Form == fuel.Powder {
			t.Errorf("%s is eaten", one.ID)
		}
	}
	if count[fuel.Powder] == 0 || len(p.Foods()) != len(p.Products())-count[fuel.Drink]-count[fuel.Powder] || len(p.Drinks()) != count[fuel.Drink] {
		t.Errorf("%d foods and %d drinks of %v", len(p.Foods()), len(p.Drinks()), count)
	}
}

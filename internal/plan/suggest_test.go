package plan

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A suggestion meets every aim, stays under the ceiling and on the increments,
// moves only what may change, and suggesting again from it changes nothing.
// What is said to clash does: let any one of it go and the rest can be met.
func TestSuggestionHolds(t *testing.T) {
	list := products(t)
	met, clashed := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		s := Search{Length: Expected, Habit: d.mix(p.menu)}
		if d.IntN(4) == 0 {
			s.Bottles = []float64{330, 500}
		}
		got := p.Suggest(s)
		if !got.Proved {
			t.Fatal("not proved")
		}
		if !got.Met {
			clashed++
			checkClash(t, p, s, got)
			return
		}
		met++
		checkMet(t, d, p, s, got)
	})
	if met == 0 || clashed == 0 {
		t.Errorf("%d met, %d clashed: the draw tests one side only", met, clashed)
	}
}

func checkMet(t tester, d dice, p *Planner, s Search, got Suggestion) {
	if c := p.Misses(s.Length, got.Mix); c != 0 {
		t.Fatalf("misses %v", c.Codes())
	}
	if q := p.Evaluate(s.Length, got.Mix); q.Guards.Has(OverCeiling) {
		t.Fatal("above the ceiling")
	}
	moved := 0
	for slot, x := range got.Mix {
		if x == s.Habit[slot] {
			continue
		}
		if x != p.snapped(s, Slot(slot)) {
			moved++
		}
		if !p.aim.allows(Slot(slot)) || !p.menu[slot].InUse {
			t.Fatalf("slot %d may not change", slot)
		}
		if len(s.Bottles) == 0 || !Slot(slot).IsDrink() {
			if k := x / p.menu[slot].Step; math.Abs(k-math.Round(k)) > 1e-6 {
				t.Fatalf("slot %d at %g is between increments", slot, x)
			}
		} else if !wholeBottles(x, s.Bottles) {
			t.Fatalf("%g mL is no sum of bottles", x)
		}
	}
	if moved != got.Moved {
		t.Fatalf("moves %d, says %d", moved, got.Moved)
	}
	again := s
	again.Habit = got.Mix
	if second := p.Suggest(again); second.Mix != got.Mix || second.Cost != 0 || second.Moved != 0 {
		t.Fatalf("from %v on to %v", got.Mix, second.Mix)
	}
	noCloser(t, d, p, s, got)
}

// noCloser tries random mixes in the same increments, the habit rounded to
// them: none that meets all aims is a smaller change.
func noCloser(t tester, d dice, p *Planner, s Search, got Suggestion) {
	t.Helper()
	weights := UsualWeights()
	for range 20 {
		other, cost := s.Habit, 0.0
		for slot := range other {
			if !p.menu[slot].InUse || !p.aim.allows(Slot(slot)) {
				continue
			}
			home := p.snapped(s, Slot(slot))
			other[slot] = home
			if d.yes() {
				other[slot] = oneOf(d, p.amounts(s, Slot(slot))...)
			}
			cost += weights[slot] * math.Abs(other[slot]-home) / p.menu[slot].Step
		}
		if cost < got.Cost-1e-6 && p.Misses(s.Length, other) == 0 {
			t.Fatalf("%v costs %g, suggested %v costs %g", other, cost, got.Mix, got.Cost)
		}
	}
}

func wholeBottles(x float64, sizes []float64) bool {
	for _, v := range bottleSums(sizes, x) {
		if v == x {
			return true
		}
	}
	return false
}

func checkClash(t tester, p *Planner, s Search, got Suggestion) {
	if got.Clash == 0 || got.Mix != s.Habit {
		t.Fatalf("clash %v, mix %v", got.Clash.Codes(), got.Mix)
	}
	r := p.rowsOf(s.Length)
	with := func(but Condition) (list []row) {
		for _, w := range r.all() {
			if got.Clash.Has(w.condition) && w.condition != but {
				list = append(list, w)
			}
		}
		return list
	}
	free := !got.Clash.Has(ItemsChosen)
	if found, _ := p.problem(s, with(0), free).Feasible(); found {
		t.Fatalf("%v do not clash", got.Clash.Codes())
	}
	for _, c := range got.Clash.Each() {
		if found, _ := p.problem(s, with(c), free || c == ItemsChosen).Feasible(); !found {
			t.Fatalf("%v clash without %s", got.Clash.Codes(), c.Code())
		}
	}
	for _, n := range got.Nearest {
		if !n.Condition.MayRelax() || !got.Clash.Has(n.Condition) {
			t.Fatalf("%s is let go", n.Condition.Code())
		}
		if !n.Possible {
			continue
		}
		allowed := n.Condition
		if c := p.Misses(s.Length, n.Mix) &^ allowed; c != 0 {
			t.Fatalf("without %s still misses %v", n.Condition.Code(), c.Codes())
		}
	}
}

// The court case: the smallest change is known by hand to need 550 mL of
// water and one and a half bananas or their like.
func TestSuggestCourt(t *testing.T) {
	p := courtPlanner(t)
	got := p.Suggest(Search{Length: Expected, Habit: courtHabit()})
	if !got.Met || got.Moved != 2 || got.Cost != 17 {
		t.Errorf("%+v", got)
	}
	if got := p.Suggest(Search{Length: Expected, Habit: courtHabit(), Bottles: []float64{500, 750}}); !got.Met || !wholeBottles(got.Mix[Water], []float64{500, 750}) && got.Mix[Water] != 600 {
		t.Errorf("in bottles %+v", got)
	}
}

// A gap that no mix closes: 70 g/h from drinks of 8 % at most, drunk at 0.5 L/h.
func TestSuggestSaysWhatClashes(t *testing.T) {
	s := courtSession()
	aim := Aim{Carbohydrate: Within(70, 90), Drinking: Within(0, 0.5), Strength: Within(0, 8)}
	p := newPlanner(t, courtBasis(), s, menuOf(t, []string{"drink-6", "drink-16"}, nil), aim)
	got := p.Suggest(Search{Length: Expected, Habit: Mix{Water: 500}})
	if got.Met || got.Clash != CarbohydrateLeast|DrinkingMost|StrengthMost {
		t.Fatalf("%v", got.Clash.Codes())
	}
	if len(got.Nearest) != 3 {
		t.Fatalf("%d nearest", len(got.Nearest))
	}
	for _, n := range got.Nearest {
		if !n.Possible || !(n.Missed > 0) {
			t.Errorf("%s: %+v", n.Condition.Code(), n)
		}
		// at 0.5 L/h and 8 % no more than 40 g/h can be drunk
		if q := p.Evaluate(Expected, n.Mix); n.Condition == CarbohydrateLeast && math.Abs(q.Carbohydrate.TotalGH-(70-n.Missed)) > 1e-6 || n.Condition == CarbohydrateLeast && q.Carbohydrate.TotalGH < 37 {
			t.Errorf("carbohydrate %g, missed %g", q.Carbohydrate.TotalGH, n.Missed)
		}
	}
}

// An aim above what is lost is not relaxed away: the ceiling stays.
func TestSuggestNeverRelaxesTheCeiling(t *testing.T) {
	aim := Aim{Deficit: Within(0, 0.1)}
	p := newPlanner(t, courtBasis(), courtSession(), NewMenu(), aim)
	got := p.Suggest(Search{Length: Expected, Habit: courtHabit()})
	if got.Met || got.Clash != DeficitMost|FluidCeiling {
		t.Fatalf("%v", got.Clash.Codes())
	}
	for _, n := range got.Nearest {
		if q := p.Evaluate(Expected, n.Mix); q.Guards.Stops() || n.Condition == FluidCeiling {
			t.Errorf("%s: %v", n.Condition.Code(), q.Guards.Codes())
		}
	}
}

func TestSuggestKeepsToChosenItems(t *testing.T) {
	b, s := courtBasis(), courtSession()
	aim := DefaultAim(b.Usual, s)
	aim.Allowed[Water] = true
	p := newPlanner(t, b, s, fullMenu(t), aim)
	got := p.Suggest(Search{Length: Expected, Habit: courtHabit()})
	if got.Met || !got.Clash.Has(ItemsChosen) {
		t.Fatalf("water alone meets %v", got.Clash.Codes())
	}
	for _, n := range got.Nearest {
		if n.Condition == ItemsChosen && (!n.Possible || p.Misses(Expected, n.Mix) != 0) {
			t.Errorf("%+v", n)
		}
	}
}

// In a band every aim is met; outside it at least one is not, or the slider does
// not go there.
func TestBandsHold(t *testing.T) {
	list := products(t)
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		mix := d.mix(p.menu)
		for s, b := range p.Bands(Expected, mix) {
			if p.menu[s].InUse && p.aim.allows(Slot(s)) {
				checkBand(t, d, p, mix, s, b)
			} else if !b.Empty || b.Clash != 0 {
				t.Fatalf("slot %d: %+v", s, b)
			}
		}
	})
}

func checkBand(t tester, d dice, p *Planner, mix Mix, s int, b Band) {
	t.Helper()
	at := func(x float64) Condition {
		m := mix
		m[s] = x
		return p.Misses(Expected, m)
	}
	if b.Empty {
		if x := d.between(0, p.menu[s].Most); at(x) == 0 || b.Clash == 0 {
			t.Fatalf("slot %d at %g meets all, band empty by %v", s, x, b.Clash.Codes())
		}
		return
	}
	x := b.Low + (b.High-b.Low)*d.Float64()
	if c := at(x); c != 0 {
		t.Fatalf("slot %d at %g in %g to %g misses %v", s, x, b.Low, b.High, c.Codes())
	}
	if out := b.Low * 0.99; out < b.Low-1e-3 && at(out) == 0 {
		t.Fatalf("slot %d at %g below %g meets all", s, out, b.Low)
	}
	most, _ := p.Most(Expected, mix, Slot(s))
	if b.High > most && b.Low <= most {
		t.Fatalf("slot %d: a band to %g where the slider stops at %g", s, b.High, most)
	}
	if out := b.High*1.01 + 1e-3; out < most && at(out) == 0 {
		t.Fatalf("slot %d at %g above %g meets all", s, out, b.High)
	}
}

func TestOffer(t *testing.T) {
	p := courtPlanner(t)
	offers := p.Offer(Search{Length: Expected, Habit: courtHabit()})
	kinds := [4]OptionKind{OptionHabit, OptionFluid, OptionFood, OptionAim}
	for i, o := range offers {
		if o.Kind != kinds[i] {
			t.Errorf("option %d is %s", i, o.Kind)
		}
		if o.Met != (p.Misses(Expected, o.Mix) == 0) {
			t.Errorf("%s: met %v, misses %v", o.Kind, o.Met, p.Misses(Expected, o.Mix).Codes())
		}
		if q := p.Evaluate(Expected, o.Mix); q.Guards.Stops() {
			t.Errorf("%s over-drinks", o.Kind)
		}
	}
	food := func(m Mix) float64 { return m[Food1] + m[Food2] + m[Food3] + m[Food4] }
	if food(offers[1].Mix) != 0 || food(offers[2].Mix) == 0 {
		t.Errorf("fluid only %v, with food %v", offers[1].Mix, offers[2].Mix)
	}
	if offers[0].Clash != DeficitMost|CarbohydrateLeast {
		t.Errorf("the habit misses %v", offers[0].Clash.Codes())
	}
	dry := newPlanner(t, courtBasis(), courtSession(), NewMenu(), p.Aim())
	if o := dry.Offer(Search{Length: Expected, Habit: Mix{Water: 600}})[2]; o.Met {
		t.Errorf("with food from a menu without: %+v", o)
	}
}

func TestCompare(t *testing.T) {
	p := courtPlanner(t)
	d := p.Compare(Expected, courtHabit(), Mix{Water: 1800, Drink1: 600})
	near(t, "drunk", d.DrunkL, 1.2)
	near(t, "deficit", d.DeficitL, -1.2)
	near(t, "deficit %", d.Deficit, -120/72.4)
	near(t, "water", d.Mix[Water], 1200)
	if !d.Lost.Has(PastLimit) || !d.Gained.Has(OverUsual|OverStomach) {
		t.Errorf("gained %v lost %v", d.Gained.Codes(), d.Lost.Codes())
	}
}

// What is suggested for known breaks can be drunk at them, and every mix that
// the breaks do not carry misses that condition.
func TestSuggestFitsTheBreaks(t *testing.T) {
	list := products(t)
	met, short := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		chances := d.chances(p.session.Minutes[Expected])
		at := p.At(chances)
		habit := d.mix(p.menu)
		var s Schedule
		p.Schedule(Expected, habit, chances, 0, &s)
		if misses := at.Misses(Expected, habit); len(chances) > 0 && !s.Fits && !misses.Has(BreaksMost|FluidCeiling) {
			t.Fatalf("%d of %d mL fit and nothing is missed but %v", s.DrinkableML, s.PlannedML, misses.Codes())
		} else if !s.Fits {
			short++
		}
		got := at.Suggest(Search{Length: Expected, Habit: habit})
		if !got.Met {
			return
		}
		met++
		if p.Schedule(Expected, got.Mix, chances, 0, &s); len(chances) > 0 && !s.Fits {
			t.Fatalf("of the suggested %d mL %d can be drunk", s.PlannedML, s.DrinkableML)
		}
	})
	if met == 0 || short == 0 {
		t.Errorf("%d were met, %d did not fit: the draw tests one side only", met, short)
	}
}

// Where two aims stand in the way at once, what is offered still comes as near
// as it can: drinking at 0.5 L/h brings neither the deficit under its limit nor
// 30 g/h out of drinks alone.
func TestOfferWhereTwoAimsClash(t *testing.T) {
	b, s := courtBasis(), courtSession()
	b.Usual.LH = 0.5
	p := newPlanner(t, b, s, menuOf(t, []string{"drink-6"}, []string{"banana"}), DefaultAim(b.Usual, s)).At(courtChances(t, 105))
	habit := Mix{Water: 500, Drink1: 250}
	fluid := p.Offer(Search{Length: Expected, Habit: habit})[1]
	was, is := p.Evaluate(Expected, habit), p.Evaluate(Expected, fluid.Mix)
	if fluid.Met || fluid.Mix[Food1] != 0 || !(is.DeficitL.Value < was.DeficitL.Value) || !(is.Carbohydrate.TotalGH > 28) {
		t.Errorf("%v: deficit %g L of %g, %g g/h", fluid.Mix, is.DeficitL.Value, was.DeficitL.Value, is.Carbohydrate.TotalGH)
	}
	if c := p.Misses(Expected, fluid.Mix); c.Has(DrinkingMost | BreaksMost | FluidCeiling | StrengthMost) {
		t.Errorf("misses %v", c.Codes())
	}
}

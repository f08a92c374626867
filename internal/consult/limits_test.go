package consult

import (
	"errors"
	"math"
	"slices"
	"testing"

	"ebbwell/internal/plan"
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/record"
)

// A mix is above the limit where it is by the calculation agreed on or by the present
// one, whichever is lower; an option or step above it may not be agreed.
func TestLimitIsTheLowerOfTwo(t *testing.T) {
	c, _ := newCase(t)
	own := c.Planner.CeilingOf(plan.Expected).FluidL
	water := func(litres float64) plan.Mix { return plan.Mix{plan.Water: 1000 * litres} }
	lost := c.Planner.Evaluate(plan.Expected, plan.Mix{}).LossL.Value
	if c.Over(water(own-0.01)) || !c.Over(water(own+0.01)) || c.Gains(water(lost-0.01)) || !c.Gains(water(lost+0.01)) || c.LimitL() != own {
		t.Errorf("by the calculation agreed on: limit %g of %g", c.LimitL(), own)
	}
	for _, factor := range []float64{0.8, 1.25} {
		b := c.Planner.Basis()
		b.SweatRate = plan.Between(b.SweatRate.Value*factor, b.SweatRate.Low*factor, b.SweatRate.High*factor)
		now, err := plan.New(b, c.Planner.Session(), c.Planner.Menu(), c.Planner.Aim())
		if err != nil {
			t.Fatal(err)
		}
		x := c
		x.Since.now = now
		limit, loss := own*min(1, factor), lost*min(1, factor)
		if math.Abs(x.LimitL()-limit) > 1e-9 || x.Over(water(limit-0.01)) || !x.Over(water(limit+0.01)) || x.Gains(water(loss-0.01)) || !x.Gains(water(loss+0.01)) {
			t.Errorf("now %g of it: limit %g, want %g", factor, x.LimitL(), limit)
		}
	}
	option := func(litres float64) record.Option {
		o, _ := OptionOf(c.Plan, record.OptionFluid)
		o.ID = record.NewID()
		return c.WithMix(o, water(litres))
	}
	fine, much := option(own-0.1), option(own+0.1)
	if err := c.MayAgree(fine); err != nil {
		t.Errorf("under the limit: %v", err)
	}
	if err := c.MayAgree(much); !errors.Is(err, ErrOverLimit) {
		t.Errorf("above the limit: %v", err)
	}
	p := c.Plan.Clone()
	p.Options = append(p.Options, fine, much)
	p.Steps = []record.Step{{OptionID: fine.ID, State: record.StepNow}, {OptionID: "gone"}, {OptionID: much.ID}}
	c.Plan = p
	if err := c.MayAgree(fine); !errors.Is(err, ErrOverLimit) {
		t.Errorf("a later step above the limit: %v", err)
	}
	held := c.HeldSteps()
	if len(held) != 2 || held[0].Over || held[0].Place != 1 || !held[1].Over || held[1].Place != 3 || math.Abs(held[1].FluidL-own-0.1) > 1e-9 {
		t.Errorf("%+v", held)
	}
	if above := c.AboveLimit(); len(above) != 1 || above[0].Place != 3 {
		t.Errorf("%+v", above)
	}
	if err := c.MayBe(p); err != nil {
		t.Errorf("the step in force is under the limit: %v", err)
	}
	p.Steps[0].State, p.Steps[2].State = record.StepDone, record.StepNow
	if err := c.MayBe(p); !errors.Is(err, ErrOverLimit) {
		t.Errorf("the step in force is above the limit: %v", err)
	}
	c.Since.Gone = true
	if err := c.MayBe(p); !errors.Is(err, ErrBasisOpen) {
		t.Errorf("the basis is gone: %v", err)
	}
}

// A ladder becomes steps of a plan: named and numbered from 1, the first in force, each
// with its own option, those of before taken out.
func TestLadderBecomesSteps(t *testing.T) {
	c, _ := newCase(t)
	l := plan.Ladder{Steps: []plan.Step{{Mix: plan.Mix{plan.Water: 800}, From: day()}, {Mix: plan.Mix{plan.Water: 900}, From: day().AddDate(0, 0, 7)}}}
	var numbers []int
	name := func(step int) string { numbers = append(numbers, step); return "step" }
	for range 2 { // the second time in the place of the first
		numbers = nil
		c.Plan = c.WithLadder(l, 3, name)
	}
	if !slices.Equal(numbers, []int{1, 2}) || len(c.Plan.Steps) != 2 || len(c.Plan.Options) != 6 {
		t.Fatalf("%v, %d steps, %d options", numbers, len(c.Plan.Steps), len(c.Plan.Options))
	}
	for i, s := range c.Plan.Steps {
		o, ok := OptionByID(c.Plan, s.OptionID)
		if !ok || c.MixOf(o)[plan.Water] != 800+100*float64(i) || s.Order != i || (s.State == record.StepNow) != (i == 0) || s.Sessions != 3 {
			t.Errorf("step %d: %+v", i, s)
		}
	}
	if _, place, ok := StepNow(c.Plan); !ok || place != 1 {
		t.Errorf("step %d in force", place)
	}
	from := record.DateOf(day())
	if got := ReviewDay(c.Plan, from); got != from.AddDays(7) {
		t.Errorf("reviewed on %s, when the next step begins", got)
	}
	if got := ReviewDay(c.Plan, from.AddDays(7)); got != from.AddDays(21) {
		t.Errorf("reviewed on %s, two weeks after a step that has begun", got)
	}
	c.Plan.Steps[0].State, c.Plan.Steps[1].State = record.StepDone, record.StepNow
	if got := ReviewDay(c.Plan, from); got != from.AddDays(14) {
		t.Errorf("reviewed on %s, with no further step", got)
	}
}

// What a proposal has for each option; while the breaks are not settled what the habit
// comes down to, or the habit.
func TestOfferedByHand(t *testing.T) {
	found := proposal.Proposal{Cut: proposal.Mix{700}, Pick: proposal.WithFood}
	found.Routes[proposal.DrinksAlone] = proposal.Route{Exists: true, Aim: proposal.Mix{1000}, Steps: []proposal.Step{{Mix: proposal.Mix{800}}}}
	found.Routes[proposal.WithFood] = proposal.Route{Exists: true, Aim: proposal.Mix{900}, Steps: []proposal.Step{{Mix: proposal.Mix{750}}}}
	for _, c := range []struct {
		ask                   bool
		fluid, food, aim      float64
		withoutFood, noDrinks bool
	}{
		{false, 800, 750, 900, false, false}, {true, 700, 700, 700, false, false}, {false, 800, 700, 700, true, false}, {false, 700, 750, 900, false, true},
	} {
		f := found
		f.Ask = c.ask
		f.Routes[proposal.WithFood].Exists = !c.withoutFood
		f.Routes[proposal.DrinksAlone].Exists = !c.noDrinks
		for kind, want := range map[record.OptionKind]float64{record.OptionFluid: c.fluid, record.OptionFood: c.food, record.OptionAim: c.aim} {
			if mix, ok := Offered(f, kind); !ok || mix[plan.Water] != want {
				t.Errorf("%+v, %s: %g mL, %v", c, kind, mix[plan.Water], ok)
			}
		}
		for _, kind := range []record.OptionKind{record.OptionHabit, record.OptionOwn, record.OptionStep} {
			if _, ok := Offered(f, kind); ok {
				t.Errorf("%s is offered", kind)
			}
		}
	}
}

// A session is like another where it is as long to a tenth.
func TestLikePlanIsAsLong(t *testing.T) {
	p := record.Plan{Meta: record.Meta{ID: "new"}, Target: record.Target{Sport: "basketball", Minutes: numberOf(100)}}
	for minutes, want := range map[float64]bool{100: true, 90: true, 110: true, 89: false, 111: false, 110.5: false, 89.5: false} {
		e := record.Plan{Meta: record.Meta{ID: "old"}, Target: record.Target{Sport: "basketball", Minutes: numberOf(minutes)}}
		if _, ok := likePlan(p, []record.Plan{e}); ok != want {
			t.Errorf("%g min: %v", minutes, ok)
		}
	}
	older, newer := p, p
	older.ID, older.CreatedAt = "older", day()
	newer.ID, newer.CreatedAt = "newer", day().AddDate(0, 0, 3)
	for _, list := range [][]record.Plan{{older, newer}, {newer, older}} {
		if was, _ := likePlan(p, list); was.ID != "newer" {
			t.Errorf("%s goes before the newer", was.ID)
		}
	}
	stop := newer
	stop.Basis.StopID = "s"
	if _, ok := likePlan(p, []record.Plan{stop}); ok {
		t.Error("the plan of a stop")
	}
}

// A round bottle of these measures by hand: 600 mL between 20 and 211 mm above the table
// are 63.2 mm wide; doubtful under 40 and above 110 mm.
func TestWidthOfBottles(t *testing.T) {
	b := OwnBottle{Full: 700, FullMM: 211, Low: 100, LowMM: 20}
	near(t, "width", b.Width(), math.Sqrt(4*600000/(math.Pi*191)), 1e-9)
	near(t, "height of half", b.Height(400), 20+0.5*191, 1e-9)
	for width, doubtful := range map[float64]bool{39: true, 41: false, 109: false, 111: true, 37: true, 113: true, 100: false} {
		mm := 4000 * 500 / (math.Pi * width * width)
		if got := (OwnBottle{Full: 500, FullMM: mm}).Doubtful(); got != doubtful {
			t.Errorf("%g mm wide: doubtful %v", width, got)
		}
	}
	if (OwnBottle{Full: 500}).Doubtful() {
		t.Error("a bottle whose mark was not measured is doubted")
	}
	for name, bad := range map[string]OwnBottle{
		"no volume": {FullMM: 200}, "no height": {Full: 500}, "second above": {Full: 500, FullMM: 200, Low: 600, LowMM: 20}, "second higher": {Full: 500, FullMM: 200, Low: 100, LowMM: 210},
		"half a second": {Full: 500, FullMM: 200, Low: 100}, "the other half": {Full: 500, FullMM: 200, LowMM: 20},
	} {
		if bad.Lined() {
			t.Errorf("%s: lines are drawn", name)
		}
	}
	if !(OwnBottle{Full: 500, FullMM: 200}).About() || b.About() || !b.Lined() {
		t.Error("one mark is about, two are not")
	}
	a := record.Athlete{Bottles: "Blue\t500\t200\nRed\t700\t211\t100\t20\nBare\t600\nTiny\t1\n\t750"}
	list := OwnBottles(a)
	want := []OwnBottle{{Name: "Blue", Full: 500, FullMM: 200}, {Name: "Red", Full: 700, FullMM: 211, Low: 100, LowMM: 20}, {Name: "Bare", Full: 600}, {Full: 750}}
	if !slices.Equal(list, want) {
		t.Errorf("%+v", list)
	}
	SetOwnBottles(&a, append(list, OwnBottle{Name: "none"}))
	if again := OwnBottles(a); !slices.Equal(again, want) {
		t.Errorf("written and read: %+v", again)
	}
}

// The kind of session is told by the breaks in a list that the first kind is without.
func TestKindOfSessionByItsBreaks(t *testing.T) {
	for name, c := range map[string]struct {
		breaks []record.Chance
		want   string
	}{
		"none": {nil, "training"}, "a bottle": {[]record.Chance{{Name: "carried-bottle"}}, "training"}, "stations": {[]record.Chance{{Name: "station"}}, "marathon"},
		"both": {[]record.Chance{{Name: "carried-bottle"}, {Name: "station"}}, "marathon"}, "of no kind": {[]record.Chance{{Name: "tea"}}, "training"},
	} {
		if kind, ok := KindOf("road-running", c.breaks); !ok || kind.Session != c.want {
			t.Errorf("%s: %s", name, kind.Session)
		}
	}
	if _, ok := KindOf("no such sport", nil); ok {
		t.Error("a sport that is not known has a kind of session")
	}
}

// Reasons for odd values come with the value they are about, in the order of the sheet,
// those of figures last; a text that is no reason, or empty, is none.
func TestKeptOddsOfASheet(t *testing.T) {
	sheet, a := caseSheet()
	first, last := "", ""
	for _, e := range Entries(sheet) {
		if e.Number.Known() {
			if first == "" {
				first = e.Path
			}
			last = e.Path
		}
	}
	raw := []record.RawText{
		{Field: "figures.sweatRate", Reason: true, Text: "weighed twice"}, {Field: last, Reason: true, Text: "a canister"}, {Field: first, Reason: true, Text: "a heavy day"},
		{Field: "session.minutes", Reason: true}, {Field: "weighings.change", Text: "what was typed"},
	}
	f := Find(sheet, a, raw, testSetup(t))
	var texts []string
	for _, k := range KeptOdds(f) {
		texts = append(texts, k.Text)
	}
	if !slices.Equal(texts, []string{"a heavy day", "a canister", "weighed twice"}) {
		t.Errorf("%v", texts)
	}
}

// A draft begun from an agreed plan takes the products frozen in that; the plan itself
// those of now, and frozen ones only where they are there no more.
func TestFrozenProducts(t *testing.T) {
	g := agree(t, false)
	d := testSetup(t)
	now := another(t)
	density := func(d Setup) float64 { p, _ := d.Pantry.Find("own.drink"); return p.Density.Value }
	was, is := density(d), density(now)
	if was == is {
		t.Fatal("the drink did not change")
	}
	draft := record.Plan{Meta: record.Meta{ID: "draft"}}
	for name, c := range map[string]struct{ got, want float64 }{
		"a draft":          {density(now.withProductsFor(draft, g.kept)), was},
		"the plan itself":  {density(now.withProductsFor(g.p, g.kept)), is},
		"no copy":          {density(now.withProductsFor(draft, nil)), is},
		"with the frozen":  {density(now.WithFrozen(g.kept)), was},
		"with none frozen": {density(now.WithFrozen(nil)), is},
		"beside those":     {density(now.besides(g.kept)), is},
		"beside none":      {density(now.besides(nil)), is},
		"where it is gone": {density(Setup{Pantry: &Pantry{place: map[record.ID]int{}}}.besides(g.kept)), was},
	} {
		if math.Abs(c.got-c.want) > 1e-12 {
			t.Errorf("%s: %g g/mL, want %g", name, c.got, c.want)
		}
	}
	// The agreed plan opens with the drink it was agreed with; a draft is of now.
	tests := []Findings{Find(g.sheet, g.a, nil, now)}
	opened, err := OpenPlan(g.p, g.a, tests, g.kept, day(), now)
	if err != nil || opened.Slots[plan.Drink1].Product.Density.Value != was || !opened.Since.Products {
		t.Errorf("%v, %g g/mL, %+v", err, opened.Slots[plan.Drink1].Product.Density.Value, opened.Since.Products)
	}
	p := g.p
	p.State = record.PlanDraft
	opened, err = OpenPlan(p, g.a, tests, nil, day(), now)
	if err != nil || opened.Slots[plan.Drink1].Product.Density.Value != is || opened.Anew {
		t.Errorf("a draft: %v, %g g/mL", err, opened.Slots[plan.Drink1].Product.Density.Value)
	}
}

// A decision that would put a step above the limit in force is refused and changes nothing;
// one that would not is kept. While the basis is open only holding is decided.
func TestDecisionsKeepTheLimit(t *testing.T) {
	c, _ := newCase(t)
	own := c.Planner.CeilingOf(plan.Expected).FluidL
	ladder := func(first, second float64) record.Plan {
		return c.WithLadder(plan.Ladder{Steps: []plan.Step{{Mix: plan.Mix{plan.Water: 1000 * first}}, {Mix: plan.Mix{plan.Water: 1000 * second}}}}, 3, func(int) string { return "step" })
	}
	p := ladder(own-0.3, own-0.1)
	if err := c.Decide(&p, record.Review{Decision: record.DecisionNext}); err != nil || p.Steps[1].State != record.StepNow {
		t.Errorf("to a step under the limit: %v, %+v", err, p.Steps)
	}
	if ok, err := c.TakeBack(&p, record.Review{}); !ok || err != nil || p.Steps[0].State != record.StepNow {
		t.Errorf("taken back: %v %v", ok, err)
	}
	p = ladder(own-0.3, own+0.1)
	if err := c.Decide(&p, record.Review{Decision: record.DecisionNext}); !errors.Is(err, ErrOverLimit) || p.Steps[0].State != record.StepNow || len(p.Reviews) != 0 {
		t.Errorf("to a step above the limit: %v, %+v", err, p.Steps)
	}
	if ok, err := c.TakeBack(&p, record.Review{}); ok || err != nil {
		t.Errorf("nothing to take back: %v %v", ok, err)
	}
	open := c
	open.Since.Gone = true
	p = ladder(own-0.3, own-0.1)
	if err := open.Decide(&p, record.Review{Decision: record.DecisionNext}); !errors.Is(err, ErrBasisOpen) || len(p.Reviews) != 0 {
		t.Errorf("on while the basis is open: %v", err)
	}
	if err := open.Decide(&p, record.Review{Decision: record.DecisionHold}); err != nil || len(p.Reviews) != 1 {
		t.Errorf("held while the basis is open: %v", err)
	}
}

// Food counts toward what a step has to drink with its water; a session of another length
// has the same rates, under both limits.
func TestStepsCountFoodWater(t *testing.T) {
	c, _ := newCase(t)
	o, _ := OptionOf(c.Plan, record.OptionFood)
	o.ID = record.NewID()
	mix := plan.Mix{plan.Water: 800}
	wet := plan.Slot(-1)
	for s := plan.Food1; s <= plan.Food4; s++ {
		if u := c.Planner.Menu()[s].Unit; c.Slots[s].InUse && u.FoodWaterL > 0.01 {
			wet = s
		}
	}
	if wet < 0 {
		t.Fatal("no wet food")
	}
	mix[wet] = 2
	o = c.WithMix(o, mix)
	c.Plan = c.Plan.Clone()
	c.Plan.Options = append(c.Plan.Options, o)
	c.Plan.Steps = []record.Step{{OptionID: o.ID}}
	if got, want := c.HeldSteps()[0].FluidL, 0.8+2*c.Planner.Menu()[wet].Unit.FoodWaterL; math.Abs(got-want) > 1e-9 {
		t.Errorf("%g L, want %g", got, want)
	}
	minutes := c.Planner.Session().Minutes[plan.Expected]
	for _, bad := range []float64{0, math.NaN(), 5000} {
		if _, _, _, err := c.ForMinutes(mix, bad); err == nil {
			t.Errorf("%g min", bad)
		}
	}
	_, length, half, err := c.ForMinutes(plan.Mix{plan.Water: 800}, minutes/2)
	if err != nil || length != plan.Short || half[plan.Water] != 400 {
		t.Errorf("half as long: %v, %g mL, %v", length, half[plan.Water], err)
	}
	b := c.Planner.Basis()
	b.SweatRate = plan.Between(0.4, 0.3, 0.5)
	if c.Since.now, err = plan.New(b, c.Planner.Session(), c.Planner.Menu(), c.Planner.Aim()); err != nil {
		t.Fatal(err)
	}
	if _, _, less, err := c.ForMinutes(plan.Mix{plan.Water: 800}, minutes/2); err != nil || less[plan.Water] > 300*minutes/120 || less[plan.Water] < 300*minutes/120-50 {
		t.Errorf("by the lower limit of now: %g mL, %v", less[plan.Water], err)
	}
}

// A step with added salt is marked where salt is withheld, and only there.
func TestSaltOfSteps(t *testing.T) {
	c, _ := newCase(t)
	for _, x := range []struct {
		withheld bool
		salt     float64
		want     bool
	}{{false, 0.5, false}, {true, 0.5, true}, {true, 0, false}} {
		o := record.Option{Meta: record.Meta{ID: "o"}, Salt: numberOf(x.salt)}
		c.Plan = record.Plan{Options: []record.Option{o}, Steps: []record.Step{{OptionID: "o"}}}
		c.Care.WithholdSalt = nil
		if x.withheld {
			c.Care.WithholdSalt = []record.FlagKind{record.FlagHeart}
		}
		if held := c.HeldSteps(); len(held) != 1 || held[0].Salt != x.want {
			t.Errorf("%+v: %+v", x, held)
		}
	}
}

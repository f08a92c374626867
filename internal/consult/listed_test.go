package consult

import (
	"slices"
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// Wishes are written down one by one, in one order, and taken back.
func TestWishesOfAPlan(t *testing.T) {
	var p record.Plan
	SetWish(&p, WishNoMore, true)
	SetWish(&p, WishNoFood, true)
	SetWish(&p, WishNoFood, true)
	if p.Rules.Wishes != "no-food no-more-drink" {
		t.Errorf("%q", p.Rules.Wishes)
	}
	SetWish(&p, WishNoMore, false)
	SetWish(&p, BreaksConfirmed, false)
	if p.Rules.Wishes != "no-food" || !Wished(p, WishNoFood) || Wished(p, WishNoMore) {
		t.Errorf("%q", p.Rules.Wishes)
	}
}

// A decision that is taken back puts the steps where they stood: next gives the step
// back, back gives the later one back, hold moved nothing; once only.
func TestTakenBackByHand(t *testing.T) {
	const done, now, ahead = record.StepDone, record.StepNow, record.StepAhead
	for _, c := range []struct {
		name     string
		before   []record.StepState
		decision record.Decision
		after    []record.StepState
	}{
		{"next", []record.StepState{now, ahead, ahead}, record.DecisionNext, []record.StepState{done, now, ahead}},
		{"next to the last", []record.StepState{done, now, ahead}, record.DecisionNext, []record.StepState{done, done, now}},
		{"next at the last", []record.StepState{done, done, now}, record.DecisionNext, []record.StepState{done, done, now}},
		{"back", []record.StepState{done, now, ahead}, record.DecisionBack, []record.StepState{now, ahead, ahead}},
		{"back from the last", []record.StepState{done, done, now}, record.DecisionBack, []record.StepState{done, now, ahead}},
		{"back at the first", []record.StepState{now, ahead, ahead}, record.DecisionBack, []record.StepState{now, ahead, ahead}},
		{"hold", []record.StepState{done, now, ahead}, record.DecisionHold, []record.StepState{done, now, ahead}},
	} {
		var p record.Plan
		for i, s := range c.before {
			p.Steps = append(p.Steps, record.Step{Meta: record.Meta{ID: record.ID("step" + string(rune('a'+i)))}, State: s})
		}
		states := func() (list []record.StepState) {
			for _, s := range p.Steps {
				list = append(list, s.State)
			}
			return list
		}
		Decide(&p, record.Review{Decision: c.decision})
		if !slices.Equal(states(), c.after) {
			t.Errorf("%s: %v, want %v", c.name, states(), c.after)
		}
		if !TakeBack(&p, record.Review{}) || !slices.Equal(states(), c.before) {
			t.Errorf("%s taken back: %v, want %v", c.name, states(), c.before)
		}
		if TakeBack(&p, record.Review{}) || len(p.Reviews) != 2 || p.Reviews[1].Order != 1 {
			t.Errorf("%s: taken back twice, %+v", c.name, p.Reviews)
		}
	}
	p := record.Plan{Reviews: []record.Review{{StepID: "gone", Decision: record.DecisionNext}}, Steps: []record.Step{{Meta: record.Meta{ID: "a"}, State: now}}}
	if !TakeBack(&p, record.Review{}) || p.Steps[0].State != now {
		t.Errorf("of a step that is gone: %+v", p.Steps)
	}
}

// Numbers of a sheet are named as the calculation names them: weighings by their moment
// and place among those that count, today's morning mass as none, other mornings from 1.
func TestNamesOfWeighings(t *testing.T) {
	count := map[record.Moment]int{}
	mass := numberOf(70)
	for _, c := range []struct {
		w     record.Weighing
		field evidence.Field
		item  int
	}{
		{record.Weighing{Moment: record.Before, Mass: mass}, evidence.MassBefore, 1}, {record.Weighing{Moment: record.Before}, evidence.MassBefore, 1},
		{record.Weighing{Moment: record.Before, Mass: mass, Aside: true}, evidence.MassBefore, 1}, {record.Weighing{Moment: record.Before, Mass: mass}, evidence.MassBefore, 2},
		{record.Weighing{Moment: record.After, Mass: mass, Date: "2026-05-14"}, evidence.MassAfter, 1}, {record.Weighing{Moment: record.Morning, Mass: mass, Date: "2026-05-12"}, evidence.MorningMass, 1},
		{record.Weighing{Moment: record.Morning, Mass: mass, Date: "2026-05-14"}, evidence.MorningMass, 0}, {record.Weighing{Moment: record.Morning, Mass: mass, Date: "2026-05-13"}, evidence.MorningMass, 2},
	} {
		if field, item := weighed(c.w, "2026-05-14", count); field != c.field || item != c.item {
			t.Errorf("%+v: %s %d, want %s %d", c.w, field, item, c.field, c.item)
		}
	}
}

// A problem finds the number it is about, and a reason where it is written: that of two
// weighings apart under before and after, that of a rate under the figure.
func TestPathsOfProblems(t *testing.T) {
	sheet, _ := caseSheet()
	for _, c := range []struct {
		p    evidence.Problem
		path string
	}{
		{evidence.Problem{Field: evidence.MassSpread, Item: 1}, "weighings.before"}, {evidence.Problem{Field: evidence.MassSpread, Item: 2}, "weighings.after"},
		{evidence.Problem{Field: evidence.MassChange}, "weighings.change"}, {evidence.Problem{Field: evidence.SweatRate}, "figures.sweatRate"},
		{evidence.Problem{Field: evidence.DrinkingRate}, "figures.drinkingAt"}, {evidence.Problem{Field: evidence.DrinkingRate, Item: 1}, ""}, {evidence.Problem{Field: evidence.FoodMass, Item: 9}, ""},
	} {
		if got := ReasonPath(sheet, c.p); got != c.path {
			t.Errorf("%+v: %q, want %q", c.p, got, c.path)
		}
	}
	first, before := "", 0.0
	for _, e := range Entries(sheet) {
		if e.Field == evidence.MassBefore {
			first, before = e.Path, *e.Number.Value
		}
	}
	for name, c := range map[string]struct {
		p    evidence.Problem
		path string
	}{
		"its value":     {evidence.Problem{Field: evidence.MassBefore, Item: 1, Value: before, Code: evidence.CodeMissing}, first},
		"another value": {evidence.Problem{Field: evidence.MassBefore, Item: 1, Value: before + 1, Code: evidence.CodeMissing}, ""},
		"in the order":  {evidence.Problem{Field: evidence.MassBefore, Item: 1, Value: before + 1, Code: evidence.CodeOrder}, first},
		"another item":  {evidence.Problem{Field: evidence.MassBefore, Item: 2, Value: before}, ""},
	} {
		if got := PathOf(sheet, c.p); first == "" || got != c.path {
			t.Errorf("%s: %q, want %q", name, got, c.path)
		}
		if got := ReasonPath(sheet, c.p); got != c.path {
			t.Errorf("%s, its reason: %q, want %q", name, got, c.path)
		}
	}
}

// Items of a list are numbered by their row.
func TestRowsAreNumbered(t *testing.T) {
	sheet, _ := caseSheet()
	items := map[evidence.Field][]int{}
	for _, e := range Entries(sheet) {
		items[e.Field] = append(items[e.Field], e.Item)
	}
	rows := 0
	for field, list := range items {
		for i := 1; i < len(list); i++ {
			if list[i] == list[i-1]+1 {
				rows++
			}
		}
		if slices.Contains(list, 0) && len(list) > 1 && field != evidence.MorningMass {
			t.Errorf("%s: %v", field, list)
		}
	}
	if rows == 0 {
		t.Errorf("no list of a sheet is numbered: %v", items)
	}
}

// The low end of an estimate reaches down by the share that the field method left in its
// tests, the high end and the middle do not.
func TestFieldMethodReachesDown(t *testing.T) {
	f := Findings{}
	f.Sweat.Fluid.Bias, f.Sweat.Fluid.Rate = 0.3, known(1.5)
	r := Calculation{Tests: []Findings{f}}
	var b climate.Basis
	b.Rate = figure.Figure{Known: true, Value: 1.5, Range: quantity.Range{Low: 1, High: 2}, Ranged: true}
	got := r.reachingDown(b).Rate
	near(t, "low", got.Range.Low, 0.8, 1e-12)
	near(t, "high", got.Range.High, 2, 0)
	near(t, "middle", got.Value, 1.5, 0)
}

// A plan is based on tests in their order of weight, the one whose session it is again
// first; sodium of theirs is taken only where they were made in such conditions.
func TestBasisOfACalculation(t *testing.T) {
	test := func(id record.ID) Findings {
		f := Findings{Test: record.Test{Meta: record.Meta{ID: id}}}
		f.Sweat.Sodium.Concentration = figure.Figure{Known: true, Value: 40, Range: quantity.Range{Low: 30, High: 50}, Ranged: true}
		return f
	}
	r := Calculation{Tests: []Findings{test("a"), test("b"), test("c")}, Outing: Outing{Like: "b"}}
	r.Climate.From = []int{2, 1, 0}
	r.Climate.Rate = figure.Figure{Known: true, Value: 1.5, Range: quantity.Range{Low: 1, High: 2}, Ranged: true}
	var ids []record.ID
	for _, f := range r.named() {
		ids = append(ids, f.Test.ID)
	}
	if !slices.Equal(ids, []record.ID{"b", "c", "a"}) {
		t.Errorf("%v", ids)
	}
	a := record.Athlete{UsualMass: numberOf(70)}
	for _, grade := range []climate.Grade{climate.Tested, climate.Near, climate.Far} {
		r.Climate.Grade = grade
		b, ok := r.Basis(a, day())
		if !ok || b.Plan.Tested != (grade == climate.Tested) || b.Plan.Sodium.Known != (grade == climate.Tested) || b.Kind != record.BasisPool || b.Plan.Tests != 3 {
			t.Errorf("%v: %v %+v", grade, ok, b.Plan)
		}
	}
	r.Climate.From = []int{1}
	if b, _ := r.Basis(a, day()); b.Kind != record.BasisTest {
		t.Errorf("one test: %s", b.Kind)
	}
	r.Climate.Rate.Estimate = true
	if b, _ := r.Basis(a, day()); b.Kind != record.BasisEstimate {
		t.Errorf("an estimate: %s", b.Kind)
	}
	r.Climate.From = nil
	if _, ok := r.Basis(a, day()); ok {
		t.Error("no test behind it, and a plan can rest on it")
	}
	r.Climate.From, r.Climate.Rate.Known = []int{1}, false
	if _, ok := r.Basis(a, day()); ok {
		t.Error("no rate, and a plan can rest on it")
	}
}

// A figure is found by its name, and none by another's.
func TestFigureByName(t *testing.T) {
	f := Findings{}
	f.Sweat.Fluid.Rate, f.Sweat.Fluid.Loss = known(1.4), known(2.1)
	if got := f.FigureNamed("sweat-rate"); got.Value != 1.4 {
		t.Errorf("%+v", got)
	}
	if got := f.FigureNamed("sweat-loss"); got.Value != 2.1 {
		t.Errorf("%+v", got)
	}
	if got := f.FigureNamed("nothing"); got.Known {
		t.Errorf("%+v", got)
	}
}

// Without a choice of the practice the deficit is not to pass 2 %; without an effort the
// advice is that for one that is not known.
func TestDefaultsOfASheet(t *testing.T) {
	sheet, a := caseSheet()
	d := testSetup(t)
	sheet.Session.Effort = record.Number{}
	f := Find(sheet, a, nil, d)
	if f.Limit != 2 || f.Advice.Range != fuel.CarbohydrateDuring(f.Minutes, fuel.EffortUnknown).Range {
		t.Errorf("limit %g, advice %+v", f.Limit, f.Advice)
	}
	d.Settings.DeficitAim = numberOf(1.5)
	if f := Find(sheet, a, nil, d); f.Limit != 1.5 {
		t.Errorf("limit %g", f.Limit)
	}
	f.Test.Patches = []record.Patch{{AtLaboratory: true, Sodium: numberOf(40)}, {Sodium: record.Number{}}}
	if f.Waits() {
		t.Error("no patch without its value is at the laboratory")
	}
	f.Test.Patches[0].Sodium = record.Number{}
	if !f.Waits() {
		t.Error("a patch is at the laboratory")
	}
}

// A gain is one flag of a sheet, and no other.
func TestGainIsItsOwnFlag(t *testing.T) {
	f := Findings{}
	f.Sweat.Flags = []sweat.Flag{{ID: "other", Size: 2}}
	if _, ok := GainOf(f, record.Athlete{}, day()); ok || Gained(f) {
		t.Error("another flag is a gain")
	}
	f.Sweat.Flags = append(f.Sweat.Flags, sweat.Flag{ID: sweat.FlagGained, Size: 0.3})
	if g, ok := GainOf(f, record.Athlete{}, day()); !ok || !Gained(f) || g.Kilograms != 0.3 {
		t.Errorf("%+v", g)
	}
	if line := LineOf(f); line.Gain != record.GainYes {
		t.Errorf("%+v", line)
	}
}

// What of a habit a plan takes: what was drunk and eaten, bottles and portions of one
// product together; nothing of what came back full, and a gap where nobody knows.
func TestPartsOfAHabit(t *testing.T) {
	d := testSetup(t)
	drink, _ := d.Pantry.Find("own.drink")
	banana, _ := d.Pantry.Find("generic.banana")
	g := banana.Portion.Grams
	f := Findings{Intake: fuel.Intake{
		Bottles: []fuel.Part{{Item: 1, Known: true, Millilitres: 300, Product: drink}, {Item: 2, Known: true, Millilitres: 200.4, Product: drink}, {Item: 3, Known: true, Product: drink}, {Item: 4, Known: true, Millilitres: 150, Product: fuel.Product{Name: "?"}}},
		Foods:   []fuel.Part{{Item: 1, Known: true, Grams: g, Product: banana}, {Item: 2, Known: true, Grams: g / 2, Product: banana}, {Item: 3, Known: true, Product: banana}, {Item: 4, Product: fuel.Product{Name: "cake"}}},
	}}
	o := habitOf(record.Plan{}, f, d)
	if len(o.Items) != 3 || o.Items[0].Volume.Or(0) != 150 || o.Items[1].Volume.Or(0) != 500 || o.Items[2].Portions.Or(0) != 1.5 || o.Items[2].Order != 2 {
		t.Errorf("%+v", o.Items)
	}
	if gaps := f.Gaps(); !slices.Equal(gaps, []Gap{{Item: 4, Name: "?"}, {Item: 4, Food: true, Name: "cake"}}) {
		t.Errorf("%+v", gaps)
	}
	f.Test.ID = "t"
	c := Case{Plan: record.Plan{Basis: record.PlanBasis{TestID: "t"}}, Basis: Basis{Tests: []Findings{{Test: record.Test{Meta: record.Meta{ID: "s"}}}}, Calculation: &Calculation{Tests: []Findings{f}}}}
	if len(c.Gaps()) != 2 {
		t.Errorf("%+v", c.Gaps())
	}
	c.Plan.Basis.TestID = "u"
	if len(c.Gaps()) != 0 {
		t.Errorf("of another test: %+v", c.Gaps())
	}
}

// A hidden mass: all masses of a sheet move together to the class, to the milligram; by
// the usual mass, else the first that was ever weighed, else the sheet's.
func TestSheetOfAHiddenMass(t *testing.T) {
	sheet := record.Test{Session: record.Session{Date: "2026-05-14"}, Weighings: []record.Weighing{
		{Moment: record.Before, Mass: numberOf(72.4)}, {Moment: record.After, Mass: numberOf(70.299999)}, {Moment: record.Morning, Mass: numberOf(72.4000004)}, {Moment: record.After},
	}}
	a := record.Athlete{MassHidden: true, MassHiddenSettled: true, Born: "1990-01-01"}
	of := func(a record.Athlete) []record.Weighing { return coarse(sheet, a).Weighings }
	class := *of(a)[0].Mass.Value
	if class == 72.4 {
		t.Fatal("the mass itself")
	}
	near(t, "after", *of(a)[1].Mass.Value-class, -2.100001, 1e-10)
	near(t, "morning", *of(a)[2].Mass.Value-class, 0, 1e-10)
	if of(a)[3].Mass.Known() {
		t.Error("a mass that was not weighed")
	}
	a.FirstMass = 45
	if first := *of(a)[0].Mass.Value; first == class || first != ClassMass(record.Athlete{}, 45) {
		t.Errorf("by the first mass: %g", first)
	}
	a.UsualMass = numberOf(100)
	if usual := *of(a)[0].Mass.Value; usual != ClassMass(record.Athlete{}, 100) {
		t.Errorf("by the usual mass: %g", usual)
	}
	a.UsualMass = numberOf(0)
	if first := *of(a)[0].Mass.Value; first != ClassMass(record.Athlete{}, 45) {
		t.Errorf("a usual mass of nothing: %g", first)
	}
	a.MassHidden = false
	if seen := *of(a)[0].Mass.Value; seen != 72.4 {
		t.Errorf("seen: %g", seen)
	}
	if usualMass(record.Athlete{UsualMass: numberOf(63), Born: "1990-01-01", Meta: record.Meta{CreatedAt: day()}}) != 63 {
		t.Error("a usual mass that is seen")
	}
}

// The speed of the body where only the sport is known, and what an effort is known from,
// best first.
func TestWhatAnEffortIsKnownFrom(t *testing.T) {
	d := testSetup(t)
	var err error
	if d.Activities, err = climate.LoadActivities(); err != nil {
		t.Fatal(err)
	}
	k := effortKnownOf(record.Session{Sport: "no such sport"}, record.Athlete{}, d)
	if k.own != 1 || k.from != fromNothing || k.assumed != 6 {
		t.Errorf("an unknown sport: %+v", k)
	}
	k = effortKnownOf(record.Session{Sport: "road-running"}, record.Athlete{}, d)
	if k.from != fromSport || k.sportMet == nil || k.assumed != *k.sportMet {
		t.Errorf("a known sport: %+v", k)
	}
	s := record.Session{Sport: "basketball"}
	for _, c := range []struct {
		set  func()
		want effortFrom
	}{
		{func() { s.Effort = numberOf(6) }, fromRating}, {func() { s.Activity = "basketball" }, fromActivity}, {func() { s.Energy = numberOf(600) }, fromEnergy},
		{func() { s.Met = numberOf(8) }, fromMet}, {func() { s.Power = numberOf(200) }, fromMet}, {func() { s.Speed = numberOf(10) }, fromSpeed},
	} {
		c.set()
		got := effortKnownOf(s, record.Athlete{}, d)
		if got.from != c.want {
			t.Errorf("%+v: %d, want %d", s, got.from, c.want)
		}
	}
	ride := record.Session{Sport: "road-cycling", Power: numberOf(200), Speed: numberOf(30)}
	if got := effortKnownOf(ride, record.Athlete{}, d); got.from != fromPower {
		t.Errorf("power on a bicycle: %d", got.from)
	}
	ride.Power = record.Number{}
	if got := effortKnownOf(ride, record.Athlete{}, d); got.from == fromSpeed {
		t.Error("a speed on a bicycle tells no effort")
	}
}

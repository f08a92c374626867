package consult

import (
	"math"
	"slices"
	"testing"

	"ebbwell/internal/figure"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

func known(x float64) figure.Figure { return figure.Figure{Known: true, Value: x} }

func numberOf(x float64) record.Number { return record.Num(x, "") }

func TestBackgroundOfACase(t *testing.T) {
	c, d := newCase(t)
	b := c.background(d)
	if !b.Tested || slices.Contains(b.Held[:], true) {
		t.Errorf("%+v", b)
	}
	c.Plan.UsualHabit = true
	if c.background(d).Tested {
		t.Error("the usual habit is no tested one")
	}
	c.Plan.UsualHabit, c.Basis.Kind = false, record.BasisEstimate
	if c.background(d).Tested {
		t.Error("an estimate is no test")
	}
	Hold(&c.Plan, HeldSalt, true)
	held := c.background(d).Held
	for s := range held {
		if held[s] != (plan.Slot(s) == plan.Salt) {
			t.Errorf("slot %d held: %v", s, held[s])
		}
	}
	Hold(&c.Plan, HeldSalt, false)
	Hold(&c.Plan, "own.drink", true)
	held = c.background(d).Held
	if !held[plan.Drink1] || held[plan.Salt] || held[plan.Water] {
		t.Errorf("%v", held)
	}
	Hold(&c.Plan, "own.drink", false)
	c.Care.WithholdSalt = []record.FlagKind{record.FlagHeart}
	held = c.background(d).Held
	for s := range held {
		if held[s] != (plan.Slot(s) == plan.Salt) {
			t.Errorf("salt withheld, slot %d held: %v", s, held[s])
		}
	}
	test, ok := c.habitTest()
	if !ok || test.Test.ID != "t" {
		t.Errorf("%v", ok)
	}
	for change, want := range map[float64]bool{-0.1: false, 0: false, 0.1: true} {
		c.Basis.Tests[0].Sweat.Fluid.MassChange = known(change)
		if got := c.background(d).Gained; got != want {
			t.Errorf("change of %g %%: gained %v", change, got)
		}
	}
}

func TestUsualSizeOfSteps(t *testing.T) {
	for _, c := range []struct {
		fluid, carbohydrate record.Number
		want                bool
	}{{record.Number{}, record.Number{}, true}, {numberOf(0.2), record.Number{}, false}, {record.Number{}, numberOf(20), false}} {
		p := record.Plan{Rules: record.StepRules{Fluid: c.fluid, Carbohydrate: c.carbohydrate}}
		if got := UsualSize(p, record.Settings{}); got != c.want {
			t.Errorf("%v, %v: %v", c.fluid.Or(0), c.carbohydrate.Or(0), got)
		}
	}
}

func TestFirstOfTests(t *testing.T) {
	list := []Findings{{Test: record.Test{Meta: record.Meta{ID: "a"}}}, {Test: record.Test{Meta: record.Meta{ID: "b"}}}, {Test: record.Test{Meta: record.Meta{ID: "c"}}}}
	got := First(list, "c")
	if got[0].Test.ID != "c" || got[1].Test.ID != "a" || got[2].Test.ID != "b" {
		t.Errorf("%v %v %v", got[0].Test.ID, got[1].Test.ID, got[2].Test.ID)
	}
}

// Our own edges: hot from 25 °C on, cold under 10 °C.
func TestHeatOfAir(t *testing.T) {
	for x, want := range map[float64]plan.Heat{25: plan.Hot, 26: plan.Hot, 24.9: plan.Temperate, 10: plan.Temperate, 9.9: plan.Cold, 10.5: plan.Temperate, 9.5: plan.Cold} {
		if got := HeatOf(record.Air{Temperature: numberOf(x)}); got != want {
			t.Errorf("%g °C: %v", x, got)
		}
	}
	if HeatOf(record.Air{}) != plan.HeatUnknown {
		t.Error("air that is not known")
	}
}

// What was drunk with a stomach of 3 of 10 at most is tolerated.
func TestToleratedDrinking(t *testing.T) {
	test := func(rate, stomach float64) Findings {
		f := Findings{}
		f.Sweat.Fluid.DrinkingRate = known(rate)
		f.Test.Feeling.Stomach = numberOf(stomach)
		return f
	}
	a := record.Athlete{UsualDrinking: numberOf(0.5)}
	for _, c := range []struct {
		tests []Findings
		want  float64
	}{
		{nil, 0.5}, {[]Findings{test(0.7, 3)}, 0.7}, {[]Findings{test(0.7, 3.1)}, 0.5}, {[]Findings{test(0.7, 2.8)}, 0.7},
		{[]Findings{test(0.4, 0)}, 0.5}, {[]Findings{test(0.8, 0), test(0.6, 0)}, 0.8},
	} {
		if got := toleratedBy(a, c.tests); !got.Known || got.LH != c.want {
			t.Errorf("%+v, want %g", got, c.want)
		}
	}
	if got := toleratedBy(record.Athlete{}, nil); got.Known {
		t.Errorf("%+v", got)
	}
}

func TestBreathByTheHour(t *testing.T) {
	f := Findings{Minutes: 90, Timed: true}
	f.Sweat.Corrections = []sweat.Correction{
		{ID: sweat.Respiratory, Size: known(0.15), On: true}, {ID: sweat.Exchange, Size: known(-0.06), On: true},
	}
	b := breathOfTest(f)
	near(t, "respiratory", b.respiratory, 0.1, 1e-12)
	near(t, "exchange", b.exchange, -0.04, 1e-12)
	f.Sweat.Corrections[0].Size = known(-0.15)
	near(t, "breath that gains", breathOfTest(f).respiratory, 0, 0)
	for name, change := range map[string]func(*Findings){
		"off":       func(f *Findings) { f.Sweat.Corrections[0].On = false },
		"unknown":   func(f *Findings) { f.Sweat.Corrections[0].Size.Known = false },
		"not timed": func(f *Findings) { f.Timed = false },
		"no time":   func(f *Findings) { f.Minutes = 0 },
	} {
		g := Findings{Minutes: 90, Timed: true}
		g.Sweat.Corrections = []sweat.Correction{{ID: sweat.Respiratory, Size: known(0.15), On: true}}
		change(&g)
		near(t, name, breathOfTest(g).respiratory, 0, 0)
	}
}

func TestFieldBiasIsTheLargest(t *testing.T) {
	test := func(bias, rate float64) Findings {
		f := Findings{}
		f.Sweat.Fluid.Bias, f.Sweat.Fluid.Rate = bias, known(rate)
		return f
	}
	near(t, "none", fieldBias(nil), 0, 0)
	near(t, "largest", fieldBias([]Findings{test(0.1, 2), test(0.2, 1.6), test(0.1, 1)}), 0.125, 1e-12)
	near(t, "no rate", fieldBias([]Findings{test(0.1, 0), test(0.1, -1)}), 0, 0)
	near(t, "all", fieldBias([]Findings{test(3, 1)}), 1, 0)
	near(t, "almost all", fieldBias([]Findings{test(0.95, 1)}), 0.95, 1e-12)
}

func TestMouthfulOfAnAthlete(t *testing.T) {
	if got := MouthfulOf(record.Athlete{Mouthful: numberOf(32)}); got != 32 {
		t.Errorf("%v", got)
	}
	if got := MouthfulOf(record.Athlete{Sex: record.Male}); got != 25 {
		t.Errorf("%v", got)
	}
	if got := MouthfulOf(record.Athlete{Sex: record.Female}); got != 20 {
		t.Errorf("%v", got)
	}
}

// The habit is what was drunk, whatever the breaks hold; other options are what
// the breaks can carry.
func TestHabitIsNotCutToTheBreaks(t *testing.T) {
	c, _ := newCase(t)
	c.Plan.Chances = c.Plan.Chances[:1]
	p := c.Plan.Clone()
	for i := range p.Options {
		mix := c.MixOf(p.Options[i])
		mix[plan.Water] = 3000
		p.Options[i] = c.WithMix(p.Options[i], mix)
	}
	c.Plan = p
	for _, o := range c.WithCarried(p).Options {
		got := c.MixOf(o)[plan.Water]
		if habit := o.Kind == record.OptionHabit; habit != (got == 3000) {
			t.Errorf("%s: %g mL", o.Kind, got)
		}
	}
	for _, o := range p.Options {
		if got := c.Carried(o)[plan.Water]; (o.Kind == record.OptionHabit) != (got == 3000) {
			t.Errorf("%s carries %g mL", o.Kind, got)
		}
	}
}

func TestAlikeFigures(t *testing.T) {
	for _, c := range []struct {
		a, b float64
		want bool
	}{{1, 1, true}, {1, 1 + 1e-10, true}, {1, 1 + 1.05e-9, false}, {0, 0.95e-9, true}, {1000, 1000 + 0.9e-6, true}, {1000, 1000 + 1.1e-6, false}, {-1000, -1000 - 0.9e-6, true}} {
		if got := alike(c.a, c.b); got != c.want {
			t.Errorf("%.12g and %.12g: %v", c.a, c.b, got)
		}
	}
	_, a := caseSheet()
	sheet, _ := caseSheet()
	f := Find(sheet, a, nil, testSetup(t))
	if list := f.Differing(f); len(list) != 0 {
		t.Errorf("differs from itself: %v", list)
	}
	for name, change := range map[string]func(*figure.Figure){
		"value":  func(x *figure.Figure) { x.Value += 0.01 },
		"low":    func(x *figure.Figure) { x.Range.Low -= 0.01 },
		"high":   func(x *figure.Figure) { x.Range.High += 0.01 },
		"known":  func(x *figure.Figure) { x.Known = false },
		"ranged": func(x *figure.Figure) { x.Ranged = false },
	} {
		g := f
		change(&g.Sweat.Fluid.Loss)
		if list := f.Differing(g); !slices.Equal(list, []string{"sweat-loss"}) {
			t.Errorf("%s: %v", name, list)
		}
	}
	line := LineOf(f)
	if line.Rate == nil || *line.Rate != f.Sweat.Fluid.Rate.Value || !line.Ranged || line.Method != (record.Settings{}).Method() {
		t.Errorf("%+v", line)
	}
	f.Sweat.Fluid.Bias = 0.1
	if LineOf(f).Method != (record.Settings{FieldMethod: true}).Method() {
		t.Error("the field method is not told")
	}
}

// A gain within a step of the scale, 0.1 kg where it is not known, and with a
// stomach under 7 is weighed again.
func TestWhenToWeighAgain(t *testing.T) {
	for _, c := range []struct {
		gain    float64
		step    record.Number
		stomach record.Number
		want    bool
	}{
		{0.05, numberOf(0.05), record.Number{}, true}, {0.06, numberOf(0.05), record.Number{}, false}, {0.1, record.Number{}, record.Number{}, true},
		{0.095, record.Number{}, record.Number{}, true}, {0.105, record.Number{}, record.Number{}, false},
		{0.05, numberOf(0.05), numberOf(6), true}, {0.05, numberOf(0.05), numberOf(7), false}, {0.05, numberOf(0.05), numberOf(8), false},
	} {
		f := Findings{}
		f.Sweat.Flags = []sweat.Flag{{ID: sweat.FlagGained, Size: c.gain}}
		f.Test.Scale.Step, f.Test.Feeling.Stomach = c.step, c.stomach
		if g, ok := GainOf(f, record.Athlete{}, day()); !ok || g.WeighAgain != c.want || g.Kilograms != c.gain {
			t.Errorf("%+v: %+v, %v", c, g, ok)
		}
	}
	if _, ok := GainOf(Findings{}, record.Athlete{}, day()); ok {
		t.Error("a gain of nothing")
	}
}

func TestOtherLossesOfASheet(t *testing.T) {
	f := Findings{}
	f.Sweat.Balance = []sweat.Line{
		{ID: sweat.LineBody, Kilograms: 2}, {ID: sweat.LineDrunk, Kilograms: 0.8}, {ID: sweat.LineEaten, Kilograms: 0.15}, {ID: sweat.LineUrine, Kilograms: -0.3},
		{ID: sweat.LineStool, Kilograms: -0.1}, {ID: sweat.LineRespiratory, Kilograms: -0.11}, {ID: sweat.LineExchange, Kilograms: -0.05},
	}
	o := f.OtherLosses()
	near(t, "breath", o.Breath, 0.16, 1e-12)
	near(t, "urine", o.Urine, 0.4, 1e-12)
	near(t, "food", o.Food, 0.15, 1e-12)
	near(t, "beside", f.Beside(false), 0.56, 1e-12)
	near(t, "beside, hidden", f.Beside(true), 0.4, 1e-12)
	f.Sweat.Balance = []sweat.Line{{ID: sweat.LineExchange, Kilograms: 0.05}, {ID: sweat.LineUrine, Kilograms: -0.3}}
	near(t, "breath that gains", f.Beside(false), 0.3, 1e-12)
	f.Sweat.Fluid.Deficit, f.Sweat.Fluid.DeficitShare = known(1.4), known(2)
	near(t, "deficit at 3 %", f.DeficitAt(3), 2.1, 1e-12)
	f.Limit = 2.5
	near(t, "limit", f.LimitDeficit(), 1.75, 1e-12)
	f.Sweat.Fluid.DeficitShare = known(0)
	near(t, "no share", f.DeficitAt(3), 0, 0)
	f.Sweat.Fluid.DeficitShare.Known = false
	near(t, "unknown share", f.DeficitAt(3), 0, 0)
	in := Findings{Intake: fuel.Intake{
		Bottles: []fuel.Part{{Known: true, Grams: 500, Product: fuel.Product{ID: string(Water)}}, {Known: true, Grams: 300, Product: fuel.Product{ID: "x"}}, {Grams: 900}, {Known: true, Grams: 200, Product: fuel.Product{ID: "y"}}},
		Foods:   []fuel.Part{{Known: true, Grams: 60}, {Grams: 90}, {Known: true, Grams: 40}},
	}}.TakenIn()
	if in.Water != 0.5 || math.Abs(in.Drink-0.5) > 1e-12 || math.Abs(in.Food-0.1) > 1e-12 {
		t.Errorf("%+v", in)
	}
}

func TestSafetyNotes(t *testing.T) {
	var sheet record.Test
	note := func(kind record.SafetyKind, item, answer, text string) {
		Note(&sheet, record.SafetyNote{Kind: kind, Item: item, Answer: answer, Text: text})
	}
	note(record.SafetyAsked, "headache", record.AnswerYes, "")
	note(record.SafetyAsked, "headache", record.AnswerYes, "")
	if len(sheet.Safety) != 1 || sheet.Safety[0].Order != 1 {
		t.Errorf("%+v", sheet.Safety)
	}
	s := SafetyOf(sheet)
	if s.Emergency() || !slices.Equal(s.Yes(), []string{"headache"}) || len(s.Unasked()) != len(Asked())-1 || slices.Contains(s.Unasked(), "headache") {
		t.Errorf("%+v", s)
	}
	note(record.SafetyAsked, "fit", record.AnswerYes, "")
	note(record.SafetyAsked, "headache", "", "")
	s = SafetyOf(sheet)
	if !s.Emergency() || !slices.Equal(s.Yes(), []string{"fit"}) || len(sheet.Safety) != 3 || sheet.Safety[2].Order != 3 {
		t.Errorf("%+v", s)
	}
	note(record.SafetyDone, ActStop, record.AnswerYes, "")
	note(record.SafetyDone, ActStop, record.AnswerYes, "")
	if _, ok := SafetyOf(sheet).Done[ActStop]; !ok || len(sheet.Safety) != 4 {
		t.Errorf("%+v", sheet.Safety)
	}
	note(record.SafetyDone, ActStop, "no", "")
	note(record.SafetyDone, ActStop, "no", "")
	if _, ok := SafetyOf(sheet).Done[ActStop]; ok || len(sheet.Safety) != 5 {
		t.Errorf("%+v", sheet.Safety)
	}
	note(record.SafetyTold, ToldName, "", "the doctor")
	note(record.SafetyTold, ToldName, "", "the doctor")
	if s := SafetyOf(sheet); s.Told != "the doctor" || s.Nobody || len(sheet.Safety) != 6 {
		t.Errorf("%+v", s)
	}
	note(record.SafetyTold, ToldNobody, "", "the doctor")
	if s := SafetyOf(sheet); !s.Nobody || len(sheet.Safety) != 7 {
		t.Errorf("%+v", s)
	}
}

// A red flag by weighing: the heaviest weighing after counts, one set aside does
// not, and the second is told.
func TestRedFlagOfWeighings(t *testing.T) {
	sheet, a := caseSheet()
	for _, c := range []struct {
		name         string
		after        []float64
		aside        bool
		ok, again    bool
		kilos        float64
		gained, mean bool
	}{
		{"lighter", []float64{70.3}, false, false, false, 0, false, false},
		{"as heavy", []float64{72.4}, false, false, false, 0, false, false},
		{"heavier", []float64{72.8}, false, true, false, 0.4, true, true},
		{"one of two heavier", []float64{72.2, 72.5}, false, true, true, 0.1, true, false},
		{"set aside", []float64{72.5, 72.2}, true, false, true, 0, false, false},
	} {
		s := sheet.Clone()
		s.Weighings = s.Weighings[:1]
		for i, m := range c.after {
			s.Weighings = append(s.Weighings, record.Weighing{Moment: record.After, Mass: record.Num(m, quantity.Kilogram), Aside: c.aside && i == 0})
		}
		r, ok := RedFlagOf(Find(s, a, nil, testSetup(t)), a, day())
		if ok != c.ok || r.Again != c.again || r.Gained != c.gained || r.Mean != c.mean || math.Abs(r.Gain.Kilograms-c.kilos) > 1e-9 {
			t.Errorf("%s: %+v, %v", c.name, r, ok)
		}
		if Blocks(Find(s, a, nil, testSetup(t)), a) != c.ok {
			t.Errorf("%s blocks: %v", c.name, !c.ok)
		}
	}
}

func balanceLines() []sweat.Line {
	return []sweat.Line{
		{ID: sweat.LineBody, Kilograms: 1.5}, {ID: sweat.LineDrunk, Kilograms: 0.7}, {ID: sweat.LineEaten, Kilograms: 0.1}, {ID: sweat.LineUrine, Kilograms: -0.15},
		{ID: sweat.LineStool, Kilograms: -0.05}, {ID: sweat.LineRespiratory, Kilograms: -0.07}, {ID: sweat.LineExchange, Kilograms: -0.03},
	}
}

package consult

import (
	"math"
	"testing"

	"ebbwell/internal/figure"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// 500 g of a drink of 6 % with 40 mg of sodium: 5 % error of the label, 1 g by
// sqrt 2 of the weighings; in 90 min that err by 1.
func TestIntakeByItsParts(t *testing.T) {
	drink := fuel.Product{ID: "d", Name: "Drink", Per100: fuel.Composition{Available: fuel.Of(6), Sodium: fuel.Of(40)}}
	whole := fuel.Part{Item: 1, Product: drink, Known: true, Grams: 500, Millilitres: 490, Bounds: quantity.Range{Low: 490, High: 490}}.Filled()
	near(t, "held", whole.Carbohydrate.Value, 30, 1e-12)
	near(t, "held", whole.Sodium.Value, 200, 1e-12)
	in := fuel.Intake{Bottles: []fuel.Part{whole}}
	s := gather(in, "carbohydrate", func(p fuel.Part) fuel.Content { return p.Carbohydrate })
	f := s.total(quantity.Gram, true)
	near(t, "total", f.Value, 30, 1e-12)
	relative := math.Hypot(0.05, math.Sqrt2/500)
	near(t, "u", f.U, 30*relative, 1e-9)
	r := s.rate(90, quantity.GramPerHour, true)
	near(t, "rate", r.Value, 20, 1e-12)
	near(t, "u of the rate", r.U, 20*math.Hypot(relative, 1.0/90), 1e-9)
	for _, x := range r.Why.Inputs {
		if x.Symbol == "minutes" && (x.U != 1 || x.Value != 90) {
			t.Errorf("%+v", x)
		}
	}
	if len(f.Why.Budget) == 0 || f.Why.Budget[0].Source != "label" {
		t.Fatalf("%+v", f.Why.Budget)
	}
	near(t, "label's part", f.Why.Budget[0].Part, 0.05*0.05/(relative*relative), 1e-9)
	for _, x := range f.Why.Inputs {
		if x.Unit != quantity.Gram && x.Unit != "g/100 g" {
			t.Errorf("%+v", x)
		}
	}
	sodium := gather(in, "sodium", func(p fuel.Part) fuel.Content { return p.Sodium })
	if got := sodium.inputs[1].Unit; got != "mg/100 g" {
		t.Errorf("sodium in %s", got)
	}
	// of a shared bottle of 245 to 735 mL the range is as wide as the bounds
	shared := whole
	shared.Bounds = quantity.Range{Low: 245, High: 735}
	s = gather(fuel.Intake{Bottles: []fuel.Part{shared}}, "carbohydrate", func(p fuel.Part) fuel.Content { return p.Carbohydrate })
	low, high := s.q.Ends()
	near(t, "low", low, 15, 1e-9)
	near(t, "high", high, 45, 1e-9)
	// what holds hardly anything does not go below nothing
	weak := whole
	weak.Grams, weak.Carbohydrate = 1, fuel.Of(0.06)
	if f := gather(fuel.Intake{Bottles: []fuel.Part{weak}}, "carbohydrate", func(p fuel.Part) fuel.Content { return p.Carbohydrate }).total(quantity.Gram, true); f.Range.Low != 0 || f.Range.High <= f.Value {
		t.Errorf("%v", f.Range)
	}
	none := gather(fuel.Intake{}, "carbohydrate", func(p fuel.Part) fuel.Content { return p.Carbohydrate })
	if none.total(quantity.Gram, false).Known || !none.total(quantity.Gram, true).Known || !s.total(quantity.Gram, false).Known {
		t.Error("nothing entered is known, or what is entered is not")
	}
	blank := fuel.Part{Item: 2, Product: fuel.Product{Name: "Blank"}, Known: true, Grams: 100}
	empty := fuel.Part{Item: 3, Product: fuel.Product{Name: "Empty"}, Known: true}
	if list := unknownParts(fuel.Intake{Bottles: []fuel.Part{whole, blank, empty}}); len(list) != 1 || list[0] != "Blank" {
		t.Errorf("%v", list)
	}
	if s := gather(fuel.Intake{Bottles: []fuel.Part{empty}}, "sodium", func(p fuel.Part) fuel.Content { return p.Sodium }); s.missing {
		t.Error("nothing of an unknown drink is missing")
	}
	if s := gather(fuel.Intake{Bottles: []fuel.Part{blank}}, "sodium", func(p fuel.Part) fuel.Content { return p.Sodium }); !s.missing {
		t.Error("an unknown drink is not missing")
	}
}

func TestBottleByItsDensity(t *testing.T) {
	d := testSetup(t)
	r := sweat.Result{Bottles: []sweat.BottleResult{{Item: 2, Known: true, Drunk: 400}}}
	for id, want := range map[record.ID]float64{"own.drink": 400, "nothing": 400} {
		if got := bottlePart(1, record.Bottle{ProductID: id}, r, d.Pantry); got.Grams != want || got.Item != 2 || !got.Known {
			t.Errorf("%s: %+v", id, got)
		}
	}
	heavy := record.Product{Meta: record.Meta{ID: "heavy"}, Name: "Heavy", Form: "drink", Density: record.Num(1.25, quantity.GramPerMillilitre)}
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	if got := bottlePart(1, record.Bottle{ProductID: "heavy"}, r, NewPantry(generic, []record.Product{heavy})); got.Grams != 500 {
		t.Errorf("%+v", got)
	}
}

func TestShareOfTheSodium(t *testing.T) {
	in, out := figure.Figure{Known: true, Ranged: true, Value: 300, U: 15}, figure.Figure{Known: true, Ranged: true, Value: 1200, U: 120}
	f := shareOf(in, out)
	near(t, "share", f.Value, 25, 1e-12)
	near(t, "u", f.U, 25*math.Hypot(0.05, 0.1), 1e-9)
	in.U = 300
	if got := shareOf(in, out).Range.Low; got != 0 {
		t.Errorf("from %g %%", got)
	}
	out.Value = 0
	if shareOf(in, out).Known {
		t.Error("a share of nothing")
	}
}

func TestDoneSessionsOfAStep(t *testing.T) {
	p := record.Plan{
		Steps: []record.Step{{Meta: record.Meta{ID: "s"}, State: record.StepNow}},
		Reviews: []record.Review{
			{StepID: "s", DoneShare: numberOf(80), Stomach: numberOf(3), Drunk: numberOf(900)}, {StepID: "other", DoneShare: numberOf(10)},
			{StepID: "s", Decision: record.DecisionHold},
		},
	}
	list := DoneOf(p, 90)
	if len(list) != 1 || list[0].Share != 0.8 || list[0].Stomach != 3 || !list[0].Asked {
		t.Fatalf("%+v", list)
	}
	near(t, "rate", list[0].DrunkLH, 0.6, 1e-12)
	near(t, "no length", DoneOf(p, 0)[0].DrunkLH, 0, 0)
}

// An option leads to the last step's mix when that lies between the habit and it,
// within a millilitre.
func TestWhatAStepLeadsTo(t *testing.T) {
	c, _ := newCase(t)
	habit, _ := OptionOf(c.Plan, record.OptionHabit)
	aim, _ := OptionOf(c.Plan, record.OptionAim)
	with := func(o record.Option, water float64) record.Option {
		mix := c.MixOf(habit)
		mix[plan.Water] = water
		return c.WithMix(o, mix)
	}
	if !c.LeadsTo(aim) {
		t.Error("without steps everything is led to")
	}
	step := with(record.Option{Meta: record.Meta{ID: "step"}, Kind: record.OptionStep}, 900)
	c.Plan.Options = append(c.Plan.Options, step)
	c.Plan.Steps = []record.Step{{Meta: record.Meta{ID: "s"}, OptionID: "step"}}
	if !c.LeadsTo(step) {
		t.Error("a step leads to itself")
	}
	for water, want := range map[float64]bool{1200: true, 900: true, 899.5: true, 898: false, 700: false, 600: false} {
		if got := c.LeadsTo(with(aim, water)); got != want {
			t.Errorf("to %g mL by 900: %v", water, got)
		}
	}
	last := len(c.Plan.Options) - 1
	c.Plan.Options[last] = with(step, 500)
	for water, want := range map[float64]bool{400: true, 500.5: true, 502: false, 700: false, 900: false} {
		if got := c.LeadsTo(with(aim, water)); got != want {
			t.Errorf("down to %g mL by 500: %v", water, got)
		}
	}
}

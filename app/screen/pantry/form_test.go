package pantry

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

func grams(x float64) record.Number { return record.Num(x, quantity.Gram) }

// A label of the European Union that gives 6 g of carbohydrate and 0.12 g of
// salt in 100 mL: 6 %, and 48 mg of sodium by the label's own factor of 2.5
// (Regulation (EU) No 1169/2011, annex I).
func TestEuropeanLabelOfADrink(t *testing.T) {
	f := formOf(record.Product{Form: "drink"}, false)
	f.figures.Available, f.salt, f.volume = grams(6), grams(0.12), record.Num(500, quantity.Millilitre)
	p := consult.ProductOf(f.record())
	r := rowOf(p, nil)
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"strength", r.Strength.Value, 6},
		{"sodium in 100 mL", r.Hundred.Sodium.Value, 48},
		{"sodium in a portion", r.Portion.Sodium.Value, 240},
		{"carbohydrate in a portion", r.Portion.Carbohydrate.Value, 30},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s is %g, want %g", c.what, c.got, c.want)
		}
	}
	if !p.Density.Known || p.Density.Value <= 1 || p.Density.Value >= 1.05 {
		t.Errorf("the density is %+v: a drink without one cannot be planned with", p.Density)
	}
	if again := formOf(f.record(), false); again.density.Known() || math.Abs(*again.figures.Available.Value-6) > 1e-9 || math.Abs(*again.salt.Value-0.12) > 1e-9 || math.Abs(*again.volume.Value-500) > 1e-9 {
		t.Errorf("opened again the label reads %+v", again)
	}
}

// A US label gives total carbohydrate with the fibre in it.
func TestAmericanLabel(t *testing.T) {
	f := formOf(record.Product{Form: "solid"}, true)
	f.mass = grams(50)
	f = f.counting(fuel.PerPortion)
	f.figures.Carbohydrate, f.figures.Sodium = grams(24), record.Num(95, quantity.Milligram)
	if c := consult.ProductOf(f.record()).Per100.AvailableCarbohydrate(); c.Known {
		t.Errorf("carbohydrate is %g though the fibre is not known", c.Value)
	}
	if f.doubt() != "carbohydrate" {
		t.Errorf("the doubt is %q", f.doubt())
	}
	f.figures.Fibre = grams(4)
	if c := consult.ProductOf(f.record()).Per100.AvailableCarbohydrate(); math.Abs(c.Value-40) > 1e-9 {
		t.Errorf("carbohydrate in 100 g is %g, want 40", c.Value)
	}
	european := f.printedIn(false)
	if got := *european.figures.Available.Value; math.Abs(got-20) > 1e-9 {
		t.Errorf("as a European label prints it: %g g a portion, want 20", got)
	}
	if got := *european.salt.Value; math.Abs(got-0.2375) > 1e-9 {
		t.Errorf("salt is %g g, want 0.2375", got)
	}
}

func TestUnknownStaysUnknown(t *testing.T) {
	f := formOf(record.Product{Form: "gel"}, false)
	f.figures.Available, f.mass = grams(60), grams(40)
	p := consult.ProductOf(f.record())
	if p.Per100.Sodium.Known || p.Per100.Fibre.Known || p.Per100.Energy.Known {
		t.Errorf("what was not entered became known: %+v", p.Per100)
	}
	if f.doubt() != "sodium" {
		t.Errorf("the doubt is %q", f.doubt())
	}
	f.salt = grams(0)
	if p := consult.ProductOf(f.record()); !p.Per100.Sodium.Known || p.Per100.Sodium.Value != 0 || f.doubt() != "" {
		t.Errorf("salt of 0 became %+v, doubt %q", p.Per100.Sodium, f.doubt())
	}
	if !formOf(f.record(), true).printedIn(false).figures.Available.Known() {
		t.Error("the other kind of label loses the carbohydrate")
	}
}

// A portion that is taken away takes no figures with it.
func TestPortionTakenAway(t *testing.T) {
	f := formOf(record.Product{Form: "gel"}, false)
	f.mass = grams(40)
	f = f.counting(fuel.PerPortion)
	f.figures.Available = grams(24)
	f.hold()
	f.mass = record.Number{}
	if f.readable() || f.doubt() != "portion" {
		t.Fatalf("readable %v, doubt %q", f.readable(), f.doubt())
	}
	if got := f.record().Per100.Available; !got.Known() || *got.Value != 60 {
		t.Errorf("100 g now hold %v", got)
	}
	f.hold() // does nothing while it cannot be read
	f.mass = grams(60)
	if got := f.record().Per100.Available; *got.Value != 40 {
		t.Errorf("with a portion of 60 g 100 g hold %g", *got.Value)
	}
	if g := formOf(record.Product{Form: "gel"}, false).counting(fuel.PerPortion); g.per != fuel.Per100Grams {
		t.Errorf("without a portion the label counts by %s", g.per)
	}
}

func TestDoubts(t *testing.T) {
	f := formOf(record.Product{Form: "solid"}, false)
	f.salt = grams(1)
	for _, c := range []struct {
		carbohydrate, glucose float64
		form                  string
		want                  string
	}{
		{72, 0, "solid", ""}, {120, 0, "solid", "hundred"}, {30, 40, "solid", "sugars"}, {30, 0, "sweet", "sugars"}, {12, 0, "drink", "strong"}, {8, 0, "drink", ""},
	} {
		g := f
		if c.form == "sweet" { // a sum of sugars above the carbohydrate
			c.form, g.figures.Sugars = "solid", grams(41)
		}
		g.product.Form, g.figures.Available, g.figures.Glucose = c.form, grams(c.carbohydrate), grams(c.glucose)
		if c.form == "drink" {
			g.per = fuel.Per100Millilitres
		}
		if got := g.doubt(); got != c.want {
			t.Errorf("%g g of carbohydrate, %g of glucose in a %s: %q, want %q", c.carbohydrate, c.glucose, c.form, got, c.want)
		}
	}
}

// Whatever way a product is looked at, it stays the same product.
func TestLookingChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, high float64) record.Number {
			if rapid.Bool().Draw(t, name+" known") {
				return grams(rapid.Float64Range(0, high).Draw(t, name))
			}
			return record.Number{}
		}
		p := record.Product{
			Form: rapid.SampledFrom([]string{"drink", "gel", "solid", "powder", "semi-solid"}).Draw(t, "form"), PortionMass: grams(rapid.Float64Range(1, 900).Draw(t, "portion")),
			Per100: record.Composition{Available: draw("carbohydrate", 60), Sodium: draw("sodium", 900), Fibre: draw("fibre", 9), Glucose: draw("glucose", 20), Energy: draw("energy", 400)},
		}
		if rapid.Bool().Draw(t, "density known") {
			p.Density = record.Num(rapid.Float64Range(0.9, 1.4).Draw(t, "density"), quantity.GramPerMillilitre)
		}
		f := formOf(p, rapid.Bool().Draw(t, "american"))
		for range rapid.IntRange(0, 6).Draw(t, "looks") {
			switch rapid.IntRange(0, 1).Draw(t, "look") {
			case 0:
				f = f.counting(rapid.SampledFrom([]fuel.Per{fuel.Per100Grams, fuel.Per100Millilitres, fuel.PerPortion}).Draw(t, "per"))
			case 1:
				f = f.printedIn(rapid.Bool().Draw(t, "kind"))
			}
		}
		was, is := consult.ProductOf(p), consult.ProductOf(f.record())
		for what, pair := range map[string][2]fuel.Content{
			"carbohydrate": {was.Per100.AvailableCarbohydrate(), is.Per100.AvailableCarbohydrate()}, "sodium": {was.Per100.Sodium, is.Per100.Sodium},
			"fibre": {was.Per100.Fibre, is.Per100.Fibre}, "glucose": {was.Per100.Sugars.Glucose, is.Per100.Sugars.Glucose},
			"energy": {was.Per100.Energy, is.Per100.Energy}, "portion": {fuel.Of(was.Portion.Grams), fuel.Of(is.Portion.Grams)},
		} {
			if pair[0].Known != pair[1].Known || math.Abs(pair[0].Value-pair[1].Value) > 1e-6 {
				t.Fatalf("%s was %+v and is %+v", what, pair[0], pair[1])
			}
		}
	})
}

func TestTakenInAnotherForm(t *testing.T) {
	f := formOf(record.Product{Form: "drink"}, false)
	f.figures.Available, f.volume = grams(6), record.Num(500, quantity.Millilitre)
	before := consult.ProductOf(f.record())
	g := f.taken(fuel.Gel)
	after := consult.ProductOf(g.record())
	if g.per != fuel.Per100Grams || math.Abs(after.Portion.Grams-before.Portion.Grams) > 1e-9 || math.Abs(after.Per100.Available.Value-before.Per100.Available.Value) > 1e-9 {
		t.Errorf("as a gel it is %+v, was %+v", after, before)
	}
}

// Correcting a generic product begins with all that is known of it.
func TestCorrectionLosesNothing(t *testing.T) {
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	stated := 0
	for _, g := range generic.Products() {
		if g.Form == fuel.Drink && g.Per100.AvailableCarbohydrate().Known {
			g.Per100.Osmolality = fuel.Of(291)
			stated++
		}
		for _, american := range []bool{false, true} {
			is := consult.ProductOf(formOf(copyOf(g, "label"), american).record())
			if is.Form != g.Form || is.Name != g.Name || is.Portion.Name != g.Portion.Name || is.Origin.Note != g.Origin.Note {
				t.Errorf("%s became %+v", g.ID, is)
			}
			was := partsOf(g)
			for what, c := range partsOf(is) {
				if c.Known != was[what].Known || math.Abs(c.Value-was[what].Value) > 1e-6 {
					t.Errorf("%s: %s was %+v and is %+v", g.ID, what, was[what], c)
				}
			}
		}
	}
	if stated < 5 {
		t.Errorf("only %d drinks: this test would mean little", stated)
	}
}

// partsOf names everything that is known of a product in figures.
func partsOf(p fuel.Product) map[string]fuel.Content {
	c, s := p.Per100, p.Per100.Sugars
	return map[string]fuel.Content{
		"water": c.Water, "energy": c.Energy, "carbohydrate": c.AvailableCarbohydrate(), "fibre": c.Fibre, "sugars": s.Total,
		"glucose": s.Glucose, "fructose": s.Fructose, "sucrose": s.Sucrose, "lactose": s.Lactose, "maltose": s.Maltose, "starch": s.Starch,
		"maltodextrin": s.Maltodextrin, "sodium": c.Sodium, "potassium": c.Potassium, "osmolality": c.Osmolality,
		"portion": fuel.Of(p.Portion.Grams), "density": p.Density,
	}
}

// A stated osmolality goes before the estimate, in whatever amount the label
// counts, and stays when a portion is not known yet.
func TestStatedOsmolality(t *testing.T) {
	f := formOf(record.Product{Form: "drink"}, false)
	f.figures.Available, f.figures.Sucrose, f.salt, f.volume = grams(6), grams(6), grams(0.12), record.Num(500, quantity.Millilitre)
	estimate := rowOf(consult.ProductOf(f.record()), nil)
	f.figures.Osmolality = record.Num(312, quantity.MilliosmolePerLitre)
	for _, per := range []fuel.Per{fuel.Per100Millilitres, fuel.PerPortion, fuel.Per100Grams} {
		r := rowOf(consult.ProductOf(f.counting(per).record()), nil)
		if !r.Stated() || math.Abs(r.Osmolality.Value-312) > 1e-9 {
			t.Errorf("in %s: %+v", per, r.Osmolality)
		}
	}
	if !estimate.Osmolality.Known || estimate.Stated() || math.Abs(estimate.Osmolality.Value-312) < 20 {
		t.Errorf("the estimate is %+v", estimate.Osmolality)
	}
	g := formOf(record.Product{Form: "drink"}, false)
	g.per = fuel.PerPortion
	g.figures.Osmolality = record.Num(280, quantity.MilliosmolePerLitre)
	if g.readable() || g.record().Per100.Osmolality.Or(0) != 280 {
		t.Errorf("without a portion it is %v", g.record().Per100.Osmolality)
	}
}

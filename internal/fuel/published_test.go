package fuel

import (
	"strings"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/published"
)

// checked is one row of a table of published values.
type checked struct {
	check string
	in    published.In
}

// number reads an input of a row; a missing or unreadable one fails the test.
func (r checked) number(t testing.TB, key string) float64 {
	t.Helper()
	return r.in.Number(key)
}

// text reads an input that may be absent.
func (r checked) text(key string) string {
	if !r.in.Has(key) {
		return ""
	}
	return r.in.Text(key)
}

// walk holds every row of a table against what compute makes of it.
func walk(t *testing.T, name string, compute func(t testing.TB, r checked) any) {
	t.Helper()
	published.WalkAll(t, name, func(in published.In) any { return compute(in.TB(), checked{in.Case(), in}) })
}

func generic(t testing.TB) *Catalogue {
	t.Helper()
	c, err := Generic()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// product finds the product that a row names.
func (r checked) product(t testing.TB, key string) Product {
	t.Helper()
	p, ok := generic(t).Find("generic." + r.text(key))
	if !ok {
		t.Fatalf("no product %q", r.text(key))
	}
	return p
}

func TestPublishedFoods(t *testing.T) {
	walk(t, "foods", func(t testing.TB, r checked) any {
		p := r.product(t, "food")
		grams := 100.0
		if r.text("grams") != "" {
			grams = r.number(t, "grams")
			if grams != p.Portion.Grams {
				t.Fatalf("portion is %g g", p.Portion.Grams)
			}
		}
		c := p.Per100
		parts := map[string]Content{
			"water": c.Water, "energy": c.Energy, "carbohydrate": c.Carbohydrate, "fibre": c.Fibre, "sugars": c.Sugars.Total,
			"glucose": c.Sugars.Glucose, "fructose": c.Sugars.Fructose, "sucrose": c.Sugars.Sucrose, "starch": c.Sugars.Starch,
			"sodium": c.Sodium, "potassium": c.Potassium, "available": c.AvailableCarbohydrate(),
		}
		part, ok := parts[r.check]
		if !ok || !part.Known {
			t.Fatalf("part %q unknown", r.check)
		}
		return part.Value * grams / 100
	})
}

func effortOf(t testing.TB, s string) Effort {
	t.Helper()
	e, ok := map[string]Effort{"easy": Easy, "moderate": Moderate, "hard": Hard}[s]
	if !ok {
		t.Fatalf("effort %q", s)
	}
	return e
}

func TestPublishedCarbohydrate(t *testing.T) {
	walk(t, "carbohydrate", func(t testing.TB, r checked) any {
		switch r.check {
		case "during low", "during high":
			return end(r, CarbohydrateDuring(r.number(t, "minutes"), effortOf(t, r.text("effort"))))
		case "alternative low", "alternative high":
			list := CarbohydrateAlternatives(r.number(t, "minutes"), effortOf(t, r.text("effort")), true)
			if len(list) != 1 {
				t.Fatalf("%d alternatives", len(list))
			}
			return end(r, list[0])
		case "entry":
			return entry(t, r)
		case "alternatives":
			return float64(len(CarbohydrateAlternatives(r.number(t, "minutes"), effortOf(t, r.text("effort")), true)))
		case "before low", "before high":
			return end(r, CarbohydrateBefore(r.number(t, "kg"), r.number(t, "minutes")))
		case "after low", "after high":
			return end(r, CarbohydrateAfter(r.number(t, "kg"), r.number(t, "hours")))
		case "glucose low", "glucose high":
			glucose, _, _ := SourceSplit(r.number(t, "rate"))
			return end(r, Advice{Range: glucose})
		case "fructose low", "fructose high":
			_, fructose, _ := SourceSplit(r.number(t, "rate"))
			return end(r, Advice{Range: fructose})
		}
		t.Fatalf("case %q", r.check)
		return 0
	})
}

// entry is the value of the evidence entry that a row names.
func entry(t testing.TB, r checked) float64 {
	t.Helper()
	e, ok := evidence.Find(r.text("id"))
	if !ok {
		t.Fatalf("no entry %q", r.text("id"))
	}
	return e.Value
}

// holds is 1 where something holds, 0 where not.
func holds(it bool) float64 {
	if it {
		return 1
	}
	return 0
}

// end picks the end of a range that the row's case names.
func end(r checked, a Advice) float64 {
	if strings.HasSuffix(r.check, "low") {
		return a.Range.Low
	}
	return a.Range.High
}

func TestPublishedDrinks(t *testing.T) {
	solutes := map[string]Solute{
		"glucose": Glucose, "sucrose": Sucrose, "salt": SodiumChloride, "potassium-chloride": PotassiumChloride,
		"citrate": SodiumCitrate, "maltodextrin": Maltodextrin,
	}
	walk(t, "drinks", func(t testing.TB, r checked) any {
		switch r.check {
		case "osmoles":
			s, ok := solutes[r.text("of")]
			if !ok {
				t.Fatalf("solute %q", r.text("of"))
			}
			return s.Osmoles()
		case "ideal sum":
			var parts []Dissolved
			for name, s := range solutes {
				if r.text(name) != "" {
					parts = append(parts, Dissolved{Solute: s, Grams: r.number(t, name)})
				}
			}
			return IdealOsmolality(parts, 1)
		case "isotonic":
			return holds(BandOf(r.number(t, "value")) == Isotonic)
		}
		return litre(t, r)
	})
}

// litre looks at one litre of a catalogue drink, or of one made up at home.
func litre(t testing.TB, r checked) float64 {
	t.Helper()
	var p Product
	if r.text("of") == "recipe" {
		p = homeDrink(t, r.number(t, "sugar"), r.number(t, "salt"))
	} else {
		p = r.product(t, "of")
	}
	one, err := p.ByVolume(1000)
	if err != nil {
		t.Fatal(err)
	}
	m := Mix([]Amount{one}, 0)
	switch r.check {
	case "strength":
		return m.StrengthPercent().Value
	case "sodium mmol":
		return m.SodiumMmol()
	case "potassium mmol":
		return m.PotassiumMg.Value / evidence.PotassiumMolarMass
	case "osmolality":
		return m.Osmolality().Value
	case "energy":
		return m.EnergyKcal.Value
	case "energy inside":
		return holds(m.EnergyKcal.Value >= r.number(t, "low") && m.EnergyKcal.Value <= r.number(t, "high"))
	case "density":
		return p.Density.Value
	case "carbohydrate":
		return m.Carbohydrate.Value
	}
	t.Fatalf("case %q", r.check)
	return 0
}

// homeDrink is table sugar and table salt made up to a litre.
func homeDrink(t testing.TB, sugarG, saltG float64) Product {
	t.Helper()
	c := generic(t)
	var parts []Amount
	for id, grams := range map[string]float64{"generic.sugar": sugarG, "generic.salt": saltG} {
		p, ok := c.Find(id)
		if !ok {
			t.Fatalf("no %s", id)
		}
		a, err := p.ByMass(grams)
		if err != nil {
			t.Fatal(err)
		}
		parts = append(parts, a)
	}
	p, err := Recipe{ID: "home", Name: "home", Parts: parts, Litres: 1}.Drink()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestPublishedDrinking(t *testing.T) {
	walk(t, "drinking", func(t testing.TB, r checked) any {
		switch strings.TrimSuffix(strings.TrimSuffix(r.check, " low"), " high") {
		case "before four hours":
			return end(r, BeforeFourHours(r.number(t, "kg")))
		case "before two hours":
			return end(r, BeforeTwoHours(r.number(t, "kg")))
		case "entry":
			return entry(t, r)
		case "soon":
			return holds(After(r.number(t, "deficit"), r.number(t, "kg"), r.number(t, "hours")).Code == AfterSoon)
		case "after":
			return end(r, After(r.number(t, "deficit"), r.number(t, "kg"), r.number(t, "hours")))
		case "strength":
			return end(r, Strength())
		}
		t.Fatalf("case %q", r.check)
		return 0
	})
}

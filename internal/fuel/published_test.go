package fuel

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"ebbwell/internal/evidence"
)

// published is one row of a table of published values.
type published struct {
	check, source string
	inputs        map[string]string
	expected      float64
	tolerance     float64 // relative, absolute about zero
}

// number reads an input of a row; a missing or unreadable one fails the test.
func (r published) number(t *testing.T, key string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(r.inputs[key], 64)
	if err != nil {
		t.Fatalf("input %q: %v", key, err)
	}
	return x
}

// readPublished reads testdata/published/name.csv; no rows, an unknown column
// or a row without source and sureness fail.
func readPublished(t *testing.T, name string) []published {
	t.Helper()
	text, err := os.ReadFile("../../testdata/published/" + name + ".csv")
	if err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil || len(lines) < 2 {
		t.Fatalf("%d rows: %v", len(lines), err)
	}
	if got := strings.Join(lines[0], ","); got != "case,inputs,expected,tolerance,source,sure" {
		t.Fatalf("columns %s", got)
	}
	var rows []published
	for i, l := range lines[1:] {
		r := published{check: l[0], source: l[4] + " [" + l[5] + "]", inputs: map[string]string{}}
		for _, pair := range strings.Fields(l[1]) {
			key, value, _ := strings.Cut(pair, "=")
			r.inputs[key] = value
		}
		var err1, err2 error
		r.expected, err1 = strconv.ParseFloat(l[2], 64)
		r.tolerance, err2 = strconv.ParseFloat(l[3], 64)
		if err1 != nil || err2 != nil || l[4] == "" || !strings.Contains("RSMDPC", l[5]) || len(l[5]) != 1 {
			t.Fatalf("row %d: %v", i+1, l)
		}
		rows = append(rows, r)
	}
	return rows
}

// walk holds every row of a table against what compute makes of it.
func walk(t *testing.T, name string, compute func(t *testing.T, r published) float64) {
	t.Helper()
	for i, r := range readPublished(t, name) {
		t.Run(fmt.Sprintf("%02d %s %s", i+1, r.check, r.source), func(t *testing.T) {
			got := compute(t, r)
			room := r.tolerance * math.Abs(r.expected)
			if r.expected == 0 {
				room = r.tolerance
			}
			if !(math.Abs(got-r.expected) <= room+1e-12) {
				t.Errorf("%s %v: got %g, published %g within %g", r.check, r.inputs, got, r.expected, room)
			}
		})
	}
}

func generic(t *testing.T) *Catalogue {
	t.Helper()
	c, err := Generic()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// product finds the product that a row names.
func (r published) product(t *testing.T, key string) Product {
	t.Helper()
	p, ok := generic(t).Find("generic." + r.inputs[key])
	if !ok {
		t.Fatalf("no product %q", r.inputs[key])
	}
	return p
}

func TestPublishedFoods(t *testing.T) {
	walk(t, "foods", func(t *testing.T, r published) float64 {
		p := r.product(t, "food")
		grams := 100.0
		if r.inputs["grams"] != "" {
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

func effortOf(t *testing.T, s string) Effort {
	t.Helper()
	e, ok := map[string]Effort{"easy": Easy, "moderate": Moderate, "hard": Hard}[s]
	if !ok {
		t.Fatalf("effort %q", s)
	}
	return e
}

func TestPublishedCarbohydrate(t *testing.T) {
	walk(t, "carbohydrate", func(t *testing.T, r published) float64 {
		switch r.check {
		case "during low", "during high":
			return end(r, CarbohydrateDuring(r.number(t, "minutes"), effortOf(t, r.inputs["effort"])))
		case "alternative low", "alternative high":
			list := CarbohydrateAlternatives(r.number(t, "minutes"), effortOf(t, r.inputs["effort"]), true)
			if len(list) != 1 {
				t.Fatalf("%d alternatives", len(list))
			}
			return end(r, list[0])
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

// end picks the end of a range that the row's case names.
func end(r published, a Advice) float64 {
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
	walk(t, "drinks", func(t *testing.T, r published) float64 {
		switch r.check {
		case "osmoles":
			s, ok := solutes[r.inputs["of"]]
			if !ok {
				t.Fatalf("solute %q", r.inputs["of"])
			}
			return s.Osmoles()
		case "ideal sum":
			var parts []Dissolved
			for name, s := range solutes {
				if r.inputs[name] != "" {
					parts = append(parts, Dissolved{Solute: s, Grams: r.number(t, name)})
				}
			}
			return IdealOsmolality(parts, 1)
		case "gel water":
			gel, err := Product{ID: "gel", Name: "gel", Form: Gel, Density: Of(r.number(t, "grams") / r.number(t, "ml")),
				Per100: Composition{Available: Of(100 * r.number(t, "carbohydrate") / r.number(t, "grams"))}}.ByMass(r.number(t, "grams"))
			if err != nil {
				t.Fatal(err)
			}
			return GelWater(gel, r.number(t, "percent")).Value
		case "catalogue gel water":
			gel, err := r.product(t, "of").ByPortion(1)
			if err != nil {
				t.Fatal(err)
			}
			return GelWater(gel, r.number(t, "percent")).Value
		}
		return litre(t, r)
	})
}

// litre looks at one litre of a catalogue drink, or of one made up at home.
func litre(t *testing.T, r published) float64 {
	t.Helper()
	var p Product
	if r.inputs["of"] == "recipe" {
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
	case "density":
		return p.Density.Value
	case "carbohydrate":
		return m.Carbohydrate.Value
	}
	t.Fatalf("case %q", r.check)
	return 0
}

// homeDrink is table sugar and table salt made up to a litre.
func homeDrink(t *testing.T, sugarG, saltG float64) Product {
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
	walk(t, "drinking", func(t *testing.T, r published) float64 {
		switch strings.TrimSuffix(strings.TrimSuffix(r.check, " low"), " high") {
		case "before four hours":
			return end(r, BeforeFourHours(r.number(t, "kg")))
		case "before two hours":
			return end(r, BeforeTwoHours(r.number(t, "kg")))
		case "before other":
			return end(r, BeforeAlternative(r.number(t, "kg")))
		case "after":
			return end(r, After(r.number(t, "deficit"), r.number(t, "kg"), r.number(t, "hours")))
		case "strength":
			return end(r, Strength())
		case "sports drink osmolality":
			return end(r, SportsDrinkOsmolality())
		}
		t.Fatalf("case %q", r.check)
		return 0
	})
}

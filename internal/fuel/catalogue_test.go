package fuel

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"ebbwell/assets"
)

func TestGenericIsWhole(t *testing.T) {
	list := generic(t).Products()
	if len(list) < 50 {
		t.Fatalf("%d products", len(list))
	}
	for _, p := range list {
		if !strings.HasPrefix(p.ID, "generic.") || p.Origin.Source == "" || !strings.Contains("RSMDPC", string(p.Origin.Sure)) {
			t.Errorf("%s: source %q, sureness %q", p.ID, p.Origin.Source, p.Origin.Sure)
		}
		if p.Origin.Source == "USDA SR26" && !strings.HasPrefix(p.Origin.Number, "NDB ") {
			t.Errorf("%s has number %q", p.ID, p.Origin.Number)
		}
		if p.Form == Drink && !p.Density.Known {
			t.Errorf("%s is drunk and has no density", p.ID)
		}
		if p.Portion.Grams <= 0 || p.Portion.Name == "" {
			t.Errorf("%s has no portion", p.ID)
		}
		if !p.Per100.AvailableCarbohydrate().Known {
			t.Errorf("%s has no carbohydrate", p.ID)
		}
	}
}

// An empty cell is unknown, and counts as missing in a sum.
func TestEmptyCellsStayUnknown(t *testing.T) {
	gel, _ := generic(t).Find("generic.gel")
	if gel.Per100.Sodium.Known || gel.Per100.Potassium.Known {
		t.Fatal("an empty cell was read as a value")
	}
	one, err := gel.ByPortion(1)
	if err != nil {
		t.Fatal(err)
	}
	m := Mix([]Amount{one}, 1)
	if m.SodiumMg.Missing != 1 || m.SodiumMg.Complete() || m.SodiumMg.Value < 393 {
		t.Fatalf("sodium %+v", m.SodiumMg)
	}
	if m.Split.Unknown != 26 {
		t.Fatalf("split %+v", m.Split)
	}
}

// What the families come to is the available carbohydrate, in every row.
func TestSplitAddsUp(t *testing.T) {
	for _, p := range generic(t).Products() {
		s, available := p.Per100.Split(), p.Per100.AvailableCarbohydrate().Value
		if d := s.Total() - available; d > 1e-9 || d < -1e-9 || s.Glucose < 0 || s.Fructose < 0 || s.Unknown < 0 {
			t.Errorf("%s: %+v of %g", p.ID, s, available)
		}
	}
}

func TestSplitFamilies(t *testing.T) {
	for _, c := range []struct {
		id                         string
		glucose, fructose, unknown float64
	}{
		{"generic.sugar", 49.99, 49.99, 0},
		{"generic.maltodextrin", 95, 0, 0},
		{"generic.fructose", 0, 99.8, 0},
		{"generic.milk-1", 4.99, 0, 0},
		{"generic.drink-6", 0, 0, 5.87},
	} {
		p, ok := generic(t).Find(c.id)
		if !ok {
			t.Fatalf("no %s", c.id)
		}
		s := p.Per100.Split()
		for _, x := range []float64{s.Glucose - c.glucose, s.Fructose - c.fructose, s.Unknown - c.unknown} {
			if x > 0.2 || x < -0.2 {
				t.Errorf("%s: %+v, want %+v", c.id, s, c)
			}
		}
	}
}

func TestReadCatalogueRefuses(t *testing.T) {
	table := string(assets.Foods())
	head, rest, _ := strings.Cut(table, "\n")
	row, _, _ := strings.Cut(rest, "\n")
	for name, text := range map[string]string{
		"nothing":        "",
		"no rows":        head + "\n",
		"column missing": strings.Replace(table, ",note\n", "\n", 1),
		"odd column":     strings.Replace(table, "id,", "key,", 1),
		"column twice":   strings.Replace(table, "name,", "id,", 1),
		"id twice":       head + "\n" + row + "\n" + row + "\n",
		"not a number":   head + "\n" + strings.Replace(row, "99.9", "lots", 1) + "\n",
		"negative":       head + "\n" + strings.Replace(row, "99.9", "-1", 1) + "\n",
		"NaN":            head + "\n" + strings.Replace(row, "99.9", "NaN", 1) + "\n",
		"over 100 g":     head + "\n" + strings.Replace(row, "99.9", "999", 1) + "\n",
		"odd form":       head + "\n" + strings.Replace(row, ",drink,", ",gas,", 1) + "\n",
		"no name":        head + "\n" + strings.Replace(row, ",Water,", ",,", 1) + "\n",
	} {
		c, err := ReadCatalogue(strings.NewReader(text))
		if !errors.Is(err, ErrTable) || c != nil {
			t.Errorf("%s: %v, %v", name, c, err)
		}
	}
	if c, err := ReadCatalogue(strings.NewReader(head + "\n" + row + "\n")); err != nil || len(c.Products()) != 1 {
		t.Errorf("a table of one row is refused: %v", err)
	}
}

// A table either is refused, with nothing beside the error, or every product
// of it can be computed with.
func FuzzReadCatalogue(f *testing.F) {
	f.Add(assets.Foods())
	head, rest, _ := bytes.Cut(assets.Foods(), []byte("\n"))
	row, _, _ := bytes.Cut(rest, []byte("\n"))
	f.Add(append(append(append(head, '\n'), row...), '\n'))
	f.Add([]byte("id,name\n1,2\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		c, err := ReadCatalogue(bytes.NewReader(text))
		if err != nil {
			if c != nil {
				t.Fatal("half a catalogue beside an error")
			}
			return
		}
		for _, p := range c.Products() {
			if p.Check() != nil {
				t.Fatalf("%s cannot be used", p.ID)
			}
			a, err := p.ByMass(100)
			if err != nil {
				t.Fatal(err)
			}
			checkMixture(t, Mix([]Amount{a}, 0.5))
		}
	})
}

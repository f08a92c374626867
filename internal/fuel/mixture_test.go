package fuel

import (
	"ebbwell/internal/evidence"
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// checkMixture fails where a sum is negative or not a number.
func checkMixture(t interface{ Fatalf(string, ...any) }, m Mixture) {
	for name, x := range map[string]float64{
		"mass": m.MassG.Value, "drunk": m.Drunk.VolumeL.Value, "drink water": m.Drunk.WaterL.Value, "food water": m.FoodWaterL.Value,
		"carbohydrate": m.Carbohydrate.Value, "glucose": m.Split.Glucose, "fructose": m.Split.Fructose, "unknown": m.Split.Unknown,
		"sodium": m.SodiumMg.Value, "potassium": m.PotassiumMg.Value, "energy": m.EnergyKcal.Value,
		"strength": m.StrengthPercent().Value, "osmolality": m.Osmolality().Value, "mmol/L": m.SodiumMmolL().Value,
	} {
		if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
			t.Fatalf("%s is %g", name, x)
		}
	}
	if d := m.Split.Total() - m.Carbohydrate.Value; math.Abs(d) > 1e-6*(1+m.Carbohydrate.Value) {
		t.Fatalf("families %g, carbohydrate %g", m.Split.Total(), m.Carbohydrate.Value)
	}
}

// drawAmounts draws up to six amounts of generic products.
func drawAmounts(t *rapid.T, list []Product) []Amount {
	var amounts []Amount
	for range rapid.IntRange(0, 6).Draw(t, "items") {
		a, err := rapid.SampledFrom(list).Draw(t, "product").ByMass(rapid.Float64Range(0, 2000).Draw(t, "grams"))
		if err != nil {
			t.Fatal(err)
		}
		amounts = append(amounts, a)
	}
	return amounts
}

// A mixture of two lots is the sum of the two mixtures.
func TestMixtureAddsUp(t *testing.T) {
	list := generic(t).Products()
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawAmounts(t, list), drawAmounts(t, list)
		x, y, both := Mix(a, 0.3), Mix(b, 0.4), Mix(append(append([]Amount(nil), a...), b...), 0.7)
		checkMixture(t, both)
		near := func(name string, p, q, sum float64) {
			if math.Abs(p+q-sum) > 1e-6*(1+sum) {
				t.Fatalf("%s: %g + %g is not %g", name, p, q, sum)
			}
		}
		near("mass", x.MassG.Value, y.MassG.Value, both.MassG.Value)
		near("drunk", x.Drunk.VolumeL.Value, y.Drunk.VolumeL.Value, both.Drunk.VolumeL.Value)
		near("carbohydrate", x.Carbohydrate.Value, y.Carbohydrate.Value, both.Carbohydrate.Value)
		near("fructose", x.Split.Fructose, y.Split.Fructose, both.Split.Fructose)
		near("sodium", x.SodiumMg.Value, y.SodiumMg.Value, both.SodiumMg.Value)
		near("osmoles", x.Drunk.Osmoles.Value, y.Drunk.Osmoles.Value, both.Drunk.Osmoles.Value)
		if x.SodiumMg.Missing+y.SodiumMg.Missing != both.SodiumMg.Missing {
			t.Fatal("missing items do not add up")
		}
	})
}

// Water made stronger gets no weaker, heavier and no less salty; what a
// recipe holds is what went in.
func TestMadeUpKeepsWhatWentIn(t *testing.T) {
	sugar, _ := generic(t).Find("generic.sugar")
	rapid.Check(t, func(t *rapid.T) {
		grams := rapid.Float64Range(0, 40).Draw(t, "grams per 100 mL")
		d, err := sugar.MadeUp(grams)
		if err != nil {
			t.Fatal(err)
		}
		if err := d.Check(); err != nil {
			t.Fatal(err)
		}
		if s := d.Strength().Value; math.Abs(s-grams*0.9998) > 1e-6*(1+grams) {
			t.Fatalf("strength %g from %g", s, grams)
		}
		if stronger, err := sugar.MadeUp(grams + 1); err != nil || stronger.Density.Value <= d.Density.Value || stronger.Per100.Water.Value >= d.Per100.Water.Value {
			t.Fatalf("at %g: %v", grams, err)
		}
		one, err := d.ByVolume(1000)
		if err != nil {
			t.Fatal(err)
		}
		m := Mix([]Amount{one}, 0)
		// the sugar brings 0.02 % of water of its own
		if got := m.Drunk.WaterL.Value*1000 + 0.62*10*grams; math.Abs(got-1000-0.0002*10*grams) > 1e-6 {
			t.Fatalf("water and dissolved sugar fill %g mL", got)
		}
	})
}

func TestTwoSugarsKeepTheirFamilies(t *testing.T) {
	c := generic(t)
	part := func(id string, grams float64) Amount {
		p, _ := c.Find(id)
		a, err := p.ByMass(grams)
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	d, err := Recipe{ID: "two", Name: "two to one", Litres: 1, Parts: []Amount{
		part("generic.maltodextrin", 60), part("generic.fructose", 30), part("generic.salt", 1),
	}}.Drink()
	if err != nil {
		t.Fatal(err)
	}
	one, err := d.ByVolume(1000)
	if err != nil {
		t.Fatal(err)
	}
	s := Mix([]Amount{one}, 0).Split
	if math.Abs(s.Glucose-57) > 0.01 || math.Abs(s.Fructose-29.94) > 0.01 || s.Unknown > 0.01 {
		t.Fatalf("split %+v", s)
	}
	if share := s.FructoseShare(); math.Abs(share-29.94/86.94) > 1e-4 {
		t.Fatalf("fructose share %g", share)
	}
}

func TestAmountErrors(t *testing.T) {
	banana, _ := generic(t).Find("generic.banana")
	salt, _ := generic(t).Find("generic.salt")
	fails := func(name string, err, want error) {
		t.Helper()
		if !errors.Is(err, want) {
			t.Errorf("%s: %v, want %v", name, err, want)
		}
	}
	_, err := banana.ByVolume(100)
	fails("volume of a banana", err, ErrNoDensity)
	_, err = banana.ByMass(-1)
	fails("negative", err, ErrAmount)
	_, err = banana.ByMass(math.NaN())
	fails("not a number", err, ErrAmount)
	_, err = banana.ByMass(math.Inf(1))
	fails("infinite", err, ErrAmount)
	_, err = Product{ID: "x"}.ByPortion(1)
	fails("no portion", err, ErrNoPortion)
	_, err = banana.MadeUp(6)
	fails("banana made up", err, ErrNotPowder)
	_, err = salt.MadeUp(-1)
	fails("negative strength", err, ErrAmount)
	_, err = salt.MadeUp(500)
	fails("more than fits", err, ErrTooStrong)
	_, err = Recipe{Litres: 0}.Drink()
	fails("no volume", err, ErrAmount)
}

func TestOsmolalityBands(t *testing.T) {
	for x, want := range map[float64]OsmolalityBand{
		0: Hypotonic, 269.9: Hypotonic, 270: Isotonic, 330: Isotonic, 330.1: Hypertonic, 4424: Hypertonic,
	} {
		if got := BandOf(x); got != want {
			t.Errorf("%g is %s, want %s", x, got, want)
		}
	}
	if IdealOsmolality([]Dissolved{{Glucose, 10}}, 0) != 0 {
		t.Error("no volume has an osmolality")
	}
	drink, _ := generic(t).Find("generic.drink-6")
	one, _ := drink.ByVolume(500)
	if Mix([]Amount{one}, 0).Osmolality().Known {
		t.Error("osmolality of a drink whose sugars are not known")
	}
}

func TestAdviceEnds(t *testing.T) {
	if a := BeforeFourHours(0); a.Says() {
		t.Error("advice per kg without a mass")
	}
	for hours, want := range map[float64]string{0: AfterMeals, 1: AfterSoon, 11.9: AfterSoon, 12: AfterDay, 23.9: AfterDay, 24: AfterMeals} {
		if a := After(1, 70, hours); a.Code != want {
			t.Errorf("next in %g h: %s, want %s", hours, a.Code, want)
		}
	}
	if a := After(-0.1, 70, 6); a.Code != AfterGain || a.Range.High != 0 {
		t.Errorf("after a gain: %+v", a)
	}
	if a := After(0, 70, 6); a.Code != AfterNone {
		t.Errorf("nothing lost: %+v", a)
	}
	for rating, want := range map[float64]Effort{-1: EffortUnknown, 0: Easy, 3.9: Easy, 4: Moderate, 6.9: Moderate, 7: Hard, 10: Hard, 11: EffortUnknown} {
		if e := EffortOf(rating); e != want {
			t.Errorf("effort %g: %d, want %d", rating, e, want)
		}
	}
	if EffortOf(math.NaN()) != EffortUnknown {
		t.Error("effort that is not a number")
	}
	if a := CarbohydrateDuring(math.NaN(), Hard); a.Code != FuelNone {
		t.Errorf("unknown length: %+v", a)
	}
}

// IdealOsmolality is the ideal sum in mOsm/L of substances made up to a volume
// in litres; zero for no volume. Real drinks depart from it, since ions pair
// and sugars take up water.
func IdealOsmolality(parts []Dissolved, litres float64) float64 {
	if !(litres > 0) {
		return 0
	}
	sum := 0.0
	for _, p := range parts {
		sum += p.Grams * p.Solute.Osmoles()
	}
	return sum / litres
}

// Dissolved is a mass of a solute.
type Dissolved struct {
	Solute Solute
	Grams  float64
}

// SodiumMmol is the sodium in mmol.
func (m Mixture) SodiumMmol() float64 { return m.SodiumMg.Value / evidence.SodiumMolarMass }

// StrengthPercent is the carbohydrate of what is drunk, g per 100 mL; unknown
// when nothing is drunk, or a volume or a carbohydrate is missing.
func (m Mixture) StrengthPercent() Content {
	return m.Drunk.per(m.Drunk.Carbohydrate, 1.0/10)
}

package sweat

import (
	"math"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// at is the whole sheet with so much weighed loss and drink, kg, after breath.
func lossOf(weighed, drunk float64) Input {
	in := wholeSheet()
	in.Body.After[0] = quantity.Kilograms(64 - weighed - wholeBreath())
	in.Intake.Bottles = []Bottle{{Before: grams(2000), After: grams(2000 - 1000*drunk)}}
	return in
}

// The time errs by a minute: its relative error adds to that of the loss.
func TestErrorOfTheRate(t *testing.T) {
	f := evaluated(t, wholeSheet()).Fluid
	near(t, "u", f.Rate.U, f.Rate.Value*math.Hypot(f.Loss.U/f.Loss.Value, 1.0/95), 1e-9)
	near(t, "drinking", f.DrinkingRate.Value, 0.55/95*60, 1e-9)
	near(t, "u of drinking", f.DrinkingRate.U, f.DrinkingRate.Value*math.Hypot(0.002/0.55, 1.0/95), 1e-9)
}

// 0.20 g/kcal from 0.14 to 0.22, a rectangle: 0.04/sqrt(3)/0.20 of it; the
// effort's own error is another source.
func TestErrorOfBothLossesAtOnce(t *testing.T) {
	both := 0.20 * 142.5 * (0.23*0.92 + 0.77) * 21166 / 4184 / 1000
	base := 2*0.03*0.03 + 0.05*0.05 + 4e-6
	for _, effort := range []float64{1e-9, 0.1} {
		in := wholeSheet()
		in.Air.Vapour = nil
		in.Effort.RelativeU = effort
		f := evaluated(t, in).Fluid.Loss
		near(t, "loss", f.Value, 2.15-both, 1e-9)
		part := both * math.Hypot(effort, 0.04/math.Sqrt(3)/0.20)
		near(t, "u", f.U, math.Sqrt(base+part*part), 1e-9)
	}
}

// Over 3 L/h of drinking nobody is believed.
func TestDrinkingLimit(t *testing.T) {
	for litres, fine := range map[float64]bool{2.85: true, 3.15: false} {
		in := wholeSheet()
		in.Time.Elapsed = new(quantity.Minutes(60))
		in.Body.After[0] = 63.9
		in.Intake.Bottles = []Bottle{{Before: grams(1000 * litres / 2), After: grams(0)}, {Before: grams(1000 * litres / 2), After: grams(0)}}
		if r := evaluated(t, in); r.Fluid.Loss.Known != fine {
			t.Errorf("%g L in an hour: %v", litres, r.Problems)
		}
	}
}

// The share replaced by Fieller: what was drunk is in the loss as well.
func TestRangeOfTheShareReplaced(t *testing.T) {
	for _, drunk := range []float64{0.02, 0.3, 1.2} {
		f := evaluated(t, lossOf(1.0, drunk)).Fluid
		a, b, z := drunk, 1.0+drunk, 1.96*1.96
		va, vb := f.Drunk.U*f.Drunk.U, f.Loss.U*f.Loss.U
		p, q, r := b*b-z*vb, a*b-z*va, a*a-z*va
		root := math.Sqrt(q*q - p*r)
		near(t, "share", f.Replaced.Value, 100*a/b, 1e-6)
		near(t, "low", f.Replaced.Range.Low, max(0, 100*(q-root)/p), 1e-6)
		near(t, "high", f.Replaced.Range.High, 100*(q+root)/p, 1e-6)
	}
}

func TestLinesThatAreNotIn(t *testing.T) {
	known := func(in Input) map[string]bool {
		m := map[string]bool{}
		for _, l := range evaluated(t, in).Balance {
			m[l.ID] = l.Known
		}
		return m
	}
	in := wholeSheet()
	if m := known(in); !m[LineDrunk] || !m[LineEaten] {
		t.Errorf("nothing eaten is known: %v", m)
	}
	in.Intake.Bottles, in.Intake.Foods = nil, []Food{{}}
	if m := known(in); m[LineDrunk] || m[LineEaten] {
		t.Errorf("what is not in counts as nothing: %v", m)
	}
	in.Intake.Bottles, in.Intake.Foods = []Bottle{{}, {Before: grams(500), After: grams(100)}}, []Food{{}, {Mass: grams(60)}}
	r := evaluated(t, in)
	if m := known(in); !m[LineDrunk] || !m[LineEaten] {
		t.Errorf("a part is shown: %v", m)
	}
	if m := r.Missing; len(m) != 2 || m[0].ID != MissingBottle || m[0].Item != 1 || m[1].ID != MissingFood || m[1].Item != 1 {
		t.Errorf("missing %+v", m)
	}
}

func TestMissingBottles(t *testing.T) {
	for _, c := range []struct {
		name   string
		bottle Bottle
		id     string
		low    float64
	}{
		{"before and a refill", Bottle{Before: grams(700), Refills: []quantity.Grams{300}}, MissingBottleAfter, -1.0},
		{"before", Bottle{Before: grams(700)}, MissingBottleAfter, -0.7},
		{"after", Bottle{After: grams(100)}, MissingBottleBefore, -1.0},
		{"nothing", Bottle{}, MissingBottle, -1.0},
		{"poured over", Bottle{Use: PouredOver}, "", 0},
		{"poured over, half weighed", Bottle{Use: PouredOver, Before: grams(700)}, "", 0},
		{"a refused refill", Bottle{Before: grams(700), After: grams(100), Refills: []quantity.Grams{-5}}, "", 0},
		{"a refused volume", Bottle{Volume: new(quantity.Millilitres(-5))}, "", 0},
		{"poured from a carton", Bottle{Volume: new(quantity.Millilitres(300))}, "", 0},
	} {
		in := wholeSheet()
		in.Intake.Bottles = []Bottle{in.Intake.Bottles[0], c.bottle}
		m := evaluated(t, in).Missing
		if c.id == "" {
			if len(m) != 0 {
				t.Errorf("%s: %+v", c.name, m)
			}
			continue
		}
		if len(m) != 1 || m[0].ID != c.id || m[0].Item != 2 {
			t.Errorf("%s: %+v", c.name, m)
			continue
		}
		near(t, c.name, m[0].Effect.Low, c.low, 1e-12)
		near(t, c.name, m[0].Effect.High, 0, 0)
	}
}

// Food that is 95 % water counts its water; more than its mass is no share.
func TestWaterInFood(t *testing.T) {
	for share, want := range map[float64]float64{0.95: 0.095, 1: 0.1, 1.05: 0, -0.05: 0} {
		in := wholeSheet()
		in.Intake.Foods = []Food{{Mass: grams(100), Water: &share}}
		near(t, "water", evaluated(t, in).Fluid.FoodWater, want, 1e-12)
	}
	in := wholeSheet() // two of one mass err apart: 10 % each, or whatever one errs by
	in.Intake.Foods = []Food{{Mass: grams(2000)}}
	base := 2*0.03*0.03 + 0.05*0.05 + 4e-6
	one := evaluated(t, in).Fluid.Loss.U
	in.Intake.Foods = append(in.Intake.Foods, in.Intake.Foods[0])
	two := evaluated(t, in).Fluid.Loss.U
	near(t, "two foods", two*two-base, 2*(one*one-base), 1e-9)
	in = wholeSheet()
	for _, s := range evaluated(t, in).Fluid.Loss.Why.Inputs {
		if s.Symbol == "drunk0" || s.Symbol == "drunk" {
			t.Errorf("bottles are counted from one: %s", s.Symbol)
		}
	}
	in.Intake.Foods = []Food{{Mass: grams(-1)}, {Mass: grams(-1)}}
	r := evaluated(t, in)
	for item := 1; item <= 2; item++ {
		found := false
		for _, p := range r.Problems {
			found = found || p.Field == evidence.FoodMass && p.Item == item
		}
		if !found {
			t.Errorf("food %d is not named: %v", item, r.Problems)
		}
	}
}

func TestSureFlags(t *testing.T) {
	for _, c := range []struct {
		name string
		in   Input
		id   string
		has  bool
		sure bool
	}{
		// drunk less 0.9 of the loss, against 1.96 x 0.9 x 0.066 kg = 0.117
		{"0.132 above nine tenths", lossOf(0.02, 1.5), FlagNearLoss, true, true},
		{"0.082 above nine tenths", lossOf(0.02, 1.0), FlagNearLoss, true, false},
		{"rate 1.403, from 1.30", lossOf(1.6716, 0.55), FlagSodiumRate, true, true},
		{"rate 1.277, from 1.18", lossOf(1.4716, 0.55), FlagSodiumRate, true, false},
		{"salt 62.5, from 45.5", withRaw(62.5), FlagSodiumSalty, true, true},
		{"salt 61.5, from 44.5", withRaw(61.5), FlagSodiumSalty, true, false},
		{"salt 45.5", withRaw(45.5), FlagSodiumSalty, true, false},
		{"salt 44.5", withRaw(44.5), FlagSodiumSalty, false, false},
	} {
		f, ok := flag(evaluated(t, c.in), c.id)
		if ok != c.has || f.Certain != c.sure {
			t.Errorf("%s: %v %+v", c.name, ok, f)
		}
	}
	exact := func(minutes float64, after quantity.Kilograms, drunk float64) Result {
		in := wholeSheet()
		in.Time.Elapsed = new(quantity.Minutes(minutes))
		in.Options.Uncorrected = true
		in.Body.After[0] = after
		in.Intake.Bottles = []Bottle{{Before: grams(1000 * drunk), After: grams(0)}}
		return evaluated(t, in)
	}
	if _, ok := flag(exact(120, 62, 0.4), FlagSodiumRate); ok { // 2.4 kg in two hours
		t.Error("1.2 L/h is not above 1.2 L/h")
	}
	if r := exact(95, 63.875, 1.125); true { // 1.125 of 1.25
		if _, ok := flag(r, FlagNearLoss); !ok {
			t.Errorf("at 90 %% of the loss nothing is said: %v", r.Fluid.Replaced.Value)
		}
	}
}

// withRaw is the whole sheet with a forearm patch that comes to a whole-body
// concentration, by ion chromatography.
func withRaw(whole float64) Input {
	in := wholeSheet()
	in.Patches = []Patch{goodPatch(evidence.ForearmDorsal, (whole-11.05)/0.57)}
	return in
}

// Two methods err apart, one method twice together; a patch that is refused is
// named by its number.
func TestMethodsErrApart(t *testing.T) {
	of := func(m evidence.Method) Patch {
		p := goodPatch(evidence.ForearmDorsal, 60)
		p.Method = m
		return p
	}
	u := func(list ...Patch) float64 { return withPatches(t, list...).Sodium.Concentration.U }
	exact := u(of(evidence.IonChromatography), of(evidence.IonChromatography))
	apart := u(of(evidence.Conductivity), of(evidence.FlamePhotometry))
	near(t, "apart", math.Sqrt(apart*apart-exact*exact), 0.57*60*math.Hypot(0.123, 0.069)/2, 1e-9)
	given := of(evidence.Conductivity)
	given.U = new(quantity.MillimolesPerLitre(3))
	mixed := u(given, of(evidence.Conductivity))
	near(t, "given and not", math.Sqrt(mixed*mixed-exact*exact), 0.57*math.Hypot(3, 0.123*60)/2, 1e-9)
	bad := of(evidence.FlamePhotometry)
	bad.Sodium, bad.U, bad.Potassium = new(quantity.MillimolesPerLitre(500)), new(quantity.MillimolesPerLitre(-1)), new(quantity.MillimolesPerLitre(-1))
	r := withPatches(t, of(evidence.Conductivity), bad)
	found := map[evidence.Field]int{}
	for _, p := range r.Problems {
		found[p.Field] = p.Item
	}
	if found[evidence.PatchSodium] != 2 || found[evidence.PatchPotassium] != 2 || r.Sodium.Patches[1].Item != 2 {
		t.Errorf("%v", r.Problems)
	}
	bad.Sodium = new(quantity.MillimolesPerLitre(50))
	r = withPatches(t, of(evidence.Conductivity), bad)
	for _, p := range r.Problems {
		found[p.Field] = p.Item
	}
	if found[evidence.LaboratoryU] != 2 {
		t.Errorf("%v", r.Problems)
	}
	mixedNote := hasNote(withPatches(t, of(evidence.Conductivity), of(evidence.FlamePhotometry)).Sodium.Concentration, NoteMethodsMixed)
	if one := hasNote(withPatches(t, of(evidence.Conductivity)).Sodium.Concentration, NoteMethodsMixed); !mixedNote || one {
		t.Errorf("two methods %v, one %v", mixedNote, one)
	}
	r = withPatches(t, goodPatch(evidence.FiveSiteMean, 50), goodPatch(evidence.ForearmDorsal, 45), goodPatch(evidence.Chest, 60))
	if p := r.Sodium.Patches; p[0].Reason != "" || p[1].Reason != LeftFiveSite || p[2].Reason != LeftNoEquation {
		t.Errorf("%q %q %q", p[0].Reason, p[1].Reason, p[2].Reason)
	}
}

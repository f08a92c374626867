package sweat

import (
	"math"
	"slices"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// names reports whether a problem names a field by the number of its item.
func names(list []evidence.Problem, f evidence.Field, item int) bool {
	return slices.ContainsFunc(list, func(p evidence.Problem) bool { return p.Field == f && p.Item == item })
}

func TestWeighingsAreNamedByNumber(t *testing.T) {
	for field, change := range map[evidence.Field]func(*Input){
		evidence.MassBefore: func(in *Input) { in.Body.Before = []quantity.Kilograms{64, quantity.Kilograms(math.NaN())} },
		evidence.MassAfter:  func(in *Input) { in.Body.After = []quantity.Kilograms{62.4, 0} },
	} {
		in := wholeSheet()
		change(&in)
		r, err := Evaluate(in)
		if err == nil || len(r.Problems) != 1 || !names(r.Problems, field, 2) {
			t.Errorf("%s: %v, %v", field, r.Problems, err)
		}
	}
	in := wholeSheet()
	in.Body.DressBefore, in.Body.DressAfter = KitOn, KitOn
	r := evaluated(t, in)
	if len(r.Missing) != 1 || r.Missing[0].Effect != (quantity.Range{Low: -0.3, High: -0.1}) {
		t.Errorf("kit not weighed: %+v", r.Missing)
	}
	in.Body.KitDry, in.Body.KitWet = new(quantity.Kilograms(-1)), new(quantity.Kilograms(-1))
	if r := evaluated(t, in); !names(r.Problems, evidence.KitMass, 1) || !names(r.Problems, evidence.KitMass, 2) {
		t.Errorf("kit: %v", r.Problems)
	}
	in.Body.KitDry, in.Body.KitWet = new(quantity.Kilograms(0.9)), new(quantity.Kilograms(0.8))
	if r := evaluated(t, in); !refused(r, evidence.KitMass, 2, evidence.CodeOrder) {
		t.Errorf("kit that dried: %v", r.Problems)
	}
	in = wholeSheet()
	for _, x := range evaluated(t, in).Fluid.Deficit.Why.Inputs {
		if x.Symbol == "before" || x.Symbol == "after" {
			near(t, x.Symbol, x.U, 0.03, 1e-12)
		}
	}
	in.Body.Before = []quantity.Kilograms{64, 64.02}
	for _, x := range evaluated(t, in).Fluid.Deficit.Why.Inputs {
		if x.Symbol == "before1" || x.Symbol == "before2" {
			near(t, x.Symbol, x.U, 0.03, 1e-12)
		}
	}
}

func TestPotassiumOfASheet(t *testing.T) {
	in := wholeSheet()
	s := open(in)
	q := s.concentration().potassium.q
	near(t, "usual", q.Value(), 4, 1e-12)
	near(t, "spread", q.U(), 0.7, 1e-12)
	in.Patches = append(in.Patches, in.Patches[0], in.Patches[0])
	in.Patches[0].Potassium, in.Patches[1].Potassium = new(quantity.MillimolesPerLitre(5)), new(quantity.MillimolesPerLitre(8))
	in.Patches[2].Potassium, in.Patches[2].Condition = new(quantity.MillimolesPerLitre(20)), Saturated
	q = open(in).concentration().potassium.q
	near(t, "measured", q.Value(), 6.5, 1e-12)
	near(t, "spread", q.U(), 0.7, 1e-12)
}

// rate x (c + K - 159 (1 - f)) x 22.99 is 60/t x 22.99 x ((c + K) loss - 159 W),
// where W is the loss that was not replaced: its error by each of its parts.
func TestHoldByItsParts(t *testing.T) {
	for _, w := range []float64{0.2, 0.3} {
		in := lossOf(w, 1.8)
		in.Patches = withRaw(42).Patches
		r := evaluated(t, in)
		f := r.Sodium.Hold
		loss, k := w+1.8, 60.0/95*22.99
		value := k * (46*loss - 159*w)
		near(t, "hold", f.Value, value, 1e-6)
		u := 0.0
		for _, part := range []float64{
			k * (46 - 159) * math.Sqrt(2*0.03*0.03+0.05*0.05), k * 46 * 0.001 * math.Sqrt2, k * loss * 14 / 1.96, k * loss * 0.7, value / 95,
		} {
			u += part * part
		}
		near(t, "u", f.U, math.Sqrt(u), 1e-6)
		if hasNote(f, NoteHoldNotNeeded) {
			t.Errorf("%g of %g L: said not to be needed", 1.8, loss)
		}
	}
	in := lossOf(0.55, 1.8)
	in.Patches = withRaw(42).Patches
	in.Patches[0].Potassium = new(quantity.MillimolesPerLitre(20))
	says(t, evaluated(t, in).Sodium.Hold, NoteHoldNotNeeded, 80, 40)
}

// What holds plasma where hardly any sodium is known to be lost: from the low
// end of the concentration, 42 - 3 - 14.
func TestHoldFromTheLowEnd(t *testing.T) {
	in := lossOf(0.1, 1.9)
	in.Patches = withRaw(42).Patches
	in.Body.Step = nil
	f := evaluated(t, in).Sodium.Hold
	least := 60.0 / 95 * 2 * (25 + 4 - 159*0.05) * 22.99
	if low := f.Range.Low; low > least+1e-6 {
		t.Errorf("low end %g, want %g at most", low, least)
	}
	if f.Range.High < f.Value || f.Range.Low > f.Value {
		t.Errorf("%g is outside %v", f.Value, f.Range)
	}
}

// A range of sodium in mg is that in mmol by 22.99, also without an equation.
func TestRangesInMilligrams(t *testing.T) {
	s := withPatches(t, goodPatch(evidence.Chest, 62), goodPatch(evidence.UpperBack, 60)).Sodium
	near(t, "loss", s.Loss.Range.Low, 22.99*s.Millimoles.Range.Low, 1e-9)
	near(t, "loss", s.Loss.Range.High, 22.99*s.Millimoles.Range.High, 1e-9)
	near(t, "rate", s.LossRate.Range.High, 22.99*s.MillimoleRate.Range.High, 1e-9)
	// chest 62 - 22 -+ 25, back 60 - 23 -+ 24
	near(t, "low", s.Concentration.Range.Low, 13, 1e-9)
	near(t, "high", s.Concentration.Range.High, 65, 1e-9)
}

func TestNotesOfPatches(t *testing.T) {
	of := func(site evidence.Site, raw, on float64) Patch {
		p := goodPatch(site, raw)
		p.On = new(quantity.Minutes(on))
		return p
	}
	f := withPatches(t, of(evidence.ForearmDorsal, 45, 10)).Sodium.Concentration
	says(t, f, NotePatchTime, 10, 20, 30)
	says(t, f, NoteAgreement, 3, 14)
	says(t, withPatches(t, of(evidence.FiveSiteMean, 45, 20)).Sodium.Concentration, NoteFiveSiteLimits, 13)
	says(t, withPatches(t, of(evidence.Chest, 45, 30)).Sodium.Concentration, NoteRawAgreement, 22, 25)
	for on, want := range map[float64]bool{19: true, 20: false, 30: false, 31: true} {
		if got := hasNote(withPatches(t, of(evidence.Thigh, 45, on)).Sodium.Concentration, NotePatchTime); got != want {
			t.Errorf("on at %g min: %v", on, got)
		}
	}
	// 1.96 x sqrt 2 x 10.4 % is 28.83 %; 40 and 60 are 40 % of 50 apart
	most := 196 * math.Sqrt2 * 0.104
	says(t, withPatches(t, of(evidence.Thigh, 40, 25), of(evidence.Thigh, 60, 25)).Sodium.Concentration, NotePatchesDiffer, 40, most)
	says(t, withPatches(t, of(evidence.Thigh, 40, 25), of(evidence.Thigh, 50, 25), of(evidence.Thigh, 60, 25)).Sodium.Concentration, NotePatchesDiffer, 40, most)
	for half, want := range map[float64]bool{7.1: false, 7.3: true} { // 28.4 and 29.2 %
		f := withPatches(t, of(evidence.Thigh, 50-half, 25), of(evidence.Thigh, 50+half, 25)).Sodium.Concentration
		if got := hasNote(f, NotePatchesDiffer); got != want {
			t.Errorf("%g %% apart: %v", 4*half, got)
		}
	}
	// the fewest patches of a site count: one thigh beside two forearms
	in := wholeSheet()
	in.Patches = []Patch{of(evidence.ForearmDorsal, 45, 25), of(evidence.ForearmDorsal, 45, 25), of(evidence.Thigh, 45, 25)}
	if c := open(in).concentration(); c.perSite != 1 {
		t.Errorf("%d", c.perSite)
	}
	in.Patches = []Patch{of(evidence.ForearmDorsal, 45, 25), of(evidence.Thigh, 45, 25), of(evidence.Thigh, 45, 25)}
	if c := open(in).concentration(); c.perSite != 1 {
		t.Errorf("%d", c.perSite)
	}
}

// Watson 1980: standard errors 3.76 and 3.60 L. Baker, Lang and Kenney 2008:
// good from -4 to 0 %.
func TestCautionByItsParts(t *testing.T) {
	for sex, want := range map[Sex]struct {
		water, u float64
		source   string
	}{
		Male:   {2.447 - 0.09516*40 + 0.1074*180 + 0.3362*75, 3.76, "body-water.men.mass"},
		Female: {-2.097 + 0.1069*180 + 0.2466*75, 3.60, "body-water.women.mass"},
	} {
		p := Person{Sex: sex, Age: new(40.0), Height: new(quantity.Metres(1.8)), Mass: new(quantity.Kilograms(75))}
		c := OverDrinking(p, Exchanged{})
		near(t, "water", c.Water.Value, want.water, 1e-9)
		near(t, "u", c.Water.U, want.u, 1e-9)
		near(t, "u of plasma", c.Plasma.U, 2, 1e-9)
		if !slices.Contains(c.Water.Why.Sources, want.source) {
			t.Errorf("%s: %v", sex, c.Water.Why.Sources)
		}
		for litres, outside := range map[float64]bool{-2.9: false, -3.1: true, 0: false, 0.1: true} { // -3.87, -4.13 %
			c := OverDrinking(p, Exchanged{Water: litres})
			if got := slices.Contains(c.Codes, PlasmaOutside); got != outside {
				t.Errorf("%g L of 75 kg: %v", litres, c.Codes)
			}
			if got := slices.Contains(c.Codes, PlasmaGainLow); got != (litres > 0) {
				t.Errorf("%g L of 75 kg: %v", litres, c.Codes)
			}
		}
	}
	for _, x := range []struct {
		value, low      float64
		below, mayBelow bool
	}{{135, 134, false, true}, {134.9, 130, true, false}, {138, 135, false, false}, {145, 141, false, false}, {136, 134.9, false, true}} {
		var c Caution
		c.Plasma.Value, c.Plasma.Range.Low = x.value, x.low
		c.judge(-1)
		if slices.Contains(c.Codes, PlasmaBelow) != x.below || slices.Contains(c.Codes, PlasmaMayBelow) != x.mayBelow {
			t.Errorf("%g from %g: %v", x.value, x.low, c.Codes)
		}
	}
}

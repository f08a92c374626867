package sweat

import (
	"math"
	"slices"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// goodPatch is a good patch by ion chromatography, which adds no error of its own.
func goodPatch(site evidence.Site, mmol float64) Patch {
	return Patch{Site: site, On: new(quantity.Minutes(25)), Off: new(quantity.Minutes(60)),
		Sodium: new(quantity.MillimolesPerLitre(mmol)), Method: evidence.IonChromatography}
}

// withPatches is the whole sheet with other patches.
func withPatches(t testing.TB, list ...Patch) Result {
	t.Helper()
	in := wholeSheet()
	in.Patches = list
	return evaluated(t, in)
}

// hasNote reports whether a sentence stands beside a figure.
func hasNote(f figure.Figure, id string) bool {
	return slices.ContainsFunc(f.Why.Notes, func(n figure.Note) bool { return n.ID == id })
}

func TestPatchLeftOut(t *testing.T) {
	with := func(change func(*Patch)) Patch {
		p := goodPatch(evidence.ForearmDorsal, 45)
		change(&p)
		return p
	}
	for _, c := range []struct {
		name   string
		patch  Patch
		reason string
		used   bool
	}{
		{"good", with(func(*Patch) {}), "", true},
		{"detached", with(func(p *Patch) { p.Condition = Detached }), LeftDetached, false},
		{"saturated", with(func(p *Patch) { p.Condition = Saturated }), LeftSaturated, false},
		{"waiting", with(func(p *Patch) { p.Sodium = nil }), LeftWaiting, false},
		{"detached, never measured", with(func(p *Patch) { p.Sodium, p.Condition = nil, Detached }), LeftDetached, false},
		{"off before on", with(func(p *Patch) { p.Off = new(quantity.Minutes(5)) }), LeftTimes, false},
		{"beyond limits", with(func(p *Patch) { p.Sodium = new(quantity.MillimolesPerLitre(200)) }), LeftRefused, false},
		{"not a number", with(func(p *Patch) { p.Sodium = new(quantity.MillimolesPerLitre(math.NaN())) }), LeftRefused, false},
		{"chest", with(func(p *Patch) { p.Site = evidence.Chest }), LeftNoEquation, false},
		{"forehead", with(func(p *Patch) { p.Site = evidence.Forehead }), LeftNoAgreement, false},
		{"site not said", with(func(p *Patch) { p.Site = "" }), LeftNoAgreement, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := withPatches(t, c.patch)
			got := r.Sodium.Patches[0]
			if got.Reason != c.reason || got.Used != c.used || r.Sodium.Concentration.Known != c.used {
				t.Errorf("%+v; concentration %s", got, state(r.Sodium.Concentration))
			}
		})
	}
}

// TestLeftOutPatchDoesNotCount: a saturated patch beside a good one changes
// nothing but the list.
func TestLeftOutPatchDoesNotCount(t *testing.T) {
	bad := goodPatch(evidence.ForearmDorsal, 90)
	bad.Condition = Saturated
	a, b := withPatches(t, goodPatch(evidence.ForearmDorsal, 45)), withPatches(t, goodPatch(evidence.ForearmDorsal, 45), bad)
	if a.Sodium.Concentration.Value != b.Sodium.Concentration.Value || a.Sodium.Concentration.U != b.Sodium.Concentration.U {
		t.Errorf("%v became %v", a.Sodium.Concentration.Value, b.Sodium.Concentration.Value)
	}
	if len(b.Sodium.Patches) != 2 || b.Sodium.Patches[1].Raw != 90 {
		t.Errorf("patches %+v", b.Sodium.Patches)
	}
}

func TestCombining(t *testing.T) {
	forearm, thigh := 14/1.96, 13/1.96
	local := 0.57 * 0.104 * 45
	for _, c := range []struct {
		name     string
		patches  []Patch
		value, u float64
	}{
		{"one forearm", []Patch{goodPatch(evidence.ForearmDorsal, 45)}, 0.57*45 + 11.05, forearm},
		{"one thigh", []Patch{goodPatch(evidence.Thigh, 45)}, 0.75*45 + 11.37, thigh},
		{"two forearms", []Patch{goodPatch(evidence.ForearmDorsal, 45), goodPatch(evidence.ForearmDorsal, 45)},
			0.57*45 + 11.05, math.Sqrt(forearm*forearm - local*local/2)},
		{"forearm and thigh", []Patch{goodPatch(evidence.ForearmDorsal, 45), goodPatch(evidence.Thigh, 45)},
			(0.57*45 + 11.05 + 0.75*45 + 11.37) / 2, math.Hypot(forearm, thigh) / 2},
		{"forearm and chest: the chest stays out", []Patch{goodPatch(evidence.ForearmDorsal, 45), goodPatch(evidence.Chest, 80)},
			0.57*45 + 11.05, forearm},
		{"five-site mean alone, though a forearm is there", []Patch{goodPatch(evidence.FiveSiteMean, 50), goodPatch(evidence.ForearmDorsal, 45)},
			0.68*50 + 0.44, thigh},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := withPatches(t, c.patches...).Sodium.Concentration
			near(t, "value", f.Value, c.value, 1e-9)
			near(t, "u", f.U, c.u, 1e-9)
			if own := c.name == "forearm and thigh"; hasNote(f, NoteSitesAveraged) != own {
				t.Errorf("said to average sites by a proposal of our own: %v, want %v", !own, own)
			}
		})
	}
}

// TestSecondSiteHelpsMore: another equation site narrows the range far more
// than another patch on the same site, and the advice says so.
func TestSecondSiteHelpsMore(t *testing.T) {
	one := withPatches(t, goodPatch(evidence.ForearmDorsal, 45))
	same := withPatches(t, goodPatch(evidence.ForearmDorsal, 45), goodPatch(evidence.ForearmDorsal, 45))
	other := withPatches(t, goodPatch(evidence.ForearmDorsal, 45), goodPatch(evidence.Thigh, 37))
	w := func(r Result) float64 { return r.Sodium.LossRate.Range.Width() }
	if !(w(other) < 0.8*w(one) && w(same) > 0.9*w(one) && w(same) < w(one)) {
		t.Errorf("one %g, two on one site %g, two sites %g mg/h wide", w(one), w(same), w(other))
	}
	advice := one.Narrowing.Sodium
	if advice[0].ID != AdviceSecondSite || !advice[0].Worth {
		t.Fatalf("advice %+v", advice)
	}
	near(t, "promised by a second site", advice[0].Narrower, 1-w(other)/w(one), 0.05)
	i := slices.IndexFunc(advice, func(a Advice) bool { return a.ID == AdviceSecondPatch })
	if i < 0 || advice[i].Worth {
		t.Fatalf("a second forearm patch: %+v", advice)
	}
	near(t, "promised by a second patch", advice[i].Narrower, 1-w(same)/w(one), 0.01)
	if b := one.Sodium.LossRate.Why.Budget; b[0].Source != SourceEquation || b[0].Part < 0.9 {
		t.Errorf("budget %v", b)
	}
}

func TestRangeOnly(t *testing.T) {
	r := withPatches(t, goodPatch(evidence.Chest, 60))
	for name, f := range map[string]figure.Figure{
		"concentration": r.Sodium.Concentration, "mg/h": r.Sodium.LossRate, "mg": r.Sodium.Loss,
		"mmol": r.Sodium.Millimoles, "mmol/h": r.Sodium.MillimoleRate, "patch": r.Sodium.Patches[0].Predicted,
	} {
		if state(f) != "range only" || f.Value != 0 || f.Range.Width() <= 0 {
			t.Errorf("%s is %s: %+v", name, state(f), f)
		}
		if !hasNote(f, NoteRangeOnly) && name != "patch" {
			t.Errorf("%s does not say that it is only a range", name)
		}
	}
	near(t, "low", r.Sodium.Concentration.Range.Low, 60-22-25, 1e-9)
	near(t, "high", r.Sodium.Concentration.Range.High, 60-22+25, 1e-9)
	if r.Sodium.Hold.Known || r.Narrowing.Sodium[0].ID != AdviceEquationSite {
		t.Errorf("hold %s, advice %v", state(r.Sodium.Hold), r.Narrowing.Sodium)
	}
	// Two such sites: the range holds both.
	both := withPatches(t, goodPatch(evidence.Chest, 60), goodPatch(evidence.Calf, 30)).Sodium.Concentration.Range
	near(t, "calf and chest, low", both.Low, 13, 1e-9)
	near(t, "calf and chest, high", both.High, 63, 1e-9)
	// A concentration below nothing is cut off.
	if low := withPatches(t, goodPatch(evidence.UpperBack, 15)).Sodium.Concentration.Range.Low; low != 0 {
		t.Errorf("range from %g mmol/L", low)
	}
}

func TestWaitingKeepsFiguresProvisional(t *testing.T) {
	waiting := goodPatch(evidence.Thigh, 0)
	waiting.Sodium = nil
	r := withPatches(t, goodPatch(evidence.ForearmDorsal, 45), waiting)
	if state(r.Sodium.Concentration) != "provisional" || r.Missing[0].ID != MissingSodium || r.Missing[0].Item != 2 {
		t.Errorf("concentration is %s, missing %v", state(r.Sodium.Concentration), r.Missing)
	}
	if state(r.Fluid.Rate) != "ranged" {
		t.Errorf("rate is %s", state(r.Fluid.Rate))
	}
}

func TestPatchNotes(t *testing.T) {
	with := func(mmol float64, change func(*Patch)) figure.Figure {
		p := goodPatch(evidence.ForearmDorsal, mmol)
		change(&p)
		return withPatches(t, p).Sodium.Concentration
	}
	none := func(*Patch) {}
	for _, c := range []struct {
		name string
		f    figure.Figure
		id   string
		want bool
	}{
		{"inside", with(45, none), NoteForearmOutside, false},
		{"below where it was applied", with(12, none), NoteForearmOutside, true},
		{"above where it was applied", with(105, none), NoteForearmOutside, true},
		{"raised", with(25, none), NoteForearmRaises, true},
		{"not raised", with(26, none), NoteForearmRaises, false},
		{"conductivity", with(45, func(p *Patch) { p.Method = evidence.Conductivity }), NoteConductivity, true},
		{"method not said", with(45, func(p *Patch) { p.Method = "" }), NoteMethodUnknown, true},
		{"on early", with(45, func(p *Patch) { p.On = new(quantity.Minutes(5)) }), NotePatchTime, true},
		{"on at 30 min", with(45, func(p *Patch) { p.On = new(quantity.Minutes(30)) }), NotePatchTime, false},
		{"agreement", with(45, none), NoteAgreement, true},
		{"alike", withPatches(t, goodPatch(evidence.ForearmDorsal, 40), goodPatch(evidence.ForearmDorsal, 50)).Sodium.Concentration, NotePatchesDiffer, false},
		{"far apart", withPatches(t, goodPatch(evidence.ForearmDorsal, 35), goodPatch(evidence.ForearmDorsal, 50)).Sodium.Concentration, NotePatchesDiffer, true},
	} {
		if got := hasNote(c.f, c.id); got != c.want {
			t.Errorf("%s: %s is %v", c.name, c.id, got)
		}
	}
}

// TestMethodError: a worse method widens the range; a common method's error
// does not average out over two patches, a stated one does.
func TestMethodError(t *testing.T) {
	u := func(n int, change func(*Patch)) float64 {
		var list []Patch
		for range n {
			p := goodPatch(evidence.ForearmDorsal, 60)
			change(&p)
			list = append(list, p)
		}
		return withPatches(t, list...).Sodium.Concentration.U
	}
	part := func(with, without float64) float64 { return math.Sqrt(with*with - without*without) }
	exact := func(*Patch) {}
	conduct := func(p *Patch) { p.Method = evidence.Conductivity }
	stated := func(p *Patch) { p.U = new(quantity.MillimolesPerLitre(3)) }
	near(t, "conductivity", part(u(1, conduct), u(1, exact)), 0.57*0.123*60, 1e-9)
	near(t, "conductivity twice", part(u(2, conduct), u(2, exact)), 0.57*0.123*60, 1e-9)
	near(t, "stated", part(u(1, stated), u(1, exact)), 0.57*3, 1e-9)
	near(t, "stated twice", part(u(2, stated), u(2, exact)), 0.57*3/math.Sqrt2, 1e-9)
}

func TestRawForearmBand(t *testing.T) {
	r := withPatches(t, goodPatch(evidence.ForearmDorsal, 61), goodPatch(evidence.Thigh, 61))
	if r.Sodium.Patches[0].Band != evidence.SodiumHigh || r.Sodium.Patches[1].Band != "" {
		t.Errorf("bands %q, %q", r.Sodium.Patches[0].Band, r.Sodium.Patches[1].Band)
	}
}

func TestPotassium(t *testing.T) {
	hold := func(kalium *quantity.MillimolesPerLitre) figure.Figure {
		in := wholeSheet()
		in.Patches[0].Potassium = kalium
		in.Intake.Bottles = []Bottle{{Before: new(quantity.Grams(2100)), After: new(quantity.Grams(300))}}
		in.Body.After[0] = 63.5 // more than eight tenths replaced
		in.Time.Elapsed = new(quantity.Minutes(120))
		return evaluated(t, in).Sodium.Hold
	}
	usual, more := hold(nil), hold(new(quantity.MillimolesPerLitre(6)))
	if !usual.Known || !more.Known || more.Value <= usual.Value {
		t.Errorf("hold %g with usual, %g with more potassium", usual.Value, more.Value)
	}
}

// TestSecondPatchCounts: of two patches on sites with an equation the mean is
// taken; one on a site without is left out and says why.
func TestSecondPatchCounts(t *testing.T) {
	const raw = 50.0
	arm, _ := predicted(evidence.ForearmDorsal, raw)
	leg, _ := predicted(evidence.Thigh, raw)
	for _, c := range []struct {
		name   string
		second Patch
		want   float64
		reason string
	}{
		{"forearm again", goodPatch(evidence.ForearmDorsal, 60), 0.57*55 + 11.05, ""},
		{"thigh", goodPatch(evidence.Thigh, raw), (arm + leg) / 2, ""},
		{"chest", goodPatch(evidence.Chest, 90), arm, LeftNoEquation},
		{"forehead", goodPatch(evidence.Forehead, 90), arm, LeftNoAgreement},
	} {
		t.Run(c.name, func(t *testing.T) {
			one := withPatches(t, goodPatch(evidence.ForearmDorsal, raw)).Sodium
			two := withPatches(t, goodPatch(evidence.ForearmDorsal, raw), c.second).Sodium
			near(t, "concentration", two.Concentration.Value, c.want, 1e-9)
			if got := two.Patches[1]; got.Reason != c.reason || got.Used != (c.reason == "") {
				t.Errorf("the second: used %v, %q", got.Used, got.Reason)
			}
			if counts := two.Concentration.Range.Width() < one.Concentration.Range.Width()-1e-9; counts != (c.reason == "") {
				t.Errorf("the range is %v wide with one, %v with two", one.Concentration.Range.Width(), two.Concentration.Range.Width())
			}
		})
	}
}

// TestHoldIsSafe: no intake that holds plasma sodium is shown where more was drunk
// than lost, and its low end uses the low end of the concentration.
func TestHoldIsSafe(t *testing.T) {
	in := wholeSheet()
	in.Patches = []Patch{goodPatch(evidence.ForearmDorsal, 90)}
	in.Intake.Bottles = []Bottle{{Before: new(quantity.Grams(2100)), After: new(quantity.Grams(300))}}
	in.Options.Kept = []Kept{{evidence.SweatRate, 0}, {evidence.DrinkingRate, 0}}
	in.Body.After[0] = 63.6
	r := evaluated(t, in)
	c, f := r.Sodium.Concentration, r.Fluid.Replaced.Value/100
	if !r.Sodium.Hold.Known || f > 1 {
		t.Fatalf("hold %s with %g replaced", state(r.Sodium.Hold), f)
	}
	low := SodiumToHold(c.Range.Low, evidence.SweatPotassium, f) * r.Fluid.Rate.Value * evidence.SodiumMolarMass
	if got := r.Sodium.Hold.Range.Low; got > low+1e-9 {
		t.Errorf("its low end is %g, by the low end of the concentration %g", got, low)
	}
	in.Body.After[0] = 64.2
	if r := evaluated(t, in); r.Sodium.Hold.Known || r.Sodium.Hold.Ranged {
		t.Errorf("%g %% replaced and still %g mg/h to hold", r.Fluid.Replaced.Value, r.Sodium.Hold.Value)
	}
}

// TestPlannedConcentrationKeepsTheBias: the range to plan on lies about the value
// less the bias of its equation, wider by the day.
func TestPlannedConcentrationKeepsTheBias(t *testing.T) {
	f := withPatches(t, goodPatch(evidence.ForearmDorsal, 50)).Sodium.Concentration
	r, ok := PlannedConcentration(f)
	reach := 1.96 * math.Hypot(14/1.96, 0.104*39.55)
	if !ok || math.Abs(r.Low-(36.55-reach)) > 1e-6 || math.Abs(r.High-(36.55+reach)) > 1e-6 {
		t.Errorf("%+v from %+v", r, f.Range)
	}
}

// predicted is the whole-body sodium from the raw value of a site, mmol/L; ok is
// false for a site without an equation.
func predicted(site evidence.Site, raw float64) (wholeBody float64, ok bool) {
	row, ok := evidence.AgreementOf(site)
	if !ok || !row.Equation {
		return 0, false
	}
	return predict(row, symbol("raw", uncertainty.Exact(raw), quantity.MillimolePerLitre)).q.Value(), true
}

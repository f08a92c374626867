package sweat

import (
	"math"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// Two sources of 3 and 4 make 5: without the 3 the range is 4/5 as wide, with a
// quarter of the variance of the 4 it is sqrt(13)/5.
func TestTryTakesAwayASource(t *testing.T) {
	q := uncertainty.Exact(10).With(3, uncertainty.Source{Name: "a"}).With(4, uncertainty.Source{Name: "b"})
	leave := func(name string, part float64) map[string]float64 { return map[string]float64{name: part} }
	list := try(q, []change{
		{"none", leave("c", 0)}, {"three", leave("a", 0)}, {"four", leave("b", 0.25)},
		{"hardly", leave("b", 0.8612)}, {"just", leave("b", 0.8437)}, // 4.55 and 5.13 %
	})
	want := []Advice{
		{"four", 1 - math.Sqrt(13)/5, true}, {"three", 0.2, true},
		{"just", 1 - math.Sqrt(9+16*0.8437)/5, true}, {"hardly", 1 - math.Sqrt(9+16*0.8612)/5, false},
	}
	if len(list) != len(want) {
		t.Fatalf("%+v", list)
	}
	for i, w := range want {
		near(t, w.ID, list[i].Narrower, w.Narrower, 1e-12)
		if list[i].ID != w.ID || list[i].Worth != w.Worth {
			t.Errorf("place %d: %+v, want %+v", i, list[i], w)
		}
	}
}

// leaves finds what a change leaves of a source.
func leaves(t *testing.T, list []change, id, source string) float64 {
	t.Helper()
	for _, c := range list {
		if c.id == id {
			if x, ok := c.leave[source]; ok {
				return x
			}
		}
	}
	t.Errorf("%s does not name %s", id, source)
	return math.NaN()
}

// What one more weighing or an endless fine scale leaves of the variance, by
// the rule of the field scale: 0.03 kg by the root of the readings, at least the
// step by the root of 12.
func TestWhatWeighingsLeave(t *testing.T) {
	in := wholeSheet()
	in.Body.Before = []quantity.Kilograms{64, 64.02}
	list := open(in).weighingChanges()
	near(t, "before once more", leaves(t, list, AdviceDuplicate, SourceBefore), 2.0/3, 1e-12)
	near(t, "after once more", leaves(t, list, AdviceDuplicate, SourceAfter), 0.5, 1e-12)
	near(t, "finer", leaves(t, list, AdviceFinerScale, SourceBefore), 1, 1e-12)
	near(t, "times", leaves(t, list, AdviceExactTimes, SourceTime), 0.25, 1e-12)
	near(t, "one scale", leaves(t, list, AdviceOneScale, SourceOffset), 0, 0)
	near(t, "own bottle", leaves(t, list, AdviceOwnBottle, SourceShared), 0, 0)
	in.Body.Step = new(quantity.Kilograms(0.2))
	list = open(in).weighingChanges()
	near(t, "before, finer", leaves(t, list, AdviceFinerScale, SourceBefore), 0.03*0.03/2/(0.2*0.2/12), 1e-12)
	near(t, "after, finer", leaves(t, list, AdviceFinerScale, SourceAfter), 0.03*0.03/(0.2*0.2/12), 1e-12)
	near(t, "before once more on coarse steps", leaves(t, list, AdviceDuplicate, SourceBefore), 1, 1e-12)
	for _, c := range list {
		if c.id == AdviceMinimalClothing || c.id == AdviceCorrect || c.id == AdviceGiveEffort {
			t.Errorf("%s to a sheet that needs none", c.id)
		}
	}
	in.Body.DressBefore, in.Body.DressAfter = KitOn, KitOn
	in.Effort = Effort{Rating: new(5.0)}
	list = open(in).weighingChanges()
	near(t, "less clothing", leaves(t, list, AdviceMinimalClothing, SourceTowel), 0.05*0.05/(0.10*0.10), 1e-12)
	near(t, "the effort", leaves(t, list, AdviceGiveEffort, SourceCorrection), 0.2*0.2/(0.35*0.35), 1e-12)
	in.Options.Uncorrected = true
	near(t, "corrected", leaves(t, open(in).weighingChanges(), AdviceCorrect, SourceUncorrected), 0, 0)
}

// Poured volumes err by 5 %, two weighings by 1 g each.
func TestWhatWeighedBottlesLeave(t *testing.T) {
	volume := func(ml float64) Bottle { return Bottle{Volume: new(quantity.Millilitres(ml))} }
	weighed := Bottle{Before: grams(700), After: grams(400)}
	both := Bottle{Before: grams(700), Volume: new(quantity.Millilitres(400))}
	for _, c := range []struct {
		name    string
		bottles []Bottle
		want    float64
	}{
		{"none", nil, 1}, {"weighed", []Bottle{weighed, both}, 1}, {"20 mL", []Bottle{volume(20)}, 1},
		{"200 mL", []Bottle{weighed, volume(200)}, 2.0 / 100}, {"200 and 400 mL", []Bottle{volume(200), volume(400)}, 4.0 / (100 + 400)},
	} {
		in := wholeSheet()
		in.Intake.Bottles = c.bottles
		near(t, c.name, open(in).bottleRatio(), c.want, 1e-12)
	}
}

// What a second site, a second patch and a better laboratory leave.
func TestWhatPatchesLeave(t *testing.T) {
	changes := func(list ...Patch) []change {
		in := wholeSheet()
		in.Patches = list
		s := open(in)
		return s.patchChanges(s.concentration())
	}
	of := func(site evidence.Site, m evidence.Method) Patch {
		p := goodPatch(site, 45)
		p.Method = m
		return p
	}
	arm := changes(of(evidence.ForearmDorsal, evidence.Conductivity))
	near(t, "thigh beside forearm", leaves(t, arm, AdviceSecondSite, SourceEquation), (1+13.0*13/(14*14))/4, 1e-12)
	near(t, "thigh beside forearm, sites", leaves(t, arm, AdviceSecondSite, SourceSite), (1+13.0*13/(14*14))/4, 1e-12)
	near(t, "laboratory", leaves(t, arm, AdviceLaboratory, SourceLaboratory), 0.039*0.039/(0.123*0.123), 1e-12)
	local := 0.57 * 0.104 * 45
	near(t, "second patch", leaves(t, arm, AdviceSecondPatch, SourceEquation), 1-local*local/2/math.Pow(14/1.96, 2), 1e-12)
	leg := changes(of(evidence.Thigh, evidence.DirectElectrode))
	near(t, "forearm beside thigh", leaves(t, leg, AdviceSecondSite, SourceEquation), (1+14.0*14/(13*13))/4, 1e-12)
	names := func(list []change) string {
		s := ""
		for _, c := range list {
			s += c.id + " "
		}
		return s
	}
	for _, c := range []struct {
		name string
		list []change
		want string
	}{
		{"a good laboratory", leg, AdviceSecondSite + " " + AdviceSecondPatch + " "},
		{"two patches", changes(of(evidence.Thigh, evidence.DirectElectrode), of(evidence.Thigh, evidence.DirectElectrode)), AdviceSecondSite + " "},
		{"two methods", changes(of(evidence.Thigh, evidence.DirectElectrode), of(evidence.Thigh, evidence.Conductivity)), AdviceSecondSite + " "},
		{"two sites", changes(of(evidence.ForearmDorsal, evidence.FlamePhotometry), of(evidence.Thigh, evidence.FlamePhotometry)), AdviceSecondPatch + " " + AdviceLaboratory + " "},
		{"five sites", changes(of(evidence.FiveSiteMean, evidence.DirectElectrode)), ""},
	} {
		if got := names(c.list); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	both := changes(of(evidence.ForearmDorsal, evidence.IonChromatography), of(evidence.Thigh, evidence.IonChromatography))
	leg2 := 0.75 * 0.104 * 45
	whole := math.Pow(14/1.96, 2) + math.Pow(13/1.96, 2)
	near(t, "second patch on each of two", leaves(t, both, AdviceSecondPatch, SourceEquation), 1-(local*local+leg2*leg2)/2/whole, 1e-12)
	s := open(wholeSheet())
	near(t, "no patch used", s.secondPatch(concentration{results: []PatchResult{{}}}), 1, 0)
}

// A chest has 22 (25) before any equation; in its place a forearm leaves 14 of
// 1.96 standard uncertainties: relative errors of rate and concentration add in
// squares.
func TestWhatAnEquationSiteLeaves(t *testing.T) {
	in := wholeSheet()
	in.Patches = []Patch{goodPatch(evidence.Chest, 62)}
	s := open(in)
	b, c := s.balance(), s.concentration()
	n := s.narrowing(b, c)
	rate := b.rate.q.U() / b.rate.q.Value()
	wide := math.Hypot(rate, 25/1.96/40)
	narrow := math.Hypot(rate, 14/1.96/40)
	if len(n.Sodium) != 1 || n.Sodium[0].ID != AdviceEquationSite || !n.Sodium[0].Worth {
		t.Fatalf("%+v", n.Sodium)
	}
	near(t, "equation", n.Sodium[0].Narrower, 1-narrow/wide, 1e-9)
	in.Patches = []Patch{goodPatch(evidence.ForearmVentral, 62)} // 0 (19)
	s = open(in)
	near(t, "ventral", s.narrowing(s.balance(), s.concentration()).Sodium[0].Narrower,
		1-math.Hypot(rate, 14/1.96/62)/math.Hypot(rate, 19/1.96/62), 1e-9)
	// what a change is worth to the sodium counts the rate's part too
	in = wholeSheet()
	s = open(in)
	b, c = s.balance(), s.concentration()
	concentration := math.Hypot(14/1.96, 0.57*0.039*47.5) / 38.125
	all := math.Hypot(rate, concentration)
	for _, a := range s.narrowing(b, c).Sodium {
		if a.ID == AdviceSecondPatch {
			left := math.Hypot(14/1.96, 0.57*0.039*47.5)
			local := 0.57 * 0.104 * 47.5
			left = math.Sqrt(left*left-local*local/2) / 38.125
			near(t, "second patch in the loss", a.Narrower, 1-math.Hypot(rate, left)/all, 1e-9)
		}
	}
}

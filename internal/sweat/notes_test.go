package sweat

import (
	"math"
	"slices"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// says finds a note and holds its numbers against what is wanted.
func says(t *testing.T, f figure.Figure, id string, args ...float64) {
	t.Helper()
	i := slices.IndexFunc(f.Why.Notes, func(n figure.Note) bool { return n.ID == id })
	if i < 0 {
		t.Errorf("%s is not said: %v", id, f.Why.Notes)
		return
	}
	if got := f.Why.Notes[i].Args; len(got) != len(args) {
		t.Errorf("%s: %v, want %v", id, got, args)
	} else {
		for k := range args {
			near(t, id, got[k], args[k], 1e-9)
		}
	}
}

func TestNotesOfTheLoss(t *testing.T) {
	in := wholeSheet()
	f := evaluated(t, in).Fluid
	says(t, f.Rate, NoteDayToDay, 0.15)
	for _, id := range []string{NoteFieldMethod, NoteEffortRated, NoteEffortAssumed, NoteSharedBottles, NoteDressNotSaid, NotePouredInKit} {
		if hasNote(f.Loss, id) {
			t.Errorf("%s beside a plain sheet", id)
		}
	}
	in.Options.Uncorrected = true
	says(t, evaluated(t, in).Fluid.Loss, NoteFieldMethod, 0.20)
	in = wholeSheet()
	in.Effort = Effort{}
	says(t, evaluated(t, in).Fluid.Loss, NoteEffortAssumed, 6)
	in = wholeSheet() // 300 g of 300 and 250 g of 100 to 200
	in.Intake.Bottles[0].Use, in.Intake.Bottles[0].ShareLow, in.Intake.Bottles[0].ShareHigh = Shared, new(quantity.Percent(40)), new(quantity.Percent(60))
	says(t, evaluated(t, in).Fluid.Loss, NoteSharedBottles, 0.37, 0.43)
	for _, c := range []struct {
		before, after Dress
		want          bool
	}{{"", Minimal, true}, {Minimal, "", true}, {"", "", true}, {KitOn, KitOn, false}} {
		in = wholeSheet()
		in.Body.DressBefore, in.Body.DressAfter = c.before, c.after
		if got := hasNote(evaluated(t, in).Fluid.Loss, NoteDressNotSaid); got != c.want {
			t.Errorf("%q and %q: %v", c.before, c.after, got)
		}
	}
	for _, c := range []struct {
		use  Use
		kit  Dress
		want bool
	}{{PouredOver, KitOn, true}, {Drunk, KitOn, false}, {PouredOver, Minimal, false}} {
		in = wholeSheet()
		in.Body.DressBefore, in.Body.DressAfter = c.kit, c.kit
		in.Intake.Bottles[0].Use = c.use
		if got := hasNote(evaluated(t, in).Fluid.Loss, NotePouredInKit); got != c.want {
			t.Errorf("%s with %s: %v", c.use, c.kit, got)
		}
	}
}

// 1.5 to 2 steps in dim light; 19.5 % in women and 28.1 % in men.
func TestNotesOfMarkers(t *testing.T) {
	m := markersOf(t, Markers{Gravity: new(1.016), Osmolality: new(500.0), Colour: new(4.0)}, Options{})
	says(t, m[0].Figure, NoteSpecificities, 19.5, 28.1)
	says(t, m[2].Figure, NoteDimLight, 1.5, 2)
	if len(m[1].Figure.Why.Notes) != 1 || len(m[2].Figure.Why.Notes) != 2 {
		t.Errorf("osmolality %v, colour %v", m[1].Figure.Why.Notes, m[2].Figure.Why.Notes)
	}
	says(t, markersOf(t, Markers{Gravity: new(1.016)}, Options{Sex: Male})[0].Figure, NoteSpecificity, 28.1)
	band := func(x float64) string { return markersOf(t, Markers{Gravity: new(x)}, Options{})[0].Band }
	if at, above := band(1.020), band(1.025); at == above || band(1.0200004) != at || band(1.020004) != above {
		t.Errorf("a reading is rounded otherwise than to six decimals: %s %s", at, above)
	}
}

// Each morning errs by 0.66 %, so 1.96 of sqrt(1 + 1/3) of it is usual: 1.494 %.
func TestMorningNotes(t *testing.T) {
	base := []quantity.Kilograms{70, 70, 70}
	for change, id := range map[float64]string{-1.4: NoteMorningUsual, -1.46: NoteMorningUsual, -1.53: NoteMorningUnusual, -1.6: NoteMorningUnusual} {
		f := markersOf(t, Markers{Morning: new(quantity.Kilograms(70 * (1 + change/100))), Baseline: base}, Options{})[0].Figure
		says(t, f, id, 0.66)
		at := 1 + change/100
		near(t, "u", f.U, 0.66*at*math.Sqrt(1+1.0/3), 1e-9)
	}
	r := evaluated(t, Input{Markers: Markers{Morning: new(quantity.Kilograms(70)), Baseline: []quantity.Kilograms{70, 700}}})
	says(t, r.Markers[0].Figure, NoteMornings, 1, 3)
	if !slices.ContainsFunc(r.Problems, func(p evidence.Problem) bool { return p.Field == evidence.MorningMass && p.Item == 2 }) {
		t.Errorf("the second morning is not named: %v", r.Problems)
	}
}

// What is possible at all, so that it may be kept with a reason.
func TestPossible(t *testing.T) {
	for _, c := range []struct {
		field evidence.Field
		x     float64
		want  bool
	}{
		{evidence.ShareDrunk, -1, false}, {evidence.ShareDrunk, 0, true}, {evidence.ShareDrunk, 95, true}, {evidence.ShareDrunk, 100, true}, {evidence.ShareDrunk, 105, false},
		{evidence.AirTemperature, -30, true}, {evidence.Duration, 0, false}, {evidence.Duration, 1, true}, {evidence.SweatRate, 0, false}, {evidence.SweatRate, 0.01, true},
		{evidence.USG, 1.05, false}, {evidence.UrineMass, -1, false}, {evidence.UrineMass, 0, true},
	} {
		if got := possible(c.field, c.x); got != c.want {
			t.Errorf("%v of %g: %v", c.field, c.x, got)
		}
	}
	c := checker{limits: evidence.Limits()}
	for x, want := range map[float64]bool{4: true, 4.5: false} {
		if c.usable(evidence.UrineColour, 0, x) != want {
			t.Errorf("colour %g: %v", x, !want)
		}
	}
	if len(c.problems) != 1 || c.problems[0].Code != evidence.CodeNotWhole || c.problems[0].Severity != evidence.Refuses {
		t.Errorf("%+v", c.problems)
	}
}

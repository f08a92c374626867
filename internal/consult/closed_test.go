package consult

import (
	"encoding/json"
	"reflect"
	"slices"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/frozen"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// closedCase is the case's sheet as it was closed: what went in, what was kept,
// what it said.
type closedCase struct {
	sheet record.Test
	a     record.Athlete
	raw   []record.RawText
	kept  []record.Frozen
	d     Setup
	then  Findings
}

// closeCase freezes the case's sheet as its state says, with a food, a bottle
// kept with a reason, and bands of the practice's own.
func closeCase(t testing.TB, state record.TestState) closedCase {
	t.Helper()
	sheet, a := caseSheet()
	sheet.State = state
	sheet.Foods = []record.FoodEaten{{Meta: record.Meta{ID: "f1"}, ProductID: "generic.banana", Portions: record.Num(0.5, quantity.Portion)}}
	sheet.Bottles[1].Before, sheet.Bottles[1].After = record.Num(12500, quantity.Gram), record.Num(12000, quantity.Gram) // odd, and kept
	raw := []record.RawText{{Kind: record.KindTest, Record: sheet.ID, Field: "bottles.b2.before", Reason: true, Text: "a canister"}}
	d := testSetup(t)
	d.Settings = record.Settings{UrineBands: evidence.SetOwn, OwnGravityWell: record.Num(1.012, quantity.None), DeficitAim: record.Num(1.5, quantity.PerCent)}
	then := Find(sheet, a, raw, d)
	if state == record.TestClosed && !then.Ready() {
		t.Fatalf("not to be closed: %v, %v", then.Sweat.Missing, then.Sweat.Problems)
	}
	inputs, results, err := FreezeTest(then, a, raw, d)
	if err != nil {
		t.Fatal(err)
	}
	kept := []record.Frozen{{Record: sheet.ID, Inputs: inputs, Results: results, Evidence: "of then"}, {Inputs: []byte("an older copy")}}
	return closedCase{sheet, a, raw, kept, d, then}
}

// another is a desk on which product, bands and limit have changed since.
func another(t testing.TB) Setup {
	t.Helper()
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	drink := caseDrink()
	drink.Density, drink.Per100.Sodium = record.Num(1.08, quantity.GramPerMillilitre), record.Num(90, quantity.Milligram)
	return Setup{Pantry: NewPantry(generic, []record.Product{drink})}
}

// A closed test shows what it showed when it was closed, to the last bit.
func TestFindAsClosed(t *testing.T) {
	c := closeCase(t, record.TestClosed)
	sheet, a, raw, kept, d, then := c.sheet, c.a, c.raw, c.kept, c.d, c.then
	heavier := a
	heavier.Sex, heavier.UsualMass = record.Male, record.Num(90, quantity.Kilogram)
	for name, now := range map[string]struct {
		a   record.Athlete
		raw []record.RawText
		d   Setup
	}{"nothing changed": {a, raw, d}, "everything changed": {heavier, nil, another(t)}} {
		t.Run(name, func(t *testing.T) {
			got := FindAsClosed(sheet, now.a, now.raw, kept, now.d)
			if got.Kept != KeptFigures || got.Evidence != "of then" {
				t.Fatalf("kept %q, evidence %q", got.Kept, got.Evidence)
			}
			if !reflect.DeepEqual(frozenFindings(got), frozenFindings(then)) || !reflect.DeepEqual(got.Test, then.Test) || got.Refused != nil {
				t.Errorf("got\n%+v, want\n%+v", got, then)
			}
			if list := got.Differing(then); len(list) > 0 {
				t.Errorf("differs in %v", list)
			}
		})
	}
	anew := Find(sheet, a, raw, another(t))
	if list := then.Differing(anew); !slices.Contains(list, "sodium-in") || !slices.Contains(list, "drunk") {
		t.Errorf("another density and another sodium differ in %v only", list)
	}
	open := sheet
	open.State = record.TestOpen
	if got := FindAsClosed(open, a, raw, kept, another(t)); got.Kept != "" || len(got.Differing(anew)) > 0 {
		t.Errorf("an open sheet is not calculated as it stands: %q", got.Kept)
	}
}

// A sheet that waits takes the laboratory's value in and everything else as it
// was; closed with it, it is kept with what it was calculated from then.
func TestFindAsClosedWaiting(t *testing.T) {
	c := closeCase(t, record.TestWaiting)
	sheet, a, raw, kept, d := c.sheet, c.a, c.raw, c.kept, c.d
	sheet.Patches[0].Sodium = record.Num(60, quantity.MillimolePerLitre)
	want := Find(sheet, a, raw, d)
	heavier := a
	heavier.Sex = record.Male
	got := FindAsClosed(sheet, heavier, nil, kept, another(t))
	if got.Kept != KeptInputs || len(got.Differing(want)) > 0 || !reflect.DeepEqual(got.Sweat, want.Sweat) {
		t.Fatalf("kept %q, differs in %v\n%+v\n%+v", got.Kept, got.Differing(want), got.Sweat, want.Sweat)
	}
	got.Test.State = record.TestClosed
	inputs, results, err := FreezeTest(got, heavier, nil, another(t))
	if err != nil {
		t.Fatal(err)
	}
	var in frozen.Test
	if err := json.Unmarshal(inputs, &in); err != nil || len(in.Reasons) != 1 || in.Athlete.Sex != a.Sex || in.Settings.UrineBands != evidence.SetOwn || len(in.Products) != 3 {
		t.Errorf("kept with %+v, %v", in, err)
	}
	sheet.State = record.TestClosed
	again := FindAsClosed(sheet, heavier, nil, []record.Frozen{{Record: sheet.ID, Inputs: inputs, Results: results}}, another(t))
	if again.Kept != KeptFigures || len(again.Differing(want)) > 0 {
		t.Errorf("kept %q, differs in %v", again.Kept, again.Differing(want))
	}
}

// What cannot be read is never passed off as what was kept.
func TestFindAsClosedUnreadable(t *testing.T) {
	c := closeCase(t, record.TestClosed)
	sheet, a, raw, kept, d, then := c.sheet, c.a, c.raw, c.kept, c.d, c.then
	for name, results := range map[string]string{"garbage": "{", "another shape": "[]", "nothing": "{}"} {
		t.Run("figures: "+name, func(t *testing.T) {
			one := kept[0]
			one.Results = []byte(results)
			got := FindAsClosed(sheet, a, nil, []record.Frozen{one}, another(t))
			if got.Kept != KeptInputs || len(got.Differing(then)) > 0 {
				t.Errorf("kept %q, differs in %v", got.Kept, got.Differing(then))
			}
		})
	}
	other, _ := json.Marshal(frozen.Test{Test: record.Test{Meta: record.Meta{ID: "another"}}})
	for name, copies := range map[string][]record.Frozen{
		"none": nil, "garbage": {{Inputs: []byte("{")}}, "another shape": {{Inputs: []byte("{}")}}, "another test": {{Inputs: other}},
	} {
		t.Run("inputs: "+name, func(t *testing.T) {
			got, want := FindAsClosed(sheet, a, raw, copies, d), Find(sheet, a, raw, d)
			if got.Kept != KeptNothing || len(got.Differing(want)) > 0 {
				t.Errorf("kept %q, differs in %v", got.Kept, got.Differing(want))
			}
		})
	}
}

// A generic product that was corrected then is found by the name the sheet gives it.
func TestFindAsClosedCorrectedProduct(t *testing.T) {
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	own := caseDrink()
	own.Replaces = "generic.drink-6"
	d := Setup{Pantry: NewPantry(generic, []record.Product{own})}
	sheet, a := caseSheet()
	sheet.State, sheet.Bottles[1].ProductID = record.TestWaiting, "generic.drink-6"
	want := Find(sheet, a, nil, d)
	inputs, results, err := FreezeTest(want, a, nil, d)
	if err != nil {
		t.Fatal(err)
	}
	got := FindAsClosed(sheet, a, nil, []record.Frozen{{Record: sheet.ID, Inputs: inputs, Results: results}}, Setup{Pantry: NewPantry(generic, nil)})
	if got.Kept != KeptInputs || len(got.Differing(want)) > 0 || got.Intake.Bottles[1].Product.Name != own.Name {
		t.Errorf("kept %q, differs in %v, %q", got.Kept, got.Differing(want), got.Intake.Bottles[1].Product.Name)
	}
}

// A practice has one method for all its tests: a sheet that was closed by another
// one is calculated anew, from what went in then.
func TestFindAsClosedByThePracticesMethod(t *testing.T) {
	c := closeCase(t, record.TestClosed)
	now := c.d
	now.Settings.FieldMethod = true
	got := FindAsClosed(c.sheet, c.a, nil, c.kept, now)
	if got.Kept != KeptMethod || !(got.Sweat.Fluid.Rate.Value > c.then.Sweat.Fluid.Rate.Value) || got.Sweat.Fluid.Bias == 0 {
		t.Errorf("kept %q, %g L/h after %g", got.Kept, got.Sweat.Fluid.Rate.Value, c.then.Sweat.Fluid.Rate.Value)
	}
	if got.Limit != c.then.Limit || got.Sweat.Fluid.Deficit.Value != c.then.Sweat.Fluid.Deficit.Value {
		t.Error("the limit or the deficit of then is another")
	}
	if line := LineOf(got); line.Method != record.MethodField || LineOf(c.then).Method != record.MethodCorrected {
		t.Errorf("lists keep %q", line.Method)
	}
	// Version 1 took gas exchange off the deficit, and corrected by its own rule.
	var old frozen.Findings
	if err := json.Unmarshal(c.kept[0].Results, &old); err != nil {
		t.Fatal(err)
	}
	old.Sweat.Fluid.DeficitShare.Value -= 0.1
	results, err := json.Marshal(old)
	if err != nil {
		t.Fatal(err)
	}
	was := c.kept[0]
	was.Results = results
	if got := FindAsClosed(c.sheet, c.a, nil, []record.Frozen{was}, c.d); got.Kept != KeptMethod || len(got.Differing(c.then)) > 0 {
		t.Errorf("kept %q, differs in %v", got.Kept, got.Differing(c.then))
	}
}

// The first mass that was ever weighed is kept with the first test of one whose usual mass
// is not known; where one of the two is known, or nothing was weighed, it stays as it is.
func TestFreezeTestKeepsTheFirstMass(t *testing.T) {
	sheet, a := caseSheet()
	d := testSetup(t)
	bare := sheet.Clone()
	bare.Weighings = nil
	for name, c := range map[string]struct {
		sheet        record.Test
		usual, first float64
		want         float64
	}{
		"neither known": {sheet, 0, 0, 72.4}, "usual known": {sheet, 71, 0, 0}, "first known": {sheet, 0, 69, 69}, "nothing weighed": {bare, 0, 0, 0},
	} {
		who := a
		who.UsualMass, who.FirstMass = record.Number{}, c.first
		if c.usual > 0 {
			who.UsualMass = numberOf(c.usual)
		}
		inputs, _, err := FreezeTest(Find(c.sheet, who, nil, d), who, nil, d)
		if err != nil {
			t.Fatal(err)
		}
		var in frozen.Test
		if err := json.Unmarshal(inputs, &in); err != nil || in.Athlete.FirstMass != c.want {
			t.Errorf("%s: %g kg, want %g (%v)", name, in.Athlete.FirstMass, c.want, err)
		}
	}
}

// Reasons that were given for values of one test are not those of another.
func TestReasonsAreOfTheirTest(t *testing.T) {
	test := func(id record.ID, text string) Findings {
		return Findings{Test: record.Test{Meta: record.Meta{ID: id}}, reasons: []record.RawText{{Text: text}}}
	}
	list := []Findings{test("a", "of a"), test("b", "of b")}
	for id, want := range map[record.ID]string{"a": "of a", "b": "of b"} {
		if got := reasonsFor(id, list); len(got) != 1 || got[0].Text != want {
			t.Errorf("%s: %+v", id, got)
		}
	}
	if got := reasonsFor("c", list); got != nil {
		t.Errorf("of none: %+v", got)
	}
}

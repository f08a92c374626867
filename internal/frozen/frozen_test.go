package frozen

import (
	"reflect"
	"strings"
	"testing"

	"ebbwell/internal/figure"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// TestCopiesAreReadAgain: a copy comes back as it was written.
func TestCopiesAreReadAgain(t *testing.T) {
	in := Test{
		Test: record.Test{Meta: record.Meta{ID: "t"}}, Athlete: Athlete{ID: "a", UsualMass: record.Num(61.4, quantity.Kilogram), FirstMass: 60.2}, Hidden: true,
		Products: []Product{{Named: "own", Product: fuel.Product{Name: "Rice cake"}}}, Reasons: []record.RawText{{Field: "loss.urine", Text: "measured twice", Reason: true}},
	}
	out := Findings{Minutes: 90, Timed: true, Intake: fuel.Intake{Bottles: []fuel.Part{{Item: 1, Known: true, Grams: 500}}}, Limit: 2}
	out.Sweat.Fluid.Rate = figure.Figure{Known: true, Ranged: true, Value: 1.2}
	inputs, results, err := Write("test t", in, out)
	if err != nil {
		t.Fatal(err)
	}
	kept := []record.Frozen{{Record: "t", Inputs: inputs, Results: results}, {Record: "t", Inputs: []byte("{}")}}
	was, err := ReadTest(record.Test{Meta: record.Meta{ID: "t"}}, kept)
	if err != nil || !reflect.DeepEqual(was, in) {
		t.Errorf("%v: %+v", err, was)
	}
	if got, ok := ReadFindings(kept[0]); !ok || !reflect.DeepEqual(got, out) {
		t.Errorf("%v: %+v", ok, got)
	}
	if _, err := ReadTest(record.Test{Meta: record.Meta{ID: "another"}}, kept); err == nil {
		t.Error("the copy of another test is taken")
	}
	if p, err := ReadPlan([]record.Frozen{{Inputs: []byte(`{"Plan":{"ID":"p"},"Kind":"test","RangeAlone":true}`)}}); err != nil || p.Plan.ID != "p" || !p.RangeAlone {
		t.Errorf("%v: %+v", err, p)
	}
}

// TestWhatCannotBeRead: no copy, one that is cut off, and figures without a rate are said.
func TestWhatCannotBeRead(t *testing.T) {
	for name, kept := range map[string][]record.Frozen{"none": nil, "cut off": {{Inputs: []byte(`{"Test":{"ID":"t"`)}}} {
		if _, err := ReadTest(record.Test{Meta: record.Meta{ID: "t"}}, kept); err == nil {
			t.Errorf("%s: a test was read", name)
		}
		if _, err := ReadPlan(kept); err == nil {
			t.Errorf("%s: a plan was read", name)
		}
	}
	for _, results := range []string{"", "{", `{"Timed":true}`, `{"Timed":true,"Sweat":{"Fluid":{"Rate":{"Known":true,"Value":1.2}}}}`} {
		if _, ok := ReadFindings(record.Frozen{Results: []byte(results)}); ok {
			t.Errorf("%q was read as findings", results)
		}
	}
	if _, _, err := Write("test t", func() {}, nil); err == nil || !strings.Contains(err.Error(), "test t") {
		t.Errorf("what cannot be written: %v", err)
	}
}

// TestAthleteGoesBack: what a calculation used is put back, and nothing else.
func TestAthleteGoesBack(t *testing.T) {
	a := record.Athlete{Meta: record.Meta{ID: "a"}, Name: "Wren", Born: "1999-01-01", Sex: "f", Sport: "running", Height: record.Num(1.7, quantity.Metre),
		UsualMass: record.Num(61, quantity.Kilogram), UsualDrinking: record.Num(0.6, quantity.LitrePerHour)}
	later := record.Athlete{Meta: record.Meta{ID: "a"}, Name: "Wren Calloway", Sport: "cycling"}
	got := AthleteOf(a).Over(later)
	want := a
	want.Name = later.Name
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

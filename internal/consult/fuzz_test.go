package consult

import (
	"bytes"
	"math"
	"testing"

	"ebbwell/internal/frozen"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// longestCopy is more than a frozen copy ever holds; longer ones only slow the
// search.
const longestCopy = 200_000

// pieces lists a frozen copy whole, cut short at several places, and with each of
// some words of it replaced.
func pieces(f *testing.F, copies ...[]byte) (list [][]byte) {
	f.Helper()
	for _, whole := range copies {
		list = append(list, whole)
		for k := 1; k < 8; k += 3 {
			list = append(list, whole[:len(whole)*k/8])
		}
		for _, change := range [][2]string{{"0.", "-0."}, {"1", "1e308"}, {"true", "false"}, {`"Value"`, `"Known"`}, {"[", "[["}, {"{}", "null"}, {":", ":null,\"x\":"}} {
			list = append(list, bytes.ReplaceAll(whole, []byte(change[0]), []byte(change[1])))
		}
	}
	return append(list, nil, []byte("{}"), []byte("null"), []byte("[]"), []byte(`{"Basis":{"Body":{"MassKg":1e400}}}`))
}

// The copy kept of a plan is read whole, or refused; what is read gives a planner
// that hides what is hidden and predicts numbers.
func FuzzThaw(f *testing.F) {
	c, _ := newCase(f)
	inputs, _, err := c.FreezePlan()
	if err != nil {
		f.Fatal(err)
	}
	for i, one := range pieces(f, inputs) {
		f.Add(one, i%2 == 0)
	}
	f.Fuzz(func(t *testing.T, kept []byte, hidden bool) {
		if len(kept) > longestCopy {
			t.Skip("longer than a copy is")
		}
		copies := []record.Frozen{{Inputs: kept}}
		was, planner, err := thaw(copies, hidden)
		if (err == nil) != (planner != nil) {
			t.Fatalf("a planner %v beside %v", planner != nil, err)
		}
		c := c
		c.Care.MassHidden = hidden
		agreed, changed := c.AsAgreed(copies)
		if err != nil {
			if !agreed.Anew || changed || agreed.Planner != c.Planner {
				t.Fatal("what cannot be read is passed off as what was agreed")
			}
			return
		}
		if planner.Basis().Body.Hidden != hidden || agreed.Planner.Basis().Body.Hidden != hidden {
			t.Fatal("what is hidden is not what the profile hides")
		}
		for _, o := range was.Plan.Options {
			if len(o.Items) > 50 {
				continue
			}
			q := agreed.Planner.Evaluate(plan.Expected, agreed.Carried(o))
			if x := q.Deficit.Value; q.Deficit.Known && (math.IsNaN(x) || math.IsInf(x, 0)) {
				t.Fatalf("a deficit of %g", x)
			}
		}
	})
}

// The copies kept of a test are read whole and of this test, or refused; what is
// shown then says how it came about and shows numbers.
func FuzzThawTest(f *testing.F) {
	closed := closeCase(f, record.TestClosed)
	for i, one := range pieces(f, closed.kept[0].Inputs, closed.kept[0].Results) {
		if i%2 == 0 {
			f.Add(one, closed.kept[0].Results, i%4 == 0)
		} else {
			f.Add(closed.kept[0].Inputs, one, i%4 == 1)
		}
	}
	f.Fuzz(func(t *testing.T, inputs, results []byte, hidden bool) {
		if len(inputs)+len(results) > longestCopy {
			t.Skip("longer than copies are")
		}
		kept := []record.Frozen{{Record: closed.sheet.ID, Inputs: inputs, Results: results}}
		was, err := frozen.ReadTest(closed.sheet, kept)
		if err == nil && was.Test.ID != closed.sheet.ID {
			t.Fatalf("the copy is of %q", was.Test.ID)
		}
		athlete := closed.a
		athlete.MassHidden, athlete.MassHiddenSettled = hidden, true
		found := FindAsClosed(closed.sheet, athlete, closed.raw, kept, closed.d)
		switch {
		case found.Kept == "":
			t.Fatal("where the figures come from is not said")
		case err != nil && found.Kept != KeptNothing:
			t.Fatalf("what cannot be read is shown as %q", found.Kept)
		case found.Test.ID != closed.sheet.ID || found.Care.MassHidden != hidden:
			t.Fatalf("shown is %q, hidden %v", found.Test.ID, found.Care.MassHidden)
		}
		if rate := found.Sweat.Fluid.Rate; rate.Known && (math.IsNaN(rate.Value) || math.IsInf(rate.Value, 0)) {
			t.Fatalf("a rate of %g", rate.Value)
		}
	})
}

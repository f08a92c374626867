package breaks

import (
	"testing"

	"ebbwell/internal/plan"
)

// A score is refused, or its rests lie in order inside the session; or the table
// refuses it.
func FuzzReadScore(f *testing.F) {
	for _, text := range []string{"6-4 6-4", " 7–6, 3-6,6-2 ", "", "6", "6--4", "-6-4", "99999999999999999999-1", "0-0", "７-６", "6-4,,,7-5"} {
		f.Add(text, 95.0)
	}
	f.Fuzz(func(t *testing.T, text string, minutes float64) {
		sets, ok := readScore(text)
		if ok != (len(sets) > 0) {
			t.Fatalf("%q is %v, %v", text, sets, ok)
		}
		list, err := plan.TennisChances(sets, minutes)
		if err != nil {
			if list != nil {
				t.Fatal("rests beside an error")
			}
			return
		}
		last := 0.0
		for _, c := range list {
			if !(c.Minute >= last) || !(c.Minute <= minutes*(1+1e-9)) {
				t.Fatalf("%q: a rest at %g after %g of %g min", text, c.Minute, last, minutes)
			}
			last = c.Minute
		}
	})
}

package session

import (
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/amount"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
)

// Sizes of bottles are refused, or each is one a bottle can have, and they read
// as the same again as they are shown.
func FuzzReadBottles(f *testing.F) {
	for _, text := range []string{"500 750", "500, 750;330", "", "0", "-500", "1e3", "500,5", "5e", "NaN", "٥٠٠", "500\u00a0750", "1'000", "10000", "12000.5"} {
		f.Add(text)
	}
	sp := wording.Speaker{Speaker: amount.Speaker{Words: apptest.Words(f)}}
	f.Fuzz(func(t *testing.T, text string) {
		sizes, ok := readBottles(text, sp)
		if !ok {
			if sizes != nil {
				t.Fatal("sizes beside a refusal")
			}
			return
		}
		for _, ml := range sizes {
			if !consult.BottleSize(ml) {
				t.Fatalf("%q: a bottle of %g mL", text, ml)
			}
		}
		shown := bottles(sp, sizes)
		again, ok := readBottles(shown, sp)
		if !ok || len(again) != len(sizes) || bottles(sp, again) != shown {
			t.Fatalf("%q is %v, shown as %q, which is %v, %v", text, sizes, shown, again, ok)
		}
		if len(sizes) > len(strings.TrimSpace(text)) {
			t.Fatalf("%q is %d bottles", text, len(sizes))
		}
	})
}

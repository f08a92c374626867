package amount

import (
	"testing"

	"golang.org/x/text/language"

	"ebbwell/internal/care"
	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

// A difference is that of what is shown, whatever lies behind it.
func TestDifference(t *testing.T) {
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		x, y float64
		unit quantity.Unit
		us   bool
		want string
	}{
		{-2.751, -2.949, quantity.PerCent, false, "+0.1"}, // shown as -2.8 and -2.9
		{-2.94, -2.86, quantity.PerCent, false, ""},
		{1.094, 0.686, quantity.LitrePerHour, false, "+0.40"},
		{327.4, 142.6, quantity.MilligramPerHour, false, "+184"},
		{1634, 312.4, quantity.MilligramPerHour, false, "+1318"}, // 1630 and 312
		{29.4, 30.6, quantity.GramPerHour, false, "\u22122"},
		{1, 0.5, quantity.LitrePerHour, true, "+17"}, // 34 and 17 fl oz/h
	} {
		if got := (Writer{Words: w, US: c.us}).Difference(c.x, c.y, c.unit); got != c.want {
			t.Errorf("%g less %g %s is %q, want %q", c.x, c.y, c.unit, got, c.want)
		}
	}
}

// A limit that was set is written as it was set, everywhere alike: a figure that is
// worked out keeps its decimals.
func TestLimitHasNoIdleDecimals(t *testing.T) {
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	by := Writer{Words: w}
	for x, want := range map[float64]string{2: "2", 2.5: "2.5", 3.04: "3", 2.96: "3", 0: "0"} {
		if got := by.Limit(x, quantity.PerCent); got != want+"\u00a0%" || by.LimitNumber(x, quantity.PerCent) != want {
			t.Errorf("%g is %q", x, got)
		}
	}
	if got := by.SignedLimit(-2, quantity.PerCent); got != "\u22122\u00a0%" {
		t.Errorf("-2 is %q", got)
	}
	if got := (Writer{Words: w, US: true}).Limit(1, quantity.Litre); got != "34\u00a0fl oz" {
		t.Errorf("a litre is %q", got)
	}
	sp := Speaker{Words: w, By: by}
	said := care.GuardSaid{Key: "guard.past-limit", Figures: []care.GuardFigure{{Value: 2, Unit: quantity.PerCent, Set: true}}}
	if got := sp.Guard(said, true); got != "The deficit at the end passes the limit of 2\u00a0%." {
		t.Errorf("the guard says %q", got)
	}
}

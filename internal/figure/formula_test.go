package figure

import (
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"
)

func TestPrint(t *testing.T) {
	w := Why{Formula: "max(0, a1*b - c)/ 1.5", Inputs: []Input{{Symbol: "a1", Value: 2}, {Symbol: "b", Value: -3}}}
	if got, want := w.Print(strings.ToUpper), "MAX(0, A1 × B − C) / 1.5"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	value := func(in Input) string { return strconv.FormatFloat(in.Value, 'g', -1, 64) }
	if got, want := w.PrintValues(value), "max(0, 2 × (-3) − c) / 1.5"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := (Why{}).Print(strings.ToUpper); got != "" {
		t.Errorf("no formula is printed as %q", got)
	}
}

func TestDecimals(t *testing.T) {
	for _, c := range []struct {
		x            float64
		digits, most int
		want         int
	}{
		{0, 3, 4, 0}, {math.NaN(), 3, 4, 0}, {math.Inf(1), 3, 4, 0}, {123.456, 3, 4, 0}, {12.3456, 3, 4, 1}, {1.2, 3, 4, 1}, {1, 5, 9, 0},
		{0.012345, 3, 4, 4}, {-12.3456, 3, 4, 1}, {0.0000001, 3, 4, 0}, {2.5, 5, 9, 1},
	} {
		if got := Decimals(c.x, c.digits, c.most); got != c.want {
			t.Errorf("%g to %d digits has %d decimals, want %d", c.x, c.digits, got, c.want)
		}
	}
}

// Whatever a formula holds, taking it apart and putting it together loses no
// name.
func FuzzFormula(f *testing.F) {
	for _, s := range []string{"", "loss / (minutes / 60)", "100 * (massafter - before1) / before1", "max(0, a2 + 0.5)", "ä+\u00a0b", "1.5e"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, formula string) {
		var names []string
		out := Why{Formula: formula}.Print(func(symbol string) string {
			names = append(names, symbol)
			return symbol
		})
		for _, name := range names {
			if !strings.Contains(out, name) {
				t.Errorf("%q is lost from %q", name, out)
			}
		}
		if utf8.ValidString(formula) && !utf8.ValidString(out) {
			t.Errorf("%q became %q", formula, out)
		}
	})
}

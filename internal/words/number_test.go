package words

import (
	"testing"

	"golang.org/x/text/language"

	"ebbwell/internal/quantity"
)

// Thousands are grouped from 10,000 on, by the language; a field shows none, and every
// language reads again what it shows there, by the one rule of quantity.Parse.
func TestThousands(t *testing.T) {
	for tag, want := range map[language.Tag][3]string{
		language.English: {"12,345.6", "−1,234,567", "9876.5"},
		language.German:  {"12.345,6", "−1.234.567", "9876,5"},
		language.French:  {"12\u202f345,6", "−1\u202f234\u202f567", "9876,5"},
		language.Spanish: {"12.345,6", "−1.234.567", "9876,5"},
	} {
		w, err := New(tag)
		if err != nil {
			t.Fatal(err)
		}
		for i, x := range []struct {
			value    float64
			decimals int
		}{{12345.6, 1}, {-1234567, 0}, {9876.5, 1}} {
			if got := w.Number(x.value, x.decimals); got != want[i] {
				t.Errorf("%s: %q, want %q", tag, got, want[i])
			}
		}
		for _, x := range []float64{0, 0.5, 1.25, -2.3, 9999, 12345, 38758, 12345.6, -1234567.25, 100000} {
			for decimals := range 3 {
				shown := w.Typed(x, decimals)
				read, err := quantity.Parse(shown, quantity.Milligram)
				if err != nil || read.Value != quantity.Round(x, decimals) {
					t.Errorf("%s: %q is read as %v, %v", tag, shown, read.Value, err)
				}
			}
		}
	}
}

// Names are sorted by the language, accents and case last; keys give the same order.
func TestOrderKey(t *testing.T) {
	for _, tag := range Written() {
		w, err := New(tag)
		if err != nil {
			t.Fatal(err)
		}
		names := []string{"Zoë", "Ärger", "apple", "Ōkta", "Éclair", "eclair", "Stop 10", "Stop 9", "Ångström", "ñu", "nube", "nz", "Жук", ""}
		order, key := w.Order(), w.OrderKey()
		for _, a := range names {
			for _, b := range names {
				byKey := 0
				if ka, kb := key(a), key(b); ka < kb {
					byKey = -1
				} else if ka > kb {
					byKey = 1
				}
				if got := order(a, b); got != byKey {
					t.Errorf("%s: %q and %q are ordered %d, by key %d", tag, a, b, got, byKey)
				}
			}
		}
	}
}

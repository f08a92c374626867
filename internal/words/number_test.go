package words

import (
	"testing"

	"golang.org/x/text/language"

	"ebbwell/internal/quantity"
)

// Thousands are grouped from 10,000 on, with the language's sign (CLDR: en "," de "." fr
// U+202F; Spanish has a thin space, Real Academia Española, Ortografía 2010, and Real
// Decreto 2032/2009, where CLDR has a point); a field shows none, and every language reads
// again what it shows there, by the one rule of quantity.Parse.
func TestThousands(t *testing.T) {
	for tag, want := range map[language.Tag][3]string{
		language.English: {"12,345.6", "−1,234,567", "9876.5"},
		language.German:  {"12.345,6", "−1.234.567", "9876,5"},
		language.French:  {"12\u202f345,6", "−1\u202f234\u202f567", "9876,5"},
		language.Spanish: {"12\u202f345,6", "−1\u202f234\u202f567", "9876,5"},
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

// A count in a text reads as a number beside it does, and takes the plural of its size.
// Four digits are not grouped: CLDR's minimumGroupingDigits of Spanish is 2, and AMA Manual
// of Style, 11th ed., 17.4.3, closes them up.
func TestCountsInTextsReadAsNumbers(t *testing.T) {
	texts := map[string]entry{
		"counted": {forms: map[string]string{"one": "one %d", "other": "more %d"}, arg: 1},
		"second":  {forms: map[string]string{"one": "%[1]s one %[2]d", "other": "%[1]s more %[2]d"}, arg: 2},
		"bare":    {text: "n %d"},
	}
	for _, tag := range Written() {
		format, err := textsOf(tag)
		if err != nil {
			t.Fatal(err)
		}
		for key, e := range texts {
			format[key] = e
		}
		w, err := of(tag, format)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range []int{0, 1, 2, 999, 1000, 1100, 9999, 10000, 12345, 1234567} {
			form := "more"
			if n == 1 || n == 0 && tag == language.French {
				form = "one"
			}
			number := w.Number(float64(n), 0)
			for _, c := range [][2]string{
				{w.Say("counted", n), form + " " + number},
				{w.Say("second", "a", n), "a " + form + " " + number},
				{w.Say("bare", n), "n " + number},
			} {
				if c[0] != c[1] {
					t.Errorf("%s: %q, want %q", tag, c[0], c[1])
				}
			}
		}
		if got := w.Say("bare", 1100); got != "n 1100" {
			t.Errorf("%s: four digits read %q", tag, got)
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

package words

import (
	"testing"
	"time"

	"golang.org/x/text/language"

	"ebbwell/internal/quantity"
)

func english(t *testing.T) *Words {
	t.Helper()
	w, err := New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestNumbers(t *testing.T) {
	w := english(t)
	for _, c := range []struct{ got, want string }{
		{w.Number(-2.149, 1), "−2.1"},
		{w.Number(-0.04, 1), "0.0"},
		{w.Number(1153.3, 0), "1153"},
		{w.Number(1185, -1), "1190"},
		{w.Signed(0.15, 2), "+0.15"},
		{w.Signed(-0.15, 2), "−0.15"},
		{w.Signed(0.001, 2), "0.00"},
		{w.Amount(1.357, quantity.LitrePerHour), "1.36\u00a0L/h"},
		{w.Between(quantity.Range{Low: 1.29, High: 1.43}, 2), "1.29–1.43"},
		{w.Between(quantity.Range{Low: 1.291, High: 1.293}, 2), "1.29"},
		{w.Half(0.5), "½"},
		{w.Half(2.5), "2½"},
		{w.Half(3), "3"},
		{w.Half(0.3), "0.3"},
		{w.Day(time.Date(2026, 5, 14, 0, 0, 0, 0, time.UTC)), "14 May"},
		{w.Date(time.Date(2026, 5, 14, 0, 0, 0, 0, time.UTC)), "14 May 2026"},
		{w.List([]string{"a", "b", "c"}), "a, b and c"},
		{w.List(nil), ""},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestUnknownLanguage(t *testing.T) {
	if _, err := New(language.Make("tlh")); err == nil {
		t.Error("a language without a catalogue opened")
	}
}

func TestPluralForms(t *testing.T) {
	var e entry
	if err := e.UnmarshalJSON([]byte(`{"one":"%d bottle","other":"%d bottles"}`)); err != nil {
		t.Fatal(err)
	}
	if e.arg != 1 || e.forms["one"] != "%d bottle" {
		t.Errorf("read %+v", e)
	}
	for _, bad := range []string{`{"one":"x"}`, `{"other":3}`, `[1]`, `{"other":["x"]}`} {
		if err := new(entry).UnmarshalJSON([]byte(bad)); err == nil {
			t.Errorf("%s was accepted", bad)
		}
	}
}

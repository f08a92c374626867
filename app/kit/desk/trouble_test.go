package desk

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// Every kind of trouble of the records has words of its own: a whole sentence,
// with the path where it is said.
func TestEveryTroubleOfTheRecordsHasWords(t *testing.T) {
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]store.Code{}
	for _, code := range store.Codes() {
		text := Sentence(w, fmt.Errorf("save: %w", &store.Error{Code: code, Doing: "save", Path: "/data"}))
		if !w.Has("store."+string(code)) || !strings.HasSuffix(text, ".") || strings.Contains(text, "%!") || strings.Contains(text, "store.") {
			t.Errorf("%s reads %q", code, text)
		}
		if other, twice := said[text]; twice {
			t.Errorf("%s and %s read the same: %q", code, other, text)
		}
		said[text] = code
	}
	if text := Sentence(w, errors.New("odd")); !strings.Contains(text, "odd") || !strings.Contains(text, "untouched") {
		t.Errorf("an error without words reads %q", text)
	}
}

// What is odd about a number of the sheet can be said: each has its limits, and a word by
// which a problem names it.
func TestEveryNumberOfTheSheetHasLimitsAndAName(t *testing.T) {
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	fields := []evidence.Field{evidence.MassAfter, evidence.MorningMass, evidence.MassChange, evidence.MassSpread}
	for _, f := range record.SheetFields() {
		if f.Evidence != "" {
			fields = append(fields, f.Evidence)
		}
	}
	if len(fields) < 35 {
		t.Fatalf("only %d fields have limits", len(fields))
	}
	for _, f := range fields {
		if _, ok := evidence.LimitOf(f); !ok {
			t.Errorf("%q has no limits", f)
		}
		if key := "measure." + FieldKey(f); !w.Has(key) {
			t.Errorf("%q has no name: no text %q", f, key)
		}
	}
}

// All that is weighed in kilograms on the sheet tells of body mass, but for the scale's
// own resolution.
func TestKilogramsOfTheSheetTellOfMass(t *testing.T) {
	told := 0
	for _, f := range record.SheetFields() {
		if f.Evidence == "" {
			continue
		}
		mass := f.Unit == quantity.Kilogram && f.Path != "scale.step"
		if TellsMass(f.Evidence) != mass {
			t.Errorf("%s (%s): tells of mass: %v", f.Path, f.Evidence, !mass)
		}
		if mass {
			told++
		}
	}
	if told < 3 {
		t.Errorf("only %d fields tell of mass", told)
	}
	for _, f := range []evidence.Field{evidence.MassAfter, evidence.MorningMass, evidence.BodyMass, evidence.MassChange, evidence.MassSpread} {
		if !TellsMass(f) {
			t.Errorf("%s does not tell of mass", f)
		}
	}
}

// A value beyond where a formula was made is said with the formula's range.
func TestBeyondTheFitIsSaid(t *testing.T) {
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	got := ProblemSentence(w, evidence.Problem{Field: evidence.AirTemperature, Code: evidence.CodeOutOfFit, Severity: evidence.Refuses,
		Value: 12.5, Limit: quantity.Range{Low: 15, High: 46}, Unit: quantity.DegreeCelsius})
	want := "air temperature: 12.5\u00a0°C is outside 15\u00a0°C to 46\u00a0°C, the range of the formula."
	if got != want {
		t.Errorf("reads %q, want %q", got, want)
	}
}

// What is worked out is said with no more decimals than elsewhere, but with enough to lie
// where it is said to lie; what was typed stays as it was typed.
func TestValueOfAProblem(t *testing.T) {
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		x, low, high float64
		unit         quantity.Unit
		want         string
	}{
		{0.895, -3, 0, quantity.PerCent, "0.9"}, {3.04, -8, 3, quantity.PerCent, "3.04"}, {-8.0004, -8, 3, quantity.PerCent, "\u22128"},
		{2.5132, 0.3, 2.5, quantity.LitrePerHour, "2.51"}, {2.5004, 0.3, 2.5, quantity.LitrePerHour, "2.5"}, {72.455, 40, 60, quantity.Kilogram, "72.455"},
		{4, 0, 3, quantity.PerCent, "4"},
	} {
		if got := value(w, evidence.Problem{Value: c.x, Unit: c.unit, Limit: quantity.Range{Low: c.low, High: c.high}}); got != c.want {
			t.Errorf("%g %s is %q, want %q", c.x, c.unit, got, c.want)
		}
	}
}

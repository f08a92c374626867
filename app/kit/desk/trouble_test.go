package desk

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
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

// A value beyond where a formula was made is said with the formula's range.
func TestBeyondTheFitIsSaid(t *testing.T) {
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	got := ProblemSentence(w, evidence.Problem{Field: evidence.AirTemperature, Code: evidence.CodeOutOfFit, Severity: evidence.Refuses,
		Value: 12.5, Limit: quantity.Range{Low: 15, High: 46}, Unit: quantity.DegreeCelsius})
	want := "air temperature: 12.5\u00a0°C lies outside 15\u00a0°C to 46\u00a0°C, over which the formula was made."
	if got != want {
		t.Errorf("reads %q, want %q", got, want)
	}
}

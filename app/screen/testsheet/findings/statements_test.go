package findings

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// What is stated behind a figure exists, is about it, and is said only of those it is
// true of.
func TestStatementsBehindAFigure(t *testing.T) {
	known := map[string]bool{}
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range evidence.Statements() {
		known[s.ID] = true
		if text := w.Say("statement." + s.ID); strings.Contains(text, "%!") {
			t.Errorf("%s reads %q", s.ID, text)
		}
	}
	var woman, man, gained Input
	woman.Athlete.Sex, man.Athlete.Sex = record.Female, record.Male
	gained.Findings.Sweat.Fluid.Deficit = figure.Figure{Known: true, Value: -0.3}
	for _, in := range []Input{woman, man, gained} {
		for _, key := range order() {
			for _, id := range statedFor(key, in) {
				if !known[id] {
					t.Errorf("%s states %q, which there is not", key, id)
				}
			}
		}
	}
	has := func(key string, in Input, id string) bool { return slices.Contains(statedFor(key, in), id) }
	if !has("carbohydrate-rate", man, "fuel.studied") {
		t.Error("the trials up to 120 g/h are not said at the carbohydrate")
	}
	if !has("sweat-rate", woman, "women.cycle") || has("sweat-rate", man, "women.cycle") {
		t.Error("what is known of women is to be said of women")
	}
	if !has("deficit", gained, "hyponatraemia.update") || has("deficit", gained, "deficit.by-heat") {
		t.Error("a gain is about drinking too much, not about a deficit")
	}
}

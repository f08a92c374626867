package words

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/language"
)

// typedUnit finds a unit that half of the practices do not read: behind a number,
// behind what is put in, or as the last word of a head ("before kg").
func typedUnit() *regexp.Regexp {
	return regexp.MustCompile(`°[CF]\b|(?:[\d\x{a0}s] ?|[a-z,] )\b(?:kg|lb|oz|fl oz|mL|mL/h|L/h|mph|km/h|m/s|ft)(?:[^\w/]|$)|(?:\d|%s)[ \x{a0}](?:L|m)(?:[^\w/]|$)`)
}

// unitsOnPurpose are the texts that name a unit themselves, by key or by the
// beginning of a key that ends in a point, each with the reason.
func unitsOnPurpose() map[string]string {
	return map[string]string{
		"evidence.":               "what a source measured, in its own unit",
		"activity.":               "the name of a row of a published table, in its own unit",
		"food.":                   "a name that comes with the program, as the product is known",
		"portion.":                "a size as it is sold",
		"foodnote.":               "what a label or a source says, in its own unit",
		"statement.":              "what a source says, in its own unit",
		"practice.units.":         "the names of the units one chooses from",
		"field.number.":           "asks for a unit that is not the one of the field",
		"testsheet.pounds.take":   "offers kilograms for what was typed in pounds",
		"testsheet.bottle.poured": "bottles stand on a scale that reads grams",
		"handout.strength":        "grams in 100 mL, as labels everywhere have it",
		"planner.strength.hidden": "grams in 100 mL, as labels everywhere have it",
		"pantry.":                 "what a label says is typed as it says it",
		"per.100-mL":              "what a label says is typed as it says it",
		"handout.report.calc.":    "a calculation in the units it is made in",
		"handout.after.each.":     "one text for each unit of mass, since the sentence is built on it",
	}
}

// onPurpose is the entry of the list a key falls under; empty for none.
func onPurpose(key string) string {
	for listed := range unitsOnPurpose() {
		if key == listed || strings.HasSuffix(listed, ".") && strings.HasPrefix(key, listed) {
			return listed
		}
	}
	return ""
}

// TestNoTypedUnits: an amount goes into a text with its unit, in the units of the
// practice. A text that exists once for each system is one text too many, and four
// in each further language.
func TestNoTypedUnits(t *testing.T) {
	unit := typedUnit()
	for text, want := range map[string]bool{
		"%s °C hotter": true, "mean plus 9 °F is": true, "before kg": true, "%s kg; they": true, "drunk mL": true, "between %s and %s L were": true,
		"about %s L/h from": true, "16 oz": true, "above 3 m/s is": true, "7\u00a0mph": true,
		"%s mmol/L in": false, "between %s and %s": false, "litres only": false, "%s mg/L": false, "the L side": false, "at %s min": false,
	} {
		if unit.MatchString(text) != want {
			t.Errorf("%q is taken for a text with a unit: %v", text, !want)
		}
	}
	texts, err := read(language.English.String())
	if err != nil {
		t.Fatal(err)
	}
	met := map[string]bool{}
	for key, e := range texts {
		if strings.HasSuffix(key, ".us") && onPurpose(key) == "" {
			t.Errorf("%s is a second text for other units", key)
		}
		for _, text := range append([]string{e.text}, slices.Collect(maps.Values(e.forms))...) {
			if !unit.MatchString(text) {
				continue
			}
			if listed := onPurpose(key); listed != "" {
				met[listed] = true
				continue
			}
			t.Errorf("%s types a unit: %s", key, text)
		}
	}
	for listed := range unitsOnPurpose() {
		if !met[listed] {
			t.Errorf("%s is listed and types no unit", listed)
		}
	}
}

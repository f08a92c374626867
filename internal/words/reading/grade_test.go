package reading

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

// Words of a table with known syllables; see its head for the sources.
func TestSyllables(t *testing.T) {
	file, err := os.Open("testdata/syllables.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close() //nolint:errcheck // it was only read
	table := csv.NewReader(file)
	table.Comment = '#'
	rows, err := table.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	checked := map[string]int{}
	for _, row := range rows[1:] {
		want, err := strconv.Atoi(row[2])
		if err != nil {
			t.Fatal(err)
		}
		if checked[row[0]]++; counterOf(row[0])(row[1]) != want {
			t.Errorf("%s %s: %d syllables, want %d", row[0], row[1], counterOf(row[0])(row[1]), want)
		}
	}
	for lang, least := range map[string]int{"en": 500, "es": 30, "fr": 30, "de": 30} {
		if checked[lang] < least {
			t.Errorf("%s: only %d words", lang, checked[lang])
		}
	}
}

func TestMeasure(t *testing.T) {
	for text, want := range map[string]Measure{
		"Drink to thirst.":                     {1, 3, 3},
		"A heading":                            {},
		"Call %s. Nothing by mouth.":           {2, 5, 7},
		"*Stop drinking.* It's too much.":      {2, 5, 6},
		"About 380 mL more, ibuprofen-type.":   {1, 5, 11},
		"Only if lighter\nThe rest stays in.":  {1, 4, 4},
		"Stop at the line, or sooner. Really?": {2, 7, 9},
	} {
		if got := Of("en", text); got != want {
			t.Errorf("%q: %+v, want %+v", text, got, want)
		}
	}
}

// By hand: 10 words a sentence and 1.5 syllables a word give
// 0.39*10 + 11.8*1.5 - 15.59 = 6.01, 206.835 - 10 - 93.45 = 103.385,
// 207 - 10.15 - 110.4 = 86.45 and 180 - 10 - 87.75 = 82.25.
func TestFormulas(t *testing.T) {
	for lang, want := range map[string]float64{"en": 6.01, "es": 103.385, "fr": 86.45, "de": 82.25} {
		f, ok := FormulaOf(lang)
		if got := f.Value(Measure{Sentences: 2, Words: 20, Syllables: 30}); !ok || math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %g, want %g", lang, got, want)
		}
		if f.Value(Measure{}) != 0 {
			t.Errorf("%s: a text without a sentence has a value", lang)
		}
	}
	if _, ok := FormulaOf("tlh"); ok {
		t.Error("a formula for a language that has none")
	}
}

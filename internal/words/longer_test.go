package words

import (
	"maps"
	"regexp"
	"slices"
	"testing"
	"unicode"
)

// The longer language has every text of English with the same arguments, and 40 % more
// letters in all.
func TestLonger(t *testing.T) {
	if got, want := longer("Save %[2]s, %d%% of 5 mL"), "Sávésá %[2]s, %d%% of 5 mL"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	w, err := Longer()
	if err != nil {
		t.Fatal(err)
	}
	english, err := read("en")
	if err != nil {
		t.Fatal(err)
	}
	put := regexp.MustCompile(`%(\[[0-9]+\])?[sd%]`)
	before, after := 0, 0
	for key, e := range english {
		if !w.Has(key) {
			t.Errorf("%s is missing", key)
		}
		for _, text := range append(slices.Collect(maps.Values(e.forms)), e.text) {
			if got := longer(text); !slices.Equal(put.FindAllString(text, -1), put.FindAllString(got, -1)) {
				t.Errorf("%s: %q became %q", key, text, got)
			}
			before, after = before+lettersOf(text), after+lettersOf(longer(text))
		}
	}
	if share := float64(after) / float64(before); share < 1.38 || share > 1.42 {
		t.Errorf("%.3f times as many letters", share)
	}
	if got := w.Say("practice.text.100"); got != "100\u00a0%" && got != "100 %" {
		t.Errorf("a number became %q", got)
	}
}

// lettersOf counts the letters of a text that are not of what is put in.
func lettersOf(text string) int {
	n := 0
	for _, r := range regexp.MustCompile(`%(\[[0-9]+\])?[sd%]`).ReplaceAllString(text, "") {
		if unicode.IsLetter(r) {
			n++
		}
	}
	return n
}

package words

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/internal/words/spacing"
)

// unspaced are the beginnings of keys whose texts are held to other rules, each with
// the reason.
func unspaced() map[string]string {
	return map[string]string{
		"food.":    "a name is typed and looked for with plain blanks; paper sets its own before %",
		"portion.": "a name is typed and looked for with plain blanks",
		"demo.":    "what the invented practice has typed",
	}
}

// TestSpacesDoNotBreak: no line ends between a number and its unit, and none where French
// has a space before or within its marks.
func TestSpacesDoNotBreak(t *testing.T) {
	for _, tag := range Languages() {
		texts, err := read(tag.String())
		if err != nil {
			t.Fatal(err)
		}
		checked := 0
		for _, key := range slices.Sorted(maps.Keys(texts)) {
			if slices.ContainsFunc(slices.Collect(maps.Keys(unspaced())), func(b string) bool { return strings.HasPrefix(key, b) }) {
				continue
			}
			for _, text := range texts[key].all() {
				checked++
				for _, fault := range spacing.Faults(tag, strings.ReplaceAll(text, "%%", "%")) {
					t.Errorf("%s, %s: %s in %q", tag, key, fault, text)
				}
			}
		}
		if checked < 3000 {
			t.Errorf("%s: only %d texts", tag, checked)
		}
	}
}

// TestNumbersKeepTheirUnits: what is put into texts keeps together by itself.
func TestNumbersKeepTheirUnits(t *testing.T) {
	plain := regexp.MustCompile(`\d \D`)
	for _, tag := range Languages() {
		w := in(t, tag)
		for _, text := range []string{w.Amount(1.5, "L/h"), w.NumberIn(1234.5, 1, "mL"), w.SignedIn(-2.5, 1, "%"), w.Portions(0.5, "x"), w.AmountOf(w.Amount(250, "mL"), "x")} {
			if found := plain.FindString(strings.TrimSuffix(strings.TrimSuffix(text, w.Of("x")), " ")); found != "" {
				t.Errorf("%s: %q may be parted at %q", tag, text, found)
			}
		}
	}
}

func TestSpaceFaultsAreFound(t *testing.T) {
	for _, c := range []struct {
		tag, text string
		faults    int
	}{
		{"en", "drink 300 mL now", 1}, {"en", "drink 300\u00a0mL now", 0}, {"en", "about %s g", 1}, {"en", "at 2 % of it", 1}, {"en", "in 5 minutes", 0},
		{"fr", "Total : 3", 1}, {"fr", "Total:", 1}, {"fr", "Total\u00a0: 3", 0}, {"fr", "à 12:41", 0}, {"fr", "« mot »", 2}, {"fr", "«\u00a0mot\u00a0»", 0}, {"fr", "Vraiment?", 1},
		{"fr", "oui\u202f; non\u202f!", 0}, {"de", "Gesamt : 3", 1}, {"de", "Gesamt: 3", 0}, {"es", "¿Qué?", 0}, {"es", "« palabra »", 2}, {"es", "«palabra»", 0}, {"en", "a : b", 1},
	} {
		if got := spacing.Faults(language.Make(c.tag), c.text); len(got) != c.faults {
			t.Errorf("%s %q: %q, want %d", c.tag, c.text, got, c.faults)
		}
	}
}

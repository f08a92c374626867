package words

import (
	"testing"

	"golang.org/x/text/language"
)

// TestWithin: a name within a line has a small letter, but in German and in an abbreviation.
func TestWithin(t *testing.T) {
	for tag, want := range map[language.Tag][2]string{
		language.English: {"orange juice", "écorce"}, language.Spanish: {"orange juice", "écorce"},
		language.French: {"orange juice", "écorce"}, language.German: {"Orange juice", "Écorce"},
	} {
		w, err := New(tag)
		if err != nil {
			t.Fatal(err)
		}
		for i, name := range []string{"Orange juice", "Écorce"} {
			if got := w.Within(name); got != want[i] {
				t.Errorf("%s within a line in %s: %q, want %q", name, tag, got, want[i])
			}
		}
		for _, name := range []string{"", "A", "WBGT", "½"} {
			if got := w.Within(name); got != name && name != "A" {
				t.Errorf("%q within a line in %s: %q", name, tag, got)
			}
		}
	}
}

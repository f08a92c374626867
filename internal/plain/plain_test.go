package plain

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestText(t *testing.T) {
	for text, want := range map[string]string{
		"":                    "",
		"  ":                  "",
		"Jörg Müller":         "jorg muller",
		"MU\u0308LLER":        "muller",
		"Straße":              "strasse",
		"Ольга":               "ольга",
		"Nordic ÉLITE":        "nordic elite",
		"Côte d’Ivoire":       "cote divoire",
		"O'Neill":             "oneill",
		"Jean-Pierre  Dupont": "jean pierre dupont",
		"Łódź, Poland":        "lodz poland",
		"Søren Ægir":          "soren aegir",
		"St. John's (N.L.)":   "st johns n l",
		"2.5 g/L":             "2.5 g l",
		"2,5 – 3":             "2.5 3",
		"60–90 g":             "60-90 g",
		"½ banana":            "1/2 banana",
		"100 %":               "100",
		"ﬁg":                  "fig",
	} {
		if got := Text(text); got != want {
			t.Errorf("%q gives %q, want %q", text, got, want)
		}
	}
}

func TestHolds(t *testing.T) {
	for _, c := range []struct {
		text, typed string
		want        bool
	}{
		{"Jörg Müller", "muller", true},
		{"Jörg Müller", "MÜLLER jo", true},
		{"Jörg Müller", "", true},
		{"Jörg Müller", " - ", true},
		{"Jörg Müller", "muller road", false},
		{"Anna Straße", "STRASSE", true},
		{"Muller", "müller", true},
		{"Pierre-Yves d'Arc", "darc pierre yves", true},
		{"Ольга", "ольга", true},
	} {
		if got := Holds(Text(c.text), Words(c.typed)); got != c.want {
			t.Errorf("%q typed for %q: got %v", c.typed, c.text, got)
		}
	}
}

// TestFoldedStays: what is folded folds to itself, and any part of a text finds it.
func TestFoldedStays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[A-Za-zÀ-ÿĀ-ſ0-9 .,'’/%½–−-]{0,30}`).Draw(t, "text")
		once := Text(text)
		if twice := Text(once); twice != once {
			t.Fatalf("%q folds to %q, and that to %q", text, once, twice)
		}
		for _, word := range strings.Fields(text) {
			if !Holds(once, Words(word)) {
				t.Fatalf("%q in %q does not find it", word, text)
			}
		}
	})
}

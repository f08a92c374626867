package words

import (
	"testing"

	"golang.org/x/text/language"
)

// TestOptionsAreNamedInTheLanguage: a plan begun in one language names its options in
// that of the reader; what was typed stays.
func TestOptionsAreNamedInTheLanguage(t *testing.T) {
	de, fr := in(t, language.German), in(t, language.French)
	for _, c := range []struct{ got, want string }{
		{de.Option("Habit"), "Gewohnheit"}, {de.Option("Hábito"), "Gewohnheit"}, {de.Option("Gewohnheit"), "Gewohnheit"},
		{fr.Option("With food"), "Avec aliments"}, {fr.Option("Sin comida"), "Sans aliments"}, {fr.Option("Ziel"), "Objectif"},
		{de.Option("Step 2"), "Stufe 2"}, {fr.Option("Paso 12"), "Palier 12"}, {de.Option("New option 3"), "Neue Option 3"},
		{de.Option("Suggested, copy"), "Vorgeschlagen, Kopie"}, {de.Option("Cup final, copy"), "Cup final, Kopie"},
		{de.Option("New option, copy 2"), "Neue Option, Kopie 2"},
		{de.Option("Step up"), "Step up"}, {de.Option("Cup final"), "Cup final"}, {de.Option("Cup final 2"), "Cup final 2"}, {de.Option(""), ""},
		{de.Option("Habitual"), "Habitual"}, {de.Option("2"), "2"}, {de.Option(", copy"), ", copy"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

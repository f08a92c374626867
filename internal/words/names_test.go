package words

import (
	"testing"

	"golang.org/x/text/language"
)

// A product that comes with the program is named by the language, small within a line
// where the language writes it so; one of the practice stays as it was typed.
func TestFoodWithin(t *testing.T) {
	for _, c := range []struct {
		tag                 language.Tag
		id, name, own, line string
	}{
		{language.English, "generic.fig-bar", "x", "Fig bar", "fig bar"},
		{language.German, "generic.fig-bar", "Fig bar", "Feigenriegel", "Feigenriegel"},
		{language.English, "own.1", "Blue Bottle", "Blue Bottle", "Blue Bottle"},
		{language.German, "own.1", "Blue Bottle", "Blue Bottle", "Blue Bottle"},
		{language.German, "generic.none-such", "Seed cake", "Seed cake", "Seed cake"},
	} {
		w, err := New(c.tag)
		if err != nil {
			t.Fatal(err)
		}
		if got := w.Food(c.id, c.name); got != c.own {
			t.Errorf("%s in %s: %q, want %q", c.id, c.tag, got, c.own)
		}
		if got := w.FoodWithin(c.id, c.name); got != c.line {
			t.Errorf("%s in %s within a line: %q, want %q", c.id, c.tag, got, c.line)
		}
	}
}

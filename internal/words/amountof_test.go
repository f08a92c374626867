package words

import (
	"regexp"
	"strings"
	"testing"

	"golang.org/x/text/language"
)

// An amount and what it is of are joined as each language does.
func TestAmountOf(t *testing.T) {
	for _, c := range []struct{ tag, name, want string }{
		{"en", "water", "300\u00a0mL water"},
		{"de", "Wasser", "300\u00a0mL Wasser"},
		{"es", "agua", "300\u00a0mL de agua"},
		{"es", "Mi mezcla", "300\u00a0mL de Mi mezcla"},
		{"fr", "eau", "300\u00a0mL d’eau"},
		{"fr", "*eau*", "300\u00a0mL d’*eau*"},
		{"fr", "Élixir", "300\u00a0mL d’Élixir"},
		{"fr", "huile", "300\u00a0mL d’huile"},
		{"fr", "œuf", "300\u00a0mL d’œuf"},
		{"fr", "haricots", "300\u00a0mL de haricots"},
		{"fr", "houmous", "300\u00a0mL de houmous"},
		{"fr", "yaourt", "300\u00a0mL de yaourt"},
		{"fr", "thé noir", "300\u00a0mL de thé noir"},
		{"fr", "6 % mélange", "300\u00a0mL de 6 % mélange"},
		{"fr", "", "300\u00a0mL de "},
	} {
		if got := in(t, language.Make(c.tag)).AmountOf("300\u00a0mL", c.name); got != c.want {
			t.Errorf("%s: %q is %q, want %q", c.tag, c.name, got, c.want)
		}
	}
}

// Every drink and food that comes with the program reads behind an amount as the
// language does: French never has "de" before a vowel, Spanish and French never leave
// it out.
func TestEveryFoodReadsBehindAnAmount(t *testing.T) {
	const vowels = "aeiouœæàâäéèêëîïôöùûüh"
	for _, tag := range []string{"es", "fr"} {
		w := in(t, language.Make(tag))
		n := 0
		for _, key := range w.Keys() {
			if !strings.HasPrefix(key, "food.") || !strings.HasSuffix(key, ".within") {
				continue
			}
			n++
			name := w.Say(key)
			text := w.AmountOf("250\u00a0mL", name)
			joined := regexp.MustCompile(`^250\x{00a0}mL (de |d’)`).MatchString(text)
			elided := strings.HasPrefix(text, "250\u00a0mL d’")
			vowel := tag == "fr" && strings.ContainsRune(vowels, []rune(strings.ToLower(name))[0])
			if !joined || elided != vowel {
				t.Errorf("%s: %q", tag, text)
			}
		}
		if n < 40 {
			t.Errorf("%s: %d foods", tag, n)
		}
	}
}

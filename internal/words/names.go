package words

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/collate"
	"golang.org/x/text/unicode/norm"
)

// generic begins the ids of the drinks and foods that come with the program.
const generic = "generic."

// Food is the name of a drink or food that comes with the program, by its id;
// otherwise is the answer for any other.
func (w *Words) Food(id, otherwise string) string {
	if own, ok := strings.CutPrefix(id, generic); ok {
		return w.kept("food."+own, otherwise)
	}
	return otherwise
}

// FoodWithin is [Words.Food] as it reads within a line: the products that come with
// the program are common nouns, what a practice named stays as it typed it.
func (w *Words) FoodWithin(id, otherwise string) string {
	if own, ok := strings.CutPrefix(id, generic); ok {
		return w.kept("food."+own+".within", otherwise)
	}
	return otherwise
}

// FoodNote is the note on a drink or food that comes with the program, by its id;
// otherwise is the answer for any other.
func (w *Words) FoodNote(id, otherwise string) string {
	if own, ok := strings.CutPrefix(id, generic); ok {
		return w.kept("foodnote."+own, otherwise)
	}
	return otherwise
}

// Portions writes an amount of a food with its name, as that stands within a line:
// "½ fig bar".
func (w *Words) Portions(x float64, name string) string {
	if x > 1 {
		return w.Say("format.portions", w.Half(x), name)
	}
	return w.Say("format.portion", w.Half(x), name)
}

// Of is the name of a drink or food as it stands behind an amount of it: "water",
// "de agua", "d’eau".
func (w *Words) Of(name string) string {
	if elides(name) {
		return w.Say("format.of.vowel", name)
	}
	return w.Say("format.of", name)
}

// AmountOf writes an amount and what it is an amount of: "300 mL water", "300 mL de
// agua", "300 mL d’eau".
func (w *Words) AmountOf(amount, name string) string {
	return w.Say("format.amount", amount, w.Of(name))
}

// elides reports whether French shortens "de" before a name: before a vowel and before
// an h that is not sounded. Languages without the rule have one text for both.
func elides(name string) bool {
	s := strings.ToLower(strings.TrimLeft(name, "*«“\"' \u00a0\u202f"))
	first, _ := utf8.DecodeRuneInString(norm.NFD.String(s))
	switch first {
	case 'a', 'e', 'i', 'o', 'u', 'œ', 'æ':
		return !beginsWithOneOf(s, "onz", "oui", "ouat", "uht")
	case 'h':
		return !beginsWithOneOf(norm.NFC.String(s), "hadd", "halv", "hambu", "hareng", "haricot", "hariss", "homard", "hot", "houbl", "houmous", "hoummous")
	}
	return false
}

// beginsWithOneOf reports whether a text begins with one of some beginnings.
func beginsWithOneOf(text string, beginnings ...string) bool {
	return slices.ContainsFunc(beginnings, func(b string) bool { return strings.HasPrefix(text, b) })
}

// Portion is the name of the usual portion of such a food, by the id of the food.
func (w *Words) Portion(id, otherwise string) string {
	if own, ok := strings.CutPrefix(id, generic); ok {
		return w.kept("portion."+own, otherwise)
	}
	return otherwise
}

// Activity is the name of an activity of the table, by its id.
func (w *Words) Activity(id, otherwise string) string { return w.kept("activity."+id, otherwise) }

// City is the name of a city of the climate table, by its English name there.
func (w *Words) City(name string) string { return w.kept("city."+Slug(name), name) }

// Country is the name of a country of the climate table, by its English name there.
func (w *Words) Country(name string) string { return w.kept("country."+Slug(name), name) }

// kept is a text that there may not be.
func (w *Words) kept(key, otherwise string) string {
	if w.Has(key) {
		return w.Say(key)
	}
	return otherwise
}

// Slug is a name as it stands in a key: "Côte d'Ivoire" is "cote-d-ivoire".
func Slug(name string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(norm.NFD.String(name)) {
		switch {
		case unicode.Is(unicode.Mn, r):
		case r < unicode.MaxASCII && (unicode.IsLetter(r) || unicode.IsDigit(r)):
			b.WriteRune(r)
		case !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	return strings.Trim(b.String(), "-")
}

// Sort puts names into the order of the language: accents and case count last.
func (w *Words) Sort(names []string) { slices.SortFunc(names, w.Order()) }

// OrderKey writes keys that stand in the order of [Words.Order] by their bytes, for long
// lists that are sorted often. The function keeps buffers: one for each goroutine.
func (w *Words) OrderKey() func(name string) string {
	by, room := collate.New(w.tag, collate.IgnoreCase, collate.Numeric), collate.Buffer{}
	return func(name string) string {
		room.Reset()
		return string(by.KeyFromString(&room, name))
	}
}

// Order compares two names in the order of the language. The function keeps
// buffers: one for each goroutine.
func (w *Words) Order() func(a, b string) int {
	return collate.New(w.tag, collate.IgnoreCase, collate.Numeric).CompareString
}

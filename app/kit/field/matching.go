package field

import (
	"strings"

	"ebbwell/internal/plain"
)

// Matching lists the options whose text holds every word of a text, in three
// groups that each keep their order: those that begin with the text, those in
// which a word begins with its first word, and the others.
func Matching(list []Option, text string) []Option {
	words := plain.Words(text)
	var groups [3][]Option
	for _, o := range list {
		if name := strings.Join(strings.Fields(plain.Text(o.Text)), " "); plain.Holds(name, words) {
			g := closeness(name, words)
			groups[g] = append(groups[g], o)
		}
	}
	return append(append(groups[0], groups[1]...), groups[2]...)
}

// closeness is 0 for a name that begins with the words, 1 for one in which a
// word begins with the first of them, else 2.
func closeness(name string, words []string) int {
	if len(words) == 0 || strings.HasPrefix(name, strings.Join(words, " ")) {
		return 0
	}
	for _, part := range strings.Fields(name) {
		if strings.HasPrefix(part, words[0]) {
			return 1
		}
	}
	return 2
}

// severalNear reports whether more than one option has a word that begins with the
// text's first word.
func severalNear(list []Option, text string) bool {
	words, near := plain.Words(text), 0
	for _, o := range list {
		if closeness(strings.Join(strings.Fields(plain.Text(o.Text)), " "), words) < 2 {
			near++
		}
	}
	return near > 1
}

package climate

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// fold makes texts comparable as people type them: small letters, without
// accents, letters and digits only, one space between words.
func fold(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.Is(unicode.Mn, r), r == '\'', r == '’':
			return -1
		case unicode.IsLetter(r), unicode.IsDigit(r):
			return unicode.ToLower(r)
		}
		return ' '
	}, norm.NFD.String(s))
	return strings.Join(strings.Fields(s), " ")
}

// holdsAll reports whether a folded text holds every word.
func holdsAll(text string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(text, w) {
			return false
		}
	}
	return true
}

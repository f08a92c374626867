// Package plain makes texts comparable as people type them: without accents, in
// small letters, with a space for a hyphen.
package plain

import (
	"strings"
	"unicode"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"
)

// Text folds case, takes accents and apostrophes off, and leaves one space between
// words: "Müller-Lüdenscheidt" is "muller ludenscheidt", "Côte d’Ivoire" is "cote
// divoire". Punctuation parts words, except between two digits ("2.5", "1/2"), where
// a decimal comma is a point.
func Text(text string) string {
	runes := []rune(norm.NFKD.String(text))
	var b strings.Builder
	b.Grow(len(text))
	space := false
	for i, r := range runes {
		switch {
		case unicode.Is(unicode.Mn, r), r == '\'', r == '’', r == '`':
			continue
		case betweenDigits(runes, i):
			r = sign(r)
		case unicode.IsSpace(r), unicode.IsPunct(r), r == '−':
			space = b.Len() > 0
			continue
		}
		if space {
			b.WriteByte(' ')
			space = false
		}
		if bare, ok := withoutStroke(r); ok {
			b.WriteString(bare)
			continue
		}
		b.WriteRune(r)
	}
	return cases.Fold().String(b.String())
}

// betweenDigits reports whether a sign stands between two digits.
func betweenDigits(runes []rune, i int) bool {
	return !unicode.IsSpace(runes[i]) && i > 0 && i+1 < len(runes) && unicode.IsDigit(runes[i-1]) && unicode.IsDigit(runes[i+1])
}

// sign gives what is typed for a sign between two digits.
func sign(r rune) rune {
	switch r {
	case ',':
		return '.'
	case '–', '−', '‑':
		return '-'
	case '⁄': // of "½"
		return '/'
	}
	return r
}

// withoutStroke gives what is typed for a letter that Unicode does not take apart.
func withoutStroke(r rune) (bare string, ok bool) {
	switch unicode.ToLower(r) {
	case 'ø':
		return "o", true
	case 'ł':
		return "l", true
	case 'đ', 'ð':
		return "d", true
	case 'ħ':
		return "h", true
	case 'ı':
		return "i", true
	case 'æ':
		return "ae", true
	case 'œ':
		return "oe", true
	case 'þ':
		return "th", true
	}
	return "", false
}

// Words are the folded words of what was typed.
func Words(typed string) []string { return strings.Fields(Text(typed)) }

// Holds reports whether a folded text has every one of the folded words somewhere in
// it; nothing typed is in every text.
func Holds(text string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(text, w) {
			return false
		}
	}
	return true
}

// Package plain makes texts comparable as people type them: without accents, in
// small letters, with a space for a hyphen.
package plain

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"
)

// Text folds case, takes accents and apostrophes off, and leaves one space between
// words: "Müller-Lüdenscheidt" is "muller ludenscheidt", "Côte d’Ivoire" is "cote
// divoire". Punctuation parts words, except between two digits ("2.5", "1/2"), where
// a decimal comma is a point.
func Text(text string) string {
	for i := range len(text) {
		if text[i] >= utf8.RuneSelf {
			return folded(text)
		}
	}
	return foldedASCII(text)
}

// foldedASCII is [Text] of a text of ASCII, which most are: letters have no accents to
// take off, and long lists are searched.
func foldedASCII(text string) string {
	digit := func(i int) bool { return i >= 0 && i < len(text) && text[i] >= '0' && text[i] <= '9' }
	b := make([]byte, 0, len(text)+1)
	space := false
	for i := range len(text) {
		c := text[i]
		switch {
		case c == '\'', c == '`':
			continue
		case c != ' ' && !(c >= '\t' && c <= '\r') && digit(i-1) && digit(i+1):
			if c == ',' {
				c = '.'
			}
		case parts(c):
			space = len(b) > 0
			continue
		}
		if c >= 'A' && c <= 'Z' {
			c += 'a' - 'A'
		}
		if space {
			b = append(b, ' ')
			space = false
		}
		b = append(b, c)
	}
	return string(b)
}

// parts reports whether a sign of ASCII parts words: spaces and punctuation, of which
// $ + < = > ^ | ~ are none.
func parts(c byte) bool {
	return c == ' ' || c >= '\t' && c <= '\r' || c >= '!' && c <= '/' && c != '$' && c != '+' || c == ':' || c == ';' || c == '?' || c == '@' ||
		c >= '[' && c <= ']' || c == '_' || c == '{' || c == '}'
}

// folded is [Text] of any text.
func folded(text string) string {
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

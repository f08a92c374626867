// Package reading says how long the sentences of a text are and how hard it is to read.
package reading

import (
	"strings"
	"unicode"
)

// Sentences parts a text at ". ", "? ", "! ", where a line ends, and behind a tab, which
// parts a term from what it means; ": " is not an end.
func Sentences(text string) []string {
	var list []string
	begin := 0
	for i, r := range text {
		ends := strings.ContainsRune(".?!", r) && (i+1 == len(text) || text[i+1] == ' ' || text[i+1] == '\n')
		if ends || r == '\n' || r == '\t' {
			if s := strings.TrimSpace(text[begin : i+1]); s != "" {
				list = append(list, s)
			}
			begin = i + 1
		}
	}
	if rest := strings.TrimSpace(text[begin:]); rest != "" {
		list = append(list, rest)
	}
	return list
}

// Words lists the words of a sentence: what holds a letter, a digit or an argument.
func Words(sentence string) []string {
	var list []string
	for _, word := range strings.Fields(sentence) {
		if strings.ContainsFunc(word, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }) {
			list = append(list, word)
		}
	}
	return list
}

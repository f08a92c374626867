package words

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/language"
)

// Sentence is a sentence of the English texts and how many words it has; what is
// put in counts as one.
type Sentence struct {
	Key, Text string
	Words     int
}

// Longest lists the n longest sentences of the English texts, longest first.
func Longest(n int) ([]Sentence, error) {
	texts, err := read(language.English.String())
	if err != nil {
		return nil, err
	}
	var list []Sentence
	for key, e := range texts {
		for _, text := range e.all() {
			for _, s := range sentences(text) {
				list = append(list, Sentence{Key: key, Text: s, Words: wordsIn(s)})
			}
		}
	}
	slices.SortFunc(list, func(a, b Sentence) int {
		return cmp.Or(cmp.Compare(b.Words, a.Words), cmp.Compare(a.Key, b.Key), cmp.Compare(a.Text, b.Text))
	})
	return list[:min(n, len(list))], nil
}

// sentences parts a text at ". ", "? ", "! ", ": " is not an end.
func sentences(text string) []string {
	var list []string
	begin := 0
	for i, r := range text {
		ends := strings.ContainsRune(".?!", r) && (i+1 == len(text) || text[i+1] == ' ' || text[i+1] == '\n')
		if ends || r == '\n' {
			list = append(list, strings.TrimSpace(text[begin:i+1]))
			begin = i + 1
		}
	}
	if rest := strings.TrimSpace(text[begin:]); rest != "" {
		list = append(list, rest)
	}
	return list
}

// wordsIn counts the words of a sentence: what holds a letter, a digit or an argument.
func wordsIn(sentence string) int {
	n := 0
	for _, word := range strings.Fields(sentence) {
		if strings.ContainsFunc(word, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }) {
			n++
		}
	}
	return n
}

package words

import (
	"cmp"
	"slices"
	"strings"

	"golang.org/x/text/language"

	"ebbwell/internal/words/reading"
)

// Sentence is a sentence of the texts and how many words it has; what is put in
// counts as one.
type Sentence struct {
	Key, Text string
	Words     int
}

// Longest lists the n longest sentences of a language's texts, longest first. The error
// is that its files cannot be read.
func Longest(tag language.Tag, n int) ([]Sentence, error) {
	texts, err := read(tag.String())
	if err != nil {
		return nil, err
	}
	var list []Sentence
	for key, e := range texts {
		for _, text := range e.all() {
			for _, s := range reading.Sentences(strings.ReplaceAll(text, "*", "")) { // stars set bold, and hide an end
				list = append(list, Sentence{Key: key, Text: s, Words: len(reading.Words(s))})
			}
		}
	}
	slices.SortFunc(list, func(a, b Sentence) int {
		return cmp.Or(cmp.Compare(b.Words, a.Words), cmp.Compare(a.Key, b.Key), cmp.Compare(a.Text, b.Text))
	})
	return list[:min(n, len(list))], nil
}

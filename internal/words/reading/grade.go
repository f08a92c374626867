package reading

import (
	"strings"
	"unicode"
)

// Measure is the size of a text.
type Measure struct{ Sentences, Words, Syllables int }

// putIn is how many syllables what is put into a text counts, and a number.
const putIn = 2

// Of measures texts in a language ("en", "es", "fr", "de"). Only whole sentences count,
// those that end with a full stop, a question mark or an exclamation mark: a heading or a
// name of a column is no sentence. What is put in, and a number, is a word of two
// syllables.
func Of(lang string, texts ...string) Measure {
	var m Measure
	count := counterOf(lang)
	for _, text := range texts {
		for _, s := range Sentences(strings.ReplaceAll(text, "*", "")) {
			if !strings.ContainsAny(s[len(s)-1:], ".?!") {
				continue
			}
			m.Sentences++
			for _, word := range Words(s) {
				m.Words++
				m.Syllables += syllables(word, count)
			}
		}
	}
	return m
}

// counterOf counts the syllables of one word without marks, in small letters.
func counterOf(lang string) func(string) int {
	switch lang {
	case "es":
		return spanish
	case "fr":
		return french
	case "de":
		return german
	}
	return english
}

// syllables counts those of a word as it stands in a text: its parts at hyphens and
// apostrophes each by themselves.
func syllables(word string, count func(string) int) int {
	parts := strings.FieldsFunc(strings.ToLower(word), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '%' })
	n := 0
	for _, p := range parts {
		switch letters := strings.TrimFunc(p, func(r rune) bool { return !unicode.IsLetter(r) }); {
		case strings.ContainsRune(p, '%'), letters == "":
			n += putIn
		case len([]rune(letters)) > 1 || len(parts) == 1: // a letter beside an apostrophe is no syllable
			n += count(letters)
		}
	}
	return max(n, 1)
}

// Formula says how hard a text is.
type Formula struct {
	// Name and Source say whose it is; Sure how it is known: S quoted in a second text,
	// M from memory.
	Name, Source, Sure string
	// Grade: the value is a school grade, so that more is harder; else it is an ease of
	// reading, and more is easier.
	Grade bool
	Value func(Measure) float64
}

// FormulaOf is the formula that was made for a language.
func FormulaOf(lang string) (f Formula, ok bool) {
	linear := func(start, sentence, word float64) func(Measure) float64 {
		return func(m Measure) float64 {
			if m.Sentences == 0 || m.Words == 0 {
				return 0
			}
			return start + sentence*float64(m.Words)/float64(m.Sentences) + word*float64(m.Syllables)/float64(m.Words)
		}
	}
	switch lang {
	case "en":
		return Formula{
			Name: "Flesch-Kincaid grade", Source: "Kincaid et al. 1975, Navy Research Branch Report 8-75", Sure: "S", Grade: true,
			Value: linear(-15.59, 0.39, 11.8),
		}, true
	case "es":
		return Formula{
			Name: "perspicuidad", Source: "Szigriszt Pazos 1993, Sistemas predictivos de legibilidad del mensaje escrito", Sure: "S",
			Value: linear(206.835, -1, -62.3),
		}, true
	case "fr":
		return Formula{Name: "Kandel-Moles", Source: "Kandel and Moles 1958", Sure: "M", Value: linear(207, -1.015, -73.6)}, true
	case "de":
		return Formula{Name: "Amstad", Source: "Amstad 1978, Wie verständlich sind unsere Zeitungen?", Sure: "S", Value: linear(180, -1, -58.5)}, true
	}
	return Formula{}, false
}

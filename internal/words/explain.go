package words

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// labels finds what is named in a text by its own key: "{planner.suggest}".
func labels() *regexp.Regexp { return regexp.MustCompile(`\{[a-z][A-Za-z0-9.-]*\}`) }

// Explain is a text that explains what stands on a screen: it names controls by their
// keys, in braces, and reads as they do, so that it cannot say a word that is not there.
// A label loses the sign that a dialog follows and the number of a part, and has a large
// letter where it begins a line.
func (w *Words) Explain(key string) string {
	text := w.Say(key)
	var b strings.Builder
	at := 0
	for _, here := range labels().FindAllStringIndex(text, -1) {
		b.WriteString(text[at:here[0]])
		name := label(w.Say(text[here[0]+1 : here[1]-1]))
		if here[0] == 0 || text[here[0]-1] == '\n' {
			first, size := utf8.DecodeRuneInString(name)
			name = string(unicode.ToUpper(first)) + name[size:]
		}
		b.WriteString(name)
		at = here[1]
	}
	return b.String() + text[at:]
}

// label is a label in a sentence.
func label(text string) string {
	text = strings.TrimRight(strings.TrimSuffix(text, "…"), " \u00a0")
	return strings.TrimLeft(strings.TrimLeft(text, "0123456789"), " ")
}

package words

import (
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/language"
)

// Within writes a name as it stands within a line: with a small letter, unless it
// is an abbreviation. German writes its nouns large everywhere.
func (w *Words) Within(name string) string {
	first, size := utf8.DecodeRuneInString(name)
	next, _ := utf8.DecodeRuneInString(name[size:])
	if size == 0 || unicode.IsUpper(next) || w.tag == language.German {
		return name
	}
	return string(unicode.ToLower(first)) + name[size:]
}

// AtStart writes what a person typed, or a name, as it begins a line: with a large
// letter. A text of the catalogue is written as it stands instead.
func AtStart(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 || first == utf8.RuneError {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

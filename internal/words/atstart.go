package words

import (
	"unicode"
	"unicode/utf8"
)

// AtStart writes what a person typed, or a name, as it begins a line: with a large
// letter. A text of the catalogue is written as it stands instead.
func AtStart(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 || first == utf8.RuneError {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

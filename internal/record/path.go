package record

import "unicode"

// PathName writes the Go name of a field as it stands in a path of the history:
// UsualMass is "usualMass".
func PathName(name string) string {
	runes := []rune(name)
	runes[0] = unicode.ToLower(runes[0])
	return string(runes)
}

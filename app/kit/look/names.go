package look

import (
	"slices"
	"strings"
	"unicode"
)

// NameLines are how a person's name stands in a width: the whole name in one line where
// it has room, else in two smaller ones with the family name whole in the second; where
// that has no room either, the given names become initials. Only a family name that is
// itself wider than a line is ever shortened.
func NameLines(name string, style Style, width float32) ([]string, Style) {
	if width <= 0 {
		return []string{""}, style
	}
	small := NoteStrong
	for _, said := range []string{name, initialled(name)} {
		if style.Width(said) <= width {
			return []string{said}, style
		}
		if lines, ok := twoLines(said, small, width); ok {
			return lines, small
		}
	}
	_, family := parted(name)
	return []string{Ellipsis(family, small, width)}, small
}

// parted parts a name into the given names and the family name: its last word, with the
// particles before it, which are not capitalised ("van der Brugge").
func parted(name string) (given []string, family string) {
	words := strings.Fields(name)
	at := len(words) - 1
	for at > 1 && startsSmall(words[at-1]) {
		at--
	}
	if at < 0 {
		return nil, ""
	}
	return words[:at], strings.Join(words[at:], " ")
}

func startsSmall(word string) bool {
	for _, r := range word {
		return unicode.IsLower(r)
	}
	return false
}

// initialled is a name with its given names as initials: "A.-M. Quarrow" for "Anna-Maria
// Quarrow". The family name is whole.
func initialled(name string) string {
	given, family := parted(name)
	var b strings.Builder
	for _, word := range given {
		for i, part := range strings.Split(word, "-") {
			if i > 0 {
				b.WriteByte('-')
			}
			for _, r := range part {
				b.WriteRune(r)
				b.WriteByte('.')
				break
			}
		}
		b.WriteByte(' ')
	}
	b.WriteString(family)
	return b.String()
}

// twoLines breaks a name into two lines: before the family name, else behind another
// word or a hyphen, the last that has room; ok is false where none has.
func twoLines(name string, style Style, width float32) (lines []string, ok bool) {
	given, family := parted(name)
	breaks := []string{}
	if len(given) > 0 {
		breaks = append(breaks, strings.Join(given, " ")+" ")
	}
	others := []string{}
	for i, r := range name {
		if r == ' ' || r == '-' {
			others = append(others, name[:i+1])
		}
	}
	slices.Reverse(others)
	for _, first := range append(breaks, others...) {
		second, found := strings.CutPrefix(name, first)
		if !found {
			second = family // runs of blanks are one
		}
		first = strings.TrimRight(first, " ")
		if style.Width(first) <= width && style.Width(second) <= width {
			return []string{first, second}, true
		}
	}
	return nil, false
}

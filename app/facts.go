package app

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"ebbwell/app/kit/look"
)

// facts stand behind the title of a screen, parts with dots between them.
type facts struct{ full, short string }

// leastFact is the room in px that is worth the beginning of a part.
const leastFact float32 = 60

// within is what is said where the tabs can stay in the middle with so many px
// left of them, and where at most so many can be had: the short form before the
// tabs move, then as many whole parts as there is room for. A number is never
// cut; words may be.
func (f facts) within(beside, most float32) string {
	if look.Body.Width(f.full) <= beside {
		return f.full
	}
	text := f.short
	if text == "" {
		text = f.full
	}
	const between = " · "
	parts := strings.Split(text, between)
	said := parts[0]
	for _, part := range parts[1:] {
		next := said + between + part
		if look.Body.Width(next) > most {
			first, _ := utf8.DecodeRuneInString(part)
			if unicode.IsDigit(first) || most-look.Body.Width(said+between) < look.Scaled(leastFact) {
				return said
			}
			return next
		}
		said = next
	}
	return said
}

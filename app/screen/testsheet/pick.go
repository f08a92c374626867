package testsheet

import (
	"strings"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/internal/record"
)

// at is the place of a number that every sheet has.
func at(path string, of func(t *record.Test) *record.Number) bind.NumberAt[record.Test] {
	return bind.At(path, of)
}

// word is the place of a word out of a closed list.
func word(get func(t record.Test) string, set func(t *record.Test, w string)) bind.Word[record.Test] {
	return bind.Word[record.Test]{Get: get, Set: set}
}

// keyOrText is the key of a match, or what was typed.
func keyOrText(o field.Option) string {
	if o.Key != "" {
		return o.Key
	}
	return o.Text
}

// matching lists the options whose text holds every word of a text, those
// that begin with it first.
func matching(list []field.Option, text string) []field.Option {
	words := strings.Fields(strings.ToLower(text))
	var begins, holds []field.Option
	for _, o := range list {
		name, all := strings.ToLower(o.Text), true
		for _, w := range words {
			all = all && strings.Contains(name, w)
		}
		switch {
		case !all:
		case len(words) > 0 && strings.HasPrefix(name, words[0]):
			begins = append(begins, o)
		default:
			holds = append(holds, o)
		}
	}
	return append(begins, holds...)
}

package testsheet

import (
	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// at is the place of a number that every sheet has.
func at(path string, of func(t *record.Test) *record.Number) bind.NumberAt[record.Test] {
	return bind.At(path, of)
}

// number binds a number that a sheet has once, as it is described, and sets it beside
// its words.
func number(b *binder, path string) (look.Entry, *field.Number) {
	f, _ := record.SheetFieldOf(path)
	n := bind.SheetNumber(b, f)
	return look.NewEntry(b.Say(f.Words()), small(n)), n
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

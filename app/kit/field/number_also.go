package field

import (
	"unicode"

	"ebbwell/internal/quantity"
)

// alsoUnit is a unit of another kind that a number takes too.
type alsoUnit struct {
	unit quantity.Unit
	// per is how much of the base one of it is; 0 while that is not known.
	per func() float64
}

// Also takes numbers in a unit of another kind too, such as millilitres where grams
// are kept: per is how much of the base unit one of it is, 0 while that is not known.
func (n *Number) Also(u quantity.Unit, per func() float64) { n.is.also = alsoUnit{u, per} }

// readAlso reads a text in the other kind of unit.
func (n *Number) readAlso(r *Reading) bool {
	if n.is.also.per == nil {
		return false
	}
	typed, err := quantity.Parse(r.Raw, n.is.also.unit)
	per := n.is.also.per()
	if err != nil || per <= 0 {
		return false
	}
	r.Value, r.Unit = typed.Value*per, typed.Unit
	return true
}

// SetKept writes a value as it is kept: in the unit of the field, or in that of the
// other kind it was typed in. Nobody is told.
func (n *Number) SetKept(x float64, typed quantity.Unit) {
	also := n.is.also
	if also.per == nil || !quantity.SameKind(typed, also.unit) {
		n.SetValue(x)
		return
	}
	if r := n.Reading(); r.Known && r.Value-x < 1e-9 && x-r.Value < 1e-9 {
		return
	}
	per := also.per()
	shown, err := quantity.Convert(x, also.unit, typed)
	if err != nil || per <= 0 {
		n.SetValue(x)
		return
	}
	n.SetRaw(n.host.Words.Typed(quantity.Round(shown/per, quantity.Decimals(typed)), neededDecimals(quantity.Round(shown/per, quantity.Decimals(typed)))) + " " + string(typed))
}

// Worded is what stands in the field, with its unit; empty where it is empty.
func (n *Number) Worded() string {
	text := n.Text()
	for _, r := range text {
		if unicode.IsLetter(r) {
			return text // with its own unit
		}
	}
	if text == "" || n.setup.suffix == "" {
		return text
	}
	return text + "\u00a0" + n.setup.suffix
}

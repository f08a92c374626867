// Package amount writes quantities in the units of the
// practice: litres or fluid ounces, kilograms or pounds. Where body mass is
// hidden from the athlete, a mass that left the body is written in litres, so
// that nothing on the screen leads back to a mass.
//
// It converts and rounds; it calculates nothing.
package amount

import (
	"math"

	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

// coarse is the amount of sodium in mg from which it is rounded to tens: the
// patch equation leaves no more to be told.
const coarse = 500

// Writer writes quantities in one language and one set of units.
type Writer struct {
	Words *words.Words
	// US is true for pounds, fluid ounces, degrees Fahrenheit, feet.
	US bool
	// Hidden writes kilograms that left the body as litres.
	Hidden bool
}

// Unit is the unit a quantity in u is shown in.
func (w Writer) Unit(u quantity.Unit) quantity.Unit {
	if w.Hidden && u == quantity.Kilogram {
		u = quantity.Litre
	}
	if !w.US {
		return u
	}
	switch u {
	case quantity.Kilogram:
		return quantity.Pound
	case quantity.Litre, quantity.Millilitre:
		return quantity.FluidOunce
	case quantity.LitrePerHour, quantity.MillilitrePerHour:
		return quantity.FluidOuncePerHour
	case quantity.DegreeCelsius:
		return quantity.DegreeFahrenheit
	case quantity.MetrePerSecond, quantity.KilometrePerHour:
		return quantity.MilePerHour
	case quantity.Metre:
		return quantity.Foot
	case quantity.Kilometre:
		return quantity.Mile
	}
	return u
}

// convert turns a value in u into the unit it is shown in. One kilogram that
// left the body is one litre.
func (w Writer) convert(x float64, u quantity.Unit) float64 {
	from := u
	if w.Hidden && from == quantity.Kilogram {
		from = quantity.Litre
	}
	shown, err := quantity.Convert(x, from, w.Unit(u))
	if err != nil {
		return x // Unit never leaves the kind
	}
	return shown
}

// decimals is how many decimals a value in u is shown with.
func (w Writer) decimals(x float64, u quantity.Unit) int {
	switch shown := w.Unit(u); shown {
	case quantity.FluidOuncePerHour:
		return 0
	case quantity.Milligram, quantity.MilligramPerHour:
		if math.Abs(x) >= coarse {
			return -1
		}
	case quantity.None:
		return 2
	default:
		return quantity.Decimals(shown)
	}
	return 0
}

// Number writes a value in u without its unit.
func (w Writer) Number(x float64, u quantity.Unit) string {
	return w.Words.Number(w.convert(x, u), w.decimals(x, u))
}

// Sum writes amounts that are added, with the unit once: "0.45 + 0.35 L".
func (w Writer) Sum(list []float64, u quantity.Unit) string {
	parts := make([]string, len(list))
	for i, x := range list {
		parts[i] = w.Number(x, u)
	}
	return w.Words.Plus(parts) + "\u00a0" + string(w.Unit(u))
}

// Amount writes a value in u with its unit.
func (w Writer) Amount(x float64, u quantity.Unit) string {
	return w.Words.NumberIn(w.convert(x, u), w.decimals(x, u), w.name(u))
}

// Rounded is Amount with so many decimals of the unit shown.
func (w Writer) Rounded(x float64, u quantity.Unit, decimals int) string {
	return w.Words.NumberIn(w.convert(x, u), decimals, w.name(u))
}

// Limit writes a value in u that somebody set, as it was set: "2 %", "2.5 %". What is
// measured or worked out keeps its decimals.
func (w Writer) Limit(x float64, u quantity.Unit) string {
	return w.Words.NumberIn(w.convert(x, u), w.asSet(x, u), w.name(u))
}

// LimitNumber is Limit without the unit.
func (w Writer) LimitNumber(x float64, u quantity.Unit) string {
	return w.Words.Number(w.convert(x, u), w.asSet(x, u))
}

// SignedLimit is Limit with a plus before what is above zero.
func (w Writer) SignedLimit(x float64, u quantity.Unit) string {
	return w.Words.SignedIn(w.convert(x, u), w.asSet(x, u), w.name(u))
}

// asSet is how many decimals a value in u has of those it is shown with.
func (w Writer) asSet(x float64, u quantity.Unit) int {
	shown, decimals := w.convert(x, u), w.decimals(x, u)
	for decimals > 0 && quantity.Round(shown, decimals) == quantity.Round(shown, decimals-1) {
		decimals--
	}
	return decimals
}

// Degrees writes a difference of temperatures in °C: "5 °C", "9 °F".
func (w Writer) Degrees(apart float64) string {
	return w.Words.NumberIn(w.convert(apart, quantity.DegreeCelsius)-w.convert(0, quantity.DegreeCelsius), 0, w.name(quantity.DegreeCelsius))
}

// Signed is Amount with a plus before what is above zero.
func (w Writer) Signed(x float64, u quantity.Unit) string {
	return w.Words.SignedIn(w.convert(x, u), w.decimals(x, u), w.name(u))
}

// Difference is x less y with its sign and no unit, as the two are shown: who
// subtracts what stands on the screen gets it. It is empty where both read alike.
func (w Writer) Difference(x, y float64, u quantity.Unit) string {
	at := func(x float64) float64 { return quantity.Round(w.convert(x, u), w.decimals(x, u)) }
	decimals := max(w.decimals(x, u), w.decimals(y, u))
	if d := at(x) - at(y); math.Abs(d) > 1e-9 {
		return w.Words.Signed(d, decimals)
	}
	return ""
}

// Found writes the value of a figure with its unit; empty while there is none.
func (w Writer) Found(f figure.Figure) string {
	if !f.Known {
		return ""
	}
	return w.Amount(f.Value, f.Unit)
}

// Range writes the range of a figure without its unit; empty while it has
// none. It is rounded like the value it belongs to.
func (w Writer) Range(f figure.Figure) string {
	if !f.Ranged {
		return ""
	}
	like := f.Value
	if !f.Known {
		like = f.Range.High
	}
	r := quantity.Range{Low: w.convert(f.Range.Low, f.Unit), High: w.convert(f.Range.High, f.Unit)}
	return w.Words.Between(r, w.decimals(like, f.Unit))
}

// name is the unit behind a number; empty for none.
func (w Writer) name(u quantity.Unit) string {
	if shown := w.Unit(u); shown != quantity.None {
		return string(shown)
	}
	return ""
}

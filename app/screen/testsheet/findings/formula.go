package findings

import (
	"math"
	"strings"

	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// The formula of a why is shown twice: in words, and with the numbers in, so that
// anyone can work it out again.

// inWords is a formula with the words for its symbols.
func (sp speaker) inWords(w figure.Why) string { return w.Print(sp.symbol) }

// withNumbers is a formula with the values of its symbols.
func (sp speaker) withNumbers(w figure.Why) string { return w.PrintValues(sp.value) }

// symbol is the word for a symbol.
func (sp speaker) symbol(symbol string) string {
	return sp.Symbol(symbol, func(s string) string { return "findings.symbol." + s })
}

// value is an input with its unit.
func (sp speaker) value(in figure.Input) string {
	return sp.withUnit(sp.significant(in.Value), in.Unit)
}

// withUnit puts a unit behind a number. The kilogram of an osmolality is one
// of urine; where mass is hidden it is left out all the same.
func (sp speaker) withUnit(number string, u quantity.Unit) string {
	unit := string(u)
	if sp.By.Hidden {
		unit = strings.TrimSuffix(unit, "/"+string(quantity.Kilogram))
	}
	if unit == "" {
		return number
	}
	return number + "\u00a0" + unit
}

// The digits that the numbers of a why have, and the decimals at most.
const (
	digits       = 5
	mostDecimals = 9
)

// significant writes a number with the digits that matter and no idle zeros.
func (sp speaker) significant(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		x = 0
	}
	return sp.Words.Number(x, figure.Decimals(x, digits, mostDecimals))
}

package findings

import (
	"math"
	"strings"
	"unicode"

	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// The formula of a why is arithmetic in the symbols of its inputs. It is shown
// twice: in words, and with the numbers in, so that anyone can work it out
// again.

// piece is a part of a formula: a name, a number or a sign.
type piece struct {
	text string
	name bool
}

// pieces takes a formula apart.
func pieces(formula string) []piece {
	var list []piece
	runes := []rune(formula)
	for i := 0; i < len(runes); {
		r := runes[i]
		j := i + 1
		switch {
		case unicode.IsSpace(r):
			i = j
			continue
		case unicode.IsLetter(r):
			for j < len(runes) && (unicode.IsLetter(runes[j]) || unicode.IsDigit(runes[j])) {
				j++
			}
		case unicode.IsDigit(r):
			for j < len(runes) && (unicode.IsDigit(runes[j]) || runes[j] == '.') {
				j++
			}
		}
		list = append(list, piece{text: string(runes[i:j]), name: unicode.IsLetter(r)})
		i = j
	}
	return list
}

// write puts a formula together again, each name as given.
func write(formula string, name func(symbol string) string) string {
	var b strings.Builder
	for _, t := range pieces(formula) {
		switch {
		case t.name:
			b.WriteString(name(t.text))
		case t.text == "*":
			b.WriteString(" × ")
		case t.text == "/":
			b.WriteString(" / ")
		case t.text == "-":
			b.WriteString(" − ")
		case t.text == "+":
			b.WriteString(" + ")
		case t.text == ",":
			b.WriteString(", ")
		default:
			b.WriteString(t.text)
		}
	}
	return b.String()
}

// inWords is a formula with the words for its symbols.
func (sp speaker) inWords(w figure.Why) string { return write(w.Formula, sp.symbol) }

// withNumbers is a formula with the values of its symbols.
func (sp speaker) withNumbers(w figure.Why) string {
	return write(w.Formula, func(symbol string) string {
		for _, in := range w.Inputs {
			if in.Symbol != symbol {
				continue
			}
			if in.Value < 0 {
				return "(" + sp.value(in) + ")"
			}
			return sp.value(in)
		}
		return symbol
	})
}

// symbol is the word for a symbol; one of several keeps its number.
func (sp speaker) symbol(symbol string) string {
	base := strings.TrimRight(symbol, "0123456789")
	key := "findings.symbol." + base
	if !sp.w.Has(key) {
		return symbol
	}
	if number := symbol[len(base):]; number != "" {
		return sp.say("findings.symbol.numbered", sp.say(key), number)
	}
	return sp.say(key)
}

// value is an input with its unit.
func (sp speaker) value(in figure.Input) string {
	return sp.withUnit(sp.significant(in.Value), in.Unit)
}

// withUnit puts a unit behind a number. The kilogram of an osmolality is one
// of urine; where mass is hidden it is left out all the same.
func (sp speaker) withUnit(number string, u quantity.Unit) string {
	unit := string(u)
	if sp.by.Hidden {
		unit = strings.TrimSuffix(unit, "/"+string(quantity.Kilogram))
	}
	if unit == "" {
		return number
	}
	return number + "\u00a0" + unit
}

// digits is how many significant digits the numbers of a why have.
const digits = 5

// significant writes a number with the digits that matter and no idle zeros.
func (sp speaker) significant(x float64) string {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return sp.w.Number(0, 0)
	}
	decimals := min(max(digits-1-int(math.Floor(math.Log10(math.Abs(x)))), 0), 9)
	for decimals > 0 && quantity.Round(x, decimals-1) == quantity.Round(x, decimals) {
		decimals--
	}
	return sp.w.Number(x, decimals)
}

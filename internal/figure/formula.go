package figure

import (
	"math"
	"strings"
	"unicode"

	"ebbwell/internal/quantity"
)

// Print writes the formula as it is printed: every symbol as name gives it,
// the signs with room about them. Functions (min, exp) are asked for as well.
func (w Why) Print(name func(symbol string) string) string {
	var b strings.Builder
	runes := []rune(w.Formula)
	for i := 0; i < len(runes); {
		j := i + 1
		switch r := runes[i]; {
		case unicode.IsLetter(r):
			for j < len(runes) && (unicode.IsLetter(runes[j]) || unicode.IsDigit(runes[j])) {
				j++
			}
			b.WriteString(name(string(runes[i:j])))
		case !unicode.IsSpace(r):
			b.WriteString(printed(r))
		}
		i = j
	}
	return b.String()
}

// printed is a sign as it is printed.
func printed(r rune) string {
	switch r {
	case '*':
		return " × "
	case '/':
		return " / "
	case '-':
		return " − "
	case '+':
		return " + "
	case ',':
		return ", "
	}
	return string(r)
}

// PrintValues writes the formula with the values of its symbols, each as
// value writes it and in brackets where it is negative: anyone can work it out
// again.
func (w Why) PrintValues(value func(Input) string) string {
	return w.Print(func(symbol string) string {
		for _, in := range w.Inputs {
			switch {
			case in.Symbol != symbol:
			case in.Value < 0:
				return "(" + value(in) + ")"
			default:
				return value(in)
			}
		}
		return symbol
	})
}

// Decimals is how many decimals leave so many digits of x that matter, none of
// them idle and never more than most.
func Decimals(x float64, digits, most int) int {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	d := min(max(digits-1-int(math.Floor(math.Log10(math.Abs(x)))), 0), most)
	for d > 0 && quantity.Round(x, d-1) == quantity.Round(x, d) {
		d--
	}
	return d
}

package tables

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Nothing reports whether a cell says that there is nothing.
func nothing(text string) bool {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "", "-", "–", "—", ".", "n/a", "na", "n.a.", "nd", "n.d.", "k.a.", "k. a.", "s/d", "s.d.", "nc", "null", "nan", "none", "?", "x", "/",
		"dnf", "dns", "qns", "missing", "not measured", "not recorded", "unknown", "fehlt", "nicht gemessen", "unbekannt", "falta", "no medido", "manque", "non mesuré":
		return true
	}
	return false
}

// calculationFailed reports whether a spreadsheet says that it could not work a cell
// out.
func calculationFailed(text string) bool {
	return strings.HasPrefix(text, "#") && (strings.HasSuffix(text, "!") || strings.HasSuffix(text, "?") || text == "#N/A" || text == "#NV" || text == "#N/D")
}

// number reads a cell as a number without a unit, as guesses need it.
func (m Mapping) number(c Cell) (float64, bool) {
	if nothing(c.Text) {
		return 0, false
	}
	n, err := parseNumber(c, m.DecimalComma, "")
	return n.value, err == nil
}

// numeral is a number as it was read.
type numeral struct {
	value float64
	// unit stands behind it; empty for none.
	unit quantity.Unit
	// other is what it would be if its only sign were read the other way: "1,250" may
	// be 1250 or 1.25.
	other     float64
	ambiguous bool
}

// parseNumber reads a number; expected is the unit of the column.
func parseNumber(c Cell, comma bool, expected quantity.Unit) (numeral, error) {
	text := strings.TrimPrefix(strings.TrimSpace(c.Text), "~")
	if c.Number {
		typed, err := quantity.Parse(text, expected)
		if err != nil && strings.HasSuffix(text, "%") {
			typed, err = quantity.Parse(text, quantity.PerCent)
		}
		return numeral{value: typed.Value, unit: typed.Unit}, wrap(err)
	}
	digits := strings.TrimRightFunc(text, func(r rune) bool { return !unicode.IsDigit(r) })
	grouping, point := ",", "."
	if comma {
		grouping, point = point, grouping
	}
	if grouped(digits, grouping) {
		rest := text[len(digits):]
		whole := strings.ReplaceAll(digits, grouping, "")
		typed, err := quantity.Parse(strings.Replace(whole, point, ".", 1)+rest, expected)
		if err != nil {
			return numeral{}, wrap(err)
		}
		n := numeral{value: typed.Value, unit: typed.Unit}
		if strings.Count(digits, grouping) == 1 && !strings.Contains(digits, point) {
			if other, err := quantity.Parse(text, expected); err == nil {
				n.other, n.ambiguous = other.Value, true
			}
		}
		return n, nil
	}
	typed, err := quantity.Parse(text, expected)
	if err != nil {
		return numeral{}, wrap(err)
	}
	return numeral{value: typed.Value, unit: typed.Unit}, nil
}

// wrap keeps the error of a number.
func wrap(err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("read a number: %w", err)
}

// grouped reports whether a sign groups the thousands of a number.
func grouped(digits, sign string) bool {
	whole := strings.TrimLeft(digits, "-+− ")
	if i := strings.IndexAny(whole, ".,"); i < 0 {
		return false
	}
	parts := strings.Split(whole, sign)
	if len(parts) < 2 || len(parts[0]) < 1 || len(parts[0]) > 3 || strings.HasPrefix(parts[0], "0") {
		return false
	}
	for i, p := range parts[1:] {
		if i == len(parts)-2 {
			p, _, _ = strings.Cut(strings.ReplaceAll(p, ",", "."), ".")
		}
		if len(p) != 3 || strings.Trim(p, "0123456789") != "" {
			return false
		}
	}
	return strings.Trim(parts[0], "0123456789") == ""
}

// commas finds out whether a comma is the decimal sign: by the numbers that can only
// be read one way, else by the separator.
func commas(s Sheet, m Mapping, separator rune) bool {
	votes := 0
	for _, row := range m.Rows(s) {
		for i, c := range s.Rows[row] {
			if c.Number || i >= len(m.Columns) {
				continue
			}
			of, ok := meaningOf(m.Columns[i].Target)
			if !ok || of.sort != SortNumber && of.sort != SortMinutes {
				continue
			}
			whole := strings.TrimRightFunc(c.Text, func(r rune) bool { return !unicode.IsDigit(r) })
			switch comma, point := strings.Count(whole, ","), strings.Count(whole, "."); {
			case comma == 1 && point == 0 && !grouped(whole, ","):
				votes++
			case point == 1 && comma == 0 && !grouped(whole, "."):
				votes--
			}
		}
	}
	return votes > 0 || votes == 0 && separator == ';'
}

// toUnit turns a number in a chosen unit into the one a target is kept in. Of what
// is drunk and passed a gram is a millilitre (common practice, no source); sodium and
// potassium by their molar mass.
func toUnit(x float64, from quantity.Unit, of meaning) (float64, error) {
	const g, ml = quantity.Gram, quantity.Millilitre
	switch {
	case from == "" || from == of.unit:
		return x, nil
	case from == quantity.MilligramPerLitre && of.unit == quantity.MillimolePerLitre:
		if of.target == Potassium {
			return x / evidence.PotassiumMolarMass, nil
		}
		return x / evidence.SodiumMolarMass, nil
	case of.unit == g && quantity.SameKind(from, ml):
		of.unit = ml
	case of.unit == ml && quantity.SameKind(from, g):
		of.unit = g
	}
	y, err := quantity.Convert(x, from, of.unit)
	if err != nil {
		return 0, fmt.Errorf("convert a value: %w", err)
	}
	return y, nil
}

// parseMinutes reads a duration: "90", "1:30", "1:30:00", "1 h 30", "1h30min", "95 min",
// in minutes. A number without a unit is in the unit of the column.
func parseMinutes(c Cell, comma bool, unit quantity.Unit) (float64, error) {
	text := strings.ToLower(strings.TrimSpace(c.Text))
	if parts := strings.Split(text, ":"); len(parts) == 2 || len(parts) == 3 {
		return minutesOf(parts)
	}
	if before, after, ok := strings.Cut(text, "h"); ok && strings.ContainsAny(after, "0123456789") {
		after = strings.TrimFunc(after, func(r rune) bool { return !unicode.IsDigit(r) })
		return minutesOf([]string{strings.TrimSpace(before), after})
	}
	for from, to := range map[string]string{"minutes": "min", "minuten": "min", "minutos": "min", "mins": "min", "'": "min", "hours": "h", "hrs": "h", "hr": "h", "std": "h"} {
		if rest, ok := strings.CutSuffix(text, from); ok {
			text = rest + to
			break
		}
	}
	if unit == "" {
		unit = quantity.Minute
	}
	n, err := parseNumber(Cell{Text: text, Number: c.Number}, comma, unit)
	if err != nil {
		return 0, err
	}
	minutes, err := quantity.Convert(n.value, unit, quantity.Minute)
	if err != nil {
		return 0, fmt.Errorf("convert a duration: %w", err)
	}
	return minutes, nil
}

// minutesOf makes minutes of hours, minutes and seconds; where the hours are more
// than a day has, two parts are minutes and seconds.
func minutesOf(parts []string) (float64, error) {
	var x [3]float64
	for i, p := range parts {
		n, err := strconv.Atoi(strings.TrimSpace(p))
		if err != nil || n < 0 || i > 0 && n > 59 {
			return 0, wrap(quantity.ErrNotNumber)
		}
		x[i] = float64(n)
	}
	if len(parts) == 2 && x[0] >= 24 {
		return math.Round(x[0] + x[1]/60), nil
	}
	return math.Round(x[0]*60 + x[1] + x[2]/60), nil
}

package quantity

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"unicode"
)

// What can be wrong with a typed number.
var (
	// ErrEmpty: nothing was typed.
	ErrEmpty = errors.New("no number")
	// ErrNotNumber: the text is not a number.
	ErrNotNumber = errors.New("not a number")
	// ErrOtherUnit: a unit of another kind stands behind the number.
	ErrOtherUnit = errors.New("unit of another kind")
)

// Typed is a number as a person typed it.
type Typed struct {
	// Value is in the unit of the field.
	Value float64
	// Unit is the unit that was typed, or the field's unit when none was.
	Unit Unit
}

// Parse reads a number typed into a field whose unit is u. Comma and point
// both mark the decimal; where both occur the last one does and the other
// groups thousands, as spaces may. A sign may be a hyphen or a true minus. A
// unit of the same kind may follow ("154 lb" in a field of kilograms) and is
// converted. Halves may be typed as ½, ¼ and ¾.
//
// The error is one of [ErrEmpty], [ErrNotNumber] and [ErrOtherUnit]; a number
// is always finite.
func Parse(text string, u Unit) (Typed, error) {
	s := strings.TrimSpace(text)
	if s == "" {
		return Typed{}, ErrEmpty
	}
	digits, sign := splitUnit(s)
	x, err := parseDigits(digits)
	if err != nil {
		return Typed{}, err
	}
	typed := u
	if sign != "" {
		typed = unitNamed(sign)
		if typed == None {
			return Typed{}, ErrNotNumber
		}
		if !SameKind(typed, u) {
			return Typed{}, ErrOtherUnit
		}
	}
	v, err := Convert(x, typed, u)
	if err != nil {
		return Typed{}, ErrOtherUnit
	}
	return Typed{Value: v, Unit: typed}, nil
}

// splitUnit cuts text behind its last digit or fraction sign.
func splitUnit(s string) (digits, unit string) {
	end := 0
	for i, r := range s {
		if unicode.IsDigit(r) || strings.ContainsRune("½¼¾.,", r) {
			end = i + len(string(r))
		}
		if unicode.IsLetter(r) && end > 0 {
			break
		}
	}
	return strings.TrimSpace(s[:end]), strings.TrimSpace(s[end:])
}

// parseDigits reads the number part.
func parseDigits(s string) (float64, error) {
	half := 0.0
	for sign, part := range map[string]float64{"½": 0.5, "¼": 0.25, "¾": 0.75} {
		if rest, ok := strings.CutSuffix(s, sign); ok {
			s, half = strings.TrimSpace(rest), part
			if s == "" {
				return half, nil
			}
		}
	}
	s = strings.Map(func(r rune) rune {
		switch r {
		case '−':
			return '-'
		case '\u00a0', '\u202f', ' ', '\'':
			return -1
		}
		return r
	}, s)
	s = onePoint(s)
	for _, r := range s {
		if !strings.ContainsRune("0123456789.-+", r) {
			return 0, ErrNotNumber
		}
	}
	x, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsInf(x, 0) || math.IsNaN(x) {
		return 0, ErrNotNumber
	}
	if half > 0 {
		x += math.Copysign(half, x)
	}
	return x, nil
}

// onePoint leaves the last of comma and point as the decimal point.
func onePoint(s string) string {
	comma, point := strings.LastIndex(s, ","), strings.LastIndex(s, ".")
	switch {
	case comma >= 0 && point >= 0 && comma > point:
		return strings.Replace(strings.ReplaceAll(s, ".", ""), ",", ".", 1)
	case comma >= 0 && point >= 0:
		return strings.ReplaceAll(s, ",", "")
	case comma >= 0:
		return strings.Replace(s, ",", ".", 1)
	}
	return s
}

// unitNamed reads a unit sign, also in forms people type.
func unitNamed(s string) Unit {
	switch strings.ToLower(strings.ReplaceAll(s, " ", "")) {
	case "kg", "kgs":
		return Kilogram
	case "g":
		return Gram
	case "mg":
		return Milligram
	case "lb", "lbs":
		return Pound
	case "oz":
		return Ounce
	case "l":
		return Litre
	case "ml":
		return Millilitre
	case "floz":
		return FluidOunce
	case "l/h":
		return LitrePerHour
	case "ml/h":
		return MillilitrePerHour
	case "floz/h":
		return FluidOuncePerHour
	case "mmol/l":
		return MillimolePerLitre
	case "°c", "c":
		return DegreeCelsius
	case "°f", "f":
		return DegreeFahrenheit
	case "%":
		return PerCent
	case "m/s":
		return MetrePerSecond
	case "km/h":
		return KilometrePerHour
	case "mph":
		return MilePerHour
	case "m":
		return Metre
	case "cm":
		return Centimetre
	case "ft":
		return Foot
	case "in":
		return Inch
	case "min":
		return Minute
	case "h":
		return Hour
	case "w":
		return Watt
	case "met":
		return Met
	case "mosm/kg":
		return MilliosmolePerKilogram
	}
	return None
}

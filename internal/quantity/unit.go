package quantity

import "fmt"

// Unit is the sign of a unit as it stands behind a number.
type Unit string

// The units that are typed or shown.
const (
	None                   Unit = ""
	Kilogram               Unit = "kg"
	Gram                   Unit = "g"
	Milligram              Unit = "mg"
	Pound                  Unit = "lb"
	Ounce                  Unit = "oz"
	Litre                  Unit = "L"
	Millilitre             Unit = "mL"
	FluidOunce             Unit = "fl oz"
	LitrePerHour           Unit = "L/h"
	MillilitrePerHour      Unit = "mL/h"
	FluidOuncePerHour      Unit = "fl oz/h"
	GramPerHour            Unit = "g/h"
	MilligramPerHour       Unit = "mg/h"
	MillimolePerLitre      Unit = "mmol/L"
	MilligramPerLitre      Unit = "mg/L"
	GramPerLitre           Unit = "g/L"
	DegreeCelsius          Unit = "°C"
	DegreeFahrenheit       Unit = "°F"
	PerCent                Unit = "%"
	MetrePerSecond         Unit = "m/s"
	KilometrePerHour       Unit = "km/h"
	MilePerHour            Unit = "mph"
	Metre                  Unit = "m"
	Centimetre             Unit = "cm"
	Kilometre              Unit = "km"
	Mile                   Unit = "mi"
	Foot                   Unit = "ft"
	Inch                   Unit = "in"
	Minute                 Unit = "min"
	Second                 Unit = "s"
	Hour                   Unit = "h"
	Watt                   Unit = "W"
	WattPerSquareMetre     Unit = "W/m²"
	Met                    Unit = "MET"
	Kilocalorie            Unit = "kcal"
	Kilopascal             Unit = "kPa"
	Hectopascal            Unit = "hPa"
	MilliosmolePerKilogram Unit = "mOsm/kg"
	MilliosmolePerLitre    Unit = "mOsm/L"
	MillilitrePerKilogram  Unit = "mL/kg"
	LitrePerKilogram       Unit = "L/kg"
	GramPerKilogram        Unit = "g/kg"
	GramPerMillilitre      Unit = "g/mL"
	Portion                Unit = "portion"
	Millimole              Unit = "mmol"
	MillimolePerHour       Unit = "mmol/h"
	GramPerKilocalorie     Unit = "g/kcal"
	LitrePerMinute         Unit = "L/min"
	// MillilitrePerKilogramPerHour is a sweat rate by body mass.
	MillilitrePerKilogramPerHour Unit = "mL/kg/h"
)

// scale turns a unit into the first unit of its kind: base = (x + offset) * factor.
type scale struct {
	base   Unit
	factor float64
	offset float64
}

// scaleOf knows every unit that has more than one form. The pound is exactly
// 0.45359237 kg and the inch 0.0254 m, so the mile 1609.344 m (international yard and pound agreement,
// 1959); the US fluid ounce is 29.5735295625 mL (NIST Handbook 44, appendix C).
func scaleOf(u Unit) scale {
	switch u {
	case Kilogram:
		return scale{base: Kilogram, factor: 1}
	case Gram:
		return scale{base: Kilogram, factor: 1e-3}
	case Milligram:
		return scale{base: Kilogram, factor: 1e-6}
	case Pound:
		return scale{base: Kilogram, factor: 0.45359237}
	case Ounce:
		return scale{base: Kilogram, factor: 0.45359237 / 16}
	case Litre:
		return scale{base: Litre, factor: 1}
	case Millilitre:
		return scale{base: Litre, factor: 1e-3}
	case FluidOunce:
		return scale{base: Litre, factor: 0.0295735295625}
	case LitrePerHour:
		return scale{base: LitrePerHour, factor: 1}
	case MillilitrePerHour:
		return scale{base: LitrePerHour, factor: 1e-3}
	case FluidOuncePerHour:
		return scale{base: LitrePerHour, factor: 0.0295735295625}
	case DegreeCelsius:
		return scale{base: DegreeCelsius, factor: 1}
	case DegreeFahrenheit:
		return scale{base: DegreeCelsius, factor: 5.0 / 9, offset: -32}
	case MetrePerSecond:
		return scale{base: MetrePerSecond, factor: 1}
	case KilometrePerHour:
		return scale{base: MetrePerSecond, factor: 1 / 3.6}
	case MilePerHour:
		return scale{base: MetrePerSecond, factor: 0.44704}
	case Metre:
		return scale{base: Metre, factor: 1}
	case Centimetre:
		return scale{base: Metre, factor: 1e-2}
	case Kilometre:
		return scale{base: Metre, factor: 1000}
	case Mile:
		return scale{base: Metre, factor: 1609.344}
	case Foot:
		return scale{base: Metre, factor: 0.3048}
	case Inch:
		return scale{base: Metre, factor: 0.0254}
	case Minute:
		return scale{base: Minute, factor: 1}
	case Second:
		return scale{base: Minute, factor: 1.0 / 60}
	case Hour:
		return scale{base: Minute, factor: 60}
	case Kilopascal:
		return scale{base: Kilopascal, factor: 1}
	case Hectopascal:
		return scale{base: Kilopascal, factor: 0.1}
	}
	return scale{base: u, factor: 1}
}

// SameKind reports whether numbers in a and b can be converted into each other.
func SameKind(a, b Unit) bool { return scaleOf(a).base == scaleOf(b).base }

// Convert turns a number in one unit into another unit of the same kind. It
// returns an error when the two measure different things.
func Convert(x float64, from, to Unit) (float64, error) {
	if from == to {
		return x, nil
	}
	f, t := scaleOf(from), scaleOf(to)
	if f.base != t.base {
		return 0, fmt.Errorf("convert %q to %q: they measure different things", from, to)
	}
	return (x+f.offset)*f.factor/t.factor - t.offset, nil
}

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

// scaleOf knows every unit that is not the first of its kind. The pound is exactly
// 0.45359237 kg and the inch 0.0254 m, so the mile 1609.344 m (international yard and pound agreement,
// 1959); the US fluid ounce is 29.5735295625 mL (NIST Handbook 44, appendix C).
func scaleOf(u Unit) scale {
	switch u {
	case Gram:
		return scale{Kilogram, 1e-3, 0}
	case Milligram:
		return scale{Kilogram, 1e-6, 0}
	case Pound:
		return scale{Kilogram, 0.45359237, 0}
	case Ounce:
		return scale{Kilogram, 0.45359237 / 16, 0}
	case Millilitre:
		return scale{Litre, 1e-3, 0}
	case FluidOunce:
		return scale{Litre, 0.0295735295625, 0}
	case MillilitrePerHour:
		return scale{LitrePerHour, 1e-3, 0}
	case FluidOuncePerHour:
		return scale{LitrePerHour, 0.0295735295625, 0}
	case DegreeFahrenheit:
		return scale{DegreeCelsius, 5.0 / 9, -32}
	case KilometrePerHour:
		return scale{MetrePerSecond, 1 / 3.6, 0}
	case MilePerHour:
		return scale{MetrePerSecond, 0.44704, 0}
	case Centimetre:
		return scale{Metre, 1e-2, 0}
	case Kilometre:
		return scale{Metre, 1000, 0}
	case Mile:
		return scale{Metre, 1609.344, 0}
	case Foot:
		return scale{Metre, 0.3048, 0}
	case Inch:
		return scale{Metre, 0.0254, 0}
	case Second:
		return scale{Minute, 1.0 / 60, 0}
	case Hour:
		return scale{Minute, 60, 0}
	case Hectopascal:
		return scale{Kilopascal, 0.1, 0}
	}
	return scale{u, 1, 0}
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

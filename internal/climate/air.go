package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Saturation is the vapour pressure of air that can hold no more.
//
//	ps = 0.6105 exp(17.27 t / (t + 237.3))
//
// For air over water; not for air over ice. t in °C, the result in kPa.
// Meant for -20 to 55 °C. Source: ISO 7726. Example: 20 °C gives 2.337 kPa.
func Saturation(t quantity.Celsius) quantity.Kilopascals {
	return quantity.Kilopascals(saturation(float64(t)))
}

// saturation is [Saturation] in plain numbers.
func saturation(t float64) float64 {
	return evidence.SaturationScale * math.Exp(evidence.SaturationSlope*t/(t+evidence.SaturationOffset))
}

// Air is warm or cold and holds water vapour.
type Air struct {
	Temperature quantity.Celsius
	// Vapour is the pressure of the water vapour in it.
	Vapour quantity.Kilopascals
}

// NewAir makes air from temperature and relative humidity. It returns an
// [evidence.Problem] for a value outside the limits of input, and for more
// vapour than any weather holds (7.5 kPa, a dew point of 40 °C).
func NewAir(t quantity.Celsius, humidity quantity.Percent) (Air, error) {
	err := refusedAny(fieldValue{evidence.AirTemperature, float64(t)}, fieldValue{evidence.Humidity, float64(humidity)})
	if err != nil {
		return Air{}, err
	}
	a := Air{t, quantity.Kilopascals(saturation(float64(t)) * float64(humidity) / 100)}
	if err := refused(evidence.VapourPressure, float64(a.Vapour)); err != nil {
		return Air{}, err
	}
	return a, nil
}

// AirFromDewPoint makes air from temperature and dew point. A dew point above
// the air temperature is weather that cannot be: the problem has the code
// [evidence.CodeDewPoint].
func AirFromDewPoint(t, dew quantity.Celsius) (Air, error) {
	err := refusedAny(fieldValue{evidence.AirTemperature, float64(t)}, fieldValue{evidence.DewPointField, float64(dew)})
	if err != nil {
		return Air{}, err
	}
	if dew > t {
		return Air{}, problem(evidence.DewPointField, evidence.CodeDewPoint, float64(dew))
	}
	return Air{t, Saturation(dew)}, nil
}

// Humidity is the relative humidity, 0 to 100 %.
func (a Air) Humidity() quantity.Percent {
	return quantity.Percent(100 * float64(a.Vapour) / saturation(float64(a.Temperature)))
}

// DewPoint is the temperature at which the air's vapour begins to condense;
// ok is false for air without any vapour. It inverts [Saturation].
func (a Air) DewPoint() (dew quantity.Celsius, ok bool) {
	if a.Vapour <= 0 {
		return 0, false
	}
	x := math.Log(float64(a.Vapour) / evidence.SaturationScale)
	return quantity.Celsius(evidence.SaturationOffset * x / (evidence.SaturationSlope - x)), true
}

// kilo is a thousand; a kilopascal is 1000 Pa and ten hectopascals.
const kilo = 1000.0

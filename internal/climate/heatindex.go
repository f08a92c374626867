package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// HeatIndex is what the air feels like to a person at rest in the shade.
//
// The short formula 0.5 (T + 61 + 1.2 (T - 68) + 0.094 H) is averaged with T;
// from 80 °F on, Rothfusz's regression in T and H with its corrections for
// dry and for humid air takes over. T in °F inside, °C outside; H in %.
//
// A screen only: it knows neither sun nor wind nor effort, and nothing here
// rests on it. Source: Rothfusz 1990. Example: 32.2 °C (90 °F) and 50 % give
// 34.8 °C (95 °F).
func HeatIndex(t quantity.Celsius, humidity quantity.Percent) (quantity.Celsius, error) {
	h := float64(humidity)
	if err := refusedAny(fieldValue{evidence.AirTemperature, float64(t)}, fieldValue{evidence.Humidity, h}); err != nil {
		return 0, err
	}
	f, err := quantity.Convert(float64(t), quantity.DegreeCelsius, quantity.DegreeFahrenheit)
	if err != nil {
		return 0, err
	}
	simple := (f + evidence.HeatIndexSimpleBase + (f-evidence.HeatIndexSimpleCentre)*evidence.HeatIndexSimpleSlope +
		h*evidence.HeatIndexSimpleHumidity) / 2
	index := (simple + f) / 2
	if index >= evidence.HeatIndexFrom {
		index = rothfusz(f, h) + heatIndexCorrection(f, h)
	}
	c, err := quantity.Convert(index, quantity.DegreeFahrenheit, quantity.DegreeCelsius)
	return quantity.Celsius(c), err
}

// rothfusz is the regression, °F.
func rothfusz(f, h float64) float64 {
	return evidence.HeatIndexConstant + evidence.HeatIndexAir*f + evidence.HeatIndexHumidity*h +
		evidence.HeatIndexAirHumidity*f*h + evidence.HeatIndexAirAir*f*f + evidence.HeatIndexHumidityHumidity*h*h +
		evidence.HeatIndexAirAirHumidity*f*f*h + evidence.HeatIndexAirHumidityHumidity*f*h*h +
		evidence.HeatIndexAllSquared*f*f*h*h
}

// heatIndexCorrection is added for dry and for humid air, °F.
func heatIndexCorrection(f, h float64) float64 {
	switch {
	case h < evidence.HeatIndexDryBelow && f >= evidence.HeatIndexFrom && f <= evidence.HeatIndexDryHigh:
		inside := (evidence.HeatIndexDryWidth - math.Abs(f-evidence.HeatIndexDryCentre)) / evidence.HeatIndexDryWidth
		return -(evidence.HeatIndexDryBelow - h) / evidence.HeatIndexDryDivisor * math.Sqrt(max(0, inside))
	case h > evidence.HeatIndexHumidAbove && f >= evidence.HeatIndexFrom && f <= evidence.HeatIndexHumidHigh:
		return (h - evidence.HeatIndexHumidAbove) / evidence.HeatIndexHumidDivisor *
			(evidence.HeatIndexHumidHigh - f) / evidence.HeatIndexHumidWidth
	}
	return 0
}

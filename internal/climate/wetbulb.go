package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// WetBulb is the temperature of a wetted, well ventilated thermometer in the
// shade.
//
//	tw = t atan(0.151977 (H + 8.313659)^½) + atan(t + H) - atan(H - 1.676331)
//	     + 0.00391838 H^1.5 atan(0.023101 H) - 4.686035
//
// Meant for reading weather; not the natural wet bulb of the WBGT, which
// stands in sun and in the wind there is. t in °C, H in %. Fitted to 5-99 %
// and -20 to 50 °C at sea level: outside, the problem has the code
// [evidence.CodeOutOfFit]. Source: Stull 2011. Example: 20 °C and 50 % give
// 13.7 °C.
func WetBulb(t quantity.Celsius, humidity quantity.Percent) (quantity.Celsius, error) {
	x, h := float64(t), float64(humidity)
	if err := refusedAny(fieldValue{evidence.AirTemperature, x}, fieldValue{evidence.Humidity, h}); err != nil {
		return 0, err
	}
	if x < evidence.WetBulbAirLow || x > evidence.WetBulbAirHigh {
		return 0, outOfFit(evidence.AirTemperature, x, evidence.WetBulbAirLow, evidence.WetBulbAirHigh, quantity.DegreeCelsius)
	}
	if h < evidence.WetBulbHumidityLow || h > evidence.WetBulbHumidityHigh {
		return 0, outOfFit(evidence.Humidity, h, evidence.WetBulbHumidityLow, evidence.WetBulbHumidityHigh, quantity.PerCent)
	}
	w := x*math.Atan(evidence.WetBulbRoot*math.Sqrt(h+evidence.WetBulbRootOffset)) +
		math.Atan(x+h) - math.Atan(h-evidence.WetBulbShift) +
		evidence.WetBulbHumid*math.Pow(h, evidence.WetBulbHumidPower)*math.Atan(evidence.WetBulbHumidAngle*h) -
		evidence.WetBulbConstant
	return quantity.Celsius(w), nil
}

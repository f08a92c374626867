package climate

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// ShortWBGT guesses the wet bulb globe temperature from air alone.
//
//	0.567 t + 0.393 e + 3.94      e in hPa
//
// A screen only: it supposes a moderately strong sun and a light wind whatever
// the day, reads high under cloud and at night, and no caution rests on it.
// Use [WeatherWBGT]. Source: weather services after ACSM 1984, from memory.
// Example: 30 °C and 50 % give 29.3 °C.
func ShortWBGT(a Air) quantity.Celsius {
	hectopascals := float64(a.Vapour) * kilo / 100
	return quantity.Celsius(evidence.ShortWbgtAir*float64(a.Temperature) + evidence.ShortWbgtVapour*hectopascals + evidence.ShortWbgtConstant)
}

// kilo is a thousand; a kilopascal is 1000 Pa and ten hectopascals.
const kilo = 1000.0

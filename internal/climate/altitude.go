package climate

import (
	"math"

	"ebbwell/internal/evidence"
)

// pressure is the air pressure, kPa, at a height above the sea, m, that was
// checked.
//
//	P = 101.325 (1 - 2.25577e-5 h)^5.25588
//
// For the standard atmosphere, not for a day's weather, which moves it by a
// few per cent. Source: ISO 2533, from memory. Example: 1500 m gives 84.6 kPa.
func pressure(h float64) float64 {
	return evidence.SeaLevelPressure * math.Pow(1-evidence.PressureLapse*h, evidence.PressureExponent)
}

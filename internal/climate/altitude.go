package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// PressureAt is the air pressure at a height above the sea.
//
//	P = 101.325 (1 - 2.25577e-5 h)^5.25588
//
// For the standard atmosphere, not for a day's weather, which moves it by a
// few per cent. h in m, P in kPa; -430 to 6000 m, else an
// [evidence.Problem]. Source: ISO 2533, from memory. Example: 1500 m gives
// 84.6 kPa.
func PressureAt(h quantity.Metres) (quantity.Kilopascals, error) {
	if err := refused(evidence.Altitude, float64(h)); err != nil {
		return 0, err
	}
	return quantity.Kilopascals(pressure(float64(h))), nil
}

// pressure is [PressureAt] for a height that was checked.
func pressure(h float64) float64 {
	return evidence.SeaLevelPressure * math.Pow(1-evidence.PressureLapse*h, evidence.PressureExponent)
}

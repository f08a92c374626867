package golden

import (
	"image/color"
	"math"
)

// Contrast is the contrast ratio of WCAG 2.2 (W3C Recommendation, 2023): its
// relative luminance and its (L1 + 0.05) / (L2 + 0.05).
func Contrast(a, b color.Color) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func luminance(c color.Color) float64 {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	part := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*part(n.R) + 0.7152*part(n.G) + 0.0722*part(n.B)
}

package amount

import (
	"math"

	"ebbwell/internal/quantity"
)

// RateEnds are the two ends of a rate in L/h, rounded outward so that the low end,
// which is the ceiling of drinking, never reads higher than it is.
func (sp Speaker) RateEnds(r quantity.Range) (low, high string) {
	u, decimals := sp.By.Unit(quantity.LitrePerHour), sp.RateDecimals()
	step := math.Pow(10, float64(-decimals))
	end := func(x float64, round func(float64) float64) string {
		shown, err := quantity.Convert(x, quantity.LitrePerHour, u)
		if err != nil {
			shown = x // the two units are of one kind
		}
		return sp.Words.Number(round(quantity.Round(shown/step, 6))*step, decimals)
	}
	return end(r.Low, math.Floor), end(r.High, math.Ceil)
}

// RateDecimals is how many decimals the range of a rate is written with.
func (sp Speaker) RateDecimals() int {
	if sp.By.US {
		return 0
	}
	return 1
}

// Rates is a range of sweat rates: "1.2 to 2.0 L/h".
func (sp Speaker) Rates(r quantity.Range) string {
	low, high := sp.RateEnds(r)
	return sp.Say("heat.rates", low, high, string(sp.By.Unit(quantity.LitrePerHour)))
}

// RatesShort is a range of sweat rates for a column whose head has the unit:
// "0.9–1.7".
func (sp Speaker) RatesShort(r quantity.Range) string {
	low, high := sp.RateEnds(r)
	return sp.Say("heat.rates.short", low, high)
}

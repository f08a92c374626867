package heat

import (
	"math"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Speaker words a calculation.
type Speaker struct{ amount.Speaker }

// Units is a text that names a unit, in its form for the practice's units.
func (sp Speaker) Units(key string, args ...any) string {
	if us := key + ".us"; sp.By.US && sp.Words.Has(us) {
		key = us
	}
	return sp.Words.Say(key, args...)
}

// Degrees is a temperature in whole degrees, with its unit.
func (sp Speaker) Degrees(celsius float64) string {
	return sp.bare(celsius, 0) + "\u00a0" + string(sp.By.Unit(quantity.DegreeCelsius))
}

// bare is a temperature in °C as a number in the unit it is shown in.
func (sp Speaker) bare(celsius float64, decimals int) string {
	shown, err := quantity.Convert(celsius, quantity.DegreeCelsius, sp.By.Unit(quantity.DegreeCelsius))
	if err != nil {
		shown = celsius // the two units are of one kind
	}
	return sp.Words.Number(shown, decimals)
}

// apart is a difference of temperatures in °C as a number of the degrees shown.
func (sp Speaker) apart(celsius float64) string {
	if sp.By.US {
		celsius *= fahrenheitDegree
	}
	return sp.Words.Number(math.Abs(celsius), 0)
}

// fahrenheitDegree is how many degrees of Fahrenheit are one of Celsius.
const fahrenheitDegree = 1.8

// Air is air in a few words: "31 °C, 46 %"; what is not written down is left
// out.
func (sp Speaker) Air(a record.Air) string {
	switch {
	case a.Temperature.Known() && a.Humidity.Known():
		return sp.Say("heat.air", sp.Degrees(*a.Temperature.Value), sp.Words.Number(*a.Humidity.Value, 0))
	case a.Temperature.Known():
		return sp.Degrees(*a.Temperature.Value)
	}
	return sp.Say("heat.none")
}

// Sun is the sun in words.
func (sp Speaker) Sun(s record.Sun) string {
	if s == "" {
		return sp.Say("heat.none")
	}
	return sp.Say("sun." + string(s))
}

// Clothing is the clothing in words.
func (sp Speaker) Clothing(code string) string {
	if code == "" {
		code = consult.ClothingShirt
	}
	return sp.Say("clothing." + code)
}

// Effort is the effort of a session by the best that is known of it.
func (sp Speaker) Effort(s record.Session) string {
	switch {
	case s.Power.Known():
		return sp.By.Amount(*s.Power.Value, quantity.Watt)
	case s.Speed.Known():
		return sp.speed(*s.Speed.Value)
	case s.Effort.Known():
		return sp.Say("heat.effort", sp.Words.Number(*s.Effort.Value, 0))
	case s.Met.Known():
		return sp.By.Amount(*s.Met.Value, quantity.Met)
	}
	return sp.Say("heat.none")
}

// speed is a running speed in km/h, no more exact than it was written down.
func (sp Speaker) speed(kmh float64) string {
	u := sp.By.Unit(quantity.KilometrePerHour)
	shown, err := quantity.Convert(kmh, quantity.KilometrePerHour, u)
	if err != nil {
		shown = kmh // the two units are of one kind
	}
	return sp.Words.Number(shown, min(1, digitsOf(shown, valueDigits))) + "\u00a0" + string(u)
}

// middle is the middle of an estimate in L/h, without its unit and no more
// exact than its range.
func (sp Speaker) middle(x float64) string {
	shown, err := quantity.Convert(x, quantity.LitrePerHour, sp.By.Unit(quantity.LitrePerHour))
	if err != nil {
		shown = x // the two units are of one kind
	}
	return sp.Words.Number(shown, sp.RateDecimals())
}

// LowRate and HighRate are the ends of a range by themselves: "1.2 L/h".
func (sp Speaker) LowRate(r quantity.Range) string {
	low, _ := sp.RateEnds(r)
	return sp.Say("heat.rate", low, string(sp.By.Unit(quantity.LitrePerHour)))
}

// HighRate is the high end of a range by itself.
func (sp Speaker) HighRate(r quantity.Range) string {
	_, high := sp.RateEnds(r)
	return sp.Say("heat.rate", high, string(sp.By.Unit(quantity.LitrePerHour)))
}

// MiddleRate is the middle of an estimate with its unit: "2.2 L/h".
func (sp Speaker) MiddleRate(x float64) string {
	return sp.Say("heat.rate", sp.middle(x), string(sp.By.Unit(quantity.LitrePerHour)))
}

// Rate is one sweat rate: "1.56 L/h".
func (sp Speaker) Rate(x float64) string { return sp.By.Amount(x, quantity.LitrePerHour) }

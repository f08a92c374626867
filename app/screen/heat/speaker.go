package heat

import (
	"ebbwell/app/kit/amount"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Speaker words a calculation.
type Speaker struct{ amount.Speaker }

// Degrees is a temperature in whole degrees, with its unit.
func (sp Speaker) Degrees(celsius float64) string {
	return sp.By.Rounded(celsius, quantity.DegreeCelsius, 0)
}

// Guessed says that the daily highest of a place is a guess.
func (sp Speaker) Guessed() string {
	return sp.Say("trip.table.guessed", sp.By.Degrees(evidence.HotDayAdds))
}

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

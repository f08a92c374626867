package climate

import (
	"fmt"
	"math"
	"strings"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plain"
	"ebbwell/internal/quantity"
)

// UnknownPlaceError says that no place has a name.
type UnknownPlaceError struct {
	Name string
	// Like are names of the table that hold one of its words, five at most.
	Like []string
}

// Error names the place.
func (e UnknownPlaceError) Error() string {
	return fmt.Sprintf("place %q: not in the climate table", e.Name)
}

// Find returns the place with a name, as people type it; with a country behind
// a comma where two share it. It returns an [UnknownPlaceError].
func (p Places) Find(name string) (Place, error) {
	want := plain.Text(name)
	for _, place := range p.List {
		if want != "" && (plain.Text(place.Name) == want || plain.Text(place.Name+" "+place.Country) == want) {
			return place, nil
		}
	}
	e := UnknownPlaceError{Name: name}
	if found := p.Search(name); want != "" && len(found) == 1 {
		return found[0], nil
	}
	for _, word := range strings.Fields(want) {
		for _, place := range p.Search(word) {
			if len(e.Like) < 5 {
				e.Like = append(e.Like, place.Name)
			}
		}
	}
	return Place{}, e
}

// PlaceAir is air of a place, and what was guessed in it.
type PlaceAir struct {
	Temperature quantity.Celsius
	// Humidity is relative, %, from the month's vapour pressure, which is
	// taken as steady over the day.
	Humidity quantity.Percent
	// HighGuessed and LowGuessed: the mean of the daily highest (lowest) is
	// missing and was taken as the month's mean plus (less) 5 °C.
	HighGuessed, LowGuessed bool
	// Grade of the place's record.
	Grade string
	// Years of reports behind it.
	Years int
}

// month is a month of the place, 1 to 12.
func (p Place) month(m int) (Month, error) {
	if m < 1 || m > months {
		return Month{}, problem(evidence.MonthField, evidence.CodeOutside, float64(m))
	}
	return p.Months[m-1], nil
}

// Afternoon is the air at the mean daily highest of a month (1-12).
//
// RH = e/es(high), e steady over the day. Where the highest is missing it is
// the mean plus 5 °C, and says so. Meant for a first look at a place; not for a
// day's forecast. Source: the climate table; the guess is a proposal.
func (p Place) Afternoon(m int) (PlaceAir, error) {
	month, err := p.month(m)
	if err != nil {
		return PlaceAir{}, err
	}
	high, guessed := month.high()
	return p.air(month, high, guessed, false), nil
}

// Mean is the air at the mean of a month over day and night.
func (p Place) Mean(m int) (PlaceAir, error) {
	month, err := p.month(m)
	if err != nil {
		return PlaceAir{}, err
	}
	return p.air(month, month.Mean, false, false), nil
}

// HotDay is an afternoon 5 °C above the month's; the vapour is the month's.
func (p Place) HotDay(m int) (PlaceAir, error) {
	month, err := p.month(m)
	if err != nil {
		return PlaceAir{}, err
	}
	high, guessed := month.high()
	return p.air(month, high+evidence.HotDayAdds, guessed, false), nil
}

// AtHour is the air at an hour of the day, 0 to 24.
//
//	t = low + (high - low) sin(π (h - 6)/18) from 6 to 24 h, low before
//
// RH at a steady vapour pressure, at most 98 %. A proposal; on clear days the
// afternoon lasts longer.
func (p Place) AtHour(m int, hour float64) (PlaceAir, error) {
	month, err := p.month(m)
	if err != nil {
		return PlaceAir{}, err
	}
	if err := refused(evidence.HourField, hour); err != nil {
		return PlaceAir{}, err
	}
	high, guessedHigh := month.high()
	low, guessedLow := month.low()
	t := float64(low)
	if hour > evidence.DayBegins {
		t += float64(high-low) * math.Sin(math.Pi*(hour-evidence.DayBegins)/evidence.DaySpan)
	}
	return p.air(month, quantity.Celsius(t), guessedHigh, guessedLow), nil
}

// air puts the month's vapour into air of a temperature.
func (p Place) air(m Month, t quantity.Celsius, guessedHigh, guessedLow bool) PlaceAir {
	humidity := min(Air{t, m.Vapour}.Humidity(), evidence.HumidityCap)
	return PlaceAir{t, humidity, guessedHigh, guessedLow, p.Grade, min(m.YearsAir, m.YearsVapour)}
}

// high is the mean daily highest, or the guess for it.
func (m Month) high() (t quantity.Celsius, guessed bool) {
	if m.High == nil {
		return m.Mean + evidence.MissingMaxAdds, true
	}
	return *m.High, false
}

// low is the mean daily lowest, or the guess for it.
func (m Month) low() (t quantity.Celsius, guessed bool) {
	if m.Low == nil {
		return m.Mean - evidence.MissingMaxAdds, true
	}
	return *m.Low, false
}

package consult

import (
	"fmt"

	"ebbwell/internal/climate"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// StopAir is the air of a stop, as typed or from the climate table.
type StopAir struct {
	Air record.Air
	// FromTable: temperature, humidity or both are a month's means of the
	// table, whose credit must be shown.
	FromTable bool
	// Place is the table's air, City its row, Month the month it is of;
	// meaningful while FromTable.
	Place climate.PlaceAir
	City  climate.Place
	Month int
}

// The hours a climate is taken at.
const (
	Afternoon = "afternoon"
	MeanOfDay = "mean"
	HotDay    = "hot-day"
)

// AirOf is the air of a stop. What was typed goes before the table; where only
// the temperature was typed, the month's vapour is in it. The altitude is the
// city's where none was typed. It returns [climate.UnknownPlaceError] for a
// city that is not in the table and an [evidence.Problem] where there is
// neither a month nor a day to take it from.
func AirOf(s record.Stop, places climate.Places) (StopAir, error) {
	out := StopAir{Air: s.Air}
	if s.City == "" {
		return out, nil
	}
	city, err := places.Find(s.City)
	if err != nil {
		if s.Air.Temperature.Known() && s.Air.Humidity.Known() {
			return out, nil // the air is typed: the table is not asked
		}
		return out, err
	}
	if !out.Air.Altitude.Known() {
		out.Air.Altitude = record.Num(float64(city.Elevation), quantity.Metre)
	}
	if s.Air.Temperature.Known() && s.Air.Humidity.Known() {
		return out, nil
	}
	month := monthOf(s)
	if month == 0 {
		return out, evidence.Problem{Field: evidence.MonthField, Code: evidence.CodeMissing, Severity: evidence.Refuses}
	}
	air, err := atHour(city, month, s.TimeOfDay)
	if err != nil {
		return out, fmt.Errorf("climate of %s in month %d: %w", city.Name, month, err)
	}
	out.FromTable, out.Place, out.City, out.Month = true, air, city, month
	if !out.Air.Humidity.Known() {
		out.Air.Humidity = record.Num(quantity.Round(humidityAt(city, month, air, s.Air.Temperature), 0), quantity.PerCent)
	}
	if !out.Air.Temperature.Known() {
		out.Air.Temperature = record.Num(quantity.Round(float64(air.Temperature), 1), quantity.DegreeCelsius)
	}
	return out, nil
}

// monthOf is the month of a stop: as chosen, else that of its first day; 0
// where neither is there.
func monthOf(s record.Stop) int {
	if from, ok := s.From.Time(); s.Month == 0 && ok {
		return int(from.Month())
	}
	return s.Month
}

// atHour is a city's air in a month at one of the hours.
func atHour(city climate.Place, month int, hour string) (climate.PlaceAir, error) {
	switch hour {
	case MeanOfDay:
		return city.Mean(month)
	case HotDay:
		return city.HotDay(month)
	}
	return city.Afternoon(month)
}

// humidityAt is the relative humidity at a typed temperature with the month's
// vapour in the air; the table's own where none was typed.
func humidityAt(city climate.Place, month int, air climate.PlaceAir, typed record.Number) float64 {
	if !typed.Known() || month < 1 || month > len(city.Months) {
		return float64(air.Humidity)
	}
	at := climate.Air{Temperature: quantity.Celsius(*typed.Value), Vapour: city.Months[month-1].Vapour}
	return min(float64(at.Humidity()), evidence.HumidityCap)
}

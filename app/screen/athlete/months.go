package athlete

import (
	"time"

	"ebbwell/app/kit/chart"
	"ebbwell/internal/record"
)

// dayNumber is a day as a place on an axis: days since 1970.
func dayNumber(d record.Date) float64 {
	t, ok := d.Time()
	if !ok {
		return 0
	}
	return float64(time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC).Unix() / secondsADay)
}

const secondsADay = 24 * 60 * 60

// monthsNamed is how many months an axis names at most, our choice.
const monthsNamed = 7

// monthTicks are first days of months from the one of the first day to the one after
// the last, no more than an axis can name; the first of a year has the year.
func (sp speaker) monthTicks(first, last float64) []chart.Tick {
	day := func(n float64) time.Time { return time.Unix(int64(n)*secondsADay, 0).UTC() }
	from, until := day(first), day(last)
	months := (until.Year()-from.Year())*12 + int(until.Month()) - int(from.Month()) + 1
	every := (months + monthsNamed - 1) / monthsNamed
	var list []chart.Tick
	start := time.Date(from.Year(), from.Month(), 1, 0, 0, 0, 0, time.UTC)
	for i := 0; i < months+every; i += every {
		t := start.AddDate(0, i, 0)
		text := sp.Words.ShortMonth(t.Month())
		if every >= 12 {
			text = sp.Words.Number(float64(t.Year()), 0)
		}
		list = append(list, chart.Tick{At: float64(t.Unix() / secondsADay), Text: text})
	}
	return list
}

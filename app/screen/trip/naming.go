package trip

import (
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// title is the name of a trip, or that it has none yet.
func title(sp heat.Speaker, t record.Trip) string {
	if name := strings.TrimSpace(t.Name); name != "" {
		return name
	}
	return sp.Words.Say("trip.new")
}

// stopDates are the days of a stop: "11 – 17 July"; empty while they are open.
func stopDates(sp heat.Speaker, s record.Stop) string {
	from, ok1 := s.From.Time()
	until, ok2 := s.Until.Time()
	switch {
	case ok1 && ok2:
		return sp.Span(from, until)
	case ok1:
		return sp.Words.Say("trip.from", sp.Day(from))
	}
	return ""
}

// stopPlace is where a stop is: its place, its city, or which one it is.
func stopPlace(sp heat.Speaker, s record.Stop, i int) string {
	switch {
	case strings.TrimSpace(s.Place) != "":
		return strings.TrimSpace(s.Place)
	case s.City != "":
		return s.City
	}
	return sp.Words.Say("trip.stop.number", sp.Words.Number(float64(i+1), 0))
}

// shortPlace is where a stop is, for a list of several; the days there where the name is
// long.
func shortPlace(sp heat.Speaker, s record.Stop, i int) string {
	place := stopPlace(sp, s, i)
	if days := shortDates(sp, s); days != "" && look.Note.Width(place) > look.Scaled(140) {
		return days
	}
	return look.Ellipsis(place, look.Note, look.Scaled(140))
}

// stopName names a stop by days and place.
func stopName(sp heat.Speaker, s record.Stop, i int) string {
	place := stopPlace(sp, s, i)
	if days := stopDates(sp, s); days != "" {
		return sp.Words.Say("trip.stop.named", days, place)
	}
	return place
}

// tabLevels are the forms a stop's tab can have, the fullest first.
const tabLevels = 5

// tabText is a stop's tab: days and place, with short months, the place alone, the
// days alone; the last level is its number.
func tabText(sp heat.Speaker, s record.Stop, i, level int) string {
	days, place := stopDates(sp, s), stopPlace(sp, s, i)
	switch {
	case level == tabLevels-1:
		return sp.Words.Say("trip.stop.number", sp.Words.Number(float64(i+1), 0))
	case days == "":
		return place
	case level > 0:
		days = shortDates(sp, s)
	}
	switch level {
	case tabLevels - 3:
		return place
	case tabLevels - 2:
		return days
	}
	return sp.Words.Say("trip.stop.named", days, place)
}

// shortDates are the days of a stop with short months: "11–17 Jul".
func shortDates(sp heat.Speaker, s record.Stop) string {
	from, ok1 := s.From.Time()
	until, ok2 := s.Until.Time()
	if !ok1 || !ok2 {
		return stopDates(sp, s)
	}
	return sp.ShortSpan(from, until)
}

// who says who travels: the name of one, the number of more.
func who(sp heat.Speaker, crew []*member) string {
	switch len(crew) {
	case 0:
		return sp.Words.Say("trip.nobody")
	case 1:
		return crew[0].athlete.Name
	}
	return sp.Words.Say("trip.travellers", len(crew))
}

// sessionName is what the session of a plan is called.
func sessionName(sp heat.Speaker, p record.Plan, a record.Athlete) string {
	switch {
	case p.Target.SessionName != "":
		return p.Target.SessionName
	case p.Name != "":
		return p.Name
	}
	return desk.SportWord(sp.Words, a.Sport)
}

// minutes is a length of time: "95 min".
func minutes(sp heat.Speaker, x float64) string { return sp.By.Amount(x, quantity.Minute) }

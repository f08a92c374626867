package testsheet

import (
	"math"
	"strings"
	"time"

	"ebbwell/app/kit/field"
	"ebbwell/internal/consult"
	"ebbwell/internal/device"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// The values a device's file can give to a sheet.
const (
	deviceDate        = "date"
	deviceStart       = "start"
	deviceEnd         = "end"
	devicePlayed      = "played"
	devicePower       = "power"
	deviceSpeed       = "speed"
	deviceHeart       = "heart"
	deviceTemperature = "temperature"
)

// offer is one value of a device's file beside what the sheet has.
type offer struct {
	key string
	// day, clock, number or text is the value, by its key; now the one of the sheet.
	day, dayNow       record.Date
	clock, clockNow   record.Clock
	number, numberNow record.Number
	unit              quantity.Unit
	text              string
	nextDay           bool
	// samples is how many readings are in a mean; 0 where the device made it itself.
	samples int
	// filled: the sheet has something there, which the value would change; same: it
	// would not.
	filled, same bool
	// ticked is how it is proposed; doubt says that it is not because of what it is.
	ticked, doubt bool
}

// deviceOffers are the values of a file for a sheet. What is empty on the sheet is
// ticked and what would change a value is not; neither is anything of a file of
// another day. A temperature is never ticked, since it is that of the device, nor a
// speed that is not steady running, which the calculation would take for it, nor a
// note beside one there is.
func deviceOffers(s sheet, f device.Session, zone *time.Location) []offer {
	t := s.Record
	from, to := minuteOf(f.Start, zone), minuteOf(f.End, zone)
	day := record.DateOf(from)
	var list []offer
	if t.Session.Date != day {
		list = append(list, offer{key: deviceDate, day: day, dayNow: t.Session.Date, filled: t.Session.Date != ""})
	}
	list = append(list, clockOffer(deviceStart, record.Clock(from.Format("15:04")), t.Session.Start))
	if nextDay, ok := endsOn(from, to); ok {
		end := clockOffer(deviceEnd, record.Clock(to.Format("15:04")), t.Session.End)
		end.nextDay = nextDay
		end.same = end.same && t.Session.EndsNextDay == nextDay
		list = append(list, end)
	}
	if len(f.Pauses) > 0 {
		played := device.Mean{Value: to.Sub(from).Minutes() - float64(f.Paused()), Known: true}
		list = append(list, meanOffer(devicePlayed, played, quantity.Minute, t.Session.Played))
	}
	add := func(key string, m device.Mean, unit quantity.Unit, now record.Number) {
		if m.Known {
			list = append(list, meanOffer(key, m, unit, now))
		}
	}
	add(devicePower, f.Power, quantity.Watt, t.Session.Power)
	add(deviceSpeed, f.Speed, quantity.KilometrePerHour, t.Session.Speed)
	add(deviceHeart, f.HeartRate, quantity.None, record.Number{})
	add(deviceTemperature, f.Temperature, quantity.DegreeCelsius, t.Air.Temperature)
	for i := range list {
		list[i].propose(s, f, t.Session.Date == "" || t.Session.Date == day)
	}
	return list
}

// propose decides whether a value is ticked.
func (o *offer) propose(s sheet, f device.Session, sameDay bool) {
	switch o.key {
	case deviceTemperature:
		o.doubt = true
	case deviceSpeed:
		o.doubt = !steadyRunning(s.Record.Session.Sport, f)
	case deviceHeart:
		o.filled = strings.TrimSpace(s.Record.Note) != ""
	}
	o.filled = o.filled || s.Raw[o.path()] != ""
	o.ticked = sameDay && !o.filled && !o.same && !o.doubt
}

// path is where the value is kept on the sheet.
func (o offer) path() string {
	return map[string]string{
		deviceDate: "session.date", deviceStart: "session.start", deviceEnd: "session.end", devicePlayed: "session.played",
		devicePower: "session.power", deviceSpeed: "session.speed", deviceHeart: "note", deviceTemperature: "air.temperature",
	}[o.key]
}

// steadyRunning reports whether a mean speed is one of steady running, by the file and
// by the sport on the sheet.
func steadyRunning(code string, f device.Session) bool {
	sport := consult.SportOf(code)
	if f.Parts > 1 || sport.Intermittent {
		return false
	}
	return f.Sport == device.Running || f.Sport == "" && sport.Running
}

// minuteOf is an instant on the clocks of a zone, to the nearest minute.
func minuteOf(at time.Time, zone *time.Location) time.Time { return at.Round(time.Minute).In(zone) }

// endsOn reports whether a session ends on the day after it began; ok is false where
// it ends later than that, which a sheet cannot say.
func endsOn(from, to time.Time) (nextDay, ok bool) {
	begin := time.Date(from.Year(), from.Month(), from.Day(), 0, 0, 0, 0, time.UTC)
	end := time.Date(to.Year(), to.Month(), to.Day(), 0, 0, 0, 0, time.UTC)
	days := int(end.Sub(begin).Hours() / 24)
	return days == 1, days <= 1
}

// clockOffer is a time of day.
func clockOffer(key string, c, now record.Clock) offer {
	return offer{key: key, clock: c, clockNow: now, filled: now != "", same: c == now}
}

// meanOffer is a mean, rounded as such a value is typed.
func meanOffer(key string, m device.Mean, unit quantity.Unit, now record.Number) offer {
	decimals := 0
	if key == deviceSpeed || key == deviceTemperature {
		decimals = 1
	}
	x := quantity.Round(m.Value, decimals)
	return offer{
		key: key, number: record.Num(x, unit), numberNow: now, unit: unit, samples: m.Samples,
		filled: now.Known(), same: now.Known() && math.Abs(*now.Value-x) < 1e-9,
	}
}

// take puts the value on the sheet, as if it had been typed there.
func (o offer) take(s *sheet) {
	t := &s.Record
	switch o.key {
	case deviceDate:
		t.Session.Date = o.day
		delete(s.Raw, o.path())
	case deviceStart:
		t.Session.Start = o.clock
		delete(s.Raw, o.path())
	case deviceEnd:
		t.Session.End, t.Session.EndsNextDay = o.clock, o.nextDay
		delete(s.Raw, o.path())
	case deviceHeart:
		if t.Note = strings.TrimRight(t.Note, "\n "); t.Note != "" {
			t.Note += "\n"
		}
		t.Note += o.text
	default:
		f, ok := record.SheetFieldOf(o.path())
		if !ok {
			return
		}
		s.Put(f.Number(t), o.path(), field.Reading{Value: *o.number.Value, Known: true, Unit: o.unit, State: field.Good})
	}
}

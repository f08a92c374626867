package device

import (
	"encoding/xml"
	"math"
	"time"
)

// tcxLap is a lap as the device sums it up.
type tcxLap struct {
	from    time.Time
	seconds reading
	summary summary
}

// tcx takes the elements of TCX: activities with their laps and the points in them.
// Courses and workouts are no session.
func (r *xmlReader) tcx() {
	r.format = TCX
	var now sample
	var lap tcxLap
	var laps sums
	r.opened = func(name string, attrs []xml.Attr) (err error) {
		switch {
		case name == "Activity":
			r.parts++
			r.sportWord(attribute(attrs, "Sport"))
		case name == "Trackpoint":
			now = sample{}
		case name == "Lap" && r.in("Activity"):
			lap = tcxLap{}
			if start := attribute(attrs, "StartTime"); start != "" {
				lap.from, err = r.instant("StartTime", start)
			}
		}
		return err
	}
	r.closed = func(name, text string) error {
		switch {
		case !r.in("Activity"):
			return nil
		case name == "Trackpoint":
			if now.at.IsZero() {
				r.untimed = true
				return nil
			}
			if !now.lat.known || !now.long.known {
				now.lat, now.long = reading{}, reading{}
			}
			return r.add(now)
		case r.in("Trackpoint"):
			return r.tcxReading(&now, name, text)
		case name == "Lap":
			laps.add(lap.summary, lap.length().Seconds())
			r.summary = laps.summary()
			if !lap.from.IsZero() {
				r.spans = append(r.spans, Pause{lap.from, lap.from.Add(lap.length())})
			}
			return nil
		}
		return r.lapReading(&lap, name, text)
	}
}

// attribute is an attribute's text.
func attribute(attrs []xml.Attr, name string) string {
	for _, a := range attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// tcxReading takes what stands in a point.
func (r *xmlReader) tcxReading(s *sample, name, text string) (err error) {
	switch {
	case name == "Time":
		s.at, err = r.instant(name, text)
	case name == "DistanceMeters":
		s.way, err = r.value(name, text)
	case name == "Value" && r.parent() == "HeartRateBpm":
		s.heart, err = r.value(name, text)
	case name == "Speed":
		s.speed, err = r.value(name, text)
	case name == "Watts":
		s.power, err = r.value(name, text)
	case name == "LatitudeDegrees":
		s.lat, err = r.angle(name, text, 90)
	case name == "LongitudeDegrees":
		s.long, err = r.angle(name, text, 180)
	}
	return err
}

// angle reads one of the two that make a position.
func (r *xmlReader) angle(name, text string, most float64) (reading, error) {
	x, err := r.value(name, text)
	if err == nil && math.Abs(x.value) > most {
		return reading{}, r.unreadable(name, text)
	}
	return x, err
}

// lapReading takes what a lap says of itself.
func (r *xmlReader) lapReading(lap *tcxLap, name, text string) (err error) {
	switch {
	case name == "TotalTimeSeconds":
		lap.seconds, err = r.value(name, text)
	case name == "DistanceMeters":
		lap.summary.way, err = r.value(name, text)
	case name == "Value" && r.parent() == "AverageHeartRateBpm":
		lap.summary.heart, err = r.value(name, text)
	case name == "AvgSpeed":
		lap.summary.speed, err = r.value(name, text)
	case name == "AvgWatts":
		lap.summary.power, err = r.value(name, text)
	}
	return err
}

// length is how long a lap took.
func (l tcxLap) length() time.Duration {
	return time.Duration(min(max(0, l.seconds.value), longest.Seconds()) * float64(time.Second))
}

package device

import (
	"encoding/xml"
	"math"
	"strings"
)

// gpx takes the elements of GPX: the points of tracks with their times, and beside
// them what devices add in extensions. Routes and single places are no session.
func (r *xmlReader) gpx() {
	r.format = GPX
	var now sample
	r.opened = func(name string, attrs []xml.Attr) (err error) {
		switch name {
		case "trk":
			r.parts++
		case "trkpt":
			now, err = r.position(attrs)
		}
		return err
	}
	r.closed = func(name, text string) error {
		switch {
		case name == "type" && r.parent() == "trk":
			r.sportWord(text)
		case name == "trkpt":
			if now.at.IsZero() {
				r.untimed = true
				return nil
			}
			return r.add(now)
		case r.in("trkpt"):
			return r.gpxReading(&now, name, text)
		}
		return nil
	}
}

// position reads where a point is.
func (r *xmlReader) position(attrs []xml.Attr) (s sample, err error) {
	for _, a := range attrs {
		var of *reading
		most := 90.0
		switch a.Name.Local {
		case "lat":
			of = &s.lat
		case "lon":
			of, most = &s.long, 180
		default:
			continue
		}
		if *of, err = r.value(a.Name.Local, strings.TrimSpace(a.Value)); err != nil {
			return s, err
		}
		if math.Abs(of.value) > most {
			return s, r.unreadable(a.Name.Local, a.Value)
		}
	}
	if !s.lat.known || !s.long.known {
		s.lat, s.long = reading{}, reading{}
	}
	return s, nil
}

// gpxReading takes what stands in a point.
func (r *xmlReader) gpxReading(s *sample, name, text string) (err error) {
	switch name {
	case "time":
		if r.parent() == "trkpt" {
			s.at, err = r.instant(name, text)
		}
	case "hr":
		s.heart, err = r.value(name, text)
	case "atemp":
		s.temperature, err = r.value(name, text)
	case "speed":
		s.speed, err = r.value(name, text)
	case "power", "PowerInWatts":
		s.power, err = r.value(name, text)
	}
	return err
}

// sportWord takes the sport of a part as a word; two that differ are neither.
func (r *xmlReader) sportWord(text string) {
	var s Sport
	switch word := strings.ToLower(text); {
	case strings.Contains(word, "run"):
		s = Running
	case strings.Contains(word, "cycl"), strings.Contains(word, "bik"):
		s = Cycling
	}
	if r.parts > 1 && r.sport != s {
		s = ""
	}
	r.sport = s
}

package athlete

import (
	"strings"
	"time"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// speaker words what is shown, in the practice's language and units. Where body
// mass is hidden it speaks of litres only.
type speaker struct {
	w   *words.Words
	by  amount.Writer
	now time.Time
}

// speakerFor is the speaker for an athlete on the practice's screens.
func speakerFor(d *desk.Desk, hidden bool) speaker {
	us := d.Practice().Settings.Units == "us"
	return speaker{w: d.Words, by: amount.Writer{Words: d.Words, US: us, Hidden: hidden}, now: d.Now()}
}

func (sp speaker) say(key string, args ...any) string { return sp.w.Say(key, args...) }

// day writes a day; the year is left out where it is this one.
func (sp speaker) day(d record.Date) string {
	t, ok := d.Time()
	switch {
	case !ok:
		return sp.say("overview.undated")
	case t.Year() == sp.now.Year():
		return sp.w.Day(t)
	}
	return sp.w.Date(t)
}

// who is the ending of the keys that speak of a person.
func who(s record.Sex) string {
	if s == record.Female || s == record.Male {
		return string(s)
	}
	return "athlete"
}

// flags names conditions.
func (sp speaker) flags(kinds []record.FlagKind) string {
	var names []string
	for _, k := range kinds {
		names = append(names, sp.say("flag."+string(k)+".name"))
	}
	return strings.Join(names, ", ")
}

// purposes names in short what consents are for.
func (sp speaker) purposes(list []record.Purpose) string {
	var names []string
	for _, p := range list {
		names = append(names, sp.say("overview.purpose."+string(p)))
	}
	return strings.Join(names, ", ")
}

// planName is what a plan is called: its own name, else its session's.
func (sp speaker) planName(p record.Plan) string {
	switch {
	case p.Name != "":
		return p.Name
	case p.Target.SessionName != "":
		return p.Target.SessionName
	}
	return sp.say("overview.plan")
}

// tripName is what a trip is called.
func (sp speaker) tripName(t record.Trip) string {
	if t.Name != "" {
		return t.Name
	}
	return sp.say("overview.trip")
}

// degrees writes a temperature in whole degrees.
func (sp speaker) degrees(n record.Number) string {
	u := sp.by.Unit(quantity.DegreeCelsius)
	t, err := quantity.Convert(n.Or(0), quantity.DegreeCelsius, u)
	if err != nil {
		return ""
	}
	return sp.w.Number(t, 0) + "\u00a0" + string(u)
}

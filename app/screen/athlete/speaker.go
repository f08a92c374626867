package athlete

import (
	"ebbwell/app/kit/amount"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// speaker words what is shown.
type speaker struct{ amount.Speaker }

// shortDate writes a day as beside a dot or in a list: a year only when it is not
// this one.
func (sp speaker) shortDate(d record.Date) string {
	t, ok := d.Time()
	switch {
	case !ok:
		return sp.Say("overview.undated")
	}
	return sp.Words.ShortDate(t, sp.Today)
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
		names = append(names, sp.Say("flag."+string(k)+".name"))
	}
	return sp.Words.Commas(names)
}

// purposes names in short what consents are for.
func (sp speaker) purposes(list []record.Purpose) string {
	var names []string
	for _, p := range list {
		names = append(names, sp.Say("overview.purpose."+string(p)))
	}
	return sp.Words.Commas(names)
}

// planName is what a plan is called: its own name, else its session's.
func (sp speaker) planName(p record.Plan) string {
	switch {
	case p.Name != "":
		return p.Name
	case p.Target.SessionName != "":
		return p.Target.SessionName
	}
	return sp.Say("overview.plan")
}

// draftName is what a draft is called: with the day it was begun where another draft
// has the same name.
func (sp speaker) draftName(f file, p record.Plan) string {
	name := sp.planName(p)
	for _, other := range f.plans {
		if other.ID != p.ID && other.State == record.PlanDraft && sp.planName(other) == name {
			return sp.Say("overview.due.draft.begun", name, sp.shortDate(record.DateOf(p.CreatedAt.In(f.now.Location()))))
		}
	}
	return name
}

// tripName is what a trip is called.
func (sp speaker) tripName(t record.Trip) string {
	if t.Name != "" {
		return t.Name
	}
	return sp.Say("overview.trip")
}

// degrees writes a temperature in whole degrees.
func (sp speaker) degrees(n record.Number) string {
	u := sp.By.Unit(quantity.DegreeCelsius)
	t, err := quantity.Convert(n.Or(0), quantity.DegreeCelsius, u)
	if err != nil {
		return ""
	}
	return sp.Words.Number(t, 0) + "\u00a0" + string(u)
}

package desk

import (
	"strings"

	"ebbwell/internal/care"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Facts are what stands beside an athlete's name on every screen: age, sport,
// and usual mass where it may be seen. What must be known stands beside them as
// alerts.
type Facts struct {
	age, sport, position, mass string
}

// FactsOf are the facts of an athlete today, in the practice's units.
func (d *Desk) FactsOf(a record.Athlete) Facts {
	w, care := d.Words, care.Of(a, d.Now())
	f := Facts{sport: SportWord(w, a.Sport), position: a.Position}
	if years, ok := a.Age(d.Now()); ok {
		f.age = w.Number(float64(years), 0)
	}
	if a.UsualMass.Known() && !care.MassHidden {
		u := d.Speaker(false).By.Unit(quantity.Kilogram)
		if x, err := quantity.Convert(*a.UsualMass.Value, quantity.Kilogram, u); err == nil {
			f.mass = w.Number(x, 1) + "\u00a0" + string(u)
		}
	}
	return f
}

// WithoutMass are the facts without the body mass.
func (f Facts) WithoutMass() Facts {
	f.mass = ""
	return f
}

// Full is everything, Short leaves the position out: for a narrow window.
func (f Facts) Full() string {
	return joined(" · ", f.age, joined(", ", f.sport, f.position), f.mass)
}

// Short is [Facts.Full] without the position.
func (f Facts) Short() string { return joined(" · ", f.age, f.sport, f.mass) }

// AthleteHead is the head of a screen of an athlete's.
func AthleteHead(a record.Athlete, tab Screen, f Facts) Head {
	return Head{Title: a.Name, Under: f.Full(), Short: f.Short(), Athlete: a.ID, Tab: tab}
}

// joined puts together what there is.
func joined(between string, parts ...string) string {
	var list []string
	for _, p := range parts {
		if p != "" {
			list = append(list, p)
		}
	}
	return strings.Join(list, between)
}

package desk

import (
	"strings"

	"ebbwell/internal/care"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// Facts are what stands beside an athlete's name on every screen: age, sport,
// usual mass where it may be seen, and what must be known.
type Facts struct {
	age, sport, position, mass, flags string
}

// FactsOf are the facts of an athlete today, in the practice's units.
func (d *Desk) FactsOf(a record.Athlete) Facts {
	w, care := d.Words, care.Of(a, d.Now())
	f := Facts{sport: SportWord(w, a.Sport), position: a.Position, flags: flagWords(w, care.Flags)}
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

// WithoutFlags are the facts without the conditions: screens that are worked on
// with the athlete beside do not name them in the head.
func (f Facts) WithoutFlags() Facts {
	f.flags = ""
	return f
}

// WithoutMass are the facts without the body mass.
func (f Facts) WithoutMass() Facts {
	f.mass = ""
	return f
}

// Full is everything, Short leaves the position out: for a narrow window.
func (f Facts) Full() string {
	return joined(" · ", f.age, joined(", ", f.sport, f.position), f.mass, f.flags)
}

// Short is [Facts.Full] without the position.
func (f Facts) Short() string { return joined(" · ", f.age, f.sport, f.mass, f.flags) }

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

// flagWords names conditions.
func flagWords(w *words.Words, kinds []record.FlagKind) string {
	var names []string
	for _, k := range kinds {
		names = append(names, w.Say("flag."+string(k)+".name"))
	}
	return strings.Join(names, ", ")
}

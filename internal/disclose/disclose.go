// Package disclose says what of a practice's records may be given to whom: to the
// athlete they are about, or to a coach. Who did not consent to sharing is not given
// to a coach; body mass that is hidden is given to neither; nobody is given what is
// about others. What is left out is listed, so that it can be said.
package disclose

import (
	"slices"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/exchange"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// Audience is who is given records.
type Audience string

// Who can be given records.
const (
	// ToAthlete: the athlete alone, who may always have what is kept of them.
	ToAthlete Audience = "athlete"
	// ToCoach: the coach or the team, of those who consented to it.
	ToCoach Audience = "coach"
)

// Kind is a sort of what is left out. Its sentences are in the catalogue of texts
// under "give.left.<kind>".
type Kind string

// What is left out.
const (
	// NoConsent: athletes who have not consented to sharing.
	NoConsent Kind = "consent"
	// HiddenMass: body mass, and all it could be worked out from, of those for whom
	// it is hidden.
	HiddenMass Kind = "mass"
	// MassInText: texts that may tell a hidden body mass.
	MassInText Kind = "text"
	// PagesWithMass: kept pages from a time when the mass was not hidden.
	PagesWithMass Kind = "pages"
	// Others: other athletes of a shared session or trip.
	Others Kind = "others"
	// Medical: conditions, medicines, consents, urine, how the athlete felt.
	Medical Kind = "medical"
	// Notes: what was written in free words.
	Notes Kind = "notes"
)

// Omission is one sort of thing that was left out.
type Omission struct {
	Kind Kind
	// Count of athletes, texts, pages or rows; 0 where it is not counted.
	Count int
	// Athletes it is about, for the practitioner's eyes only.
	Athletes []record.ID
}

// Given is what may be given.
type Given struct {
	Records exchange.Records
	Left    []Omission
}

// Of picks what some athletes' records may be given of. all is what the practice
// keeps; who are the athletes; today decides which consents hold and whose mass is
// hidden.
func Of(all exchange.Records, who []record.ID, to Audience, today time.Time) Given {
	p := picking{all: all, to: to, today: today, in: map[record.ID]bool{}}
	for _, a := range all.Athletes {
		if slices.Contains(who, a.ID) {
			p.pick(a)
		}
	}
	p.shared()
	p.products()
	g := Given{Records: p.out}
	for _, o := range []Omission{p.refused, p.hidden, p.inText, p.others} {
		if o.Kind != "" {
			g.Left = append(g.Left, o)
		}
	}
	if to == ToCoach && len(p.in) > 0 {
		g.Left = append(g.Left, Omission{Kind: Medical}, Omission{Kind: Notes})
	}
	return g
}

// Results are the results that may be given: of the tests that are, and of nobody
// whose mass is hidden, since a deficit and its share of the mass tell it.
func (g Given) Results(all exchange.Results) exchange.Results {
	hidden := map[record.ID]bool{}
	for _, o := range g.Left {
		for _, id := range o.Athletes {
			hidden[id] = hidden[id] || o.Kind == HiddenMass
		}
	}
	given := map[record.ID]bool{}
	for _, t := range g.Records.Tests {
		given[t.ID] = !hidden[t.AthleteID]
	}
	return slices.DeleteFunc(slices.Clone(all), func(r exchange.Result) bool { return !given[r.TestID] })
}

// picking is such a choice on its way.
type picking struct {
	all   exchange.Records
	to    Audience
	today time.Time
	// in are the athletes who are given.
	in  map[record.ID]bool
	out exchange.Records

	refused, hidden, inText, others Omission
}

// add counts one more, of an athlete where it is one's.
func (o *Omission) add(k Kind, n int, of record.ID) {
	if n == 0 {
		return
	}
	o.Kind = k
	o.Count += n
	if of != "" {
		o.Athletes = append(o.Athletes, of)
	}
}

// pick takes one athlete with tests and plans, or leaves them out.
func (p *picking) pick(a record.Athlete) {
	if p.to == ToCoach && !squad.Shares(a, record.DateOf(p.today)) {
		p.refused.add(NoConsent, 1, a.ID)
		return
	}
	p.in[a.ID] = true
	one := person{athlete: a.Clone()}
	for _, t := range p.all.Tests {
		if t.AthleteID == a.ID {
			one.tests = append(one.tests, t.Clone())
		}
	}
	for _, plan := range p.all.Plans {
		if plan.AthleteID == a.ID {
			one.plans = append(one.plans, plan.Clone())
		}
	}
	masses := one.masses()
	if p.to == ToCoach {
		one.withoutMedical()
		one.withoutNotes()
	}
	if care.MassHidden(a, p.today) {
		p.hidden.add(HiddenMass, 1, a.ID)
		one.withoutMass()
		p.inText.add(MassInText, one.withoutTexts(masses), a.ID)
	}
	p.out.Athletes = append(p.out.Athletes, one.athlete)
	p.out.Tests, p.out.Plans = append(p.out.Tests, one.tests...), append(p.out.Plans, one.plans...)
}

// shared takes the groups, sessions and trips of those who are given, with nobody
// else in them.
func (p *picking) shared() {
	for _, g := range p.all.Groups {
		if slices.ContainsFunc(p.out.Athletes, func(a record.Athlete) bool {
			return slices.ContainsFunc(a.Memberships, func(m record.Membership) bool { return m.GroupID == g.ID })
		}) {
			p.out.Groups = append(p.out.Groups, g)
		}
	}
	for _, s := range p.all.Sessions {
		s = s.Clone()
		n := len(s.Members)
		s.Members = slices.DeleteFunc(s.Members, func(m record.Member) bool { return !p.in[m.AthleteID] })
		if len(s.Members) == 0 {
			continue
		}
		if slices.ContainsFunc(s.Members, func(m record.Member) bool { return slices.Contains(p.hidden.Athletes, m.AthleteID) }) {
			s.Session.Energy, s.Session.Power = record.Number{}, record.Number{}
		}
		p.others.add(Others, n-len(s.Members), "")
		p.out.Sessions = append(p.out.Sessions, s)
	}
	for _, t := range p.all.Trips {
		t = t.Clone()
		n := len(t.Travellers)
		t.Travellers = slices.DeleteFunc(t.Travellers, func(m record.Traveller) bool { return !p.in[m.AthleteID] })
		if len(t.Travellers) == 0 {
			continue
		}
		if p.to == ToCoach || len(p.hidden.Athletes) > 0 {
			withoutStopNotes(t.Stops)
		}
		p.others.add(Others, n-len(t.Travellers), "")
		p.out.Trips = append(p.out.Trips, t)
	}
}

// withoutStopNotes empties what was written about the stops of a trip, which may be
// about anybody on it.
func withoutStopNotes(stops []record.Stop) {
	for i := range stops {
		stops[i].Note = ""
	}
}

// products takes the products that what is given names.
func (p *picking) products() {
	named := map[record.ID]bool{}
	for _, a := range p.out.Athletes {
		named[a.Habit.DrinkID], named[a.Habit.FoodID] = true, true
	}
	for _, t := range p.out.Tests {
		for _, b := range t.Bottles {
			named[b.ProductID] = true
		}
		for _, f := range t.Foods {
			named[f.ProductID] = true
		}
	}
	for _, plan := range p.out.Plans {
		for _, o := range plan.Options {
			for _, i := range o.Items {
				named[i.ProductID] = true
			}
		}
	}
	for _, s := range p.out.Sessions {
		for _, b := range s.Bottles {
			named[b.ProductID] = true
		}
	}
	for _, t := range p.out.Trips {
		for _, s := range t.Supplies {
			named[s.ProductID] = true
		}
	}
	delete(named, "")
	for _, one := range p.all.Products {
		if named[one.ID] || named[record.ID(one.Replaces)] {
			p.out.Products = append(p.out.Products, one)
		}
	}
}

package giving

import (
	"context"
	"fmt"
	"slices"
	"time"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/care"
	"ebbwell/internal/disclose"
	"ebbwell/internal/exchange"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
	"ebbwell/internal/store"
)

// form is how the tables are written.
type form string

// The forms.
const (
	formCSV  form = "csv"
	formBook form = "xlsx"
	formJSON form = "json"
)

// toColleague: another practice, which goes on with the athlete; all of it, in a file
// that is locked.
const toColleague disclose.Audience = "colleague"

// everyone stands for all athletes in the choice of a group.
const everyone = "everyone"

// state is what is to be given, without anything drawn.
type state struct {
	// one is the athlete; nil for a group.
	one *record.Athlete
	// people and groups are those a group is chosen from; group is its id, or
	// everyone.
	people []store.Person
	groups []record.Group
	group  string

	to    disclose.Audience
	form  form
	pages bool
	// prints are the kept pages of the one athlete that may be given, withheld how
	// many may show a mass that is hidden now.
	prints   []record.Print
	withheld int
}

// load reads who can be given records of.
func load(ctx context.Context, d *desk.Desk, athlete record.ID) (state, error) {
	s := state{to: disclose.ToCoach, form: formCSV, group: everyone}
	if athlete == "" {
		var err error
		if s.people, err = d.Store.People(ctx); err != nil {
			return s, fmt.Errorf("list the athletes: %w", err)
		}
		if s.groups, err = d.Store.Groups(ctx); err != nil {
			return s, fmt.Errorf("list the groups: %w", err)
		}
		return s, nil
	}
	a, err := d.Store.LoadAthlete(ctx, athlete)
	if err != nil {
		return s, fmt.Errorf("open an athlete's records: %w", err)
	}
	s.one, s.to, s.pages = &a, disclose.ToAthlete, true
	list, err := d.Store.PrintsOf(ctx, athlete)
	if err != nil {
		return s, fmt.Errorf("list an athlete's pages: %w", err)
	}
	return s, s.sort(ctx, d, list)
}

// sort parts the kept pages into those that may be given and those that may not.
func (s *state) sort(ctx context.Context, d *desk.Desk, list []record.Print) error {
	s.prints, s.withheld = list, 0
	if !care.MassHidden(*s.one, d.Now()) {
		return nil
	}
	changes, err := d.Store.History(ctx, record.Ref{Kind: record.KindAthlete, ID: s.one.ID})
	if err != nil {
		return fmt.Errorf("read what was hidden when: %w", err)
	}
	s.prints = slices.DeleteFunc(slices.Clone(list), func(p record.Print) bool { return care.MassSeen(*s.one, changes, p.At) })
	s.withheld = len(list) - len(s.prints)
	return nil
}

// who lists the athletes whose records are asked for.
func (s state) who() []record.ID {
	if s.one != nil {
		return []record.ID{s.one.ID}
	}
	name := ""
	for _, g := range s.groups {
		if string(g.ID) == s.group {
			name = g.Name
		}
	}
	var ids []record.ID
	for _, p := range s.people {
		if s.group == everyone || slices.Contains(p.Groups, name) {
			ids = append(ids, p.ID)
		}
	}
	return ids
}

// about are the athletes a file is said to be of.
func (s state) about() []record.ID {
	if s.one == nil && s.group == everyone {
		return []record.ID{store.Everyone}
	}
	return s.who()
}

// mayShare reports whether the one athlete consented to sharing with the coach.
func (s state) mayShare(now time.Time) bool { return squad.Shares(*s.one, record.DateOf(now)) }

// withPages reports whether kept pages are put in: only into what the athlete gets.
func (s state) withPages() bool { return s.one != nil && s.pages && s.to == disclose.ToAthlete }

// pick picks what may be given: to a colleague all of it.
func (s state) pick(ctx context.Context, d *desk.Desk) (disclose.Given, error) {
	who := s.who()
	all, err := d.RecordsOf(ctx, who)
	if err != nil {
		return disclose.Given{}, err
	}
	if s.to == toColleague {
		return disclose.Given{Records: all}, nil
	}
	g := disclose.Of(all, who, s.to, d.Now())
	if s.withPages() && s.withheld > 0 {
		g.Left = append(g.Left, disclose.Omission{Kind: disclose.PagesWithMass, Count: s.withheld})
	}
	return g, nil
}

// counts are how much is given, for the sentence that says it.
func counts(r exchange.Records) (athletes, tests, plans int) {
	return len(r.Athletes), len(r.Tests), len(r.Plans)
}

package squad

import (
	"context"
	"fmt"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/care"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
	"ebbwell/internal/store"
)

// Today is the shared session of today, the one begun last; empty where there is
// none.
func Today(d *desk.Desk) (record.ID, error) {
	list, err := d.Store.GroupSessions(context.Background())
	if err != nil {
		return "", fmt.Errorf("look for today's session: %w", err)
	}
	for _, g := range list {
		if g.Session.Date == d.Today() {
			return g.ID, nil
		}
	}
	return "", nil
}

// people are the athletes of a session, with what does not change while it is open.
type people struct {
	athletes map[record.ID]record.Athlete // by id of their test
	earlier  map[record.ID]squad.Sheet    // by id of their test: athlete and earlier tests
}

// load loads a session with the sheets of its members.
func load(d *desk.Desk, id record.ID) (day, people, error) {
	ctx := context.Background()
	who := people{map[record.ID]record.Athlete{}, map[record.ID]squad.Sheet{}}
	g, err := d.Store.LoadGroupSession(ctx, id)
	if err != nil {
		return day{}, who, fmt.Errorf("open the session: %w", err)
	}
	var tests []record.ID
	for _, m := range g.Members {
		tests = append(tests, m.TestID)
	}
	sheets, err := d.Store.Sheets(ctx, tests)
	if err != nil {
		return day{}, who, fmt.Errorf("open the sheets of the session: %w", err)
	}
	now := day{g, map[record.ID]*stamped{}}
	for i, s := range sheets {
		if s.Athlete.ID == "" {
			continue // deleted
		}
		one := &stamped{sheet{Record: s.Test, Raw: map[string]string{}, Reasons: map[string]string{}}, i + 1}
		for _, t := range s.Raw {
			if t.Reason {
				one.Reasons[t.Field] = t.Text
			} else {
				one.Raw[t.Field] = t.Text
			}
		}
		now.sheets[s.Test.ID] = one
		if err := who.add(d, s.Athlete, s.Test.ID); err != nil {
			return day{}, who, err
		}
	}
	return now, who, nil
}

// add takes an athlete in with the earlier tests.
func (p people) add(d *desk.Desk, a record.Athlete, test record.ID) error {
	earlier, err := d.AllFindings(context.Background(), a)
	if err != nil {
		return fmt.Errorf("open the session: %w", err)
	}
	p.athletes[test], p.earlier[test] = a, squad.Sheet{Athlete: a, Earlier: earlier}
	return nil
}

// sheetsOf are the sheets of a day as package squad takes them.
func (p people) sheetsOf(now day) map[record.ID]squad.Sheet {
	all := make(map[record.ID]squad.Sheet, len(now.sheets))
	for id, s := range now.sheets {
		one := p.earlier[id]
		one.Test, one.Stamp = s.Record, s.stamp
		one.Raw = s.Texts(record.Ref{Kind: record.KindTest, ID: id})
		all[id] = one
	}
	return all
}

// Begin begins a session of today with some athletes, as an earlier session was, and
// returns its id. Who is not settled yet stays out, by name.
func Begin(d *desk.Desk, last record.GroupSession, name string, athletes []record.Athlete) (id record.ID, left []string, err error) {
	g := squad.Begin(last, name, d.Now())
	q := store.Squad{}
	for _, a := range athletes {
		if len(care.Of(a, d.Now()).Outstanding) > 0 {
			left = append(left, a.Name)
			continue
		}
		t := squad.NewSheet(g, a, d.Now())
		q.Tests = append(q.Tests, t)
		g.Members = append(g.Members, memberOf(a, t, len(g.Members)))
	}
	q.Session = g
	saved, err := d.Store.SaveSquad(context.Background(), q, store.Edit{})
	if err != nil {
		return "", left, fmt.Errorf("begin a session: %w", err)
	}
	return saved.Session.ID, left, nil
}

// memberOf is an athlete's place behind n others.
func memberOf(a record.Athlete, t record.Test, n int) record.Member {
	return record.Member{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, TestID: t.ID, Order: n + 1}
}

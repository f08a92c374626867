package tables

import (
	"fmt"
	"slices"

	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/exchange"
	"ebbwell/internal/record"
)

// Own is what was read of a file that this program wrote, as far as an import takes
// it: athletes, tests and groups, and with them plans, trips and the products these name.
// Sessions of a group stay in the file.
type Own struct {
	athletes []record.Athlete
	tests    []record.Test
	groups   []record.Group
	plans    []record.Plan
	trips    []record.Trip
	products []record.Product
	faults   []exchange.Fault
}

// OpenOwn reads a file of this program; nil for another file. The error is
// [ErrNotTable], with why behind it.
func OpenOwn(data []byte) (*Own, error) {
	r, faults, own, err := exchange.ReadOwn(data)
	if err != nil {
		return nil, fmt.Errorf("%w: read an export: %w", ErrNotTable, err)
	}
	if !own {
		return nil, nil
	}
	return &Own{athletes: r.Athletes, tests: r.Tests, groups: r.Groups, plans: r.Plans, trips: r.Trips, products: r.Products, faults: faults}, nil
}

// Mentions are the athletes the file speaks of.
func (o *Own) Mentions() Mentioned {
	about := Mentioned{Names: map[string]bool{}}
	for _, a := range o.athletes {
		about.Names[NameKey(a.Name)] = true
	}
	return about
}

// Place says where a fault of a draft of this file is: table, row and column; false
// where the fault is of no cell.
func (o *Own) Place(f Fault) (exchange.Fault, bool) {
	if f.Column < 0 || f.Column >= len(o.faults) {
		return exchange.Fault{}, false
	}
	return o.faults[f.Column], true
}

// Draft is what the file adds to what is known. Rows count athletes, then tests. A
// fault's Column counts the faults of the file; [Own.Place] says where it is.
func (o *Own) Draft(k Known, d consult.Setup, today record.Date) Draft {
	out := Draft{Kind: record.ImportRecords, People: map[record.ID]record.ID{}, Sheets: map[record.ID]record.ID{}, Present: map[record.ID]bool{}}
	for i, f := range o.faults {
		code := FaultOwn
		switch f.Kind {
		case exchange.FaultNumber:
			code = FaultNumber
		case exchange.FaultDay:
			code = FaultDay
		case exchange.FaultClock:
			code = FaultClock
		}
		out.Faults = append(out.Faults, Fault{Row: -1, Column: i, Cell: f.Cell, Code: code})
	}
	people := map[record.ID]RowDraft{}
	for i, a := range o.athletes {
		row := RowDraft{Row: i, Athlete: a, Twin: Twin{Row: -1}}
		if kept := k.person(a); kept != nil {
			row.Athlete, row.Existing = *kept, true
		} else if k.Gone[a.ID] {
			row.Athlete = a.Anew()
			row.Athlete.ID = record.NewID()
		}
		people[a.ID], out.People[a.ID] = row, row.Athlete.ID
		out.Present[row.Athlete.ID] = row.Existing
		if !row.Existing {
			out.Rows = append(out.Rows, row)
		}
	}
	for i, t := range o.tests {
		row, ok := people[t.AthleteID]
		if !ok {
			continue // of an athlete who was left out of the file
		}
		row.Row = len(o.athletes) + i
		row.Twin = Twin{Kept: k.has(t, row.Athlete.ID), Row: -1}
		out.Sheets[t.ID], out.Present[t.ID] = t.ID, k.TestIDs[t.ID]
		if k.TestIDs[t.ID] {
			t = t.Anew()
		}
		t.AthleteID = row.Athlete.ID
		out.Questions = append(out.Questions, limited(&t, row, today)...)
		if consult.Gained(consult.Find(t, row.Athlete, nil, d)) {
			out.Questions = append(out.Questions, Question{Row: -1, Column: -1, Cell: row.Athlete.Name, Code: QuestionGain})
		}
		row.Test = &t
		out.Rows = append(out.Rows, row)
	}
	SortQuestions(out.Questions)
	return out
}

// limited asks about every value beyond its limits; a closed sheet with one is opened,
// so that it is mended or kept with a reason as a typed one is.
func limited(t *record.Test, r RowDraft, today record.Date) []Question {
	var list []Question
	on, _ := today.Time()
	hidden := care.MassHidden(r.Athlete, on)
	for _, e := range consult.Entries(*t) {
		if !e.Number.Known() {
			continue
		}
		if p := evidence.Check(e.Field, e.Item, *e.Number.Value); p != nil && p.Severity == evidence.Refuses {
			list = append(list, Question{Row: -1, Column: -1, Cell: r.Athlete.Name, Code: QuestionSheet, Problem: *p, Hidden: hidden})
			t.State, t.ClosedAt, t.ClosedBy = record.TestOpen, nil, ""
		}
	}
	return list
}

// person finds an athlete among the known: by the id, else by name and birth date.
func (k Known) person(a record.Athlete) *record.Athlete {
	for i := range k.Athletes {
		if k.Athletes[i].ID == a.ID {
			return &k.Athletes[i]
		}
	}
	for i := range k.Athletes {
		other := k.Athletes[i]
		if a.Name != "" && NameKey(other.Name) == NameKey(a.Name) && other.Born == a.Born {
			return &k.Athletes[i]
		}
	}
	return nil
}

// has reports whether a test is kept already: by its id, or the same moment of the same
// athlete.
func (k Known) has(t record.Test, who record.ID) bool {
	return k.TestIDs[t.ID] || slices.Contains(k.Tests, KnownTest{Athlete: who, Date: t.Session.Date, Start: t.Session.Start})
}

// Grouped gives athletes the groups of the practice that have the names of theirs, and
// returns the groups that are new.
func (o *Own) Grouped(athletes []record.Athlete, kept []record.Group) ([]record.Group, []record.Athlete) {
	to, fresh := map[record.ID]record.ID{}, map[record.ID]record.Group{}
	for _, g := range o.groups {
		to[g.ID], fresh[g.ID] = g.ID, g
		for _, k := range kept {
			if k.ID == g.ID || k.Name == g.Name {
				to[g.ID] = k.ID
				delete(fresh, g.ID)
			}
		}
	}
	var groups []record.Group
	out := slices.Clone(athletes)
	for i := range out {
		out[i].Memberships = slices.DeleteFunc(slices.Clone(out[i].Memberships), func(m record.Membership) bool { return to[m.GroupID] == "" })
		for j, m := range out[i].Memberships {
			if g, ok := fresh[m.GroupID]; ok {
				groups = append(groups, g)
				delete(fresh, m.GroupID)
			}
			out[i].Memberships[j].GroupID = to[m.GroupID]
		}
	}
	return groups, out
}

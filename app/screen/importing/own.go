package importing

import (
	"fmt"
	"slices"

	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/exchange"
	"ebbwell/internal/record"
	"ebbwell/internal/tables"
)

// faultOwn is a cell of one of this program's own tables that does not belong there.
const faultOwn tables.FaultCode = "own"

// ownFile is what was read of a file that this program wrote: athletes, tests and
// groups are taken; plans, trips, sessions and products stay in the file.
type ownFile struct {
	records exchange.Records
	faults  []exchange.Fault
}

// readOwn reads a file of this program; nil for another file.
func readOwn(data []byte) (*ownFile, error) {
	r, faults, own, err := exchange.ReadOwn(data)
	if err != nil {
		return nil, fmt.Errorf("%w: read an export: %w", tables.ErrNotTable, err)
	}
	if !own {
		return nil, nil
	}
	return &ownFile{records: r, faults: faults}, nil
}

// place says where a fault is: table and row, column.
func (o *ownFile) place(f tables.Fault) (row, column string) {
	if f.Column < 0 || f.Column >= len(o.faults) {
		return "", ""
	}
	at := o.faults[f.Column]
	return fmt.Sprint(at.Row + 1), at.Table + " · " + at.Column
}

// draft is what the file adds to what is known. Rows count athletes, then tests.
func (o *ownFile) draft(k *known, d consult.Setup, today record.Date) tables.Draft {
	out := tables.Draft{Kind: record.ImportRecords}
	for i, f := range o.faults {
		code := faultOwn
		switch f.Kind {
		case exchange.FaultNumber:
			code = tables.FaultNumber
		case exchange.FaultDay:
			code = tables.FaultDay
		case exchange.FaultClock:
			code = tables.FaultClock
		}
		out.Faults = append(out.Faults, tables.Fault{Row: -1, Column: i, Cell: f.Cell, Code: code})
	}
	people := map[record.ID]tables.RowDraft{}
	for i, a := range o.records.Athletes {
		row := tables.RowDraft{Row: i, Athlete: a, Twin: tables.Twin{Row: -1}}
		if kept := k.person(a); kept != nil {
			row.Athlete, row.Existing = *kept, true
		} else if k.gone[a.ID] {
			row.Athlete = a.Anew()
			row.Athlete.ID = record.NewID()
		}
		people[a.ID] = row
		if !row.Existing {
			out.Rows = append(out.Rows, row)
		}
	}
	for i, t := range o.records.Tests {
		row, ok := people[t.AthleteID]
		if !ok {
			continue // of an athlete who was left out of the file
		}
		row.Row = len(o.records.Athletes) + i
		row.Twin = tables.Twin{Kept: k.has(t, row.Athlete.ID), Row: -1}
		if k.tests[t.ID] {
			t = t.Anew()
		}
		t.AthleteID = row.Athlete.ID
		out.Questions = append(out.Questions, limited(&t, row, today)...)
		if consult.Gained(consult.Find(t, row.Athlete, nil, d)) {
			out.Questions = append(out.Questions, tables.Question{Row: -1, Column: -1, Cell: row.Athlete.Name, Code: tables.QuestionGain})
		}
		row.Test = &t
		out.Rows = append(out.Rows, row)
	}
	tables.SortQuestions(out.Questions)
	return out
}

// limited asks about every value beyond its limits; a closed sheet with one is opened,
// so that it is mended or kept with a reason as a typed one is.
func limited(t *record.Test, r tables.RowDraft, today record.Date) []tables.Question {
	var list []tables.Question
	on, _ := today.Time()
	hidden := care.MassHidden(r.Athlete, on)
	for _, e := range consult.Entries(*t) {
		if !e.Number.Known() {
			continue
		}
		if p := evidence.Check(e.Field, e.Item, *e.Number.Value); p != nil && p.Severity == evidence.Refuses {
			list = append(list, tables.Question{Row: -1, Column: -1, Cell: r.Athlete.Name, Code: tables.QuestionSheet, Problem: *p, Hidden: hidden})
			t.State, t.ClosedAt, t.ClosedBy = record.TestOpen, nil, ""
		}
	}
	return list
}

// person finds an athlete among the known: by the id, else by name and birth date.
func (k *known) person(a record.Athlete) *record.Athlete {
	for i := range k.Athletes {
		if k.Athletes[i].ID == a.ID {
			return &k.Athletes[i]
		}
	}
	for i := range k.Athletes {
		other := k.Athletes[i]
		if a.Name != "" && tables.NameKey(other.Name) == tables.NameKey(a.Name) && other.Born == a.Born {
			return &k.Athletes[i]
		}
	}
	return nil
}

// has reports whether a test is kept already: by its id, or the same moment of the same
// athlete.
func (k *known) has(t record.Test, who record.ID) bool {
	return k.tests[t.ID] || slices.Contains(k.Tests, tables.KnownTest{Athlete: who, Date: t.Session.Date, Start: t.Session.Start})
}

// grouped gives athletes the groups of the practice that have the names of theirs, and
// returns the groups that are new.
func (o *ownFile) grouped(athletes []record.Athlete, kept []record.Group) ([]record.Group, []record.Athlete) {
	to, fresh := map[record.ID]record.ID{}, map[record.ID]record.Group{}
	for _, g := range o.records.Groups {
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

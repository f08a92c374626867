package bundle

import (
	"strconv"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Held is a number that this program would not have taken without a reason, and none
// came with it: it is not entered, and stands beside the field as it was sent.
type Held struct {
	Ref     record.Ref
	Athlete record.ID
	Path    string
	Value   Value
}

// limit is what a number is held against.
type limit struct {
	path   string
	field  evidence.Field
	number *record.Number
}

// holdAthlete holds the numbers of a profile against the limits of typing.
func (m *merging) holdAthlete(a *record.Athlete) {
	m.hold(record.Ref{Kind: record.KindAthlete, ID: a.ID}, a.ID, []limit{
		{"height", evidence.Height, &a.Height}, {"usualMass", evidence.BodyMass, &a.UsualMass}, {"usualDrinking", evidence.DrinkingRate, &a.UsualDrinking},
		{"mouthful", evidence.MouthfulVolume, &a.Mouthful}, {"deficitAim", evidence.AimDeficit, &a.DeficitAim},
		{"habit.minutes", evidence.Duration, &a.Habit.Minutes}, {"habit.water", evidence.DrinkingRate, &a.Habit.Water}, {"habit.drink", evidence.DrinkingRate, &a.Habit.Drink},
	})
}

// holdTest holds the numbers of a sheet against the limits of typing. A closed sheet
// with a number that is not taken is open again: nobody closed it so.
func (m *merging) holdTest(t *record.Test) {
	var list []limit
	for _, n := range record.SheetNumbers(t) {
		if at := n.Field.NumberIn(n.Of); at != nil && n.Field.Evidence != "" {
			list = append(list, limit{n.Path, n.Field.Evidence, at})
		}
	}
	for i := range t.Partway {
		w := &t.Partway[i]
		list = append(list, limit{"partway." + string(w.ID) + ".mass", evidence.MassBefore, &w.Mass})
	}
	if m.hold(record.Ref{Kind: record.KindTest, ID: t.ID}, t.AthleteID, list) && t.State != record.TestOpen {
		t.State, t.ClosedAt, t.ClosedBy = record.TestOpen, nil, ""
	}
}

// hold takes the numbers away that are beyond what is refused and have no reason.
func (m *merging) hold(ref record.Ref, athlete record.ID, list []limit) (held bool) {
	for _, l := range list {
		bounds, ok := evidence.LimitOf(l.field)
		if !ok || !l.number.Known() || bounds.Refuse.Contains(*l.number.Value) || m.reasoned(ref, l.path) {
			continue
		}
		text := strconv.FormatFloat(*l.number.Value, 'f', -1, 64)
		if bounds.Unit != quantity.None {
			text += " " + string(bounds.Unit)
		}
		m.out.Held = append(m.out.Held, Held{Ref: ref, Athlete: athlete, Path: l.path, Value: Value{Number: l.number.Value, Unit: bounds.Unit}})
		m.out.Raw = append(m.out.Raw, record.RawText{Kind: ref.Kind, Record: ref.ID, Field: l.path, Text: text, At: m.theirs.Made, By: m.theirs.By})
		m.out.Marks = append(m.out.Marks, Mark{ref, l.path, text, ""})
		*l.number = record.Number{}
		held = true
	}
	return held
}

// reasoned reports whether a reason came with a value.
func (m *merging) reasoned(ref record.Ref, path string) bool {
	for _, r := range m.theirs.Raw {
		if r.Kind == ref.Kind && r.Record == ref.ID && r.Field == path && r.Reason && r.Text != "" {
			return true
		}
	}
	return false
}

// beside takes history, frozen copies and unread texts of what comes, as far as they
// are not here.
func (m *merging) beside() {
	away := map[record.Ref]bool{}
	for _, ref := range m.out.Left {
		away[ref] = true
	}
	of := map[record.Ref]record.ID{}
	for _, t := range m.theirs.Tests {
		of[record.Ref{Kind: record.KindTest, ID: t.ID}] = t.AthleteID
	}
	for _, p := range m.theirs.Plans {
		of[record.Ref{Kind: record.KindPlan, ID: p.ID}] = p.AthleteID
	}
	comes := func(kind record.Kind, id record.ID) bool {
		ref := record.Ref{Kind: kind, ID: id}
		return !away[ref] && !m.left[of[ref]] && !m.left[id] && kind != record.KindProduct
	}
	m.history(comes)
	m.frozen(comes)
	m.raw(comes)
	m.prints(comes)
}

// prints takes the kept pages that are not here, of athletes who come.
func (m *merging) prints(comes func(record.Kind, record.ID) bool) {
	known := map[record.ID]bool{}
	for _, p := range m.here.Prints {
		known[p.ID] = true
	}
	for _, p := range m.theirs.Prints {
		if !known[p.ID] && comes(record.KindAthlete, p.AthleteID) {
			m.out.Prints = append(m.out.Prints, p)
		}
	}
}

// history takes the changes that are not here. One of a visit that went on there
// comes as one of its own.
func (m *merging) history(comes func(record.Kind, record.ID) bool) {
	known := map[record.ID]record.Change{}
	for _, c := range m.here.Changes {
		known[c.ID] = c
	}
	for _, c := range m.theirs.Changes {
		if k, ok := known[c.ID]; ok || !comes(c.Kind, c.Record) {
			if !ok || !c.At.After(k.At) {
				continue
			}
			c.ID, c.Before = "", k.After
		}
		m.out.Changes = append(m.out.Changes, c)
	}
}

// frozen takes the frozen copies that are not here. A copy of a record whose version
// here stands has number 0, below all others.
func (m *merging) frozen(comes func(record.Kind, record.ID) bool) {
	known, most := map[record.ID]bool{}, map[record.Ref]int{}
	for _, f := range m.here.Frozen {
		ref := record.Ref{Kind: f.Kind, ID: f.Record}
		known[f.ID], most[ref] = true, max(most[ref], f.Number)
	}
	for _, f := range m.theirs.Frozen {
		if known[f.ID] || !comes(f.Kind, f.Record) {
			continue
		}
		ref := record.Ref{Kind: f.Kind, ID: f.Record}
		switch {
		case m.whole[ref] && f.Number > 0:
			f.Number = max(f.Number, most[ref]+1)
			most[ref] = f.Number
		case !m.isNew(ref):
			f.Number = 0
		}
		m.out.Frozen = append(m.out.Frozen, f)
	}
}

// isNew reports whether a record was not here.
func (m *merging) isNew(ref record.Ref) bool {
	for _, t := range m.out.NewTests {
		if t.ID == ref.ID {
			return true
		}
	}
	for _, p := range m.out.NewPlans {
		if p.ID == ref.ID {
			return true
		}
	}
	return false
}

// raw takes unread texts and reasons of fields that have none here and came as they
// are there.
func (m *merging) raw(comes func(record.Kind, record.ID) bool) {
	type key struct {
		ref    record.Ref
		field  string
		reason bool
	}
	keyOf := func(r record.RawText) key { return key{record.Ref{Kind: r.Kind, ID: r.Record}, r.Field, r.Reason} }
	known := map[key]bool{}
	for _, r := range append(m.here.Raw, m.out.Raw...) {
		known[keyOf(r)] = true
	}
	for _, r := range m.theirs.Raw {
		if !known[keyOf(r)] && comes(r.Kind, r.Record) && m.bringsRaw(r) {
			known[keyOf(r)] = true
			m.out.Raw = append(m.out.Raw, r)
		}
	}
}

// bringsRaw reports whether an unread text or a reason comes: with a new record, with
// one that is taken whole, or where they typed it since.
func (m *merging) bringsRaw(r record.RawText) bool {
	ref := record.Ref{Kind: r.Kind, ID: r.Record}
	if m.isNew(ref) || m.whole[ref] || r.Kind == record.KindAthlete && len(m.mine[ref]) == 0 {
		return true
	}
	ending := "#typed"
	if r.Reason {
		ending = "#reason"
	}
	_, typed := ownOf(m.others[ref], m.mine[ref])[r.Field+ending]
	return typed
}

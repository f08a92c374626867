package consult

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// Entry is one number of a test sheet: its path in the record, and the field
// and item that problems name it by.
type Entry struct {
	Path   string
	Field  evidence.Field
	Item   int
	Number record.Number
}

// Entries lists every number of a test sheet that the calculation names problems
// by, in the order it is entered: see [record.SheetFields].
func Entries(t record.Test) []Entry {
	var list []Entry
	count := map[record.Moment]int{}
	for _, n := range record.SheetNumbers(&t) {
		e := Entry{n.Path, n.Field.Evidence, n.Field.Item, n.Number}
		if n.Row > 0 {
			e.Item = n.Row
		}
		if w, ok := n.Of.(*record.Weighing); ok {
			e.Field, e.Item = weighed(*w, t.Session.Date, count)
		}
		if e.Field != "" && !n.Field.AtField {
			list = append(list, e)
		}
	}
	return list
}

// weighed names a weighing and numbers it as the calculation does: only those of
// its moment that have a value are counted; today's morning mass is 0, the baseline
// from 1.
func weighed(w record.Weighing, today record.Date, count map[record.Moment]int) (evidence.Field, int) {
	fields := map[record.Moment]evidence.Field{
		record.Before: evidence.MassBefore, record.After: evidence.MassAfter, record.Morning: evidence.MorningMass,
	}
	if w.Moment == record.Morning && w.Date == today {
		return fields[w.Moment], 0
	}
	if w.Mass.Known() && !w.Aside {
		count[w.Moment]++
	}
	return fields[w.Moment], count[w.Moment]
}

// PathOf returns the path of the number a problem is about; empty when it is
// about none in particular (two weighings apart, a rate). Of several numbers
// with one name the one with the problem's value is meant, the last of them
// where two stand in the wrong order.
func PathOf(t record.Test, p evidence.Problem) string {
	path := ""
	for _, e := range Entries(t) {
		if e.Field != p.Field || e.Item != p.Item || !e.Number.Known() {
			continue
		}
		if p.Code == evidence.CodeOrder || *e.Number.Value == p.Value {
			path = e.Path
		}
	}
	return path
}

// kept lists the refused values that a person kept with a written reason.
func kept(t record.Test, raw []record.RawText) []sweat.Kept {
	reason := map[string]bool{}
	for _, r := range raw {
		if r.Reason && r.Text != "" {
			reason[r.Field] = true
		}
	}
	var list []sweat.Kept
	for _, e := range Entries(t) {
		if reason[e.Path] {
			list = append(list, sweat.Kept{Field: e.Field, Item: e.Item})
		}
	}
	for path, k := range figureReasons() {
		if reason[path] {
			list = append(list, k)
		}
	}
	return list
}

// figureReasons are the paths under which a reason is kept for a refusal that
// is about no single number.
func figureReasons() map[string]sweat.Kept {
	return map[string]sweat.Kept{
		"session.minutes":    {Field: evidence.Duration},
		"weighings.change":   {Field: evidence.MassChange},
		"weighings.before":   {Field: evidence.MassSpread, Item: 1},
		"weighings.after":    {Field: evidence.MassSpread, Item: 2},
		"figures.sweatRate":  {Field: evidence.SweatRate},
		"figures.drinkingAt": {Field: evidence.DrinkingRate},
	}
}

// ReasonPath returns where a reason for keeping a refused value is written.
func ReasonPath(t record.Test, p evidence.Problem) string {
	if path := PathOf(t, p); path != "" {
		return path
	}
	for path, k := range figureReasons() {
		if k.Field == p.Field && k.Item == p.Item {
			return path
		}
	}
	return ""
}

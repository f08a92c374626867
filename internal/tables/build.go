package tables

import (
	"context"
	"fmt"

	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// Build makes what a file would add of its rows. It writes nothing; it ends early
// only with the error of the context.
func Build(ctx context.Context, b Book, m Mapping, o Options) (Draft, error) {
	w := &builder{m: m, o: o, d: Draft{Kind: m.Kind}, people: newPeople(o.Known)}
	s, ok := m.Find(b)
	if !ok {
		w.fault(Fault{Row: -1, Column: -1, Code: FaultNoColumn, Target: Name})
		return w.d, nil
	}
	w.s = s
	if w.o.Setup.Pantry == nil {
		w.o.Setup.Pantry = &consult.Pantry{}
	}
	w.sports = map[string]string{}
	for word, code := range o.Sports {
		w.sports[worded(word)] = code
	}
	if !w.needs() {
		return w.d, nil
	}
	rows := m.Rows(s)
	for i, row := range rows {
		if i%20 == 0 {
			if err := ctx.Err(); err != nil {
				return Draft{}, fmt.Errorf("read the rows: %w", err)
			}
			if o.Progress != nil {
				o.Progress(i, len(rows))
			}
		}
		w.row(row)
	}
	w.finish()
	if o.Progress != nil {
		o.Progress(len(rows), len(rows))
	}
	return w.d, nil
}

// builder builds a draft.
type builder struct {
	m      Mapping
	o      Options
	s      Sheet
	sports map[string]string
	d      Draft
	people *people
	// at is the row that is read, bad: it has a fault.
	at  int
	bad bool
	// sampled are the patches that have got a result.
	sampled map[record.ID]bool
}

// needs sees that the columns are there without which no row can be read.
func (w *builder) needs() bool {
	has := func(list ...Target) bool {
		for _, t := range list {
			if w.m.first(t) >= 0 {
				return true
			}
		}
		return false
	}
	need := func(ok bool, t Target) {
		if !ok {
			w.fault(Fault{Row: -1, Column: -1, Code: FaultNoColumn, Target: t})
		}
	}
	lab := w.m.Kind == record.ImportLaboratory
	need(has(Name, FamilyName, GivenName) || lab && has(Sample), Name)
	need(w.m.Kind == record.ImportAthletes || has(Date), Date)
	need(!lab || has(Sodium, Potassium), Sodium)
	for i, c := range w.m.Columns {
		if c.Target.Sited() && c.Site == "" && !has(PatchSite) && !lab {
			w.fault(Fault{Row: -1, Column: i, Cell: c.Heading, Code: FaultNoSite})
		}
	}
	return len(w.d.Faults) == 0
}

// fault notes a fault; one of a row keeps the row from being taken.
func (w *builder) fault(f Fault) {
	w.bad = true
	w.d.Faults = append(w.d.Faults, f)
}

// cellFault notes a fault of a cell of the row.
func (w *builder) cellFault(column int, code FaultCode) {
	text := ""
	if column >= 0 {
		text = w.s.At(w.at, column).Text
	}
	if text == noResult {
		text, code = "", FaultFormula
	}
	w.fault(Fault{Row: w.at, Column: column, Cell: text, Code: code})
}

// ask notes a question about a cell, or about the row with column -1.
func (w *builder) ask(q Question) {
	q.Row = w.at
	if q.Column >= 0 && q.Cell == "" {
		q.Cell = w.s.At(w.at, q.Column).Text
	}
	w.d.Questions = append(w.d.Questions, q)
}

// row reads one row.
func (w *builder) row(at int) {
	w.at, w.bad = at, false
	if column, summary := w.m.summaryIn(w.s, at); summary {
		w.cellFault(column, FaultSummary)
		return
	}
	who := w.person()
	switch w.m.Kind {
	case record.ImportLaboratory:
		w.result(who)
	case record.ImportAthletes:
		w.add(w.listed(who))
	default:
		test := w.test()
		r := w.whose(who)
		w.complete(&test, r.Athlete)
		r.Test = &test
		if !w.bad {
			w.look(r)
		}
		w.add(r)
	}
}

// add adds a row that has no fault.
func (w *builder) add(r RowDraft) {
	if !w.bad {
		r.Row = w.at
		if r.Twin == (Twin{}) {
			r.Twin.Row = -1
		}
		w.d.Rows = append(w.d.Rows, r)
	}
}

// finish asks about the columns, and finds twins within the file.
func (w *builder) finish() {
	w.people.assign(w.d.Rows)
	w.twins()
	w.at = -1
	for i, c := range w.m.Columns {
		if of, ok := meaningOf(c.Target); ok && c.FromValues && len(of.units) > 1 && w.needsUnit(i) {
			w.d.Questions = append(w.d.Questions, Question{Row: -1, Column: i, Cell: c.Heading, Code: QuestionUnit})
		}
	}
	if w.openOrder() {
		w.d.Questions = append(w.d.Questions, Question{Row: -1, Column: w.m.first(Date), Code: QuestionOrder})
	}
	SortQuestions(w.d.Questions)
}

// openOrder reports whether every date could have day and month the other way round,
// and one would be another day then.
func (w *builder) openOrder() bool {
	other := map[Order]Order{DayMonthYear: MonthDayYear, MonthDayYear: DayMonthYear}[w.m.Order]
	if _, told := orderOf(w.s, w.m); told || other == "" || w.m.Ordered {
		return false
	}
	differs := false
	for _, row := range w.m.Rows(w.s) {
		for i, c := range w.m.Columns {
			if c.Target != Date && c.Target != Born {
				continue
			}
			text := w.s.At(row, i).Text
			this, _, err1 := parseDay(text, w.m.Order, w.o.Today, true)
			that, _, err2 := parseDay(text, other, w.o.Today, true)
			if err1 != nil {
				continue
			}
			if err2 != nil {
				return false
			}
			differs = differs || this != that && c.Target == Date
		}
	}
	return differs
}

// twins finds tests that are in the records already, or stand in a row before.
func (w *builder) twins() {
	type moment struct {
		who   record.ID
		day   record.Date
		start record.Clock
	}
	kept, seen := map[moment]bool{}, map[moment]int{}
	days := map[moment]bool{}
	for _, t := range w.o.Known.Tests {
		kept[moment{t.Athlete, t.Date, t.Start}] = true
		days[moment{who: t.Athlete, day: t.Date}] = true
	}
	for i := range w.d.Rows {
		r := &w.d.Rows[i]
		if r.Test == nil {
			continue
		}
		m := moment{r.Athlete.ID, r.Test.Session.Date, r.Test.Session.Start}
		loose := moment{who: m.who, day: m.day}
		// One without a start of its own is the same as any of that day.
		assumed := m.start == "" || m.start == w.m.Begin
		r.Twin.Kept = kept[m] || kept[loose] || assumed && days[loose]
		if first, ok := seen[m]; ok {
			r.Twin.Row = first
		} else {
			seen[m] = r.Row
		}
	}
}

// Mentioned is who and which days a file speaks of, so that no more is loaded than what
// it may meet.
type Mentioned struct {
	// Names are the names of athletes as [NameKey] compares them.
	Names map[string]bool
	Days  map[record.Date]bool
}

// Mentions finds what a file speaks of as it is read.
func Mentions(b Book, m Mapping, today record.Date) Mentioned {
	found := Mentioned{Names: map[string]bool{}, Days: map[record.Date]bool{}}
	s, ok := m.Find(b)
	if !ok {
		return found
	}
	w := &builder{m: m, s: s, o: Options{Today: today}}
	for _, row := range m.Rows(s) {
		w.at = row
		if key := NameKey(w.fullName()); key != "" {
			found.Names[key] = true
		}
		if column := m.first(Date); column >= 0 {
			if day, _, err := parseDay(s.At(row, column).Text, m.Order, today, false); err == nil {
				found.Days[day] = true
			}
		}
	}
	return found
}

package tables

import (
	"errors"
	"strings"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// todayOf is a day as a time.
func todayOf(d record.Date) time.Time {
	t, _ := d.Time()
	return t
}

// put reads the number of a target into a field, in the unit it is kept in, within
// the limits that hold for a typed one; ok is false where there is none.
func (w *builder) put(into *record.Number, t Target, item int) (ok bool) {
	column := w.m.first(t)
	if column < 0 {
		return false
	}
	*into, ok = w.value(column, item)
	return ok
}

// value reads the number of a column.
func (w *builder) value(column, item int) (n record.Number, ok bool) {
	of, _ := meaningOf(w.m.Columns[column].Target)
	cell := w.s.At(w.at, column)
	if calculationFailed(cell.Text) {
		w.cellFault(column, FaultFailed)
		return n, false
	}
	if nothing(cell.Text) || w.onlyBound(column) {
		return n, false
	}
	read, unit, err := w.numberOf(cell, of, w.m.Columns[column].Unit)
	if err != nil {
		code := FaultNumber
		if errors.Is(err, quantity.ErrOtherUnit) {
			code = FaultUnit
		}
		w.cellFault(column, code)
		return n, false
	}
	x, problem := w.limited(read.value, unit, of, item)
	if read.ambiguous {
		other, otherProblem := w.limited(read.other, unit, of, item)
		if problem != nil && problem.Severity == evidence.Refuses && (otherProblem == nil || otherProblem.Severity != evidence.Refuses) {
			x, problem = other, otherProblem
		} else {
			w.ask(Question{Column: column, Code: QuestionGrouped})
		}
	}
	return w.judged(x, problem, column, unit, of)
}

// anotherUnit reads a number whose own unit is not of the kind of the column's, but
// can be of the target.
func anotherUnit(cell Cell, comma bool, of meaning, unit quantity.Unit) (numeral, quantity.Unit, error) {
	for _, u := range of.units {
		if read, err := parseNumber(cell, comma, u); err == nil {
			return read, u, nil
		}
	}
	return numeral{}, unit, quantity.ErrOtherUnit
}

// limited turns a number into the unit it is kept in and holds it against its limits.
func (w *builder) limited(x float64, unit quantity.Unit, of meaning, item int) (float64, *evidence.Problem) {
	y, err := toUnit(x, unit, of)
	if err != nil {
		return x, &evidence.Problem{Field: of.field, Item: item, Code: evidence.CodeNotFinite, Severity: evidence.Refuses, Value: x}
	}
	if of.target == Gravity && y >= 1000 { // 1.022 is often written 1022
		y /= 1000
	}
	return y, evidence.Check(of.field, item, y)
}

// judged is a value that is not refused.
func (w *builder) judged(x float64, problem *evidence.Problem, column int, unit quantity.Unit, of meaning) (record.Number, bool) {
	if problem != nil && problem.Severity == evidence.Refuses {
		w.fault(Fault{Row: w.at, Column: column, Cell: w.s.At(w.at, column).Text, Code: FaultLimit, Problem: *problem})
		return record.Number{}, false
	}
	if problem != nil {
		w.ask(Question{Column: column, Code: QuestionLimit, Problem: *problem})
	}
	if unit == "" || !quantity.SameKind(unit, of.unit) {
		unit = of.unit
	}
	return record.Num(x, unit), true
}

// test reads the sheet of a row.
func (w *builder) test() record.Test {
	t := record.Test{Meta: record.Meta{ID: record.NewID()}, State: record.TestOpen}
	w.session(&t)
	for target, path := range sheetPaths() {
		f, _ := record.SheetFieldOf(path)
		if n := f.Number(&t); n != nil && target != Effort {
			w.put(n, target, f.Item)
		}
	}
	if t.Loss.Urine.Known() && *t.Loss.Urine.Value == 0 {
		t.Loss.Urine, t.Loss.NoUrine = record.Number{}, true
	}
	if t.Loss.Stool.Known() && *t.Loss.Stool.Value == 0 {
		t.Loss.Stool, t.Loss.NoStool = record.Number{}, true
	}
	w.effort(&t)
	w.weigh(&t, MassBefore, record.Before)
	w.weigh(&t, MassAfter, record.After)
	w.askMass(t)
	w.drinks(&t)
	w.foods(&t)
	w.patches(&t)
	return t
}

// sheetPaths are the fields of the sheet that take a number as it is.
func sheetPaths() map[Target]string {
	paths := map[Target]string{}
	for _, m := range meanings() {
		if m.path != "" {
			paths[m.target] = m.path
		}
	}
	return paths
}

// weigh reads a body mass.
func (w *builder) weigh(t *record.Test, target Target, m record.Moment) {
	var mass record.Number
	if w.put(&mass, target, 0) {
		t.Weighings = append(t.Weighings, record.Weighing{Meta: record.Meta{ID: record.NewID()}, TestID: t.ID, Moment: m, Order: 1, Mass: mass})
	}
}

// session reads when and where.
func (w *builder) session(t *record.Test) {
	s := &t.Session
	s.Place, s.Activity, s.Sport = w.short(Place), w.short(Activity), w.sport()
	t.Note = w.notes(TestNote)
	var said bool
	if s.Date, s.Start, said = w.day(Date); !said && !w.bad {
		w.cellFault(w.m.first(Date), FaultNoDate)
	}
	w.clock(&s.Start, Start)
	w.clock(&s.End, End)
	w.lasting(t)
}

// clock reads a time of day.
func (w *builder) clock(into *record.Clock, t Target) {
	text, column := w.text(t)
	if text == "" {
		return
	}
	if i := strings.LastIndex(text, " "); i > 0 && strings.Contains(text[:i], "-") { // day and time in one cell
		text = text[i+1:]
	}
	clock, ok := parseClock(text)
	if !ok {
		w.cellFault(column, FaultClock)
		return
	}
	*into = clock
}

// lasting makes the end of the duration; a start that nobody wrote down is entered
// where the person chose one.
func (w *builder) lasting(t *record.Test) {
	s := &t.Session
	text, column := w.text(Duration)
	if text != "" && s.End == "" {
		minutes, ok := w.minutes(column)
		switch {
		case !ok, s.Start == "" && w.unread(Start):
			return
		case s.Start == "" && w.m.Begin == "":
			w.cellFault(column, FaultNoStart)
			return
		case s.Start == "":
			s.Start = w.m.Begin
			w.ask(Question{Column: column, Code: QuestionBegan})
			t.Note = strings.TrimSpace(t.Note + "\n" + w.o.NoStart)
		}
		start, _ := s.Start.Minutes()
		s.End = record.ClockAt(start + minutes)
		s.EndsNextDay = start+minutes >= 24*60
		if s.EndsNextDay {
			w.ask(Question{Column: column, Code: QuestionOvernight})
		}
		return
	}
	start, ok1 := s.Start.Minutes()
	end, ok2 := s.End.Minutes()
	if ok1 && ok2 && end <= start {
		s.EndsNextDay = true
		w.ask(Question{Column: w.m.first(End), Code: QuestionOvernight})
	}
}

// unread reports whether something stands in the column of a target.
func (w *builder) unread(t Target) bool {
	column := w.m.first(t)
	return column >= 0 && !nothing(w.s.At(w.at, column).Text)
}

// minutes reads a duration within its limits.
func (w *builder) minutes(column int) (float64, bool) {
	x, err := parseMinutes(w.s.At(w.at, column), w.m.DecimalComma, w.m.Columns[column].Unit)
	if err != nil {
		w.cellFault(column, FaultMinutes)
		return 0, false
	}
	of, _ := meaningOf(Duration)
	n, ok := w.judged(x, evidence.Check(evidence.Duration, 0, x), column, quantity.Minute, of)
	return n.Or(0), ok
}

// drinks reads what was drunk: amounts, and bottles weighed before and after.
func (w *builder) drinks(t *record.Test) {
	zero, some := false, false
	several := 0
	for _, c := range w.m.Columns {
		if c.Target == Drunk {
			several++
		}
	}
	for i, c := range w.m.Columns {
		if c.Target != Drunk {
			continue
		}
		n, ok := w.value(i, len(t.Bottles)+1)
		switch {
		case !ok:
			continue
		case *n.Value == 0:
			zero = true
			continue
		}
		some = true
		b := record.Bottle{Meta: record.Meta{ID: record.NewID()}, TestID: t.ID, Order: len(t.Bottles) + 1, Use: record.UseDrunk}
		if several > 1 {
			_, b.Name = brackets(c.Heading)
			b.Name = strings.TrimSpace(b.Name)
		}
		if quantity.SameKind(c.Unit, quantity.Gram) { // weighed: before and nothing left
			b.Before, b.After = record.Num(*n.Value, quantity.Gram), record.Num(0, quantity.Gram)
		} else {
			b.Volume = n
		}
		t.Bottles = append(t.Bottles, b)
	}
	some = w.bottles(t) || some
	t.Loss.NothingDrunk = zero && !some
}

// bottles reads the weighed ones: the first before with the first after.
func (w *builder) bottles(t *record.Test) (some bool) {
	var after []int
	for i, c := range w.m.Columns {
		if c.Target == BottleAfter {
			after = append(after, i)
		}
	}
	k := 0
	for i, c := range w.m.Columns {
		if c.Target != BottleBefore {
			continue
		}
		item := len(t.Bottles) + 1
		b := record.Bottle{Meta: record.Meta{ID: record.NewID()}, TestID: t.ID, Order: item, Use: record.UseDrunk}
		before, ok := w.value(i, item)
		if ok {
			b.Before = before
		}
		if k < len(after) {
			if n, ok := w.value(after[k], item); ok {
				b.After = n
			}
			k++
		}
		if b.Before.Known() || b.After.Known() {
			t.Bottles, some = append(t.Bottles, b), true
		}
	}
	return some
}

// foods reads what was eaten.
func (w *builder) foods(t *record.Test) {
	for i, c := range w.m.Columns {
		if c.Target != Food {
			continue
		}
		item := len(t.Foods) + 1
		if n, ok := w.value(i, item); ok && *n.Value > 0 {
			_, name := brackets(c.Heading)
			t.Foods = append(t.Foods, record.FoodEaten{Meta: record.Meta{ID: record.NewID()}, TestID: t.ID, Order: item, Name: strings.TrimSpace(name), Mass: n})
		}
	}
}

// patches reads sodium and potassium by site; a potassium goes to the patch of the
// same site.
func (w *builder) patches(t *record.Test) {
	for i, c := range w.m.Columns {
		if !c.Target.Sited() {
			continue
		}
		n, ok := w.value(i, len(t.Patches)+1)
		if !ok {
			continue
		}
		site, side, ok := w.siteOf(c)
		if !ok {
			w.cellFault(i, FaultNoSite)
			continue
		}
		p := patchAt(t, site, side)
		if c.Target == Sodium {
			p.Sodium = n
		} else {
			p.Potassium = n
		}
	}
}

// siteOf is where a value was taken: by its column, else by the column of sites.
func (w *builder) siteOf(c Column) (site record.Site, side string, ok bool) {
	side = sideOf(c.Heading)
	if c.Site != "" {
		return c.Site, side, true
	}
	text, _ := w.text(PatchSite)
	site, ok = SiteOf(text)
	return site, sideOf(text), ok
}

// patchAt is the patch of a site, made where there is none.
func patchAt(t *record.Test, site record.Site, side string) *record.Patch {
	for i := range t.Patches {
		if t.Patches[i].Site == site && t.Patches[i].Side == side {
			return &t.Patches[i]
		}
	}
	t.Patches = append(t.Patches, record.Patch{
		Meta: record.Meta{ID: record.NewID()}, TestID: t.ID, Order: len(t.Patches) + 1, Site: site, Side: side, Condition: record.PatchGood,
	})
	return &t.Patches[len(t.Patches)-1]
}

// complete ties a sheet to its athlete.
func (w *builder) complete(t *record.Test, a record.Athlete) {
	t.AthleteID = a.ID
	if t.Session.Sport == a.Sport {
		t.Session.Sport = ""
	}
	if a.Born != "" && t.Session.Date != "" && t.Session.Date < a.Born {
		w.cellFault(w.m.first(Date), FaultBorn)
	}
	if a.Acclimatised != "" && w.m.first(Acclimatised) >= 0 {
		if text, _ := w.text(Acclimatised); text != "" {
			yes, _ := yesOf(text)
			t.Session.UsedToHeat = record.AcclimatisedNo
			if yes {
				t.Session.UsedToHeat = record.AcclimatisedYes
			}
		}
	}
	for i := range w.d.Questions { // those of the row so far, now that it is known whose they are
		q := &w.d.Questions[i]
		if q.Row == w.at {
			q.Hidden = q.Hidden || care.MassHidden(a, todayOf(w.o.Today))
		}
	}
}

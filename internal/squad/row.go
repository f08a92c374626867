package squad

import (
	"slices"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/figure"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// State is how far an athlete is on the day.
type State string

// The states, in the order of the day.
const (
	ToWeighBefore State = "before"
	Playing       State = "playing"
	ToWeighAfter  State = "after"
	Check         State = "check"
	Done          State = "done"
)

// States lists the states in the order they are counted in.
func States() []State { return []State{Check, ToWeighAfter, Playing, ToWeighBefore, Done} }

// Sheet is one athlete's sheet with what is kept beside it.
type Sheet struct {
	Athlete record.Athlete
	Test    record.Test
	Raw     []record.RawText
	// Earlier are the athlete's earlier tests, the newest first.
	Earlier []consult.Findings
	// Stamp changes whenever the test or its texts do, so that what was worked out of
	// the same sheet need not be again; see [Looker].
	Stamp int
}

// The things a row may miss.
const (
	LackBefore      = "before"       // mass before
	LackBottles     = "bottles"      // bottles before
	LackBottlesLeft = "bottles-left" // bottles after
	LackAfter       = "after"        // mass after
	LackSecond      = "second"       // a second weighing
	LackUrine       = "urine"
	LackSymptoms    = "symptoms"
	LackPatch       = "patch"      // still on
	LackLaboratory  = "laboratory" // its sodium
	LackTimes       = "times"      // start or end
	LackTold        = "told"       // who was told
)

// Row is how an athlete stands at a moment.
type Row struct {
	Member  record.Member
	Sheet   Sheet
	State   State
	Missing []string
	Found   consult.Findings
	Odd     []Odd
	// Flag is the red flag; Flagged says that there is one.
	Flag    consult.RedFlag
	Flagged bool
	Patch   Patch
	Span    Span
	// Loss, Rate and Change are what is known so far: sweat loss in L, L/h, change of
	// body mass in %, and where mass is hidden no change.
	Loss, Rate, Change figure.Figure
	// Own are the values that are not the session's.
	Own    []string
	Hidden bool
	// Closed: the sheet is closed, and read only here.
	Closed bool
	// NeverTested: there is no earlier rate to hold this one against. Usual is the
	// mean of the earlier rates, L/h, of Tests of them.
	Usual float64
	Tests int
	// empty are the masses of the empty bottles of the session, g, 0 where not known.
	empty []float64
}

// Looker works sessions out, each sheet once for each of its stamps.
type Looker struct{ known map[record.ID]looked }

// looked is what was worked out of a sheet.
type looked struct {
	stamp int
	found consult.Findings
}

// find works a sheet out, or knows it.
func (l *Looker) find(s Sheet, d consult.Setup) consult.Findings {
	if k, ok := l.known[s.Test.ID]; ok && s.Stamp != 0 && k.stamp == s.Stamp {
		return k.found
	}
	f := consult.Find(s.Test, s.Athlete, s.Raw, d)
	if l.known == nil {
		l.known = map[record.ID]looked{}
	}
	l.known[s.Test.ID] = looked{s.Stamp, f}
	return f
}

// Look works a session out at a moment, a row for each member in their order.
func (l *Looker) Look(g record.GroupSession, sheets map[record.ID]Sheet, now time.Time, d consult.Setup) []Row {
	var rows []Row
	for _, m := range g.Members {
		s, ok := sheets[m.TestID]
		if !ok {
			continue
		}
		rows = append(rows, look(g, m, s, now, l.find(s, d)))
	}
	for i := range rows {
		rows[i].Odd = oddities(rows, i)
		rows[i].judge(now)
	}
	return rows
}

// look works one athlete out by themselves.
func look(g record.GroupSession, m record.Member, s Sheet, now time.Time, f consult.Findings) Row {
	day := consult.TestDay(s.Test)
	r := Row{
		Member: m, Sheet: s, Found: f, Hidden: care.MassHidden(s.Athlete, day), Own: Own(g, s.Test), Closed: !Open(s.Test),
		Patch: PatchOf(s.Test, now), Span: SpanOf(s.Test.Session, now.Location()),
		Loss: f.Sweat.Fluid.Loss, Rate: f.Sweat.Fluid.Rate,
	}
	if !r.Hidden {
		r.Change = f.Sweat.Fluid.MassChange
	}
	for _, b := range g.Bottles {
		r.empty = append(r.empty, b.Empty.Or(0))
	}
	r.Flag, r.Flagged = consult.RedFlagOf(f, s.Athlete, day)
	for _, e := range s.Earlier {
		if rate := e.Sweat.Fluid.Rate; rate.Known && e.Test.ID != s.Test.ID {
			r.Usual += rate.Value
			r.Tests++
		}
	}
	if r.Tests > 0 {
		r.Usual /= float64(r.Tests)
	}
	return r
}

// Masses are the weighings of a moment in their order, those set aside too.
func Masses(t record.Test, m record.Moment) []record.Weighing {
	var list []record.Weighing
	for _, w := range t.Weighings {
		if w.Moment == m && w.Mass.Known() {
			list = append(list, w)
		}
	}
	return list
}

// judge says how far the athlete is, and what is missing.
func (r *Row) judge(now time.Time) {
	t := r.Sheet.Test
	before, after := Masses(t, record.Before), Masses(t, record.After)
	r.Missing = r.lacks(len(before) > 0, len(after) > 0)
	open := slices.ContainsFunc(r.Odd, func(o Odd) bool { return !o.Kept() })
	switch {
	case r.Closed:
		r.State = Done
	case len(after) > 0 && len(before) > 0 && (open || len(r.waiting()) > 0 || r.Flagged && !r.Flag.Told()):
		r.State = Check
	case len(after) > 0 && len(before) > 0:
		r.State = Done
	case len(before) == 0:
		r.State = ToWeighBefore
	case r.Span.HasEnd && !now.Before(r.Span.End):
		r.State = ToWeighAfter
	default:
		r.State = Playing
	}
}

// waiting is what is missing but the laboratory's value.
func (r *Row) waiting() []string {
	return slices.DeleteFunc(slices.Clone(r.Missing), func(x string) bool { return x == LackLaboratory })
}

// lacks lists what is missing at this stage, in the order of the hands' work.
func (r *Row) lacks(hasBefore, hasAfter bool) []string {
	t := r.Sheet.Test
	var list []string
	add := func(id string, on bool) {
		if on {
			list = append(list, id)
		}
	}
	add(LackBefore, !hasBefore)
	add(LackBottles, bottlesLack(t, func(b record.Bottle) bool { return b.Before.Known() || b.Volume.Known() }))
	if !hasBefore {
		return list
	}
	ended := hasAfter || r.Span.HasEnd
	add(LackBottlesLeft, ended && bottlesLack(t, func(b record.Bottle) bool { return b.After.Known() || b.Volume.Known() }))
	add(LackAfter, !hasAfter)
	add(LackUrine, ended && !t.Loss.Urine.Known() && !t.Loss.NoUrine)
	add(LackSymptoms, hasAfter && len(r.Flag.Safety.Unasked()) > 0)
	add(LackPatch, r.Patch.On && hasAfter)
	add(LackTimes, hasAfter && !r.Found.Timed)
	second := r.Flagged && r.Flag.Gained || slices.ContainsFunc(r.Odd, func(o Odd) bool { return o.WeighAgain && !o.Kept() })
	add(LackSecond, hasAfter && second && len(Masses(t, record.After)) < 2)
	add(LackTold, r.Flagged && !r.Flag.Told())
	add(LackLaboratory, r.Patch.Laboratory && r.Patch.Off)
	add(LackUnreadable, slices.ContainsFunc(r.Sheet.Raw, func(raw record.RawText) bool { return !raw.Reason }))
	return list
}

// bottlesLack reports whether a bottle that was brought is without a value.
func bottlesLack(t record.Test, has func(record.Bottle) bool) bool {
	if t.Loss.NothingDrunk {
		return false
	}
	return slices.ContainsFunc(t.Bottles, func(b record.Bottle) bool { return !has(b) })
}

// Effect is what something missing does to the sweat loss, L, from low to high;
// ok is false where it cannot be said.
func (r Row) Effect(lack string) (low, high float64, ok bool) {
	id := map[string]string{LackUrine: sweat.MissingUrine}[lack]
	for _, m := range r.Found.Sweat.Missing {
		if id != "" && m.ID == id && m.Effect.Width() > 0 {
			return m.Effect.Low, m.Effect.High, true
		}
	}
	return 0, 0, false
}

// Drunk is what was drunk of the i-th bottle, mL; ok is false while it is not known.
func (r Row) Drunk(i int) (millilitres float64, ok bool) {
	for _, b := range r.Found.Sweat.Bottles {
		if b.Item == i+1 && b.Known {
			return b.Drunk, true
		}
	}
	return 0, false
}

// Count is how many rows are in a state.
func Count(rows []Row, s State) int {
	n := 0
	for _, r := range rows {
		if r.State == s {
			n++
		}
	}
	return n
}

// Next lists the members to come to the scale after one, in the order of the scale:
// who has ended and is not weighed, else who is to weigh before, else who is
// playing. At is the index of the row at the scale, -1 for none.
func Next(rows []Row, at int) []int {
	for _, want := range []State{ToWeighAfter, ToWeighBefore, Playing} {
		var list []int
		for n := 1; n <= len(rows); n++ {
			i := (at + n + len(rows)) % len(rows)
			if i != at && rows[i].State == want {
				list = append(list, i)
			}
		}
		if len(list) > 0 {
			return list
		}
	}
	return nil
}

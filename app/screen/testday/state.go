package testday

import (
	"maps"
	"slices"
	"strings"

	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/plain"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/sweat"
)

// Sheet is an unfinished test sheet.
type Sheet struct {
	ID, Athlete record.ID
	Name        string
	Session     record.Session
	State       record.TestState
	// Ready: nothing is missing but the closing of it.
	Ready bool
	// Gained: heavier after than before, with the athlete's own conditions. Hidden:
	// body mass is hidden from this athlete.
	Gained, Hidden bool
	Gain           consult.Gain
	// Lacks is what keeps the sweat rate, or the sodium, from its range.
	Lacks []sweat.Missing
}

// State is the day as it is shown.
type State struct {
	// People are all athletes by name, Open all that is unfinished, the newest
	// first, Sheets as much of it as was worked out to be shown.
	People []store.Person
	Open   []store.ListedTest
	Sheets []Sheet
	names  map[record.ID]string
	group  string
	marked map[record.ID]bool
	// Nameless asks for one blank sheet without a name.
	Nameless bool
	// Shown is how many athletes of the list for printing are shown.
	Shown int
}

// AtOnce is how many lines of a long list are shown, and how many more at each
// wish for more.
const AtOnce = 25

// NewState makes the day from what is kept: all athletes, and what is unfinished.
func NewState(people []store.Person, open []store.ListedTest) State {
	s := State{People: people, names: make(map[record.ID]string, len(people)), marked: map[record.ID]bool{}, Shown: AtOnce}
	for _, a := range people {
		s.names[a.ID] = a.Name
	}
	for _, o := range open {
		if _, there := s.names[o.AthleteID]; there {
			s.Open = append(s.Open, o)
		}
	}
	return s
}

// Next lists the unfinished tests that are to be shown next.
func (s State) Next() []record.ID {
	var list []record.ID
	for _, o := range s.Open[len(s.Sheets):min(len(s.Open), len(s.Sheets)+AtOnce)] {
		list = append(list, o.ID)
	}
	return list
}

// More is how many unfinished tests are not shown yet.
func (s State) More() int { return len(s.Open) - len(s.Sheets) }

// With adds the findings of the tests to be shown next, those of a gain in mass before
// the others; athletes are those who gained.
func (s State) With(found []consult.Findings, athletes map[record.ID]record.Athlete) State {
	of := make(map[record.ID]consult.Findings, len(found))
	for _, f := range found {
		of[f.Test.ID] = f
	}
	from := len(s.Sheets)
	for _, id := range s.Next() {
		f := of[id]
		sheet := Sheet{
			ID: id, Athlete: f.Test.AthleteID, Name: s.names[f.Test.AthleteID], Session: f.Test.Session, State: f.Test.State,
			Ready: f.Ready() && !f.Waits(),
		}
		a, day := athletes[f.Test.AthleteID], consult.TestDay(f.Test)
		sheet.Gain, sheet.Gained = consult.GainOf(f, a, day)
		sheet.Hidden = sheet.Gained && care.MassHidden(a, day)
		for _, m := range f.Sweat.Missing {
			if !m.Optional || m.ID == sweat.MissingSodium {
				sheet.Lacks = append(sheet.Lacks, m)
			}
		}
		s.Sheets = append(s.Sheets, sheet)
	}
	slices.SortStableFunc(s.Sheets[from:], func(a, b Sheet) int {
		switch {
		case a.Gained == b.Gained:
			return 0
		case a.Gained:
			return -1
		}
		return 1
	})
	return s
}

// Unfinished is the newest open test of an athlete; ok is false when there is
// none.
func (s State) Unfinished(athlete record.ID) (test record.ID, ok bool) {
	for _, one := range s.Open {
		if one.AthleteID == athlete && one.State == record.TestOpen {
			return one.ID, true
		}
	}
	return "", false
}

// Match lists the athletes whose name or group holds every word of a text,
// those that begin with it first.
func (s State) Match(text string) []store.Person {
	words := plain.Words(text)
	var begins, holds []store.Person
	for _, a := range s.People {
		hay := plain.Text(strings.Join(append([]string{a.Name}, a.Groups...), " "))
		switch {
		case !plain.Holds(hay, words):
		case len(words) > 0 && strings.HasPrefix(hay, words[0]):
			begins = append(begins, a)
		default:
			holds = append(holds, a)
		}
	}
	return append(begins, holds...)
}

// Groups lists the groups that have athletes, by name.
func (s State) Groups() []string {
	seen := map[string]bool{}
	for _, a := range s.People {
		for _, g := range a.Groups {
			seen[g] = true
		}
	}
	return slices.Sorted(maps.Keys(seen))
}

// InGroup shows the athletes of a group for printing; all for an empty one.
func (s State) InGroup(group string) State {
	s.group, s.Shown = group, AtOnce
	return s
}

// Listed are the athletes shown for printing.
func (s State) Listed() []store.Person {
	if s.group == "" {
		return s.People
	}
	var list []store.Person
	for _, a := range s.People {
		if slices.Contains(a.Groups, s.group) {
			list = append(list, a)
		}
	}
	return list
}

// Mark marks an athlete for a blank sheet, or takes the mark away.
func (s State) Mark(athlete record.ID, on bool) State { return s.markAll([]record.ID{athlete}, on) }

// MarkListed marks all athletes of the group, or takes all their marks away.
func (s State) MarkListed(on bool) State {
	var list []record.ID
	for _, a := range s.Listed() {
		list = append(list, a.ID)
	}
	return s.markAll(list, on)
}

// markAll marks athletes, or takes their marks away.
func (s State) markAll(list []record.ID, on bool) State {
	s.marked = maps.Clone(s.marked)
	for _, id := range list {
		if on {
			s.marked[id] = true
		} else {
			delete(s.marked, id)
		}
	}
	return s
}

// IsMarked reports whether an athlete is marked.
func (s State) IsMarked(athlete record.ID) bool { return s.marked[athlete] }

// Marked lists the marked athletes by name, also those not shown now.
func (s State) Marked() []store.Person {
	var list []store.Person
	for _, a := range s.People {
		if s.marked[a.ID] {
			list = append(list, a)
		}
	}
	return list
}

// Pages is how many sheets would be printed.
func (s State) Pages() int {
	n := len(s.Marked())
	if s.Nameless {
		n++
	}
	return n
}

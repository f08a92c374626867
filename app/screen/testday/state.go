package testday

import (
	"slices"
	"strings"

	"ebbwell/internal/consult"
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
	// Lacks is what keeps the sweat rate, or the sodium, from its range.
	Lacks []sweat.Missing
}

// State is the day as it is shown.
type State struct {
	// People are all athletes by name, Sheets what is unfinished.
	People []store.AthleteSummary
	Sheets []Sheet
	group  string
	marked map[record.ID]bool
	// Nameless asks for one blank sheet without a name.
	Nameless bool
}

// NewState makes the day from what is kept: all athletes, and the unfinished
// sheets with their findings.
func NewState(people []store.AthleteSummary, found []consult.Findings) State {
	s := State{People: people, marked: map[record.ID]bool{}}
	for _, f := range found {
		at := slices.IndexFunc(people, func(a store.AthleteSummary) bool { return a.ID == f.Test.AthleteID })
		if at < 0 {
			continue
		}
		sheet := Sheet{
			ID: f.Test.ID, Athlete: f.Test.AthleteID, Name: people[at].Name, Session: f.Test.Session, State: f.Test.State,
			Ready: f.Ready() && !f.Waits(),
		}
		for _, m := range f.Sweat.Missing {
			if !m.Optional || m.ID == sweat.MissingSodium {
				sheet.Lacks = append(sheet.Lacks, m)
			}
		}
		s.Sheets = append(s.Sheets, sheet)
	}
	return s
}

// Unfinished is the newest open sheet of an athlete; ok is false when there is
// none.
func (s State) Unfinished(athlete record.ID) (sheet Sheet, ok bool) {
	for _, one := range s.Sheets {
		if one.Athlete == athlete && one.State == record.TestOpen {
			return one, true
		}
	}
	return Sheet{}, false
}

// Match lists the athletes whose name or group holds every word of a text,
// those that begin with it first.
func (s State) Match(text string) []store.AthleteSummary {
	words := strings.Fields(strings.ToLower(text))
	var begins, holds []store.AthleteSummary
	for _, a := range s.People {
		hay := strings.ToLower(strings.Join(append([]string{a.Name}, a.Groups...), " "))
		switch {
		case slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(hay, w) }):
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
	var list []string
	for _, a := range s.People {
		for _, g := range a.Groups {
			if !slices.Contains(list, g) {
				list = append(list, g)
			}
		}
	}
	slices.Sort(list)
	return list
}

// InGroup shows the athletes of a group for printing; all for an empty one.
func (s State) InGroup(group string) State {
	s.group = group
	return s
}

// Listed are the athletes shown for printing.
func (s State) Listed() []store.AthleteSummary {
	if s.group == "" {
		return s.People
	}
	var list []store.AthleteSummary
	for _, a := range s.People {
		if slices.Contains(a.Groups, s.group) {
			list = append(list, a)
		}
	}
	return list
}

// Mark marks an athlete for a blank sheet, or takes the mark away.
func (s State) Mark(athlete record.ID, on bool) State {
	marked := map[record.ID]bool{}
	for id := range s.marked {
		marked[id] = true
	}
	if on {
		marked[athlete] = true
	} else {
		delete(marked, athlete)
	}
	s.marked = marked
	return s
}

// MarkListed marks all athletes shown, or takes all their marks away.
func (s State) MarkListed(on bool) State {
	for _, a := range s.Listed() {
		s = s.Mark(a.ID, on)
	}
	return s
}

// IsMarked reports whether an athlete is marked.
func (s State) IsMarked(athlete record.ID) bool { return s.marked[athlete] }

// Marked lists the marked athletes by name, also those not shown now.
func (s State) Marked() []store.AthleteSummary {
	var list []store.AthleteSummary
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

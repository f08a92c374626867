// Package roster is the list of athletes: to search, to sort, to open.
package roster

import (
	"cmp"
	"slices"
	"strings"

	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/plain"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// Row is one athlete in the list, as it stands now.
type Row struct {
	*store.Person
	// Flags are the conditions, the gravest first.
	Flags []record.FlagKind
	*told
}

// told is what is known of the tests and the plan of an athlete; of one whose row was
// not in sight yet it is nothing, in one place for all of them.
type told struct {
	// Read says that LastTest and Plan are what is kept: they are read once the
	// row is in sight, or sorted by.
	Read     bool
	LastTest store.TestLine
	// Rate is the sweat rate of the last test, L/h, when Known; Ranged is
	// false while it is provisional. Open says that it was not kept for a list
	// and has to be worked out first.
	Rate          float64
	Known, Ranged bool
	Open          bool
	// Gained: heavier after the last test than before; Unsaid says that this was not
	// kept for a list and has to be worked out.
	Gained, Unsaid bool
	Plan           store.PlanLine
}

// sportWord is the word of a sport, and what it is sorted by.
type sportWord struct{ word, key string }

// Column is what the list can be sorted by.
type Column int

// The columns.
const (
	ByName Column = iota
	BySport
	ByTest
	ByRate
	ByStep
	ByReview
	ByFlags
)

// State is the list as it is shown. What only some rows need, or only one way of
// sorting, is found when it is asked for.
type State struct {
	list   []store.Person
	byName []int32 // places in list; a row is a place here
	told   []*told // by row
	found  *found
	ask    Ask
	text   string
	column Column
	down   bool
}

// found is what was found of the rows when it was asked for.
type found struct {
	at    map[record.ID]int         // row, by the last test
	words map[string]sportWord      // by the code of a sport
	flags map[int][]record.FlagKind // conditions by row, the gravest first
	texts []string                  // what is searched, by row; none before the first search
}

// Ask is what the list is told about an athlete when it needs to know.
type Ask struct {
	// Flags are the conditions, the gravest first.
	Flags func(store.Person) []record.FlagKind
	// Keeps reports whether what was kept of the last test for a list can be shown:
	// else it has to be worked out.
	Keeps func(store.Person, record.FrozenLine) bool
	// Key writes what words of sports are sorted by.
	Key func(name string) string
	// Word is the word of a sport.
	Word func(sport string) string
}

// NewState makes the list from what is kept; byName are the places of the athletes in it
// in the order of their names.
func NewState(list []store.Person, byName []int32, ask Ask) State {
	s := State{list: list, byName: byName, told: make([]*told, len(byName)), ask: ask}
	s.found = &found{at: map[record.ID]int{}, words: map[string]sportWord{}, flags: map[int][]record.FlagKind{}}
	unread := &told{}
	for row := range s.told {
		s.told[row] = unread
	}
	return s
}

// person is the athlete in a row.
func (s State) person(row int) *store.Person { return &s.list[s.byName[row]] }

// flags finds the conditions of a row.
func (s State) flags(row int) []record.FlagKind {
	list, known := s.found.flags[row]
	if !known {
		list = s.ask.Flags(*s.person(row))
		s.found.flags[row] = list
	}
	return list
}

// sport finds the word of a row's sport.
func (s State) sport(row int) sportWord {
	code := s.person(row).Sport
	found, known := s.found.words[code]
	if !known && code != "" {
		word := s.ask.Word(code)
		found = sportWord{word, s.ask.Key(word)}
		s.found.words[code] = found
	}
	return found
}

// searched finds what of a row is searched.
func (s State) searched(row int) string {
	if s.found.texts == nil {
		s.found.texts = make([]string, len(s.byName))
	}
	text := &s.found.texts[row]
	if *text == "" {
		a := s.person(row)
		*text = plain.Text(strings.Join(append([]string{a.Name, s.sport(row).word, a.Position}, a.Groups...), " "))
	}
	return *text
}

// ToRead lists at most so many rows whose tests and plans are not read yet, of rows
// from one on; all of them for most below 0.
func (s State) ToRead(rows []int, most int) []int {
	var list []int
	for _, i := range rows {
		if len(list) == most {
			break
		}
		if !s.told[i].Read {
			list = append(list, i)
		}
	}
	return list
}

// ReadLines takes in what is kept of the tests and plans of the rows; who has none
// has none in lines.
func (s State) ReadLines(rows []int, lines map[record.ID]store.AthleteLine) {
	for _, row := range rows {
		a := s.person(row)
		line := lines[a.ID]
		t := &told{Read: true, LastTest: line.LastTest, Plan: line.Plan}
		s.told[row] = t
		if t.LastTest.ID == "" {
			continue
		}
		s.found.at[t.LastTest.ID] = row
		kept := t.LastTest.Line
		t.Known = kept.Rate != nil && s.ask.Keeps(*a, kept)
		t.Open = !t.Known
		if t.Known {
			t.Rate, t.Ranged = *kept.Rate, kept.Ranged
		}
		t.Gained, t.Unsaid = kept.Gain == record.GainYes, kept.Gain == ""
	}
}

// WorkedOut takes in the findings of last tests that were not kept for a list.
func (s State) WorkedOut(list []consult.Findings) {
	for _, f := range list {
		if row, ok := s.found.at[f.Test.ID]; ok {
			rate, t := f.Sweat.Fluid.Rate, s.told[row]
			t.Gained, t.Unsaid = consult.Gained(f), false
			t.Rate, t.Known, t.Ranged, t.Open = rate.Value, rate.Known, rate.Ranged, false
		}
	}
}

// Row is an athlete as it stands now.
func (s State) Row(i int) Row { return Row{s.person(i), s.flags(i), s.told[i]} }

// ToWorkOut lists at most so many last tests that have to be worked out, of
// rows from one on; all of them for most below 0.
func (s State) ToWorkOut(rows []int, most int) []record.ID {
	var list []record.ID
	for _, i := range rows {
		if len(list) == most {
			break
		}
		if t := s.told[i]; t.Open || t.Unsaid {
			list = append(list, t.LastTest.ID)
		}
	}
	return list
}

// Search shows only the athletes whose name, sport or group holds every word.
func (s State) Search(text string) State {
	s.text = text
	return s
}

// Sort sorts by a column.
func (s State) Sort(c Column, down bool) State {
	s.column, s.down = c, down
	return s
}

// Empty reports whether there is nobody at all.
func (s State) Empty() bool { return len(s.byName) == 0 }

// Rows are the places of the athletes to show, in order; see [State.Row].
func (s State) Rows() []int {
	wanted := plain.Words(s.text)
	var list []int
	for i := range s.byName {
		if len(wanted) == 0 || plain.Holds(s.searched(i), wanted) {
			list = append(list, i)
		}
	}
	if s.column == ByName && !s.down {
		return list
	}
	slices.SortStableFunc(list, func(i, j int) int {
		order := s.compare(i, j)
		if s.down {
			order = -order
		}
		return order // else by name, as they stand
	})
	return list
}

// SortsByTest reports whether every last test has to be known to sort: its rate, or
// whether the athlete was heavier after it.
func (s State) SortsByTest() bool { return s.column == ByRate || s.column == ByFlags }

// SortsByLines reports whether tests and plans of all have to be read to sort.
func (s State) SortsByLines() bool {
	return slices.Contains([]Column{ByTest, ByRate, ByStep, ByReview, ByFlags}, s.column)
}

// gravity orders rows by what each names first: a gain, what is the matter today, a
// correction behind the plan, a condition; and by the gravest condition within each.
func (s State) gravity(row int) (class, condition int) {
	flags, t := s.flags(row), s.told[row]
	if len(flags) > 0 {
		condition = care.Gravity(flags[0])
	}
	switch {
	case t.Gained:
		class = 3
	case len(flags) > 0 && care.EffectOf(flags[0]).Today:
		class = 2
	case t.Plan.Corrected:
		class = 1
	}
	return class, condition
}

// Alerts is how many things there are to know of a row.
func (r Row) Alerts() int {
	n := len(r.Flags)
	if r.Gained {
		n++
	}
	if r.Plan.Corrected {
		n++
	}
	return n
}

// compare orders two rows by the chosen column.
func (s State) compare(i, j int) int {
	a, b := s.told[i], s.told[j]
	switch s.column {
	case BySport:
		return strings.Compare(s.sport(i).key, s.sport(j).key)
	case ByTest:
		return strings.Compare(string(a.LastTest.Date), string(b.LastTest.Date))
	case ByRate:
		return cmp.Compare(a.Rate, b.Rate)
	case ByStep:
		return cmp.Compare(a.Plan.Step, b.Plan.Step)
	case ByReview:
		return strings.Compare(string(a.Plan.Review), string(b.Plan.Review))
	case ByFlags:
		class, condition := s.gravity(i)
		other, than := s.gravity(j)
		return cmp.Or(cmp.Compare(class, other), cmp.Compare(condition, than), cmp.Compare(s.Row(i).Alerts(), s.Row(j).Alerts()))
	}
	return cmp.Compare(i, j)
}

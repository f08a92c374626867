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

// Row is one athlete in the list.
type Row struct {
	ID       record.ID
	Name     string
	Sport    string
	Position string
	Groups   []string
	// Flags are the conditions, the gravest first.
	Flags []record.FlagKind
	*told

	// name and word are what it is sorted by, text what is searched, about what is
	// known of the athlete.
	name, word, text string
	about            *store.AthleteSummary
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
	all    []Row             // by name
	at     map[record.ID]int // place in all, by the last test
	words  map[string]string // the words of sports
	ask    Ask
	text   string
	column Column
	down   bool
}

// Ask is what the list is told about an athlete when it needs to know.
type Ask struct {
	// Flags are the conditions, the gravest first.
	Flags func(store.AthleteSummary) []record.FlagKind
	// Keeps reports whether what was kept of the last test for a list can be shown:
	// else it has to be worked out.
	Keeps func(store.AthleteSummary, record.FrozenLine) bool
	// Key writes what names are sorted by.
	Key func(name string) string
	// Word is the word of a sport.
	Word func(sport string) string
}

// NewState makes the list from what is kept.
func NewState(list []store.AthleteSummary, ask Ask) State {
	order := make([]keyed, len(list))
	for i := range list {
		order[i] = keyed{ask.Key(list[i].Name), i}
	}
	slices.SortFunc(order, func(a, b keyed) int {
		if n := strings.Compare(a.key, b.key); n != 0 {
			return n
		}
		return a.at - b.at
	})
	s := State{all: make([]Row, len(list)), at: map[record.ID]int{}, words: map[string]string{}, ask: ask}
	unread := &told{}
	for i, k := range order {
		a := &list[k.at]
		s.all[i] = Row{told: unread, ID: a.ID, Name: a.Name, Sport: a.Sport, Position: a.Position, Groups: a.Groups, name: k.key, about: a}
	}
	return s
}

// keyed is the place of an athlete in the list that was read, with what it is sorted
// by: little to move about.
type keyed struct {
	key string
	at  int
}

// flagged finds the conditions of a row.
func (s State) flagged(r *Row) []record.FlagKind {
	if r.Flags == nil {
		r.Flags = append([]record.FlagKind{}, s.ask.Flags(*r.about)...)
	}
	return r.Flags
}

// sport finds the word of a row's sport.
func (s State) sport(r *Row) string {
	if r.word == "" && r.Sport != "" {
		word, known := s.words[r.Sport]
		if !known {
			word = s.ask.Word(r.Sport)
			s.words[r.Sport] = word
		}
		r.word = word
	}
	return r.word
}

// searched finds what of a row is searched.
func (s State) searched(r *Row) string {
	if r.text == "" {
		text := r.Name + " " + s.sport(r) + " " + r.Position
		for _, g := range r.Groups {
			text += " " + g
		}
		r.text = plain.Text(text)
	}
	return r.text
}

// ToRead lists at most so many rows whose tests and plans are not read yet, of rows
// from one on; all of them for most below 0.
func (s State) ToRead(rows []int, most int) []int {
	var list []int
	for _, i := range rows {
		if len(list) == most {
			break
		}
		if !s.all[i].Read {
			list = append(list, i)
		}
	}
	return list
}

// ReadLines takes in what is kept of the tests and plans of the rows; who has none
// has none in lines.
func (s State) ReadLines(rows []int, lines map[record.ID]store.AthleteLine) {
	for _, i := range rows {
		row := &s.all[i]
		line := lines[row.ID]
		row.told = &told{Read: true, LastTest: line.LastTest, Plan: line.Plan}
		if row.LastTest.ID == "" {
			continue
		}
		s.at[row.LastTest.ID] = i
		kept := row.LastTest.Line
		row.Known = kept.Rate != nil && s.ask.Keeps(*row.about, kept)
		row.Open = !row.Known
		if row.Known {
			row.Rate, row.Ranged = *kept.Rate, kept.Ranged
		}
		row.Gained, row.Unsaid = kept.Gain == record.GainYes, kept.Gain == ""
	}
}

// WorkedOut takes in the findings of last tests that were not kept for a list.
func (s State) WorkedOut(found []consult.Findings) {
	for _, f := range found {
		if i, ok := s.at[f.Test.ID]; ok {
			rate := f.Sweat.Fluid.Rate
			s.all[i].Gained, s.all[i].Unsaid = consult.Gained(f), false
			s.all[i].Rate, s.all[i].Known, s.all[i].Ranged, s.all[i].Open = rate.Value, rate.Known, rate.Ranged, false
		}
	}
}

// Row is an athlete as it stands now.
func (s State) Row(i int) Row {
	s.flagged(&s.all[i])
	return s.all[i]
}

// ToWorkOut lists at most so many last tests that have to be worked out, of
// rows from one on; all of them for most below 0.
func (s State) ToWorkOut(rows []int, most int) []record.ID {
	var list []record.ID
	for _, i := range rows {
		if len(list) == most {
			break
		}
		if s.all[i].Open || s.all[i].Unsaid {
			list = append(list, s.all[i].LastTest.ID)
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
func (s State) Empty() bool { return len(s.all) == 0 }

// Rows are the places of the athletes to show, in order; see [State.Row].
func (s State) Rows() []int {
	wanted := plain.Words(s.text)
	var list []int
	for i := range s.all {
		if len(wanted) == 0 || plain.Holds(s.searched(&s.all[i]), wanted) {
			list = append(list, i)
		}
	}
	if s.column == ByName && !s.down {
		return list
	}
	slices.SortStableFunc(list, func(i, j int) int {
		a, b := &s.all[i], &s.all[j]
		order := s.compare(a, b)
		if s.down {
			order = -order
		}
		return cmp.Or(order, strings.Compare(a.name, b.name))
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
func (s State) gravity(r *Row) (class, condition int) {
	flags := s.flagged(r)
	if len(flags) > 0 {
		condition = care.Gravity(flags[0])
	}
	switch {
	case r.Gained:
		class = 3
	case len(flags) > 0 && care.EffectOf(flags[0]).Today:
		class = 2
	case r.Plan.Corrected:
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
func (s State) compare(a, b *Row) int {
	switch s.column {
	case BySport:
		return strings.Compare(s.ask.Key(s.sport(a)), s.ask.Key(s.sport(b)))
	case ByTest:
		return strings.Compare(string(a.LastTest.Date), string(b.LastTest.Date))
	case ByRate:
		return cmp.Compare(a.Rate, b.Rate)
	case ByStep:
		return cmp.Compare(a.Plan.Step, b.Plan.Step)
	case ByReview:
		return strings.Compare(string(a.Plan.Review), string(b.Plan.Review))
	case ByFlags:
		class, condition := s.gravity(a)
		other, than := s.gravity(b)
		return cmp.Or(cmp.Compare(class, other), cmp.Compare(condition, than), cmp.Compare(a.Alerts(), b.Alerts()))
	}
	return strings.Compare(a.name, b.name)
}

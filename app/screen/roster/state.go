// Package roster is the list of athletes: to search, to sort, to open.
package roster

import (
	"cmp"
	"slices"
	"strings"

	"ebbwell/internal/consult"
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
	Flags    []record.FlagKind
	LastTest store.TestLine
	// Rate is the sweat rate of the last test, L/h, when Known; Ranged is
	// false while it is provisional.
	Rate          float64
	Known, Ranged bool
	Plan          store.PlanLine
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

// State is the list as it is shown.
type State struct {
	all    []Row
	text   string
	column Column
	down   bool
}

// NewState makes the list from what is kept; latest holds the newest test of
// each athlete with its findings.
func NewState(list []store.AthleteSummary, latest map[record.ID]consult.Findings, flags func(store.AthleteSummary) []record.FlagKind) State {
	s := State{}
	for _, a := range list {
		row := Row{
			ID: a.ID, Name: a.Name, Sport: a.Sport, Position: a.Position, Groups: a.Groups, Flags: flags(a),
			LastTest: a.LastTest, Plan: a.Plan,
		}
		if f, ok := latest[a.ID]; ok {
			rate := f.Sweat.Fluid.Rate
			row.Rate, row.Known, row.Ranged = rate.Value, rate.Known, rate.Ranged
		}
		s.all = append(s.all, row)
	}
	return s
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

// Rows are the athletes to show, in order; word gives the sport's word, by
// which it is searched and sorted.
func (s State) Rows(word func(sport string) string) []Row {
	wanted := strings.Fields(strings.ToLower(s.text))
	var list []Row
	for _, r := range s.all {
		hay := strings.ToLower(strings.Join(append([]string{r.Name, word(r.Sport), r.Position}, r.Groups...), " "))
		if !slices.ContainsFunc(wanted, func(w string) bool { return !strings.Contains(hay, w) }) {
			list = append(list, r)
		}
	}
	slices.SortStableFunc(list, func(a, b Row) int {
		order := s.compare(a, b, word)
		if s.down {
			order = -order
		}
		return cmp.Or(order, strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)))
	})
	return list
}

// compare orders two rows by the chosen column.
func (s State) compare(a, b Row, word func(string) string) int {
	switch s.column {
	case BySport:
		return strings.Compare(word(a.Sport), word(b.Sport))
	case ByTest:
		return strings.Compare(string(a.LastTest.Date), string(b.LastTest.Date))
	case ByRate:
		return cmp.Compare(a.Rate, b.Rate)
	case ByStep:
		return cmp.Compare(a.Plan.Step, b.Plan.Step)
	case ByReview:
		return strings.Compare(string(a.Plan.Review), string(b.Plan.Review))
	case ByFlags:
		return cmp.Compare(len(a.Flags), len(b.Flags))
	}
	return strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name))
}

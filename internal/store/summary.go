package store

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Person is an athlete as all lists of athletes know them: what is kept in memory of
// ten thousand, so no more than that.
type Person struct {
	ID         record.ID
	Name       string
	Sport      string
	Position   string
	Born       record.Date
	MassHidden bool
	Groups     []string
	Flags      []record.FlagKind
}

// AthleteSummary is an athlete with what a list shows of their tests and plans. What
// has to be computed from a test that is not closed is not in it; see [Store.Sheets].
type AthleteSummary struct {
	Person
	AthleteLine
	ChangedAt time.Time
}

// TestLine is a test in a list; the ID is empty when there is none.
type TestLine struct {
	ID    record.ID
	Date  record.Date
	State record.TestState
	// Line is what was kept for a list when the test was closed.
	Line record.FrozenLine
}

// PlanLine is an agreed plan in a list; the ID is empty when there is none.
type PlanLine struct {
	ID   record.ID
	Name string
	// Step is the place of the step that is now, 1 for the first, 0 when none
	// is; Steps is how many there are.
	Step, Steps int
	// Review is the day of the next review, empty when none is set.
	Review record.Date
	// Corrected: a record behind the plan was corrected since it was agreed.
	Corrected bool
}

// AthleteLine is what a list shows of the tests and plans of an athlete.
type AthleteLine struct {
	// Tests is how many sheets there are, LastTest the newest by its date.
	Tests    int
	LastTest TestLine
	// Plan is the plan agreed last; one made for a stop of a trip is not meant.
	Plan PlanLine
}

// Athletes lists the athletes by name with what a list shows of their tests and
// plans. A list that may be long takes [Store.People] and asks for the lines of
// the rows in sight.
func (s *Store) Athletes(ctx context.Context) ([]AthleteSummary, error) {
	var all []AthleteSummary
	err := s.read(ctx, "list athletes", func(tx *gorm.DB) error {
		people, err := listed(tx, nil)
		if err != nil {
			return err
		}
		all = make([]AthleteSummary, len(people))
		at := make(map[record.ID]*AthleteSummary, len(people))
		for i, p := range people {
			all[i].Person, at[p.ID] = p, &all[i]
		}
		if err := addChanged(tx, at); err != nil {
			return err
		}
		lines, err := linesOf(tx, nil)
		for id, l := range lines {
			if a := at[id]; a != nil {
				a.AthleteLine = *l
			}
		}
		return err
	})
	return all, err
}

// People lists the athletes by name with their groups and flags, and nothing of
// their tests, plans and changes. The list is kept until an athlete or a group
// changes, and handed out again: it is not to be written to. Of athletes that were
// saved since only those are read.
func (s *Store) People(ctx context.Context) (all []Person, err error) {
	err = s.read(ctx, "list athletes", func(tx *gorm.DB) (err error) {
		list := func(some []record.ID) ([]Person, error) { return listed(tx, some) }
		if s.options.ReadOnly { // others write
			all, err = list(nil)
			return err
		}
		all, err = s.files.people.or(list)
		return err
	})
	return all, err
}

// Lines reads what a list shows of the tests and plans of some athletes, such as
// those of the rows in sight. Who has neither is not in the answer.
func (s *Store) Lines(ctx context.Context, athletes []record.ID) (map[record.ID]AthleteLine, error) {
	all := make(map[record.ID]AthleteLine, len(athletes))
	for chunk := range slices.Chunk(athletes, atOnce) {
		err := s.read(ctx, "list tests and plans", func(tx *gorm.DB) error {
			lines, err := linesOf(tx, chunk)
			for id, l := range lines {
				all[id] = *l
			}
			return err
		})
		if err != nil {
			return nil, err
		}
	}
	return all, nil
}

// linesOf reads the lines of some athletes, or of all where none are named.
func linesOf(tx *gorm.DB, athletes []record.ID) (map[record.ID]*AthleteLine, error) {
	lines := make(map[record.ID]*AthleteLine, len(athletes))
	if err := addTests(tx, lines, athletes); err != nil {
		return nil, err
	}
	return lines, addPlans(tx, lines, athletes)
}

// lineIn is the line of an athlete, made when there is none yet.
func lineIn(lines map[record.ID]*AthleteLine, athlete record.ID) *AthleteLine {
	if lines[athlete] == nil {
		lines[athlete] = &AthleteLine{}
	}
	return lines[athlete]
}

// each asks a question and calls take for each row, once its values are in what
// into points at.
func each(tx *gorm.DB, into []any, take func(), question string, values ...any) error {
	rows, err := tx.Raw(question, values...).Rows()
	if err != nil {
		return fail(err, "list rows")
	}
	defer func() { _ = rows.Close() }() // rows.Err tells of what was read
	for rows.Next() {
		if err := rows.Scan(into...); err != nil {
			return fail(err, "list rows")
		}
		take()
	}
	return fail(rows.Err(), "list rows")
}

// addChanged puts the time of the last change into the lines.
func addChanged(tx *gorm.DB, at map[record.ID]*AthleteSummary) error {
	var athlete record.ID
	var changed time.Time
	return each(tx, []any{&athlete, &changed}, func() {
		if a := at[athlete]; a != nil {
			a.ChangedAt = changed
		}
	}, "SELECT id, changed_at FROM athletes WHERE deleted_at IS NULL")
}

// newestTests counts the tests of athletes and finds the newest, in one walk over
// an index. Its words: day, start, id, state.
const newestTests = `SELECT athlete_id, COUNT(*) AS tests,
	MAX(COALESCE(date, '') || ' ' || COALESCE(start, '') || ' ' || id || ' ' || COALESCE(state, '')) AS newest
	FROM tests WHERE deleted_at IS NULL%s GROUP BY athlete_id`

// addTests counts the tests and puts the newest into the lines.
func addTests(tx *gorm.DB, lines map[record.ID]*AthleteLine, athletes []record.ID) error {
	closed := map[record.ID]*TestLine{}
	var athlete record.ID
	var newest string
	var tests int
	condition, values := which("athlete_id", athletes)
	err := each(tx, []any{&athlete, &tests, &newest}, func() {
		l := lineIn(lines, athlete)
		l.Tests, l.LastTest = tests, testLine(newest)
		if l.LastTest.State == record.TestClosed {
			closed[l.LastTest.ID] = &l.LastTest
		}
	}, fmt.Sprintf(newestTests, condition), values...)
	if err != nil {
		return err
	}
	return addRates(tx, closed)
}

// testLine reads the words of the newest test of an athlete.
func testLine(newest string) TestLine {
	day, rest, _ := strings.Cut(newest, " ")
	_, rest, _ = strings.Cut(rest, " ")
	id, state, _ := strings.Cut(rest, " ")
	return TestLine{ID: record.ID(id), Date: record.Date(day), State: record.TestState(state)}
}

// addRates puts what was kept of closed tests for a list into their lines.
func addRates(tx *gorm.DB, closed map[record.ID]*TestLine) error {
	for chunk := range slices.Chunk(slices.Sorted(maps.Keys(closed)), atOnce) {
		var test record.ID
		var line record.FrozenLine
		err := each(tx, []any{&test, &line.Rate, &line.Ranged, &line.Method, &line.Gain}, func() {
			closed[test].Line = line // the newest copy comes last
		}, "SELECT record, line_rate, line_ranged, line_method, line_gain FROM frozen WHERE kind = ? AND record IN ? ORDER BY record, number", record.KindTest, chunk)
		if err != nil {
			return err
		}
	}
	return nil
}

// addPlans puts the plan agreed last, with its steps, into the lines. What is
// agreed for a stop of a trip is in force there only.
func addPlans(tx *gorm.DB, lines map[record.ID]*AthleteLine, athletes []record.ID) error {
	of := map[record.ID]*PlanLine{}
	var athlete record.ID
	var p PlanLine
	condition, values := which("athlete_id", athletes)
	err := each(tx, []any{&p.ID, &athlete, &p.Name, &p.Review, &p.Corrected}, func() {
		l := lineIn(lines, athlete)
		delete(of, l.Plan.ID)
		l.Plan = p
		of[p.ID] = &l.Plan
	}, `SELECT id, athlete_id, COALESCE(name, ''), COALESCE(review, ''), corrected_at IS NOT NULL FROM plans
		WHERE deleted_at IS NULL AND state = ? AND COALESCE(basis_stop_id, '') = ''`+condition+" ORDER BY agreed_at, id",
		append([]any{record.PlanAgreed}, values...)...)
	if err != nil {
		return err
	}
	for chunk := range slices.Chunk(slices.Sorted(maps.Keys(of)), atOnce) {
		if err := addSteps(tx, of, chunk); err != nil {
			return err
		}
	}
	return nil
}

// addSteps counts the steps of some plans and finds the one that is now.
func addSteps(tx *gorm.DB, of map[record.ID]*PlanLine, plans []record.ID) error {
	var plan record.ID
	var state record.StepState
	return each(tx, []any{&plan, &state}, func() {
		p := of[plan]
		p.Steps++
		if state == record.StepNow {
			p.Step = p.Steps
		}
	}, `SELECT plan_id, COALESCE(state, '') FROM steps
		WHERE deleted_at IS NULL AND plan_id IN ? ORDER BY position, id`, plans)
}

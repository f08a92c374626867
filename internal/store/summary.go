package store

import (
	"context"
	"errors"
	"maps"
	"slices"
	"strings"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// AthleteSummary is one line of the roster. What has to be computed from a
// test that is not closed is not in it; see [Store.Sheets].
type AthleteSummary struct {
	ID         record.ID
	Name       string
	Sport      string
	Position   string
	Born       record.Date
	MassHidden bool
	Groups     []string          `gorm:"-"`
	Flags      []record.FlagKind `gorm:"-"`
	// Tests is how many sheets there are, LastTest the newest by its date.
	Tests    int      `gorm:"-"`
	LastTest TestLine `gorm:"-"`
	// Plan is the plan agreed last; one made for a stop of a trip is not meant.
	Plan      PlanLine `gorm:"-"`
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
}

// Athletes lists the athletes by name.
func (s *Store) Athletes(ctx context.Context) ([]AthleteSummary, error) {
	var all []AthleteSummary
	err := s.read(ctx, "list athletes", func(tx *gorm.DB) error {
		if err := byName(alive(tx.Model(&record.Athlete{}), false)).Find(&all).Error; err != nil {
			return err
		}
		at := make(map[record.ID]*AthleteSummary, len(all))
		for i := range all {
			at[all[i].ID] = &all[i]
		}
		for _, add := range []func(*gorm.DB, map[record.ID]*AthleteSummary) error{addGroups, addFlags, addTests, addPlans} {
			if err := add(tx, at); err != nil {
				return err
			}
		}
		return nil
	})
	return all, err
}

// addGroups puts the names of the groups into the lines.
func addGroups(tx *gorm.DB, at map[record.ID]*AthleteSummary) error {
	var lines []struct {
		AthleteID record.ID
		Name      string
	}
	err := tx.Table("memberships").Select("memberships.athlete_id, groups.name").
		Joins("JOIN groups ON groups.id = memberships.group_id").
		Where("memberships.deleted_at IS NULL AND groups.deleted_at IS NULL").Order("groups.name").Find(&lines).Error
	for _, l := range lines {
		if a := at[l.AthleteID]; a != nil && !slices.Contains(a.Groups, l.Name) {
			a.Groups = append(a.Groups, l.Name)
		}
	}
	return err
}

// addFlags puts the flags into the lines.
func addFlags(tx *gorm.DB, at map[record.ID]*AthleteSummary) error {
	var lines []struct {
		AthleteID record.ID
		Kind      record.FlagKind
	}
	err := alive(tx.Model(&record.Flag{}), false).Select("athlete_id", "kind").Order("id").Find(&lines).Error
	for _, l := range lines {
		if a := at[l.AthleteID]; a != nil {
			a.Flags = append(a.Flags, l.Kind)
		}
	}
	return err
}

// newestTests counts the tests of every athlete and finds the newest, in one
// walk over an index. Its words: day, start, id, state.
const newestTests = `SELECT athlete_id, COUNT(*) AS tests,
	MAX(COALESCE(date, '') || ' ' || COALESCE(start, '') || ' ' || id || ' ' || COALESCE(state, '')) AS newest
	FROM tests WHERE deleted_at IS NULL GROUP BY athlete_id`

// addTests counts the tests and puts the newest into the lines.
func addTests(tx *gorm.DB, at map[record.ID]*AthleteSummary) error {
	rows, err := tx.Raw(newestTests).Rows()
	if err != nil {
		return fail(err, "count tests")
	}
	closed := map[record.ID]*TestLine{}
	for rows.Next() {
		var athlete, newest string
		var tests int
		if err := rows.Scan(&athlete, &tests, &newest); err != nil {
			return errors.Join(fail(err, "count tests"), rows.Close())
		}
		if a := at[record.ID(athlete)]; a != nil {
			a.Tests, a.LastTest = tests, testLine(newest)
			if a.LastTest.State == record.TestClosed {
				closed[a.LastTest.ID] = &a.LastTest
			}
		}
	}
	if err := errors.Join(rows.Err(), rows.Close()); err != nil {
		return fail(err, "count tests")
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
		rows, err := tx.Table("frozen").Select("record, line_rate, line_ranged").
			Where("kind = ? AND record IN ?", record.KindTest, chunk).Order("record, number").Rows()
		if err != nil {
			return fail(err, "list sweat rates")
		}
		for rows.Next() {
			var test string
			var line record.FrozenLine
			if err := rows.Scan(&test, &line.Rate, &line.Ranged); err != nil {
				return errors.Join(fail(err, "list sweat rates"), rows.Close())
			}
			closed[record.ID(test)].Line = line // the newest copy comes last
		}
		if err := errors.Join(rows.Err(), rows.Close()); err != nil {
			return fail(err, "list sweat rates")
		}
	}
	return nil
}

// addPlans puts the plan agreed last, with its steps, into the lines. What is
// agreed for a stop of a trip is in force there only.
func addPlans(tx *gorm.DB, at map[record.ID]*AthleteSummary) error {
	var lines []struct {
		AthleteID, ID record.ID
		Name          string
		Review        record.Date
	}
	err := alive(tx.Model(&record.Plan{}), false).Where("state = ? AND COALESCE(basis_stop_id, '') = ''", record.PlanAgreed).
		Select("id", "athlete_id", "name", "review").Order("agreed_at, id").Find(&lines).Error
	if err != nil {
		return err
	}
	of := map[record.ID]*PlanLine{}
	for _, l := range lines {
		if a := at[l.AthleteID]; a != nil {
			delete(of, a.Plan.ID)
			a.Plan = PlanLine{ID: l.ID, Name: l.Name, Review: l.Review}
			of[l.ID] = &a.Plan
		}
	}
	return addSteps(tx, of)
}

// addSteps counts the steps of plans and finds the one that is now.
func addSteps(tx *gorm.DB, of map[record.ID]*PlanLine) error {
	var lines []struct {
		PlanID record.ID
		State  record.StepState
	}
	err := tx.Table("steps").Select("steps.plan_id, steps.state").Joins("JOIN plans ON plans.id = steps.plan_id").
		Where("plans.state = ? AND steps.deleted_at IS NULL", record.PlanAgreed).
		Order("steps.position, steps.id").Find(&lines).Error
	for _, l := range lines {
		if p := of[l.PlanID]; p != nil {
			p.Steps++
			if l.State == record.StepNow {
				p.Step = p.Steps
			}
		}
	}
	return err
}

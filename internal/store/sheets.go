package store

import (
	"cmp"
	"context"
	"slices"
	"strings"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Sheet is a test with all that it is worked out from.
type Sheet struct {
	Athlete record.Athlete
	Test    record.Test
	// Raw are its unread texts and reasons, Kept the copies of it, newest first.
	Raw  []record.RawText
	Kept []record.Frozen
	// Unread: nothing but the ID of the test is given, since all of it is known.
	Unread bool
}

// Known is how a test was when it was read: its version, and the newest copy of it.
type Known struct {
	Changed time.Time
	Copy    record.ID
}

// SheetsOf loads all tests of an athlete, the newest first: a fixed number of
// queries, whatever the number of tests.
func (s *Store) SheetsOf(ctx context.Context, athlete record.ID) ([]Sheet, error) {
	return s.SheetsBut(ctx, athlete, nil)
}

// SheetsBut is [Store.SheetsOf] for one who has read some of them before. Those that are
// still as they were known are not read again; see [Sheet.Unread].
func (s *Store) SheetsBut(ctx context.Context, athlete record.ID, known map[record.ID]Known) ([]Sheet, error) {
	var list []Sheet
	err := s.read(ctx, "load tests", func(tx *gorm.DB) (err error) {
		list, err = s.sheetsBut(tx, athlete, known)
		return err
	})
	return list, err
}

// sheetsBut loads what is not known.
func (s *Store) sheetsBut(tx *gorm.DB, athlete record.ID, known map[record.ID]Known) ([]Sheet, error) {
	if len(known) == 0 {
		return s.sheetsIn(tx, func(db *gorm.DB) *gorm.DB { return newestSession(db).Where("athlete_id = ?", athlete) })
	}
	order, same, err := stillKnown(tx, athlete, known)
	if err != nil {
		return nil, err
	}
	var missing []record.ID
	for _, id := range order {
		if !same[id] {
			missing = append(missing, id)
		}
	}
	read := make(map[record.ID]Sheet, len(missing))
	for chunk := range slices.Chunk(missing, atOnce) {
		some, err := s.sheetsIn(tx, func(db *gorm.DB) *gorm.DB { return db.Where("id IN ?", chunk) })
		if err != nil {
			return nil, err
		}
		for _, one := range some {
			read[one.Test.ID] = one
		}
	}
	list := make([]Sheet, len(order))
	for i, id := range order {
		if list[i] = read[id]; same[id] {
			list[i].Test.ID, list[i].Unread = id, true
		}
	}
	return list, nil
}

// stillKnown are the tests of an athlete, the newest first, and which of them are as they
// were known.
func stillKnown(tx *gorm.DB, athlete record.ID, known map[record.ID]Known) (order []record.ID, same map[record.ID]bool, err error) {
	same = make(map[record.ID]bool, len(known))
	var test, newest record.ID
	var changed time.Time
	err = each(tx, []any{&test, &changed, &newest}, func() {
		k, is := known[test]
		order, same[test] = append(order, test), is && k.Changed.Equal(changed) && k.Copy == newest
	}, `SELECT id, changed_at, COALESCE((SELECT f.id FROM frozen f WHERE f.kind = ? AND f.record = tests.id ORDER BY f.number DESC LIMIT 1), '')
		FROM tests WHERE deleted_at IS NULL AND athlete_id = ? ORDER BY date DESC, start DESC, id DESC`, record.KindTest, athlete)
	return order, same, err
}

// ListedTest is a test as a list needs it; all of it stands in an index.
type ListedTest struct {
	ID, AthleteID record.ID
	Date          record.Date
	Start         record.Clock
	State         record.TestState
}

// listedTest asks for tests as one text a row; its parts are day, start, id, athlete,
// state.
const listedTest = "SELECT COALESCE(date, '') || '" + between + "' || COALESCE(start, '') || '" + between + "' || id || '" + between +
	"' || athlete_id || '" + between + "' || state FROM tests WHERE deleted_at IS NULL AND "

// readTest takes the text of [listedTest] apart.
func readTest(text string) (t ListedTest) {
	date, rest, _ := strings.Cut(text, between)
	start, rest, _ := strings.Cut(rest, between)
	id, rest, _ := strings.Cut(rest, between)
	athlete, state, _ := strings.Cut(rest, between)
	return ListedTest{ID: record.ID(id), AthleteID: record.ID(athlete), Date: record.Date(date), Start: record.Clock(start), State: record.TestState(state)}
}

// CountTests counts the tests of an athlete.
func (s *Store) CountTests(ctx context.Context, athlete record.ID) (n int, err error) {
	err = s.read(ctx, "count tests", func(tx *gorm.DB) error {
		return each(tx, []any{&n}, func() {}, "SELECT COUNT(*) FROM tests WHERE deleted_at IS NULL AND athlete_id = ?", athlete)
	})
	return n, err
}

// TestsListed lists the tests of an athlete, the newest first, without reading them.
func (s *Store) TestsListed(ctx context.Context, athlete record.ID) ([]ListedTest, error) {
	var list []ListedTest
	err := s.read(ctx, "list tests", func(tx *gorm.DB) error {
		var text string
		return each(tx, []any{&text}, func() { list = append(list, readTest(text)) }, listedTest+"athlete_id = ?", athlete)
	})
	slices.SortFunc(list, latestTest)
	return list, err
}

// Unfinished lists the tests of all athletes that are open or wait for the
// laboratory, the newest first. All of it stands in an index, so that a list
// reads no test (a test holds it to that); those in sight are loaded by [Store.Sheets].
func (s *Store) Unfinished(ctx context.Context) ([]ListedTest, error) {
	var list []ListedTest
	err := s.read(ctx, "list unfinished tests", func(tx *gorm.DB) error {
		var athlete string
		gone := map[record.ID]bool{}
		err := each(tx, []any{&athlete}, func() { gone[record.ID(athlete)] = true }, "SELECT id FROM athletes WHERE deleted_at IS NOT NULL")
		if err != nil {
			return err
		}
		var text string
		return each(tx, []any{&text}, func() {
			if t := readTest(text); !gone[t.AthleteID] {
				list = append(list, t)
			}
		}, listedTest+"state IN (?, ?)", record.TestOpen, record.TestWaiting)
	})
	slices.SortFunc(list, latestTest)
	return list, err
}

// LatestTested are the athletes of a sport with a test that is no longer open, those
// tested last first, at most so many. Lower and upper case are the same in the sport for
// the letters of ASCII.
func (s *Store) LatestTested(ctx context.Context, sport string, most int) (list []record.ID, err error) {
	err = s.read(ctx, "list the athletes tested in a sport", func(tx *gorm.DB) error {
		var id string
		return each(tx, []any{&id}, func() { list = append(list, record.ID(id)) }, `SELECT a.id FROM athletes a JOIN tests t ON t.athlete_id = a.id
			WHERE a.deleted_at IS NULL AND t.deleted_at IS NULL AND t.state <> ? AND a.sport = ? COLLATE NOCASE
			GROUP BY a.id ORDER BY MAX(t.date || t.start) DESC, a.id LIMIT ?`, record.TestOpen, sport, most)
	})
	return list, err
}

// latestTest sorts listed tests as [newestSession] does.
func latestTest(a, b ListedTest) int {
	return cmp.Or(cmp.Compare(b.Date, a.Date), cmp.Compare(b.Start, a.Start), cmp.Compare(b.ID, a.ID))
}

// Sheets loads some tests, such as those of the rows in sight; what is not
// there any more is left out.
func (s *Store) Sheets(ctx context.Context, tests []record.ID) ([]Sheet, error) {
	var all []Sheet
	for chunk := range slices.Chunk(tests, atOnce) {
		some, err := s.sheets(ctx, func(db *gorm.DB) *gorm.DB { return newestSession(db).Where("id IN ?", chunk) })
		if err != nil {
			return nil, err
		}
		all = append(all, some...)
	}
	return all, nil
}

// newestSession sorts tests by the time of their session, the newest first.
func newestSession(db *gorm.DB) *gorm.DB { return db.Order("date DESC, start DESC, id DESC") }

// sheets loads tests with what is kept beside them, on one state of the database.
func (s *Store) sheets(ctx context.Context, which scope) ([]Sheet, error) {
	var list []Sheet
	err := s.read(ctx, "load tests", func(tx *gorm.DB) (err error) {
		list, err = s.sheetsIn(tx, which)
		return err
	})
	return list, err
}

// sheetsIn loads tests with what is kept beside them.
func (s *Store) sheetsIn(tx *gorm.DB, which scope) ([]Sheet, error) {
	found, err := loadRows(tx, s.shapes[record.KindTest], false, which)
	if err != nil {
		return nil, err
	}
	tests := found.Interface().([]record.Test)
	list := make([]Sheet, len(tests))
	for i, t := range tests {
		list[i].Test = t
	}
	for chunk := range slices.Chunk(list, atOnce) {
		if err := s.fillSheets(tx, chunk); err != nil {
			return nil, err
		}
	}
	return list, nil
}

// fillSheets adds athletes, raw texts and frozen copies to tests.
func (s *Store) fillSheets(tx *gorm.DB, list []Sheet) error {
	at, tests, owners := map[record.ID]*Sheet{}, []record.ID{}, []record.ID{}
	for i := range list {
		t := list[i].Test
		at[t.ID], tests, owners = &list[i], append(tests, t.ID), append(owners, t.AthleteID)
	}
	slices.Sort(owners)
	owners = slices.Compact(owners)
	found, err := loadRows(tx, s.shapes[record.KindAthlete], false, func(db *gorm.DB) *gorm.DB { return db.Where("id IN ?", owners) })
	if err != nil {
		return err
	}
	athletes := map[record.ID]record.Athlete{}
	for _, a := range found.Interface().([]record.Athlete) {
		if err := addFirstMass(tx, &a); err != nil {
			return err
		}
		athletes[a.ID] = a
	}
	for i := range list {
		list[i].Athlete = athletes[list[i].Test.AthleteID]
	}
	return addBeside(tx, tests, at)
}

// addBeside adds what is kept beside tests.
func addBeside(tx *gorm.DB, tests []record.ID, at map[record.ID]*Sheet) error {
	var raw []record.RawText
	if err := tx.Where("kind = ? AND record IN ?", record.KindTest, tests).Order("field, reason").Find(&raw).Error; err != nil {
		return err
	}
	for _, r := range raw {
		at[r.Record].Raw = append(at[r.Record].Raw, r)
	}
	var kept []record.Frozen
	if err := tx.Where("kind = ? AND record IN ?", record.KindTest, tests).Order("number DESC").Find(&kept).Error; err != nil {
		return err
	}
	unpack(kept)
	for _, f := range kept {
		at[f.Record].Kept = append(at[f.Record].Kept, f)
	}
	return nil
}

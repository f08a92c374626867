package store

import (
	"context"
	"testing"

	"ebbwell/internal/record"
)

// many is more than the 32,766 values that SQLite takes in one statement.
const many = 33_000

// makeMany fills a store with so many athletes, each with an open test that has
// a bottle with a refill, a reason, and a trip of their own.
func makeMany(t testing.TB, s *Store, n int) {
	t.Helper()
	numbers := "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ?) "
	for _, statement := range []string{
		"INSERT INTO athletes (id, name, created_at, changed_at) SELECT 'a' || i, 'Athlete ' || i, @at, @at FROM n",
		"INSERT INTO tests (id, athlete_id, state, date, start, created_at, changed_at) SELECT 't' || i, 'a' || i, 'open', '2026-05-01', '', @at, @at FROM n",
		"INSERT INTO bottles (id, test_id, position, created_at, changed_at) SELECT 'b' || i, 't' || i, 1, @at, @at FROM n",
		"INSERT INTO refills (id, bottle_id, position, created_at, changed_at) SELECT 'r' || i, 'b' || i, 1, @at, @at FROM n",
		"INSERT INTO raw_texts (kind, record, field, reason, text, at) SELECT 'test', 't' || i, 'note', 1, 'why', @at FROM n",
	} {
		must(t, s.files.writer.Exec(numbers+statement, n, map[string]any{"at": s.now()}).Error)
	}
}

// TestMoreThanOneStatementTakes: lists of more records than a statement takes
// values open, and nothing is lost at the seams.
func TestMoreThanOneStatementTakes(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	makeMany(t, s, many)
	athletes := got(s.Athletes(ctx))(t)
	if len(athletes) != many {
		t.Fatalf("%d athletes", len(athletes))
	}
	for _, a := range athletes {
		if a.Tests != 1 || a.LastTest.ID != "t"+a.ID[1:] || a.LastTest.State != record.TestOpen {
			t.Fatalf("%s has %d tests, the last %+v", a.ID, a.Tests, a.LastTest)
		}
	}
	open := got(s.Unfinished(ctx))(t)
	ids := make([]record.ID, len(open))
	for i, x := range open {
		ids[i] = x.ID
	}
	sheets := got(s.Sheets(ctx, ids))(t)
	if len(sheets) != many {
		t.Fatalf("%d sheets", len(sheets))
	}
	for _, x := range sheets {
		n := x.Test.ID[1:]
		if len(x.Raw) != 1 || x.Athlete.ID != "a"+n || len(x.Test.Bottles) != 1 || x.Test.Bottles[0].ID != "b"+n || len(x.Test.Bottles[0].Refills) != 1 {
			t.Fatalf("sheet %s is %+v", x.Test.ID, x)
		}
	}
}

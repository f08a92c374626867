package store

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// keepFlag is the flag that keeps a file of the newest version. One that is
// kept already is never written again.
const keepFlag = "keep-databases"

// keptFolder holds a database of every released version as that version left it.
const keptFolder = "testdata/databases"

// keptFiles lists the kept files, oldest first.
func keptFiles(t testing.TB) []string {
	t.Helper()
	files := got(filepath.Glob(filepath.Join(keptFolder, "v*.db")))(t)
	slices.SortFunc(files, func(a, b string) int { return versionOf(t, a) - versionOf(t, b) })
	return files
}

// versionOf reads the version in the name of a kept file.
func versionOf(t testing.TB, file string) int {
	t.Helper()
	return got(strconv.Atoi(strings.TrimSuffix(strings.TrimPrefix(filepath.Base(file), "v"), ".db")))(t)
}

// eachKept runs a test on every kept file.
func eachKept(t *testing.T, f func(t *testing.T, file string)) {
	t.Helper()
	for _, file := range keptFiles(t) {
		t.Run(filepath.Base(file), func(t *testing.T) { f(t, file) })
	}
}

// copyKept puts a kept file into a data folder.
func copyKept(t testing.TB, file string) string {
	t.Helper()
	dir := t.TempDir()
	must(t, os.WriteFile(filepath.Join(dir, fileName), got(os.ReadFile(file))(t), 0o600))
	return dir
}

// TestEveryReleaseIsKept: there is a file of every version but the newest,
// which is kept when it is released; with the flag it is kept now.
func TestEveryReleaseIsKept(t *testing.T) {
	newest := len(versions())
	if flag.Lookup(keepFlag).Value.String() == "true" {
		keepNewest(t, filepath.Join(keptFolder, fmt.Sprintf("v%d.db", newest)))
	}
	var have []int
	for _, file := range keptFiles(t) {
		have = append(have, versionOf(t, file))
	}
	for v := 1; v < newest; v++ {
		if !slices.Contains(have, v) {
			t.Errorf("no file of version %d is kept", v)
		}
	}
	if len(have) > newest || have[len(have)-1] > newest {
		t.Errorf("kept are %d, the newest version is %d", have, newest)
	}
}

// keepNewest writes a file of the newest version, unless there is one.
func keepNewest(t *testing.T, to string) {
	t.Helper()
	if _, err := os.Stat(to); err == nil {
		t.Fatalf("%s is kept: a released version never changes", to)
	}
	c := newClock()
	s := got(Open(t.TempDir(), Options{Clock: c.now, By: "Kit"}))(t)
	makeWorld(t, s)
	comeTogether(t, s, open(t, t.TempDir(), c))
	closeTheirs(t, s)
	must(t, s.Backup(context.Background(), got(filepath.Abs(to))(t)))
	must(t, s.Close())
}

// closeTheirs closes a test of the athlete who came from the other practice.
func closeTheirs(t *testing.T, s *Store) {
	t.Helper()
	ctx := context.Background()
	for _, a := range got(s.Athletes(ctx))(t) {
		if len(got(s.TripsOf(ctx, a.ID))(t)) == 0 {
			one := got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen, Note: "closed"}, Edit{}))(t)
			got(s.CloseTest(ctx, one, freezing("complete"), Edit{}))(t)
			return
		}
	}
	t.Fatal("nobody came")
}

// comeTogether takes an athlete of another practice in twice, so that something is
// left to be decided.
func comeTogether(t *testing.T, here, there *Store) {
	t.Helper()
	ctx, a := context.Background(), someone(t, there)
	got(here.Merge(ctx, looked(t, here, sent(t, there, a.ID))))(t)
	a.Flags = nil
	got(there.SaveAthlete(ctx, a, Edit{}))(t)
	got(here.Merge(ctx, looked(t, here, sent(t, there, a.ID))))(t)
	if len(got(here.Questions(ctx, a.ID))(t)) == 0 {
		t.Fatal("nothing is left to be decided")
	}
	must(t, there.Close())
}

// tableRows is what stands in a database: by table, by key, by column.
type tableRows map[string]map[string]map[string]any

// keyOf names a row whatever becomes of its other columns.
func keyOf(row map[string]any) string {
	if id, ok := row["id"]; ok {
		return fmt.Sprint(id)
	}
	return fmt.Sprint(row["kind"], row["record"], row["field"], row["reason"]) // a raw text
}

// rowsAt reads the database in a data folder as it lies there.
func rowsAt(t testing.TB, dir string) tableRows {
	t.Helper()
	db := got(connect(filepath.Join(dir, fileName), forLooking))(t)
	all := allRows(t, db)
	must(t, disconnect(db))
	return all
}

func allRows(t testing.TB, db *gorm.DB) tableRows {
	t.Helper()
	all := tableRows{}
	for _, table := range got(db.Migrator().GetTables())(t) {
		var rows []map[string]any
		must(t, db.Table(table).Find(&rows).Error)
		all[table] = map[string]map[string]any{}
		for _, row := range rows {
			all[table][keyOf(row)] = row
		}
		if len(all[table]) != len(rows) {
			t.Fatalf("%d rows of %s have %d keys", len(rows), table, len(all[table]))
		}
	}
	return all
}

// wantRows fails unless every table, row and value of before is there after.
// Frozen copies are packed from version 2 on.
func wantRows(t testing.TB, before, after tableRows, version int) {
	t.Helper()
	for table, rows := range before {
		for key, row := range rows {
			for column, want := range row {
				have := after[table][key][column]
				if version < 2 && table == "frozen" && (column == "inputs" || column == "results") {
					have = got(new(unpacker).unpack(have.([]byte)))(t)
				}
				if !reflect.DeepEqual(have, want) {
					t.Errorf("%s %s.%s was %v and is %v", table, key, column, want, have)
				}
			}
		}
		if more := len(after[table]) - len(rows); more != 0 && table != versionTable {
			t.Errorf("%s has %d rows more", table, more)
		}
	}
}

// TestKept opens a file of every version, with rows in every table: all that
// stood there is there still.
func TestKept(t *testing.T) {
	eachKept(t, func(t *testing.T, file string) {
		dir, ctx := copyKept(t, file), context.Background()
		before := rowsAt(t, dir)
		s := open(t, dir, newClock())
		checkWhole(t, s)
		wantRows(t, before, allRows(t, s.files.reader), versionOf(t, file))
		for table, rows := range before {
			if len(rows) == 0 {
				t.Errorf("the kept file has no rows in %s", table)
			}
		}
		wantRecords(t, s)
		// The kept file still takes a save.
		test := anOpenTest(t, s)
		test.Note = "after the upgrade"
		got(s.SaveTest(ctx, test, Edit{}))(t)
	})
}

// anOpenTest is the first test that may be saved.
func anOpenTest(t testing.TB, s *Store) record.Test {
	t.Helper()
	ctx := context.Background()
	for _, a := range got(s.Athletes(ctx))(t) {
		for _, one := range got(s.Tests(ctx, a.ID))(t) {
			if one.State == record.TestOpen {
				return one
			}
		}
	}
	t.Fatal("no test is open")
	return record.Test{}
}

// wantRecords loads a record of every kind.
func wantRecords(t testing.TB, s *Store) {
	t.Helper()
	ctx := context.Background()
	athletes := got(s.Athletes(ctx))(t)
	// The one who travels; who came from another practice does not.
	at := slices.IndexFunc(athletes, func(a AthleteSummary) bool { return len(got(s.TripsOf(ctx, a.ID))(t)) > 0 })
	if at < 0 {
		t.Fatalf("none of %d athletes travels", len(athletes))
	}
	id := athletes[at].ID
	tests, plans, trips := got(s.Tests(ctx, id))(t), got(s.Plans(ctx, id))(t), got(s.TripsOf(ctx, id))(t)
	if len(tests) != 1 || len(plans) != 1 || len(trips) != 1 {
		t.Fatalf("got %d tests, %d plans, %d trips", len(tests), len(plans), len(trips))
	}
	got(s.Practice(ctx))(t)
	got(s.LoadAthlete(ctx, id))(t)
	others := len(athletes) - 1
	if len(got(s.Groups(ctx))(t)) != 1 || len(got(s.Products(ctx))(t)) != 1+others {
		t.Error("group or product is gone")
	}
	ref := record.Ref{Kind: record.KindTest, ID: tests[0].ID}
	if kept := got(s.FrozenOf(ctx, ref))(t); len(kept) != 1 || string(kept[0].Inputs) != `{"a":1}` || string(kept[0].Results) != `{"b":2}` {
		t.Errorf("frozen copies %+v", kept)
	}
	if p := got(s.LoadPrint(ctx, got(s.PrintsOf(ctx, id))(t)[0].ID))(t); string(p.Bytes) != "%PDF-1.7" {
		t.Errorf("the page holds %q", p.Bytes)
	}
}

package store

import (
	"context"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"testing"
	"time"

	"github.com/go-gormigrate/gormigrate/v2"
	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// keepFlag is the flag that makes the kept file anew; only for a version that
// was not released yet.
const keepFlag = "keep-databases"

// keptFile is a database of an earlier version as that version left it.
const keptFile = "testdata/databases/v1.db"

// copyKept puts the kept file into a data folder.
func copyKept(t testing.TB) string {
	t.Helper()
	dir := t.TempDir()
	must(t, os.WriteFile(filepath.Join(dir, fileName), got(os.ReadFile(keptFile))(t), 0o600))
	return dir
}

// rowsIn counts the rows of every table.
func rowsIn(t testing.TB, db *gorm.DB) map[string]int64 {
	t.Helper()
	tables := got(db.Migrator().GetTables())(t)
	counts := map[string]int64{}
	for _, table := range tables {
		var n int64
		must(t, db.Table(table).Count(&n).Error)
		counts[table] = n
	}
	return counts
}

// TestKeptV1 opens a file of version 1 with rows in every table.
func TestKeptV1(t *testing.T) {
	if flag.Lookup(keepFlag).Value.String() == "true" {
		writeKept(t)
	}
	dir, ctx := copyKept(t), context.Background()
	s := open(t, dir, newClock())
	checkWhole(t, s)
	counts := rowsIn(t, s.files.reader)
	if len(counts) != 28 {
		t.Errorf("got %d tables, want 28", len(counts))
	}
	for table, n := range counts {
		if n == 0 {
			t.Errorf("the kept file has no rows in %s", table)
		}
	}
	athletes := got(s.Athletes(ctx))(t)
	if len(athletes) != 1 {
		t.Fatalf("got %d athletes", len(athletes))
	}
	id := athletes[0].ID
	tests, plans, trips := got(s.Tests(ctx, id))(t), got(s.Plans(ctx, id))(t), got(s.TripsOf(ctx, id))(t)
	if len(tests) != 1 || len(plans) != 1 || len(trips) != 1 {
		t.Fatalf("got %d tests, %d plans, %d trips", len(tests), len(plans), len(trips))
	}
	for name, one := range map[string]any{"practice": got(s.Practice(ctx))(t), "group": got(s.Groups(ctx))(t)[0],
		"product": got(s.Products(ctx))(t)[0], "athlete": got(s.LoadAthlete(ctx, id))(t), "test": tests[0], "plan": plans[0],
		"trip": trips[0], "print": got(s.LoadPrint(ctx, got(s.PrintsOf(ctx, id))(t)[0].ID))(t)} {
		wantFilled(t, reflect.ValueOf(one), name)
	}
	// The kept file still takes a save.
	tests[0].Note = "after the upgrade"
	got(s.SaveTest(ctx, tests[0], Edit{}))(t)
}

// writeKept makes the kept file with the present program.
func writeKept(t *testing.T) {
	t.Helper()
	s := got(Open(t.TempDir(), Options{Clock: newClock().now, By: "Kit"}))(t)
	makeWorld(t, s)
	must(t, os.MkdirAll(filepath.Dir(keptFile), 0o755))
	must(t, s.Backup(context.Background(), got(filepath.Abs(keptFile))(t)))
	must(t, s.Close())
}

// withNext is the list of versions with a second one, that adds a column with
// a value and a table with a link, as a later version would.
func withNext(midway func()) []*gormigrate.Migration {
	type Athlete struct {
		ID       string `gorm:"primaryKey;size:36"`
		Language string `gorm:"size:8"`
	}
	type Sibling struct {
		ID        string `gorm:"primaryKey;size:36"`
		AthleteID string `gorm:"not null;size:36"`
		Athlete   *Athlete
	}
	return append(versions(), &gormigrate.Migration{ID: "0002", Migrate: func(tx *gorm.DB) error {
		if err := tx.Migrator().AddColumn(&Athlete{}, "Language"); err != nil {
			return err
		}
		if err := tx.Table("athletes").Where("id <> ''").Update("language", "en").Error; err != nil {
			return err
		}
		if midway != nil {
			midway()
		}
		return tx.Migrator().CreateTable(&Sibling{})
	}})
}

// TestNextVersion takes the kept file to a version of tomorrow: its rows are
// there, a snapshot of it as it was, and today's program refuses it.
func TestNextVersion(t *testing.T) {
	dir, c, ctx := copyKept(t), newClock(), context.Background()
	s := got(Open(dir, Options{Clock: c.now, versions: withNext(nil)}))(t)
	checkWhole(t, s)
	var languages []string
	must(t, s.files.reader.Table("athletes").Pluck("language", &languages).Error)
	if !slices.Equal(languages, []string{"en"}) {
		t.Errorf("languages %q", languages)
	}
	if made := got(madeVersions(s.files.reader))(t); !slices.Equal(made, []string{"0001", "0002"}) {
		t.Errorf("versions %q", made)
	}
	if len(got(s.Athletes(ctx))(t)) != 1 {
		t.Error("the athlete is gone")
	}
	must(t, s.Close())
	_, err := Open(dir, Options{Clock: c.now})
	wantCode(t, err, CodeNewer)
	_, err = Open(dir, Options{Clock: c.now, ReadOnly: true})
	wantCode(t, err, CodeNewer)
	var own *Error
	if errors.As(err, &own); len(own.Snapshots) < 1 {
		t.Fatal("no snapshot is offered")
	}
	at := slices.IndexFunc(own.Snapshots, func(x Snapshot) bool { return x.Reason == SnapshotSchema })
	if at < 0 {
		t.Fatalf("no snapshot from before the change: %+v", own.Snapshots)
	}
	must(t, Restore(ctx, dir, own.Snapshots[at], Options{Clock: c.now}))
	s = open(t, dir, c)
	if len(got(s.Athletes(ctx))(t)) != 1 {
		t.Error("the athlete is gone")
	}
}

// TestFailedVersion: a change that fails, or breaks a link, leaves the old state.
func TestFailedVersion(t *testing.T) {
	boom := errors.New("boom")
	tests := map[string]struct {
		migrate func(tx *gorm.DB) error
		code    Code
	}{
		"fails": {func(tx *gorm.DB) error {
			return errors.Join(tx.Exec("DELETE FROM refills").Error, boom)
		}, CodeDisk},
		"breaks a link": {func(tx *gorm.DB) error { return tx.Exec("DELETE FROM athletes").Error }, CodeDamaged},
	}
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			dir, c := copyKept(t), newClock()
			bad := append(versions(), &gormigrate.Migration{ID: "0002", Migrate: tt.migrate})
			_, err := Open(dir, Options{Clock: c.now, versions: bad})
			wantCode(t, err, tt.code)
			s := open(t, dir, c)
			for table, n := range rowsIn(t, s.files.reader) {
				if n == 0 {
					t.Errorf("%s is empty", table)
				}
			}
			if made := got(madeVersions(s.files.reader))(t); !slices.Equal(made, []string{"0001"}) {
				t.Errorf("versions %q", made)
			}
		})
	}
}

// TestOlderReadOnly: a file that would have to be changed cannot be looked at.
func TestOlderReadOnly(t *testing.T) {
	_, err := Open(copyKept(t), Options{ReadOnly: true, versions: withNext(nil)})
	wantCode(t, err, CodeOlder)
}

// TestTimesAreKept as UTC in microseconds, whatever the zone they came in.
func TestTimesAreKept(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	at := time.Date(2026, 11, 25, 23, 59, 59, 987654321, time.FixedZone("east", 5*3600+1800))
	a := got(s.SaveAthlete(ctx, record.Athlete{}, Edit{}))(t)
	one := got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, ClosedAt: &at}, Edit{}))(t)
	loaded := got(s.LoadTest(ctx, one.ID))(t)
	if want := at.UTC().Truncate(time.Microsecond); *loaded.ClosedAt != want || *one.ClosedAt != want {
		t.Errorf("saved %s, loaded %s, want %s", one.ClosedAt, loaded.ClosedAt, want)
	}
}

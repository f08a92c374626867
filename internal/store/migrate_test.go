package store

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/go-gormigrate/gormigrate/v2"
	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// madeAt reads the changes that the file in a data folder has been through.
func madeAt(t testing.TB, dir string) []string {
	t.Helper()
	db := got(connect(filepath.Join(dir, fileName), forLooking))(t)
	made := got(madeVersions(db))(t)
	must(t, disconnect(db))
	return made
}

// tomorrow names the version after the newest.
func tomorrow() string { return fmt.Sprintf("%04d", len(versions())+1) }

// withNext is the list of versions with one more, that adds a column with a
// value and a table with a link, as a later version would.
func withNext() []*gormigrate.Migration {
	type Athlete struct {
		ID       string `gorm:"primaryKey;size:36"`
		Tomorrow string `gorm:"size:8"`
	}
	type Sibling struct {
		ID        string `gorm:"primaryKey;size:36"`
		AthleteID string `gorm:"not null;size:36"`
		Athlete   *Athlete
	}
	return append(versions(), &gormigrate.Migration{ID: tomorrow(), Migrate: func(tx *gorm.DB) error {
		if err := tx.Migrator().AddColumn(&Athlete{}, "Tomorrow"); err != nil {
			return err
		}
		if err := tx.Table("athletes").Where("id <> ''").Update("tomorrow", "en").Error; err != nil {
			return err
		}
		return tx.Migrator().CreateTable(&Sibling{})
	}})
}

// TestNextVersion takes every kept file to a version of tomorrow: its rows are
// there, a snapshot of it as it was, and today's program refuses it.
func TestNextVersion(t *testing.T) { eachKept(t, testNextVersion) }

func testNextVersion(t *testing.T, file string) {
	dir, c, ctx := copyKept(t, file), newClock(), context.Background()
	before := rowsAt(t, dir)
	s := got(Open(dir, Options{Clock: c.now, versions: withNext()}))(t)
	checkWhole(t, s)
	wantRows(t, before, allRows(t, s.files.reader), versionOf(t, file))
	var values []string
	must(t, s.files.reader.Table("athletes").Pluck("tomorrow", &values).Error)
	if want := slices.Repeat([]string{"en"}, len(before["athletes"])); len(want) == 0 || !slices.Equal(values, want) {
		t.Errorf("the new column holds %q", values)
	}
	if made := got(madeVersions(s.files.reader))(t); len(made) != len(versions())+1 || made[len(made)-1] != tomorrow() {
		t.Errorf("versions %q", made)
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
	wantRows(t, before, rowsAt(t, dir), len(versions()))
	s = open(t, dir, c)
	wantRows(t, before, allRows(t, s.files.reader), versionOf(t, file))
}

// TestFailedVersion: a change that fails, or breaks a link, leaves every kept
// file as it was, whatever changes went before it in the same run.
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
			eachKept(t, func(t *testing.T, file string) {
				dir, c := copyKept(t, file), newClock()
				before := rowsAt(t, dir)
				bad := append(versions(), &gormigrate.Migration{ID: tomorrow(), Migrate: tt.migrate})
				_, err := Open(dir, Options{Clock: c.now, versions: bad})
				wantCode(t, err, tt.code)
				wantRows(t, before, rowsAt(t, dir), len(versions()))
				if made := madeAt(t, dir); len(made) != versionOf(t, file) {
					t.Errorf("versions %q", made)
				}
			})
		})
	}
}

// TestOlderReadOnly: a file that would have to be changed cannot be looked at.
func TestOlderReadOnly(t *testing.T) {
	eachKept(t, func(t *testing.T, file string) {
		_, err := Open(copyKept(t, file), Options{ReadOnly: true, versions: withNext()})
		wantCode(t, err, CodeOlder)
	})
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

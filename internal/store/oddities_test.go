package store

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"ebbwell/internal/lock"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// clockMove is what becomes of the machine's clock between two starts.
type clockMove struct {
	name string
	by   time.Duration
	zone int // hours ahead of UTC from then on
}

// clockMoves sets a clock on, back, to another zone, and over the ends of summer
// time, where an hour comes twice or never.
func clockMoves() []clockMove {
	const day, year = 24 * time.Hour, 365 * 24 * time.Hour
	return []clockMove{
		{"next day", day, 2}, {"an hour that comes twice", 30 * time.Minute, 1}, {"the same hour again", 30 * time.Minute, 1},
		{"an hour that never comes", 30 * time.Minute, 2}, {"to the east", time.Hour, 14}, {"to the west", time.Hour, -11},
		{"a day back", -day, -11}, {"ten years on", 10 * year, 0}, {"ten years back", -10 * year, 0}, {"to 1970", -56 * year, 0},
		{"back from 1970", 56 * year, 0}, {"a century on", 100 * year, 0}, {"a century back", -100 * year, 0}, {"a minute back", -time.Minute, 5},
	}
}

// TestClockMoves: whatever the clock does between two starts, each start opens, what
// was entered is there, in the order it was entered, and no start takes away copies
// that were among those to be kept.
func TestClockMoves(t *testing.T) {
	dir, ctx, now := t.TempDir(), context.Background(), time.Date(2026, 10, 24, 23, 45, 0, 0, time.UTC)
	line := tally{line: "clock"}
	var id record.ID
	for round := range 2 {
		for i, move := range clockMoves() {
			now = now.Add(move.by)
			at := now.In(time.FixedZone(move.name, move.zone*3600))
			before := got(Snapshots(dir))(t)
			s := got(Open(dir, Options{Clock: func() time.Time { at = at.Add(time.Millisecond); return at }}))(t)
			if id == "" {
				a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
				id = got(s.SaveTest(ctx, record.Test{AthleteID: a.ID}, Edit{}))(t).ID
			}
			one := got(s.LoadTest(ctx, id))(t)
			n := round*len(clockMoves()) + i
			one.Bottles = append(one.Bottles, record.Bottle{Order: n, Before: record.Num(float64(n), quantity.Gram)})
			got(s.SaveTest(ctx, one, Edit{}))(t)
			o := survived
			if one = got(s.LoadTest(ctx, id))(t); len(one.Bottles) != n+1 || one.Bottles[n].Before.Or(-1) != float64(n) {
				t.Errorf("%s: %d entries of %d are there", move.name, len(one.Bottles), n+1)
				o = lost
			}
			checkWhole(t, s)
			must(t, s.Trouble())
			must(t, s.Close())
			if after := got(Snapshots(dir))(t); len(after) < min(len(before), SnapshotDays) {
				t.Errorf("%s: of %d copies %d are left", move.name, len(before), len(after))
				o = lost
			}
			line.count(o)
		}
	}
	line.log(t)
}

// TestOddPlaces: a data folder may lie anywhere the system lets it lie.
func TestOddPlaces(t *testing.T) {
	ctx, line := context.Background(), tally{line: "odd paths"}
	long := strings.Repeat("a very long name of a folder ", 8)[:130]
	names := []string{
		"with space", " begins with one", "ends with one ", "häßlich ñ 運動 🏃", "e\u0301 in two", "trailing dot.", "..two dots", "a?b#c&d=e;f", "100%25", "'quoted' \"twice\"",
		"tab\there", "-", "~", "$HOME", filepath.Join(long, long, long), "con",
	}
	tooLong := filepath.Join(long, long, long, long, long) // the engine takes 512 bytes

	if runtime.GOOS == "windows" {
		names = []string{"with space", "häßlich ñ 運動 🏃", "100%25", "-", "~"}
	}
	if _, err := Open(filepath.Join(t.TempDir(), tooLong), Options{}); CodeOf(err) != CodeLongPath {
		t.Errorf("a path that is too long: %v", err)
	}
	for _, name := range names {
		dir := filepath.Join(t.TempDir(), name)
		o := survived
		s, err := Open(dir, Options{Clock: newClock().now})
		var g record.Group
		if err == nil {
			g, err = s.SaveGroup(ctx, record.Group{Name: "Squad"}, Edit{})
			err = errors.Join(err, s.Backup(ctx, filepath.Join(t.TempDir(), filepath.Base(name)+".db")), s.Close())
		}
		if err == nil {
			s, err = Open(dir, Options{Clock: newClock().now})
		}
		if err == nil {
			_, err = s.LoadGroup(ctx, g.ID)
			err = errors.Join(err, s.Close())
		}
		if err != nil {
			t.Errorf("%q: %v", name, err)
			o = lost
		}
		line.count(o)
	}
	line.log(t)
}

// TestLockedBackupRefuses: another passphrase, a byte that was flipped or an end that
// was cut off opens nothing, leaves nothing half made, and says which it is.
func TestLockedBackupRefuses(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir()) // where a backup is looked at
	ctx, p := context.Background(), sceneAt(filepath.Join(t.TempDir(), "scene"))
	makeScene(t, filepath.Dir(p.data), false)
	must(t, p.open())
	must(t, backUp(got(lock.NewKey(passphrase, 2))(t))(ctx, p))
	must(t, p.s.Close())
	path := filepath.Join(p.outside, "backup.db")
	whole := got(os.ReadFile(path))(t)
	opened := got(OpenBackup(ctx, path, passphrase))(t)
	must(t, opened.Close())

	wrong := tally{line: "wrong passphrase"}
	for _, other := range []string{"", "x", passphrase + " ", strings.ToUpper(passphrase), passphrase[1:], "drei trockene Tücher", strings.Repeat(passphrase, 50)} {
		_, err := OpenBackup(ctx, path, other)
		wrong.count(refusal(t, err, lock.ErrPassphrase))
	}
	wrong.log(t)
	broken := tally{line: "locked backup damaged"}
	step := max(61, len(whole)/(6*faultsOf(t)))
	for at := 0; at < len(whole); at += step {
		flipped := slices.Clone(whole)
		flipped[at] ^= 0xff
		for _, data := range [][]byte{flipped, whole[:at]} {
			must(t, os.WriteFile(path, data, 0o600))
			_, err := OpenBackup(ctx, path, passphrase)
			broken.count(refusal(t, err, lock.ErrPassphrase, lock.ErrDamaged, lock.ErrNotLocked, &Error{}))
		}
	}
	broken.log(t)
}

// refusal is lost unless an error is one of some, and nothing was left half made.
func refusal(t *testing.T, err error, allowed ...error) outcome {
	t.Helper()
	left := got(os.ReadDir(os.Getenv("TMPDIR")))(t)
	known := slices.ContainsFunc(allowed, func(a error) bool {
		own, isOwn := a.(*Error) //nolint:errorlint // it only stands for its type
		return errors.Is(err, a) || isOwn && errors.As(err, &own)
	})
	if err == nil || !known || len(left) > 0 {
		t.Errorf("opens with %v (%s), %d files are left", err, reflect.TypeOf(err), len(left))
		return lost
	}
	return survived
}

// TestTwoPrograms: of many that want one folder one has it, the others are told so
// and harm nothing.
func TestTwoPrograms(t *testing.T) {
	dir, line, ctx := t.TempDir(), tally{line: "two programs"}, context.Background()
	for i := range 3 * faultsOf(t) {
		s := got(Open(dir, Options{Clock: newClock().now}))(t)
		name := fmt.Sprint("group ", i)
		got(s.SaveGroup(ctx, record.Group{Name: name}, Edit{}))(t)
		o := survived
		for _, work := range []string{"open", "save", "look"} {
			if out := runChild(t, childCommand(work, dir)); out != "code: in-use" {
				t.Errorf("a second program that wants to %s: %q", work, out)
				o = lost
			}
		}
		if list := got(s.Groups(ctx))(t); len(list) != i+1 {
			t.Errorf("%d groups of %d", len(list), i+1)
			o = lost
		}
		must(t, s.Close())
		line.count(o)
	}
	line.log(t)
}

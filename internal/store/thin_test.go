package store

import (
	"context"
	"errors"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"ebbwell/internal/record"
)

// daily takes a snapshot on a day and thins what there is, newest first.
func daily(list []Snapshot, at time.Time) []Snapshot {
	list = append(list, Snapshot{Path: at.Format(time.RFC3339), At: at, Reason: SnapshotDaily})
	slices.SortFunc(list, func(a, b Snapshot) int { return b.At.Compare(a.At) })
	gone := toThin(list, record.DateOf(at), time.UTC)
	return slices.DeleteFunc(list, func(s Snapshot) bool {
		return slices.ContainsFunc(gone, func(g Snapshot) bool { return g.Path == s.Path })
	})
}

// TestThinning over three years of daily use: the last 14 days, one of each of
// 8 weeks, one of each of 12 months, and no more.
func TestThinning(t *testing.T) {
	day := time.Date(2026, 1, 1, 9, 0, 0, 0, time.UTC)
	var list []Snapshot
	for range 3 * 365 {
		day = day.AddDate(0, 0, 1)
		list = daily(list, day)
		has := func(at time.Time) bool {
			return slices.ContainsFunc(list, func(s Snapshot) bool { return s.At.Equal(at) })
		}
		for back := range min(SnapshotDays, len(list)) {
			if !has(day.AddDate(0, 0, -back)) {
				t.Fatalf("on %s the copy of %d days before is gone", day, back)
			}
		}
		if most := SnapshotDays + SnapshotWeeks + SnapshotMonths; len(list) > most {
			t.Fatalf("on %s there are %d copies, more than %d", day, len(list), most)
		}
	}
	weeks, months := map[string]bool{}, map[string]bool{}
	for _, s := range list {
		weeks[newThinning().of[1].name(s.At)], months[s.At.Format("2006-01")] = true, true
	}
	if len(months) != SnapshotMonths || len(weeks) < SnapshotWeeks {
		t.Errorf("copies of %d weeks and %d months", len(weeks), len(months))
	}
	if oldest := list[len(list)-1].At; day.Sub(oldest) < 330*24*time.Hour {
		t.Errorf("the oldest is of %s", oldest)
	}
}

// TestThinningWhateverTheClock: a clock that jumps years on or back, and comes
// right again, takes no more than thinning takes: the newest copies of the true
// days stay.
func TestThinningWhateverTheClock(t *testing.T) {
	start := time.Date(2026, 6, 1, 9, 0, 0, 0, time.UTC)
	for name, jump := range map[string]int{"on by a day": 1, "on by a month": 31, "on by ten years": 3650, "back by a month": -31, "back by ten years": -3650} {
		t.Run(name, func(t *testing.T) {
			var list []Snapshot
			for i := range 10 {
				list = daily(list, start.AddDate(0, 0, i))
			}
			for i := range 4 { // four days of use on the wrong day
				list = daily(list, start.AddDate(0, 0, 10+i+jump).Add(time.Minute))
			}
			for i := 5; i < 10; i++ {
				if at := start.AddDate(0, 0, i); !slices.ContainsFunc(list, func(s Snapshot) bool { return s.At.Equal(at) }) {
					t.Errorf("the copy of %s is gone", at)
				}
			}
		})
	}
}

// TestThinningByReason: copies from before a new version and those set aside are
// not crowded out by those of the days.
func TestThinningByReason(t *testing.T) {
	now := time.Date(2026, 6, 1, 9, 0, 0, 0, time.UTC)
	list := []Snapshot{{At: now, Reason: SnapshotDaily}}
	for i, reason := range []SnapshotReason{SnapshotSchema, SnapshotSetAside, SnapshotDaily, SnapshotSchema} {
		list = append(list, Snapshot{At: now.Add(-time.Duration(i+1) * time.Minute), Reason: reason})
	}
	if gone := toThin(list, "2026-06-01", time.UTC); len(gone) != 0 {
		t.Errorf("gone are %+v", gone)
	}
}

// TestStopOpening: opening tells what it does and stops at each of its stages
// when it is told to; the file is as it was.
func TestStopOpening(t *testing.T) {
	for _, stage := range []Stage{StageChecking, StageCopying, StageChanging} {
		t.Run(string(stage), func(t *testing.T) {
			dir, c := copyKept(t, filepath.Join(keptFolder, "v1.db")), newClock()
			before := rowsAt(t, dir)
			ctx, stop := context.WithCancel(context.Background())
			var seen []Progress
			_, err := OpenContext(ctx, dir, Options{Clock: c.now, Progress: func(p Progress) {
				if seen = append(seen, p); p.Stage == stage {
					stop()
				}
			}})
			if !errors.Is(err, context.Canceled) {
				t.Fatalf("opening ended with %v", err)
			}
			if last := seen[len(seen)-1]; last.Stage != stage || last.Bytes == 0 {
				t.Errorf("told %+v", seen)
			}
			wantRows(t, before, rowsAt(t, dir), len(versions()))
			s := open(t, dir, c) // the folder is free again
			checkWhole(t, s)
		})
	}
}

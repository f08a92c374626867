package store

import (
	"fmt"
	"time"

	"ebbwell/internal/record"
)

// Which snapshots are kept (this program's own rule): of the days on which the
// program was used, one of each of the last days; of the weeks before, one of
// each of the last weeks; of the months before, one of each of the last months.
// They are counted by the snapshots there are, never by the clock, and the
// newest are kept in any case, so that a clock that jumps removes nothing.
// Those from before a new version and those set aside are counted apart.
const (
	SnapshotDays   = 14
	SnapshotWeeks  = 8
	SnapshotMonths = 12
	SnapshotNewest = 5
)

// toThin lists the snapshots that are not kept; list is newest first, days are
// those of a zone. Those of days to come, which a clock that was ahead has left,
// are kept and do not count.
func toThin(list []Snapshot, today record.Date, zone *time.Location) []Snapshot {
	var gone []Snapshot
	kept := map[SnapshotReason]*thinning{}
	for _, snap := range list {
		if record.DateOf(snap.At.In(zone)) > today {
			continue
		}
		if kept[snap.Reason] == nil {
			kept[snap.Reason] = newThinning()
		}
		if !kept[snap.Reason].keeps(snap.At.In(zone)) {
			gone = append(gone, snap)
		}
	}
	return gone
}

// thinning goes through the snapshots of one reason, newest first.
type thinning struct {
	seen int
	of   []span
}

// span is one of days, weeks and months.
type span struct {
	most int
	name func(time.Time) string
	seen map[string]bool
}

func newThinning() *thinning {
	day := func(t time.Time) string { return t.Format(time.DateOnly) }
	week := func(t time.Time) string { y, w := t.ISOWeek(); return fmt.Sprintf("%d-%d", y, w) }
	month := func(t time.Time) string { return t.Format("2006-01") }
	return &thinning{of: []span{
		{SnapshotDays, day, map[string]bool{}}, {SnapshotWeeks, week, map[string]bool{}}, {SnapshotMonths, month, map[string]bool{}},
	}}
}

// keeps reports whether the next older snapshot is kept: it is one of the
// newest, or the newest of one of the last days, weeks or months.
func (t *thinning) keeps(at time.Time) bool {
	t.seen++
	keep := t.seen <= SnapshotNewest
	for _, s := range t.of {
		name := s.name(at)
		if !s.seen[name] && len(s.seen) < s.most {
			s.seen[name], keep = true, true
		}
	}
	return keep
}

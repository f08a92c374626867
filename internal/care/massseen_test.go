package care

import (
	"testing"
	"time"

	"ebbwell/internal/record"
)

// What was printed while the mass could be seen is told from what was printed since.
func TestMassSeen(t *testing.T) {
	day := func(n int) time.Time { return time.Date(2026, 5, n, 10, 0, 0, 0, time.UTC) }
	adult := record.Athlete{Born: "1998-04-05", MassHidden: true, MassHiddenSettled: true}
	hid := []record.Change{{Field: "massHidden", Before: "", After: "true", At: day(10)}, {Field: "name", Before: "A", After: "B", At: day(12)}}
	for name, c := range map[string]struct {
		a       record.Athlete
		changes []record.Change
		at      time.Time
		seen    bool
	}{
		"before it was hidden": {adult, hid, day(9), true},
		"since":                {adult, hid, day(11), false},
		"always hidden":        {adult, nil, day(1), false},
		"hidden, shown, hidden": {adult, []record.Change{
			{Field: "massHidden", Before: "true", After: "", At: day(3)}, {Field: "massHidden", Before: "", After: "true", At: day(6)},
		}, day(4), true},
		"before it was shown in between": {adult, []record.Change{
			{Field: "massHidden", Before: "true", After: "", At: day(3)}, {Field: "massHidden", Before: "", After: "true", At: day(6)},
		}, day(2), false},
		"a flag came since": {adult, []record.Change{{Field: "flags.f1", After: "present", At: day(8)}}, day(7), true},
		"a minor, hidden without being asked": {record.Athlete{Born: "2013-04-05", MassHidden: true}, []record.Change{
			{Field: "massHiddenSettled", Before: "true", After: "", At: day(8)}, {Field: "massHidden", Before: "", After: "true", At: day(8)},
		}, day(7), true},
		"no birth date was known": {adult, []record.Change{{Field: "born", Before: "", After: "1998-04-05", At: day(8)}, {Field: "massHidden", Before: "", After: "true", At: day(9)}}, day(7), false},
	} {
		if got := MassSeen(c.a, c.changes, c.at); got != c.seen {
			t.Errorf("%s: seen %v", name, got)
		}
	}
}

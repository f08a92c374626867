package squad

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// onSkin is a row with a patch put on at a time, weighed before.
func onSkin(id record.ID, s record.Session, clock record.Clock, now time.Time) Row {
	t := record.Test{Session: s, Patches: []record.Patch{{Meta: record.Meta{ID: id}, On: clock}}}
	t.Weighings = []record.Weighing{{Moment: record.Before, Mass: record.Num(70, quantity.Kilogram)}}
	return Row{Sheet: Sheet{Test: t}, Patch: PatchOf(t, now), Span: SpanOf(s, now.Location())}
}

// TestReminders: a patch is due 30 minutes after it went on, a session when it ends, each
// under a name that stays; one that is off, weighed, closed or long past is not.
func TestReminders(t *testing.T) {
	s := record.Session{Date: "2026-05-18", Start: "17:05", End: "18:40"}
	at := func(day, hour, minute int) time.Time { return time.Date(2026, 5, day, hour, minute, 0, 0, time.UTC) }
	rows := func(now time.Time) []Row {
		return []Row{onSkin("p1", s, "17:10", now), onSkin("p2", s, "17:25", now)}
	}
	patch := func(id string, on time.Time) string { return fmt.Sprintf("patch %s %d", id, on.Unix()) }
	one, two, end := patch("p1", at(18, 17, 10)), patch("p2", at(18, 17, 25)), fmt.Sprintf("end g %d", at(18, 18, 40).Unix())
	for _, c := range []struct {
		now  time.Time
		want []string
	}{
		{at(18, 17, 39), nil},
		{at(18, 17, 40), []string{one}},
		{at(18, 18, 39), []string{one, two}},
		{at(18, 18, 40), []string{one, end, two}},
		{at(19, 5, 50), []string{end, two}},
		{at(19, 7, 0), nil},
	} {
		if got := Reminders("g", rows(c.now), c.now); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.now.Format("02. 15:04"), got, c.want)
		}
	}
	now, list := at(18, 18, 45), rows(at(18, 18, 45))
	list[0].Sheet.Test.Patches[0].Off, list[1].Closed = "17:45", true
	list[0].Sheet.Test.Weighings = append(list[0].Sheet.Test.Weighings, record.Weighing{Moment: record.After, Mass: record.Num(69, quantity.Kilogram)})
	if got := Reminders("g", list, now); len(got) > 0 {
		t.Errorf("reminded of %q", got)
	}
	if got := Reminders("g", []Row{onSkin("p1", s, "17:12", now)}, now); len(got) != 2 || got[0] == one {
		t.Errorf("put on again: %q", got)
	}
}

// TestPatchOverMidnight: a patch put on after midnight, in a session that has no end yet,
// is worn since then; so is one put on the evening before a session after midnight.
func TestPatchOverMidnight(t *testing.T) {
	for _, c := range []struct {
		s    record.Session
		on   record.Clock
		now  time.Time
		want float64
	}{
		{record.Session{Date: "2026-05-18", Start: "23:00"}, "00:10", time.Date(2026, 5, 19, 0, 45, 0, 0, time.UTC), 35},
		{record.Session{Date: "2026-05-18", Start: "23:00", End: "00:50", EndsNextDay: true}, "00:10", time.Date(2026, 5, 19, 0, 45, 0, 0, time.UTC), 35},
		{record.Session{Date: "2026-05-18", Start: "17:05"}, "16:50", time.Date(2026, 5, 18, 17, 25, 0, 0, time.UTC), 35},
		{record.Session{Date: "2026-05-19", Start: "00:20"}, "23:50", time.Date(2026, 5, 19, 0, 25, 0, 0, time.UTC), 35},
		{record.Session{Date: "2026-05-18", Start: "06:00"}, "19:30", time.Date(2026, 5, 18, 20, 5, 0, 0, time.UTC), 35},
	} {
		p := PatchOf(record.Test{Session: c.s, Patches: []record.Patch{{On: c.on}}}, c.now)
		if !p.Known || p.Minutes != c.want || !p.Due {
			t.Errorf("%+v, on %s, at %s: %+v", c.s, c.on, c.now.Format("02. 15:04"), p)
		}
	}
}

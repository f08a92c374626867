package squad

import (
	"fmt"
	"time"

	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// lateReminder is how long after it fell due nobody is reminded any more by sound: the
// session is one of another day.
const lateReminder = 12 * time.Hour

// Reminders name what is due at a moment, each by a name that is its own for good: a patch
// that was worn long enough and is still on, and the end of a session after which somebody
// is to be weighed. The name holds the time, so that one put on again, or an end that is
// moved, is another.
func Reminders(session record.ID, rows []Row, now time.Time) []string {
	var list []string
	ended := map[int64]bool{}
	for _, r := range rows {
		if r.Closed {
			continue
		}
		for _, p := range r.Sheet.Test.Patches {
			on, ok := putOn(r.Sheet.Test.Session, p.On, now)
			due := on.Add(time.Duration(evidence.PatchWorn * float64(time.Minute)))
			if ok && p.On != "" && p.Off == "" && isDue(due, now) {
				list = append(list, fmt.Sprintf("patch %s %d", p.ID, on.Unix()))
			}
		}
		end := r.Span.End
		if !r.Span.HasEnd || !isDue(end, now) || ended[end.Unix()] || len(Masses(r.Sheet.Test, record.After)) > 0 || len(Masses(r.Sheet.Test, record.Before)) == 0 {
			continue
		}
		ended[end.Unix()] = true
		list = append(list, fmt.Sprintf("end %s %d", session, end.Unix()))
	}
	return list
}

// isDue reports whether a time has come, and not long ago.
func isDue(at, now time.Time) bool { return !now.Before(at) && now.Sub(at) <= lateReminder }

package testsheet

import (
	"strings"
	"time"

	"ebbwell/app/kit/bind"
	"ebbwell/internal/record"
)

// sheet is what is open on the screen: the record, and beside it what was
// typed and could not be read, and the reasons for values kept all the same.
type sheet = bind.Sheet[record.Test]

// binder ties fields to the places of a sheet they show.
type binder = bind.Binder[record.Test]

// refOf points at a test.
func refOf(t record.Test) record.Ref { return record.Ref{Kind: record.KindTest, ID: t.ID} }

// begin makes a new sheet for an athlete, with what usually stays the same
// taken from the last one; last is nil when there is none.
func begin(a record.Athlete, last *record.Test, now time.Time) record.Test {
	t := record.Test{Meta: record.Meta{ID: record.NewID(), CreatedAt: now}, AthleteID: a.ID, State: record.TestOpen}
	t.Session.Date, t.Session.Sport = record.DateOf(now), a.Sport
	t.Session.UsedToHeat = a.Acclimatised
	if last != nil {
		t.Session.Sport, t.Session.Activity, t.Session.Place = last.Session.Sport, last.Session.Activity, last.Session.Place
		t.Scale.Step, t.Scale.Before, t.Scale.After = last.Scale.Step, last.Scale.Before, last.Scale.After
	}
	return t
}

// hasMorning reports whether a morning mass is of a day.
func hasMorning(t record.Test, day record.Date) bool {
	for _, w := range t.Weighings {
		if w.Moment == record.Morning && w.Date == day && day != "" {
			return true
		}
	}
	return false
}

// moveMornings takes the morning mass of one day to another: it was entered as
// that of the test's day, and the test was on another.
func moveMornings(t *record.Test, from, to record.Date) {
	for i, w := range t.Weighings {
		if w.Moment == record.Morning && w.Date == from {
			t.Weighings[i].Date = to
		}
	}
}

// forget drops the texts kept for a row that is gone.
func forget(s *sheet, path string) {
	for _, texts := range []map[string]string{s.Raw, s.Reasons} {
		for at := range texts {
			if strings.HasPrefix(at, path+".") {
				delete(texts, at)
			}
		}
	}
}

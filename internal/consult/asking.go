package consult

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/record"
)

// Asking is an athlete's tests as sessions are asked of them: each worked out
// once, for any number of sessions and days. It is not for two goroutines at a
// time.
type Asking struct {
	athlete record.Athlete
	// tests in one order, so that the same tests give the same figure to the last digit;
	// they are those of who asks, since findings are large.
	tests   []*Findings
	desk    Setup
	weighed *record.Test
	body    climate.Body
	// assumed: usual values stand in for an air that is not written down.
	assumed bool
	// compare works a test out; tests of this package count its calls.
	compare func(f *Findings, air record.Air, a record.Athlete, day time.Time, d Setup) (climate.Test, bool)

	worked     bool
	comparable []Findings
	left       []Findings
	compared   []climate.Test
	set        *climate.TestSet
}

// Ask readies the tests of an athlete.
func Ask(a record.Athlete, tests []Findings, d Setup) *Asking {
	q := &Asking{athlete: a, tests: pointers(tests), desk: d, weighed: newest(tests), compare: climateTest}
	slices.SortStableFunc(q.tests, func(a, b *Findings) int {
		return cmp.Or(cmp.Compare(b.Test.Session.Date, a.Test.Session.Date), cmp.Compare(a.Test.ID, b.Test.ID))
	})
	q.body = BodyFor(a, q.weighed)
	return q
}

// pointers point at each of some tests.
func pointers(tests []Findings) []*Findings {
	list := make([]*Findings, len(tests))
	for i := range tests {
		list[i] = &tests[i]
	}
	return list
}

// forAgain is the asking for the session of a test again: a body and, where
// assumed, an air that are not written down whole are filled in for both.
func (q *Asking) forAgain(assumed bool) *Asking {
	same := &Asking{athlete: assumedHeight(q.athlete, float64(q.body.Mass)), tests: q.tests, desk: q.desk, weighed: q.weighed, compare: q.compare, assumed: assumed}
	same.body = BodyFor(same.athlete, same.weighed)
	return same
}

// Calculate asks the tests about an outing on a day. It returns [ErrNoAir], or
// the problems of a body, an air or a session that cannot be.
func (q *Asking) Calculate(o Outing, day time.Time) (Calculation, error) {
	if again(o, q.tests) {
		_, err := WeatherOf(o.Air)
		q = q.forAgain(errors.Is(err, ErrNoAir))
	}
	r := Calculation{Outing: o, weighed: q.weighed, body: q.body, AssumedAir: q.assumed}
	if q.assumed {
		o.Air = assumedAir(o.Air)
	}
	r.breath = breathOf(o, q.athlete, q.weighed, q.desk)
	session, err := SessionFor(o, q.athlete, q.body, q.desk)
	if err != nil {
		return r, err
	}
	if err := q.on(day, &r); err != nil {
		return r, fmt.Errorf("estimate the sweat rate: %w", err)
	}
	if r.Climate, err = r.set.Estimate(session); err != nil {
		return r, fmt.Errorf("estimate the sweat rate: %w", err)
	}
	q.byOwnTests(&r, session, day)
	r.Climate = r.reachingDown(r.Climate)
	if !r.AssumedAir {
		r.caution(q.body, session, q.athlete, o)
	}
	return r, nil
}

// on gives a calculation the tests as they stand on a day: how long ago each of
// them was is all that changes from one day to another.
func (q *Asking) on(day time.Time, r *Calculation) (err error) {
	q.work(day)
	r.Tests, r.Left = slices.Clip(q.comparable), slices.Clip(q.left)
	r.Compared = slices.Clone(q.compared)
	for i := range r.Tests {
		r.Compared[i].MonthsAgo = monthsAgo(r.Tests[i].Test, day)
	}
	if q.set != nil && len(r.Compared) > 0 {
		r.set, err = q.set.Later(r.Compared)
		return err
	}
	start := climate.Start{}
	if len(r.Compared) == 0 && q.desk.Start != nil {
		start = q.desk.Start(sportOf(record.Test{Session: r.Outing.Session}, q.athlete))
	}
	r.set, err = climate.NewTestSet(climate.Athlete{Body: q.body, Start: start}, r.Compared)
	q.set = r.set
	return err
}

// work works each test out, once.
func (q *Asking) work(day time.Time) {
	if q.worked {
		return
	}
	q.worked = true
	q.compared, q.comparable = make([]climate.Test, 0, len(q.tests)), make([]Findings, 0, len(q.tests))
	for _, f := range q.tests {
		air := f.Test.Air
		if q.assumed {
			air = assumedAir(air)
		}
		t, ok := q.compare(f, air, q.athlete, day, q.desk)
		if !ok {
			q.left = append(q.left, *f)
			continue
		}
		q.compared, q.comparable = append(q.compared, t), append(q.comparable, *f)
	}
}

// monthsAgo is how long before a day a test was.
func monthsAgo(t record.Test, day time.Time) float64 {
	return max(0, day.Sub(TestDay(t)).Hours()/24/daysAMonth)
}

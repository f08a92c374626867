package athlete

import (
	"slices"
	"strings"

	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// eventKind is a sort of thing that happened; its title is in the catalogue of
// texts under "overview.event.".
type eventKind string

// What happens on the way.
const (
	eventTest      eventKind = "test"
	eventAgreed    eventKind = "agreed"
	eventSession   eventKind = "session" // done under a plan
	eventReview    eventKind = "review"
	eventTrip      eventKind = "trip"
	eventConsent   eventKind = "consent"
	eventWithdrawn eventKind = "withdrawn"
	eventEnded     eventKind = "ended"
)

// event is one line of the trail. What it tells of is behind one of the
// pointers, or in purposes.
type event struct {
	day      record.Date
	kind     eventKind
	test     *consult.Findings
	plan     *record.Plan
	review   *record.Review
	trip     *record.Trip
	purposes []record.Purpose
}

// trail lists what has happened up to today, newest first.
func (f file) trail() []event {
	list := f.testEvents()
	list = append(list, f.planEvents()...)
	list = append(list, f.tripEvents()...)
	list = append(list, f.consentEvents()...)
	list = slices.DeleteFunc(list, func(e event) bool { return e.day > f.today() })
	slices.SortStableFunc(list, func(a, b event) int { return strings.Compare(string(b.day), string(a.day)) })
	return list
}

func (f file) testEvents() []event {
	var list []event
	for i := range f.tests {
		day := record.DateOf(consult.TestDay(f.tests[i].Test))
		list = append(list, event{day: min(day, f.today()), kind: eventTest, test: &f.tests[i]})
	}
	return list
}

// planEvents are agreements with what was done under them; a draft has not
// happened yet.
func (f file) planEvents() []event {
	var list []event
	for i := range f.plans {
		p := &f.plans[i]
		if p.State == record.PlanDraft {
			continue
		}
		day := p.Agreement.From
		if p.Agreement.AgreedAt != nil {
			day = record.DateOf(*p.Agreement.AgreedAt)
		}
		for j := len(p.Reviews) - 1; j >= 0; j-- {
			r := &p.Reviews[j]
			kind := eventSession
			if r.Decision != "" {
				kind = eventReview
			}
			list = append(list, event{day: reviewDay(*r), kind: kind, plan: p, review: r})
		}
		list = append(list, event{day: day, kind: eventAgreed, plan: p})
	}
	return list
}

// reviewDay is the day of a review; the day it was written down where none was
// given.
func reviewDay(r record.Review) record.Date {
	if r.Date != "" {
		return r.Date
	}
	return record.DateOf(r.CreatedAt)
}

func (f file) tripEvents() []event {
	var list []event
	for i := range f.trips {
		if from, _, ok := tripDays(f.trips[i]); ok {
			list = append(list, event{day: from, kind: eventTrip, trip: &f.trips[i]})
		}
	}
	return list
}

// tripDays are the first and the last day of a trip; ok is false while no stop
// has a day.
func tripDays(t record.Trip) (from, until record.Date, ok bool) {
	for _, s := range t.Stops {
		for _, day := range []record.Date{s.From, s.Until} {
			if day == "" {
				continue
			}
			if from == "" || day < from {
				from = day
			}
			until = max(until, day)
		}
	}
	return from, until, from != ""
}

// consentEvents are consents given, withdrawn and ended; what was given on one
// day is one line.
func (f file) consentEvents() []event {
	var list []event
	add := func(kind eventKind, day record.Date, p record.Purpose) {
		if day == "" {
			return
		}
		for i := range list {
			if list[i].kind == kind && list[i].day == day {
				list[i].purposes = append(list[i].purposes, p)
				return
			}
		}
		list = append(list, event{day: day, kind: kind, purposes: []record.Purpose{p}})
	}
	for _, c := range f.athlete.Consents {
		if c.Deleted() {
			continue
		}
		add(eventConsent, c.Given, c.Purpose)
		add(eventWithdrawn, c.Withdrawn, c.Purpose)
		if c.Withdrawn == "" && c.Until != "" {
			add(eventEnded, c.Until.AddDays(1), c.Purpose)
		}
	}
	return list
}

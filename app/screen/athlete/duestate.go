package athlete

import (
	"cmp"
	"slices"
	"strings"

	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// consentNotice is how many days before its end a consent is spoken of: our
// choice, two months leave room for a visit.
const consentNotice = 60

// dueKind is a sort of thing to be done; its sentence is in the catalogue of
// texts under "overview.due.".
type dueKind string

// What can be due, in the order it is shown.
const (
	dueOutstanding dueKind = "unsettled" // a minor's guardian, assent, hidden mass
	dueNoConsent   dueKind = "noconsent"
	duePhysician   dueKind = "physician"
	dueSheet       dueKind = "sheet"
	dueWaiting     dueKind = "waiting"
	dueReview      dueKind = "review"
	dueCheck       dueKind = "check"  // a record behind an agreed plan was corrected
	dueOutrun      dueKind = "outrun" // a newer test lost less than the plan gives
	dueDraft       dueKind = "draft"
	dueTrip        dueKind = "trip"
	dueEnds        dueKind = "ends" // a consent
	dueEnded       dueKind = "ended"
)

// due is one thing to be done. Day is empty where it has none; late is true
// where the day has come.
type due struct {
	kind    dueKind
	day     record.Date
	late    bool
	test    *consult.Findings
	plan    *record.Plan
	check   *consult.Case
	trip    *record.Trip
	purpose record.Purpose
}

// soonDays is how far ahead a thing with a day is spoken of as due: our choice, two
// weeks leave room for a visit.
const soonDays = 14

// later reports that a thing has a day and that day is not soon.
func (d due) later(today record.Date) bool {
	return !d.late && d.dated() && d.day > today.AddDays(soonDays)
}

// dated reports that the day of a thing is when it is to be done.
func (d due) dated() bool {
	return d.day != "" && (d.kind == dueReview || d.kind == dueTrip || d.kind == dueEnds)
}

// due lists what is to be done, what stands in the way of a session first.
func (f file) due() []due {
	var list []due
	if len(f.care.Outstanding) > 0 {
		list = append(list, due{kind: dueOutstanding})
	}
	if len(f.care.NeedsPhysician) > 0 {
		list = append(list, due{kind: duePhysician})
	}
	list = append(list, f.sheetsDue()...)
	list = append(list, f.plansDue()...)
	list = append(list, f.tripsDue()...)
	list = append(list, f.consentsDue()...)
	slices.SortStableFunc(list, func(a, b due) int {
		return cmp.Or(cmp.Compare(f.turn(a), f.turn(b)), strings.Compare(string(a.day), string(b.day)), cmp.Compare(rank(a.kind), rank(b.kind)))
	})
	return list
}

// turn is when something has its turn: by its kind, and what has its day later than soon
// after all else.
func (f file) turn(d due) int {
	if d.later(f.today()) {
		return rank(dueEnds) + 1
	}
	return rank(d.kind)
}

// rank is the place of a kind in the list.
func rank(k dueKind) int {
	return slices.Index([]dueKind{
		dueOutstanding, dueNoConsent, duePhysician, dueCheck, dueOutrun, dueSheet, dueWaiting, dueReview, dueDraft, dueTrip, dueEnded, dueEnds,
	}, k)
}

func (f file) sheetsDue() []due {
	var list []due
	for i := range f.tests {
		t := &f.tests[i]
		switch t.Test.State {
		case record.TestOpen:
			list = append(list, due{kind: dueSheet, day: t.Test.Session.Date, test: t})
		case record.TestWaiting:
			list = append(list, due{kind: dueWaiting, day: t.Test.Session.Date, test: t})
		}
	}
	return list
}

func (f file) plansDue() []due {
	var list []due
	if p := f.inForce(); p != nil && f.outrun != nil {
		list = append(list, due{kind: dueOutrun, day: f.outrun.Test.Session.Date, late: true, plan: p})
	}
	for i := range f.checks {
		c := &f.checks[i]
		day := record.Date("")
		if !c.Since.On.IsZero() {
			day = record.DateOf(c.Since.On.In(f.now.Location()))
		}
		list = append(list, due{kind: dueCheck, day: day, late: true, plan: &c.Plan, check: c})
	}
	for i := range f.plans {
		p := &f.plans[i]
		switch {
		case p.State == record.PlanDraft:
			list = append(list, due{kind: dueDraft, plan: p})
		case p.State == record.PlanAgreed && p.Agreement.Review != "":
			list = append(list, due{kind: dueReview, day: p.Agreement.Review, late: p.Agreement.Review <= f.today(), plan: p})
		}
	}
	return list
}

func (f file) tripsDue() []due {
	var list []due
	for i := range f.trips {
		if from, until, ok := tripDays(f.trips[i]); ok && until >= f.today() {
			list = append(list, due{kind: dueTrip, day: from, late: from <= f.today(), trip: &f.trips[i]})
		}
	}
	return list
}

// consentsDue are consents that end soon or have ended with none in their
// place, and a consent to test that was never written down. One that was
// withdrawn is a decision, not a thing to chase.
func (f file) consentsDue() []due {
	var list []due
	for _, p := range record.Purposes() {
		ends, known, withdrawn := f.consentEnd(p)
		switch {
		case !known && p == record.ConsentTest && !withdrawn && f.athlete.BothAgreed(f.today()):
		case !known && p == record.ConsentTest && !withdrawn:
			list = append(list, due{kind: dueNoConsent})
		case !known || ends == "":
		case ends < f.today():
			list = append(list, due{kind: dueEnded, day: ends, late: true, purpose: p})
		case ends <= f.today().AddDays(consentNotice):
			list = append(list, due{kind: dueEnds, day: ends, purpose: p})
		}
	}
	return list
}

// consentEnd is the last day of the consents for a purpose that were not
// withdrawn; empty where one has no end, known is false where there is none.
func (f file) consentEnd(p record.Purpose) (ends record.Date, known, withdrawn bool) {
	for _, c := range f.athlete.Consents {
		switch {
		case c.Purpose != p || c.Deleted() || c.Given == "":
		case c.Withdrawn != "" && c.Withdrawn <= f.today():
			withdrawn = true
		case c.Until == "":
			return "", true, withdrawn
		default:
			ends, known = max(ends, c.Until), true
		}
	}
	return ends, known, withdrawn
}

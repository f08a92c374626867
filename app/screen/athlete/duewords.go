package athlete

import (
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// task is something due as the overview shows it.
type task struct {
	// title is it as the first of all, known what is known of it; sentence and day
	// are it as a line below.
	title, known  string
	sentence, day string
	late          bool
	// button is the word on its button, opens where that leads.
	button string
	opens  desk.Place
}

// task words something due.
func (sp speaker) task(f file, d due) task {
	t := task{sentence: sp.dueSentence(f, d), late: d.late, button: sp.Say("overview.due.open." + string(buttonOf(d.kind)))}
	if d.day != "" {
		t.day = sp.dueDay(d)
	}
	t.title, t.known = sp.dueTitle(f, d), t.sentence
	if d.kind == dueReview {
		t.known = sp.reviewKnown(*d.plan)
	}
	a := f.athlete.ID
	switch {
	case d.test != nil:
		t.opens = desk.Place{Screen: desk.Tests, Athlete: a, Record: d.test.Test.ID}
	case d.kind == dueReview:
		t.opens = desk.Place{Screen: desk.Plan, Athlete: a, Record: d.plan.ID, Part: partSteps}
	case d.plan != nil:
		t.opens = desk.Place{Screen: desk.Plan, Athlete: a, Record: d.plan.ID}
	case d.trip != nil:
		t.opens = desk.Place{Screen: desk.Trip, Athlete: a, Record: d.trip.ID}
	default:
		t.opens = desk.Place{Screen: desk.Profile, Athlete: a, Part: partOf(d.kind)}
	}
	return t
}

// partSteps is the part of a plan with its steps and reviews.
const partSteps = "steps"

// buttonOf is the screen a kind of thing leads to, as its button names it.
func buttonOf(k dueKind) desk.Screen {
	switch k {
	case dueSheet, dueWaiting:
		return desk.Tests
	case dueReview:
		return "review"
	case dueDraft, dueOutrun, dueCheck:
		return desk.Plan
	case dueTrip:
		return desk.Trip
	}
	return desk.Profile
}

// partOf is the part of the profile something is settled in.
func partOf(k dueKind) string {
	switch k {
	case dueOutstanding:
		return desk.PartMinor
	case duePhysician:
		return desk.PartFlags
	}
	return desk.PartConsents
}

// dueSentence says what is to be done.
func (sp speaker) dueSentence(f file, d due) string {
	key := "overview.due." + string(d.kind)
	switch d.kind {
	case dueOutstanding:
		if !care.AgeKnown(f.athlete, f.now) {
			return sp.Say("overview.due.born")
		}
		return sp.Say(key, desk.Outstanding(sp.Words, f.care.Outstanding))
	case duePhysician:
		return sp.Say(key, sp.flags(f.care.NeedsPhysician))
	case dueSheet:
		return sp.sheetSentence(*d.test)
	case dueWaiting:
		return sp.Say(key, sp.session(d.test.Test))
	case dueReview:
		return sp.reviewSentence(*d.plan)
	case dueCheck:
		return sp.Say(key, sp.planName(*d.plan), desk.SinceSentence(sp.Words, sp.By, d.check.Since))
	case dueOutrun:
		return sp.Say(key, sp.session(f.outrun.Test))
	case dueDraft:
		return sp.Say(key, sp.draftName(f, *d.plan))
	case dueTrip:
		return sp.Say(key, sp.tripName(*d.trip))
	case dueEnds, dueEnded:
		return sp.Say(key, sp.Say("profile.purpose."+string(d.purpose)))
	}
	return sp.Say(key)
}

// session names a sheet by where it was, else by its sport.
func (sp speaker) session(t record.Test) string {
	switch place := strings.TrimSpace(t.Session.Place); {
	case place != "":
		return place
	case t.Session.Sport != "":
		return desk.SportWord(sp.Words, t.Session.Sport)
	}
	return sp.Say("overview.sheet")
}

// sheetSentence says which sheet is unfinished and what it lacks first.
func (sp speaker) sheetSentence(f consult.Findings) string {
	var lacks []string
	for _, m := range f.Sweat.Missing {
		if !m.Optional {
			m.Effect.Low, m.Effect.High = 0, 0
			lacks = append(lacks, desk.MissingSentence(sp.Speaker, m))
		}
	}
	if len(lacks) == 0 {
		return sp.Say("overview.due.sheet.ready", sp.session(f.Test))
	}
	return sp.Say("overview.due.sheet", sp.session(f.Test), strings.Join(lacks[:min(len(lacks), 2)], " "))
}

// reviewSentence says what is reviewed.
func (sp speaker) reviewSentence(p record.Plan) string {
	s, place, ok := consult.StepNow(p)
	if !ok {
		return sp.Say("overview.due.review", sp.planName(p))
	}
	done := 0
	for _, r := range p.Reviews {
		if r.StepID == s.ID && r.Decision == "" {
			done++
		}
	}
	return sp.Say("overview.due.review.step", done, sp.Words.Number(float64(place), 0), sp.planName(p))
}

// dueDay says when.
func (sp speaker) dueDay(d due) string {
	switch {
	case d.kind == dueTrip && d.late:
		return sp.Say("overview.due.now")
	case d.kind == dueTrip:
		return sp.Say("overview.due.from", sp.shortDate(d.day))
	case d.kind == dueReview && d.late:
		return sp.Say("overview.due.since", sp.shortDate(d.day))
	}
	return sp.shortDate(d.day)
}

// dueTitle names what is due first, and when.
func (sp speaker) dueTitle(f file, d due) string {
	what := sp.Say("overview.due.what." + string(d.kind))
	switch {
	case d.kind == dueOutstanding && !care.AgeKnown(f.athlete, f.now):
		what = sp.Say("overview.due.what.born")
	case d.kind == dueReview:
		if _, place, ok := consult.StepNow(*d.plan); ok {
			what = sp.Say("overview.due.what.review.step", sp.Words.Number(float64(place), 0))
		}
	}
	switch {
	case !d.dated():
		return sp.Say("overview.due.head", what)
	case d.day == f.today():
		return sp.Say("overview.due.head.today", what)
	case d.day == f.today().AddDays(1):
		return sp.Say("overview.due.head.tomorrow", what)
	case d.day < f.today():
		return sp.Say("overview.due.head.since", sp.shortDate(d.day), what)
	}
	return sp.Say("overview.due.head.on", sp.shortDate(d.day), what)
}

// reviewKnown is what was written down since the step began, the last of it in
// figures.
func (sp speaker) reviewKnown(p record.Plan) string {
	s, _, ok := consult.StepNow(p)
	if !ok {
		return sp.reviewSentence(p)
	}
	var last *record.Review
	done := 0
	for i := range p.Reviews {
		r := &p.Reviews[i]
		if r.StepID == s.ID && r.Decision == "" {
			done++
			if last == nil || reviewDay(*r) > reviewDay(*last) {
				last = r
			}
		}
	}
	if last == nil {
		return sp.Say("overview.due.review.nothing", sp.planName(p))
	}
	return sp.Say("overview.due.review.known", done, sp.planName(p), sp.shortDate(reviewDay(*last)), sp.reviewNote(*last))
}

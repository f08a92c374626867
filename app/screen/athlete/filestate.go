package athlete

import (
	"cmp"
	"slices"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// file is everything kept of one athlete, and the day it is looked at.
type file struct {
	athlete record.Athlete
	care    care.Care
	// tests are the athlete's, newest first, each with what it says; read is how many of
	// them, others how many there are besides.
	tests  []consult.Findings
	read   howMany
	others int
	plans  []record.Plan
	trips  []record.Trip
	// limit is the deficit of body mass not to pass that the plan in force was agreed
	// with, %; nil where none is agreed.
	limit *float64
	// outrun is a test done since, by which the plan in force is too much to
	// drink; nil where none says so.
	outrun *consult.Findings
	// checks are the agreed plans whose records were corrected since, opened as they
	// were agreed.
	checks []consult.Case
	now    time.Time
}

// today is the day the file is looked at.
func (f file) today() record.Date { return record.DateOf(f.now) }

// last is the newest test that has a sweat rate, else the newest there is; ok is
// false when there is none.
func (f file) last() (found consult.Findings, ok bool) {
	for _, t := range f.tests {
		if t.Sweat.Fluid.Rate.Known {
			return t, true
		}
	}
	if len(f.tests) == 0 {
		return consult.Findings{}, false
	}
	return f.tests[0], true
}

// planned is a test that a plan can be based on; ok is false when there is none.
func (f file) planned() (found consult.Findings, ok bool) {
	for _, t := range f.tests {
		if t.Sweat.Fluid.Rate.Known && t.Sweat.Fluid.Rate.Ranged {
			return t, true
		}
	}
	return consult.Findings{}, false
}

// inForce is the agreed plan to do at home, the one agreed last; nil when there
// is none.
func (f file) inForce() *record.Plan { return consult.ToTakeAlong(f.plans) }

// draft is the plan changed last that is not agreed; nil when there is none.
func (f file) draft() *record.Plan {
	var drafts []record.Plan
	for _, p := range f.plans {
		if p.State == record.PlanDraft {
			drafts = append(drafts, p)
		}
	}
	if len(drafts) == 0 {
		return nil
	}
	newest := slices.MaxFunc(drafts, func(a, b record.Plan) int { return cmp.Compare(a.ChangedAt.UnixNano(), b.ChangedAt.UnixNano()) })
	return &newest
}

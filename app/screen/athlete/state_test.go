package athlete

import (
	"slices"
	"testing"
	"time"

	"ebbwell/internal/consult"
	"ebbwell/internal/figure"
	"ebbwell/internal/record"
)

func noon(day string) time.Time {
	t, _ := record.Date(day).Time()
	return t.Add(12 * time.Hour)
}

func plain(day record.Date, state record.TestState, rate float64) consult.Findings {
	var f consult.Findings
	f.Test = record.Test{Meta: record.Meta{ID: record.NewID(), CreatedAt: noon("2026-05-01")}, State: state, Session: record.Session{Date: day}}
	if rate > 0 {
		f.Sweat.Fluid.Rate = figure.Figure{Known: true, Value: rate, Ranged: true}
	}
	return f
}

func TestTrailIsNewestFirst(t *testing.T) {
	agreed := noon("2026-05-10")
	f := file{
		now:   noon("2026-05-18"),
		tests: []consult.Findings{plain("2026-05-14", record.TestClosed, 1.3), plain("", record.TestOpen, 0), plain("2026-02-01", record.TestClosed, 1)},
		plans: []record.Plan{
			{Meta: record.Meta{ID: "draft"}, State: record.PlanDraft},
			{Meta: record.Meta{ID: "agreed"}, State: record.PlanAgreed, Agreement: record.Agreement{AgreedAt: &agreed}, Reviews: []record.Review{
				{Date: "2026-05-12"}, {Date: "2026-05-13", Decision: record.DecisionHold},
			}},
		},
		trips: []record.Trip{
			{Meta: record.Meta{ID: "past"}, Stops: []record.Stop{{From: "2026-04-05", Until: "2026-04-09"}, {From: "2026-04-01", Until: "2026-04-04"}}},
			{Meta: record.Meta{ID: "ahead"}, Stops: []record.Stop{{From: "2026-07-01"}}},
			{Meta: record.Meta{ID: "undated"}, Stops: []record.Stop{{}}},
		},
		athlete: record.Athlete{Consents: []record.Consent{
			{Purpose: record.ConsentTest, Given: "2025-10-01"}, {Purpose: record.ConsentUrine, Given: "2025-10-01", Withdrawn: "2026-03-01"},
			{Purpose: record.ConsentCoach, Given: "2025-10-02", Until: "2026-04-30"},
			{Purpose: record.ConsentResearch, Given: "2026-06-01"}, // not yet
		}},
	}
	var got []string
	for _, e := range f.trail() {
		got = append(got, string(e.day)+" "+string(e.kind))
	}
	want := []string{
		"2026-05-14 test", "2026-05-13 review", "2026-05-12 session", "2026-05-10 agreed", "2026-05-01 test", "2026-05-01 ended",
		"2026-04-01 trip", "2026-03-01 withdrawn", "2026-02-01 test", "2025-10-02 consent", "2025-10-01 consent",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got  %v\nwant %v", got, want)
	}
	last := f.trail()[len(got)-1]
	if len(last.purposes) != 2 {
		t.Errorf("what was consented to on one day: %v", last.purposes)
	}
}

// dueCase is what is kept and what is due for it.
type dueCase struct {
	set  func(*file)
	want []string
}

func dueCases() map[string]dueCase {
	given := func(p record.Purpose, until, withdrawn record.Date) record.Consent {
		return record.Consent{Purpose: p, Given: "2025-01-01", Until: until, Withdrawn: withdrawn}
	}
	return map[string]dueCase{
		"nothing":    {func(*file) {}, nil},
		"no consent": {func(f *file) { f.athlete.Consents = nil }, []string{"noconsent"}},
		"both agreed": {func(f *file) {
			f.athlete = record.Athlete{Born: "2011-01-01", Guardian: "Mother", Assent: "2026-05-01"}
		}, nil},
		"one agreed": {func(f *file) { f.athlete = record.Athlete{Born: "2011-01-01", Guardian: "Mother"} }, []string{"noconsent"}},
		"withdrawn":  {func(f *file) { f.athlete.Consents = []record.Consent{given(record.ConsentTest, "", "2026-01-01")} }, nil},
		"coach ends": {func(f *file) { add(f, given(record.ConsentCoach, "2026-06-30", "")) }, []string{"ends 2026-06-30"}},
		"in 60 days": {func(f *file) { add(f, given(record.ConsentCoach, "2026-07-17", "")) }, []string{"ends 2026-07-17"}},
		"in 61 days": {func(f *file) { add(f, given(record.ConsentCoach, "2026-07-18", "")) }, nil},
		"ends today": {func(f *file) { add(f, given(record.ConsentCoach, "2026-05-18", "")) }, []string{"ends 2026-05-18"}},
		"ended":      {func(f *file) { add(f, given(record.ConsentCoach, "2026-05-17", "")) }, []string{"ended 2026-05-17"}},
		"renewed": {func(f *file) {
			add(f, given(record.ConsentCoach, "2026-05-01", ""), given(record.ConsentCoach, "", ""))
		}, nil},
		"renewed to": {func(f *file) {
			add(f, given(record.ConsentCoach, "2026-05-01", ""), given(record.ConsentCoach, "2027-01-01", ""))
		}, nil},
		"deleted": {func(f *file) {
			c := given(record.ConsentCoach, "2026-06-01", "")
			now := f.now
			c.DeletedAt = &now
			add(f, c)
		}, nil},
		"minor":     {func(f *file) { f.care.Outstanding = []string{"guardian"} }, []string{"unsettled"}},
		"physician": {func(f *file) { f.care.NeedsPhysician = []record.FlagKind{record.FlagHeart} }, []string{"physician"}},
		"sheets": {func(f *file) {
			f.tests = []consult.Findings{plain("2026-05-17", record.TestWaiting, 1), plain("", record.TestOpen, 0), plain("2026-05-01", record.TestClosed, 1)}
		}, []string{"sheet", "waiting 2026-05-17"}},
		"draft": {func(f *file) {
			f.plans = []record.Plan{{State: record.PlanDraft}, {State: record.PlanReplaced, Agreement: record.Agreement{Review: "2026-05-01"}}}
		}, []string{"draft"}},
		"review": {func(f *file) {
			f.plans = []record.Plan{{State: record.PlanAgreed, Agreement: record.Agreement{Review: "2026-06-02"}}}
		}, []string{"review 2026-06-02"}},
		"review is due": {func(f *file) {
			f.plans = []record.Plan{{State: record.PlanAgreed, Agreement: record.Agreement{Review: "2026-05-18"}}}
		}, []string{"review 2026-05-18 late"}},
		"outrun": {func(f *file) {
			f.plans = []record.Plan{{State: record.PlanAgreed}}
			newer := plain("2026-05-15", record.TestClosed, 1)
			f.outrun = &newer
		}, []string{"outrun 2026-05-15 late"}},
		"trips": {func(f *file) {
			f.trips = []record.Trip{{Stops: []record.Stop{{From: "2026-07-01", Until: "2026-07-09"}}}, {Stops: []record.Stop{{From: "2026-05-10", Until: "2026-05-20"}}}, {Stops: []record.Stop{{From: "2026-01-01", Until: "2026-01-02"}}}}
		}, []string{"trip 2026-05-10 late", "trip 2026-07-01"}},
	}
}

func TestDue(t *testing.T) {
	base := record.Consent{Purpose: record.ConsentTest, Given: "2025-01-01"}
	for name, c := range dueCases() {
		f := file{now: noon("2026-05-18"), athlete: record.Athlete{Consents: []record.Consent{base}}}
		c.set(&f)
		var got []string
		for _, d := range f.due() {
			text := string(d.kind)
			if d.day != "" {
				text += " " + string(d.day)
			}
			if d.late && d.kind != dueEnded {
				text += " late"
			}
			got = append(got, text)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: got %v, want %v", name, got, c.want)
		}
	}
}

func add(f *file, list ...record.Consent) { f.athlete.Consents = append(f.athlete.Consents, list...) }

func TestLastTestIsOneWithARate(t *testing.T) {
	f := file{}
	if _, ok := f.last(); ok {
		t.Error("a last test without a test")
	}
	f.tests = []consult.Findings{plain("2026-05-14", record.TestOpen, 0)}
	if found, ok := f.last(); !ok || found.Test.Session.Date != "2026-05-14" {
		t.Error("the only test is not the last")
	}
	f.tests = append(f.tests, plain("2026-05-01", record.TestClosed, 1.2))
	if found, _ := f.last(); found.Test.Session.Date != "2026-05-01" {
		t.Error("a sheet just begun stands before a test with a rate")
	}
	if found, ok := f.planned(); !ok || found.Test.Session.Date != "2026-05-01" {
		t.Error("no test to plan on")
	}
}

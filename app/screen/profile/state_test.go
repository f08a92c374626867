package profile

import (
	"strings"
	"testing"
	"time"

	"ebbwell/internal/record"
)

func noon(day string) time.Time {
	t, _ := record.Date(day).Time()
	return t.Add(12 * time.Hour)
}

func TestNewConsent(t *testing.T) {
	now := noon("2026-05-18")
	a := record.Athlete{Name: "Ann", Born: "2010-01-01", Guardian: "Mother", Consents: []record.Consent{{Purpose: record.ConsentTest, Given: "2026-01-01"}}}
	c := newConsent(a, now, names(givers(a, now)))
	if c.Purpose != record.ConsentUrine || c.GivenBy != "Mother and Ann" || c.Given != "2026-05-18" || c.ID == "" {
		t.Errorf("got %+v", c)
	}
	a.Born = "1990-01-01"
	if c := newConsent(a, now, names(givers(a, now))); c.GivenBy != "Ann" {
		t.Errorf("an adult's consent is given by %q", c.GivenBy)
	}
}

func names(list []string) string { return strings.Join(list, " and ") }

// The one answer of guardian and minor is the consent to be tested: it follows the answer
// and goes with it, and never takes the place of what was entered by hand.
func TestMinorIsSettledOnce(t *testing.T) {
	now := noon("2026-05-18")
	change := func(a record.Athlete, f func(*record.Athlete)) record.Athlete {
		next := a.Clone()
		f(&next)
		settleMinor(a, &next, now, names)
		return next
	}
	ann := record.Athlete{Meta: record.Meta{ID: "a"}, Name: "Ann", Born: "2010-01-01"}
	named := change(ann, func(a *record.Athlete) { a.Guardian = "Mother" })
	if len(named.Consents) != 0 {
		t.Fatalf("a name alone is no answer: %+v", named.Consents)
	}
	both := change(named, func(a *record.Athlete) { a.Assent = "2026-05-01" })
	if len(both.Consents) != 1 || both.Consents[0].Purpose != record.ConsentTest || both.Consents[0].GivenBy != "Mother and Ann" || both.Consents[0].Given != "2026-05-01" || both.Consents[0].ID == "" || both.Consents[0].AthleteID != "a" {
		t.Fatalf("the answer is kept as %+v", both.Consents)
	}
	later := change(both, func(a *record.Athlete) { a.Assent, a.Guardian = "2026-05-02", "Father" })
	if len(later.Consents) != 1 || later.Consents[0].Given != "2026-05-02" || later.Consents[0].GivenBy != "Father and Ann" {
		t.Errorf("it does not follow: %+v", later.Consents)
	}
	if gone := change(later, func(a *record.Athlete) { a.Assent = "" }); len(gone.Consents) != 0 {
		t.Errorf("it outlives the answer: %+v", gone.Consents)
	}
	ended := change(later, func(a *record.Athlete) { a.Consents[0].Withdrawn = "2026-05-10" })
	if gone := change(ended, func(a *record.Athlete) { a.Assent = "" }); len(gone.Consents) != 1 {
		t.Error("a consent that was withdrawn is lost")
	}
	byHand := named.Clone()
	byHand.Consents = []record.Consent{{Purpose: record.ConsentTest, Given: "2026-01-01", GivenBy: "Aunt"}}
	if same := change(byHand, func(a *record.Athlete) { a.Assent = "2026-05-01" }); len(same.Consents) != 1 || same.Consents[0].GivenBy != "Aunt" {
		t.Errorf("entered by hand, now %+v", same.Consents)
	}
	adult := named.Clone()
	adult.Born = "1990-01-01"
	if same := change(adult, func(a *record.Athlete) { a.Assent = "2026-05-01" }); len(same.Consents) != 0 {
		t.Errorf("an adult: %+v", same.Consents)
	}
}

func TestProfileChanges(t *testing.T) {
	a := record.Athlete{Meta: record.Meta{ID: "a"}}
	if !nothing(a) {
		t.Error("an empty profile holds something")
	}
	setFlag(&a, record.FlagHeart, true)
	setFlag(&a, record.FlagHeart, true)
	if len(a.Flags) != 1 || flagOf(&a, record.FlagHeart) == nil || a.Flags[0].AthleteID != "a" || a.Flags[0].ID == "" {
		t.Errorf("flags %+v", a.Flags)
	}
	setFlag(&a, record.FlagHeart, false)
	join(&a, "g")
	join(&a, "g")
	if len(a.Flags) != 0 || len(a.Memberships) != 1 || nothing(a) {
		t.Errorf("flags %+v, memberships %+v", a.Flags, a.Memberships)
	}
	leave(&a, "g")
	confirmMass(&a, true)
	if len(a.Memberships) != 0 || !a.MassHidden || !a.MassHiddenSettled || nothing(a) {
		t.Errorf("got %+v", a)
	}
	groups := []record.Group{{Meta: record.Meta{ID: "g"}, Name: "Tideway squad"}}
	if g, ok := groupNamed(groups, " tideway SQUAD "); !ok || g.ID != "g" {
		t.Error("a group is not found whatever the case")
	}
}

func TestAge(t *testing.T) {
	now := noon("2026-05-18")
	for born, want := range map[record.Date]struct {
		years int
		state ageState
	}{
		"": {0, ageUnknown}, "2026-05-19": {0, ageAhead}, "2008-05-19": {17, ageMinor}, "2008-05-18": {18, ageAdult}, "1999-02-03": {27, ageAdult},
	} {
		if years, state := ageOf(record.Athlete{Born: born}, now); years != want.years || state != want.state {
			t.Errorf("born %q: %d, %s", born, years, state)
		}
	}
	ann := record.Athlete{Name: "Ann", Born: "1999-02-03"}
	minor, unborn := ann, ann
	minor.Born, unborn.Born = "2010-01-01", ""
	if !ready(ann, now) || ready(minor, now) || ready(unborn, now) || ready(record.Athlete{Born: ann.Born}, now) {
		t.Error("a sheet may begin before a minor is settled or the age is known, or not for an adult")
	}
}

package profile

import (
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
	c := newConsent(a, now)
	if c.Purpose != record.ConsentUrine || c.GivenBy != "Mother" || c.Given != "2026-05-18" || c.ID == "" {
		t.Errorf("got %+v", c)
	}
	a.Born = "1990-01-01"
	if c := newConsent(a, now); c.GivenBy != "Ann" {
		t.Errorf("an adult's consent is given by %q", c.GivenBy)
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

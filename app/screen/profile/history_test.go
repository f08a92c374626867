package profile

import (
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

func TestHistory(t *testing.T) {
	d, _ := apptest.Desk(t)
	b := openProfile(t, d, desk.Place{Athlete: apptest.Athlete(t, d).ID})
	b.enter("profile.name", "Ravka O.")
	b.enter("profile.mass", "65")
	b.click("profile.flag.heart")
	b.kept()
	b.v.parts.history.load()
	all := strings.Join(strings.Fields(strings.Join(apptest.Texts(b.w.Content()), " ")), " ")
	for _, part := range []string{
		"Name: Ravka Oldenmoor → Ravka O.", "Usual body mass: 64 kg → 65 kg", "Alerts (heart disease): entered", "18 May 2026 12:41, Test Person",
	} {
		if !strings.Contains(all, part) {
			t.Errorf("%q is not to be read in %s", part, all)
		}
	}
}

// TestHistoryHidesTypedMass: a mass as it was typed, the reason for keeping it
// and a reason with figures in it are not told where body mass is hidden.
func TestHistoryHidesTypedMass(t *testing.T) {
	d, _ := apptest.Desk(t)
	sp := speaker{d.Speaker(true)}
	for _, c := range []record.Change{
		{Field: "usualMass", Before: "64 kg", After: "65 kg", Why: "it was 65"},
		{Field: "usualMass" + store.RawEnding, Before: "6,,5", After: "65 or 66"},
		{Field: "usualMass" + store.ReasonEnding, Before: "65 is right", After: "weighed at 65"},
	} {
		if e := sp.entry(c, record.Athlete{}, nil, true); strings.ContainsAny(e.Change+e.Why, "0123456789") {
			t.Errorf("%s tells %q, %q", c.Field, e.Change, e.Why)
		}
		if e := sp.entry(c, record.Athlete{}, nil, false); !strings.ContainsAny(e.Change, "0123456789") {
			t.Errorf("%s tells nothing: %q", c.Field, e.Change)
		}
	}
}

// Every field that a change can name has a word.
func TestEveryFieldOfTheHistoryHasAWord(t *testing.T) {
	d, _ := apptest.Desk(t)
	fields, err := store.Fields(record.KindAthlete)
	if err != nil || len(fields) < 15 {
		t.Fatalf("%d fields, %v", len(fields), err)
	}
	sp := speaker{d.Speaker(false)}
	for _, path := range fields {
		if word := sp.fieldWord(path, record.Athlete{}, nil); strings.HasPrefix(word, "profile.") {
			t.Errorf("%q has no word", path)
		}
	}
}

package testsheet

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

func TestMinorFirstSheetWaitsForTheProfile(t *testing.T) {
	d, went := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	a.Born = "2011-03-04"
	a, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, New: true})
	text := allText(b.w)
	for _, part := range []string{"Profile first", "a parent or guardian, by name", "the athlete’s own assent, with its date", "whether body mass is hidden"} {
		if !strings.Contains(text, part) {
			t.Errorf("%q is not said in\n%s", part, text)
		}
	}
	if b.v.CanUndo() || b.v.Undo() {
		t.Error("there is something to undo")
	}
	if place := b.v.Place(); !place.New || place.Record != "" {
		t.Errorf("the place is %+v, and would open something else", place)
	}
	apptest.Click(t, b.w, "testsheet.profile")
	if last := (*went)[len(*went)-1]; last.Screen != desk.Profile || last.Athlete != a.ID {
		t.Errorf("leads to %+v", last)
	}
	a.Guardian, a.Assent, a.MassHidden, a.MassHiddenSettled = "R. Oldenmoor", "2026-05-01", true, true
	if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	settled := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, New: true})
	if !apptest.Has(settled.w, "testsheet.before.mass.1") || strings.Contains(settled.v.Head().Under, "kg") {
		t.Errorf("settled, the sheet does not begin, or the head says %q", settled.v.Head().Under)
	}
}

func TestNoBirthDate(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	test := closedTest(t, d, a, "2026-05-10", 62.4)
	known := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: test.ID, Part: PartFindings})
	if text := allText(known.w); !strings.Contains(text, "%") {
		t.Fatalf("with a birth date no share of body mass is shown:\n%s", text)
	}
	a.Born, a.MassHiddenSettled = "", true // settled as shown before the date was taken out
	if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	first := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, New: true})
	if text := allText(first.w); !strings.Contains(text, "This athlete may be under 18") || !strings.Contains(text, "the date of birth") || apptest.Has(first.w, "testsheet.start") {
		t.Errorf("a sheet begins, or it is not said why not:\n%s", text)
	}
	apptest.Click(t, first.w, "testsheet.profile")
	there := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: test.ID, Part: PartFindings})
	for _, mark := range []string{"kg", "%", "kcal"} {
		if text := allText(there.w); strings.Contains(text, mark) {
			t.Errorf("%q is to be read in\n%s", mark, text)
		}
	}
	if title, sentence := there.v.ui.consents.Text(); !strings.Contains(title, "date of birth is not in the profile") || sentence == "" {
		t.Errorf("said %q, %q", title, sentence)
	}
	apptest.Click(t, there.w, "testsheet.consent.profile")
	for _, p := range (*went)[len(*went)-2:] {
		if p.Screen != desk.Profile || p.Athlete != a.ID || p.Part != partMinor {
			t.Errorf("leads to %+v", p)
		}
	}
}

func TestConsentIsSaid(t *testing.T) {
	d, went := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, New: true})
	if title, _ := b.v.ui.consents.Text(); title != "No consent to testing is in the profile." {
		t.Errorf("without one: %q", title)
	}
	b.enter("testsheet.place", "Millrace Park")
	if kept := b.kept(); kept.Session.Place != "Millrace Park" {
		t.Error("it stops the sheet")
	}
	a.Consents = []record.Consent{{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Purpose: record.ConsentTest, Given: "2025-01-01", Until: "2025-12-31"}}
	if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	b = openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID})
	if title, _ := b.v.ui.consents.Text(); title != "Consent to testing ended on 31 December 2025." {
		t.Errorf("ended: %q", title)
	}
	if title, _ := b.v.ui.urine.consent.Text(); title != "No consent to a urine sample is in the profile." {
		t.Errorf("urine: %q", title)
	}
}

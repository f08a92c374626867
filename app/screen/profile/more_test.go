package profile

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// What the stomach is used to rises only with a reason: it loosens a guard.
func TestUsualDrinkingRisesWithAReason(t *testing.T) {
	d, _ := apptest.Desk(t)
	b := openProfile(t, d, desk.Place{Athlete: apptest.Athlete(t, d).ID})
	b.enter("profile.usual", "0.6")
	if apptest.Has(b.w, "profile.rise.yes") || b.kept().UsualDrinking.Or(0) != 0.6 {
		t.Fatal("a lower rate is asked about, or not kept")
	}
	b.enter("profile.usual", "0.9")
	b.click("profile.rise.yes")
	if !apptest.Has(b.w, "profile.rise.yes") {
		t.Fatal("it rises without a reason")
	}
	b.click("profile.rise.no")
	if got := b.kept().UsualDrinking.Or(0); got != 0.6 || apptest.Text(t, b.w, "profile.usual") != "0.6" {
		t.Fatalf("without a reason it stays at %g", got)
	}
	b.enter("profile.usual", "0.9")
	apptest.Type(t, b.w, "profile.rise.why", "three sessions at 0.9 without trouble")
	b.click("profile.rise.yes")
	if got := b.kept().UsualDrinking.Or(0); got != 0.9 || b.raw("usualDrinking", true) == "" {
		t.Errorf("with a reason it is %g, reason %q", got, b.raw("usualDrinking", true))
	}
}

// Once a plan is agreed it rises only by a review: a reason does not do, nor does
// taking it out or doing a step again. Lowering stays free.
func TestUsualDrinkingRisesByReviewOnceAgreed(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	b := openProfile(t, d, desk.Place{Athlete: a.ID})
	if b.v.agreed == nil || !a.UsualDrinking.Known() {
		t.Fatal("no plan is agreed with this athlete")
	}
	before := *a.UsualDrinking.Value
	refused := func(what string, want float64) {
		t.Helper()
		title, sentence := b.v.parts.sport.refused.Text()
		if got := b.kept().UsualDrinking.Or(0); got != want || !strings.HasPrefix(title, "It stays at") || !strings.Contains(sentence, "review") {
			t.Errorf("%s: kept %g, said %q, %q", what, got, title, sentence)
		}
		if apptest.Has(b.w, "profile.rise.yes") {
			t.Fatalf("%s: a reason is asked for", what)
		}
	}
	b.enter("profile.position", "back")
	b.enter("profile.usual", "1.4")
	refused("typed", before)
	b.v.Redo()
	refused("done again", before)
	b.enter("profile.usual", "")
	refused("taken out", before)
	b.enter("profile.usual", "0.3")
	if got := b.kept().UsualDrinking.Or(0); got != 0.3 {
		t.Fatalf("lowered, and kept %g", got)
	}
	if title, _ := b.v.parts.sport.refused.Text(); title != "" {
		t.Errorf("lowered, and still said %q", title)
	}
	b.enter("profile.usual", "1.4")
	refused("typed after lowering", 0.3)
	b.click("profile.usual.review")
	if last := (*went)[len(*went)-1]; last.Screen != desk.Plan || last.Record != b.v.agreed.ID {
		t.Errorf("leads to %+v", last)
	}
	b.v.Undo()
	b.v.Undo()
	if kept := b.kept(); kept.UsualDrinking.Or(0) != before || kept.Position == "back" {
		t.Errorf("undo is stuck at %g, %q", kept.UsualDrinking.Or(0), kept.Position)
	}
}

// A value beyond its limits stays, is said to be odd, and can be kept with a
// written reason.
func TestRefusedIsKeptWithAReason(t *testing.T) {
	d, _ := apptest.Desk(t)
	b := openProfile(t, d, desk.Place{Athlete: apptest.Athlete(t, d).ID})
	b.enter("profile.height", "99")
	if !apptest.Has(b.w, "profile.height.keep") {
		t.Fatal("no way to keep it")
	}
	b.click("profile.height.keep")
	apptest.Type(t, b.w, "profile.reason.why", "measured twice")
	b.click("profile.reason.yes")
	if b.kept().Height.Or(0) != 0.99 || b.raw("height", true) != "measured twice" || apptest.Has(b.w, "profile.height.keep") {
		t.Errorf("kept %v, reason %q", b.kept().Height.Or(0), b.raw("height", true))
	}
	again := openProfile(t, d, desk.Place{Athlete: b.v.now().ID})
	if all := strings.Join(apptest.Texts(again.w.Content()), " "); !strings.Contains(all, "measured twice") {
		t.Error("the reason is not to be read when the profile is opened again")
	}
	again.click("profile.height.drop")
	again.kept()
	if again.raw("height", true) != "" || !apptest.Has(again.w, "profile.height.keep") {
		t.Error("the reason cannot be taken back")
	}
}

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
		"Name: Ravka Oldenmoor → Ravka O.", "Usual body mass: 64 kg → 65 kg", "Alerts (heart disease): written down", "18 May 2026 12:41, Test Person",
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

func TestDeleteAndBringBack(t *testing.T) {
	d, went := apptest.Desk(t)
	b := openProfile(t, d, desk.Place{Athlete: apptest.Athlete(t, d).ID})
	apptest.Type(t, b.w, "profile.position", "goal") // still to be saved
	b.click("profile.delete")
	ctx, id := context.Background(), b.v.now().ID
	if _, err := d.Store.LoadAthlete(ctx, id); store.CodeOf(err) != store.CodeDeleted || (*went)[0].Screen != desk.Athletes {
		t.Fatalf("%v, went %+v", err, *went)
	}
	b.v.Leave()
	(*b.undo)()
	if a, err := d.Store.LoadAthlete(ctx, id); err != nil || a.Position != "goal" || (*went)[1].Athlete != id {
		t.Errorf("brought back: %+v, %v", a, err)
	}
}

func TestEraseForGood(t *testing.T) {
	d, went, a := withCopies(t)
	b := openProfile(t, d, desk.Place{Athlete: a.ID})
	if _, err := d.Store.SaveTest(context.Background(), record.Test{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, State: record.TestOpen}, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	before, err := d.Store.Snapshots()
	if err != nil || len(before) == 0 {
		t.Fatalf("copies %v, %v", before, err)
	}
	unreadable := filepath.Join(d.Store.Dir(), "snapshots", "schema-20260101T000000.000Z.db")
	if err := os.WriteFile(unreadable, []byte("of another time"), 0o600); err != nil {
		t.Fatal(err)
	}
	b.click("profile.erase")
	b.click("profile.erase.first.yes")
	apptest.Type(t, b.w, "profile.erase.name", "somebody else")
	b.click("profile.erase.second.yes")
	if _, err := d.Store.LoadAthlete(context.Background(), a.ID); err != nil || !apptest.Has(b.w, "profile.erase.name") {
		t.Fatalf("another name erases: %v", err)
	}
	apptest.Type(t, b.w, "profile.erase.name", a.Name)
	b.click("profile.erase.second.yes")
	if _, err := d.Store.LoadAthlete(context.Background(), a.ID); store.CodeOf(err) != store.CodeNotFound || (*went)[0].Screen != desk.Athletes {
		t.Fatalf("after erasing: %v, went %+v", err, *went)
	}
	if !b.v.b.Field("profile.name").Field.Disabled() {
		t.Error("what was erased can be typed into")
	}
	b.click("profile.copies.remove")
	if copies, _ := d.Store.Snapshots(); len(copies) != len(before) {
		t.Errorf("of %v are left: %v", before, copies)
	}
	if deleted, _ := d.Store.Deleted(context.Background()); len(deleted) != 0 {
		t.Errorf("still to be brought back: %v", deleted)
	}
}

func TestSportIsChosenOrTyped(t *testing.T) {
	d, _ := apptest.Desk(t)
	b := openProfile(t, d, desk.Place{Athlete: apptest.Athlete(t, d).ID})
	b.pick("profile.sport", "ROWING")
	if got := b.kept().Sport; got != "rowing" {
		t.Errorf("a known sport is kept as %q", got)
	}
	b.pick("profile.sport", "underwater chess")
	if got := b.kept().Sport; got != "underwater chess" {
		t.Errorf("own words are kept as %q", got)
	}
	if list := b.v.parts.sport.sports("hock"); len(list) != 2 {
		t.Errorf("%d sports match", len(list))
	}
}

func TestUnreadableNumberIsKept(t *testing.T) {
	d, _ := apptest.Desk(t)
	b := openProfile(t, d, desk.Place{Athlete: apptest.Athlete(t, d).ID})
	b.enter("profile.mass", "sixty")
	a := b.kept()
	if a.UsualMass.Known() || b.raw("usualMass", false) != "sixty" {
		t.Errorf("kept %v, %q", a.UsualMass, b.raw("usualMass", false))
	}
	again := openProfile(t, d, desk.Place{Athlete: a.ID})
	if got := apptest.Text(t, again.w, "profile.mass"); got != "sixty" {
		t.Errorf("reopened as %q", got)
	}
	again.enter("profile.mass", "142 lb")
	if got := again.kept().UsualMass; quantity.Round(got.Or(0), 2) != 64.41 || got.Unit != quantity.Pound {
		t.Errorf("pounds are kept as %v %s", got.Or(0), got.Unit)
	}
}

// In the units of the United States the profile asks in pounds and inches, and
// keeps kilograms and metres.
func TestProfileInPounds(t *testing.T) {
	d, _ := apptest.Desk(t)
	p := d.Practice()
	p.Settings.Units = "us"
	if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	d.PracticeChanged()
	b := openProfile(t, d, desk.Place{Athlete: apptest.Athlete(t, d).ID})
	b.enter("profile.mass", "150")
	b.enter("profile.height", "68")
	b.enter("profile.usual", "20")
	a := b.kept()
	if quantity.Round(a.UsualMass.Or(0), 2) != 68.04 || quantity.Round(a.Height.Or(0), 4) != 1.7272 || quantity.Round(a.UsualDrinking.Or(0), 3) != 0.591 {
		t.Errorf("kept %.3f kg, %.4f m, %.3f L/h", a.UsualMass.Or(0), a.Height.Or(0), a.UsualDrinking.Or(0))
	}
}

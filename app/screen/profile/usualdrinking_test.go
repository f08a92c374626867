package profile

import (
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
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

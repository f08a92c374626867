package profile

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/quantity"
	"ebbwell/internal/store"
)

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

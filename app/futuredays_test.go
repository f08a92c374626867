package app

import (
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/internal/record"
)

// A day that is still to come is refused wherever something has happened: of a test, of a
// session done, of a birth, of a consent given and withdrawn. What was typed stays, the
// field says what is wrong, and the record keeps the day it had; today is taken.
func TestFutureDaysAreRefused(t *testing.T) {
	s, w := start(t, t.TempDir(), true)
	h := hands{t: t, s: s, w: w}
	d := s.Program().Desk()
	refused := func(name string) {
		t.Helper()
		was, ok := field.Find(w.Content(), name).(*field.Date)
		if top := w.Canvas().Overlays().Top(); top != nil {
			was, ok = field.Find(top, name).(*field.Date)
		}
		if !ok {
			t.Fatalf("no day %q", name)
		}
		before, _ := was.Date()
		apptest.Type(t, w, name, "1 March 2027")
		apptest.Leave(w)
		said := strings.Join(apptest.Texts(w.Content()), "\n")
		if top := w.Canvas().Overlays().Top(); top != nil {
			said = strings.Join(apptest.Texts(top), "\n")
		}
		if day, ok := was.Date(); ok && day == "2027-03-01" || !strings.Contains(strings.Join(strings.Fields(said), " "), strings.Join(strings.Fields(d.Words.Say("field.date.future")), " ")) {
			t.Errorf("%s takes %s after %s, and says %q", name, day, before, said)
		}
		apptest.Type(t, w, name, "18 May 2026")
		apptest.Leave(w)
		if day, ok := was.Date(); !ok || day != record.DateOf(apptest.Now()) {
			t.Errorf("%s: today is %s, %v", name, day, ok)
		}
	}
	s.Program().Open(desk.Place{Screen: desk.Profile, Athlete: apptest.AthleteNamed(t, d, "Sefa").ID})
	refused("profile.consent.1.given")
	refused("profile.consent.1.withdrawn")
	refused("profile.born")
	ravka := apptest.AthleteNamed(t, d, "Ravka").ID
	s.Program().Open(desk.Place{Screen: desk.Tests, Athlete: ravka})
	h.click("testsheet.new")
	refused("testsheet.date")
	s.Program().Open(desk.Place{Screen: desk.Plan, Athlete: ravka})
	h.click("planner.review", "planner.done.record")
	refused("planner.done.day")
}

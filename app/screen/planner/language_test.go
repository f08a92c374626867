package planner

import (
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
)

// What is drunk and eaten is named by the language of the window, in a plan agreed in
// another one too.
func TestProductsAreNamedByTheLanguage(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	english, german := d, apptest.ReadsIn(t, d, language.German)
	for _, c := range []struct {
		desk        *desk.Desk
		has, hasNot string
	}{{english, "sports drink", "Sportgetränk"}, {german, "Sportgetränk", "sports drink"}} {
		b := openAt(t, c.desk, went, desk.Place{Screen: desk.Plan, Athlete: a.ID})
		if b.v.Now.Draft() {
			t.Fatal("the plan of the test is not agreed")
		}
		all := strings.Join(texts(b.w.Content()), "\n")
		if !strings.Contains(strings.ToLower(all), strings.ToLower(c.has)) || strings.Contains(strings.ToLower(all), strings.ToLower(c.hasNot)) {
			t.Errorf("in %s: %q missing or %q shown: %q", c.desk.Words.Language(), c.has, c.hasNot, all)
		}
	}
}

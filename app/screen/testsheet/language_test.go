package testsheet

import (
	"context"
	"regexp"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/evidence"
	"ebbwell/internal/handout"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
	"ebbwell/internal/words/spacing"
)

// The report goes to colleagues: it is in the practice's language, whatever the window
// and the athlete speak, and its figures are the same.
func TestReportInThePracticesLanguage(t *testing.T) {
	d, _ := apptest.Demo(t)
	d.Languages = words.Written()
	p := d.Practice()
	p.Settings.PageLanguage = "de"
	if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	d.PracticeChanged()
	a := apptest.PagesIn(t, d, "Ravka", language.French)
	v, err := New(d, desk.Place{Screen: desk.Tests, Athlete: a.ID, Part: "findings"})
	if err != nil {
		t.Fatal(err)
	}
	other, err := v.in(d.PageLanguage())
	if err != nil || other.desk.Words.Language() != language.German || v.desk.Words.Language() != language.English {
		t.Fatalf("the report is in %s, %v", other.desk.Words.Language(), err)
	}
	text := func(v *View) string {
		press, err := handout.NewPress(v.desk.Words, d.Paper())
		if err != nil {
			t.Fatal(err)
		}
		var list []string
		for _, side := range press.TestReport(v.report()).Pages {
			list = append(list, side.Texts()...)
		}
		// The edition stands on every side, of which there may be more in German.
		return strings.ReplaceAll(strings.Join(list, " "), evidence.Version, "")
	}
	number := regexp.MustCompile(`[0-9]+[.,][0-9]+`)
	german, english := number.FindAllString(text(other), -1), number.FindAllString(text(v), -1)
	if len(german) == 0 || len(german) != len(english) {
		t.Fatalf("%d figures in German, %d in English: %v, %v", len(german), len(english), german, english)
	}
	// Numbers within what a source is called keep its point.
	point := regexp.MustCompile(`[0-9]+[.][0-9]+\x{00a0}?(?:L|%|mL|kg|g|mg|mmol)`)
	if found := point.FindAllString(text(other), -1); len(found) > 0 {
		t.Errorf("German figures with a point: %q", found)
	}
	for i, x := range german {
		if strings.ReplaceAll(x, ",", ".") != strings.ReplaceAll(english[i], ",", ".") {
			t.Errorf("%s in German is %s in English", x, english[i])
		}
	}
	for _, tag := range words.Languages() {
		other, err := v.in(tag)
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range spacing.Faults(tag, text(other)) {
			t.Errorf("%s: %s", tag, fault)
		}
	}
}

package handoutview

import (
	"context"
	"regexp"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/app/apptest"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// Every page of an athlete is in the language the athlete reads, and kept under it; the
// window stays as it is. What is chosen on the screen goes before.
func TestPagesInTheAthletesLanguage(t *testing.T) {
	d, _ := apptest.Demo(t)
	apptest.PagesIn(t, d, "Ravka", language.French)
	v, _ := open(t, d, "Ravka")
	if v.desk.Words.Language() != language.English || v.ui.language.Chosen() != "fr" || !v.ui.language.Visible() {
		t.Fatalf("the window speaks %s, the page %q", v.desk.Words.Language(), v.ui.language.Chosen())
	}
	point := regexp.MustCompile(`[0-9]\.[0-9]+ (L|g)`)
	comma := regexp.MustCompile(`[0-9],[0-9]+ (L|g)`)
	v.choose(func(c *choice) { c.page = AthletePage })
	if text := strings.ReplaceAll(text(v), "\u00a0", " "); !comma.MatchString(text) || point.MatchString(text) {
		t.Errorf("the page says %q, %q", comma.FindString(text), point.FindString(text))
	}
	if kept := v.file.subject.printOf(v.choice, nil); kept.Language != "fr" {
		t.Errorf("kept as %q", kept.Language)
	}
	v.ui.language.OnChosen("en")
	if kept := v.file.subject.printOf(v.choice, nil); kept.Language != "en" {
		t.Errorf("kept as %q", kept.Language)
	}
}

// Without a language of their own athletes read the practice's, and with none chosen
// there, the window's.
func TestWhatIsRead(t *testing.T) {
	d, _ := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	if got := d.ReadBy(a); got != language.English {
		t.Errorf("nothing chosen: %s", got)
	}
	d.Languages = words.Written()
	p := d.Practice()
	p.Settings.PageLanguage = "es"
	if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	d.PracticeChanged()
	if d.ReadBy(a) != language.Spanish || d.PageLanguage() != language.Spanish {
		t.Errorf("the practice's: %s", d.ReadBy(a))
	}
	a.PageLanguage = "fr"
	if d.ReadBy(a) != language.French || d.PageLanguage() != language.Spanish {
		t.Errorf("the athlete's: %s", d.ReadBy(a))
	}
	for _, unknown := range []string{"ja", "not a language"} {
		if a.PageLanguage = unknown; d.ReadBy(a) != language.Spanish {
			t.Errorf("%q: %s", unknown, d.ReadBy(a))
		}
	}
}

package trip

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/app/apptest"
	"ebbwell/internal/handout"
	"ebbwell/internal/words/spacing"
)

// Each traveller's page is in the language that traveller reads, the list of everybody
// in the practice's; the window and the names of the files stay in the window's.
func TestPagesInTheTravellersLanguage(t *testing.T) {
	d, _ := apptest.Demo(t)
	a := apptest.PagesIn(t, d, "Ravka", language.French)
	v, _ := with(t, d, "Ravka", "Kester")
	list := pagesOf(t, v, everybody)
	var tags []string
	for _, p := range list {
		tags = append(tags, p.words.Language().String())
		press, err := handout.NewPress(p.words, d.Paper())
		if err != nil {
			t.Fatal(err)
		}
		var text []string
		for _, side := range press.TripPage(p.page).Pages {
			text = append(text, side.Texts()...)
		}
		all := strings.Join(text, " ")
		for _, line := range text {
			for _, fault := range spacing.Faults(p.words.Language(), line) {
				t.Errorf("%s: %s in %q", p.name, fault, line)
			}
		}
		if point := regexp.MustCompile(`\d[.]\d+\x{00a0}(?:L|%|mL|kg)|\bde de\b`).FindString(all); point != "" && p.athlete == a.ID {
			t.Errorf("%s says %q in French", p.name, point)
		}
		if french := strings.Contains(all, "mai"); french != (p.athlete == a.ID) {
			t.Errorf("%s: %.300q", p.name, all)
		}
	}
	if !slices.Equal(tags, []string{"en", "fr", "en"}) {
		t.Errorf("the pages are in %v", tags)
	}
	if v.desk.Words.Language().String() != "en" {
		t.Error("the window has changed its language")
	}
}

package planner

import (
	"strings"
	"testing"

	"ebbwell/app/screen/planner/figures"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
)

// What is known beside the figures stands behind the planner's why, each with its
// source; nothing in per cent of body mass where that is hidden.
func TestStatedBehindTheWhy(t *testing.T) {
	b := begun(t)
	sp, now := b.v.Speaker, b.v.Now
	for key, source := range map[string]string{"planner.deficit": "Bennett et al. 2020", "planner.carbohydrate": "Podlogar & Wallis 2022", "planner.drinking": "McCubbin et al. 2020", "planner.sodium": "ACSM"} {
		if text := strings.Join(figures.Stated(sp, now, key), " "); !strings.Contains(text, source) {
			t.Errorf("%s: %q does not name %s", key, text, source)
		}
	}
	sp.By.Hidden = true
	if text := strings.Join(figures.Stated(sp, now, "planner.deficit"), " "); strings.Contains(text, "2 to 3") {
		t.Errorf("hidden: %q", text)
	}
}

// Where the habit has less carbohydrate than is aimed at, the weeks of gut training can
// be put on the athlete's page, and taken off it.
func TestGutTrainingIsChosen(t *testing.T) {
	b := begun(t)
	b.tab(part.TabSession)
	b.Fill("planner.aim.carbohydrate.high", "80")
	b.Fill("planner.aim.carbohydrate.low", "70")
	b.settle()
	if _, weeks := b.v.Now.PlanCase.GutTraining(); len(weeks) < 3 || consult.Wished(b.kept(), consult.GutOnPage) {
		t.Fatalf("%+v", weeks)
	}
	for _, on := range [...]bool{true, false} {
		b.Click("planner.wish.gut-training")
		b.settle()
		if consult.Wished(b.kept(), consult.GutOnPage) != on {
			t.Errorf("on the page: %v", !on)
		}
	}
}

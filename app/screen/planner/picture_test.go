package planner

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/app/screen/agreement"
	"ebbwell/app/screen/planner/breaks"
	"ebbwell/app/screen/planner/figures"
	"ebbwell/app/screen/planner/mix"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/review"
	"ebbwell/app/screen/planner/session"
	"ebbwell/app/screen/planner/state"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"draft-light-100-1180x760",
		"agreed-light-100-1180x760",
		"hidden-light-100",
		"guards-light",
		"dialog-agree",
		"tab-steps-draft-light-100",
		"tab-breaks-draft-light-100",
		"tab-day-draft-light-100",
	}}
}

// shot keeps what the window shows.
func (b *bench) shot(name string) {
	b.t.Helper()
	b.settle()
	for _, text := range append(texts(b.w.Content()), overTexts(b.w)...) {
		if strings.Contains(text, "%!") || strings.Contains(text, "planner.") {
			b.t.Errorf("%s: %q is no text", name, text)
		}
	}
	album().Screen(b.t, name, b.w)
}

// overTexts lists the texts of what lies over the window.
func overTexts(w fyne.Window) []string {
	if top := w.Canvas().Overlays().Top(); top != nil {
		return texts(top)
	}
	return nil
}

func small() fyne.Size { return sized(1180, 760) }
func large() fyne.Size { return sized(1600, 1000) }

// tall is a window in which the whole of a tab is in sight.
func tall() fyne.Size { return sized(1180, 1420) }

// TestPictureDraft keeps a draft in all looks.
func TestPictureDraft(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Jorun")
	for _, m := range []golden.Mode{{Dark: false, Percent: 100}, {Dark: true, Percent: 100}, {Dark: false, Percent: 125}, {Dark: true, Percent: 150}} {
		for name, size := range map[string]fyne.Size{"1180x760": small(), "1600x1000": large()} {
			if m.Percent == 125 && size == large() {
				continue
			}
			b := openIn(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID}, m, size)
			b.shot("draft-" + m.String() + "-" + name)
		}
	}
}

// TestPictureTabs keeps every tab of a draft with steps, and of an agreed plan.
func TestPictureTabs(t *testing.T) {
	d, went := apptest.Demo(t)
	for who, name := range map[string]string{"agreed": "Dorian", "draft": "Sefa"} {
		a := apptest.AthleteNamed(t, d, name)
		for _, m := range []golden.Mode{{Dark: false, Percent: 100}, {Dark: true, Percent: 100}} {
			if m.Dark && who == "agreed" {
				continue
			}
			b := openIn(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID}, m, tall())
			for _, tab := range append(behindButtons(), part.TabBreaks) {
				b.tab(tab)
				b.shot(fmt.Sprintf("tab-%s-%s-%s", tab, who, m))
			}
		}
	}
}

// TestPictureAgreed keeps an agreed plan at both sizes.
func TestPictureAgreed(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	for _, dark := range []bool{false, true} {
		m := golden.Mode{Dark: dark, Percent: 100}
		b := openIn(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID}, m, small())
		b.shot("agreed-" + m.String() + "-1180x760")
		b = openIn(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, Part: part.TabSteps}, m, large())
		b.shot("agreed-" + m.String() + "-1600x1000")
	}
}

// TestPictureFollowed keeps the steps after a decision that was taken back, and
// after the last one, and a day of several sessions.
func TestPictureFollowed(t *testing.T) {
	b := stepped(t)
	b.w.Resize(tall())
	b.settle()
	b.comfortable()
	b.decide(record.DecisionNext, "")
	b.Click("planner.takeback")
	b.shot("followed-taken-back")
	for range b.v.Now.Plan.Steps {
		b.decide(record.DecisionNext, "the league began, and it went well")
	}
	b.shot("followed-done")
	b = begun(t)
	b.w.Resize(tall())
	b.option(record.OptionFood)
	b.tab(part.TabDay)
	for i, start := range []string{"19:00", "at night"} {
		b.Click("planner.day.add")
		b.settle()
		b.Fill(fmt.Sprintf("planner.day.session.%d.start", i+2), start)
	}
	b.Fill("planner.day.session.2.minutes", "60")
	b.shot("day-further")
	b.Click("planner.day.session.3.remove")
	b.shot("day-second")
}

// TestPictureGuards keeps a plan at its ceiling, with cautions.
func TestPictureGuards(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.Click("planner.water.slider")
	b.Key(fyne.KeyEnd, fyne.KeyRight)
	b.shot("guards-light")
}

// TestPictureHidden keeps a plan whose athlete's mass is hidden.
func TestPictureHidden(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Mirel")
	for _, dark := range []bool{false, true} {
		m := golden.Mode{Dark: dark, Percent: 100}
		b := openIn(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: ""}, m, small())
		b.shot("hidden-" + m.String())
	}
	b := openIn(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID}, golden.Mode{Percent: 100}, tall())
	b.tab(part.TabDay)
	b.shot("hidden-day")
}

// TestPictureLong keeps a plan full of items under long names.
func TestPictureLong(t *testing.T) {
	d, went := apptest.Desk(t)
	a, test := hockey(t, d)
	long := strings.Repeat("Anneliese-Wilhelmina ", 3)[:60]
	a.Name = long
	if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	place := desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)}
	for i, m := range []golden.Mode{{Dark: false, Percent: 100}, {Dark: true, Percent: 150}} {
		b := openIn(t, d, went, place, m, small())
		if i == 0 {
			b.fillMenu(long)
			place = desk.Place{Screen: desk.Plan, Athlete: a.ID, Record: b.kept().ID}
			b.option(record.OptionFood)
		}
		b.shot("long-" + m.String())
		b.w.Resize(large())
		b.shot("long-" + m.String() + "-large")
	}
}

// fillMenu puts an item into every slot, and long names everywhere.
func (b *bench) fillMenu(long string) {
	b.t.Helper()
	food := b.option(record.OptionFood)
	for _, id := range []record.ID{"generic.home-drink", "generic.maltodextrin", "generic.rice-square", "generic.watermelon"} {
		product, ok := b.desk.Products().Find(id)
		if !ok || !mix.AddProduct(b.v.Plan, product, func(s string) { b.t.Log(s) }) {
			b.t.Fatalf("%s was not added", id)
		}
	}
	for slot := plan.Drink2; slot <= plan.Food4; slot++ {
		b.v.move(slot, 0.5)
	}
	b.v.moveEnded()
	b.v.Binder.Pick("test", func(s *part.Sheet) {
		s.Record.Target.SessionName, s.Record.Name = long, long
		state.Edit(&s.Record, food.ID, func(o *record.Option) { o.Name = long })
		for i := range s.Record.Chances {
			s.Record.Chances[i].Name = long
		}
	})
}

// TestPictureEmpty keeps what is seen before there is a plan.
func TestPictureEmpty(t *testing.T) {
	d, went := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	place := desk.Place{Screen: desk.Plan, Athlete: a.ID}
	openAt(t, d, went, place).shot("empty-notest")
	_, test := tested(t, d, a, 62.4)
	openAt(t, d, went, place).shot("empty-noplan")
	opened, err := d.Store.ReopenTest(context.Background(), test.ID, "weighed again")
	if err != nil {
		t.Fatal(err)
	}
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true})
	b.kept()
	opened.Weighings = opened.Weighings[:1]
	if _, err := d.Store.SaveTest(context.Background(), opened, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	openAt(t, d, went, place).shot("error-norate")
	if err := d.Store.Delete(context.Background(), part.RefOf(b.v.Now.Plan), store.Edit{}); err != nil {
		t.Fatal(err)
	}
	openAt(t, d, went, place).shot("empty-norate")
}

// TestPictureDialogs keeps the dialogs.
func TestPictureDialogs(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Sefa")
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID})
	for _, q := range []struct {
		name string
		ask  func()
	}{
		{"agree", func() { agreement.AskAgreement(b.v.Plan) }}, {"why", func() { figures.AskWhy(b.v.Plan) }}, {"rests", func() { session.AskRests(b.v.Plan) }}, {"views", func() { session.AskViews(b.v.Plan) }},
		{"item", func() { mix.AskItem(b.v.Plan, record.RoleFood) }}, {"mouthful", func() { breaks.AskMouthful(b.v.Plan) }}, {"session", func() { review.AskSession(b.v.Plan) }},
	} {
		q.ask()
		b.shot("dialog-" + q.name)
		b.Key(fyne.KeyEscape)
		for b.w.Canvas().Overlays().Top() != nil {
			b.w.Canvas().Overlays().Remove(b.w.Canvas().Overlays().Top())
		}
	}
	s := b.v.Now
	b.tab(part.TabSession)
	b.Fill("planner.limit", "0.5")
	_ = s
	b.v.ui.suggest.Press()
	b.shot("dialog-proposal")
}

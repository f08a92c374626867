package planner

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look/golden"
	"ebbwell/app/screen/planner/figures"
	"ebbwell/app/screen/planner/mix"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// While a slider is dragged the scales stand still: the levels of the deficit, the ends
// of every bar, the marks of habit and limit of the slider itself.
func TestScalesStandStillWhileDragging(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	s, page := b.slider(plan.Water), b.v.ui.page
	type stand struct {
		lowest, carbohydrate, sodium, drinking float64
		ticks                                  int
		habit, limit                           string
		scale                                  field.Scale
	}
	now := func() stand {
		d := page.deficit.Data
		return stand{d.Lowest, page.bars.Data[figures.BarCarbohydrate].Max, page.bars.Data[figures.BarSodium].Max, page.bars.Data[figures.BarDrinking].Max, len(d.Ticks), s.MarkWords(), s.LimitWords(), s.Scale()}
	}
	before, moves := now(), 0
	told := s.OnMoved
	s.OnMoved = func(to float64) {
		told(to)
		if moves++; now() != before {
			t.Errorf("at %v mL %+v, before %+v", to, now(), before)
		}
	}
	b.drag(plan.Water, -0.3, 30)
	b.drag(plan.Water, 0.6, 60)
	if moves < 5 {
		t.Fatalf("%d movements", moves)
	}
}

// Two marks of a slider are named where they stand; where the aim is met is shown only
// while a proposal is open.
func TestMarksAreNamed(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFluid)
	s := b.slider(plan.Water)
	if got := s.MarkWords(); got != "habit 0.30" {
		t.Errorf("the habit is named %q", got)
	}
	most := b.v.Speaker.By.Number(b.v.Live.Most[plan.Water]/1000, quantity.Litre)
	if got := s.LimitWords(); got != "limit "+most {
		t.Errorf("the limit is named %q, it is %s", got, most)
	}
	if s.Banded() {
		t.Error("where the aim is met is marked without a proposal")
	}
	b.Click("planner.suggest")
	if band := b.v.Live.Bands[plan.Water]; !band.Empty && !s.Banded() {
		t.Error("the proposal does not mark where the aim is met")
	}
	b.Click("planner.proposal.done")
	if s.Banded() {
		t.Error("the mark stays")
	}
}

// Salt stays folded with its reason until sodium matters: in a long session, with salty
// sweat at a high rate, with salt in the mix, or opened by hand.
func TestSaltIsFolded(t *testing.T) {
	b := begun(t)
	o := b.option(record.OptionFluid)
	if b.Has("planner.salt.slider") || !b.Has("planner.salt.open") {
		t.Fatal("salt is not folded in a session of 95 min")
	}
	b.Click("planner.salt.open")
	if !b.Has("planner.salt.slider") {
		t.Error("opened by hand it stays folded")
	}
	b.v.ui.page.mix.Unfold(false)
	b.v.Binder.Pick("test", func(s *part.Sheet) { s.Record.Target.Minutes = record.Num(150, quantity.Minute) })
	b.option(record.OptionFluid)
	if !b.Has("planner.salt.slider") {
		t.Error("folded in a session of 150 min")
	}
	b.v.Undo()
	b.v.Binder.Pick("test", func(s *part.Sheet) {
		for i := range s.Record.Options {
			if s.Record.Options[i].ID == o.ID {
				s.Record.Options[i].Salt = record.Num(0.5, quantity.Gram)
			}
		}
	})
	b.v.ChooseOption(o.ID)
	if !b.Has("planner.salt.slider") {
		t.Error("folded with salt in the mix")
	}
}

// Amounts are said in the athlete's own bottles where they are known, else in mouthfuls.
func TestAmountsInTheAthletesMeasures(t *testing.T) {
	d, went := apptest.Desk(t)
	a, test := hockey(t, d)
	place := desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)}
	b := openIn(t, d, went, place, golden.Mode{Percent: 100}, large())
	b.option(record.OptionFluid)
	b.v.Binder.Pick("test", func(s *part.Sheet) { s.Record.Chances = nil })
	b.Fill("planner.water.amount", "0.45")
	says := func(want string) bool { return slices.Contains(texts(b.w.Content()), want) }
	if want := b.v.Speaker.InMouthfuls(450, b.v.Live.Mouthful); !says(want) || !strings.HasSuffix(want, "mouthfuls") {
		t.Errorf("450 mL are not said as %q", want)
	}
	for text, want := range map[string]string{
		"0.45": "about one 500\u00a0mL bottle", "0.35": "about two thirds of a 500\u00a0mL bottle", "0.25": "about half a 500\u00a0mL bottle",
		"0.75": "about 1½ bottles of 500\u00a0mL", "0.12": "about a quarter of a 500\u00a0mL bottle",
	} {
		b.v.Binder.Pick("test", func(s *part.Sheet) { consult.SetBottles(&s.Record, []float64{500}) })
		b.Fill("planner.water.amount", text)
		if !says(want) {
			t.Errorf("%s L is not %q", text, want)
		}
	}
}

// What speaks is a chip with the gravest in a word and how many there are; it opens a
// list with one bar each. The limit is in its own place and not among them, and neither
// is the deficit, which stands at its figure.
func TestCautionsAreSaidOnce(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFluid)
	b.v.Binder.Pick("test", func(s *part.Sheet) { s.Record.Chances = nil })
	b.Click("planner.water.slider")
	b.Key(fyne.KeyEnd, fyne.KeyRight)
	list := b.v.cautions()
	for _, c := range list {
		if c.Short == "" || c.Text == "" || strings.Contains(c.Text, "Limit ") || strings.Contains(c.Text, "passes the limit") {
			t.Errorf("among the cautions: %+v", c)
		}
	}
	title, _ := b.v.ui.page.limit.Text()
	if title == "" {
		t.Error("the limit line does not say that it is reached")
	}
	if len(list) == 0 {
		t.Fatal("nothing speaks at the limit")
	}
	b.settle()
	b.Click("planner.cautions")
	said := strings.Join(overTexts(b.w), "\n")
	for _, c := range list {
		if first, _, _ := strings.Cut(c.Text, ". "); !strings.Contains(strings.ReplaceAll(said, "\n", " "), first[:20]) {
			t.Errorf("%q is not in the list", c.Text)
		}
	}
}

// The head of the picture says what is taken at the selected break: the one at which
// most is drunk until another is clicked.
func TestTheHeadSaysTheSplit(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	split := func() string { return b.v.ui.page.deficit.Split() }
	takes := b.v.Live.Take.Takes
	most := slices.IndexFunc(takes, func(x plan.Take) bool {
		return x.ML == slices.MaxFunc(takes, func(a, b plan.Take) int { return a.ML - b.ML }).ML
	})
	if got := split(); !strings.HasPrefix(got, b.v.Speaker.ChanceName(takes[most].Chance)+":") {
		t.Errorf("the head says %q", got)
	}
	b.Focus("planner.break.1.amount")
	if got := split(); !strings.HasPrefix(got, b.v.Speaker.ChanceName(takes[0].Chance)+":") || b.v.ui.page.deficit.Data.Selected != 0 {
		t.Errorf("with the first break in hand the head says %q", got)
	}
	for d, ml := range takes[0].ByDrink {
		if name := b.v.Speaker.Product(b.v.Now.PlanCase, plan.Slot(d)); ml > 0 && !strings.Contains(strings.ToLower(split()), strings.ToLower(name)) {
			t.Errorf("%s is not in %q", name, split())
		}
	}
}

// An agreed plan stands in full ink as text: no field, no knob, no button that would
// change it.
func TestAgreedStandsAsText(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	b := openIn(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID}, golden.Mode{Percent: 100}, small())
	for _, name := range []string{"planner.water.amount", "planner.break.1.amount", "planner.add.drink", "planner.add.food", "planner.suggest", "planner.keep", "planner.salt.open"} {
		if b.Has(name) {
			t.Errorf("%s is offered", name)
		}
	}
	for slot := range b.v.Live.Mix {
		x := b.v.Live.Mix[slot]
		if s := plan.Slot(slot); s.IsDrink() && x > 0 && !slices.Contains(texts(b.w.Content()), b.v.Speaker.Litres(x/1000)) {
			t.Errorf("%v mL are not in sight", x)
		}
	}
	if !b.Has("planner.review") {
		t.Error("no review")
	}
}

// The bars of the steps keep one scale while a step is moved.
func TestStepsKeepOneScale(t *testing.T) {
	b := begun(t)
	b.tab(part.TabSteps)
	b.Click("planner.steps.build")
	b.Click("planner.back")
	b.v.ChooseOption(b.v.Now.Plan.Steps[0].OptionID)
	before := b.v.ui.page.cards.Scale()
	s := b.slider(plan.Water)
	told := s.OnMoved
	s.OnMoved = func(to float64) {
		told(to)
		if got := b.v.ui.page.cards.Scale(); got != before {
			t.Errorf("at %v mL the bars end at %v, before at %v", to, got, before)
		}
	}
	b.drag(plan.Water, 0.5, 30)
}

// A product that no longer fits into the plan is refused for that, and not for its
// figures.
func TestAFullMixSaysSo(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	said := ""
	for _, p := range mix.Products(b.v.Plan, record.RoleFood) {
		if !mix.AddProduct(b.v.Plan, p, func(text string) { said = text }) {
			break
		}
	}
	if want := b.v.Speaker.Say("planner.item.full.food"); said != want {
		t.Errorf("said %q", said)
	}
}

// At 125 % in a window of 1366 x 768 the steps stand in one line, so that all of the plan is
// in sight; at 100 % they are whole.
func TestStepsStayInSight(t *testing.T) {
	for percent, c := range map[int]struct {
		room fyne.Size // of a window of 1366 x 768, beside the rail and below the head
		line bool
	}{100: {fyne.NewSize(1186, 712), false}, 125: {fyne.NewSize(1154, 672), true}} {
		d, went := apptest.Demo(t)
		a := apptest.AthleteNamed(t, d, "Ravka")
		b := openIn(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID}, golden.Mode{Percent: percent}, c.room)
		page := b.v.ui.page
		if got, room := page.content.Size().Height, page.scroll.Size().Height; got > room+1 {
			t.Errorf("at %d %% the page is %g px high in %g", percent, got, room)
		}
		if got := page.cards.Row.Size().Height; got != page.cards.Height(c.line) {
			t.Errorf("at %d %% the steps are %g px high, want %g", percent, got, page.cards.Height(c.line))
		}
	}
}

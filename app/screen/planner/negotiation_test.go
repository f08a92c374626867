package planner

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/handoutview"
	"ebbwell/app/screen/planner/breaks"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/steps"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout"
	"ebbwell/internal/handout/pdfread"
	"ebbwell/internal/plan"
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/record"
)

// TestNegotiation is a whole consult through the controls, on a real data file:
// the habit, two options, a suggestion, steps, the breaks, agreed, printed, opened
// again.
func TestNegotiation(t *testing.T) {
	d, went := apptest.Desk(t)
	a, test := hockey(t, d)
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
	begins(t, b)
	twoOptions(t, b)
	suggestion(t, b)
	threeSteps(t, b)
	atTheBreaks(t, b)
	agreed(t, b)
	printed(t, b)
	again := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID})
	reopened(t, b, again)
}

// begins looks at what a plan begins with: the habit just measured, and three
// options beside it.
func begins(t *testing.T, b *bench) {
	t.Helper()
	p := b.kept()
	if len(p.Options) != 4 || p.State != record.PlanDraft || len(p.Chances) != 3 {
		t.Fatalf("begins with %d options, %d chances, %s", len(p.Options), len(p.Chances), p.State)
	}
	b.tab(part.TabBeside)
	b.Click("planner.option.1")
	if got := b.v.Now.Mix; got[plan.Water] != 301 && got[plan.Water] != 300 || got[plan.Drink1] < 240 || got[plan.Drink1] > 260 {
		t.Fatalf("the habit is %v", got)
	}
	before := b.v.Now.Mix
	b.drag(plan.Water, 0.2, 10)
	if b.v.Now.Mix != before {
		t.Error("the habit was moved: it is as measured")
	}
}

// twoOptions moves the one with food, keeps another, and names it.
func twoOptions(t *testing.T, b *bench) {
	t.Helper()
	b.Click("planner.option.3")
	food := b.v.Now.Option
	figure := b.v.ui.page.deficit.Figure.Text()
	b.Fill("planner.water.amount", "0,30")
	b.Fill("planner.food1.amount", "½")
	b.drag(plan.Drink1, -0.05, 10)
	moved := b.slider(plan.Drink1).Value()
	if b.v.ui.page.deficit.Figure.Text() == figure {
		t.Error("moving changed no figure")
	}
	if got := b.amountKept(food, plan.Drink1); got != moved || got == 0 {
		t.Errorf("kept %v mL of the drink, the slider stands at %v", got, moved)
	}
	if got := b.amountKept(food, plan.Water); got != 300 {
		t.Errorf("kept %v mL of water", got)
	}
	if got := b.amountKept(food, plan.Food1); got != 0.5 {
		t.Errorf("kept %v portions", got)
	}
	b.Click("planner.keep")
	own := b.v.Now.Option
	if own == food {
		t.Fatal("keeping made no option of its own")
	}
	b.Fill("planner.option.name", "One bottle more")
	b.Click("planner.water.slider")
	b.Key(fyne.KeyRight, fyne.KeyRight)
	b.Focus("planner.option.confidence")
	b.Type("8")
	b.Focus("planner.option.importance")
	b.Type("9")
	b.Fill("planner.option.words", "I want legs left for the last quarter.")
	o, _ := consult.OptionByID(b.kept(), own)
	if o.Name != "One bottle more" || o.Confidence.Or(0) != 8 || o.Importance.Or(0) != 9 || o.Kind != record.OptionOwn || !strings.HasPrefix(o.Words, "I want legs") {
		t.Errorf("kept %+v", o)
	}
}

// suggestion asks for a proposal, sees it before it is taken, and takes a way.
func suggestion(t *testing.T, b *bench) {
	t.Helper()
	b.Click("planner.suggest")
	found := b.v.Now.Proposal()
	way, kind := "drinks", record.OptionFluid
	if found.Pick == proposal.WithFood {
		way, kind = "food", record.OptionFood
	}
	if found.Outcome != proposal.Change || !b.Has("planner.proposal."+way) {
		t.Fatalf("nothing is proposed: %+v", found.Said)
	}
	b.Click("planner.proposal." + way)
	o, _ := consult.OptionOf(b.kept(), kind)
	aim, _ := consult.OptionOf(b.kept(), record.OptionAim)
	c := b.v.Now.PlanCase
	if b.v.Now.Option != o.ID || c.MixOf(o) != plan.Mix(found.Picked().Steps[0].Mix) || c.MixOf(aim) != plan.Mix(found.Picked().Aim) {
		t.Errorf("selected %s, first step %v, aim %v: proposed %+v", b.v.Now.Option, c.MixOf(o), c.MixOf(aim), found.Picked())
	}
	if len(*b.said) == 0 || !strings.Contains((*b.said)[len(*b.said)-1], "First step") {
		t.Errorf("said %q", *b.said)
	}
}

// threeSteps builds the steps to the aim, and writes what to practise.
func threeSteps(t *testing.T, b *bench) {
	t.Helper()
	b.tab(part.TabSteps)
	b.Fill("planner.rule.fluid", "40")
	b.Fill("planner.rule.carbohydrate", "5")
	b.Fill("planner.event", "11.7.2026")
	b.Click("planner.steps.build")
	b.settle()
	b.Fill("planner.step.1.practise", "a mouthful at every stoppage, twice a week")
	p := b.kept()
	if len(p.Steps) < 3 || p.Steps[0].State != record.StepNow || p.Steps[1].State != record.StepAhead || p.Target.EventDate != "2026-07-11" {
		t.Fatalf("kept %d steps: %+v", len(p.Steps), p.Steps)
	}
	if p.Steps[0].Practise != "a mouthful at every stoppage, twice a week" || !(p.Steps[0].From < p.Steps[1].From) {
		t.Errorf("the first step is kept as %+v", p.Steps[0])
	}
	ceiling := b.v.Now.PlanCase.Planner.CeilingOf(plan.Expected).FluidL
	for i, st := range p.Steps {
		o, ok := consult.OptionByID(p, st.OptionID)
		if !ok {
			t.Fatalf("step %d has no mix", i+1)
		}
		if q := b.v.Now.PlanCase.Planner.Evaluate(plan.Expected, b.v.Now.PlanCase.MixOf(o)); q.Fluid.DrunkL > ceiling || q.Guards.Stops() {
			t.Errorf("step %d passes the ceiling", i+1)
		}
	}
	tab := b.v.ui.parts[part.TabSteps].(*steps.StepsTab)
	if tab.Words.Text() == "" {
		t.Error("nothing is said of the event")
	}
	if rule := tab.Rule.Text(); !tab.Rule.Visible() || !strings.Contains(rule, "Next step from "+b.desk.Words.Day(dayOf(t, p.Steps[1].From))) || !strings.Contains(rule, "80\u00a0% of the plan") {
		t.Errorf("the rule says %q", rule)
	}
	if usual := handout.PractiseWords(b.v.Now.PlanCase, 1, false, b.desk.Words); usual == "" || tab.List.Practised[1].Text() != "" || tab.List.Practised[1].Placeholder() != usual {
		t.Errorf("in place of what to practise on step 2 stands %q, printed is %q", tab.List.Practised[1].Placeholder(), usual)
	}
}

// dayOf reads a day.
func dayOf(t *testing.T, d record.Date) time.Time {
	t.Helper()
	day, ok := d.Time()
	if !ok {
		t.Fatalf("%q is no day", d)
	}
	return day
}

// atTheBreaks says that a chance may not happen, and finds the plan shown as the
// breaks add up.
func atTheBreaks(t *testing.T, b *bench) {
	t.Helper()
	b.Click("planner.step.1.mix")
	b.tab(part.TabBreaks)
	b.Click("planner.chance.3.maybe")
	b.Fill("planner.chance.2.seconds", "600")
	p := b.kept()
	if !p.Chances[2].Maybe || p.Chances[1].Seconds.Or(0) != 600 {
		t.Fatalf("kept %+v", p.Chances)
	}
	sum := 0
	for _, take := range b.v.Live.Take.Takes {
		sum += take.ML
	}
	mix := b.v.Live.Mix
	if want := int(mix[plan.Water] + mix[plan.Drink1] + 0.5); sum != want || b.v.Live.Take.DrinkableML != want {
		t.Errorf("the breaks come to %d mL, the plan to %d", sum, want)
	}
	words := b.v.ui.parts[part.TabBreaks].(*breaks.BreaksTab).Words.Text()
	if !strings.Contains(words, "may not happen") {
		t.Errorf("said of the break that may fall out: %q", words)
	}
}

// agreed agrees the first step.
func agreed(t *testing.T, b *bench) {
	t.Helper()
	b.tab(part.TabBeside)
	b.Click("planner.agree")
	b.Pick("planner.agree.option", "Step 1")
	b.Focus("planner.agree.words")
	b.Type("At half-time I can.")
	b.Focus("planner.agree.confidence")
	b.Type("8")
	b.Fill("planner.agree.review", "1.6.2026")
	b.Click("planner.agreement.yes")
	p := b.kept()
	if p.State != record.PlanAgreed || p.Agreement.OptionID != p.Steps[0].OptionID || p.Agreement.Words != "At half-time I can." || p.Agreement.Review != "2026-06-01" {
		t.Fatalf("kept %s, %+v", p.State, p.Agreement)
	}
	if p.Agreement.AgreedAt == nil || p.Agreement.AgreedBy != "Test Person" {
		t.Errorf("agreed %v by %q", p.Agreement.AgreedAt, p.Agreement.AgreedBy)
	}
	frozen, err := b.desk.Store.FrozenOf(context.Background(), part.RefOf(p))
	if err != nil || len(frozen) != 1 || frozen[0].Evidence == "" || len(frozen[0].Results) < 100 {
		t.Errorf("%d frozen copies, %v", len(frozen), err)
	}
	last := (*b.went)[len(*b.went)-1]
	if last.Screen != desk.Handout || last.Record != p.ID {
		t.Errorf("went to %+v", last)
	}
}

// printed saves the athlete's page where the agreement led, and reads it.
func printed(t *testing.T, b *bench) {
	t.Helper()
	page, err := handoutview.New(b.desk, (*b.went)[len(*b.went)-1])
	if err != nil {
		t.Fatal(err)
	}
	w := apptest.Window(t, container.NewBorder(container.NewHBox(page.Head().Actions...), nil, nil, nil, page.Body()), 1000, 760, false, 100)
	file := filepath.Join(t.TempDir(), "page.pdf")
	apptest.Click(t, w, "handoutview.save")
	apptest.Type(t, w, "handoutview.ask.path", file)
	apptest.Click(t, w, "handoutview.ask.yes")
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	texts, err := pdfread.Texts(data)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.ReplaceAll(strings.Join(texts, " "), "\u00a0", " ")
	p, mix := b.kept(), b.v.Now.Mix
	must := append(handout.SafetySentences(b.desk.Words, b.desk.Practice().Emergency),
		"Step 1, from 18 May.", "“At half-time I can.”", "review 1 June", "if this break comes",
		"What to practise", "times a week: a mouthful at every stoppage, twice a week.", "Next step from "+b.desk.Words.Day(dayOf(t, p.Steps[1].From)),
		fmt.Sprintf("At most in all: %.0f mL ", mix[plan.Water]), fmt.Sprintf(", %.0f mL ", mix[plan.Drink1]))
	for _, part := range must {
		if !strings.Contains(text, strings.ReplaceAll(part, "\u00a0", " ")) {
			t.Errorf("the page does not say %q: %s", part, text)
		}
	}
	for _, draft := range []string{"Draft", "Replaced"} {
		if strings.Contains(text, draft) {
			t.Errorf("what was agreed is called %q", draft)
		}
	}
	prints, err := b.desk.Store.PrintsOf(context.Background(), p.AthleteID)
	if err != nil || len(prints) != 1 || prints[0].Record != p.ID {
		t.Errorf("kept prints %+v, %v", prints, err)
	}
}

// reopened finds the plan as it was agreed, and read only.
func reopened(t *testing.T, first, b *bench) {
	t.Helper()
	if b.v.Now.Draft() || b.v.Now.Selected().Name != "Step 1" {
		t.Fatalf("opened again with %q in hand, %s", b.v.Now.Selected().Name, b.v.Now.Plan.State)
	}
	first.v.ChooseOption(b.v.Now.Option)
	if got, want := b.v.ui.page.deficit.Figure.Text(), first.v.ui.page.deficit.Figure.Text(); got != want {
		t.Errorf("shows %s, agreed on %s", got, want)
	}
	before := b.v.Now.Mix
	b.drag(plan.Water, 0.2, 5)
	if b.v.Now.Mix != before || b.Has("planner.agree") || !b.Has("planner.correct") {
		t.Error("an agreed plan can be moved")
	}
	if step, place, ok := consult.StepNow(b.kept()); !ok || place != 1 || step.Practise == "" {
		t.Errorf("the step in force is %d", place)
	}
}

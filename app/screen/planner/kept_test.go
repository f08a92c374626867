package planner

import (
	"context"
	"math"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/screen/planner/day"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/session"
	"ebbwell/app/screen/planner/steps"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// again opens the plan anew, as it is in the data file, with a tab in sight.
func (b *bench) again(tab string) *bench {
	b.t.Helper()
	p := b.kept()
	other := openAt(b.t, b.desk, b.went, desk.Place{Screen: desk.Plan, Athlete: p.AthleteID, Record: p.ID, Part: tab})
	other.settle()
	return other
}

// How large a step is, is kept with the plan, taken back and opened again.
func TestRulesAreKept(t *testing.T) {
	b := begun(t)
	b.tab(part.TabSteps)
	ladder := func(b *bench) int { return len(b.v.ui.parts[part.TabSteps].(*steps.StepsTab).Ladder.Steps) }
	usual := ladder(b)
	if b.text("planner.rule.fluid") != "" || consult.RulesOf(b.kept()) != plan.DefaultStepRules() {
		t.Fatalf("%q stands as a rule of the plan's own", b.text("planner.rule.fluid"))
	}
	for name, text := range map[string]string{"fluid": "60", "carbohydrate": "6", "sessions": "5", "week": "2", "days": "0"} {
		b.Fill("planner.rule."+name, text)
	}
	own := consult.RulesOf(b.kept())
	want := plan.StepRules{FluidLH: 0.06, CarbohydrateGH: 6, Sessions: 5, PerWeek: 2, ClearDays: 0}
	if math.Abs(own.FluidLH-want.FluidLH) > 1e-9 {
		t.Fatalf("kept %+v", own)
	}
	if own.FluidLH = want.FluidLH; own != want {
		t.Fatalf("kept %+v, not %+v", own, want)
	}
	small := ladder(b)
	if !(small > usual) {
		t.Errorf("%d small steps, %d usual ones", small, usual)
	}
	b = b.again(part.TabSteps)
	if got := ladder(b); got != small || b.text("planner.rule.fluid") != "60" || b.text("planner.rule.days") != "0" {
		t.Errorf("opened again with %d steps of %s mL/h, %s days clear", got, b.text("planner.rule.fluid"), b.text("planner.rule.days"))
	}
	b.Click("planner.steps.build")
	if p := b.kept(); len(p.Steps) != small || p.Steps[0].Sessions != 5 {
		t.Errorf("built %d steps of %d sessions", len(p.Steps), p.Steps[0].Sessions)
	}
	b.settle()
	b.Fill("planner.rule.fluid", "")
	b.Fill("planner.rule.sessions", "many")
	if p := b.kept(); p.Rules.Fluid.Known() || consult.RulesOf(p).Sessions != plan.DefaultStepRules().Sessions {
		t.Errorf("kept %+v", p.Rules)
	}
	b = b.again(part.TabSteps)
	if got := b.text("planner.rule.sessions"); got != "many" {
		t.Errorf("what could not be read is opened again as %q", got)
	}
}

// A rule that was changed is taken back and done again, as any other step.
func TestRulesAreTakenBack(t *testing.T) {
	b := begun(t)
	b.tab(part.TabSteps)
	b.Fill("planner.rule.fluid", "60")
	if !b.v.Undo() || b.text("planner.rule.fluid") != "" || b.kept().Rules.Fluid.Known() {
		t.Errorf("after undo %q, kept %+v", b.text("planner.rule.fluid"), b.kept().Rules.Fluid)
	}
	if !b.v.Redo() || b.text("planner.rule.fluid") != "60" || !b.kept().Rules.Fluid.Known() {
		t.Errorf("done again %q", b.text("planner.rule.fluid"))
	}
	b.option(record.OptionFood)
	b.tab(part.TabBeside)
	b.Focus("planner.option.confidence")
	b.Type("5")
	b.tab(part.TabSteps)
	b.Fill("planner.rule.fluid", "")
	b.settle()
	if c := b.v.Now.PlanCase.Planner.Background().Confidence; !c.Known || c.Value != 5 {
		t.Fatalf("the steps are built for a confidence of %+v", c)
	}
	b.Click("planner.steps.build")
	if p := b.kept(); len(p.Steps) == 0 {
		t.Fatalf("kept %d steps, %+v", len(p.Steps), p.Rules)
	}
	if b.v.Undo(); len(b.kept().Steps) != 0 || b.kept().Rules.Fluid.Known() {
		t.Errorf("the steps are not one step back: %+v", b.kept().Rules)
	}
}

// The sizes of bottle owned, and what a suggestion may not change, are kept.
func TestWhatASuggestionKeepsToIsKept(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.tab(part.TabSession)
	b.Fill("planner.bottles", "500, 750")
	b.Click("planner.hold.drink1")
	b.Click("planner.hold.salt")
	check := func(b *bench) {
		t.Helper()
		on := func(slot plan.Slot) bool { return b.v.ui.parts[part.TabSession].(*session.SessionTab).Holds[slot].On() }
		if on(plan.Drink1) || on(plan.Salt) || !on(plan.Water) || b.text("planner.bottles") != "500 750" {
			t.Errorf("drink %v, salt %v, water %v may change; bottles %q", on(plan.Drink1), on(plan.Salt), on(plan.Water), b.text("planner.bottles"))
		}
		known := b.v.Now.PlanCase.Planner.Background()
		if !slices.Equal(known.Bottles, []float64{500, 750}) {
			t.Errorf("a suggestion fills %v", known.Bottles)
		}
		if held := known.Held; !held[plan.Drink1] || !held[plan.Salt] || held[plan.Water] || held[plan.Food1] {
			t.Errorf("a suggestion leaves %v", held)
		}
	}
	check(b)
	b = b.again(part.TabSession)
	check(b)
	b.Fill("planner.bottles", "a big one")
	if p := b.kept(); p.Rules.Bottles != "" {
		t.Errorf("kept %q", p.Rules.Bottles)
	}
	b = b.again(part.TabSession)
	if got := b.text("planner.bottles"); got != "a big one" {
		t.Errorf("what could not be read is opened again as %q", got)
	}
	b.Fill("planner.bottles", "330")
	b.Click("planner.hold.drink1")
	if p := b.kept(); p.Rules.Bottles != "330" || p.Rules.Held != string(consult.HeldSalt) {
		t.Errorf("kept %+v", p.Rules)
	}
	for range 2 {
		b.v.Undo()
	}
	if p := b.kept(); p.Rules.Bottles != "" || !consult.Held(p, record.ID(b.v.Now.PlanCase.Slots[plan.Drink1].Product.ID)) || b.text("planner.bottles") != "a big one" {
		t.Errorf("after undo %+v, %q in the field", p.Rules, b.text("planner.bottles"))
	}
}

// Bottles are typed in the practice's unit and kept in mL.
func TestBottlesInOunces(t *testing.T) {
	b := begunInOunces(t)
	b.tab(part.TabSession)
	b.Fill("planner.bottles", "16.9 20")
	sizes := consult.BottlesOf(b.kept())
	if len(sizes) != 2 || math.Abs(sizes[0]-499.8) > 0.1 || math.Abs(sizes[1]-591.5) > 0.1 {
		t.Fatalf("kept %v mL", sizes)
	}
	if got := b.again(part.TabSession).text("planner.bottles"); got != "16.9 20" {
		t.Errorf("opened again as %q", got)
	}
	b.tab(part.TabSteps)
	b.Fill("planner.rule.fluid", "3")
	want, err := quantity.Convert(3, quantity.FluidOuncePerHour, quantity.LitrePerHour)
	if got := consult.RulesOf(b.kept()).FluidLH; err != nil || math.Abs(got-want) > 1e-9 {
		t.Errorf("3 fl oz/h are kept as %v L/h", got)
	}
}

// begunInOunces is a new plan of a practice that writes US units.
func begunInOunces(t *testing.T) *bench {
	t.Helper()
	d, went := apptest.Desk(t)
	p := d.Practice()
	p.Settings.Units = "us"
	if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	d.PracticeChanged()
	a, test := hockey(t, d)
	return openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
}

// Further sessions of the day are kept with their start, length and plan.
func TestFurtherSessionsAreKept(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.tab(part.TabDay)
	b.Click("planner.day.add")
	b.settle()
	b.Fill("planner.day.session.2.start", "19:00")
	b.Fill("planner.day.session.2.minutes", "60")
	b.Click("planner.day.add")
	b.settle()
	b.Fill("planner.day.session.3.start", "in the night")
	b.Fill("planner.day.session.3.minutes", "5")
	other, err := b.desk.Store.SavePlan(context.Background(), consult.Successor(b.kept(), ""), store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	b = b.again(part.TabDay)
	b.Pick("planner.day.session.2.plan", b.v.Speaker.PlanName(other))
	b.v.ui.parts[part.TabDay].(*day.DayTab).More.Rows[0].Which.OnChosen(string(other.ID))
	want := []consult.Further{{Start: "19:00", Minutes: 60, Plan: other.ID}, {}}
	if list, said := consult.FurtherOf(b.kept()); !said || !slices.Equal(list, want) {
		t.Fatalf("kept %+v", list)
	}
	b = b.again(part.TabDay)
	if start, minutes := b.text("planner.day.session.2.start"), b.text("planner.day.session.2.minutes"); start != "19:00" || minutes != "60" {
		t.Errorf("opened again at %q for %q min", start, minutes)
	}
	if start, minutes := b.text("planner.day.session.3.start"), b.text("planner.day.session.3.minutes"); start != "in the night" || minutes != "5" {
		t.Errorf("what cannot be used is opened again as %q, %q", start, minutes)
	}
	if c, ok := field.Find(b.w.Content(), "planner.day.session.2.plan").(*field.Choice); !ok || c.Chosen() != string(other.ID) {
		t.Error("opened again by another plan")
	}
	b.Click("planner.day.session.2.remove")
	b.settle()
	if start := b.text("planner.day.session.2.start"); start != "in the night" || b.Has("planner.day.session.3.start") {
		t.Errorf("the row below moved up as %q", start)
	}
	b.v.Undo()
	if list, _ := consult.FurtherOf(b.kept()); !slices.Equal(list, want) || b.text("planner.day.session.3.start") != "in the night" {
		t.Errorf("after undo %+v", list)
	}
}

// A further session of another length is drunk at the same rates, and follows
// the sliders; one that follows by the time to the next is there until somebody
// says otherwise.
func TestFurtherSessionIsCalculated(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.tab(part.TabSession)
	b.Fill("planner.session.next", "4")
	b.tab(part.TabDay)
	tab := b.v.ui.parts[part.TabDay].(*day.DayTab)
	second := func() (minutes, rate float64) {
		t.Helper()
		sessions, _, _, wrong := tab.Sessions()
		if wrong != "" || len(sessions) != 2 {
			t.Fatalf("%d sessions, %q", len(sessions), wrong)
		}
		q := sessions[1].Planner.Evaluate(sessions[1].Length, sessions[1].Mix)
		return q.Minutes, q.Fluid.RateLH
	}
	minutes, rate := second()
	if _, said := consult.FurtherOf(b.kept()); minutes != 95 || said {
		t.Fatalf("the next session lasts %v min, said %v", minutes, said)
	}
	b.Fill("planner.day.session.2.minutes", "60")
	if short, slow := second(); short != 60 || slow > rate+1e-9 || slow < rate-0.2 {
		t.Errorf("%v min at %v L/h, the session before at %v", short, slow, rate)
	}
	before := b.v.Now.Mix
	b.drag(plan.Water, 0.1, 5)
	if _, faster := second(); b.v.Now.Mix == before || !(faster > rate) {
		t.Errorf("the slider moved to %v, the second session stays at %v L/h", b.v.Now.Mix, faster)
	}
	b.settle()
	b.Click("planner.day.session.2.remove")
	if sessions, _, _, _ := tab.Sessions(); len(sessions) != 1 {
		t.Errorf("%d sessions after taking one out", len(sessions))
	}
	b = b.again(part.TabDay)
	if sessions, _, _, _ := b.v.ui.parts[part.TabDay].(*day.DayTab).Sessions(); len(sessions) != 1 || b.Has("planner.day.session.2.start") {
		t.Errorf("taken out, and there again: %d sessions", len(sessions))
	}
}

// A successor keeps to the same rules.
func TestSuccessorKeepsTheRules(t *testing.T) {
	p := apptest.Steps(record.StepNow)
	p.Rules = record.StepRules{Bottles: "500", Held: "salt", Further: "none", Sessions: record.Num(5, quantity.None)}
	if got := consult.Successor(p, "").Rules; got.Bottles != "500" || got.Held != "salt" || got.Further != "none" || got.Sessions.Or(0) != 5 {
		t.Errorf("the successor has %+v", got)
	}
}

// All of this is read only once the plan is agreed.
func TestRulesOfAnAgreedPlanAreReadOnly(t *testing.T) {
	b := stepped(t)
	p := b.kept()
	b.tab(part.TabSession)
	b.Click("planner.hold.drink1")
	b.Focus("planner.bottles")
	b.Type("500")
	b.Key(fyne.KeyTab)
	b.tab(part.TabDay)
	b.Click("planner.day.add")
	if now := b.kept(); now.Rules != p.Rules {
		t.Errorf("an agreed plan has %+v now, had %+v", now.Rules, p.Rules)
	}
}

// What is saved as the picture of the chart is the chart that stands on the screen.
func TestPictureOfTheChartIsTheChart(t *testing.T) {
	b := begun(t)
	chart, found := b.v.ui.page.deficit.Picture(), false
	var walk func(o fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		found = found || o == chart
		switch o := o.(type) {
		case *fyne.Container:
			for _, child := range o.Objects {
				walk(child)
			}
		case fyne.Widget:
			for _, child := range test.WidgetRenderer(o).Objects() {
				walk(child)
			}
		}
	}
	walk(b.w.Content())
	if !found || !chart.Visible() {
		t.Error("the chart that is saved is not on the screen")
	}
}

package planner

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// shortBreaks makes the breaks of a plan so short that they carry less than was drunk.
func (b *bench) shortBreaks() {
	b.t.Helper()
	b.v.Binder.Pick("test", func(s *part.Sheet) {
		for i := range s.Record.Chances {
			s.Record.Chances[i].Seconds = record.Num(10, quantity.Second)
		}
	})
}

// Where the habit passes what the breaks carry, that is asked with both figures, also
// where the plan would not end deep; until it is answered the options hold what was
// drunk and nothing is agreed. Once it is answered they hold what is proposed.
func TestTheHabitAsksForBreaks(t *testing.T) {
	b := begun(t)
	ask := b.v.ui.page.ask
	if _, text := ask.caution.Text(); ask.box.Visible() || text != "" {
		t.Fatalf("breaks that carry the habit are asked for: %q", text)
	}
	b.shortBreaks()
	habit, _ := consult.OptionOf(b.v.Now.Plan, record.OptionHabit)
	drunk := b.v.Now.PlanCase.Planner.Evaluate(plan.Expected, b.v.Now.PlanCase.MixOf(habit)).Fluid.DrunkL
	_, text := ask.caution.Text()
	if !ask.box.Visible() || !strings.HasPrefix(text, b.v.Speaker.Litres(drunk)) || !strings.Contains(text, "these breaks have room for") {
		t.Fatalf("asked %q of %v L", text, drunk)
	}
	found := b.v.Now.Proposal()
	for _, kind := range []record.OptionKind{record.OptionFluid, record.OptionFood, record.OptionAim} {
		if mix, _ := consult.Offered(found, kind); mix != b.v.Now.PlanCase.MixOf(habit) {
			t.Errorf("%s is offered %v before the answer, was drunk %v", kind, mix, b.v.Now.PlanCase.MixOf(habit))
		}
	}
	b.Click("planner.agree")
	if b.Has("planner.agreement.yes") {
		t.Error("agreed before the breaks are settled")
	}
	b.Key(fyne.KeyEscape)
	b.Click("planner.ask.settled")
	if ask.box.Visible() || b.v.Now.Proposal().Ask {
		t.Error("the answer is asked again")
	}
}

// A gap of less than a tenth is lost in whole mouthfuls, and asks nothing.
func TestASmallGapAsksNothing(t *testing.T) {
	b := begun(t)
	b.v.Binder.Pick("test", func(s *part.Sheet) {
		s.Record.Chances = consult.RecordChances(s.Record.ID, []plan.Chance{{Code: "half-time", Minute: 45, Seconds: 185}}) // 518 mL, 500 at once
	})
	habit, _ := consult.OptionOf(b.v.Now.Plan, record.OptionHabit)
	mix := b.v.Now.PlanCase.MixOf(habit)
	if drunk := mix[plan.Water] + mix[plan.Drink1]; drunk < 505 || drunk > 555 {
		t.Fatalf("the test is for a habit a little above 500 mL, it is %v", drunk)
	}
	if b.v.Now.Proposal().Lacking {
		t.Error("a gap of less than a tenth is asked about")
	}
}

// Another length of the session moves the breaks along in one step back; typing on the
// way there does not add up. Breaks of the table are taken from the table anew.
func TestBreaksFollowTheLength(t *testing.T) {
	b := begun(t)
	before := b.kept()
	b.tab(part.TabSession)
	b.Fill("planner.session.minutes", "190")
	after := b.kept()
	if len(after.Chances) != len(before.Chances) {
		t.Fatalf("%d breaks of %d", len(after.Chances), len(before.Chances))
	}
	for i, ch := range after.Chances {
		was, at := before.Chances[i].AtMinute.Or(0), ch.AtMinute.Or(0)
		if math.Abs(at-2*was) > 1 || ch.ID != before.Chances[i].ID {
			t.Errorf("break %d at %v min, was at %v of half the length", i+1, at, was)
		}
	}
	b.v.Undo()
	if got := b.kept(); got.Target.Minutes.Or(0) != before.Target.Minutes.Or(0) || got.Chances[0].AtMinute.Or(0) != before.Chances[0].AtMinute.Or(0) {
		t.Errorf("one step back has %v min, the first break at %v", got.Target.Minutes.Or(0), got.Chances[0].AtMinute.Or(0))
	}
	b.v.Binder.Pick("test", func(s *part.Sheet) { s.Record.Chances[0].AtMinute = record.Num(7, quantity.Minute) })
	b.Fill("planner.session.minutes", "100")
	if got := b.kept().Chances[0].AtMinute.Or(0); got != math.Round(7*100/95.0) {
		t.Errorf("a break set by hand at 7 of 95 min is at %v of 100", got)
	}
}

// What is tolerated is raised in place, and options as proposed are proposed anew; one
// changed by hand stays, and that is said.
func TestOptionsFollowTheTolerance(t *testing.T) {
	b := begun(t)
	fluid := b.option(record.OptionFluid)
	b.Fill("planner.water.amount", "0.1")
	b.tab(part.TabSession)
	b.Click("planner.tolerance")
	b.Fill("planner.tolerance.rate", "1.1")
	b.Fill("planner.tolerance.why", "drank so in training")
	b.Click("planner.tolerance.ask.yes")
	found := b.v.Now.Proposal()
	for _, kind := range []record.OptionKind{record.OptionFood, record.OptionAim} {
		o, _ := consult.OptionOf(b.v.Now.Plan, kind)
		if want, _ := consult.Offered(found, kind); b.v.Now.PlanCase.MixOf(o) != want {
			t.Errorf("%s holds %v, proposed is %v", kind, b.v.Now.PlanCase.MixOf(o), want)
		}
	}
	if got := b.amountKept(fluid.ID, plan.Water); got != 100 {
		t.Errorf("an option changed by hand became %v mL", got)
	}
	if said := strings.Join(*b.said, " "); !strings.Contains(said, fluid.Name) {
		t.Errorf("said %q", said)
	}
}

// The amounts of a draft are whole: millilitres of drinks, halves of food, tenths of
// salt, at any length that is looked at and in an option made from it.
func TestDraftAmountsAreWhole(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.tab(part.TabSession)
	b.Fill("planner.session.short", "80")
	b.v.lookAt(plan.Short)
	b.v.keepAsNew()
	b.v.lookAt(plan.Expected)
	for _, o := range b.kept().Options {
		for slot, x := range b.v.Now.PlanCase.MixOf(o) {
			grain := 1.0
			switch s := plan.Slot(slot); {
			case s.IsFood():
				grain = 0.5
			case s == plan.Salt:
				grain = 0.1
			}
			if n := x / grain; math.Abs(n-math.Round(n)) > 1e-6 {
				t.Errorf("%q holds %v of slot %d", o.Name, x, slot)
			}
		}
	}
}

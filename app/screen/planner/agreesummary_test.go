package planner

import (
	"strings"
	"testing"

	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// What would be agreed is repeated in words before it is: the mix as the breaks carry
// it, the deficit, the carbohydrate and both limits, and what speaks, one bar each.
func TestAgreeRepeatsThePlan(t *testing.T) {
	b := begun(t)
	o := b.option(record.OptionFluid)
	at := b.asked()
	at.Option.Choose(string(o.ID))
	at.Follow()
	said, sp := at.Summary(), b.v.Speaker
	c := b.v.Now.PlanCase
	q := c.Planner.Evaluate(plan.Expected, c.Carried(o))
	for _, must := range []string{
		sp.InWords(b.v.Now, c.Carried(o)), sp.Deficit(q), sp.Spread(q), sp.Carbohydrate(q.Carbohydrate.TotalGH), sp.StopsAt(q.Ceiling), sp.Short(c.Planner.Aim().Deficit.High),
	} {
		if must == "" || !strings.Contains(said, must) {
			t.Errorf("%q is not in %q", must, said)
		}
	}
	for _, text := range overTexts(b.w) {
		if strings.Contains(text, "%!") {
			t.Errorf("%q", text)
		}
	}
}

// What the breaks do not carry is said at the agreement too, in the same sentence.
func TestAgreeSaysWhatBreaksCarry(t *testing.T) {
	b := begun(t)
	o := b.option(record.OptionFood)
	b.Fill("planner.water.amount", "0.6")
	b.v.Binder.Pick("test", func(s *part.Sheet) {
		s.Record.Chances = s.Record.Chances[:1]
		consult.SetWish(&s.Record, consult.BreaksConfirmed, true)
	})
	at := b.asked()
	at.Option.Choose(string(o.ID))
	sentence := b.v.Speaker.NotTaken(b.v.Now, b.v.Live.Take)
	if len(sentence) == 0 || !strings.Contains(at.Summary(), sentence[0]) || !strings.Contains(b.v.ui.page.deficit.Data.Aside, sentence[0]) {
		t.Errorf("the breaks say %q, the agreement %q, the picture %q", sentence, at.Summary(), b.v.ui.page.deficit.Data.Aside)
	}
	if want := b.v.Speaker.Deficit(b.v.Live.At); !strings.Contains(at.Summary(), want) {
		t.Errorf("the headline is %s, the agreement says %q", want, at.Summary())
	}
}

// The breaks at which a plan stands in two bottles are named before it is agreed, with what
// one bottle at each comes to where that is little less; ticked it is what is agreed.
func TestTwoBottlesAreSettledBeforeAgreeing(t *testing.T) {
	b := begun(t)
	o := b.option(record.OptionFluid)
	b.Fill("planner.water.amount", "0.3")
	b.Fill("planner.drink1.amount", "0.4")
	at := b.asked()
	at.Option.Choose(string(o.ID))
	at.Follow()
	c := b.v.Now.PlanCase
	chosen, _ := consult.OptionByID(b.v.Now.Plan, o.ID)
	var s plan.Schedule
	c.Schedule(c.MixOf(chosen), &s)
	where, sp := b.v.Speaker.TwoBottles(s), b.v.Speaker
	one := c.OneBottle().Carried(chosen)
	if where == "" || !strings.Contains(at.Summary(), where) || !strings.Contains(at.Summary(), sp.InWords(b.v.Now, one)) {
		t.Fatalf("two bottles at %q, one each carries %s: it says %q", where, sp.InWords(b.v.Now, one), at.Summary())
	}
	if !at.OneBottle.Visible() || at.OneBottle.On() {
		t.Fatal("one bottle is not offered")
	}
	at.OneBottle.Tapped(nil)
	if !consult.Wished(b.v.Now.Plan, consult.WishOneBottle) || strings.Contains(at.Summary(), where) || !at.OneBottle.Visible() {
		t.Errorf("ticked: %q, it says %q", b.v.Now.Plan.Rules.Wishes, at.Summary())
	}
	if !at.Agree() {
		t.Fatal(b.refusal(at))
	}
	kept := b.kept()
	agreed, _ := consult.OptionByID(kept, o.ID)
	c.Schedule(one, &s)
	for slot := range plan.Drinks {
		if got := c.MixOf(agreed)[slot]; got != one[slot] {
			t.Errorf("drink %d: %g mL agreed, one bottle each carries %g", slot, got, one[slot])
		}
	}
}

// Where one bottle would take a drink away, two are named and nothing is offered.
func TestOneBottleThatDropsADrinkIsNotOffered(t *testing.T) {
	b := begun(t)
	o := b.option(record.OptionFluid)
	b.v.Binder.Pick("test", func(s *part.Sheet) {
		s.Record.Chances = s.Record.Chances[1:2]
		consult.SetWish(&s.Record, consult.BreaksConfirmed, true)
	})
	b.Fill("planner.water.amount", "0.2")
	b.Fill("planner.drink1.amount", "0.2")
	at := b.asked()
	at.Option.Choose(string(o.ID))
	at.Follow()
	if !strings.Contains(at.Summary(), "Two bottles are needed") || strings.Contains(at.Summary(), "With one bottle") || at.OneBottle.Visible() {
		t.Errorf("it says %q, offered %v", at.Summary(), at.OneBottle.Visible())
	}
}

// Steps that lead elsewhere than what is to be agreed are refused: the page would print
// them.
func TestStepsThatLeadElsewhereAreNotAgreed(t *testing.T) {
	b := begun(t)
	b.tab(part.TabSteps)
	b.Click("planner.steps.build")
	steps := b.v.Now.Plan.Steps
	last := steps[len(steps)-1].OptionID
	b.v.Binder.Pick("test", func(s *part.Sheet) {
		state.Edit(&s.Record, last, func(o *record.Option) { o.Items[0].Volume = record.Num(50, quantity.Millilitre) })
	})
	fluid, _ := consult.OptionOf(b.v.Now.Plan, record.OptionAim)
	at := b.asked()
	at.Option.Choose(string(fluid.ID))
	if at.Agree() || !strings.Contains(b.refusal(at), "do not lead to") || b.kept().State != record.PlanDraft {
		t.Errorf("said %q", b.refusal(at))
	}
	at.Option.Choose(string(steps[0].OptionID))
	if wrong := at.Wrong(); strings.Contains(wrong, "do not lead to") {
		t.Errorf("a step is refused: %q", wrong)
	}
}

package planner

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/agreement"
	"ebbwell/app/screen/planner/day"
	"ebbwell/app/screen/planner/mix"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// caution is what the dialog says stands in the way of agreeing.
func (b *bench) refusal(a *agreement.Agreement) string {
	b.t.Helper()
	_, said := a.Trouble.Text()
	return said
}

// asked is the agreement that would be asked for, without its dialog.
func (b *bench) asked() *agreement.Agreement {
	a := agreement.NewAgreement(b.v.Plan)
	a.Follow()
	return a
}

// What is agreed on is what is in hand, unless another is chosen; the habit is not.
func TestWhatIsInHandIsAgreedOn(t *testing.T) {
	b := begun(t)
	for _, kind := range []record.OptionKind{record.OptionFood, record.OptionFluid} {
		b.option(kind)
		if got := b.asked().Option.Chosen(); got != string(b.v.Now.Option) {
			t.Errorf("with %s in hand %q is to be agreed on", kind, got)
		}
	}
	b.option(record.OptionHabit)
	if o, _ := consult.InForce(b.v.Now.Plan); b.asked().Option.Chosen() != string(o.ID) {
		t.Errorf("with the habit in hand %q is to be agreed on", b.asked().Option.Chosen())
	}
}

// Over-drinking cannot be agreed: a habit above the ceiling, taken as an option.
func TestOverDrinkingIsNotAgreed(t *testing.T) {
	d, went := apptest.Desk(t)
	a, test := tested(t, d, apptest.Athlete(t, d), 64.0)
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
	b.option(record.OptionHabit)
	if !b.v.Live.At.Guards.Stops() {
		t.Fatalf("the habit of %v L of %v lost is under the ceiling of %v", b.v.Live.At.Fluid.DrunkL, b.v.Live.At.LossL.Value, b.v.Live.At.Ceiling.FluidL)
	}
	b.tab(part.TabBeside)
	b.Click("planner.option.duplicate")
	over := b.v.Now.Option
	b.Click("planner.agree")
	b.Pick("planner.agree.option", b.v.Now.Selected().Name)
	b.Click("planner.agreement.yes")
	if !b.Has("planner.agreement.yes") || b.kept().State != record.PlanDraft {
		t.Fatal("over-drinking was agreed")
	}
	b.Key(fyne.KeyEscape)
	at := b.asked()
	at.Option.Choose(string(over))
	if at.Agree() || !strings.Contains(b.refusal(at), "drinking too much") {
		t.Errorf("said %q", b.refusal(at))
	}
	// Downwards it can be moved, as far as it may be agreed.
	b.v.ChooseOption(over)
	b.Fill("planner.water.amount", "0")
	b.Fill("planner.drink1.amount", "0.2")
	if b.v.Live.At.Guards.Stops() {
		t.Error("it cannot be brought down")
	}
}

// A condition that asks for a physician does not let a plan be agreed without
// the name; a profile that is not whole, or a minor's that is not settled, does
// not let any.
func TestWhatIsNeededToAgree(t *testing.T) {
	base := func(change func(a *record.Athlete)) *bench {
		d, went := apptest.Desk(t)
		a := apptest.Athlete(t, d)
		change(&a)
		a, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{})
		if err != nil {
			t.Fatal(err)
		}
		_, test := tested(t, d, a, 62.4)
		return openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
	}
	flag := func(kind record.FlagKind) func(a *record.Athlete) {
		return func(a *record.Athlete) {
			a.Flags = []record.Flag{{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Kind: kind}}
		}
	}
	for name, c := range map[string]struct {
		change func(a *record.Athlete)
		said   string
	}{
		"no date of birth": {func(a *record.Athlete) { a.Born = "" }, "date of birth"},
		"no sex":           {func(a *record.Athlete) { a.Sex = "" }, "Sex is missing"},
		"a minor":          {func(a *record.Athlete) { a.Born = "2011-01-01" }, "under 18"},
	} {
		t.Run(name, func(t *testing.T) {
			b := base(c.change)
			if got := agreement.NotYet(b.v.Plan); !strings.Contains(got, c.said) {
				t.Errorf("said %q", got)
			}
			b.Click("planner.agree")
			if b.Has("planner.agreement.yes") || !b.Has("planner.notyet.done") {
				t.Error("it is asked for all the same")
			}
		})
	}
	b := base(flag(record.FlagHeart))
	at := b.asked()
	if at.Agree() || !strings.Contains(b.refusal(at), "heart disease") || b.kept().State != record.PlanDraft {
		t.Errorf("agreed without a physician's name: %q", b.refusal(at))
	}
	at.Physician.SetText("Dr Orla Venn (invented)")
	if !at.Agree() || b.kept().Agreement.Physician != "Dr Orla Venn (invented)" {
		t.Errorf("not agreed with the name: %q", b.refusal(at))
	}
}

// Salt may not be agreed where the profile withholds it.
func TestSaltIsNotAgreedWhereWithheld(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Kester")
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true})
	o := b.option(record.OptionFluid)
	b.v.Binder.Pick("test", func(s *part.Sheet) {
		state.Edit(&s.Record, o.ID, func(o *record.Option) { o.Salt = record.Num(1, quantity.Gram) })
	})
	at := b.asked()
	at.Option.Choose(string(o.ID))
	if at.Agree() || !strings.Contains(b.refusal(at), "adds salt") {
		t.Errorf("said %q", b.refusal(at))
	}
}

// Salt is not added beyond what is lost: not by its own slider, and not by drinks
// moved after it.
func TestSaltBeyondTheLossIsNotAgreed(t *testing.T) {
	b := begun(t)
	o := b.option(record.OptionFluid)
	salt := func(grams float64) *agreement.Agreement {
		b.v.Binder.Pick("test", func(s *part.Sheet) {
			state.Edit(&s.Record, o.ID, func(o *record.Option) { o.Salt = record.Num(grams, quantity.Gram) })
		})
		at := b.asked()
		at.Option.Choose(string(o.ID))
		return at
	}
	if got := salt(0.5).Wrong(); got != "" {
		t.Fatalf("half a gram is refused: %q", got)
	}
	if at := salt(30); at.Agree() || !strings.Contains(b.refusal(at), "more sodium than is lost") {
		t.Errorf("30 g: said %q", b.refusal(at))
	}
}

// Steps are agreed with the plan: one that a shorter session, or a condition of
// the profile, has overtaken is not agreed by agreeing the one before it.
func TestStepsAheadAreNotAgreedUnseen(t *testing.T) {
	b := begun(t)
	b.tab(part.TabSteps)
	b.Click("planner.steps.build")
	steps := b.v.Now.Plan.Steps
	last, first := steps[len(steps)-1].OptionID, steps[0].OptionID
	if len(steps) < 2 {
		t.Fatalf("%d steps", len(steps))
	}
	refused := func(what string) {
		t.Helper()
		food, _ := consult.OptionOf(b.v.Now.Plan, record.OptionHabit)
		for _, option := range []record.ID{first, food.ID} { // the first step, and an option that begins at it
			at := b.asked()
			at.Option.Choose(string(option))
			at.Option.OnChosen(string(option))
			if at.WrongStep() == "" || at.Agree() || b.kept().State != record.PlanDraft {
				t.Errorf("%s: agreed, said %q", what, b.refusal(at))
			}
		}
	}
	b.v.Binder.Pick("test", func(s *part.Sheet) {
		state.Edit(&s.Record, last, func(o *record.Option) { o.Items[0].Volume = record.Num(2600, quantity.Millilitre) })
	})
	refused("a last step above the loss")
	b.v.Binder.Pick("test", func(s *part.Sheet) {
		state.Edit(&s.Record, last, func(o *record.Option) {
			o.Items[0].Volume = record.Num(100, quantity.Millilitre)
			o.Salt = record.Num(1, quantity.Gram)
		})
	})
	if got := b.asked().WrongStep(); got != "" {
		t.Fatalf("salt is refused though nothing withholds it: %q", got)
	}
	b.v.Now.PlanCase.Care.WithholdSalt = []record.FlagKind{record.FlagKidney}
	refused("a last step with salt")
}

// After a session sodium is advised with the drink, but not where salt is
// withheld.
func TestSodiumAfterIsWithheld(t *testing.T) {
	sp := begun(t).v.Speaker
	e := plan.DayEvent{Code: plan.DayDrinkAfter, Advice: fuel.After(1.5, 64, 5)}
	if got := day.AdviceNote(sp, e, true); !strings.Contains(got, "sodium") {
		t.Fatalf("said %q: this test cannot fail", got)
	}
	if got := day.AdviceNote(sp, e, false); strings.Contains(got, "sodium") || got == "" {
		t.Errorf("where salt is withheld it says %q", got)
	}
}

// Where mass is hidden the drinks before are drawn and written alike, as on the
// athlete's page, over all masses that share them.
func TestDrinksBeforeHideTheMass(t *testing.T) {
	sp := begun(t).v.Speaker
	event := func(code string, kg float64) plan.DayEvent {
		if code == plan.DayDrinkLate {
			return plan.DayEvent{Code: code, Advice: fuel.BeforeTwoHours(kg)}
		}
		return plan.DayEvent{Code: code, Advice: fuel.BeforeFourHours(kg)}
	}
	for _, code := range []string{plan.DayDrinkEarly, plan.DayDrinkLate} {
		light, heavy := event(code, 63), event(code, 77)
		if day.Drawn(sp, light) == day.Drawn(sp, heavy) || day.Advice(sp, light) == day.Advice(sp, heavy) {
			t.Fatalf("%s does not differ with the mass where it is shown: this test cannot fail", code)
		}
	}
	sp.By.Hidden = true
	for _, code := range []string{plan.DayDrinkEarly, plan.DayDrinkLate} {
		light, heavy := event(code, 63), event(code, 77)
		if day.Drawn(sp, light) != day.Drawn(sp, heavy) || day.Advice(sp, light) != day.Advice(sp, heavy) {
			t.Errorf("%s: %s, drawn %v, and %s, drawn %v", code, day.Advice(sp, light), day.Drawn(sp, light), day.Advice(sp, heavy), day.Drawn(sp, heavy))
		}
		if want := sp.Say("planner.day.about", sp.Litres(day.Drawn(sp, light))); day.Advice(sp, light) != want {
			t.Errorf("%s is written %q and drawn as %q", code, day.Advice(sp, light), want)
		}
	}
}

// Table salt has a slider, and is no drink to be made up.
func TestSaltIsNoDrink(t *testing.T) {
	b := begun(t)
	sugar := false
	for _, p := range mix.Products(b.v.Plan, record.RoleDrink) {
		if record.ID(p.ID) == consult.SaltID {
			t.Error("table salt is offered as a drink")
		}
		sugar = sugar || p.ID == "generic.sugar"
	}
	if !sugar {
		t.Error("no powder is offered: the check cannot fail")
	}
}

// A drink nobody knows the contents of is said to count as water.
func TestGapsOfTheHabitAreSaid(t *testing.T) {
	d, went := apptest.Desk(t)
	a, test := hockey(t, d)
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
	if text := b.v.ui.page.mix.Note.Text(); strings.Contains(text, "plain water") {
		t.Fatalf("a habit of known drinks says %q", text)
	}
	tests := b.v.Now.PlanCase.Basis.Tests
	tests[0].Intake.Bottles = append(tests[0].Intake.Bottles, fuel.Part{Item: 3, Known: true, Grams: 100, Millilitres: 100})
	tests[0].Intake.Foods = append(tests[0].Intake.Foods, fuel.Part{Item: 1, Known: true, Grams: 40, Product: fuel.Product{Name: "Cake"}})
	b.option(record.OptionFood)
	for _, must := range []string{"Counted as plain water in the habit", "bottle 3", "Left out of the habit", "Cake"} {
		if text := b.v.ui.page.mix.Note.Text(); !strings.Contains(text, must) {
			t.Errorf("%q does not say %q", text, must)
		}
	}
}

// What was kept of an agreed plan and cannot be read is said, and not passed off
// as what was agreed.
func TestUnreadableAgreementIsSaid(t *testing.T) {
	b := begun(t)
	if at := b.asked(); !at.Agree() {
		t.Fatal(b.refusal(at))
	}
	p := b.kept()
	again := func() string {
		shown := openAt(t, b.desk, b.went, desk.Place{Screen: desk.Plan, Athlete: p.AthleteID, Record: p.ID})
		title, _ := shown.v.ui.page.trouble.Text()
		return title
	}
	if title := again(); title != "" {
		t.Fatalf("a plan that is whole says %q", title)
	}
	if _, err := b.desk.Store.Freeze(context.Background(), part.RefOf(p), store.Freezing{Inputs: []byte("[]"), Results: []byte("[]"), Evidence: "0"}); err != nil {
		t.Fatal(err)
	}
	if title := again(); title != "Not as it was agreed." {
		t.Errorf("said %q", title)
	}
}

// An agreed plan is corrected with a reason, and what was agreed stays kept; a
// new one takes its place.
func TestCorrectAndGoOn(t *testing.T) {
	b := begun(t)
	if at := b.asked(); !at.Agree() {
		t.Fatal(b.refusal(at))
	}
	first := b.kept()
	b.Click("planner.next")
	next := (*b.went)[len(*b.went)-1].Record
	second := openAt(t, b.desk, b.went, desk.Place{Screen: desk.Plan, Athlete: first.AthleteID, Record: next})
	if second.v.Now.Plan.State != record.PlanDraft || len(second.v.Now.Plan.Options) != 4 || second.v.Now.Mix != b.v.Now.Mix && second.v.Now.Selected().Kind != record.OptionFood {
		t.Fatalf("the next plan is %+v", second.v.Now.Plan)
	}
	at := second.asked()
	if len(at.Replaces) != 1 || !at.Replaces[0].On() || !at.Agree() {
		t.Fatalf("%d plans to replace, %q", len(at.Replaces), second.refusal(at))
	}
	if old := b.kept(); old.State != record.PlanReplaced {
		t.Errorf("the first plan is %s", old.State)
	}
	second.Click("planner.correct")
	second.Click("planner.correct.ask.yes")
	if second.v.Now.Draft() {
		t.Fatal("corrected without a reason")
	}
	second.Focus("planner.correct.why")
	second.Type("the long bottle was counted twice")
	second.Click("planner.correct.ask.yes")
	p := second.kept()
	frozen, err := second.desk.Store.FrozenOf(context.Background(), part.RefOf(p))
	if p.State != record.PlanDraft || err != nil || len(frozen) != 2 || !second.v.Now.Draft() {
		t.Errorf("%s, %d frozen copies, %v", p.State, len(frozen), err)
	}
	second.option(record.OptionFood)
	second.Fill("planner.water.amount", "0.25")
	if got := second.amountKept(second.v.Now.Option, plan.Water); got != 250 {
		t.Errorf("after the correction %v mL are kept", got)
	}
}

// athlete is the athlete as kept.
func (b *bench) athlete() record.Athlete {
	b.t.Helper()
	a, err := b.desk.Store.LoadAthlete(context.Background(), b.v.File.Athlete.ID)
	if err != nil {
		b.t.Fatal(err)
	}
	return a
}

// stepped is an agreed plan with steps, its steps in sight.
func stepped(t *testing.T) *bench {
	t.Helper()
	b := begun(t)
	b.tab(part.TabSteps)
	b.Click("planner.steps.build")
	at := b.asked()
	at.Option.Choose(string(b.v.Now.Plan.Steps[0].OptionID))
	if !at.Agree() {
		t.Fatal(b.refusal(at))
	}
	b.settle()
	return b
}

// Low confidence given at the agreement proposes a smaller step there and then.
func TestLowConfidenceAtTheAgreement(t *testing.T) {
	b := begun(t)
	b.Click("planner.agree")
	b.Focus("planner.agree.confidence")
	for _, typed := range []string{"7", "6", "9"} {
		proposed := typed == "6"
		b.Type(typed)
		b.settle()
		said := false
		for _, text := range overTexts(b.w) {
			said = said || strings.Contains(text, "Confidence is "+typed+" of 10")
		}
		if said != proposed {
			t.Errorf("at a confidence of %s a smaller step is proposed: %v", typed, said)
		}
	}
}

package planner

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// caution is what the dialog says stands in the way of agreeing.
func (b *bench) refusal(a *agreement) string {
	b.t.Helper()
	_, said := a.trouble.Text()
	return said
}

// asked is the agreement that would be asked for, without its dialog.
func (b *bench) asked() *agreement {
	a := b.v.newAgreement()
	a.follow()
	return a
}

// Over-drinking cannot be agreed: a habit above the ceiling, taken as an option.
func TestOverDrinkingIsNotAgreed(t *testing.T) {
	d, went := apptest.Desk(t)
	a, test := tested(t, d, apptest.Athlete(t, d), 64.0)
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
	b.option(record.OptionHabit)
	if !b.v.live.at.Guards.Stops() {
		t.Fatalf("the habit of %v L of %v lost is under the ceiling of %v", b.v.live.at.Fluid.DrunkL, b.v.live.at.LossL.Value, b.v.live.at.Ceiling.FluidL)
	}
	b.tab(TabBeside)
	b.Click("planner.option.duplicate")
	over := b.v.now.option
	b.Click("planner.agree")
	b.Pick("planner.agree.option", b.v.now.hand().Name)
	b.Click("planner.agreement.yes")
	if !b.Has("planner.agreement.yes") || b.kept().State != record.PlanDraft {
		t.Fatal("over-drinking was agreed")
	}
	b.Key(fyne.KeyEscape)
	at := b.asked()
	at.option.Choose(string(over))
	if at.agree() || !strings.Contains(b.refusal(at), "drinking too much") {
		t.Errorf("said %q", b.refusal(at))
	}
	// Downwards it can be moved, as far as it may be agreed.
	b.v.chooseOption(over)
	b.Fill("planner.water.amount", "0")
	b.Fill("planner.drink1.amount", "0.2")
	if b.v.live.at.Guards.Stops() {
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
		"no birth date": {func(a *record.Athlete) { a.Born = "" }, "birth date"},
		"no sex":        {func(a *record.Athlete) { a.Sex = "" }, "sex"},
		"a minor":       {func(a *record.Athlete) { a.Born = "2011-01-01" }, "under 18"},
	} {
		t.Run(name, func(t *testing.T) {
			b := base(c.change)
			if got := b.v.notYet(); !strings.Contains(got, c.said) {
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
	if at.agree() || !strings.Contains(b.refusal(at), "heart disease") || b.kept().State != record.PlanDraft {
		t.Errorf("agreed without a physician's name: %q", b.refusal(at))
	}
	at.physician.SetText("Dr Orla Venn (invented)")
	if !at.agree() || b.kept().Agreement.Physician != "Dr Orla Venn (invented)" {
		t.Errorf("not agreed with the name: %q", b.refusal(at))
	}
}

// Salt may not be agreed where the profile withholds it.
func TestSaltIsNotAgreedWhereWithheld(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Kester")
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true})
	o := b.option(record.OptionFluid)
	b.v.b.Pick("test", func(s *sheet) {
		edit(&s.Record, o.ID, func(o *record.Option) { o.Salt = record.Num(1, quantity.Gram) })
	})
	at := b.asked()
	at.option.Choose(string(o.ID))
	if at.agree() || !strings.Contains(b.refusal(at), "adds salt") {
		t.Errorf("said %q", b.refusal(at))
	}
}

// Salt is not added beyond what is lost: not by its own slider, and not by drinks
// moved after it.
func TestSaltBeyondTheLossIsNotAgreed(t *testing.T) {
	b := begun(t)
	o := b.option(record.OptionFluid)
	salt := func(grams float64) *agreement {
		b.v.b.Pick("test", func(s *sheet) {
			edit(&s.Record, o.ID, func(o *record.Option) { o.Salt = record.Num(grams, quantity.Gram) })
		})
		at := b.asked()
		at.option.Choose(string(o.ID))
		return at
	}
	if got := salt(0.5).wrong(); got != "" {
		t.Fatalf("half a gram is refused: %q", got)
	}
	if at := salt(30); at.agree() || !strings.Contains(b.refusal(at), "more sodium than is lost") {
		t.Errorf("30 g: said %q", b.refusal(at))
	}
}

// Steps are agreed with the plan: one that a shorter session, or a condition of
// the profile, has overtaken is not agreed by agreeing the one before it.
func TestStepsAheadAreNotAgreedUnseen(t *testing.T) {
	b := begun(t)
	b.tab(TabSteps)
	b.Click("planner.steps.build")
	steps := b.v.now.plan.Steps
	last, first := steps[len(steps)-1].OptionID, steps[0].OptionID
	if len(steps) < 2 {
		t.Fatalf("%d steps", len(steps))
	}
	refused := func(what string) {
		t.Helper()
		food, _ := consult.OptionOf(b.v.now.plan, record.OptionHabit)
		for _, option := range []record.ID{first, food.ID} { // the first step, and an option that begins at it
			at := b.asked()
			at.option.Choose(string(option))
			at.option.OnChosen(string(option))
			if at.wrongStep() == "" || at.agree() || b.kept().State != record.PlanDraft {
				t.Errorf("%s: agreed, said %q", what, b.refusal(at))
			}
		}
	}
	b.v.b.Pick("test", func(s *sheet) {
		edit(&s.Record, last, func(o *record.Option) { o.Items[0].Volume = record.Num(2600, quantity.Millilitre) })
	})
	refused("a last step above the loss")
	b.v.b.Pick("test", func(s *sheet) {
		edit(&s.Record, last, func(o *record.Option) {
			o.Items[0].Volume = record.Num(100, quantity.Millilitre)
			o.Salt = record.Num(1, quantity.Gram)
		})
	})
	if got := b.asked().wrongStep(); got != "" {
		t.Fatalf("salt is refused though nothing withholds it: %q", got)
	}
	b.v.now.planCase.Care.WithholdSalt = []record.FlagKind{record.FlagKidney}
	refused("a last step with salt")
}

// After a session sodium is advised with the drink, but not where salt is
// withheld.
func TestSodiumAfterIsWithheld(t *testing.T) {
	sp := begun(t).v.sp
	e := plan.DayEvent{Code: plan.DayDrinkAfter, Advice: fuel.After(1.5, 64, 5)}
	if got := sp.adviceNote(e, true); !strings.Contains(got, "sodium") {
		t.Fatalf("said %q: this test cannot fail", got)
	}
	if got := sp.adviceNote(e, false); strings.Contains(got, "sodium") || got == "" {
		t.Errorf("where salt is withheld it says %q", got)
	}
}

// Where mass is hidden the drinks before are drawn and written alike, as on the
// athlete's page, over all masses that share them.
func TestDrinksBeforeHideTheMass(t *testing.T) {
	sp := begun(t).v.sp
	event := func(code string, kg float64) plan.DayEvent {
		if code == plan.DayDrinkLate {
			return plan.DayEvent{Code: code, Advice: fuel.BeforeTwoHours(kg)}
		}
		return plan.DayEvent{Code: code, Advice: fuel.BeforeFourHours(kg)}
	}
	for _, code := range []string{plan.DayDrinkEarly, plan.DayDrinkLate} {
		light, heavy := event(code, 63), event(code, 77)
		if sp.drawn(light) == sp.drawn(heavy) || sp.advice(light) == sp.advice(heavy) {
			t.Fatalf("%s does not differ with the mass where it is shown: this test cannot fail", code)
		}
	}
	sp.by.Hidden = true
	for _, code := range []string{plan.DayDrinkEarly, plan.DayDrinkLate} {
		light, heavy := event(code, 63), event(code, 77)
		if sp.drawn(light) != sp.drawn(heavy) || sp.advice(light) != sp.advice(heavy) {
			t.Errorf("%s: %s, drawn %v, and %s, drawn %v", code, sp.advice(light), sp.drawn(light), sp.advice(heavy), sp.drawn(heavy))
		}
		if want := sp.say("planner.day.about", sp.litres(sp.drawn(light))); sp.advice(light) != want {
			t.Errorf("%s is written %q and drawn as %q", code, sp.advice(light), want)
		}
	}
}

// Table salt has a slider, and is no drink to be made up.
func TestSaltIsNoDrink(t *testing.T) {
	b := begun(t)
	sugar := false
	for _, p := range b.v.products(record.RoleDrink) {
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
	if text := b.v.ui.page.mix.note.Text(); strings.Contains(text, "plain water") {
		t.Fatalf("a habit of known drinks says %q", text)
	}
	tests := b.v.now.planCase.Basis.Tests
	tests[0].Intake.Bottles = append(tests[0].Intake.Bottles, consult.Part{Item: 3, Known: true, Grams: 100, Millilitres: 100})
	tests[0].Intake.Foods = append(tests[0].Intake.Foods, consult.Part{Item: 1, Known: true, Grams: 40, Product: fuel.Product{Name: "Cake"}})
	b.option(record.OptionFood)
	for _, must := range []string{"Counts as plain water in the habit", "bottle 3", "Left out of the habit", "Cake"} {
		if text := b.v.ui.page.mix.note.Text(); !strings.Contains(text, must) {
			t.Errorf("%q does not say %q", text, must)
		}
	}
}

// What was kept of an agreed plan and cannot be read is said, and not passed off
// as what was agreed.
func TestUnreadableAgreementIsSaid(t *testing.T) {
	b := begun(t)
	if at := b.asked(); !at.agree() {
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
	if _, err := b.desk.Store.Freeze(context.Background(), refOf(p), store.Freezing{Inputs: []byte("[]"), Results: []byte("[]"), Evidence: "0"}); err != nil {
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
	if at := b.asked(); !at.agree() {
		t.Fatal(b.refusal(at))
	}
	first := b.kept()
	b.Click("planner.next")
	next := (*b.went)[len(*b.went)-1].Record
	second := openAt(t, b.desk, b.went, desk.Place{Screen: desk.Plan, Athlete: first.AthleteID, Record: next})
	if second.v.now.plan.State != record.PlanDraft || len(second.v.now.plan.Options) != 4 || second.v.now.mix != b.v.now.mix && second.v.now.hand().Kind != record.OptionFood {
		t.Fatalf("the next plan is %+v", second.v.now.plan)
	}
	at := second.asked()
	if len(at.replaces) != 1 || !at.replaces[0].On() || !at.agree() {
		t.Fatalf("%d plans to replace, %q", len(at.replaces), second.refusal(at))
	}
	if old := b.kept(); old.State != record.PlanReplaced {
		t.Errorf("the first plan is %s", old.State)
	}
	second.Click("planner.correct")
	second.Click("planner.correct.ask.yes")
	if second.v.now.draft() {
		t.Fatal("corrected without a reason")
	}
	second.Focus("planner.correct.why")
	second.Type("the long bottle was counted twice")
	second.Click("planner.correct.ask.yes")
	p := second.kept()
	frozen, err := second.desk.Store.FrozenOf(context.Background(), refOf(p))
	if p.State != record.PlanDraft || err != nil || len(frozen) != 1 || !second.v.now.draft() {
		t.Errorf("%s, %d frozen copies, %v", p.State, len(frozen), err)
	}
	second.option(record.OptionFood)
	second.Fill("planner.water.amount", "0.25")
	if got := second.amountKept(second.v.now.option, plan.Water); got != 250 {
		t.Errorf("after the correction %v mL are kept", got)
	}
}

// athlete is the athlete as kept.
func (b *bench) athlete() record.Athlete {
	b.t.Helper()
	a, err := b.desk.Store.LoadAthlete(context.Background(), b.v.file.athlete.ID)
	if err != nil {
		b.t.Fatal(err)
	}
	return a
}

// stepped is an agreed plan with steps, its steps in sight.
func stepped(t *testing.T) *bench {
	t.Helper()
	b := begun(t)
	b.tab(TabSteps)
	b.Click("planner.steps.build")
	at := b.asked()
	at.option.Choose(string(b.v.now.plan.Steps[0].OptionID))
	if !at.agree() {
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

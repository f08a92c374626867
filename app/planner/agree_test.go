package planner

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/desk"
	"ebbwell/internal/consult"
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

// Sessions done are recorded, the rule proposes, the practitioner decides, and
// only so the tolerance rises, with the reason in the athlete's history.
func TestFollowUp(t *testing.T) {
	b := stepped(t)
	for _, stomach := range []string{"2", "1"} {
		b.Click("planner.done.record")
		b.Fill("planner.done.share", "90")
		b.Fill("planner.done.drunk", "1100")
		b.Focus("planner.done.stomach")
		b.Type(stomach)
		b.Click("planner.session.done.yes")
		b.settle()
	}
	p := b.kept()
	if len(p.Reviews) != 2 || p.Reviews[0].Drunk.Or(0) != 1100 || p.Reviews[1].Stomach.Or(-1) != 1 || p.State != record.PlanAgreed {
		t.Fatalf("kept %+v", p.Reviews)
	}
	if got := b.v.proposal(); got.Decision != plan.Next {
		t.Fatalf("proposes %+v", got)
	}
	before := b.v.file.athlete.UsualDrinking.Or(0)
	b.Click("planner.decide.hold")
	b.Click("planner.decision.yes")
	if !b.Has("planner.decision.yes") {
		t.Fatal("decided against the rule without a reason")
	}
	b.Key(fyne.KeyEscape)
	if a := b.athlete(); a.UsualDrinking.Or(0) != before {
		t.Error("the tolerance rose without a decision")
	}
	b.Click("planner.decide.next")
	b.Click("planner.decision.yes")
	p = b.kept()
	if _, place, _ := consult.StepNow(p); place != 2 || p.Steps[0].State != record.StepDone || len(p.Reviews) != 3 || p.Reviews[2].Decision != record.DecisionNext {
		t.Fatalf("step %d is in force, %+v", place, p.Reviews)
	}
	a := b.athlete()
	if !(a.UsualDrinking.Or(0) > before) {
		t.Errorf("the stomach is used to %v after %v L/h", a.UsualDrinking.Or(0), before)
	}
	changes, err := b.desk.Store.History(context.Background(), record.Ref{Kind: record.KindAthlete, ID: a.ID})
	if err != nil || len(changes) == 0 || changes[0].Field != "usualDrinking" || changes[0].Why == "" {
		t.Errorf("the history says %+v, %v", changes[:1], err)
	}
	if b.v.now.hand().Name != "Step 2" {
		t.Errorf("%q in hand", b.v.now.hand().Name)
	}
}

// Heavier after a session goes back, whatever else went well.
func TestHeavierGoesBack(t *testing.T) {
	b := stepped(t)
	b.Click("planner.done.record")
	b.Fill("planner.done.share", "100")
	b.Click("planner.done.heavier")
	b.Click("planner.session.done.yes")
	p := b.v.proposal()
	if p.Decision != plan.Back || p.Reason != plan.ReviewGained {
		t.Fatalf("proposes %+v", p)
	}
	b.settle()
	b.Click("planner.decide.back")
	b.Click("planner.decision.yes")
	if _, place, _ := consult.StepNow(b.kept()); place != 1 {
		t.Errorf("step %d is in force", place)
	}
	if len(*b.said) == 0 || !strings.Contains((*b.said)[len(*b.said)-1], "no step before") {
		t.Errorf("said %q", *b.said)
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

package planner

import (
	"context"
	"strings"
	"testing"
	"time"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/app/screen/agreement"
	"ebbwell/app/screen/planner/breaks"
	"ebbwell/app/screen/planner/day"
	"ebbwell/app/screen/planner/figures"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/session"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// A proposal is shown before anything of it is taken; leaving it changes nothing,
// and taking it is one step back.
func TestProposalIsShownFirst(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFluid)
	b.Fill("planner.water.amount", "0.1")
	before := b.kept()
	b.Click("planner.suggest")
	if !b.Has("planner.proposal.done") || !b.Has("planner.proposal.drinks") {
		t.Fatalf("no proposal: %v", b.Names())
	}
	b.Click("planner.proposal.done")
	if o, _ := consult.OptionOf(b.kept(), record.OptionFluid); b.v.Now.PlanCase.MixOf(o)[plan.Water] != 100 {
		t.Error("what was only shown was taken")
	}
	b.Click("planner.suggest")
	b.Click("planner.proposal.drinks")
	if o, _ := consult.OptionOf(b.kept(), record.OptionFluid); b.v.Now.PlanCase.MixOf(o)[plan.Water] == 100 {
		t.Error("what was taken is not kept")
	}
	b.v.Undo()
	for i, o := range b.kept().Options {
		if b.v.Now.PlanCase.MixOf(o) != b.v.Now.PlanCase.MixOf(before.Options[i]) {
			t.Errorf("%s is not as before", o.Name)
		}
	}
}

// A proposal leaves alone what may not change.
func TestHeldItems(t *testing.T) {
	b := begun(t)
	b.option(record.OptionAim)
	b.tab(part.TabSession)
	b.Click("planner.hold.drink1")
	b.Click("planner.hold.food1")
	habit := b.v.Now.PlanCase.Planner.Habit()
	for way, r := range b.v.Now.Proposal().Routes {
		for _, s := range r.Steps {
			if s.Mix[plan.Drink1] != habit[plan.Drink1] || s.Mix[plan.Food1] != habit[plan.Food1] {
				t.Errorf("way %d: %v from %v, though drink and food are held", way, s.Mix, habit)
			}
		}
	}
}

// The breaks come from the table or a score, can be changed, and say when the
// plan cannot be drunk at them.
func TestBreaks(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.Fill("planner.water.amount", "0.6")
	b.tab(part.TabBreaks)
	b.Click("planner.chance.3.remove")
	b.Fill("planner.chance.2.seconds", "10")
	b.Fill("planner.chance.1.seconds", "10")
	if b.v.Live.Take.DrinksFit {
		t.Fatalf("%d mL fit into two breaks of 10 s", b.v.Live.Take.PlannedML)
	}
	if !b.v.Live.HabitEven() || b.v.ui.page.deficit.Data.Habit[1].Change != -b.v.Live.Habit.Deficit.Value {
		t.Errorf("a habit that two breaks of 10 s do not carry is drawn to %+v, measured %v", b.v.ui.page.deficit.Data.Habit, b.v.Live.Habit.Deficit.Value)
	}
	words := b.v.ui.parts[part.TabBreaks].(*breaks.BreaksTab).Words.Text()
	if !strings.Contains(words, "have room for") || b.v.ui.page.deficit.Data.PlanEnd.Name != b.v.Speaker.Say("planner.deficit.breaks") {
		t.Errorf("said %q, the line ends %+v", words, b.v.ui.page.deficit.Data.PlanEnd)
	}
	tab := b.v.ui.parts[part.TabBreaks].(*breaks.BreaksTab)
	tab.TakeScore("6-4, 6-4")
	if got := len(b.kept().Chances); got != 9 {
		t.Errorf("6-4 6-4 is %d chances", got)
	}
	tab.TakeScore("6-")
	if tab.Trouble.Text() == "" || len(b.kept().Chances) != 9 {
		t.Error("half a score was taken")
	}
	sports, err := plan.Sports()
	if err != nil {
		t.Fatal(err)
	}
	tab.TakeTable(sports[0].Code + "/" + sports[0].Session)
	if got := b.kept().Chances; len(got) == 9 && got[0].Name == "" {
		t.Errorf("the table gives %+v", got)
	}
	b.tab(part.TabBreaks)
	n := len(b.v.Now.Plan.Chances)
	b.Click("planner.breaks.add")
	if len(b.kept().Chances) != n+1 {
		t.Error("no break was added")
	}
	for range 4 { // the break, the table, the score, and what is proposed once the breaks carry what was drunk
		b.v.Undo()
	}
	if got := len(b.kept().Chances); got != 2 {
		t.Errorf("after undo %d chances", got)
	}
}

// Without chances of its own a session is drawn as drunk through evenly.
func TestNoChances(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.v.Binder.Pick("test", func(s *part.Sheet) { s.Record.Chances = nil })
	d := b.v.ui.page.deficit.Data
	if len(d.Plan) != 2 || d.PlanEnd.Figure != b.v.Speaker.Deficit(b.v.Live.At) || d.Plan[1].Change >= 0 {
		t.Errorf("drawn as %+v, %+v", d.Plan, d.PlanEnd)
	}
	b.tab(part.TabBreaks)
	if got := b.v.ui.parts[part.TabBreaks].(*breaks.BreaksTab).Words.Text(); !strings.Contains(got, "steady") {
		t.Errorf("said %q", got)
	}
}

// Ten mouthfuls weighed go into the profile, and the breaks count in them.
func TestMouthful(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.tab(part.TabBreaks)
	usual := b.v.Live.Take.Takes[1].Mouthfuls
	b.Click("planner.mouthful")
	b.Fill("planner.mouthful.before", "700")
	b.Fill("planner.mouthful.after", "710")
	b.Click("planner.mouthful.ask.yes")
	if !b.Has("planner.mouthful.ask.yes") {
		t.Fatal("a bottle that grew heavier was taken")
	}
	b.Fill("planner.mouthful.after", "320")
	b.Click("planner.mouthful.ask.yes")
	if got := b.athlete().Mouthful.Or(0); got != 38 {
		t.Errorf("the mouthful is %v mL", got)
	}
	if got := b.v.Live.Take.Takes[1].Mouthfuls; !(got < usual) {
		t.Errorf("%d mouthfuls of 38 mL, %d of the usual", got, usual)
	}
}

// An amount typed or dragged at a break stands, the rest is filled around it; empty
// again, it is worked out again.
func TestAmountsAreSet(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.tab(part.TabBreaks)
	sum := func() (ml int) {
		for _, take := range b.v.Live.Take.Takes {
			ml += take.ML
		}
		return ml
	}
	free, first := sum(), b.v.Live.Take.Takes[0].ML
	b.Fill("planner.chance.1.amount", "40")
	got := b.v.Live.Take.Takes[0]
	if step := int(b.v.Live.Mouthful) + 5; got.ML == first || got.ML > 40+step || b.kept().Chances[0].Amount.Or(0) != 40 || sum() < free-2*step || sum() > free {
		t.Errorf("set to 40 mL it has %d, in all %d of %d before", got.ML, sum(), free)
	}
	tab := b.v.ui.parts[part.TabBreaks].(*breaks.BreaksTab)
	tab.Drag(0, 437)
	tab.Release()
	most := b.v.Live.Take.Takes[0].Chance.MostML()
	if at := b.kept().Chances[0].Amount.Or(0); at > most || at < most-5 || float64(b.v.Live.Take.Takes[0].ML) > most {
		t.Errorf("dragged to 437 mL it is kept as %g of %g", at, most)
	}
	b.Fill("planner.chance.1.amount", "")
	if got := b.v.Live.Take.Takes[0].ML; got != first || sum() != free {
		t.Errorf("free again it has %d mL, before %d", got, first)
	}
}

// Two sessions in a day: what is owed is carried over to the second.
func TestDay(t *testing.T) {
	b := begun(t)
	b.option(record.OptionHabit)
	b.tab(part.TabSession)
	b.Fill("planner.session.next", "1")
	b.tab(part.TabDay)
	tab := b.v.ui.parts[part.TabDay].(*day.DayTab)
	sessions, names, _, wrong := tab.Sessions()
	if wrong != "" || len(sessions) != 2 || sessions[1].Start.Sub(sessions[0].Start) != 155*time.Minute {
		t.Fatalf("%d sessions, %v, %q", len(sessions), names, wrong)
	}
	if !strings.Contains(tab.Totals.Text(), "short") {
		t.Errorf("said %q", tab.Totals.Text())
	}
	b.settle()
	b.Fill("planner.day.session.2.start", "14:30")
	if _, said := tab.Trouble.Text(); said != "" && !strings.Contains(said, "overlap") {
		t.Errorf("said %q", said)
	} else if said == "" {
		t.Error("overlapping sessions are laid out")
	}
	b.settle()
	b.Click("planner.day.session.2.remove")
	if sessions, _, _, _ := tab.Sessions(); len(sessions) != 1 {
		t.Errorf("%d sessions after taking one out", len(sessions))
	}
	b.Fill("planner.day.start", "")
	if _, said := tab.Trouble.Text(); !strings.Contains(said, "start") {
		t.Errorf("without a start it says %q", said)
	}
}

// A US practice sees fluid ounces; the record stays in mL.
func TestOunces(t *testing.T) {
	d, went := apptest.Desk(t)
	p := d.Practice()
	p.Settings.Units = "us"
	if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	d.PracticeChanged()
	a, test := hockey(t, d)
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
	o := b.option(record.OptionFood)
	b.Fill("planner.water.amount", "10")
	want, err := quantity.Convert(10, quantity.FluidOunce, quantity.Millilitre)
	if err != nil {
		t.Fatal(err)
	}
	if got := b.amountKept(o.ID, plan.Water); got < want-0.01 || got > want+0.01 {
		t.Errorf("10 fl oz are kept as %v mL", got)
	}
	for _, text := range texts(b.w.Content()) {
		for _, unit := range []string{"\u00a0L", "\u00a0mL", "\u00a0kg", "°C", " L ", " L,"} {
			if strings.Contains(text, unit) && !strings.Contains(text, "mmol") {
				t.Errorf("%q is in %q", text, unit)
			}
		}
	}
}

// Where body mass is hidden nothing on the screen leads back to it.
func TestHiddenMass(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Mirel")
	for _, place := range []desk.Place{{Screen: desk.Plan, Athlete: a.ID}, {Screen: desk.Plan, Athlete: a.ID, New: true}} {
		b := openIn(t, d, went, place, golden.Mode{Percent: 100}, sized(1600, 1400))
		if !b.v.Speaker.By.Hidden {
			t.Fatal("the mass is not hidden")
		}
		for _, o := range b.v.Now.Plan.Options {
			b.v.ChooseOption(o.ID)
			for _, tab := range append(behindButtons(), part.TabBreaks) {
				b.tab(tab)
				b.noMass(tab)
			}
		}
		figures.AskWhy(b.v.Plan)
		b.noMass("why")
		b.Click("planner.why.done")
		session.AskRests(b.v.Plan)
		b.noMass("rests")
		b.Click("planner.basis.ask.done")
		if strings.Contains(b.v.Head().Under, "kg") {
			t.Errorf("the head says %q", b.v.Head().Under)
		}
		if b.v.Now.Draft() {
			agreement.AskAgreement(b.v.Plan)
			b.noMass("agree")
		}
	}
}

// noMass looks for what mass could be worked out from in all texts in sight. The
// humidity of the air is the one per cent there may be.
func (b *bench) noMass(where string) {
	b.t.Helper()
	root := b.w.Content()
	if top := b.w.Canvas().Overlays().Top(); top != nil {
		root = top
	}
	for _, text := range texts(root) {
		said := strings.Replace(text, "50\u00a0%", "", 1)
		said = strings.Replace(said, "50 %", "", 1)
		for _, tell := range []string{"kg", "%", "mL/kg", "kcal", "lb", "body mass"} {
			if strings.Contains(said, tell) && !strings.Contains(text, "hidden for this athlete") {
				b.t.Errorf("%s: %q is in %q", where, tell, text)
			}
		}
	}
}

package planner

import (
	"context"
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/planner/figures"
	"ebbwell/app/screen/planner/mix"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// Every movement of a drag over the whole slider reaches every figure in sight,
// and is one step back.
func TestEveryMoveReachesTheFigures(t *testing.T) {
	b := begun(t)
	o := b.option(record.OptionFood)
	b.Fill("planner.water.amount", "0")
	s := b.slider(plan.Water)
	told := s.OnMoved
	moves, last := 0, -1.0
	s.OnMoved = func(to float64) {
		told(to)
		moves++
		last = to
		b.checkFigures()
	}
	b.drag(plan.Water, 1, 200)
	ceiling := b.v.Now.PlanCase.Planner.CeilingOf(plan.Expected).FluidL * 1000
	if moves < 10 || last > ceiling {
		t.Fatalf("%d movements, the last to %v mL; the ceiling is %v", moves, last, ceiling)
	}
	if got := b.amountKept(o.ID, plan.Water); got != last {
		t.Errorf("kept %v mL, moved to %v", got, last)
	}
	if !b.v.Undo() || b.v.Now.Mix[plan.Water] != 0 {
		t.Errorf("after one step back %v mL", b.v.Now.Mix[plan.Water])
	}
	if got := b.slider(plan.Water).Value(); got != 0 {
		t.Errorf("the slider stands at %v after a step back", got)
	}
}

// checkFigures holds every figure in sight against the planner asked anew.
func (b *bench) checkFigures() {
	b.t.Helper()
	v, sp := b.v, b.v.Speaker
	q := v.Now.PlanCase.Planner.Evaluate(plan.Expected, v.Live.Mix)
	page := v.ui.page
	want := map[string][2]string{
		"deficit":      {page.deficit.Figure.Text(), sp.Deficit(q)},
		"carbohydrate": {page.bars.Data[figures.BarCarbohydrate].Figure, sp.Carbohydrate(q.Carbohydrate.TotalGH)},
		"sodium":       {page.bars.Data[figures.BarSodium].Figure, sp.Sodium(q.Sodium.InMgH)},
		"drinking":     {page.bars.Data[figures.BarDrinking].Figure, sp.Rate(q.Fluid.RateLH)},
	}
	for name, got := range want {
		if got[0] != got[1] {
			b.t.Errorf("at %v mL of water %s shows %q, it is %q", v.Now.Mix[plan.Water], name, got[0], got[1])
		}
	}
	if v.Live.Take.Fits() && page.deficit.Data.PlanEnd.Figure != sp.Deficit(q) {
		b.t.Errorf("the line ends at %s, it is %s", page.deficit.Data.PlanEnd.Figure, sp.Deficit(q))
	}
	if x, ok := page.mix.Rows[plan.Water].Number.Value(); !ok || math.Abs(x-v.Live.Mix[plan.Water]) > 1e-6 || page.mix.Rows[plan.Water].Slider.Value() != v.Live.Mix[plan.Water] {
		b.t.Errorf("the number shows %v, the slider %v, the breaks come to %v", x, page.mix.Rows[plan.Water].Slider.Value(), v.Live.Mix[plan.Water])
	}
	sum := 0.0
	for _, part := range page.bars.Data[figures.BarDrinking].Parts {
		sum += part.Value
	}
	if d := sum - q.Fluid.DrunkL*1000; d > 1e-6 || d < -1e-6 {
		b.t.Errorf("the bar of drinking adds up to %v mL of %v", sum, q.Fluid.DrunkL*1000)
	}
}

// A slider stops at the ceiling and says why; a typed number goes as far.
func TestStopsAtTheCeiling(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFluid)
	b.v.Binder.Pick("test", func(s *part.Sheet) { s.Record.Chances = nil })
	most := b.v.Live.Most[plan.Water]
	b.Click("planner.water.slider")
	b.Key(fyne.KeyEnd, fyne.KeyRight)
	if b.v.Now.Mix[plan.Water] > most {
		t.Errorf("moved to %v, the ceiling leaves %v", b.v.Now.Mix[plan.Water], most)
	}
	if _, said := b.v.ui.page.limit.Text(); !strings.Contains(said, "not a goal") {
		t.Errorf("said %q", said)
	}
	b.Fill("planner.water.amount", "1")
	b.Fill("planner.water.amount", "4")
	if got := b.v.Now.Mix[plan.Water]; got != most {
		t.Errorf("typed 4 L goes to %v mL, not to %v", got, most)
	}
	if got := b.text("planner.water.amount"); strings.HasPrefix(got, "4") {
		t.Errorf("the field still shows %q", got)
	}
	if b.v.Live.At.Guards.Stops() {
		t.Error("over-drinking can be planned")
	}
}

// What cannot be read is kept as it was typed, and shown again.
func TestUnreadableIsKept(t *testing.T) {
	d, went := apptest.Desk(t)
	a, test := hockey(t, d)
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
	b.option(record.OptionFood)
	before := b.v.Now.Mix[plan.Water]
	b.Fill("planner.water.amount", "a cup")
	p := b.kept()
	again := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, Record: p.ID})
	again.option(record.OptionFood)
	if got := again.text("planner.water.amount"); got != "a cup" {
		t.Errorf("opened again as %q", got)
	}
	if again.v.Now.Mix[plan.Water] != before {
		t.Errorf("the amount became %v", again.v.Now.Mix[plan.Water])
	}
	again.Fill("planner.water.amount", "0.4")
	again.kept()
	texts, err := d.Store.RawOf(context.Background(), part.RefOf(p))
	if err != nil || len(texts) != 0 {
		t.Errorf("still kept beside the number: %v, %v", texts, err)
	}
}

// A key is a step, a drag is a step, and the option that changes comes in hand.
func TestUndoRedo(t *testing.T) {
	b := begun(t)
	food := b.option(record.OptionFood)
	start := b.v.Now.Mix
	b.Click("planner.drink1.slider")
	clicked := b.v.Now.Mix
	b.Key(fyne.KeyLeft, fyne.KeyLeft)
	two := b.v.Now.Mix
	b.drag(plan.Drink1, 0.1, 20)
	if clicked == start || two == clicked || b.v.Now.Mix == two {
		t.Fatalf("nothing moved: %v %v %v %v", start, clicked, two, b.v.Now.Mix)
	}
	moved := b.v.Now.Mix
	b.option(record.OptionFluid)
	for i, want := range []plan.Mix{two, {}, clicked, start} {
		if !b.v.Undo() {
			t.Fatalf("no step %d back", i+1)
		}
		if b.v.Now.Option != food.ID {
			t.Fatalf("step %d back is not seen: %q in hand", i+1, b.v.Now.Selected().Name)
		}
		if want != (plan.Mix{}) && b.v.Now.Mix != want {
			t.Errorf("step %d back gives %v, not %v", i+1, b.v.Now.Mix, want)
		}
	}
	for b.v.CanRedo() {
		b.v.Redo()
	}
	if b.v.Now.Mix != moved {
		t.Errorf("done again it is %v, not %v", b.v.Now.Mix, moved)
	}
	if got := b.amountKept(food.ID, plan.Drink1); got != moved[plan.Drink1] {
		t.Errorf("kept %v of %v", got, moved[plan.Drink1])
	}
}

// A drink and a food are added by typing, moved, and taken out again.
func TestAddAndRemove(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.Click("planner.add.food")
	b.Focus("planner.item")
	b.Type("raisins")
	b.Key(fyne.KeyReturn)
	slot := plan.Food3
	if !b.v.Now.PlanCase.Slots[slot].InUse || !b.Has("planner.food3.slider") {
		t.Fatalf("no raisins among %v", b.Names())
	}
	if got := b.slider(slot).Value(); got != 0 {
		t.Errorf("it begins at %v", got)
	}
	b.Fill("planner.food3.amount", "1,5")
	if b.v.Now.Mix[slot] != 1.5 || b.Has("planner.food3.remove") {
		t.Errorf("there are %v, and it can be taken out while it is in the mix", b.v.Now.Mix[slot])
	}
	b.Fill("planner.food3.amount", "0")
	b.Click("planner.food3.remove")
	if b.Has("planner.food3.slider") {
		t.Error("it is still there")
	}
	b.v.Undo()
	if !b.Has("planner.food3.slider") {
		t.Error("taking it out cannot be taken back")
	}
}

// A powder is made up to another strength; what does not dissolve is refused.
func TestStrength(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	powder, ok := b.desk.Products().Find("generic.maltodextrin")
	if !ok || !mix.AddProduct(b.v.Plan, powder, func(s string) { t.Log(s) }) {
		t.Fatal("no powder")
	}
	b.settle()
	b.Fill("planner.drink2.amount", "0.5")
	weak := b.v.Live.At.Carbohydrate.TotalGH
	b.Fill("planner.drink2.strength", "8")
	if !(b.v.Live.At.Carbohydrate.TotalGH > weak) || b.v.Now.PlanCase.Slots[plan.Drink2].Strength.Or(0) != 8 {
		t.Errorf("stronger gives %v g/h after %v", b.v.Live.At.Carbohydrate.TotalGH, weak)
	}
	if got := b.v.Now.Mix[plan.Drink2]; got != 500 {
		t.Errorf("the volume became %v", got)
	}
	b.Fill("planner.drink2.strength", "900")
	if b.v.Now.PlanCase.Slots[plan.Drink2].Strength.Or(0) != 8 {
		t.Error("900 g in 100 mL was taken")
	}
}

// Salt is not offered where the profile withholds it, and the words say why.
func TestSaltWithheld(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Kester")
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true})
	for _, o := range state.SideBySide(b.v.Now.Plan) {
		b.v.ChooseOption(o.ID)
		if b.Has("planner.salt.slider") || b.Has("planner.salt.amount") || b.Has("planner.salt.open") {
			t.Errorf("salt is offered in %q", o.Name)
		}
	}
	if got := b.v.ui.page.mix.Salt.Text(); !strings.Contains(got, "high blood pressure") {
		t.Errorf("said %q", got)
	}
	for _, r := range b.v.Now.Proposal().Routes {
		if r.Exists && r.Aim[plan.Salt] > 0 {
			t.Errorf("salt is proposed: %v", r.Aim)
		}
	}
	for _, o := range state.SideBySide(b.v.Now.Plan) {
		if b.v.Now.PlanCase.MixOf(o)[plan.Salt] > 0 {
			t.Errorf("%q has salt", o.Name)
		}
	}
}

// A drag makes no object anew: what is drawn before it is drawn after it.
func TestDragBuildsNothing(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	for _, tab := range []string{part.TabBeside, part.TabSteps, part.TabBreaks} {
		b.tab(tab)
		b.drag(plan.Drink1, -0.1, 20) // texts that come and go are there
		before := drawn(b.w.Content())
		b.drag(plan.Drink1, 0.1, 40)
		after := drawn(b.w.Content())
		for o := range after {
			if !before[o] {
				t.Errorf("%s: a %T was made by a drag", tab, o)
			}
		}
	}
}

// The keyboard goes through the sliders in reading order.
func TestTabOrder(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.Focus("planner.suggest")
	for _, want := range []string{
		"planner.water.amount", "planner.water.slider", "planner.drink1.amount", "planner.drink1.slider", "planner.food1.remove", "planner.food1.amount", "planner.food1.slider", "planner.food2.amount", "planner.food2.slider",
		"planner.salt.open", "planner.add.drink", "planner.add.food", "planner.deficit.why", "planner.carbohydrate.why", "planner.tabs.breaks",
		"planner.break.1.amount", "planner.break.2.amount", "planner.break.3.amount",
		"planner.keep", "planner.tabs.beside", "planner.tabs.steps", "planner.tabs.day", "planner.letter", "planner.card.0",
	} {
		b.Tab()
		if got := b.Focused(); got != want {
			t.Fatalf("Tab goes to %q, not to %q", got, want)
		}
	}
}

// A test made since a draft was begun is taken into its basis, and out again.
func TestNewerTests(t *testing.T) {
	d, went := apptest.Desk(t)
	a, first := hockey(t, d)
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(first.ID)})
	one := b.v.Now.PlanCase.Basis.Plan
	tested(t, d, a, 62.3)
	b = openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, Record: b.kept().ID})
	if same := b.v.Now.PlanCase.Basis.Plan; same.SweatRate != one.SweatRate || same.Tests != 1 {
		t.Errorf("a test that came later moves the plan from %+v to %+v", one, same)
	}
	b.Click("planner.basis")
	b.Click("planner.newer")
	b.Key(fyne.KeyEscape)
	p := b.kept()
	two := b.v.Now.PlanCase.Basis.Plan
	if p.Basis.PoolIDs == "" || two.Tests != 2 || two.SweatRate == one.SweatRate {
		t.Errorf("kept %+v, calculated on %+v", p.Basis, two)
	}
	b.v.Undo()
	if p := b.kept(); p.Basis.PoolIDs != "" || b.v.Now.PlanCase.Basis.Plan.SweatRate != one.SweatRate {
		t.Errorf("after undo %+v", p.Basis)
	}
}

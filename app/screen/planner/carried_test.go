package planner

import (
	"slices"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/screen/planner/breaks"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// Where the breaks do not carry a mix, the screen and the comparison of options show what
// they carry, never what the amounts that were set would come to.
func TestComparisonShowsWhatBreaksCarry(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.Fill("planner.water.amount", "0.6")
	b.tab(part.TabBreaks)
	b.Click("planner.chance.3.remove")
	b.Fill("planner.chance.2.seconds", "10")
	b.Fill("planner.chance.1.seconds", "10")
	set := b.v.Now.PlanCase.Planner.Evaluate(plan.Expected, b.v.Now.Mix)
	carried := b.v.Live.At
	if b.v.Live.Take.DrinksFit || carried.Fluid.DrunkL > set.Fluid.DrunkL-0.2 {
		t.Fatalf("%.2f L of %.2f are carried: this test cannot fail", carried.Fluid.DrunkL, set.Fluid.DrunkL)
	}
	b.tab(part.TabBeside)
	all := apptest.Texts(b.w.Content())
	for name, words := range map[string][2]string{
		"deficit":       {b.v.Speaker.Deficit(carried), b.v.Speaker.Deficit(set)},
		"drinking rate": {b.v.Speaker.Rate(carried.Fluid.RateLH), b.v.Speaker.Rate(set.Fluid.RateLH)},
	} {
		if words[0] == words[1] {
			t.Fatalf("%s: %q either way", name, words[0])
		}
		holds := func(text string) bool { return slices.ContainsFunc(all, func(one string) bool { return one == text }) }
		if !holds(words[0]) || holds(words[1]) {
			t.Errorf("%s: shown is not %q, carried, but may be %q, set: %q", name, words[0], words[1], all)
		}
	}
}

// Where no break leaves time to eat, that is said once for all foods and the figure is what the
// breaks carry; what is drunk has room, is not said to lack any, and still moves by a
// mouthful with each step of its slider.
func TestFoodLeftOverLeavesDrinksFree(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.Fill("planner.water.amount", "0.3")
	for slot := plan.Food1; slot.IsFood(); slot++ {
		if b.v.Now.PlanCase.Slots[slot].InUse {
			b.v.move(slot, 1)
		}
	}
	b.v.moveEnded()
	b.tab(part.TabBreaks)
	room := b.v.Speaker.Say("planner.deficit.breaks")
	if take := b.v.Live.Take; !take.Fits() || b.v.ui.page.deficit.Data.PlanEnd.Name == room {
		t.Fatalf("left over before: %v", take.FoodLeft)
	}
	for _, name := range []string{"planner.chance.1.eat", "planner.chance.2.eat", "planner.chance.3.eat"} {
		b.Click(name)
	}
	take := b.v.Live.Take
	if take.FoodFits || !take.DrinksFit || take.Fits() {
		t.Fatalf("drinks fit %v, food %v", take.DrinksFit, take.FoodFits)
	}
	words := b.v.ui.parts[part.TabBreaks].(*breaks.BreaksTab).Words.Text()
	if strings.Count(words, "No break leaves time to eat") != 1 || strings.Contains(words, "have room for") {
		t.Errorf("said of what is left over: %q", words)
	}
	end := b.v.ui.page.deficit.Data.PlanEnd
	x, u := b.v.Speaker.End(take.DeficitL, take.Deficit)
	if end.Name != room || end.Figure != b.v.Speaker.Change(x.Value, u) {
		t.Errorf("the line ends %+v", end)
	}
	step := b.v.Now.PlanCase.Planner.Menu()[plan.Water].Step
	b.v.Live.Mouthful = 1.5 * plan.Mouthful(step) // one step alone is then no mouthful
	b.v.Follow()
	for range 3 {
		shown := b.v.Live.Mix[plan.Water]
		b.v.move(plan.Water, shown+step)
		if b.v.Live.Mix[plan.Water] <= shown {
			t.Fatalf("a step of %g mL up from %g mL shows %g", step, shown, b.v.Live.Mix[plan.Water])
		}
	}
}

package planner

import (
	"slices"
	"testing"

	"ebbwell/app/apptest"
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
	if b.v.Live.Take.Fits || carried.Fluid.DrunkL > set.Fluid.DrunkL-0.2 {
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

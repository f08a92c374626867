package handout

import (
	"slices"
	"strings"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// plain is the text of a page with ordinary spaces.
func plain(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

// A session that follows on the same day is on the page, and then meals and
// thirst are not all there is to say.
func TestComposedFurtherSessions(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	c, o := h.caseOf(t, "Ravka")
	page := func(p record.Plan) (AthletePage, string) {
		a := AthletePageOf(h.open(t, p, c.Athlete, c.Basis), o, h.practice, w)
		return a, plain(all(press(t).AthletePage(a)))
	}
	alone, text := page(c.Plan)
	if alone.After.Soon || len(alone.After.Further) != 0 || !strings.Contains(text, "Extra drink only if you are lighter than before.") {
		t.Fatalf("a lone session has after it %+v: this test cannot fail", alone.After)
	}
	p := c.Plan.Clone()
	p.Target.NextAfter = record.Number{}
	other := record.NewID()
	consult.SetFurther(&p, []consult.Further{{Start: "18:30"}, {Start: "20:00", Minutes: 40}, {Minutes: 60, Plan: other}, {Start: "21:30", Plan: p.ID}})
	a, text := page(p)
	if !a.After.Soon || len(a.After.Further) != 4 {
		t.Fatalf("after it %+v", a.After)
	}
	for _, must := range []string{
		"another session within a day: 1.25 to 1.5 L for each kilogram", "18:30, about 95 minutes: this page again.", "20:00, about 40 minutes: at most 100 mL water",
		"Later that day, about 60 minutes: see its own page.", "21:30, about 95 minutes: this page again.",
	} {
		if !strings.Contains(text, must) {
			t.Errorf("the page does not say %q: %s", must, text)
		}
	}
	if strings.Contains(text, "Extra drink only if you are lighter than before.") {
		t.Error("the page says that nothing follows")
	}
	short := a.After.Further[1]
	drunk, q := 0.0, c.Planner.Evaluate(plan.Expected, c.MixOf(o))
	for _, part := range short.Parts {
		drunk += float64(part.Litres)
	}
	if most := q.Fluid.DrunkL * 40 / q.Minutes; !(drunk > 0) || drunk > most+1e-9 {
		t.Errorf("in 40 of %.0f min %.3f L, at the same rates %.3f", q.Minutes, drunk, most)
	}
	// That there is none is said too, though the next day is near.
	none := c.Plan.Clone()
	none.Target.NextAfter = record.Num(20, quantity.Hour)
	consult.SetFurther(&none, nil)
	if a, _ := page(none); !a.After.Soon || len(a.After.Further) != 0 {
		t.Errorf("with the next session in 20 h: %+v", a.After)
	}
}

// A large deficit is made up in any case (German Nutrition Society 2020: from 5 %
// of body mass meals and water are not enough), and a small one is not.
func TestComposedLargeDeficit(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	c, o := h.caseOf(t, "Ravka")
	for minutes, large := range map[float64]bool{95: false, 220: true} {
		p := c.Plan.Clone()
		p.Target.Minutes, p.Chances = record.Num(minutes, quantity.Minute), nil
		there := h.open(t, p, c.Athlete, c.Basis)
		down := there.Planner.Evaluate(plan.Expected, there.MixOf(o)).Deficit.Value
		a := AthletePageOf(there, o, h.practice, w).After
		if a.Large != large || a.Soon || (down >= 5) != large {
			t.Errorf("%.1f %% down after %g min: %+v", down, minutes, a)
		}
		if text := plain(all(press(t).AthletePage(AthletePageOf(there, o, h.practice, w)))); strings.Contains(text, "over the rest of the day") != large {
			t.Errorf("%g min: %s", minutes, text)
		}
	}
}

// What is to be practised is printed: as typed, else as the step differs from
// the one before; with how often, from when, and the rule with its numbers.
func TestComposedPractise(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	c, o := h.caseOf(t, "Ravka")
	text := func(c consult.Case, o record.Option, us bool) string {
		set := h.practice
		if us {
			set.Settings.Units = "us"
		}
		return plain(all(press(t).AthletePage(AthletePageOf(c, o, set, w))))
	}
	habit, _ := consult.OptionOf(c.Plan, record.OptionHabit)
	mix := c.MixOf(habit)
	clear(mix[:])
	// Her mouthful is 37.5 mL, so that 400 mL are 10 of them, 380 mL: 30 more than the
	// 350 that were measured; 300 mL of water are 8.
	mix[plan.Water], mix[plan.Drink1] = 423, 350
	p := c.Plan.Clone()
	p.Rules.PerWeek, p.Steps[0].Sessions, p.Steps[0].Practise = record.Num(2, quantity.None), 4, ""
	first := mix
	first[plan.Water], first[plan.Drink1] = 300, 400
	for slot := plan.Food1; slot.IsFood(); slot++ {
		if c.Slots[slot].Product.ID == "generic.banana" {
			first[slot] = 0.5
		}
	}
	for i := range p.Options {
		switch p.Options[i].ID {
		case habit.ID:
			p.Options[i] = c.WithMix(p.Options[i], mix)
		case p.Steps[0].OptionID:
			p.Options[i] = c.WithMix(p.Options[i], first)
		}
	}
	step := h.open(t, p, c.Athlete, c.Basis)
	o, _ = consult.OptionByID(p, o.ID)
	got := text(step, o, false)
	for _, must := range []string{
		"What to practise", "From 18 May, 2 times a week: 120 mL less water; 30 mL more sports drink 6 %; ½ banana more (half-time).",
		"Next step from 25 May, if 4 or more sessions went well", "at least 80 %", "always 0 to 3", "Heavier afterwards, or stomach 7 or more: one step back",
	} {
		if !strings.Contains(got, must) {
			t.Errorf("the page does not say %q: %s", must, got)
		}
	}
	if got := text(step, o, true); !strings.Contains(got, "4 fl oz less water") {
		t.Errorf("in ounces: %s", got)
	}
	if got := PractiseWords(step, 0, false, w); plain(got) != "120 mL less water; 30 mL more sports drink 6 %; ½ banana more (half-time)" {
		t.Errorf("the screen is told %q", got)
	}
	p.Steps[0].Practise = "A mouthful at every stoppage."
	if got := text(h.open(t, p, c.Athlete, c.Basis), o, false); !strings.Contains(got, "2 times a week: A mouthful at every stoppage. Stomach") || strings.Contains(got, "less water") {
		t.Errorf("what was typed reads %s", got)
	}
	p.Rules.PerWeek = record.Num(1, quantity.None)
	if got := text(h.open(t, p, c.Athlete, c.Basis), o, false); !strings.Contains(got, "From 18 May, once a week:") {
		t.Errorf("once a week reads %s", got)
	}
	// An option that is no step has nothing to practise.
	fluid, _ := consult.OptionOf(c.Plan, record.OptionFluid)
	if got := text(c, fluid, false); strings.Contains(got, "What to practise") || !strings.Contains(got, "How it went") {
		t.Errorf("an option of its own reads %s", got)
	}
}

// A drink that is left as it was is not practised, nor what whole mouthfuls leave of
// it once the step is settled; a mouthful less is. Each break is rounded down to 5 mL,
// so that ten mouthfuls of 37.5 mL over three breaks come to less than 375.
func TestComposedPractiseIsNoRounding(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	c, _ := h.caseOf(t, "Ravka")
	p := c.Plan.Clone()
	habit, _ := consult.OptionOf(p, record.OptionHabit)
	p.Steps[0].Practise = ""
	words := func(was, step float64) string {
		for i, o := range p.Options {
			switch o.ID {
			case habit.ID:
				p.Options[i] = c.WithMix(o, plan.Mix{plan.Water: was})
			case p.Steps[0].OptionID:
				p.Options[i] = c.WithMix(o, plan.Mix{plan.Water: step})
			}
		}
		return plain(PractiseWords(h.open(t, p, c.Athlete, c.Basis), 0, false, w))
	}
	for _, one := range []struct {
		was, step float64
		want      string
	}{
		{437, 437, ""}, {437, 410, ""}, {410, 410, ""}, {435, 375, "70 mL less water"}, {380, 475, "70 mL more water"},
	} {
		if got := words(one.was, one.step); got != one.want {
			t.Errorf("from %g to %g mL: %q, want %q", one.was, one.step, got, one.want)
		}
	}
}

// Added salt is not practised where it is withheld.
func TestComposedPractiseWithholdsSalt(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	for name, salted := range map[string]bool{"no flag": true, "blood pressure": false} {
		c, o := h.caseOf(t, "Ravka")
		a := c.Athlete
		if !salted {
			a.Flags = append(slices.Clone(a.Flags), record.Flag{Kind: record.FlagBloodPressure})
		}
		p := c.Plan.Clone()
		i, ok := stepOf(p, o.ID)
		if !ok { // agreed without a way of steps
			p.Steps = append(p.Steps, record.Step{Meta: record.Meta{ID: record.NewID()}, PlanID: p.ID, OptionID: o.ID})
			i = len(p.Steps) - 1
		}
		for j := range p.Options {
			if p.Options[j].ID == o.ID {
				p.Options[j] = c.WithMix(o, withSalt(c.MixOf(o)))
			}
		}
		if got := PractiseWords(h.open(t, p, a, c.Basis), i, false, w); strings.Contains(plain(got), "0.5 g more salt") != salted {
			t.Errorf("%s practises %q", name, got)
		}
	}
}

// The rule on paper is the one that reviews go by: what it says leads on does,
// and what lies just beside it does not.
func TestStepRuleIsTheReviews(t *testing.T) {
	w := english(t)
	for _, last := range []bool{false, true} {
		text := plain(StepRule{Sessions: 1, Last: last}.Say(w, false))
		for _, must := range []string{"2 or more sessions", "at least 80 %", "always 0 to 3", "Heavier afterwards", "7 or more"} {
			if !strings.Contains(text, must) {
				t.Errorf("the rule does not say %q: %s", must, text)
			}
		}
		if strings.Contains(text, "last step") != last {
			t.Errorf("last %v: %s", last, text)
		}
	}
	done := func(share, stomach float64, gained bool, n int) plan.Decision {
		var list []plan.Done
		for range n {
			list = append(list, plan.Done{Share: share, Stomach: stomach, Asked: true, Gained: gained})
		}
		return plan.Review(list, plan.Usual{}, false).Decision
	}
	for _, one := range []struct {
		share, stomach float64
		gained         bool
		n              int
		want           plan.Decision
	}{
		{0.8, 3, false, 2, plan.Next}, {0.8, 3, false, 1, plan.Hold}, {0.79, 3, false, 2, plan.Hold}, {0.8, 3.5, false, 2, plan.Hold},
		{0.8, 7, false, 2, plan.Back}, {0.8, 3, true, 2, plan.Back},
	} {
		if got := done(one.share, one.stomach, one.gained, one.n); got != one.want {
			t.Errorf("%+v is reviewed as %s", one, got)
		}
	}
}

// Near all that is lost the page speaks of sodium, though nothing is over it.
func TestComposedNearTheLoss(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	c, o := h.caseOf(t, "Jorun")
	near := w.Say("handout.caution.near")
	loss := c.Planner.Evaluate(plan.Expected, c.MixOf(o)).LossL.Value
	cautions := func(share float64, w *words.Words) []string {
		p := c.Plan.Clone()
		p.Chances = nil
		narrow := c.Basis // a range so narrow that near the loss is not yet above the limit
		narrow.Plan.SweatRate.Low = narrow.Plan.SweatRate.Value * 0.99
		return AthletePageOf(h.open(t, p, c.Athlete, narrow), c.WithMix(o, plan.Mix{plan.Water: 1000 * loss * share}), h.practice, w).Terms.Cautions
	}
	if got := cautions(evidence.NearLoss/100+0.03, w); !contains(got, near) {
		t.Errorf("near the loss the page says %q", got)
	}
	if got := cautions(evidence.NearLoss/100-0.03, w); contains(got, near) {
		t.Errorf("well under the loss it says %q", got)
	}
	if got := cautions(1.2, w); contains(got, near) {
		t.Errorf("above the loss it is called near: %q", got)
	}
}

// The last step is the one that brings the aim, however few steps are kept.
func TestLastStepIsToldByTheAim(t *testing.T) {
	h := openHouse(t)
	c, o := h.caseOf(t, "Ravka")
	i, ok := stepOf(c.Plan, o.ID)
	if !ok {
		t.Fatal("Ravka is on no step")
	}
	p := c.Plan.Clone()
	p.Steps = p.Steps[:i+1]
	p.Agreement.OptionID = o.ID
	if r := RuleOf(h.open(t, p, c.Athlete, c.Basis), i); r.Last {
		t.Error("a step short of the aim is called the last since no other is kept")
	}
	aim, ok := consult.OptionOf(p, record.OptionAim)
	if !ok {
		t.Fatal("no aim")
	}
	for j := range p.Options {
		if p.Options[j].ID == o.ID {
			p.Options[j] = c.WithMix(o, c.MixOf(aim))
		}
	}
	if r := RuleOf(h.open(t, p, c.Athlete, c.Basis), i); !r.Last {
		t.Error("the step that brings the aim is not called the last")
	}
}

package handout

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/demo"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/store/storetest"
)

// house is the invented practice in a data file of its own.
type house struct {
	store    *store.Store
	practice record.Practice
	desk     consult.Setup
}

func composeDay() time.Time { return time.Date(2026, 5, 18, 12, 0, 0, 0, time.UTC) }

func openHouse(t testing.TB) house {
	t.Helper()
	w := english(t)
	names := demo.Names{
		Options: consult.Names{Habit: "Habit", Fluid: "Without food", Food: "With food", Aim: "Aim"},
		Step:    func(int) string { return "a step" }, Say: w.Say, Town: w.City,
	}
	s := storetest.Open(t, "the invented practice", store.Options{Clock: composeDay}, func(s *store.Store) error {
		return demo.Fill(context.Background(), s, composeDay(), names)
	})
	h := house{store: s}
	var err error
	if h.practice, err = s.Practice(context.Background()); err != nil {
		t.Fatal(err)
	}
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	h.desk = consult.Setup{Pantry: consult.NewPantry(generic, nil), Settings: h.practice.Settings}
	if h.desk.Activities, err = climate.LoadActivities(); err != nil {
		t.Fatal(err)
	}
	return h
}

// athlete finds one of the invented athletes by the beginning of the name.
func (h house) athlete(t testing.TB, begins string) record.Athlete {
	t.Helper()
	list, err := h.store.Athletes(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range list {
		if strings.HasPrefix(line.Name, begins) {
			a, err := h.store.LoadAthlete(context.Background(), line.ID)
			if err != nil {
				t.Fatal(err)
			}
			return a
		}
	}
	t.Fatalf("no athlete %q", begins)
	return record.Athlete{}
}

// plan loads the newest plan of an athlete with what it is based on.
func (h house) plan(t testing.TB, a record.Athlete) (record.Plan, consult.Basis) {
	t.Helper()
	plans, err := h.store.Plans(context.Background(), a.ID)
	if err != nil || len(plans) == 0 {
		t.Fatalf("%d plans, %v", len(plans), err)
	}
	sheet, err := h.store.LoadTest(context.Background(), plans[0].Basis.TestID)
	if err != nil {
		t.Fatal(err)
	}
	b, err := consult.BasisOf(a, []consult.Findings{consult.Find(sheet, a, nil, h.desk)}, plans[0].CreatedAt, h.desk)
	if err != nil {
		t.Fatal(err)
	}
	return plans[0], b
}

func (h house) open(t testing.TB, p record.Plan, a record.Athlete, b consult.Basis) consult.Case {
	t.Helper()
	c, err := consult.OpenCase(p, a, b, h.desk)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// caseOf opens the newest plan of an athlete, and the option that is in force.
func (h house) caseOf(t testing.TB, begins string) (consult.Case, record.Option) {
	t.Helper()
	a := h.athlete(t, begins)
	p, b := h.plan(t, a)
	o, ok := consult.InForce(p)
	if !ok {
		t.Fatal("no option in force")
	}
	return h.open(t, p, a, b), o
}

func near(t *testing.T, what string, got, want, most float64) {
	t.Helper()
	if !(math.Abs(got-want) <= most) {
		t.Errorf("%s is %g, want %g within %g", what, got, want, most)
	}
}

// TestComposedPage holds the page of an agreed step against the planner's own
// answer and against itself: rows add up to the total, parts to the bar.
func TestComposedPage(t *testing.T) {
	h := openHouse(t)
	c, o := h.caseOf(t, "Ravka")
	a := AthletePageOf(c, o, h.practice, english(t))
	q := c.Planner.Evaluate(plan.Expected, c.MixOf(o))
	if a.Heading.Step != "Step 1" || a.Heading.Draft || a.Heading.Replaced || a.Heading.Athlete != c.Athlete.Name {
		t.Errorf("the heading is %+v", a.Heading)
	}
	if a.Words != "I want legs left for the last quarter." {
		t.Errorf("the words are %q", a.Words)
	}
	if len(a.Bars) != 2 || a.Bars[0].Label != "14 May" || !a.Bars[1].Planned || a.Bars[1].Label != "Step 1" {
		t.Fatalf("the bars are %+v", a.Bars)
	}
	near(t, "the test's loss", float64(a.Bars[0].Loss), 2.15, 0.02)
	near(t, "drunk in the test", float64(a.Bars[0].taken()), 0.55, 0.005)
	for i, b := range a.Bars {
		near(t, fmt.Sprintf("bar %d: what is left of the whole", i+1), float64(b.whole()-b.taken()), float64(b.Deficit.Litres), 0.02)
		if !(b.Breath > 0.1 && b.Breath < 0.3) {
			t.Errorf("bar %d: %g L of breath", i+1, b.Breath)
		}
	}
	near(t, "the planned deficit", float64(a.Bars[1].Deficit.Percent), q.Deficit.Value, 1e-9)
	near(t, "planned to drink", float64(a.Bars[1].taken()-a.Bars[1].Food), q.Fluid.DrunkL, 1e-9)
	near(t, "carbohydrate", float64(a.During.Carbohydrate), q.Carbohydrate.TotalGH, 1e-9)
	addsUp(t, a.During)
	if a.Heading.AirKnown {
		near(t, "width of the air", a.Heading.Air.Width(), 2*evidence.PlanAirReach, 1e-9)
	}
	if a.FollowUp.Review.IsZero() || a.Practise.Rule.Next.IsZero() || a.FollowUp.Sessions != c.Plan.Steps[0].Sessions {
		t.Errorf("the follow-up is %+v", a.FollowUp)
	}
	if len(a.Options) != 3 || !a.Options[2].Chosen || a.Options[2].Name != "Step 1" || a.Options[0].Chosen || a.Options[1].Chosen {
		t.Errorf("the options are %+v", a.Options)
	}
}

// addsUp checks that the chances come to the total, drink by drink.
func addsUp(t *testing.T, d During) {
	t.Helper()
	if len(d.Chances) == 0 {
		t.Fatal("no chances")
	}
	sums, mouthfuls := make([]quantity.Millilitres, len(d.Drinks)), 0
	for _, c := range d.Chances {
		for i, v := range c.Volumes {
			sums[i] += v
		}
		mouthfuls += c.Mouthfuls
	}
	for i := range sums {
		near(t, "total of "+d.Drinks[i].Name, float64(d.Total[i]), float64(sums[i]), 0.5)
	}
	if mouthfuls != d.TotalMouthfuls {
		t.Errorf("%d mouthfuls in all, the rows have %d", d.TotalMouthfuls, mouthfuls)
	}
}

// Where the breaks are too short the whole page speaks of what they carry.
func TestComposedPageOfShortBreaks(t *testing.T) {
	h := openHouse(t)
	c, o := h.caseOf(t, "Ravka")
	p := c.Plan.Clone()
	for i := range p.Chances {
		p.Chances[i].Seconds, p.Chances[i].CanEat = record.Num(2, quantity.Second), false
	}
	mix := c.MixOf(o)
	mix[plan.Food1] = 1
	o = c.WithMix(o, mix)
	short := h.open(t, p, c.Athlete, c.Basis)
	w := english(t)
	a := AthletePageOf(short, o, h.practice, w)
	whole := c.Planner.Evaluate(plan.Expected, c.MixOf(o))
	addsUp(t, a.During)
	if taken := float64(a.Bars[1].taken()); taken >= whole.Fluid.DrunkL || taken <= 0 {
		t.Errorf("the bar shows %g L, planned were %g", taken, whole.Fluid.DrunkL)
	}
	near(t, "the bar beside the loss", float64(a.Bars[1].Deficit.Litres+a.Bars[1].taken()), float64(a.Bars[1].whole()), 0.03)
	if len(a.During.TotalFoods) != 0 {
		t.Errorf("food is on the page that no break lets one eat: %v", a.During.TotalFoods)
	}
	for _, key := range []string{"handout.caution.breaks", "handout.caution.food"} {
		if !contains(a.Terms.Cautions, w.Say(key)) {
			t.Errorf("the page does not say %s: %q", key, a.Terms.Cautions)
		}
	}
	for i := range p.Chances {
		p.Chances[i].Seconds = record.Num(900, quantity.Second)
	}
	if unfed := AthletePageOf(h.open(t, p, c.Athlete, c.Basis), o, h.practice, w); contains(unfed.Terms.Cautions, w.Say("handout.caution.breaks")) || !contains(unfed.Terms.Cautions, w.Say("handout.caution.food")) {
		t.Errorf("breaks with time for all drinks and for no food: %q", unfed.Terms.Cautions)
	}
	if names := a.During.Chances; names[0].Name != "quarter break 1" || names[1].Name != "half-time" || names[2].Name != "quarter break 2" {
		t.Errorf("breaks of one name are not told apart: %+v", names)
	}
	if plain := AthletePageOf(c, o, h.practice, w); contains(plain.Terms.Cautions, w.Say("handout.caution.breaks")) {
		t.Error("breaks that are long enough are called short")
	}
}

func contains(list []string, s string) bool {
	for _, one := range list {
		if one == s {
			return true
		}
	}
	return false
}

func TestComposedLaterStep(t *testing.T) {
	h := openHouse(t)
	c, o := h.caseOf(t, "Dorian")
	if len(c.Plan.Steps) < 2 || o.ID != c.Plan.Steps[1].OptionID {
		t.Fatalf("the second of %d steps should be in force", len(c.Plan.Steps))
	}
	w := english(t)
	card := KitBagCardOf(c, o, h.practice, w)
	if card.Step != "Step 2" || !card.From.Equal(dateOf(c.Plan.Steps[1].From)) {
		t.Errorf("the card is for %q from %s", card.Step, card.From)
	}
	// The first step was done; it keeps its own name and day.
	first, _ := consult.OptionByID(c.Plan, c.Plan.Steps[0].OptionID)
	page := AthletePageOf(c, first, h.practice, w)
	if page.Heading.Step != "Step 1" || page.Heading.Draft || !page.Practise.Rule.Next.Equal(dateOf(c.Plan.Steps[1].From)) {
		t.Errorf("the first step is %+v, next %s", page.Heading, page.Practise.Rule.Next)
	}
	// Another option of an agreed plan is not agreed.
	fluid, _ := consult.OptionOf(c.Plan, record.OptionFluid)
	other := AthletePageOf(c, fluid, h.practice, w)
	if !other.Heading.Draft || other.Heading.Step != fluid.Name || other.FollowUp.Sessions != 0 {
		t.Errorf("an option that was not agreed has the heading %+v", other.Heading)
	}
	for _, option := range other.Options {
		if option.Chosen {
			t.Errorf("%q is called agreed", option.Name)
		}
	}
}

func TestComposedDraftAndReplaced(t *testing.T) {
	h := openHouse(t)
	c, o := h.caseOf(t, "Jorun")
	p := press(t)
	if text := all(p.AthletePage(AthletePageOf(c, o, h.practice, english(t)))); !strings.Contains(text, "Draft, not agreed yet.") || strings.Contains(text, ", agreed") {
		t.Errorf("the draft is not called one: %s", text)
	}
	agreed, in := h.caseOf(t, "Ravka")
	old := agreed.Plan.Clone()
	old.State = record.PlanReplaced
	page := AthletePageOf(h.open(t, old, agreed.Athlete, agreed.Basis), in, h.practice, english(t))
	if text := all(p.AthletePage(page)); !strings.Contains(text, "Replaced by a newer plan") || strings.Contains(text, "Draft") {
		t.Errorf("a plan that was replaced: %s", text)
	}
}

func TestComposedMinor(t *testing.T) {
	h := openHouse(t)
	c, o := h.caseOf(t, "Mirel")
	if !c.Care.MassHidden {
		t.Fatal("the junior's mass is not hidden")
	}
	w := english(t)
	page := AthletePageOf(c, o, h.practice, w)
	if !page.Terms.MassHidden || !contains(page.Terms.Cautions, w.Say("flag.under-18.page")) {
		t.Errorf("the terms are %+v", page.Terms)
	}
	p := press(t)
	for name, doc := range map[string]paper.Document{"page": p.AthletePage(page), "card": p.KitBagCard(KitBagCardOf(c, o, h.practice, w))} {
		if found := revealing.FindAllString(all(doc), -1); found != nil {
			t.Errorf("the %s speaks of %q", name, found)
		}
	}
	// Mass settled as shown for a junior is shown.
	shown, in := h.caseOf(t, "Ravka")
	if page := AthletePageOf(shown, in, h.practice, w); page.Terms.MassHidden || !strings.Contains(all(p.AthletePage(page)), "%") {
		t.Error("the mass of an adult is hidden: this test cannot fail")
	}
}

func TestComposedFlags(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	c, o := h.caseOf(t, "Kester")
	salted := c.MixOf(o)
	salted[plan.Salt] = 0.5
	o = c.WithMix(o, salted)
	page := AthletePageOf(c, o, h.practice, w)
	if !page.Terms.SaltWithheld || !contains(page.Terms.Cautions, w.Say("flag.blood-pressure.page")) {
		t.Errorf("the terms are %+v", page.Terms)
	}
	if text := all(press(t).AthletePage(page)); strings.Contains(text, "salt, ") || strings.Contains(text, "salty") {
		t.Errorf("salt is advised to one from whom it is withheld: %s", text)
	}
	c, o = h.caseOf(t, "Ravka")
	page = AthletePageOf(c, c.WithMix(o, withSalt(c.MixOf(o))), h.practice, w)
	if text := all(press(t).AthletePage(page)); !strings.Contains(text, "salt, 0.5\u00a0g in all") {
		t.Errorf("added salt is not in the bag: %s", text)
	}
}

func withSalt(m plan.Mix) plan.Mix {
	m[plan.Salt] = 0.5
	return m
}

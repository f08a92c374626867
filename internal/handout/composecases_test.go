package handout

import (
	"context"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// An option that would pass the low end of the loss, or the loss itself, never
// leaves without a word.
func TestComposedOverDrinking(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	c, o := h.caseOf(t, "Jorun")
	ceiling := c.Planner.CeilingOf(plan.Expected).FluidL
	loss := c.Planner.Evaluate(plan.Expected, c.MixOf(o)).LossL.Value
	for _, to := range []struct {
		name   string
		litres float64
		want   string
	}{
		{"above the low end", (ceiling + loss) / 2, w.Say("handout.over.limit")},
		{"above the loss", loss + 0.5, w.Say("handout.over.gain")},
	} {
		t.Run(to.name, func(t *testing.T) {
			p := c.Plan.Clone()
			p.Chances = nil
			mix := plan.Mix{}
			mix[plan.Water] = 1000 * to.litres
			over := c.WithMix(o, mix)
			for i := range p.Options {
				if p.Options[i].ID == over.ID {
					p.Options[i] = over
				}
			}
			page := AthletePageOf(h.open(t, p, c.Athlete, c.Basis), over, h.practice, w)
			text := all(press(t).AthletePage(page))
			if !strings.Contains(text, to.want) {
				t.Errorf("%q is not on the page: %s", to.want, text)
			}
			k := compose(h.open(t, p, c.Athlete, c.Basis), over, w)
			amount := w.Amount(float64(k.volumes(k.at.Fluid.BySlotML, 1)[0]), quantity.Millilitre)
			card := all(press(t).KitBagCard(KitBagCardOf(k.c, over, h.practice, w)))
			if strings.Contains(text, amount) || strings.Contains(card, amount) || strings.Contains(text, w.Say("handout.bag.title")) {
				t.Errorf("%s is printed as something to drink: %s %s", amount, text, card)
			}
		})
	}
	if page := AthletePageOf(c, o, h.practice, w); contains(page.Terms.Cautions, w.Say("handout.over.limit")) {
		t.Error("a plan under the low end is cautioned: this test cannot fail")
	}
}

func TestComposedEstimate(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	c, o := h.caseOf(t, "Ravka")
	tests, err := h.store.Tests(context.Background(), c.Athlete.ID)
	if err != nil {
		t.Fatal(err)
	}
	var found []consult.Findings
	for _, sheet := range tests {
		found = append(found, consult.Find(sheet, c.Athlete, nil, h.desk))
	}
	outing := consult.Outing{Minutes: 95, Session: record.Session{Sport: c.Athlete.Sport, Place: "camp at the coast", Effort: record.Num(8, quantity.None)}, Air: record.Air{
		Temperature: record.Num(37, quantity.DegreeCelsius), Humidity: record.Num(60, quantity.PerCent), Wind: record.Num(1, quantity.MetrePerSecond), Sun: record.SunHigh,
	}}
	r, err := consult.Calculate(outing, c.Athlete, found, composeDay(), h.desk)
	if err != nil {
		t.Fatal(err)
	}
	b, ok := r.Basis(c.Athlete, composeDay())
	if !ok || b.Kind != record.BasisEstimate || r.Caution.Level < climate.Watch {
		t.Fatalf("an estimate is wanted, got %v %s, heat %v", ok, b.Kind, r.Caution.Level)
	}
	there := h.open(t, c.Plan, c.Athlete, b)
	page := AthletePageOf(there, o, h.practice, w)
	if len(page.Bars) != 1 || !page.Bars[0].Estimate || !page.Bars[0].Ranged || !page.Basis.Estimate || page.Basis.Place != "camp at the coast" {
		t.Errorf("bars %+v, basis %+v", page.Bars, page.Basis)
	}
	text := all(press(t).AthletePage(page))
	for _, must := range []string{"The sweat loss is an estimate.", "An estimate for camp at the coast", w.Say("level." + r.Caution.Level.Code())} {
		if !strings.Contains(text, must) {
			t.Errorf("the page does not say %q: %s", must, text)
		}
	}
	if card := KitBagCardOf(there, o, h.practice, w); !card.Estimate {
		t.Error("the card does not say that it based on an estimate")
	}
}

func TestComposedWithoutChances(t *testing.T) {
	h := openHouse(t)
	c, o := h.caseOf(t, "Ravka")
	p := c.Plan.Clone()
	p.Chances = nil
	free := h.open(t, p, c.Athlete, c.Basis)
	page := AthletePageOf(free, o, h.practice, english(t))
	d := page.During
	if len(d.Chances) != 0 || len(d.PerHour) != len(d.Drinks) || len(d.Total) != len(d.Drinks) || len(d.Drinks) == 0 {
		t.Fatalf("without chances: %+v", d)
	}
	hours := float64(page.Heading.Minutes) / 60
	for i, v := range d.PerHour {
		if all := float64(v) * hours; all > float64(d.Total[i])+1e-6 || all < float64(d.Total[i])-hourStep*hours {
			t.Errorf("%g mL an hour for %.2f h and %g in all", float64(v), hours, float64(d.Total[i]))
		}
		if math.Mod(float64(v), hourStep) != 0 {
			t.Errorf("%g mL an hour is not in tens", float64(v))
		}
	}
	if !strings.Contains(all(press(t).AthletePage(page)), "There are no set breaks.") {
		t.Error("the page does not say that there are no set breaks")
	}
}

func TestComposedUnknownBottleIsNotWater(t *testing.T) {
	h := openHouse(t)
	c, o := h.caseOf(t, "Ravka")
	sheet := c.Basis.Tests[0].Test.Clone()
	for i := range sheet.Bottles {
		sheet.Bottles[i].ProductID, sheet.Bottles[i].Name = "", ""
	}
	b, err := consult.BasisOf(c.Athlete, []consult.Findings{consult.Find(sheet, c.Athlete, nil, h.desk)}, c.Plan.CreatedAt, h.desk)
	if err != nil {
		t.Fatal(err)
	}
	page := AthletePageOf(h.open(t, c.Plan, c.Athlete, b), o, h.practice, english(t))
	parts := page.Bars[0].Parts
	if len(parts) != 1 || parts[0].Substance != Drink || parts[0].Name == "" {
		t.Errorf("bottles nobody knows became %+v", parts)
	}
}

func TestComposedLongNames(t *testing.T) {
	h := openHouse(t)
	c, o := h.caseOf(t, "Ravka")
	c.Athlete.Name = "Wilhelmina-Konstantinopolitana Featherstonehaugh-Oldenmoor R"
	p := c.Plan.Clone()
	p.Target.SessionName = "seven-a-side indoor championship qualification match, day 1"
	for i := range p.Chances {
		p.Chances[i].Name = "before the captains are called to the middle of the new pitch"
	}
	long := h.open(t, p, c.Athlete, c.Basis)
	f, pr := load(t), press(t)
	for name, doc := range map[string]paper.Document{
		"page": pr.AthletePage(AthletePageOf(long, o, h.practice, english(t))), "card": pr.KitBagCard(KitBagCardOf(long, o, h.practice, english(t))),
	} {
		if text := strings.ReplaceAll(all(doc), " ", ""); !strings.Contains(text, strings.ReplaceAll(c.Athlete.Name, " ", "")) {
			t.Errorf("the %s has not the whole name", name)
		}
		for i, page := range doc.Pages {
			for _, fault := range faults(f, doc.Size, page) {
				t.Errorf("%s, side %d: %s", name, i+1, fault)
			}
		}
	}
}

// Every plan of the invented practice comes out tidy, whole and without a key.
func TestComposedPagesOfThePractice(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	f := load(t)
	for _, name := range []string{"Ravka", "Jorun", "Sefa", "Dorian", "Mirel", "Kester"} {
		t.Run(name, func(t *testing.T) {
			c, _ := h.caseOf(t, name)
			for _, o := range c.Plan.Options {
				doc := press(t).AthletePage(AthletePageOf(c, o, h.practice, w))
				if !reflect.DeepEqual(doc.Pages, press(t).AthletePage(AthletePageOf(c, o, h.practice, w)).Pages) {
					t.Error("the same option prints in two ways")
				}
				for i, page := range doc.Pages {
					for _, fault := range faults(f, doc.Size, page) {
						t.Errorf("%s, side %d: %s", o.Name, i+1, fault)
					}
				}
				if list := slices.DeleteFunc(texts(doc), worded); len(list) > 0 {
					t.Errorf("%s: %q are not texts", o.Name, list)
				}
			}
		})
	}
}

// worded reports whether neither a key nor a gap in a sentence was printed.
func worded(s string) bool {
	return !slices.ContainsFunc([]string{"handout.", "option.", "chance.", "%!"}, func(part string) bool { return strings.Contains(s, part) })
}

func TestBudgetSpeaksInWords(t *testing.T) {
	h := openHouse(t)
	c, _ := h.caseOf(t, "Ravka")
	p := press(t)
	found := c.Basis.Tests[0]
	for _, f := range []struct {
		name, must string
	}{{"rate", ""}, {"carbohydrate", "labels and food tables"}} {
		why := found.Sweat.Fluid.Rate.Why
		if f.name == "carbohydrate" {
			why = found.Intake.Carbohydrate.Why
		}
		text := p.budget(why)
		if text == "" || !strings.Contains(text, f.must) {
			t.Errorf("the budget of the %s is %q", f.name, text)
		}
		for _, share := range why.Budget[:min(3, len(why.Budget))] {
			if share.Source != p.sourceName(share.Source) {
				continue
			}
			t.Errorf("%q has no words", share.Source)
		}
	}
}

// What is written at the breaks never runs ahead of the plan.
func TestPourableStaysUnderThePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "chances")
		chances, planned := make([]Chance, n), make([]quantity.Millilitres, n)
		sum := quantity.Millilitres(0)
		for i := range chances {
			v := quantity.Millilitres(rapid.IntRange(0, 500).Draw(t, "mL"))
			chances[i].Volumes = []quantity.Millilitres{v}
			sum += v
			planned[i] = sum
		}
		total, until := pourable(chances, 1, pourStep)[0], quantity.Millilitres(0)
		for i, c := range chances {
			until += c.Volumes[0]
			if c.Volumes[0] < 0 || until > planned[i] || until <= planned[i]-pourStep {
				t.Fatalf("at chance %d %g mL of %g", i+1, float64(until), float64(planned[i]))
			}
		}
		if until != total {
			t.Fatalf("the rows come to %g, the total is %g", float64(until), float64(total))
		}
	})
}

// A way with food whose food no break lets one eat is no choice to offer: it
// would stand there as a second way without. The same plan with a break to eat
// in has it.
func TestComposedFoodThatCannotBeEaten(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	c, _ := h.caseOf(t, "Mirel")
	fluid, _ := consult.OptionOf(c.Plan, record.OptionFluid)
	food, _ := consult.OptionOf(c.Plan, record.OptionFood)
	solid := c.MixOf(food)
	for slot := plan.Food1; slot.IsFood(); slot++ {
		solid[slot] = 0
		if item := c.Planner.Menu()[slot]; item.InUse && !item.Gel {
			solid[slot] = 1
		}
	}
	for _, eat := range []bool{false, true} {
		p := c.Plan.Clone()
		for i, o := range p.Options {
			if o.ID == food.ID {
				p.Options[i] = c.WithMix(o, solid)
			}
		}
		for i := range p.Chances {
			p.Chances[i].CanEat = eat
		}
		page := AthletePageOf(h.open(t, p, c.Athlete, c.Basis), fluid, h.practice, w)
		if got := slices.ContainsFunc(page.Options, func(o Option) bool { return o.Name == food.Name }); got != eat {
			t.Errorf("with food in the breaks %v, the way with food is on the page: %v", eat, got)
		}
	}
}

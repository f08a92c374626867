package handout

import (
	"context"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/figure"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// An option that the plan's basis has overtaken is not put before the athlete.
func TestComposedOptionsAreNoOverDrinking(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	c, _ := h.caseOf(t, "Jorun")
	chosen, _ := consult.OptionOf(c.Plan, record.OptionFood)
	fluid, _ := consult.OptionOf(c.Plan, record.OptionFluid)
	names := func(p record.Plan) []string {
		var list []string
		for _, o := range AthletePageOf(h.open(t, p, c.Athlete, c.Basis), chosen, h.practice, w).Options {
			list = append(list, o.Name)
		}
		return list
	}
	p := c.Plan.Clone()
	p.Chances = nil
	if got := names(p); !slices.Contains(got, fluid.Name) {
		t.Fatalf("the options are %q: this test cannot fail", got)
	}
	mix := plan.Mix{}
	mix[plan.Water] = 1000 * (c.Planner.CeilingOf(plan.Expected).FluidL + 0.3)
	for i := range p.Options {
		if p.Options[i].ID == fluid.ID {
			p.Options[i] = c.WithMix(p.Options[i], mix)
		}
	}
	if got := names(p); slices.Contains(got, fluid.Name) {
		t.Errorf("over-drinking stands among the options %q", got)
	}
}

// An estimate stands as its range, where its middle may not be written as that
// alone; and a gain is never called a deficit.
func TestEstimatesOnThePage(t *testing.T) {
	p := press(t)
	am := p.amounts(Terms{})
	d := Deficit{Percent: 1.5, PercentKnown: true, Litres: 1, PercentRange: quantity.Range{Low: 0.6, High: 2.9}, LitresRange: quantity.Range{Low: 0.4, High: 2}, Ranged: true}
	bar := Bar{Label: "there", Loss: 3.4, LossRange: quantity.Range{Low: 2.6, High: 4.6}, Ranged: true, Deficit: d, Planned: true, Estimate: true}
	written := func(b Bar) string {
		return said(paper.Page{Marks: p.verdict(b, am).Marks}) + " " + p.barNote([]Bar{b}, am)
	}
	if got := written(bar); !strings.Contains(got, "1.5") || !strings.Contains(got, "3.40") {
		t.Fatalf("an estimate with a middle reads %q: this test cannot fail", got)
	}
	alone := bar
	alone.RangeAlone = true
	if got := written(alone); strings.Contains(got, "1.5") || strings.Contains(got, "3.40") || !strings.Contains(got, "0.6 to 2.9") || !strings.Contains(got, "estimate") {
		t.Errorf("a range alone reads %q", got)
	}
	small := p.basis(Basis{Place: "there", Loss: 3.4, LossRange: bar.LossRange, Ranged: true, Estimate: true, RangeAlone: true}, am)
	if got := strings.Join(small, " "); strings.Contains(got, "3.40") || !strings.Contains(got, "2.60 to 4.60") || !strings.Contains(got, "estimate") {
		t.Errorf("the small print reads %q", got)
	}
	up := bar
	up.Deficit.Percent, up.Deficit.Litres, up.Deficit.Ranged = -0.4, -0.3, false
	if got := said(paper.Page{Marks: p.verdict(up, am).Marks}); strings.Contains(got, "lighter") || !strings.Contains(got, "heavier at the end") {
		t.Errorf("a gain reads %q", got)
	}
	table := p.optionTable([]Option{{Name: "one", Deficit: d, Estimate: true}}, am, 180)
	if got := table.rows[2].cells[1]; got != "estimate: 0.6 to 2.9\u00a0%" {
		t.Errorf("the option reads %q", got)
	}
}

// A plan is not said to hold where it could pass what is lost: over the air on
// the page, each plan of the practice stays under the low end of the loss that
// the athlete's own tests give for it.
func TestComposedAirKeepsUnderTheLoss(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	whole, cut := 0, 0
	for _, name := range []string{"Dorian", "Jorun", "Kester", "Mirel", "Ravka", "Sefa"} {
		c, o := h.caseOf(t, name)
		sheets, err := h.store.Tests(context.Background(), c.Athlete.ID)
		if err != nil {
			t.Fatal(err)
		}
		var found []consult.Findings
		for _, s := range sheets {
			found = append(found, consult.Find(s, c.Athlete, nil, h.desk))
		}
		heading := AthletePageOf(c, o, h.practice, w).Heading
		at := *c.Basis.Air.Temperature.Value
		if whole++; heading.Air.Low == math.Round(at) {
			whole, cut = whole-1, cut+1
		}
		if heading.Air.Low > math.Round(at) || heading.Air.High < at {
			t.Errorf("%s: tested at %g °C, the page says %+v", name, at, heading.Air)
		}
		air := c.Basis.Air
		air.Temperature = record.Num(heading.Air.Low, quantity.DegreeCelsius)
		r, err := consult.Calculate(consult.OutingFor(c.Plan, c.Athlete, found, air), c.Athlete, found, composeDay(), h.desk)
		if err != nil {
			t.Fatal(err)
		}
		q := c.Planner.Evaluate(plan.Expected, c.MixOf(o))
		low := r.Climate.Rate.Range.Low * q.Minutes / 60
		if taken := q.Fluid.DrunkL + q.Fluid.FoodWaterL; heading.Air.Low < math.Round(at) && taken > low {
			t.Errorf("%s: %.2f L at %g °C, where %.2f L is the low end", name, taken, heading.Air.Low, low)
		}
	}
	if whole == 0 || cut == 0 {
		t.Errorf("%d pages reach cooler, %d do not: this test cannot fail", whole, cut)
	}
}

// In ounces too the breaks add up to the total, and never come to more than the
// plan: rounded to the nearest at every break they would.
func TestComposedOuncesStayUnderThePlan(t *testing.T) {
	h := openHouse(t)
	h.practice.Settings.Units = "us"
	p := press(t)
	am := p.amounts(TermsOf(h.practice, care.Care{}, p.say))
	ounces := func(v quantity.Millilitres) int {
		n, err := strconv.Atoi(strings.TrimSuffix(am.millilitres(v), "\u00a0fl oz"))
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	ml := convert(1, quantity.FluidOunce, quantity.Millilitre)
	for _, name := range []string{"Jorun", "Ravka", "Mirel"} {
		c, o := h.caseOf(t, name)
		free := c.Plan.Clone()
		free.Chances = nil
		for _, one := range []consult.Case{c, h.open(t, free, c.Athlete, c.Basis)} {
			k := compose(one, o, p.say)
			d := AthletePageOf(one, o, h.practice, p.say).During
			planned := 1000 * k.at.Fluid.DrunkL
			rows, total := 0, 0
			for i := range d.Drinks {
				total += ounces(d.Total[i])
				for _, ch := range d.Chances {
					if ch.Volumes[i] > 0 {
						rows += ounces(ch.Volumes[i])
					}
				}
			}
			if len(d.Chances) > 0 && rows != total {
				t.Errorf("%s: the breaks come to %d fl oz, the total is %d", name, rows, total)
			}
			if got := float64(total) * ml; got > planned+1e-6 || got < planned-float64(len(d.Drinks))*ml {
				t.Errorf("%s: %.0f mL are written, %.0f planned", name, got, planned)
			}
		}
	}
}

// Everything by the kilogram is left out of a report where mass is hidden.
func TestByTheKilogramIsRevealing(t *testing.T) {
	for _, u := range []quantity.Unit{
		quantity.Kilogram, quantity.Pound, quantity.PerCent, quantity.MillilitrePerKilogram, quantity.MillilitrePerKilogramPerHour,
		quantity.LitrePerKilogram, quantity.GramPerKilogram, quantity.Kilocalorie,
	} {
		if f := (Finding{Figure: figure.Figure{Known: true, Unit: u}}); !f.revealing() {
			t.Errorf("%s is shown where mass is hidden", u)
		}
	}
}

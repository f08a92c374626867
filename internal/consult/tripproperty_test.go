package consult

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/climate"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// In any air that can be, a plan taken along stays under the low end of the
// loss there (or is foods alone), its range lies around its middle, and its
// basis opens again as it was.
func TestAnyAirKeepsThePlanUnderTheLoss(t *testing.T) {
	a, tests, p, d := tripCase(t)
	places := cities(t)
	rapid.Check(t, func(t *rapid.T) {
		s := record.Stop{
			Meta: record.Meta{ID: "s"},
			Air: record.Air{
				Temperature: record.Num(rapid.Float64Range(-5, 45).Draw(t, "air"), quantity.DegreeCelsius),
				Humidity:    record.Num(rapid.Float64Range(5, 95).Draw(t, "humidity"), quantity.PerCent),
				Wind:        record.Num(rapid.Float64Range(0, 8).Draw(t, "wind"), quantity.MetrePerSecond),
				Sun:         record.Sun(rapid.SampledFrom(climate.Suns()).Draw(t, "sun")),
				Clothing:    rapid.SampledFrom([]string{"", ClothingVest, ClothingTracksuit}).Draw(t, "clothing"),
			},
			Minutes: record.Num(rapid.Float64Range(20, 300).Draw(t, "minutes"), quantity.Minute),
			Effort:  record.Num(float64(rapid.IntRange(2, 10).Draw(t, "effort")), quantity.None),
		}
		there, err := planStop(s, a, tests, &p, places, day(), d)
		if err != nil {
			t.Skip(err) // air that can hold no such water, and the like
		}
		if rate := there.Calculation.Climate.Rate; !(rate.Range.Low >= 0 && rate.Range.Low <= rate.Value && rate.Value <= rate.Range.High) {
			t.Fatalf("%v outside %v", rate.Value, rate.Range)
		}
		if !there.Planned {
			t.Fatalf("not planned: %v", there.Trouble)
		}
		q := there.At
		if q.Fluid.DrunkL > 0 && q.Fluid.DrunkL+q.Fluid.FoodWaterL > q.Ceiling.FluidL+1e-9 {
			t.Fatalf("%v L of a ceiling of %v L", q.Fluid.DrunkL+q.Fluid.FoodWaterL, q.Ceiling.FluidL)
		}
		opensAgain(t, there, a, tests, d)
	})
}

// opensAgain agrees a stop's plan and opens it again.
func opensAgain(t *rapid.T, there StopPlan, a record.Athlete, tests []Findings, d Setup) {
	c, err := there.Draft(StopNames{"a", "b"}, "2026-07-16", day(), d)
	if err != nil {
		t.Fatal(err)
	}
	b, err := BasisFor(c.Plan, a, tests, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if was := there.Case.Basis; b.Kind != was.Kind || math.Abs(b.Rate.Value-was.Rate.Value) > 1e-9 {
		t.Fatalf("%q at %v opens as %q at %v", was.Kind, was.Rate.Value, b.Kind, b.Rate.Value)
	}
}

// FuzzPlanStop gives stops any numbers at all: an answer or an error, never a
// panic, and no plan above the loss.
func FuzzPlanStop(f *testing.F) {
	f.Add(35.0, 48.0, 1.5, 95.0, 8.0, 1.0, "full-high", "Chennai", 7)
	f.Add(math.NaN(), -1.0, math.Inf(1), 0.0, 11.0, -4.0, "moon", "", 0)
	f.Add(-40.0, 200.0, 1e300, 1e9, 0.0, 400.0, "", "nowhere", 13)
	a, tests, p, d := tripCase(f)
	places := cities(f)
	f.Fuzz(func(t *testing.T, air, humidity, wind, minutes, effort, heatDay float64, sun, city string, month int) {
		num := func(x float64) record.Number { return record.Num(x, quantity.None) }
		s := record.Stop{
			City: city, Month: month, From: "2026-07-11", Until: "2026-07-17", Minutes: num(minutes), Effort: num(effort), HeatDay: num(heatDay),
			Air: record.Air{Temperature: num(air), Humidity: num(humidity), Wind: num(wind), Sun: record.Sun(sun)},
		}
		there, err := planStop(s, a, tests, &p, places, day(), d)
		if err != nil || !there.Planned {
			return
		}
		if q := there.Case.Planner.Evaluate(plan.Expected, there.Mix); q.Fluid.DrunkL > 0 && q.Guards.Stops() {
			t.Errorf("%v: %v", s, q.Guards.Codes())
		}
	})
}

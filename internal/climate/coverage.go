package climate

import (
	"errors"
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Grade says how well a test holds for another session.
type Grade int

// The grades, best first.
const (
	// Tested: the test was made in like conditions.
	Tested Grade = iota
	// Near: an estimate from it reaches not far.
	Near
	// Far: an estimate from it is never shown as one number alone.
	Far
)

// Code names the grade in the catalogue of texts.
func (g Grade) Code() string {
	return [...]string{"tested", "near", "far"}[min(max(g, Tested), Far)]
}

// What sets a test and a session apart.
const (
	ByAir        = "air"             // °C
	ByHumidity   = "humidity"        // kPa of vapour
	BySun        = "sun"             // steps of the presets
	ByEffort     = "effort"          // % of the test's metabolic rate
	ByClothing   = "clothing"        // clo
	ByHeatState  = "acclimatisation" // 1 more used to heat, -1 less
	ByMonths     = "months-ago"      // months
	ByNeed       = "need"            // W/m² of evaporation needed
	ByWettedness = "wettedness"      // needed over the highest, in the worse of the two
	ByDuration   = "duration"        // min; never changes the grade
)

// Difference is one way in which a planned session is not the test.
type Difference struct {
	// By is one of ByAir … ByDuration.
	By string
	// Size is the planned session less the test, in Unit.
	Size float64
	Unit quantity.Unit
	// Grade is the best that this difference alone allows.
	Grade Grade
}

// Coverage is how well one test holds for a planned session.
type Coverage struct {
	// Test counts from 0 in the tests given.
	Test  int
	Grade Grade
	// Differences in the order of the constants, those that do not matter too.
	Differences []Difference
	// Err is why the test cannot be compared; its grade is then Far.
	Err error
}

// Reasons are the differences that keep the test from being [Tested], the
// ones that decide the grade first.
func (c Coverage) Reasons() []Difference {
	var worst, other []Difference
	for _, d := range c.Differences {
		switch d.Grade {
		case Tested:
		case c.Grade:
			worst = append(worst, d)
		default:
			other = append(other, d)
		}
	}
	return append(worst, other...)
}

// need is the difference in evaporation needed, W/m²; large where unknown.
func (c Coverage) need() float64 {
	for _, d := range c.Differences {
		if d.By == ByNeed {
			return math.Abs(d.Size)
		}
	}
	return math.Inf(1)
}

// Cover says for each test how well it holds for a planned session.
//
//	tested  air within 5 °C, vapour 0.7 kPa, metabolic rate 10 %, the same sun
//	near    within 10 °C, 1.4 kPa, 20 %, 100 W/m² of Ereq, the sun one step apart
//	far     else; also when acclimatisation changed, and when the heat cannot
//	        leave (Emax ≤ 0 or w > wmax) in one of the two, or in both and
//	        they are not like
//
// Other clothing, other training, or an age over a year keep a test from being
// tested. All limits are proposals; they are the same both ways. It returns an
// [evidence.Problem] for a body or a plan that cannot be.
func Cover(b Body, tests []Test, plan Session) ([]Coverage, error) {
	known := limits(evidence.Limits())
	planned, err := known.calculate(b, plan)
	if err != nil {
		return nil, err
	}
	return coverAll(calculateTests(known, b, tests), plan, planned), nil
}

// coverAll is [Cover] with the balances at hand.
func coverAll(tests []calculatedTest, plan Session, planned Balance) []Coverage {
	list := make([]Coverage, len(tests))
	for i, t := range tests {
		list[i] = t.cover(plan, planned)
		list[i].Test = i
	}
	return list
}

// cover holds one test against a plan.
func (t calculatedTest) cover(plan Session, planned Balance) Coverage {
	if err := errors.Join(t.err, t.values); err != nil {
		return Coverage{Grade: Far, Err: err}
	}
	done := t.balance
	c := Coverage{Differences: append(weatherDifferences(t.Session, plan), bodyDifferences(t.Test, plan, done, planned)...)}
	for _, d := range c.Differences {
		c.Grade = max(c.Grade, d.Grade)
	}
	// Where heat cannot leave, the balance says nothing about another session,
	// yet a test made in the very conditions, where it could not leave either,
	// stands as it was measured.
	d := Difference{By: ByWettedness, Size: worseWettedness(done, planned)}
	both, either := done.Uncompensable() && planned.Uncompensable(), done.Uncompensable() || planned.Uncompensable()
	if either && !(both && c.Grade == Tested) {
		d.Grade, c.Grade = Far, Far
	}
	c.Differences = append(c.Differences, d, Difference{By: ByDuration, Size: float64(plan.Minutes - t.Session.Minutes), Unit: quantity.Minute})
	return c
}

// worseWettedness is the wettedness needed over the highest in the worse of
// two balances; 0 where nothing can evaporate in either.
func worseWettedness(a, b Balance) float64 {
	ratio := 0.0
	for _, x := range [...]Balance{a, b} {
		if w, ok := x.Wettedness(); ok {
			ratio = max(ratio, w/x.WettednessMax)
		}
	}
	return ratio
}

// weatherDifferences compares air, humidity and sun.
func weatherDifferences(test, plan Session) []Difference {
	air := float64(plan.Weather.Temperature - test.Weather.Temperature)
	vapour := float64(plan.Weather.Air().Vapour - test.Weather.Air().Vapour)
	p, _ := plan.Weather.Sun.preset()
	t, _ := test.Weather.Sun.preset()
	steps := float64(p.Step - t.Step)
	sun := Difference{BySun, steps, quantity.None, Tested}
	if plan.Weather.Sun != test.Weather.Sun {
		sun.Grade = Near
	}
	if math.Abs(steps) > evidence.NearSunSteps {
		sun.Grade = Far
	}
	return []Difference{
		{ByAir, air, quantity.DegreeCelsius, gradeOf(air, evidence.TestedAir, evidence.NearAir)},
		{ByHumidity, vapour, quantity.Kilopascal, gradeOf(vapour, evidence.TestedVapour, evidence.NearVapour)},
		sun,
	}
}

// bodyDifferences compares effort, clothing, acclimatisation, age and need.
func bodyDifferences(t Test, plan Session, done, planned Balance) []Difference {
	change := planned.Metabolic - done.Metabolic
	// The grade counts from the smaller of the two, so that it is the same
	// both ways; what is shown counts from the test.
	apart := 100 * change / min(planned.Metabolic, done.Metabolic)
	need := planned.Need - done.Need
	clothing := Difference{ByClothing, float64(plan.Clothing.Insulation - t.Session.Clothing.Insulation), "clo", Tested}
	if plan.Clothing != t.Session.Clothing {
		clothing.Grade = Near
	}
	months := Difference{ByMonths, t.MonthsAgo, "months", Tested}
	if t.MonthsAgo > evidence.TestAge {
		months.Grade = Near
	}
	needed := Difference{ByNeed, need, quantity.WattPerSquareMetre, Tested}
	if math.Abs(need) > evidence.NearNeed {
		needed.Grade = Far
	}
	return []Difference{
		{ByEffort, 100 * change / done.Metabolic, quantity.PerCent, gradeOf(apart, evidence.TestedEffort, evidence.NearEffort)},
		clothing, heatStateDifference(t.Session.State, plan.State), months, needed,
	}
}

// heatStateDifference compares how used to heat the body was and will be.
func heatStateDifference(test, plan HeatState) Difference {
	rank := func(s HeatState) int {
		switch s {
		case Untrained:
			return 0
		case Acclimatised:
			return 2
		}
		return 1
	}
	a, b := rank(test), rank(plan)
	d := Difference{By: ByHeatState, Size: float64(b - a)}
	switch {
	case a == b:
	case test == Acclimatised || plan == Acclimatised:
		d.Grade = Far
	default:
		d.Grade = Near
	}
	return d
}

// gradeOf grades a difference by its two limits. What lies on a limit, but for
// the rounding of the arithmetic, is inside.
func gradeOf(x, tested, near float64) Grade {
	switch x = math.Abs(x) - rounding; {
	case x <= tested:
		return Tested
	case x <= near:
		return Near
	}
	return Far
}

// rounding is what arithmetic may add to a difference.
const rounding = 1e-9

package climate

import (
	"cmp"
	"math"
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// What sets a test and a session apart.
const (
	ByAir       = "air"             // °C
	ByHumidity  = "humidity"        // kPa of vapour
	BySun       = "sun"             // steps of the presets
	ByEffort    = "effort"          // % of the test's metabolic rate
	ByAirSpeed  = "air-speed"       // m/s past the body
	ByClothing  = "clothing"        // clo
	ByHeatState = "acclimatisation" // 1 more acclimatised, -1 less
	BySeated    = "seated"          // 1 seated now, -1 not any more
	ByMonths    = "months-ago"      // months
	ByNeed      = "need"            // % of the sweat that the balance asks for
	ByDuration  = "duration"        // min; sets nothing apart
)

// Difference is one way in which a planned session is not the test.
type Difference struct {
	// By is one of ByAir … ByDuration.
	By string
	// Size is the planned session less the test, in Unit.
	Size float64
	Unit quantity.Unit
	// Apart is how far it sets the two apart, in steps of likeness, at least
	// 0; humidity and sun do so through the need alone.
	Apart float64
}

// Coverage is how one test stands to a planned session.
type Coverage struct {
	// Test counts from 0 in the tests given.
	Test int
	// Weight is how far the test moves the middle: 1 whole, 0 not at all. Beside
	// tests that are more alike it may be below 0.
	Weight float64
	// Grade is the word for this test alone.
	Grade Grade
	// Odd: far from what was to be expected of it; check the inputs. It counts all
	// the same.
	Odd bool
	// Differences that set them apart, the largest first, then the others.
	Differences []Difference
	// Err is why the test does not count; its grade is then Far.
	Err error
}

// Reasons are the differences worth naming, the largest first. Humidity, sun
// and air past the body set apart through the sweat that is called for, so they
// are named where that differs; it is named by itself only where nothing
// else is.
func (c Coverage) Reasons() []Difference {
	var list, need []Difference
	for _, d := range c.Differences {
		if d.By == ByNeed && d.Apart >= evidence.NamedApart {
			need = append(need, d)
		}
	}
	for _, d := range c.Differences {
		through := d.By == ByHumidity && math.Abs(d.Size) >= evidence.NamedVapour || d.By == BySun && d.Size != 0
		if d.By != ByNeed && (d.Apart >= evidence.NamedApart || through && len(need) > 0) {
			list = append(list, d)
		}
	}
	if len(list) == 0 {
		return need
	}
	return list
}

// cover holds every test against a plan.
func (s *TestSet) cover(plan *demand, o outcome, session Session) []Coverage {
	list := make([]Coverage, len(s.tests))
	for _, r := range s.refused {
		list[r.Test] = Coverage{Test: r.Test, Grade: Far, Err: r.Err}
	}
	for i, at := range s.used {
		list[at] = Coverage{Test: at, Weight: o.weights[i], Grade: gradeOf(o.alone[i] / (o.alone[i] + o.day)),
			Odd: s.odd[i] > evidence.OddTest, Differences: differences(s.tests[at], session, &s.demands[i], plan)}
	}
	return list
}

// differences between a test and a plan, the largest first.
func differences(t Test, plan Session, done, planned *demand) []Difference {
	steps := func(along int) float64 { return math.Abs(planned.at[along] - done.at[along]) }
	sun := func(s Sun) float64 { p, _ := s.preset(); return float64(p.Step) }
	percent := func(now, then float64) float64 { return 100 * (now/then - 1) }
	list := []Difference{
		{ByNeed, percent(planned.flow, done.flow), quantity.PerCent, steps(alongFirst)},
		{ByAir, float64(plan.Weather.Temperature - t.Session.Weather.Temperature), quantity.DegreeCelsius, steps(alongAir)},
		{ByHumidity, planned.balance.Vapour - done.balance.Vapour, quantity.Kilopascal, 0},
		{BySun, sun(plan.Weather.Sun) - sun(t.Session.Weather.Sun), quantity.None, 0},
		{ByEffort, percent(planned.balance.Metabolic, done.balance.Metabolic), quantity.PerCent, steps(alongEffort)},
		{ByAirSpeed, planned.balance.AirPast - done.balance.AirPast, quantity.MetrePerSecond, steps(alongSpeed)},
		{ByClothing, float64(plan.Clothing.Insulation - t.Session.Clothing.Insulation), "clo", steps(alongClothing)},
		{ByHeatState, plan.State.rank() - t.Session.State.rank(), quantity.None, steps(alongState)},
		{BySeated, evidence.LikeSeated * (planned.at[alongSeated] - done.at[alongSeated]), quantity.None, steps(alongSeated)},
		{ByMonths, t.MonthsAgo, "months", steps(alongMonths)},
		{ByDuration, float64(plan.Minutes - t.Session.Minutes), quantity.Minute, 0},
	}
	slices.SortStableFunc(list, func(a, b Difference) int { return cmp.Compare(b.Apart, a.Apart) })
	return list
}

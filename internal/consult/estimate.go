package consult

import (
	"slices"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Calculation is what the athlete's tests say about a session in some air: the
// rate to expect, how much each of them has to say, and what the heat calls for.
type Calculation struct {
	Outing Outing
	// Tests are those that could be compared, in the order of Climate.Coverage,
	// and Compared what they were compared as: with breath and gas exchange
	// taken off, so that like stands beside like. Left are the others: no air or
	// no sun is written down, or the rate has no range yet.
	Tests    []Findings
	Compared []climate.Test
	Left     []Findings
	Climate  climate.Basis
	Caution  climate.Caution
	// AssumedAir: the session is that of a test again whose air is not written
	// down whole; usual values stand in for what is missing.
	AssumedAir bool
	// CautionKnown is false where nothing can be said about the heat.
	CautionKnown bool
	// Globe is the WBGT calculated from the air; unknown with CautionKnown false.
	Globe climate.GlobeReading
	// Steps of the heat balance, each with its range; unknown in water.
	Steps climate.Explained
	// Soldiers is what soldiers sweated in like conditions, or why that says
	// nothing here: something to compare with, and nothing is based on it.
	Soldiers Soldiers

	// weighed is the newest test sheet, whose mass is taken; nil without one.
	weighed *record.Test
	// breath is what leaves beside the sweat.
	breath breath
	// body is what heat exchange was calculated with, set what the tests say,
	// worked through once.
	body climate.Body
	set  *climate.TestSet
}

// Soldiers is the comparison with two regressions of soldiers' sweat.
type Soldiers struct {
	// Asked is false where there is no heat balance to ask with.
	Asked bool
	Rates climate.Soldiers
	// Refused is the problem that keeps the regressions from holding here.
	Refused error
}

// Calculate asks the athlete's tests about an outing on a day. It returns
// [ErrNoAir], or the problems of a body, an air or a session that cannot be.
func Calculate(o Outing, a record.Athlete, tests []Findings, day time.Time, d Setup) (Calculation, error) {
	return Ask(a, tests, d).Calculate(o, day)
}

// reachingDown is an estimate whose low end reaches down for what the field method
// left in the rates of its tests.
func (r *Calculation) reachingDown(b climate.Basis) climate.Basis {
	b.Rate.Range.Low *= 1 - fieldBias(r.Tests)
	return b
}

// Practised is an athlete with tests as the practice's own start is learnt from.
func Practised(a record.Athlete, tests []Findings, day time.Time, d Setup) climate.Practised {
	p := climate.Practised{Body: BodyFor(a, newest(tests))}
	for _, f := range tests {
		if t, ok := ClimateTest(f, a, day, d); ok {
			p.Tests = append(p.Tests, t)
		}
	}
	return p
}

// again reports whether an outing is that of a test again, in its own air: what
// is not written down of air and body is then the same for both, and usual
// values stand in for it.
func again(o Outing, tests []*Findings) bool {
	return slices.ContainsFunc(tests, func(f *Findings) bool { return f.Test.ID == o.Like && f.Test.Air.Same(o.Air) })
}

// caution adds what the heat calls for, where that can be said.
func (r *Calculation) caution(body climate.Body, s climate.Session, a record.Athlete, o Outing) {
	globe, err := climate.WeatherWBGT(s.Weather)
	if err != nil {
		return
	}
	r.Globe = globe
	sport := SportOf(sportOf(record.Test{Session: o.Session}, a))
	c, err := climate.HeatCaution(body, s, climate.Practice{
		Continuous: !sport.Intermittent, Acclimatised: s.State == climate.Acclimatised,
	}, celsius(o.Air.Wbgt), r.Climate)
	if err != nil {
		return
	}
	r.Caution, r.CautionKnown = c, true
	if steps, err := climate.Explain(body, s); err == nil {
		r.Steps = steps
	}
	if x, err := climate.Calculate(body, s); err == nil {
		r.Soldiers.Rates, r.Soldiers.Refused = climate.SoldiersOf(x, s.Weather.Temperature)
		r.Soldiers.Asked = true
	}
}

// celsius is a temperature that was written down; nil when it was not.
func celsius(n record.Number) *quantity.Celsius { return as[quantity.Celsius](n) }

// newest is the newest test sheet; nil when there is none.
func newest(tests []Findings) *record.Test {
	var t *record.Test
	for i := range tests {
		if t == nil || tests[i].Test.Session.Date > t.Session.Date {
			t = &tests[i].Test
		}
	}
	return t
}

// Basis is what a plan can be based on by this calculation. ok is false where there
// is no rate, or no test behind it: no amounts are planned without a test.
func (r Calculation) Basis(a record.Athlete, today time.Time) (b Basis, ok bool) {
	rate := r.Climate.Rate
	if !rate.Known || len(r.Climate.From) == 0 {
		return Basis{}, false
	}
	b = Basis{Kind: record.BasisEstimate, Rate: rate, Air: r.Outing.Air, Calculation: &r, Tests: r.named()}
	kind := plan.Estimate
	switch {
	case rate.Estimate:
	case len(b.Tests) == 1:
		b.Kind, kind = record.BasisTest, plan.Test
	default:
		b.Kind, kind = record.BasisPool, plan.Pool
	}
	b.Plan = plan.Basis{
		Kind: kind, Code: "basis." + string(b.Kind), Tests: len(b.Tests), Tested: r.Climate.Grade == climate.Tested,
		Cool:          slices.Contains(r.Climate.Codes, climate.LimitUnsure),
		SweatRate:     plan.Between(rate.Value, rate.Range.Low, rate.Range.High),
		RespiratoryLH: r.breath.respiratory, ExchangeLH: r.breath.exchange,
		Body: bodyNow(a, r.weighed, today),
	}
	if r.Climate.Grade == climate.Tested {
		b.Plan.Sodium = sodiumOf(b.Tests)
	}
	if len(b.Tests) > 0 && b.Tests[0].Test.ID == r.Outing.Like {
		b.Plan.Split = splitOf(b.Tests[0])
	}
	b.Plan.Usual = toleratedBy(a, r.Tests)
	return b, true
}

// named are the tests behind the rate: the one whose session it is again first,
// then the weightiest.
func (r Calculation) named() []Findings {
	var list []Findings
	for _, i := range r.Climate.From {
		if r.Tests[i].Test.ID == r.Outing.Like {
			list = append([]Findings{r.Tests[i]}, list...)
			continue
		}
		list = append(list, r.Tests[i])
	}
	return list
}

// bodyNow is the athlete's body on a day, with the mass of the newest test.
func bodyNow(a record.Athlete, t *record.Test, today time.Time) plan.Body {
	var f Findings
	if t != nil {
		f.Test = *t
	}
	b := bodyOf(f, a)
	age, _ := a.Age(today)
	b.AgeYears = float64(age)
	return b
}

// CurvePoint is the sweat rate to expect at an air temperature, °C; of the basis what
// [climate.TestSet.Expect] tells.
type CurvePoint struct {
	Temperature float64
	Rate        climate.Basis
}

// HeatCurve asks the tests of a calculation about its outing over air
// temperatures from low to high in steps, °C, humidity, sun and wind as they
// are. Temperatures at which nothing can be said are left out.
func (r Calculation) HeatCurve(a record.Athlete, low, high, step float64, d Setup) []CurvePoint {
	body, o := r.body, r.Outing
	if r.set == nil {
		return nil
	}
	if r.AssumedAir {
		o.Air = assumedAir(o.Air)
	}
	var curve []CurvePoint
	for t := low; t <= high && step > 0; t += step {
		o.Air.Temperature = record.Num(t, quantity.DegreeCelsius)
		session, err := SessionFor(o, a, body, d)
		if err != nil {
			continue
		}
		if b, err := r.set.Expect(session); err == nil && b.Rate.Known {
			curve = append(curve, CurvePoint{t, r.reachingDown(b)})
		}
	}
	return curve
}

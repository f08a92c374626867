package consult

import (
	"fmt"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Reckoning is what the athlete's tests say about a session in some air: which
// of them holds, what rate to expect, and what the heat calls for.
type Reckoning struct {
	Outing Outing
	// Tests are those that could be compared, in the order of Climate.Coverage.
	Tests   []Findings
	Climate climate.Basis
	Caution climate.Caution
	// CautionKnown is false where nothing can be said about the heat.
	CautionKnown bool
	// WBGT of the air; unknown with CautionKnown false.
	Globe climate.GlobeReading
}

// Reckon asks the athlete's tests about an outing on a day. It returns
// [ErrNoAir], or the problems of a body or air that cannot be.
func Reckon(o Outing, a record.Athlete, tests []Findings, today time.Time, d Desk) (Reckoning, error) {
	r := Reckoning{Outing: o}
	body := BodyFor(a, newest(tests))
	session, err := SessionFor(o, a, body, d)
	if err != nil {
		return r, err
	}
	var list []climate.Test
	for _, f := range tests {
		if t, ok := ClimateTest(f, a, today, d); ok {
			list = append(list, t)
			r.Tests = append(r.Tests, f)
		}
	}
	athlete := climate.Athlete{Body: body, Sport: SportGroup(sportOf(record.Test{Session: o.Session}, a))}
	if r.Climate, err = climate.Estimate(athlete, list, session); err != nil {
		return r, fmt.Errorf("estimate the sweat rate: %w", err)
	}
	r.caution(body, session, a, o)
	return r, nil
}

// caution adds what the heat calls for, where that can be said.
func (r *Reckoning) caution(body climate.Body, s climate.Session, a record.Athlete, o Outing) {
	globe, err := climate.WeatherWBGT(s.Weather)
	if err != nil {
		return
	}
	r.Globe = globe
	sport := SportOf(sportOf(record.Test{Session: o.Session}, a))
	measured := celsius(o.Air.Wbgt)
	c, err := climate.HeatCaution(body, s, climate.Practice{
		Continuous: !sport.Intermittent, Acclimatised: s.State == climate.Acclimatised,
	}, measured, r.Climate)
	if err != nil {
		return
	}
	r.Caution, r.CautionKnown = c, true
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

// Basis is what a plan can rest on by this reckoning. ok is false where there
// is no rate at all.
func (r Reckoning) Basis(a record.Athlete, today time.Time) (b Basis, ok bool) {
	rate := r.Climate.Rate
	if !rate.Ranged || r.Climate.Kind == climate.NoBasis {
		return Basis{}, false
	}
	value := rate.Value
	if !rate.Known || value <= 0 {
		value = (rate.Range.Low + rate.Range.High) / 2
	}
	kinds := map[climate.BasisKind]record.BasisKind{climate.OneTest: record.BasisTest, climate.PooledTests: record.BasisPool}
	b = Basis{Kind: record.BasisEstimate, Rate: rate, Air: r.Outing.Air, Reckoning: &r}
	kind := plan.Estimate
	if k, measured := kinds[r.Climate.Kind]; measured {
		b.Kind = k
		kind = map[record.BasisKind]plan.Kind{record.BasisTest: plan.Test, record.BasisPool: plan.Pool}[k]
	}
	for _, i := range r.Climate.From {
		b.Tests = append(b.Tests, r.Tests[i])
	}
	b.Plan = plan.Basis{
		Kind: kind, Code: "basis." + string(b.Kind), Tests: len(b.Tests),
		SweatRate:     plan.Between(value, rate.Range.Low, rate.Range.High),
		RespiratoryLH: max(0, r.Climate.Breath.Value),
		Body:          bodyNow(a, newest(r.Tests), today),
	}
	if b.Kind != record.BasisEstimate {
		b.Plan.Sodium = sodiumOf(b.Tests)
	}
	if a.UsualDrinking.Known() {
		b.Plan.Usual = plan.Usual{Known: true, LH: *a.UsualDrinking.Value}
	}
	return b, true
}

// bodyNow is the athlete's body on a day, with the mass of the newest test.
func bodyNow(a record.Athlete, t *record.Test, today time.Time) plan.Body {
	if t != nil {
		return bodyOf(Findings{Test: *t}, a)
	}
	age, _ := a.Age(today)
	b := bodyOf(Findings{}, a)
	b.AgeYears = float64(age)
	return b
}

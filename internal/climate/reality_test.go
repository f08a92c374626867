package climate

import (
	"math"
	"math/rand/v2"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// The truth about a synthetic athlete comes from ISO 7933:2004, run minute by
// minute: storage, a skin that warms, sweating that lags. It is another model
// than the steady balance of the estimate, so that agreement is not built in.
// Sun and wind are not what was written down, the athlete's economy, clothes and
// sweating are their own.
const (
	sweatingSpread = 0.25 // ln SD between athletes of the sweating that a need calls up
	economySpread  = 0.08 // ln SD between athletes of the metabolic rate of one pace
	clothingSpread = 0.15 // ln SD between athletes of the insulation
	windSpread     = 0.30 // ln SD between sessions of the wind that was guessed
	weighingSpread = 0.05 // L/h, of the measurement
	ceilingLow     = 550  // W/m², lowest maximum of sweating
	ceilingHigh    = 1000 // W/m², highest
)

// What is left from day to day beside sun, wind and weighing, ln SD. Like days of
// one athlete differ by 11 % in all (Smith, Bello, Price 2021), and
// TestSyntheticDaysDifferAsPublished holds likeDays to that. unlikeDays
// puts the published spread on top of the rest a second time; how the ranges do
// then is shown, not judged.
const (
	likeDays   = 0.03
	unlikeDays = 0.10
)

// synthetic is an athlete whose truth is known.
type synthetic struct {
	athlete                    Athlete
	sweating, economy, clothes float64
	ceiling                    float64
	cyclist                    bool
	pace                       float64 // km/h on foot, W/kg on wheels
}

// newSynthetic draws an athlete.
func newSynthetic(r *rand.Rand) synthetic {
	height := 1.75 + 0.08*r.NormFloat64()
	mass := 22.5*height*height + 6*r.NormFloat64()
	return synthetic{
		athlete:  Athlete{Body: Body{quantity.Kilograms(min(max(mass, 45), 110)), quantity.Metres(min(max(height, 1.5), 2.05))}},
		sweating: math.Exp(sweatingSpread * r.NormFloat64()),
		economy:  math.Exp(economySpread * r.NormFloat64()),
		clothes:  math.Exp(clothingSpread * r.NormFloat64()),
		ceiling:  ceilingLow + (ceilingHigh-ceilingLow)*r.Float64(),
		cyclist:  r.Float64() < 0.3,
		pace:     9 + 4*r.Float64(),
	}
}

// session draws a session as it would be written down.
func (a synthetic) session(t *testing.T, r *rand.Rand) Session {
	t.Helper()
	suns := Suns()
	s := Session{Clothing: Shirt(), State: Trained, Minutes: quantity.Minutes(45 + 75*r.Float64())}
	s.Weather = Weather{
		Temperature: quantity.Celsius(14 + 23*r.Float64()), Humidity: quantity.Percent(30 + 50*r.Float64()),
		Wind: quantity.MetresPerSecond(0.5 + 2.5*r.Float64()), Sun: suns[r.IntN(len(suns))],
	}
	hard := 0.9 + 0.2*r.Float64()
	var err error
	if a.cyclist {
		s.Effort, err = CyclingEffort(a.athlete.Body, a.athlete.powerAt(a.pace*hard/5), 7)
	} else {
		s.Effort, err = RunningEffort(a.athlete.Body, quantity.MetresPerSecond(a.pace*hard/3.6), 0, false)
	}
	if err != nil {
		t.Fatalf("draw a session: %v", err)
	}
	return s
}

// powerAt is a power from W/kg.
func (a Athlete) powerAt(perKg float64) quantity.Watts {
	return quantity.Watts(perKg * float64(a.Body.Mass))
}

// sweats runs the true athlete through the true conditions of a session: the
// mean sweat rate, L/h. days is the ln SD from day to day.
func (a synthetic) sweats(t *testing.T, r *rand.Rand, s Session, days float64) quantity.LitresPerHour {
	t.Helper()
	preset, err := s.Weather.Sun.preset()
	if err != nil {
		t.Fatal(err)
	}
	radiant := float64(s.Weather.Temperature) + preset.Radiant
	if s.Weather.Sun != SunNone {
		radiant += evidence.SunRadiantError / evidence.CoverageFactor * r.NormFloat64()
	}
	s.Weather.Wind *= quantity.MetresPerSecond(math.Exp(windSpread * r.NormFloat64()))
	in, err := strainOf(a.athlete.Body, s)
	if err != nil {
		t.Fatal(err)
	}
	in.Radiant = quantity.Celsius(radiant)
	in.Metabolic *= quantity.WattsPerSquareMetre(a.economy)
	in.Clothing.Insulation *= Clo(a.clothes)
	if err := in.refused(); err != nil {
		t.Fatalf("true conditions: %v", err)
	}
	run := newStrain(in, strainSetting{heatCapacity: evidence.BodyHeatCapacity, skinMetabolicMax: math.Inf(1)})
	run.sweatMax = a.ceiling
	sum := 0.0
	run.run(in, func(m StrainMinute) { sum += float64(m.Sweat) })
	perHour := sum * run.grams / float64(in.Minutes) * 60 / 1000
	return quantity.LitresPerHour(perHour * a.sweating * math.Exp(days*r.NormFloat64()))
}

// measured is a rate as a field test finds it.
func (a synthetic) measured(t *testing.T, r *rand.Rand, s Session, days float64) quantity.LitresPerHour {
	t.Helper()
	limit, _ := evidence.LimitOf(evidence.SweatRate)
	return max(a.sweats(t, r, s, days)+quantity.LitresPerHour(weighingSpread*r.NormFloat64()), quantity.LitresPerHour(limit.Refuse.Low))
}

// TestSyntheticDaysDifferAsPublished: the same session written down twice
// gives rates whose ln SD is the published 0.11 from day to day.
func TestSyntheticDaysDifferAsPublished(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	sum, n := 0.0, 0.0
	for range 3000 {
		a := newSynthetic(r)
		s := a.session(t, r)
		x, y := a.measured(t, r, s, likeDays), a.measured(t, r, s, likeDays)
		if x < 0.1 || y < 0.1 {
			continue // a share of hardly anything says nothing
		}
		d := math.Log(float64(x / y))
		sum, n = sum+d*d/2, n+1
	}
	if sd := math.Sqrt(sum / n); math.Abs(sd-evidence.DayToDayRateCV) > 0.005 {
		t.Errorf("similar days differ by ln SD %.4f, published %.2f", sd, evidence.DayToDayRateCV)
	}
}

// covered counts tests left out.
type covered struct{ inside, below, all int }

// share inside, %.
func (c covered) share() float64 { return 100 * float64(c.inside) / float64(max(1, c.all)) }

// leaveOut draws athletes and estimates each of their tests from the others.
func leaveOut(t *testing.T, athletes int, days float64) (byGrade map[Grade]*covered, total covered, errs []float64) {
	t.Helper()
	r := rand.New(rand.NewPCG(2026, 11))
	byGrade = map[Grade]*covered{Tested: {}, Near: {}, Far: {}}
	for range athletes {
		a := newSynthetic(r)
		var tests []Test
		for range 2 + r.IntN(4) {
			s := a.session(t, r)
			tests = append(tests, Test{Session: s, Rate: a.measured(t, r, s, days), U: weighingSpread})
		}
		for _, left := range LeaveOneOut(a.athlete, tests) {
			rate := float64(tests[left.Test].Rate)
			for _, c := range []*covered{byGrade[left.Basis.Grade], &total} {
				c.all++
				if left.Inside {
					c.inside++
				}
				if rate < left.Basis.Rate.Range.Low {
					c.below++
				}
			}
			errs = append(errs, math.Log(rate/left.Basis.Rate.Value))
		}
	}
	return byGrade, total, errs
}

// TestEstimateCoversWhatIsMeasured leaves one test out, for athletes whose
// truth the estimate does not know, and counts how often the measured rate
// lies in the estimate's 95 % range: 90 to 98 % over all, and in each grade.
func TestEstimateCoversWhatIsMeasured(t *testing.T) {
	byGrade, total, errs := leaveOut(t, 500, likeDays)
	mean, square := 0.0, 0.0
	for _, e := range errs {
		mean += e / float64(len(errs))
		square += e * e / float64(len(errs))
	}
	check := func(name string, c covered, least int) {
		t.Logf("%-6s %4d of %4d inside (%.1f %%), %d below the low end (%.1f %%)", name, c.inside, c.all, c.share(), c.below, 100*float64(c.below)/float64(max(1, c.all)))
		if c.all < least {
			t.Errorf("%s: only %d estimates, too few to judge", name, c.all)
		}
		if c.share() < 90 || c.share() > 98 {
			t.Errorf("%s: the 95 %% range covers %.1f %% of the tests left out, want 90 to 98 %%", name, c.share())
		}
	}
	for _, g := range []Grade{Tested, Near, Far} {
		check(g.Code(), *byGrade[g], 100)
	}
	check("all", total, 1000)
	t.Logf("ln error: mean %+.3f, root mean square %.3f", mean, math.Sqrt(square))
	_, harsh, _ := leaveOut(t, 500, unlikeDays)
	t.Logf("with similar days that differ by a third more than published: %.1f %% of %d inside, %d below the low end", harsh.share(), harsh.all, harsh.below)
}

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
// The spreads below were set before the first run and stand for what a field
// test meets; none was changed to make the coverage come out.
const (
	sweatingSpread = 0.25 // ln SD between athletes of the sweating that a need calls up
	economySpread  = 0.08 // ln SD between athletes of the metabolic rate of one pace
	clothingSpread = 0.15 // ln SD between athletes of the insulation
	windSpread     = 0.30 // ln SD between sessions of the wind that was guessed
	daySpread      = 0.03 // ln SD between days of the sweat rate
	weighingSpread = 0.05 // L/h, of the measurement
	ceilingLow     = 550  // W/m², lowest maximum of sweating
	ceilingHigh    = 1000 // W/m², highest
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
// mean sweat rate, L/h, and whether the standard's minutes could be run.
func (a synthetic) sweats(t *testing.T, r *rand.Rand, s Session) quantity.LitresPerHour {
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
	return quantity.LitresPerHour(perHour * a.sweating * math.Exp(daySpread*r.NormFloat64()))
}

// TestEstimateCoversWhatIsMeasured leaves one test out, for athletes whose
// truth the estimate does not know, and counts how often the measured rate
// lies in the estimate's 95 % range. It must be 90 to 98 % over all.
func TestEstimateCoversWhatIsMeasured(t *testing.T) {
	r := rand.New(rand.NewPCG(2026, 11))
	type count struct{ inside, all int }
	byGrade := map[Grade]*count{Tested: {}, Near: {}, Far: {}}
	total := count{}
	var errs []float64
	for range 500 {
		a := newSynthetic(r)
		var tests []Test
		for range 2 + r.IntN(4) {
			s := a.session(t, r)
			rate := a.sweats(t, r, s) + quantity.LitresPerHour(weighingSpread*r.NormFloat64())
			tests = append(tests, Test{Session: s, Rate: max(rate, 0.05), U: weighingSpread})
		}
		for _, left := range LeaveOneOut(a.athlete, tests) {
			c := byGrade[left.Basis.Grade]
			c.all++
			total.all++
			if left.Inside {
				c.inside++
				total.inside++
			}
			errs = append(errs, math.Log(float64(tests[left.Test].Rate)/left.Basis.Rate.Value))
		}
	}
	mean, square := 0.0, 0.0
	for _, e := range errs {
		mean += e / float64(len(errs))
		square += e * e / float64(len(errs))
	}
	share := 100 * float64(total.inside) / float64(total.all)
	for _, g := range []Grade{Tested, Near, Far} {
		t.Logf("%-6s %4d of %4d inside (%.1f %%)", g.Code(), byGrade[g].inside, byGrade[g].all, 100*float64(byGrade[g].inside)/float64(max(1, byGrade[g].all)))
	}
	t.Logf("all    %4d of %4d inside (%.1f %%); ln error mean %+.3f, root mean square %.3f", total.inside, total.all, share, mean, math.Sqrt(square))
	if total.all < 1000 {
		t.Errorf("only %d estimates: too few to judge", total.all)
	}
	if share < 90 || share > 98 {
		t.Errorf("95 %% range covers %.1f %% of the tests left out, want 90 to 98 %%", share)
	}
}

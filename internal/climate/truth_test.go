package climate

import (
	"math"
	"math/rand/v2"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Three truths about sweating, none of them the rule's heat balance. They were
// written down before the rule was run on them and are not changed after it:
//
//	ISO 7933    heat strain minute by minute: heat is stored, the skin warms, sweating
//	            lags and has a ceiling of the athlete's own
//	WBGT line   a straight line on the wet bulb globe temperature, times effort
//	no balance  body size, effort and air temperature; humidity, sun and wind say nothing
//
// Each is scaled so that the usual sessions of the group make 1.21 L/h on
// average (Baker et al. 2016). An athlete has a level (ln SD 0.2), a slope of
// their own, an economy that the table does not know, and days that differ.
const (
	levelSD    = 0.20  // ln SD between athletes
	slopeSD    = 0.15  // SD between athletes of the exponent on the truth
	daySD      = 0.10  // ln SD from day to day
	weighingSD = 0.06  // kg, of a loss: two weighings on a field scale
	windSD     = 0.30  // ln SD of the wind that was guessed
	ceilingLow = 550.0 // W/m², ISO 7933's ceiling of sweating
	ceilingTop = 1000.0
	groupMean  = 1.21 // L/h
)

// truthAthlete is an athlete whose truth is known.
type truthAthlete struct {
	body                  Body
	level, slope, ceiling float64
	way                   EffortKind
	motion                Motion
	hard                  float64                // of what such athletes do
	error                 map[EffortKind]float64 // ln of the true metabolic rate over the one found
}

// drawTruthAthlete draws an athlete: 40 % run by speed, 25 % ride by power, 25 %
// play by the table of activities, 10 % rate their effort.
func drawTruthAthlete(r *rand.Rand) truthAthlete {
	height := 1.75 + 0.09*r.NormFloat64()
	height = min(max(height, 1.5), 2.05)
	mass := min(max(22.5*height*height+6*r.NormFloat64(), 45), 110)
	a := truthAthlete{body: Body{quantity.Kilograms(mass), quantity.Metres(height)}, level: levelSD * r.NormFloat64(),
		slope: max(0.5, 1+slopeSD*r.NormFloat64()), ceiling: ceilingLow + (ceilingTop-ceilingLow)*r.Float64(), hard: 0.85 + 0.3*r.Float64(), motion: OnFoot}
	switch x := r.Float64(); {
	case x < 0.4:
		a.way = BySpeed
	case x < 0.65:
		a.way, a.motion = ByPower, Cycling
	case x < 0.9:
		a.way = ByActivity
	default:
		a.way = ByRating
	}
	a.error = map[EffortKind]float64{}
	for _, k := range []EffortKind{ByPower, BySpeed, ByActivity, ByRating} {
		a.error[k] = k.relativeU() * r.NormFloat64()
	}
	return a
}

// session draws a session as it would be written down, 10 to 38 °C, with dew
// points to 26 °C.
func (a truthAthlete) session(t *testing.T, r *rand.Rand) Session {
	t.Helper()
	air := quantity.Celsius(10 + 28*r.Float64())
	most := min(95, 100*float64(Saturation(26)/Saturation(air)))
	suns := Suns()
	s := Session{Clothing: Shirt(), State: Trained, Minutes: quantity.Minutes(45 + 75*r.Float64()), Weather: Weather{Temperature: air,
		Humidity: quantity.Percent(30 + (most-30)*r.Float64()), Wind: quantity.MetresPerSecond(0.5 + 3*r.Float64()), Sun: suns[r.IntN(len(suns))]}}
	switch x := r.Float64(); {
	case x < 0.25:
		s.Clothing = Vest()
	case x < 0.35 && air < 16:
		s.Clothing = Tracksuit()
	}
	if air > 28 && r.Float64() < 0.4 {
		s.State = Acclimatised
	}
	hard := a.hard * (0.9 + 0.2*r.Float64())
	var err error
	switch a.way {
	case BySpeed:
		s.Effort, err = RunningEffort(a.body, quantity.MetresPerSecond(3.1*hard), 0, false)
	case ByPower:
		s.Effort, err = CyclingEffort(a.body, quantity.Watts(2.3*hard*float64(a.body.Mass)), quantity.MetresPerSecond([]float64{0, 7, 8.5}[r.IntN(3)]))
	case ByActivity:
		s.Effort, err = MetEffort(a.body, 8*hard, a.motion, 1.5)
	default:
		s.Effort, err = RatedEffort(a.body, min(6*hard, 10), a.motion, 1.5)
	}
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// truth is a model of sweating: L/h of an athlete whose true metabolic rate is
// m, in the true conditions of a session.
type truth func(t *testing.T, a truthAthlete, s Session, m float64) float64

// byStrain is ISO 7933 minute by minute.
func byStrain(t *testing.T, a truthAthlete, s Session, m float64) float64 {
	t.Helper()
	in := must[StrainInput](t)(strainOf(a.body, s))
	in.Metabolic = quantity.WattsPerSquareMetre(m)
	in.Work *= quantity.WattsPerSquareMetre(m / s.Effort.Metabolic.Value)
	run := newStrain(in, strainSetting{heatCapacity: evidence.BodyHeatCapacity, skinMetabolicMax: math.Inf(1)})
	run.sweatMax = a.ceiling
	sum := 0.0
	run.run(in, func(m StrainMinute) { sum += float64(m.Sweat) })
	return sum * run.grams / float64(in.Minutes) * 60 / 1000
}

// byGlobe is a straight line on the WBGT: 4.5 % of the rate at 20 °C for a
// degree, times the heat made.
func byGlobe(t *testing.T, a truthAthlete, s Session, m float64) float64 {
	t.Helper()
	at := s.Weather
	if at.Radiant != nil {
		at.Radiant = nil
	}
	wbgt := must[GlobeReading](t)(WeatherWBGT(at)).WBGT.Value
	made := m - float64(s.Effort.Work)
	return max(0.15, 1+0.045*(wbgt-20)) * made * a.body.Area()
}

// byAir is size, effort and air temperature alone.
func byAir(_ *testing.T, a truthAthlete, s Session, m float64) float64 {
	return math.Pow(float64(a.body.Mass), 0.7) * math.Pow(m, 0.8) * math.Exp(0.03*(float64(s.Weather.Temperature)-20))
}

// truths are the three, in order.
func truths() []struct {
	name  string
	model truth
} {
	return []struct {
		name  string
		model truth
	}{{"ISO 7933", byStrain}, {"WBGT line", byGlobe}, {"no balance", byAir}}
}

// world is a truth, scaled to the group.
type world struct {
	model truth
	scale float64 // of the model to L/h
}

// newWorld scales a truth: the usual sessions of 400 athletes without a level
// and a slope of their own make the group's mean.
func newWorld(t *testing.T, model truth) world {
	t.Helper()
	r := rand.New(rand.NewPCG(3, 14))
	sum := 0.0
	for range 400 {
		a := drawTruthAthlete(r)
		s := a.session(t, r)
		sum += model(t, a, s, s.Effort.Metabolic.Value)
	}
	return world{model, groupMean / (sum / 400)}
}

// TestTruthsAreScaled: the usual sessions of a truth's athletes make the group's
// mean; the skew of levels, slopes and efforts lifts it a little.
func TestTruthsAreScaled(t *testing.T) {
	for _, truth := range truths() {
		w, r, sum := newWorld(t, truth.model), rand.New(rand.NewPCG(5, 5)), 0.0
		for range 2000 {
			a := drawTruthAthlete(r)
			sum += w.rate(t, r, a, a.session(t, r))
		}
		if mean := sum / 2000; mean < 0.97*groupMean || mean > 1.13*groupMean {
			t.Errorf("%s: mean %.3f L/h, want about %.2f", truth.name, mean, groupMean)
		}
	}
}

// rate is the true mean rate of a session on one day, L/h: the sun and the wind
// were not quite those that were written down.
func (w world) rate(t *testing.T, r *rand.Rand, a truthAthlete, s Session) float64 {
	t.Helper()
	radiant := must[quantity.Celsius](t)(s.Weather.RadiantTemperature())
	if s.Weather.Sun != SunNone {
		radiant += quantity.Celsius(evidence.SunRadiantError / evidence.CoverageFactor * r.NormFloat64())
	}
	s.Weather.Radiant = &radiant
	s.Weather.Wind *= quantity.MetresPerSecond(math.Exp(windSD * r.NormFloat64()))
	m := s.Effort.Metabolic.Value * math.Exp(a.error[s.Effort.Kind])
	rate := w.scale * w.model(t, a, s, m)
	return groupMean * math.Pow(rate/groupMean, a.slope) * math.Exp(a.level+daySD*r.NormFloat64())
}

// test is a session as a field test finds it.
func (w world) test(t *testing.T, r *rand.Rand, a truthAthlete, s Session, months float64) Test {
	t.Helper()
	hours := float64(s.Minutes) / 60
	rate := w.rate(t, r, a, s) + weighingSD*r.NormFloat64()/hours
	return Test{Session: s, Rate: quantity.LitresPerHour(min(max(rate, 0.06), 5.9)), U: quantity.LitresPerHour(weighingSD / hours), MonthsAgo: months}
}

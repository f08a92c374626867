package climate

import (
	"math"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
)

// The exponent of the wind profile by wind at 10 m and sun, after the urban table of the
// source: 0.15 where the sun stirs the air, to 0.30 in a still night.
func TestWindProfile(t *testing.T) {
	for _, c := range []struct{ wind, sun, want float64 }{
		{1, 0, 0.30}, {2.4, 0, 0.30}, {2.5, 0, 0.25}, {2.6, 0, 0.25}, {8, 0, 0.25},
		{1, 1000, 0.15}, {1, 925, 0.15}, {1, 924, 0.15}, {1, 700, 0.15}, {1, 200, 0.15}, {1, 175, 0.15}, {1, 174, 0.25}, {1, 100, 0.25},
		{2, 300, 0.20}, {2, 700, 0.15}, {2, 1000, 0.15}, {2, 100, 0.25}, {3, 300, 0.20}, {3, 675, 0.15}, {3, 674, 0.20}, {3, 100, 0.25}, {4.9, 950, 0.15},
		{5, 950, 0.20}, {5, 700, 0.20}, {5, 300, 0.25}, {5, 100, 0.25}, {6, 950, 0.20}, {6, 700, 0.25}, {6, 300, 0.25}, {6, 100, 0.25}, {5.9, 700, 0.20},
	} {
		if got := windPower(c.wind, c.sun); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%g m/s, %g W/m²: %g, want %g", c.wind, c.sun, got, c.want)
		}
	}
	if got, want := windAtInstruments(1, 0), math.Pow(0.2, 0.3); math.Abs(got-want) > 1e-12 {
		t.Errorf("1 m/s at night: %g at 2 m, want %g", got, want)
	}
	if got := windAtInstruments(0.05, 0); got != 0.13 {
		t.Errorf("calm: %g m/s", got)
	}
}

// The start of a practice holds from nine of ten tests inside their ranges on.
func TestStartHoldsFromNineOfTen(t *testing.T) {
	between, under := 0, 0
	for _, spread := range []float64{0.2, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4} {
		l := LearnStart(practised(t, 20, 0, spread))
		share, below := float64(l.Inside)/float64(l.Tests), float64(l.Below)/float64(l.Tests)
		if share >= 0.9 && share < 0.99 && below <= 0.025 {
			between++
			if !l.Holds {
				t.Errorf("%.1f %% inside, and it does not hold", 100*share)
			}
		}
		if share < 0.9 {
			under++
			if l.Holds {
				t.Errorf("%.1f %% inside, and it holds", 100*share)
			}
		}
	}
	if between == 0 || under == 0 {
		t.Errorf("%d practices at 90 to 99 %%, %d under", between, under)
	}
}

// Of the surface 0.77 exchanges radiation in standing, 0.70 in sitting, 0.67 in crouching
// (ISO 7933:2004), and nothing is known of another posture.
func TestRadiatingShare(t *testing.T) {
	for posture, want := range map[Posture]float64{Standing: 0.77, Sitting: 0.70, Crouching: 0.67} {
		if got, ok := posture.radiating(); !ok || got != want {
			t.Errorf("%s: %g %v", posture, got, ok)
		}
	}
	if _, ok := Posture("lying").radiating(); ok {
		t.Error("lying is known")
	}
}

// The sweat that a need asks for, by hand, with 100 W/m² that can evaporate: at half of it
// the efficiency is 1 - 0.25/2, at all of it a half, at 1.5 (2 - 1.5)²/2, at 1.7 and beyond
// the maximum is sweated; and never more than that.
func TestRequiredSweatByHand(t *testing.T) {
	s := strain{sweatMax: 5000}
	for need, want := range map[float64]float64{0: 0, -5: 0, 50: 50 / 0.875, 100: 200, 150: 150 / 0.125, 169: 169 / (0.31 * 0.31 / 2), 170: 5000, 200: 5000} {
		if got := s.required(need, 100); math.Abs(got-want) > 1e-9*want {
			t.Errorf("need of %g: %g, want %g", need, got, want)
		}
	}
	s.sweatMax = 400
	if got := s.required(150, 100); got != 400 {
		t.Errorf("above the maximum: %g", got)
	}
	if got := s.required(10, 0); got != 400 {
		t.Errorf("nothing can evaporate: %g", got)
	}
}

// Who cannot drink has three fifths of the time to 5 % of body mass for both limits of loss.
func TestLimitsWithoutDrinking(t *testing.T) {
	m := newMarks(75, 1)
	for minute, water := range []float64{0, 2000, 3800, 5700} { // 5 % of 75 kg are 3750 g, 7.5 % 5625 g
		m.note(100*minute, 37, water)
	}
	var with, without StrainResult
	m.fill(&with, StrainInput{Minutes: 480})
	m.fill(&without, StrainInput{Minutes: 480, NoDrink: true})
	if with.RectalLimit != 480 || with.MeanLossLimit != 300 || with.MostLossLimit != 200 {
		t.Errorf("%+v", with)
	}
	if math.Abs(without.MostLossLimit-120) > 1e-9 || math.Abs(without.MeanLossLimit-120) > 1e-9 || without.RectalLimit != 480 {
		t.Errorf("%+v", without)
	}
}

// The series that stands in for the exponential is good to 1e-12, and an exponent is the
// logarithm of what saturation is multiplied by.
func TestSeriesOfTheExponential(t *testing.T) {
	for x := -0.01; x <= 0.01; x += 0.0005 {
		if got, want := exponential(x), math.Exp(x); math.Abs(got-want) > 1e-12 {
			t.Errorf("at %g: %.15g, want %.15g", x, got, want)
		}
	}
	for _, skin := range []float64{30, 34.1, 36} {
		for _, step := range []float64{-0.15, 0.02, 0.15} {
			got := saturation(skin) * exponential(exponentAfter(skin, skin+step))
			if want := saturation(skin + step); math.Abs(got-want) > 1e-11*want {
				t.Errorf("%g °C and %g: %.12g, want %.12g", skin, step, got, want)
			}
		}
	}
}

// The weight of the skin in the mean body temperature falls from 0.3 at 36.8 °C by 0.09 a
// kelvin to 0.1, and stays there; one of Newton's steps is the error over its slope.
func TestWarmStepIsNewtons(t *testing.T) {
	for core, want := range map[float64][2]float64{36: {0.3, 0}, 36.8: {0.3, 0.045}, 37.8: {0.21, 0.045}, 39.5: {0.1, 0}} {
		if weight, bend := skinWeight(core); math.Abs(weight-want[0]) > 1e-9 || math.Abs(bend-want[1]) > 1e-9 {
			t.Errorf("at %g °C: %g and %g", core, weight, bend)
		}
	}
	const skin, right = 35.2, 37.1
	off := func(core float64) float64 {
		weight, _ := skinWeight(core)
		return core*(1-weight/2) + skin*weight/2 - right
	}
	for _, core := range []float64{36.2, 37.1, 38.3, 40} {
		slope := (off(core+1e-6) - off(core-1e-6)) / 2e-6
		if got, want := warmStep(core, skin, right), off(core)/slope; math.Abs(got-want) > 1e-7*(1+math.Abs(want)) {
			t.Errorf("at %g °C: a step of %g, want %g", core, got, want)
		}
	}
}

// A figure's range is 1.96 standard uncertainties to either side.
func TestSpreadOfAFigure(t *testing.T) {
	f := withSpread(figure.Figure{Known: true, Value: 28}, 0.5)
	if f.U != 0.5 || !f.Ranged || math.Abs(f.Range.Low-27.02) > 1e-9 || math.Abs(f.Range.High-28.98) > 1e-9 {
		t.Errorf("%+v", f)
	}
	if f := withSpread(figure.Figure{Known: true, Value: 28}, math.Inf(1)); f.Ranged {
		t.Errorf("%+v", f)
	}
}

// The uncertainty of a WBGT from weather is that of the method and, in the sun, of the
// sun's strength, added as squares; the budget says which is which.
func TestWeatherWbgtUncertainty(t *testing.T) {
	at := func(sun Sun) GlobeReading {
		g, err := WeatherWBGT(Weather{Temperature: 30, Humidity: 50, Wind: 2, Sun: sun})
		if err != nil {
			t.Fatal(err)
		}
		return g
	}
	if u := at(SunNone).WBGT.U; math.Abs(u-evidence.WeatherWbgtU) > 1e-12 {
		t.Errorf("without sun: %g", u)
	}
	sunny := at(SunHigh).WBGT
	if !(sunny.U > evidence.WeatherWbgtU) {
		t.Fatalf("in the sun: %g", sunny.U)
	}
	weather := Weather{Temperature: 30, Humidity: 50, Wind: 2, Sun: SunHigh}
	preset, err := SunHigh.preset()
	if err != nil {
		t.Fatal(err)
	}
	at10m := weather.Wind / evidence.WindAtBody
	by := func(strength float64) float64 {
		g, err := SolarWBGT(weather, at10m, Solar{preset.Irradiance * strength, preset.Direct, preset.CosZenith})
		if err != nil {
			t.Fatal(err)
		}
		return g.WBGT.Value
	}
	if want := math.Hypot(0.5, (by(1.2)-by(0.8))/2); math.Abs(sunny.U-want) > 1e-9 {
		t.Errorf("a fifth more and less sun: %g, want %g", sunny.U, want)
	}
	own := evidence.WeatherWbgtU * evidence.WeatherWbgtU / sunny.U / sunny.U
	for _, share := range sunny.Why.Budget {
		want := own
		if share.Source == "wbgt.sun" {
			want = 1 - own
		}
		if math.Abs(share.Part-want) > 1e-9 {
			t.Errorf("%s: %g, want %g", share.Source, share.Part, want)
		}
	}
	if len(sunny.Why.Budget) != 2 || math.Abs(sunny.Range.High-sunny.Value-1.96*sunny.U) > 1e-9 {
		t.Errorf("%+v", sunny)
	}
}

// Saturation at the wick by hand: 6.1121 hPa exp(17.502 t / (240.97 + t)), raised by
// 1.0007 + 3.46e-6 of the pressure in hPa (Buck 1981, as the source of the WBGT has it).
func TestSaturationAtTheWick(t *testing.T) {
	for _, c := range []struct{ celsius, hPa float64 }{{20, 1013.25}, {35, 1013.25}, {20, 700}, {0, 1013.25}} {
		s := site{pressure: 100 * c.hPa}
		want := 611.21 * math.Exp(17.502*c.celsius/(240.97+c.celsius)) * (1.0007 + 3.46e-6*c.hPa)
		if got := s.saturation(c.celsius + 273.15); math.Abs(got-want) > 1e-5*want {
			t.Errorf("%g °C, %g hPa: %g Pa, want %g", c.celsius, c.hPa, got, want)
		}
	}
}

// Weather with a sun that is not known is named, good weather is not.
func TestCheckOfWeather(t *testing.T) {
	good := Weather{Temperature: 25, Humidity: 50, Wind: 2, Sun: SunLow}
	if list := good.Check(); len(list) != 0 {
		t.Errorf("%+v", list)
	}
	bad := good
	bad.Sun = "moon"
	if list := bad.Check(); len(list) != 1 {
		t.Errorf("%+v", list)
	}
}

// With one test what no test has shown is what that one leaves; with tests that disagree the
// standard deviation is wider, as far as they reach.
func TestOutcomeByHand(t *testing.T) {
	b, plan := sample(t, 25, SunShade)
	d := demandOf(must[Balance](t)(Calculate(b, plan)), plan)
	one := must[*TestSet](t)(NewTestSet(Athlete{Body: b}, []Test{testAt(t, 25, 1)}))
	o := one.outcome(&d)
	if len(o.alone) != 1 || math.Abs(o.alone[0]-o.unknown) > 1e-12 || !(o.unknown > 0) {
		t.Errorf("one test: %g left by it, %g unknown", o.alone, o.unknown)
	}
	for _, rates := range [][]float64{{1, 1}, {0.6, 1.6}} {
		s := must[*TestSet](t)(NewTestSet(Athlete{Body: b}, []Test{testAt(t, 25, rates[0]), testAt(t, 25, rates[1])}))
		o := s.outcome(&d)
		p := d.covariance(&d, s.start.SD)
		if want := math.Sqrt((o.unknown + o.day) * (1 + (o.wider-1)*(1-o.unknown/p))); math.Abs(o.sd()-want) > 1e-12 {
			t.Errorf("%v: %g, want %g", rates, o.sd(), want)
		}
		if want := max(0.8, (6+s.chi2)/8); math.Abs(o.wider-want) > 1e-12 {
			t.Errorf("%v: wider by %g, want %g", rates, o.wider, want)
		}
		for _, left := range o.alone {
			if left < o.unknown || left > p {
				t.Errorf("%v: one leaves %g of %g, both %g", rates, left, p, o.unknown)
			}
		}
	}
}

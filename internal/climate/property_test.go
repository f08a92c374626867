package climate

import (
	"math"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"

	"pgregory.net/rapid"
)

// calculated is the balance of a session that must be possible.
func calculated(t *rapid.T, b Body, s Session) Balance {
	x, err := Calculate(b, s)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// TestMoreHeatNeverLowersNeed: more sun, hotter air at the same vapour, and
// more effort never lower the evaporation needed.
func TestMoreHeatNeverLowersNeed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, s := drawAthlete(t).Body, drawSession(t, "")
		before := calculated(t, b, s).Need
		check := func(what string, now float64) {
			if now < before-1e-6 {
				t.Fatalf("%s: need falls from %g to %g W/m²", what, before, now)
			}
		}
		for _, sun := range Suns() {
			stronger, weaker := s, s
			stronger.Weather.Sun = sun
			p, err := sun.preset()
			q, err2 := weaker.Weather.Sun.preset()
			if err != nil || err2 != nil {
				t.Fatal(err, err2)
			}
			if p.Radiant >= q.Radiant {
				check("sun "+string(sun), calculated(t, b, stronger).Need)
			}
		}
		hotter := s
		warmer := quantity.Celsius(rapid.Float64Range(0.1, 5).Draw(t, "warmer"))
		hotter.Weather.Temperature += warmer
		vapour := s.Weather.Air().Vapour
		hotter.Weather.Humidity = Air{hotter.Weather.Temperature, vapour}.Humidity()
		check("hotter air", calculated(t, b, hotter).Need)
		harder := s
		factor := rapid.Float64Range(1, 1.2).Draw(t, "harder")
		harder.Effort.Metabolic.Value *= factor
		harder.Effort.Work *= quantity.WattsPerSquareMetre(factor)
		check("more effort", calculated(t, b, harder).Need)
	})
}

// TestBalanceCloses: what is made leaves, or must evaporate.
func TestBalanceCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSession(t, "")
		x := calculated(t, drawAthlete(t).Body, s)
		left := x.Metabolic - x.Work - x.BreathDry - x.BreathWet - x.Convection - x.Radiation - x.Need
		if math.Abs(left) > 1e-9 {
			t.Fatalf("%g W/m² are left over", left)
		}
		if g := math.Exp(demandOf(x, s).log); !(g > 0 && g < evidence.SweatFlowMost*x.Area/1000) {
			t.Fatalf("first figure %g L/h", g)
		}
	})
}

// TestTestBendsTowardsItself: with one test the middle for its own session lies
// between what was measured and what no test would have said, and its range is
// no wider than without, unless the test disagrees.
func TestTestBendsTowardsItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, s := drawAthlete(t), drawSession(t, "")
		none, err := Estimate(Athlete{Body: a.Body}, nil, s)
		if err != nil {
			t.Fatal(err)
		}
		rate := none.Rate.Value * rapid.Float64Range(0.5, 2).Draw(t, "k")
		if rate < 0.06 || rate > 5.9 {
			t.Skip("no rate that can be measured")
		}
		b, err := Estimate(a, []Test{{Session: s, Rate: quantity.LitresPerHour(rate), U: 0.02}}, s)
		if err != nil {
			t.Fatal(err)
		}
		low, high := min(rate, none.Rate.Value), max(rate, none.Rate.Value)
		if b.Rate.Value < low-1e-9 || b.Rate.Value > high+1e-9 {
			t.Fatalf("%g is not between %g and %g", b.Rate.Value, low, high)
		}
		if w := b.Coverage[0].Weight; w <= 0 || w >= 1 {
			t.Fatalf("weight %g", w)
		}
	})
}

// TestRangeNarrowsWithTests: more tests of one session that agree never widen
// the range, and the share that no test has shown falls.
func TestRangeNarrowsWithTests(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, s := drawAthlete(t), drawSession(t, "plan")
		var tests []Test
		width, share := math.Inf(1), math.Inf(1)
		for n := range 6 {
			b, err := Estimate(a, tests, s)
			if err != nil {
				t.Fatal(err)
			}
			if now := b.Rate.U / b.Rate.Value; n > 1 && (now > width+1e-9 || b.NotTested > share+1e-9) {
				t.Fatalf("%d tests: SD %g after %g, share %g after %g", n, now, width, b.NotTested, share)
			}
			width, share = b.Rate.U/b.Rate.Value, b.NotTested
			if b.Rate.Value < 0.06 || b.Rate.Value > 5.9 {
				t.Skip("no rate that can be measured")
			}
			tests = append(tests, Test{Session: s, Rate: quantity.LitresPerHour(b.Rate.Value), U: 0.02})
		}
	})
}

// TestAirAgreesWithItself: humidity, vapour and dew point go round.
func TestAirAgreesWithItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWeather(t, "")
		temperature, humidity := w.Temperature, w.Humidity
		a, err := NewAir(temperature, humidity)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(float64(a.Humidity()-humidity)) > 1e-9 {
			t.Fatalf("humidity %g became %g", humidity, a.Humidity())
		}
		dew, ok := a.DewPoint()
		if !ok || dew > temperature+1e-9 {
			t.Fatalf("dew point %g above air %g", dew, temperature)
		}
		if back := Saturation(dew); math.Abs(float64(back-a.Vapour)) > 1e-9 {
			t.Fatalf("vapour %g became %g", a.Vapour, back)
		}
	})
}

// TestSunWarmsTheGlobe: a stronger preset never lowers the WBGT, and without
// sun the globe is no warmer than the air by more than rounding.
func TestSunWarmsTheGlobe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWeather(t, "")
		reading := func(sun Sun) GlobeReading {
			w.Sun = sun
			r, err := WeatherWBGT(w)
			if err != nil {
				t.Fatal(err)
			}
			return r
		}
		none := reading(SunNone)
		if none.Globe > w.Temperature+0.5 {
			t.Fatalf("globe %g without sun in air of %g", none.Globe, w.Temperature)
		}
		// Presets differ in the sun's height too; each against its own half.
		for _, sun := range Suns()[1:] {
			p, err := sun.preset()
			if err != nil {
				t.Fatal(err)
			}
			half, err := SolarWBGT(w, 3, Solar{p.Irradiance / 2, p.Direct, p.CosZenith})
			whole, err2 := SolarWBGT(w, 3, Solar{p.Irradiance, p.Direct, p.CosZenith})
			if err != nil || err2 != nil {
				t.Fatal(err, err2)
			}
			if whole.Globe < half.Globe || whole.NaturalWetBulb < half.NaturalWetBulb-0.3 {
				t.Fatalf("%s: globe %g and wick %g, at half strength %g and %g", sun, whole.Globe, whole.NaturalWetBulb, half.Globe, half.NaturalWetBulb)
			}
		}
	})
}

// TestStrainIsOrdered: minutes come in order, water never falls, and a limit
// lies within the exposure.
func TestStrainIsOrdered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := StrainInput{
			Air: drawWeather(t, "").Air(), Wind: quantity.MetresPerSecond(rapid.Float64Range(0, 3).Draw(t, "speed")),
			Metabolic: quantity.WattsPerSquareMetre(rapid.Float64Range(80, 600).Draw(t, "metabolic")),
			Clothing:  Clothing{Insulation: Clo(rapid.Float64Range(0, 1.5).Draw(t, "clo"))}, Posture: Standing,
			Acclimatised: rapid.Bool().Draw(t, "acclimatised"), Body: drawAthlete(t).Body,
			Minutes: rapid.IntRange(1, 480).Draw(t, "minutes"), NoDrink: rapid.Bool().Draw(t, "no drink"),
		}
		in.Radiant = in.Air.Temperature + quantity.Celsius(rapid.Float64Range(0, 40).Draw(t, "radiant"))
		last := StrainMinute{}
		r, err := TraceStrain(in, func(m StrainMinute) {
			if m.Minute != last.Minute+1 || m.Water < last.Water || math.IsNaN(float64(m.Rectal)) {
				t.Fatalf("minute %+v after %+v", m, last)
			}
			last = m
		})
		if err != nil {
			t.Fatal(err)
		}
		if last.Minute != in.Minutes || last.Water != r.Water || last.Rectal != r.Rectal {
			t.Fatalf("last minute %+v, result %+v", last, r)
		}
		for _, limit := range []float64{r.RectalLimit, r.MeanLossLimit, r.MostLossLimit} {
			if !(limit > 0 && limit <= float64(in.Minutes)) {
				t.Fatalf("limit %g in %d min", limit, in.Minutes)
			}
		}
	})
}

// TestStrainIsUnhurried: the series and the single steps that make the minutes
// fast give what the plain formulas give.
func TestStrainIsUnhurried(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before := rapid.Float64Range(20, 45).Draw(t, "before")
		now := before + rapid.Float64Range(-0.16, 0.16).Draw(t, "change")
		x := exponentAfter(before, now)
		if math.Abs(x) >= seriesUpTo {
			t.Skip("not taken as a series")
		}
		series := saturation(before) * (1 + x*(1+x/2*(1+x*(third+x*third/4))))
		if want := saturation(now); math.Abs(series-want) > 1e-11*want {
			t.Fatalf("series %.15g, formula %.15g", series, want)
		}
	})
}

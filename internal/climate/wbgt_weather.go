package climate

import (
	"errors"
	"fmt"
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// GlobeReading is what a WBGT meter would show in given weather.
type GlobeReading struct {
	NaturalWetBulb, Globe quantity.Celsius
	WBGT                  figure.Figure
}

// WeatherWBGT calculates the wet bulb globe temperature from weather whose sun
// is a preset word.
//
// The globe and the natural wet bulb are each found from their own balance of
// radiation, convection and evaporation, solved to the end ([SolarWBGT]).
// Meant for people without a meter; not for a stadium, a hall of glass or
// ground far from usual. The range joins the method's own ±1 °C and a fifth
// either way in the strength of the sun. Source: Liljegren et al. 2008; sun
// presets are proposals. Example: 30 °C, 50 %, 2 m/s at 10 m, full high sun
// give 29.7 °C. It returns an [evidence.Problem] for impossible weather.
func WeatherWBGT(w Weather) (GlobeReading, error) {
	if err := w.refused(evidence.Limits()); err != nil {
		return GlobeReading{}, err
	}
	p, err := w.Sun.preset()
	if err != nil {
		return GlobeReading{}, err
	}
	at10m := w.Wind / evidence.WindAtBody
	reading := func(strength float64) (GlobeReading, error) {
		return solarWBGT(w, at10m, Solar{p.Irradiance * strength, p.Direct, p.CosZenith})
	}
	middle, err := reading(1)
	if err != nil || p.Irradiance == 0 {
		return middle, err
	}
	low, errLow := reading(1 - evidence.SunPresetRelativeU)
	high, errHigh := reading(1 + evidence.SunPresetRelativeU)
	if err := errors.Join(errLow, errHigh); err != nil {
		return GlobeReading{}, err
	}
	sun := (high.WBGT.Value - low.WBGT.Value) / 2
	u := math.Hypot(evidence.WeatherWbgtU, sun)
	middle.WBGT = withSpread(middle.WBGT, u)
	own := evidence.WeatherWbgtU / u
	middle.WBGT.Why.Budget = shares(figure.Share{Source: "wbgt.method", Part: own * own}, figure.Share{Source: "wbgt.sun", Part: 1 - own*own})
	return middle, nil
}

// solarWBGT is [SolarWBGT] of checked weather and sun.
func solarWBGT(w Weather, at10m quantity.MetresPerSecond, sun Solar) (GlobeReading, error) {
	site := newSite(w, float64(at10m), sun)
	globe, ok1 := site.globe()
	wet, ok2 := site.naturalWetBulb()
	if !ok1 || !ok2 {
		return GlobeReading{}, fmt.Errorf("solve globe and wick at %g °C: no balance found", float64(w.Temperature))
	}
	r := Readings{quantity.Celsius(wet), quantity.Celsius(globe), w.Temperature, sun.Irradiance == 0}
	f := figure.Figure{Known: true, Value: wbgt(r), Unit: quantity.DegreeCelsius, Estimate: true,
		Why: wbgtWhy(wet, globe, float64(w.Temperature), !r.Indoors)}
	f.Why.Sources = append(f.Why.Sources, "climate.wbgt.weather.u")
	return GlobeReading{r.NaturalWetBulb, r.Globe, withSpread(f, evidence.WeatherWbgtU)}, nil
}

package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// Explained are the steps of the heat balance as figures, each an estimate
// with its range and why.
type Explained struct {
	// Need and Capacity are Ereq and Emax in W/m², Wettedness their ratio;
	// First is the steady sweat rate the balance asks for and Breath the
	// breath's water, L/h; Onset is f, which has no range of its own.
	Need, Capacity, Wettedness, First, Breath, Onset figure.Figure
}

// Explain is [Calculate] with the error of each step: that of the metabolic rate,
// and that of a sun preset (9 °C of radiant temperature either way). The
// balance's own error is in the estimate's range, not here.
func Explain(b Body, s Session) (Explained, error) {
	x, err := Calculate(b, s)
	if err != nil {
		return Explained{}, err
	}
	radiant, err := s.Weather.RadiantTemperature()
	if err != nil {
		return Explained{}, err
	}
	m := s.Effort.Metabolic
	var um, ur float64
	if m.Ranged {
		um = m.U
	}
	if s.Weather.Radiant == nil && s.Weather.Sun != SunNone {
		ur = evidence.SunRadiantError / evidence.CoverageFactor
	}
	warmer := calculate(b, s, float64(radiant)+ur, m.Value)
	harder := calculate(b, s, float64(radiant), m.Value+um)
	ranged := func(f figure.Figure, value func(Balance) float64) figure.Figure {
		effort, sun := value(harder)-value(x), value(warmer)-value(x)
		u := math.Hypot(effort, sun)
		if u > 0 {
			f.Why.Budget = shares(figure.Share{Source: "effort", Part: effort * effort / (u * u)}, figure.Share{Source: "sun", Part: sun * sun / (u * u)})
		}
		return withSpread(f, u)
	}
	e := Explained{
		Need:     ranged(needFigure(x), func(x Balance) float64 { return x.Need }),
		Capacity: ranged(capacityFigure(x), func(x Balance) float64 { return x.Capacity }),
		First:    ranged(firstFigure(x, s), func(x Balance) float64 { d := demandOf(x, s); return d.flow * x.Area / 1000 }),
		Breath:   breathFigure(x, s.Effort),
		Onset:    onsetFigure(s.Minutes),
	}
	if _, ok := x.Wettedness(); ok {
		e.Wettedness = ranged(wettednessFigure(x), func(x Balance) float64 { w, _ := x.Wettedness(); return w })
	}
	return e, nil
}

// watts makes an input in W/m².
func watts(symbol string, x float64) figure.Input {
	return figure.Input{Symbol: symbol, Value: x, Unit: quantity.WattPerSquareMetre}
}

// needFigure is Ereq.
func needFigure(x Balance) figure.Figure {
	return figure.Figure{Known: true, Value: x.Need, Unit: quantity.WattPerSquareMetre, Estimate: true, Why: figure.Why{
		Formula: "metabolic-work-breathdry-breathwet-convection-radiation",
		Inputs: []figure.Input{watts("metabolic", x.Metabolic), watts("work", x.Work), watts("breathdry", x.BreathDry),
			watts("breathwet", x.BreathWet), watts("convection", x.Convection), watts("radiation", x.Radiation)},
		Sources: []string{"climate.strain.breath.dry", "climate.strain.convection.fast", "climate.strain.radiation", "climate.estimate.core"},
	}}
}

// capacityFigure is Emax, from skin and air.
func capacityFigure(x Balance) figure.Figure {
	return figure.Figure{Known: true, Value: x.Capacity, Unit: quantity.WattPerSquareMetre, Estimate: true, Why: figure.Why{
		Formula: "(pskin-pair)*passage",
		Inputs: []figure.Input{
			{Symbol: "pskin", Value: saturation(x.Skin), Unit: quantity.Kilopascal},
			{Symbol: "pair", Value: x.Vapour, Unit: quantity.Kilopascal},
			{Symbol: "passage", Value: x.Passage, Unit: "W/(m²·kPa)"},
		},
		Sources: []string{"climate.air.saturation.scale", "climate.strain.clothing.lewis", "climate.strain.clothing.permeability"},
	}}
}

// wettednessFigure is w.
func wettednessFigure(x Balance) figure.Figure {
	return figure.Figure{Known: true, Value: x.Need / x.Capacity, Estimate: true, Why: figure.Why{
		Formula: "need/capacity",
		Inputs:  []figure.Input{watts("need", x.Need), watts("capacity", x.Capacity)},
		Sources: []string{"climate.estimate.wettedness.trained"},
	}}
}

// firstFigure is the steady sweat rate that the balance asks for, L/h.
func firstFigure(x Balance, s Session) figure.Figure {
	d := demandOf(x, s)
	return figure.Figure{Known: true, Value: d.flow * x.Area / 1000, Unit: quantity.LitrePerHour, Estimate: true, Why: figure.Why{
		Formula: "flow/sqrt(sqrt(1+flow*flow*flow*flow/(most*most*most*most)))*area/1000",
		Inputs: []figure.Input{
			{Symbol: "flow", Value: d.need / (evidence.SweatLatent * (1 - d.effective*d.effective/2)), Unit: "g/(m²·h)"},
			{Symbol: "most", Value: evidence.SweatFlowMost, Unit: "g/(m²·h)"},
			{Symbol: "area", Value: x.Area, Unit: "m²"},
		},
		Sources: []string{"climate.rule.floor.share", "climate.estimate.latent", "climate.rule.flow.most"},
	}}
}

// breathFigure is the breath's water; its range is that of the metabolic rate.
func breathFigure(x Balance, e Effort) figure.Figure {
	f := figure.Figure{Known: true, Value: float64(x.BreathWater()), Unit: quantity.LitrePerHour, Estimate: true, Why: figure.Why{
		Formula: "max(0,wet)*area/latent/1000",
		Inputs: []figure.Input{watts("wet", x.BreathWet), {Symbol: "area", Value: x.Area, Unit: "m²"},
			{Symbol: "latent", Value: evidence.SweatLatent, Unit: "W·h/g"}},
		Budget:  []figure.Share{{Source: "effort", Part: 1}},
		Sources: []string{"climate.strain.breath.wet", "climate.estimate.latent"},
	}}
	return withSpread(f, f.Value*e.Metabolic.U/e.Metabolic.Value)
}

// onsetFigure is f.
func onsetFigure(t quantity.Minutes) figure.Figure {
	return figure.Figure{Known: t > 0, Value: Onset(t), Estimate: true, Why: figure.Why{
		Formula: "1-(delay/time)*(1-exp(-time/delay))",
		Inputs: []figure.Input{{Symbol: "delay", Value: evidence.OnsetTime, Unit: quantity.Minute},
			{Symbol: "time", Value: float64(t), Unit: quantity.Minute}},
		Sources: []string{"climate.estimate.onset"},
	}}
}

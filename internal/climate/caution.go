package climate

import (
	"fmt"
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// What a heat caution is based on.
const (
	CautionWBGT       = "wbgt"
	CautionWettedness = "wettedness"
	CautionCore       = "core"
)

// Codes that stand beside every heat caution.
const (
	// LocalPolicyWins: local heat policy and the organiser decide.
	LocalPolicyWins = "local-policy-wins"
	// HeatStrokeAnyDay: no level rules out heat illness.
	HeatStrokeAnyDay = "heat-illness-at-any-level"
	// BandMayBeHigher: the range of the WBGT reaches into the next band.
	BandMayBeHigher = "band-may-be-higher"
	// CoreExtrapolated: the heat strain is calculated outside its standard.
	CoreExtrapolated = "core-extrapolated"
)

// CautionPart is one of the three looks at the heat.
type CautionPart struct {
	By    string
	Level Level
	// Figure is the WBGT, the wettedness over its maximum, or the rectal
	// temperature at the end.
	Figure figure.Figure
	// Beyond: the rectal temperature was calculated above what any body is
	// followed to by the formula ([evidence.CoreFollowed]). Figure then has that
	// limit for a value, is not Known, and only "above" it may be said.
	Beyond bool
}

// Caution is what the heat of a session calls for.
type Caution struct {
	// Level is the worst of the parts.
	Level Level
	// Decides is the part that gives the level, one of the Caution constants.
	Decides string
	Parts   []CautionPart
	Band    Band
	Strain  StrainResult
	Codes   []string
}

// HeatCaution is the worst of three looks at the heat of a session.
//
//	WBGT band     measured where it was, else from weather and sun preset
//	wettedness    needed over its maximum: from 0.85 watch, above 1 the heat
//	              cannot leave; nothing evaporates: cancel
//	core          rectal temperature of ISO 7933 at the end, extrapolated:
//	              from 39.5 °C watch, from 40 limit, and cancel where even
//	              the low end of its range is 40; outside the range the
//	              standard was made for, watch at the most
//
// Nearly all hard sport lies outside that range, and there the standard calls
// ordinary runs in mild air unbearable: it may draw attention, not send
// athletes home. The maximum of sweating in the strain is raised to what the
// balance asks for and to the athlete's own rate, since the standard's is a
// worker's; air past the body stops at 3 m/s and the metabolic rate in the skin
// formula at 450 W/m². It is a caution and clears nobody: heat illness comes at
// any level, and local policy wins. measured is a WBGT that was read there, or
// nil. Sources: ACSM 2007; ISO 7933:2004; Ravanelli et al. 2018; the limits of
// wettedness and of core but 40 °C are proposals.
func HeatCaution(b Body, s Session, p Practice, measured *quantity.Celsius, basis Basis) (Caution, error) {
	x, err := Calculate(b, s)
	if err != nil {
		return Caution{}, fmt.Errorf("calculate a heat caution: %w", err)
	}
	c := Caution{Codes: []string{LocalPolicyWins, HeatStrokeAnyDay}}
	part, err := c.band(s, p, measured)
	if err != nil {
		return Caution{}, fmt.Errorf("calculate a heat caution: %w", err)
	}
	c.Parts = append(c.Parts, part, wettednessPart(x))
	part, err = c.core(b, s, x, basis)
	if err != nil {
		return Caution{}, fmt.Errorf("calculate a heat caution: %w", err)
	}
	c.Parts = append(c.Parts, part)
	c.Decides = CautionWBGT
	for _, part := range c.Parts {
		if part.Level > c.Level {
			c.Level, c.Decides = part.Level, part.By
		}
	}
	return c, nil
}

// band is the part of the WBGT.
func (c *Caution) band(s Session, p Practice, measured *quantity.Celsius) (CautionPart, error) {
	var f figure.Figure
	if measured != nil {
		if err := refused(evidence.GlobeField, float64(*measured)); err != nil {
			return CautionPart{}, err
		}
		f = withSpread(figure.Figure{Known: true, Value: float64(*measured), Unit: quantity.DegreeCelsius, Why: figure.Why{
			Formula: "wbgt", Inputs: []figure.Input{{Symbol: "wbgt", Value: float64(*measured), Unit: quantity.DegreeCelsius}},
			Sources: []string{"climate.wbgt.measured.u"}}}, evidence.MeasuredWbgtU)
	} else {
		r, err := WeatherWBGT(s.Weather)
		if err != nil {
			return CautionPart{}, err
		}
		f = r.WBGT
	}
	c.Band = BandOf(quantity.Celsius(f.Value), p)
	if f.Ranged && BandOf(quantity.Celsius(f.Range.High), p).Level > c.Band.Level {
		c.Codes = append(c.Codes, BandMayBeHigher)
	}
	return CautionPart{By: CautionWBGT, Level: c.Band.Level, Figure: f}, nil
}

// wettednessPart is the part of the skin: how near it comes to being as wet
// as it can be.
func wettednessPart(x Balance) CautionPart {
	part := CautionPart{By: CautionWettedness}
	w, ok := x.Wettedness()
	if !ok {
		if x.Need > 0 {
			part.Level = Cancel
		}
		return part
	}
	ratio := w / x.WettednessMax
	part.Figure = figure.Figure{Known: true, Value: ratio, Estimate: true, Why: figure.Why{
		Formula: "need/capacity/most",
		Inputs:  []figure.Input{watts("need", x.Need), watts("capacity", x.Capacity), {Symbol: "most", Value: x.WettednessMax}},
		Sources: []string{"climate.estimate.wettedness.untrained", "climate.estimate.wettedness.trained", "climate.estimate.wettedness.acclimatised"},
	}}
	switch {
	case ratio > 1:
		part.Level = Limit
	case ratio >= evidence.WettednessWatch:
		part.Level = Watch
	}
	return part
}

// core is the part of the rectal temperature, extrapolated.
func (c *Caution) core(b Body, s Session, x Balance, basis Basis) (CautionPart, error) {
	in, err := strainOf(b, s)
	if err != nil {
		return CautionPart{}, err
	}
	outside := len(in.Outside()) > 0
	if outside {
		c.Codes = append(c.Codes, CoreExtrapolated)
	}
	d := demandOf(x, s)
	steady := d.flow * x.Area // g/h
	if basis.Rate.Known {
		steady = max(steady, basis.Rate.Value/Onset(s.Minutes)*1000)
	}
	set := strainSetting{heatCapacity: evidence.BodyHeatCapacity, skinMetabolicMax: evidence.SkinMetabolicMax,
		sweatMaxLeast: steady * evidence.SweatLatent / x.Area}
	run := newStrain(in, set)
	c.Strain = run.run(in, nil)
	rectal := float64(c.Strain.Rectal)
	// How far the error of the effort moves it.
	in.Metabolic += quantity.WattsPerSquareMetre(s.Effort.Metabolic.U)
	harder := newStrain(in, set)
	u := math.Abs(float64(harder.run(in, nil).Rectal) - rectal)
	part := CautionPart{By: CautionCore, Figure: withSpread(figure.Figure{Known: true, Value: rectal, Unit: quantity.DegreeCelsius, Estimate: true,
		Why: figure.Why{Formula: "rectal", Inputs: []figure.Input{{Symbol: "rectal", Value: rectal, Unit: quantity.DegreeCelsius}},
			Sources: []string{"climate.strain.heat-capacity", "climate.strain.limit.rectal"}, Budget: []figure.Share{{Source: "effort", Part: 1}}}}, u)}
	part.Level = coreLevel(part.Figure)
	if outside {
		part.Level = min(part.Level, Watch)
	}
	return part.followed(), nil
}

// coreLevel is what a rectal temperature calls for; to cancel where its whole
// range is at 40 °C or above.
func coreLevel(f figure.Figure) Level {
	switch {
	case f.Ranged && f.Range.Low >= evidence.CoreStop:
		return Cancel
	case f.Value >= evidence.CoreStop:
		return Limit
	case f.Value >= evidence.CoreWatch:
		return Watch
	}
	return UsualCare
}

// followed leaves a core temperature to be shown only as far as a body goes:
// the standard has no loss of strength and no collapse, and would heat on.
func (p CautionPart) followed() CautionPart {
	const most = evidence.CoreFollowed
	if p.Figure.Value > most {
		p.Beyond = true
		p.Figure.Known, p.Figure.Ranged, p.Figure.Value, p.Figure.U = false, false, most, 0
		p.Figure.Range, p.Figure.Why.Formula, p.Figure.Why.Inputs = quantity.Range{}, "", nil
		return p
	}
	p.Figure.Range.High = min(p.Figure.Range.High, most)
	return p
}

// strainOf puts a checked session into the terms of ISO 7933.
func strainOf(b Body, s Session) (StrainInput, error) {
	radiant, err := s.Weather.RadiantTemperature()
	if err != nil {
		return StrainInput{}, err
	}
	in := StrainInput{
		Air: s.Weather.Air(), Radiant: radiant,
		Wind:      min(s.Effort.AirPast(s.Weather.Wind), evidence.AirSpeedMax),
		Metabolic: quantity.WattsPerSquareMetre(s.Effort.Metabolic.Value), Work: s.Effort.Work,
		Clothing: s.Clothing, Posture: Standing, Acclimatised: s.State == Acclimatised,
		Body: b, Minutes: int(s.Minutes),
		Walking: &Walking{Speed: quantity.MetresPerSecond(s.Effort.Motion.walking())},
	}
	if s.Effort.Motion != OnFoot {
		in.Posture = Sitting
	}
	return in, nil
}

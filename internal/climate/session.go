package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// HeatState says how well a body is used to heat.
type HeatState string

// The states. Trained is taken where nothing is said.
const (
	Untrained    HeatState = "untrained"
	Trained      HeatState = "trained"
	Acclimatised HeatState = "acclimatised"
)

// wettednessMax is the highest share of the skin that can be wet; source
// Ravanelli et al. 2018.
func (s HeatState) wettednessMax() (float64, error) {
	switch s {
	case Untrained:
		return evidence.WettednessUntrained, nil
	case Trained, "":
		return evidence.WettednessTrained, nil
	case Acclimatised:
		return evidence.WettednessAcclimatised, nil
	}
	return 0, problem(evidence.HeatStateField, evidence.CodeBadChoice, 0)
}

// Session is a session that was done or is planned, as the heat balance needs it:
// weather, work, clothing, all of them known.
type Session struct {
	Weather  Weather
	Effort   Effort
	Clothing Clothing
	State    HeatState
	// Minutes is the elapsed time.
	Minutes quantity.Minutes
}

// refused is the error of a session that cannot be calculated.
func (s Session) refused(l limits) error {
	if s.Effort.Motion == InWater {
		return problem(evidence.MetabolicRate, evidence.CodeInWater, s.Effort.Metabolic.Value)
	}
	if !s.Effort.Metabolic.Known {
		return problem(evidence.MetabolicRate, evidence.CodeMissing, 0)
	}
	values := append(s.Weather.values(),
		fieldValue{evidence.MetabolicRate, s.Effort.Metabolic.Value},
		fieldValue{evidence.MetabolicRate, s.Effort.Metabolic.Value - float64(s.Effort.Work)},
		fieldValue{evidence.OwnSpeed, float64(s.Effort.OwnSpeed)},
		fieldValue{evidence.Insulation, float64(s.Clothing.Insulation)},
		fieldValue{evidence.Duration, float64(s.Minutes)},
	)
	if err := l.refused(values...); err != nil {
		return err
	}
	if u := s.Effort.Metabolic.U; !(u >= 0) || math.IsInf(u, 0) {
		return problem(evidence.MetabolicRate, evidence.CodeNotFinite, u)
	}
	if r := s.Clothing.Reflective; !(r >= 0 && r <= 1) {
		return problem(evidence.Insulation, evidence.CodeOutside, r)
	}
	if _, err := s.Weather.Sun.preset(); err != nil {
		return err
	}
	if _, err := s.Effort.Motion.work(0); err != nil {
		return err
	}
	_, err := s.State.wettednessMax()
	return err
}

// walking is the walking speed for the pumping of clothes, m/s.
func (m Motion) walking() float64 {
	if m == OnFoot {
		return evidence.WalkingMax
	}
	return 0
}

// radiating is the share of the surface that radiates: seated on a bicycle or
// in a boat, else standing.
func (m Motion) radiating() float64 {
	if m == OnFoot {
		return evidence.RadiatingStanding
	}
	return evidence.RadiatingSitting
}

package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Flows are the heat made in the body and the heat that leaves it dry or with
// the breath, W/m² of body.
type Flows struct {
	Metabolic, Work, BreathDry, BreathWet float64
	// Convection and Radiation are negative where the body takes heat up.
	Convection, Radiation float64
}

// Balance is the steady heat balance of a session.
type Balance struct {
	Flows
	// Need is Ereq, Capacity Emax, in W/m².
	Need, Capacity float64
	// Skin is the skin temperature, °C; Vapour the pressure in the air, kPa;
	// Passage what lets vapour through from skin to air, W/(m²·kPa).
	Skin, Vapour, Passage float64
	// Area of the body in m², and the highest wettedness.
	Area, WettednessMax float64
	// AirPast is the air past the body in m/s; what goes in stops at 3 m/s.
	AirPast float64
}

// Calculate balances the heat of a session in its steady state.
//
//	Ereq = M - W - Cres - Eres - C - R       Emax = (psk - pa)/Rt
//
// Coefficients are those of ISO 7933:2004 with the skin temperature of a
// rectal temperature of 38.3 °C. Air past the body counts up to 3 m/s, and the
// metabolic rate in the skin formula up to 450 W/m²; beyond, both are
// extrapolated. Clothing is pumped as by a walk at 0.7 m/s on foot, not at all
// when cycling. Meant for exercise on land; not for water, nor for less than
// some twenty minutes. It returns an [evidence.Problem] for a session that
// cannot be. Source: our proposal, from the parts of ISO 7933.
func Calculate(b Body, s Session) (Balance, error) { return limits(evidence.Limits()).calculate(b, s) }

// calculate is [Calculate] with the limits at hand.
func (l limits) calculate(b Body, s Session) (Balance, error) {
	if err := l.refused(b.values()...); err != nil {
		return Balance{}, err
	}
	if err := s.refused(l); err != nil {
		return Balance{}, err
	}
	radiant, err := s.Weather.RadiantTemperature()
	if err != nil {
		return Balance{}, err
	}
	return calculate(b, s, float64(radiant), s.Effort.Metabolic.Value), nil
}

// calculate is [Calculate] of a checked session, with its radiant temperature (°C)
// and metabolic rate apart so that their errors can be followed.
func calculate(b Body, s Session, radiant, metabolic float64) Balance {
	past := float64(s.Effort.AirPast(s.Weather.Wind))
	speed := min(past, evidence.AirSpeedMax)
	around := surround(s.Weather.Air(), radiant, speed, s.Clothing.emissivity(), s.Effort.Motion.radiating())
	clothes := wear(s.Clothing.Insulation, speed, s.Effort.Motion.walking())
	line := around.skin(s.Clothing.Insulation, min(metabolic, evidence.SkinMetabolicMax))
	skin := line.base + line.slope*evidence.SteadyCore
	h := around.convection(skin)
	surface := around.surface(&clothes, skin, skin, h)
	x := Balance{Flows: Flows{Metabolic: metabolic, Work: float64(s.Effort.Work)}, Skin: skin, Area: b.Area(), AirPast: past}
	if s.Effort.Metabolic.Value > 0 {
		x.Work *= metabolic / s.Effort.Metabolic.Value
	}
	x.WettednessMax, _ = s.State.wettednessMax()
	x.BreathDry, x.BreathWet = around.breath(metabolic)
	x.Convection, x.Radiation = around.dry(&clothes, surface, h)
	x.Need = x.Metabolic - x.Work - x.BreathDry - x.BreathWet - x.Convection - x.Radiation
	x.Vapour, x.Passage = around.vapour, clothes.vapour
	x.Capacity = (saturation(skin) - around.vapour) * clothes.vapour
	return x
}

// Wettedness is the share of the skin that would have to be wet, Ereq/Emax;
// ok is false where nothing can evaporate.
func (x Balance) Wettedness() (w float64, ok bool) {
	if x.Capacity <= 0 {
		return 0, false
	}
	return x.Need / x.Capacity, true
}

// Uncompensable reports whether the heat cannot leave: nothing can evaporate,
// or more of the skin would have to be wet than can be.
func (x Balance) Uncompensable() bool {
	w, ok := x.Wettedness()
	return x.Need > 0 && (!ok || w > x.WettednessMax)
}

// BreathWater is the water that leaves with the breath, L/h; it stands beside
// the sweat rate and is part of the deficit. In air hotter and more humid than
// the breath it is none.
func (x Balance) BreathWater() quantity.LitresPerHour {
	return quantity.LitresPerHour(max(0, x.BreathWet) * x.Area / evidence.SweatLatent / 1000)
}

// Onset is the mean of the sweat rate over so many minutes from the start,
// over that of the steady state.
//
//	f = 1 - (10/T) (1 - exp(-T/10))
//
// 0 to 1, rising; a proposal with the time constant of ISO 7933. Example: 60
// min give 0.834.
func Onset(t quantity.Minutes) float64 {
	if t <= 0 {
		return 0
	}
	x := float64(t) / evidence.OnsetTime
	return 1 - (1-math.Exp(-x))/x
}

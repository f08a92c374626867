package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Posture decides how much of the surface radiates.
type Posture string

// The postures of ISO 7933.
const (
	Standing  Posture = "standing"
	Sitting   Posture = "sitting"
	Crouching Posture = "crouching"
)

// radiating is the share of the surface that exchanges radiation.
func (p Posture) radiating() (float64, bool) {
	switch p {
	case Standing:
		return evidence.RadiatingStanding, true
	case Sitting:
		return evidence.RadiatingSitting, true
	case Crouching:
		return evidence.RadiatingCrouching, true
	}
	return 0, false
}

// Walking is a known walking speed; without it the speed follows from the
// metabolic rate.
type Walking struct {
	Speed quantity.MetresPerSecond
	// Directed is true when the walk has one direction, Degrees from the wind.
	Directed bool
	Degrees  float64
}

// StrainInput is a person at work in the heat.
type StrainInput struct {
	Air             Air
	Radiant         quantity.Celsius
	Wind            quantity.MetresPerSecond
	Metabolic, Work quantity.WattsPerSquareMetre
	Clothing        Clothing
	// Walking is nil when it is not known.
	Walking      *Walking
	Posture      Posture
	Acclimatised bool
	Body         Body
	Minutes      int
	// NoDrink: nothing can be drunk.
	NoDrink bool
}

// StrainResult is the strain at the end, and when limits were reached.
type StrainResult struct {
	Skin, Core, Rectal quantity.Celsius
	// Sweat is the sweat rate in the last minute, W/m².
	Sweat quantity.WattsPerSquareMetre
	// Water is what was lost, breath included.
	Water quantity.Grams
	// RectalLimit, MeanLossLimit and MostLossLimit are the minutes until
	// rectal 38 °C, 7.5 % of body mass lost (the average worker), and 5 %
	// (95 of 100 workers); the duration when not reached.
	RectalLimit, MeanLossLimit, MostLossLimit float64
}

// strainSetting is what an extrapolation, or another edition, changes.
type strainSetting struct {
	heatCapacity     float64 // W·min/(kg·K)
	skinMetabolicMax float64 // W/m², in the skin regression only
	sweatMaxLeast    float64 // W/m², raises the maximum of sweating to this
}

// newStrain works out what stays the same all along, for input that was
// checked.
func newStrain(in StrainInput, set strainSetting) strain {
	radiating, _ := in.Posture.radiating()
	m := float64(in.Metabolic)
	speed, walk := in.airPast()
	area := in.Body.Area()
	s := strain{
		heat:   set.heatCapacity * float64(in.Body.Mass) / area,
		around: surround(in.Air, float64(in.Radiant), speed, in.Clothing.emissivity(), radiating),
		worn:   wear(in.Clothing.Insulation, speed, walk),
		core:   evidence.CoreRise*m + evidence.CoreBase,
		grams:  evidence.SweatWaterScale * area / evidence.SweatWaterDivisor / 60,
	}
	var dry float64
	dry, s.breath = s.around.breath(m)
	s.gain = m - float64(in.Work) - dry - s.breath
	s.skin = s.around.skin(in.Clothing.Insulation, min(m, set.skinMetabolicMax))
	s.sweatMax = min(max((m-evidence.SweatMaxOffset)*area, evidence.SweatMaxLow), evidence.SweatMaxHigh)
	s.wetMax = evidence.StrainWettednessMax
	if in.Acclimatised {
		s.sweatMax *= evidence.SweatMaxAcclimatised
		s.wetMax = evidence.StrainWettednessMaxAcclimatised
	}
	s.sweatMax = max(s.sweatMax, set.sweatMaxLeast)
	s.keep = newKeep()
	return s
}

// airPast is the air speed at the body and the walking speed, m/s.
func (in StrainInput) airPast() (speed, walk float64) {
	wind := float64(in.Wind)
	if in.Walking == nil {
		walk = min(evidence.WalkingMax, evidence.WalkingRise*(float64(in.Metabolic)-evidence.WalkingOffset))
		return wind, max(0, walk)
	}
	walk = float64(in.Walking.Speed)
	if in.Walking.Directed {
		return math.Abs(wind - walk*math.Cos(in.Walking.Degrees*math.Pi/180)), walk
	}
	return max(wind, walk), walk
}

// Outside lists the fields in which the input leaves the range the standard
// was made for; its result is then an extrapolation.
func (in StrainInput) Outside() []evidence.Field {
	var list []evidence.Field
	hold := func(f evidence.Field, x, low, high float64) {
		if x < low || x > high {
			list = append(list, f)
		}
	}
	hold(evidence.AirTemperature, float64(in.Air.Temperature), evidence.StrainAirLow, evidence.StrainAirHigh)
	hold(evidence.VapourPressure, float64(in.Air.Vapour), 0, evidence.StrainVapourHigh)
	hold(evidence.RadiantTemperature, float64(in.Radiant-in.Air.Temperature), 0, evidence.StrainRadiantHigh)
	hold(evidence.Wind, float64(in.Wind), 0, evidence.AirSpeedMax)
	hold(evidence.MetabolicRate, float64(in.Metabolic)*in.Body.Area(), evidence.StrainMetabolicLow, evidence.StrainMetabolicHigh)
	hold(evidence.Insulation, float64(in.Clothing.Insulation), evidence.StrainClothingLow, evidence.StrainClothingHigh)
	return list
}

package climate

import (
	"math"

	"ebbwell/internal/evidence"
)

// Clo is clothing insulation; 1 clo is 0.155 m²K/W.
type Clo float64

// Clothing insulates.
type Clothing struct {
	Insulation Clo
	// Reflective is the emissivity of reflective clothing over part of the
	// body; zero means that none is worn.
	Reflective float64
}

// Vest is vest and shorts, 0.2 clo.
func Vest() Clothing { return Clothing{Insulation: evidence.ClothingVest} }

// Shirt is shirt and shorts, 0.3 clo.
func Shirt() Clothing { return Clothing{Insulation: evidence.ClothingShirt} }

// Tracksuit is a tracksuit, 0.6 clo.
func Tracksuit() Clothing { return Clothing{Insulation: evidence.ClothingTracksuit} }

// emissivity is that of the surface for heat radiation.
func (c Clothing) emissivity() float64 {
	reflective := c.Reflective
	if reflective == 0 {
		reflective = evidence.ReflectiveEmissivity
	}
	return (1-evidence.ReflectiveShare)*evidence.SurfaceEmissivity + evidence.ReflectiveShare*reflective
}

// worn is clothing on a body that moves through air.
type worn struct {
	// area is the surface over that of the body.
	area float64
	// conductance from skin to surface, W/(m²·K); bare: without clothes the
	// surface is the skin.
	conductance float64
	bare        bool
	// vapour lets vapour pass from skin to air, W/(m²·kPa): 1/Rt.
	vapour float64
}

// wear corrects clothing for the air past the body and for walking, both in
// m/s (ISO 7933:2004 after ISO 9920). The air layer's correction turns upward
// beyond 5 m/s: callers outside the standard's use hold air at 3 m/s.
func wear(clothing Clo, air, walking float64) worn {
	clo := float64(clothing)
	capped := min(air, evidence.AirSpeedMax)
	walk := min(walking, evidence.WalkingCorrectionMax)
	area := 1 + evidence.ClothingAreaRise*clo
	clothed := min(1, evidence.ClothedScale*math.Exp(
		(evidence.ClothedWindSquare*capped-evidence.ClothedWind)*capped+(evidence.ClothedWalkSquare*walk-evidence.ClothedWalk)*walk))
	nude := min(1, math.Exp(
		(evidence.NudeWindSquare*air-evidence.NudeWind)*air+(evidence.NudeWalkSquare*walk-evidence.NudeWalk)*walk))
	both := clothed
	if clo <= evidence.ClothedFrom {
		both = ((evidence.ClothedFrom-clo)*nude + clo*clothed) / evidence.ClothedFrom
	}
	total := (evidence.CloInsulation*clo + evidence.AirLayer/area) * both
	permeability := min(evidence.MoistureMax, evidence.ClothingPermeability*
		((evidence.MoistureSquare*both-evidence.MoistureLinear)*both+evidence.MoistureConstant))
	inner := total - nude*evidence.AirLayer/area
	w := worn{area: area, bare: inner <= leastInsulation, vapour: evidence.LewisRelation * permeability / total}
	if !w.bare {
		w.conductance = 1 / inner
	}
	return w
}

// leastInsulation is where clothes count as none, m²K/W.
const leastInsulation = 1e-6

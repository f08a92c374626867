package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// StrainMinute is the state at the end of one minute.
type StrainMinute struct {
	Minute             int
	Skin, Core, Rectal quantity.Celsius
	// Surface is the temperature of the clothing's surface.
	Surface quantity.Celsius
	// Need and Capacity are Ereq and Emax; Sweat is the sweat rate.
	Need, Capacity, Sweat quantity.WattsPerSquareMetre
	// Water lost since the start, breath included.
	Water quantity.Grams
}

// strain is a person at work: what stays the same over the minutes.
type strain struct {
	heat     float64 // W·min/(m²·K), heat capacity
	around   surroundings
	worn     worn
	skin     skinLine
	gain     float64 // W/m², M - W less the breath's heat
	breath   float64 // W/m², heat of the breath's water
	core     float64 // °C, where the metabolic rate takes the core
	sweatMax float64 // W/m²
	wetMax   float64
	grams    float64 // g per W/m² and minute
	keep     keep
}

// keep is how much of the minute before stays in core target, skin and sweat.
type keep struct{ core, skin, sweat float64 }

// newKeep works the shares out from their time constants.
func newKeep() keep {
	return keep{math.Exp(-1 / evidence.CoreDelay), math.Exp(-1 / evidence.SkinDelay), math.Exp(-1 / evidence.SweatDelay)}
}

// run goes through the minutes. The state stands in variables of its own, not
// in a struct, because each minute waits for the one before: kept in
// registers it takes three quarters of the time.
func (s *strain) run(in StrainInput, see func(StrainMinute)) StrainResult {
	target, core, rectal := evidence.StartCore, evidence.StartCore, evidence.StartCore
	skin, surface := evidence.StartSkin, evidence.StartSkin
	saturated, weight := saturation(evidence.StartSkin), evidence.SkinWeightRest
	sweat, water := 0.0, 0.0
	perHeat := 1 / s.heat
	marks := newMarks(float64(in.Body.Mass), s.grams)
	for minute := 1; minute <= in.Minutes; minute++ {
		targetBefore, skinBefore, coreBefore, weightBefore := target, skin, core, weight
		target = target*s.keep.core + s.core*(1-s.keep.core)
		stored := s.heat * (target - targetBefore) * (1 - weightBefore)
		skin = skin*s.keep.skin + (s.skin.base+s.skin.slope*rectal)*(1-s.keep.skin)

		h := s.around.forced
		if apart := math.Abs(skin - s.around.air); apart > s.around.still {
			h = natural(apart)
		}
		step := s.around.surfaceStep(&s.worn, skin, surface, h)
		surface -= step
		if math.Abs(step) > surfaceSolved || s.worn.bare {
			surface = s.around.surface(&s.worn, skin, surface, h)
		}
		convection, radiation := s.around.dry(&s.worn, surface, h)
		if x := exponentAfter(skinBefore, skin); math.Abs(x) < seriesUpTo {
			saturated *= exponential(x)
		} else {
			saturated = saturation(skin)
		}
		capacity := notBelow0((saturated - s.around.vapour) * s.worn.vapour)
		need := notBelow0(s.gain - stored - convection - radiation)

		sweat = sweat*s.keep.sweat + s.required(need, capacity)*(1-s.keep.sweat)
		heat := need - s.evaporated(sweat, capacity) + stored
		right := heat*perHeat + skinBefore*weightBefore/2 + coreBefore*(1-weightBefore/2)
		rise := warmStep(core, skin, right)
		core -= rise
		if math.Abs(rise) > coreSolved {
			core = warm(core, skin, right)
		}
		weight, _ = skinWeight(core)
		rectal += (evidence.RectalCore*core - evidence.RectalBefore*rectal - evidence.RectalConstant) * (1 / evidence.RectalDivisor)
		water += sweat + s.breath

		marks.note(minute, rectal, water)
		if see != nil {
			see(StrainMinute{minute, quantity.Celsius(skin), quantity.Celsius(core), quantity.Celsius(rectal), quantity.Celsius(surface),
				quantity.WattsPerSquareMetre(need), quantity.WattsPerSquareMetre(capacity), quantity.WattsPerSquareMetre(sweat),
				quantity.Grams(water * s.grams)})
		}
	}
	r := StrainResult{Skin: quantity.Celsius(skin), Core: quantity.Celsius(core), Rectal: quantity.Celsius(rectal),
		Sweat: quantity.WattsPerSquareMetre(sweat), Water: quantity.Grams(water * s.grams)}
	marks.fill(&r, in)
	return r
}

// exponential is eˣ for x up to [seriesUpTo], good to 1e-12.
func exponential(x float64) float64 { return 1 + x*(1+x/2*(1+x*(third+x*third/4))) }

// exponentAfter is the logarithm of the saturation pressure at a temperature
// over that at one near by. Where it is small its exponential is taken as a
// series, good to 1e-11: the exponential is what the minutes would spend most
// time on.
func exponentAfter(before, now float64) float64 {
	const a, b = evidence.SaturationSlope, evidence.SaturationOffset
	return a * b * (now - before) / ((now + b) * (before + b))
}

// The series above: its reach, and a third.
const (
	seriesUpTo = 0.01
	third      = 1.0 / 3
)

// required is the sweat rate that would meet the need, W/m²: the need over
// the efficiency of evaporation, 1 - w²/2 for a wettedness w = need/capacity
// up to 1, (2 - w)²/2 up to 1.7, the maximum beyond.
func (s *strain) required(need, capacity float64) float64 {
	switch {
	case need <= 0:
		return 0
	case capacity <= 0 || need >= evidence.WettednessFull*capacity:
		return s.sweatMax
	}
	above, below := 2*capacity*capacity, 2*capacity*capacity-need*need
	if need > evidence.WettednessSplit*capacity {
		rest := evidence.WettednessBeyond*capacity - need
		below = rest * rest
	}
	if rate := need * above / below; rate < s.sweatMax {
		return rate
	}
	return s.sweatMax
}

// evaporated is the heat that goes with the sweat that evaporates, W/m²: of
// the capacity the wettedness √(k² + 2) - k, k being capacity over sweat rate.
func (s *strain) evaporated(sweat, capacity float64) float64 {
	if sweat <= 0 {
		return 0
	}
	wet := 1.0
	if capacity >= evidence.SweatRatioLeast*sweat {
		wet = (math.Sqrt(capacity*capacity+2*sweat*sweat) - capacity) * (1 / sweat)
	}
	if wet > s.wetMax {
		wet = s.wetMax
	}
	return wet * capacity
}

// warm finds the core temperature that the heat leaves; the weight of the skin
// depends on what is sought. Newton's steps; one is mostly enough.
func warm(core, skin, right float64) float64 {
	for range 20 {
		step := warmStep(core, skin, right)
		core -= step
		if math.Abs(step) < coreSolved {
			break
		}
	}
	return core
}

// warmStep is one of Newton's steps towards the core temperature.
func warmStep(x, skin, right float64) float64 {
	weight, bend := skinWeight(x)
	return (x*(1-weight/2) + skin*weight/2 - right) * (1 / (1 - weight/2 + bend*(x-skin)))
}

// skinWeight is the weight of the skin in the mean body temperature at a core
// temperature, and half its fall per kelvin.
func skinWeight(core float64) (weight, bend float64) {
	weight = evidence.SkinWeightRest - evidence.SkinWeightFall*(core-evidence.StartCore)
	switch {
	case weight > evidence.SkinWeightRest:
		return evidence.SkinWeightRest, 0
	case weight < evidence.SkinWeightLeast:
		return evidence.SkinWeightLeast, 0
	}
	return weight, evidence.SkinWeightFall / 2
}

// coreSolved is the last of Newton's steps, K; the error left after it is
// under a tenth of it where the weight meets its bound, under a tenth of its
// square elsewhere.
const coreSolved = 1e-4

// notBelow0 is max(0, x) for a number; it costs less than the built-in, which
// minds what is not a number.
func notBelow0(x float64) float64 {
	if x < 0 {
		return 0
	}
	return x
}

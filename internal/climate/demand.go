package climate

import (
	"math"

	"ebbwell/internal/evidence"
)

// demand is what a session makes a body sweat before any test has a say, how
// weak that is, and where the session stands among others.
type demand struct {
	balance Balance
	// need is Es in W/m², the evaporation needed with its smooth floor.
	need float64
	// wet is Es over the capacity, effective what of it wets the skin.
	wet, effective float64
	// flow is G in g/(m²·h), the steady sweat rate.
	flow float64
	// log is g, the logarithm of the first figure in L/h.
	log float64
	// cool, hot and fast say how far, 0 to 1, the balance is weak: hardly any
	// need, more than can evaporate, air its coefficients were not made for.
	cool, hot, fast float64
	// weak is Q, lowEnd lambda, day the variance of a day to come.
	weak, lowEnd, day float64
	// effortU is the relative error of the metabolic rate, by how it was found.
	effortU float64
	kind    EffortKind
	seated  bool
	at      coordinates
}

// demandOf works out the demand of a session from its heat balance.
//
//	F = 0.30 (M - W)      Es = (Ereq + F + √((Ereq - F)² + 100²))/2
//	Em = (Emax + √(Emax² + 80²))/2      w = Es/Em
//	we = w/(1 + (w/wmax)^8)^(1/8)
//	G0 = Es/(0.674 (1 - we²/2))      G = G0/(1 + (G0/2000)^4)^(1/4)
//	g = ln(G area f/1000)
//
//	qc = 1/(1 + exp((Ereq - F - 90)/70))       qh = 1/(1 + exp(-(w/wmax - 1.1)/0.15))
//	qv = 1/(1 + exp(-(v - 4.5)/0.8))
//	Q = √(2.7 qc + 0.5 qh + 1.5 qv)            lambda = 1.4 qc + 0.6 qv + 0.4 qh
//	day² = 0.09² + (20/Es)² + (0.3 uM)²
//
// Ours, and smooth: nothing in it steps. The floor stands between what was
// measured in the cold (players at 5 °C, Maughan et al. 2005; no difference
// below 20 °C WBGT, Smith et al. 2021) and the plain balance.
func demandOf(x Balance, s Session) demand {
	d := demand{balance: x, effortU: s.Effort.Kind.relativeU(), kind: s.Effort.Kind, seated: s.Effort.Motion != OnFoot}
	floor := evidence.FloorShare * (x.Metabolic - x.Work)
	d.need = (x.Need + floor + math.Hypot(x.Need-floor, evidence.FloorSmooth)) / 2
	d.wet = d.need / ((x.Capacity + math.Hypot(x.Capacity, evidence.CapacitySmooth)) / 2)
	d.effective = soft(d.wet, x.WettednessMax, evidence.WettednessSharpness)
	d.flow = soft(d.need/(evidence.SweatLatent*(1-d.effective*d.effective/2)), evidence.SweatFlowMost, evidence.SweatFlowSharpness)
	d.log = math.Log(d.flow * x.Area * Onset(s.Minutes) / 1000)

	d.cool = rising(-(x.Need - floor - evidence.CoolNeed) / evidence.CoolWidth)
	d.hot = rising((d.wet/x.WettednessMax - evidence.HotWettedness) / evidence.HotWidth)
	d.fast = rising((x.AirPast - evidence.FastAir) / evidence.FastAirWidth)
	d.weak = math.Sqrt(evidence.CoolWeak*d.cool + evidence.HotWeak*d.hot + evidence.FastAirWeak*d.fast)
	d.lowEnd = evidence.CoolLowEnd*d.cool + evidence.FastAirLowEnd*d.fast + evidence.HotLowEnd*d.hot
	d.day = square(evidence.DayShare) + square(evidence.DayFlow/d.need) + square(evidence.DayEffort*d.effortU)
	d.at = d.coordinates(s)
	return d
}

// soft is x while it is small, and most at the most.
func soft(x, most, sharpness float64) float64 {
	return x / math.Pow(1+math.Pow(x/most, sharpness), 1/sharpness)
}

// rising goes from 0 to 1, through a half at 0.
func rising(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

// square of a number.
func square(x float64) float64 { return x * x }

// coordinates is where a session stands among others, in steps of likeness.
type coordinates [8]float64

// The coordinates, in the order they are kept in.
const (
	alongFirst = iota
	alongEffort
	alongAir
	alongSpeed
	alongClothing
	alongState
	alongSeated
	alongMonths
)

// coordinates of a session on the plan's day.
func (d demand) coordinates(s Session) coordinates {
	seated := 0.0
	if d.seated {
		seated = 1
	}
	return coordinates{
		alongFirst:    d.log / evidence.LikeFirst,
		alongEffort:   math.Log(d.balance.Metabolic) / evidence.LikeEffort,
		alongAir:      float64(s.Weather.Temperature) / evidence.LikeAir,
		alongSpeed:    math.Log(max(d.balance.AirPast, evidence.LikeSpeedLeast)) / evidence.LikeSpeed,
		alongClothing: float64(s.Clothing.Insulation) / evidence.LikeClothing,
		alongState:    s.State.rank() / evidence.LikeState,
		alongSeated:   seated / evidence.LikeSeated,
	}
}

// covariance of two sessions of one athlete, of the logarithm of the rate over
// the first figure; sd is that between athletes.
//
//	c(a,b) = (sd² (1 + Qa Qb) + same uMa uMb) exp(-r²/2)
//
// r² is the sum of the squares of the differences of the coordinates; same is 1
// where the effort was found in the same way and both are seated or neither.
func (d *demand) covariance(o *demand, sd float64) float64 {
	distance := 0.0
	for i, x := range d.at {
		distance += square(x - o.at[i])
	}
	shared := sd * sd * (1 + d.weak*o.weak)
	if d.kind == o.kind && d.seated == o.seated {
		shared += d.effortU * o.effortU
	}
	return shared * math.Exp(-distance/2)
}

// relativeU is the standard uncertainty of a metabolic rate as a share, by how
// it was found: 0.07 power, 0.10 speed or the energy used, 0.20 the table of
// activities, 0.35 a rating.
func (k EffortKind) relativeU() float64 {
	switch k {
	case ByPower:
		return evidence.PowerRelativeU
	case BySpeed:
		return evidence.RunningRelativeU
	case ByEnergy:
		return evidence.EnergyRelativeU
	case ByActivity:
		return evidence.MetRelativeU
	}
	return evidence.EffortRelativeU
}

// rank is 0 untrained, 1 trained, 2 acclimatised.
func (s HeatState) rank() float64 {
	switch s {
	case Untrained:
		return 0
	case Acclimatised:
		return 2
	}
	return 1
}

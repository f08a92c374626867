package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// Transfer takes a calibration to another session.
//
//	rate = k SW0 f       (with an earned slope: × (SW0/mean SW0)^(slope-1))
//	s² of ln rate = s²(1 + 1/(n + 0.134)) + (0.10 |ΔEreq|/100)² + effort² + low²
//	95 % range = rate ×/÷ exp(1.96 s)
//
// s is 0.11, or the tests' own error where that is larger; ΔEreq is to the
// nearest test in W/m². effort is the error of the metabolic rate where it does
// not cancel: both errors when it was found in two ways, and for the same way
// that error times |ln| of the ratio. low is what the balance's own error in
// W/m² makes of a need under 150 W/m² ([Balance.lowNeed]). Without a test k is 1
// and the range ×/÷ 1.87. One test at its own condition gives -26/+34 %, 200
// W/m² away ×/÷ 1.63. All are proposals. An estimate always, in L/h. It returns
// an [evidence.Problem] for a body or session that cannot be.
func (c Calibration) Transfer(b Body, plan Session) (figure.Figure, error) {
	x, err := Calculate(b, plan)
	if err != nil {
		return figure.Figure{}, err
	}
	return c.transfer(b, plan, x), nil
}

// transfer is [Calibration.Transfer] with the balance at hand.
func (c Calibration) transfer(b Body, plan Session, x Balance) figure.Figure {
	base := float64(x.Base()) / 1000
	onset := Onset(plan.Minutes)
	f := figure.Figure{Known: true, Value: c.Factor.Value * base * onset, Unit: quantity.LitrePerHour, Estimate: true}
	f.Why = figure.Why{Formula: "k*base*onset", Inputs: []figure.Input{
		{Symbol: "k", Value: c.Factor.Value, U: c.Factor.U},
		{Symbol: "base", Value: base, Unit: quantity.LitrePerHour},
		{Symbol: "onset", Value: onset},
	}}
	if c.Earned {
		logBase, _ := c.means()
		meanBase := math.Exp(logBase) / 1000
		f.Value *= math.Exp((c.Slope - 1) * math.Log(base/meanBase))
		f.Why.Formula += "*exp((slope-1)*ln(base/meanbase))"
		f.Why.Inputs = append(f.Why.Inputs, figure.Input{Symbol: "slope", Value: c.Slope},
			figure.Input{Symbol: "meanbase", Value: meanBase, Unit: quantity.LitrePerHour})
		f.Why.Sources = append(f.Why.Sources, "climate.estimate.slope.prior")
	}
	spread := c.spread(x, plan.Effort)
	spread.low = x.lowNeed(b, plan)
	f.Why.Budget = spread.budget()
	f.Why.Sources = append(f.Why.Sources, "climate.estimate.latent", "climate.estimate.onset", "climate.estimate.spread.distance",
		"day-to-day.rate.cv", "day-to-day.tests-prior", "climate.estimate.core")
	return spread.rangeOf(f)
}

// spread is the variance of the logarithm of a rate by what makes it.
type spread struct{ day, tests, distance, effort, conditions, low float64 }

// spread of a transfer to a session.
func (c Calibration) spread(x Balance, e Effort) spread {
	s := c.noise()
	n := float64(len(c.points))
	v := spread{day: s * s, tests: s * s / (n + evidence.TestsPrior)}
	if n == 0 {
		return v
	}
	nearest := c.points[0]
	for _, p := range c.points[1:] {
		if math.Abs(p.need-x.Need) < math.Abs(nearest.need-x.Need) {
			nearest = p
		}
	}
	away := evidence.DistanceSpread * math.Abs(x.Need-nearest.need) / evidence.DistanceStep
	v.distance = away * away
	v.effort = effortError(e, nearest.effort)
	return v
}

// effortError is the variance that the errors of two metabolic rates leave in
// their ratio.
func effortError(a, b Effort) float64 {
	ma, mb := a.Metabolic, b.Metabolic
	if !(ma.Value > 0) || !(mb.Value > 0) {
		return 0
	}
	ua, ub := ma.U/ma.Value, mb.U/mb.Value
	if a.Kind != b.Kind || a.Motion != b.Motion {
		return ua*ua + ub*ub
	}
	away := ua * math.Log(ma.Value/mb.Value)
	return away * away
}

// lowNeed is the variance that a small need adds. The balance is the small
// rest of large flows, known to some tens of W/m² (effort and sun); as a share
// that grows as the need falls. From 150 W/m² up the calibration carries it;
// below, what is more than there is added. On the floor it is that of the
// need at which the floor begins.
func (x Balance) lowNeed(b Body, s Session) float64 {
	const least = evidence.CalibrationNeedLeast
	if x.Need >= least {
		return 0
	}
	radiant, err := s.Weather.RadiantTemperature()
	if err != nil {
		return 0
	}
	sun := 0.0
	if s.Weather.Radiant == nil && s.Weather.Sun != SunNone {
		sun = evidence.SunRadiantError / evidence.CoverageFactor
	}
	warmer := calculate(b, s, float64(radiant)+sun, x.Metabolic)
	harder := calculate(b, s, float64(radiant), x.Metabolic+s.Effort.Metabolic.U)
	u := math.Hypot(warmer.Need-x.Need, harder.Need-x.Need)
	need := max(x.Need, evidence.SweatFloor*evidence.SweatLatent)
	return u * u * (1/(need*need) - 1/(least*least))
}

// total variance.
func (v spread) total() float64 {
	return v.day + v.tests + v.distance + v.effort + v.conditions + v.low
}

// rangeOf gives a rate its 95 % range: ×/÷ exp(1.96 s). Where a low need adds
// to the spread, its error is one of watts, not of per cent, and may take the
// rate to nothing: the low end, which is the ceiling of drinking, is then
// rate (1 - 1.96 s), at least 0.
func (v spread) rangeOf(f figure.Figure) figure.Figure {
	s := math.Sqrt(v.total())
	f = withFactorRange(f, s)
	if f.Ranged && v.low > 0 {
		f.Range.Low = max(0, min(f.Range.Low, f.Value*(1-evidence.CoverageFactor*s)))
	}
	return f
}

// budget is the share of each part.
func (v spread) budget() []figure.Share {
	total := v.total()
	return shares(
		figure.Share{Source: "estimate.day-to-day", Part: v.day / total},
		figure.Share{Source: "estimate.tests", Part: v.tests / total},
		figure.Share{Source: "estimate.distance", Part: v.distance / total},
		figure.Share{Source: "estimate.effort", Part: v.effort / total},
		figure.Share{Source: "estimate.conditions", Part: v.conditions / total},
		figure.Share{Source: "estimate.low-need", Part: v.low / total},
	)
}

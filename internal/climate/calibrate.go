package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// Test is one of the athlete's field tests.
type Test struct {
	Session Session
	// Rate is the measured sweat rate, respiratory water and gas exchange
	// taken off; U its standard uncertainty.
	Rate, U quantity.LitresPerHour
	// MonthsAgo is how old the test is.
	MonthsAgo float64
}

// refused is the error of measured values that cannot be.
func (t Test) refused(l limits) error {
	return l.refused(
		fieldValue{evidence.SweatRate, float64(t.Rate)},
		fieldValue{evidence.TestUncertainty, float64(t.U)},
		fieldValue{evidence.TestMonths, t.MonthsAgo},
	)
}

// Why a test does not calibrate, or a session is not estimated.
const (
	// RefusedImpossible: a value of the test cannot be.
	RefusedImpossible = "impossible"
	// RefusedInWater: exercise in water is not calculated.
	RefusedInWater = "in-water"
	// RefusedFloor: the balance asks for hardly any sweat.
	RefusedFloor = "on-the-floor"
	// RefusedNeed: less than 150 W/m² had to evaporate.
	RefusedNeed = "need-under-150"
	// RefusedCapacity: nothing could evaporate, the balance says nothing.
	RefusedCapacity = "nothing-evaporates"
	// RefusedFactor: the factor is outside 0.5-2: check the inputs.
	RefusedFactor = "factor-outside"
)

// Refusal says why a test does not calibrate.
type Refusal struct {
	// Test counts from 0 in the tests given.
	Test int
	Code string
	// Value is what was outside: the need in W/m², or the factor.
	Value float64
	// Err holds the problems of an impossible test.
	Err error
}

// Calibration is what an athlete's tests say about their sweating beside the
// heat balance.
type Calibration struct {
	// Used and Refused are the tests; Used counts from 0.
	Used    []int
	Refused []Refusal
	// Factor is k, drawn towards 1.
	Factor figure.Figure
	// Slope of ln sweat rate on ln base; 1 where it is not Earned.
	Slope  float64
	Earned bool

	points []point
}

// point is a test that calibrates.
type point struct {
	logBase, logFactor float64
	need               float64 // W/m²
	relativeU          float64
	effort             Effort
}

// Calibrate finds the athlete's factor over the heat balance.
//
//	k = rate / (SW0 f)      ln k = n/(n + 0.134) × mean of ln k
//
// so that one test counts for 0.88 and many for nearly 1. A test does not
// calibrate on the floor, with a need under 150 W/m², where nothing can
// evaporate, or with a factor outside 0.5-2. With three tests or more over
// 100 W/m² and more, the slope of ln rate on ln SW0 is drawn towards 1:
//
//	(b Sxx/0.11² + 1/0.25²) / (Sxx/0.11² + 1/0.25²), within 0.5 to 1.5
//
// All weights are proposals. It returns an [evidence.Problem] for a body that
// cannot be; a test that cannot be is refused and the others go on.
func Calibrate(b Body, tests []Test) (Calibration, error) {
	if err := refusedAny(b.values()...); err != nil {
		return Calibration{}, err
	}
	return calibrate(calculateTests(evidence.Limits(), b, tests)), nil
}

// calculatedTest is a test with its balance, or why it has none.
type calculatedTest struct {
	Test
	balance Balance
	err     error // of the session
	values  error // of what was measured
}

// calculateTests calculates every test once.
func calculateTests(l limits, b Body, tests []Test) []calculatedTest {
	list := make([]calculatedTest, len(tests))
	for i, t := range tests {
		x, err := l.calculate(b, t.Session)
		list[i] = calculatedTest{t, x, err, t.refused(l)}
	}
	return list
}

// calibrate is [Calibrate] with the balances at hand.
func calibrate(tests []calculatedTest) Calibration {
	c := Calibration{Slope: 1}
	for i, t := range tests {
		p, refusal := t.point()
		if refusal.Code != "" {
			refusal.Test = i
			c.Refused = append(c.Refused, refusal)
			continue
		}
		c.Used = append(c.Used, i)
		c.points = append(c.points, p)
	}
	c.Slope, c.Earned = slope(c.points)
	c.Factor = c.factor()
	return c
}

// point holds a test against the balance, or says why not.
func (t calculatedTest) point() (point, Refusal) {
	x := t.balance
	switch {
	case t.values != nil:
		return point{}, Refusal{Code: RefusedImpossible, Err: t.values}
	case t.Session.Effort.Motion == InWater:
		return point{}, Refusal{Code: RefusedInWater, Err: t.err}
	case t.err != nil:
		return point{}, Refusal{Code: RefusedImpossible, Err: t.err}
	case x.Capacity <= 0:
		return point{}, Refusal{Code: RefusedCapacity, Value: x.Capacity}
	case x.OnFloor():
		return point{}, Refusal{Code: RefusedFloor, Value: x.Need}
	case x.Need < evidence.CalibrationNeedLeast:
		return point{}, Refusal{Code: RefusedNeed, Value: x.Need}
	}
	k := float64(t.Rate) * 1000 / (float64(x.Base()) * Onset(t.Session.Minutes))
	if k < evidence.CalibrationLow || k > evidence.CalibrationHigh {
		return point{}, Refusal{Code: RefusedFactor, Value: k}
	}
	return point{math.Log(float64(x.Base())), math.Log(k), x.Need, float64(t.U / t.Rate), t.Session.Effort}, Refusal{}
}

// slope draws the slope of the points towards 1; earned is false with too few
// of them.
func slope(points []point) (value float64, earned bool) {
	if len(points) < evidence.SlopeTests {
		return 1, false
	}
	low, high := points[0].need, points[0].need
	meanX, meanY := 0.0, 0.0
	for _, p := range points {
		low, high = min(low, p.need), max(high, p.need)
		meanX += p.logBase / float64(len(points))
		meanY += (p.logBase + p.logFactor) / float64(len(points))
	}
	if high-low < evidence.SlopeSpan {
		return 1, false
	}
	sxx, sxy := 0.0, 0.0
	for _, p := range points {
		dx := p.logBase - meanX
		sxx += dx * dx
		sxy += dx * (p.logBase + p.logFactor - meanY)
	}
	// b Sxx is Sxy: the slope of the tests need not be divided out.
	const noise, prior = evidence.DayToDayRateCV * evidence.DayToDayRateCV, evidence.SlopePriorSD * evidence.SlopePriorSD
	drawn := (sxy/noise + 1/prior) / (sxx/noise + 1/prior)
	return min(max(drawn, evidence.SlopeLow), evidence.SlopeHigh), true
}

// weight is how far n tests are believed, 0 to 1.
func weight(n int) float64 { return float64(n) / (float64(n) + evidence.TestsPrior) }

// means are the means of ln base and ln k over the points.
func (c Calibration) means() (logBase, logFactor float64) {
	n := float64(len(c.points))
	if n == 0 {
		return 0, 0
	}
	for _, p := range c.points {
		logBase += p.logBase / n
		logFactor += p.logFactor / n
	}
	return logBase, logFactor
}

// noise is the spread of one test: 0.11 from day to day, or the measurement's
// own where that is larger (root mean square over the tests).
func (c Calibration) noise() float64 {
	sum := 0.0
	for _, p := range c.points {
		sum += p.relativeU * p.relativeU
	}
	return max(evidence.DayToDayRateCV, math.Sqrt(sum/max(1, float64(len(c.points)))))
}

// factor is the figure of k.
func (c Calibration) factor() figure.Figure {
	n := len(c.points)
	_, logFactor := c.means()
	f := figure.Figure{Known: true, Value: math.Exp(weight(n) * logFactor), Estimate: true, Why: figure.Why{
		Formula: "exp(n/(n+prior)*meanlog)",
		Inputs: []figure.Input{
			{Symbol: "n", Value: float64(n)}, {Symbol: "prior", Value: evidence.TestsPrior}, {Symbol: "meanlog", Value: logFactor},
		},
		Budget:  []figure.Share{{Source: "estimate.tests", Part: 1}},
		Sources: []string{"day-to-day.tests-prior", "day-to-day.rate.cv"},
	}}
	return withFactorRange(f, c.noise()/math.Sqrt(float64(n)+evidence.TestsPrior))
}

// withFactorRange gives a figure the 95 % range value ×/÷ exp(1.96 s).
func withFactorRange(f figure.Figure, s float64) figure.Figure {
	reach := math.Exp(evidence.CoverageFactor * s)
	if !(f.Value > 0) || math.IsNaN(reach) || math.IsInf(reach*f.Value, 0) {
		return f
	}
	f.Ranged, f.U = true, f.Value*s
	f.Range = quantity.Range{Low: f.Value / reach, High: f.Value * reach}
	return f
}

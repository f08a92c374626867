package sweat

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// Spread is the standard deviation, in ln units, of a sweat rate on one more
// like day after n tests whose relative uncertainty is given:
//
//	s = max(0.11, u(rate)/rate)
//	SD = s sqrt(1 + 1/(n + 0.134))
//
// The 0.134 stands for "no different from other athletes" as if it were that
// part of a test (this program's proposal), so n may be 0. A relative
// uncertainty that is not a number counts as 0.11.
func Spread(relativeU float64, n int) float64 {
	s := evidence.DayToDayRateCV
	if relativeU > s && finite(relativeU) {
		s = relativeU
	}
	return s * math.Sqrt(1+1/(float64(max(0, n))+evidence.TestsPrior))
}

// PlannedRange is the 95 % range of a sweat rate, L/h, for one more like day:
// rate divided and multiplied by exp(1.96 SD). One test gives -26 to +34 %.
func PlannedRange(rate, relativeU float64, n int) quantity.Range {
	f := math.Exp(evidence.CoverageFactor * Spread(relativeU, n))
	return quantity.Range{Low: min(rate/f, rate*f), High: max(rate/f, rate*f)}
}

// PlannedRate makes the sweat rate to plan on from the measured rates of like
// tests, newest or oldest first: their geometric mean, with a range that holds
// the measurement and the spread from day to day. The spread is the larger of
// the usual one and that of the tests themselves. ok is false when there is no
// test, or one of them is not above zero or has no range yet.
func PlannedRate(rates []figure.Figure) (planned figure.Figure, ok bool) {
	n := len(rates)
	relative, sumLn := 0.0, 0.0
	for _, f := range rates {
		if !f.Known || !f.Ranged || !(f.Value > 0) {
			return figure.Figure{}, false
		}
		relative = max(relative, f.U/f.Value)
		sumLn += math.Log(f.Value)
	}
	if n == 0 {
		return figure.Figure{}, false
	}
	relative = max(relative, lnSpread(rates, sumLn/float64(n)))
	planned = figure.Figure{Known: true, Unit: quantity.LitrePerHour, Ranged: true, Value: math.Exp(sumLn / float64(n))}
	planned.Range = PlannedRange(planned.Value, relative, n)
	if n == 1 { // a shared bottle can leave a wider range than days do
		planned.Range.Low = min(planned.Range.Low, rates[0].Range.Low)
		planned.Range.High = max(planned.Range.High, rates[0].Range.High)
	}
	planned.U = planned.Value * Spread(relative, n)
	planned.Why = plannedWhy(rates, planned)
	return planned, true
}

// lnSpread is the standard deviation of ln rate about its mean; 0 for one test.
func lnSpread(rates []figure.Figure, middle float64) float64 {
	if len(rates) < 2 {
		return 0
	}
	sum := 0.0
	for _, f := range rates {
		d := math.Log(f.Value) - middle
		sum += d * d
	}
	return math.Sqrt(sum / float64(len(rates)-1))
}

// plannedWhy writes the geometric mean down.
func plannedWhy(rates []figure.Figure, planned figure.Figure) figure.Why {
	w := figure.Why{Sources: []string{"day-to-day.rate.cv", "day-to-day.tests-prior"}}
	text, measured := "", 0.0
	for i, f := range rates {
		name := numbered("rate", i, len(rates))
		w.Inputs = append(w.Inputs, figure.Input{Symbol: name, Value: f.Value, Unit: f.Unit, U: f.U})
		if i > 0 {
			text += " + "
		}
		text += "ln(" + name + ")"
		measured += f.U * f.U / (f.Value * f.Value)
	}
	n := float64(len(rates))
	w.Formula = "exp(" + text + ")"
	if len(rates) > 1 {
		w.Formula = "exp((" + text + ") / " + number(n).text + ")"
	}
	part := min(1, measured/(n*n)/math.Pow(planned.U/planned.Value, 2))
	w.Budget = []figure.Share{{Source: SourceDayToDay, Part: 1 - part}, {Source: SourceMeasured, Part: part}}
	if part > 1-part {
		w.Budget[0], w.Budget[1] = w.Budget[1], w.Budget[0]
	}
	w.Notes = []figure.Note{{ID: NoteDayToDay, Args: []float64{evidence.DayToDayRate}}}
	return w
}

// PlannedConcentration is the range of whole-body sodium, mmol/L, to plan on
// from a measured one: the measurement and 10.4 % from day to day (Hayden 2004).
// ok is false while the figure has no range.
func PlannedConcentration(f figure.Figure) (r quantity.Range, ok bool) {
	if !f.Ranged {
		return r, false
	}
	if !f.Known {
		return f.Range, true
	}
	middle := f.Range.High - evidence.CoverageFactor*f.U // the value less the bias of its equation
	reach := evidence.CoverageFactor * math.Hypot(f.U, evidence.LocalSodiumCV*f.Value)
	return quantity.Range{
		Low:  min(f.Range.Low, max(0, middle-reach)),
		High: max(f.Range.High, middle+reach),
	}, true
}

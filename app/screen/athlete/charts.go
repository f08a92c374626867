package athlete

import (
	"math"
	"strings"

	"ebbwell/app/kit/chart"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Ends and steps of the axes of [heatData], °C and L/h.
const (
	heatLow, heatHigh, heatTick = 10.0, 38.0, 5.0
	// heatStep is how far apart the places of the curve are: what lies between them is
	// straight to within a px.
	heatStep = 2.0
	// rateTick, or rateTickHigh where the axis goes past rateHigh
	rateTick, rateTickHigh, rateHigh = 0.5, 1.0, 2.0
	// the same in °F and fl oz/h
	heatTickUS, rateTickUS = 10.0, 20.0
	// ringAway is how far a test's own rate is from its dot where it is drawn too, L/h.
	ringAway = 0.1
)

// heatData are the tests and the range they lead one to expect against the
// temperature of the air, all at the last test's effort, humidity and sun.
func (sp speaker) heatData(dots []consult.HeatDot, curve []consult.CurvePoint, untested []consult.StopPoint) chart.HeatData {
	d := chart.HeatData{
		Summary: sp.Say("overview.heat.none"),
	}
	low, high := heatLow, heatHigh
	for i := len(dots) - 1; i >= 0; i-- {
		dot := dots[i]
		reach := evidence.CoverageFactor * dot.U
		p := chart.HeatPoint{Heat: dot.Temperature, Rate: dot.Rate, Range: chart.Span{Low: max(0, dot.Rate-reach), High: dot.Rate + reach},
			As: dot.Measured, Ringed: math.Abs(dot.Measured-dot.Rate) > ringAway}
		p.Name = sp.shortDate(dot.Test.Test.Session.Date)
		d.Points = append(d.Points, p)
		low, high = min(low, p.Heat), max(high, p.Heat)
	}
	if len(d.Points) == 0 {
		return d
	}
	d.Band = bandOf(curve)
	for _, p := range untested {
		rate := p.Rate.Rate
		air := sp.degrees(record.Num(p.Temperature, quantity.DegreeCelsius))
		d.Estimates = append(d.Estimates, chart.HeatPoint{Heat: p.Temperature, Range: chart.Span{Low: rate.Range.Low, High: rate.Range.High},
			Name: sp.Say("overview.heat.place", sp.shortDate(p.From), air)})
		low, high = min(low, p.Temperature), max(high, p.Temperature)
	}
	d.Heats = sp.heatTicks(low, high)
	d.Summary = sp.heatSummary(d)
	return d
}

// daysData are the tests by their dates as they were measured; the latest is named
// with its air.
func (sp speaker) daysData(f file) chart.HeatData {
	d := chart.HeatData{Summary: sp.Say("overview.days.none")}
	var first, last float64
	for i := len(f.tests) - 1; i >= 0; i-- {
		t := f.tests[i]
		rate := t.Sweat.Fluid.Rate
		if _, ok := t.Test.Session.Date.Time(); !ok || !rate.Known {
			continue
		}
		at := dayNumber(t.Test.Session.Date)
		p := chart.HeatPoint{Heat: at, Rate: rate.Value, Range: chart.Span{Low: rate.Value, High: rate.Value}, Name: sp.dayName(t),
			Short: sp.By.Number(rate.Value, rate.Unit)}
		if rate.Ranged {
			p.Range = chart.Span{Low: rate.Range.Low, High: rate.Range.High}
		}
		if len(d.Points) == 0 {
			first = at
		}
		first, last = min(first, at), max(last, at)
		d.Points = append(d.Points, p)
	}
	if len(d.Points) > 0 {
		d.Heats = sp.monthTicks(first, max(last, dayNumber(f.today())))
		d.Summary = sp.Say("overview.heat.summary", len(d.Points))
	}
	return d
}

// dayName names a test by its rate and air.
func (sp speaker) dayName(f consult.Findings) string {
	rate := sp.By.Number(f.Sweat.Fluid.Rate.Value, f.Sweat.Fluid.Rate.Unit)
	day := sp.shortDate(f.Test.Session.Date)
	if air := f.Test.Air.Temperature; air.Known() {
		return sp.Say("overview.days.point.air", rate, day, sp.degrees(air))
	}
	return sp.Say("overview.days.point", rate, day)
}

// aboveAll is how much of the axis of rates lies above all that is drawn but a band: a
// wide one runs off the picture, so that the tests do not lie flat in it.
const aboveAll = 1.25

// share gives two pictures the same axis of rates, so that a rate stands as high in
// both.
func (sp speaker) share(a, b *chart.HeatData) {
	top := 2 * rateTick
	for _, d := range []*chart.HeatData{a, b} {
		for _, p := range d.Points {
			top = max(top, p.Range.High, p.As)
		}
		for _, b := range d.Band {
			if !b.RangeOnly {
				top = max(top, b.Middle*aboveAll)
			}
		}
		for _, p := range d.Estimates {
			top = max(top, p.Range.High)
		}
	}
	a.Rates = sp.rateTicks(top)
	b.Rates = a.Rates
}

// bandOf is the curve as it is drawn; where only a range may be shown it has no
// middle.
func bandOf(curve []consult.CurvePoint) []chart.HeatBand {
	var band []chart.HeatBand
	for _, p := range curve {
		rate := p.Rate.Rate
		band = append(band, chart.HeatBand{Heat: p.Temperature, Middle: rate.Value, RangeOnly: p.Rate.RangeOnly,
			Range: chart.Span{Low: rate.Range.Low, High: rate.Range.High}})
	}
	return band
}

// heatTicks are the temperatures named on the axis, round in the practice's unit.
func (sp speaker) heatTicks(low, high float64) []chart.Tick {
	step := heatTick
	if sp.By.US {
		step = heatTickUS
	}
	return sp.ticks(low, high, quantity.DegreeCelsius, step, 0)
}

// rateTicks are the sweat rates named on the axis, round in the practice's unit.
func (sp speaker) rateTicks(top float64) []chart.Tick {
	if sp.By.US {
		return sp.ticks(0, top, quantity.LitrePerHour, rateTickUS, 0)
	}
	if top > rateHigh {
		return sp.ticks(0, top, quantity.LitrePerHour, rateTickHigh, 1)
	}
	return sp.ticks(0, top, quantity.LitrePerHour, rateTick, 1)
}

// ticks name an axis from low to high, both in base and both inside, at steps of
// the unit that is shown.
func (sp speaker) ticks(low, high float64, base quantity.Unit, step float64, decimals int) []chart.Tick {
	shown := sp.By.Unit(base)
	from, err := quantity.Convert(low, base, shown)
	if err != nil {
		return nil
	}
	to, err := quantity.Convert(high, base, shown)
	if err != nil {
		return nil
	}
	var list []chart.Tick
	for x := step * math.Floor(from/step); x < to+step; x += step {
		if at, err := quantity.Convert(x, shown, base); err == nil {
			list = append(list, chart.Tick{At: at, Text: sp.Words.Number(x, decimals)})
		}
	}
	return list
}

// heatSummary is the picture in words.
func (sp speaker) heatSummary(d chart.HeatData) string {
	var text strings.Builder
	text.WriteString(sp.Say("overview.heat.summary", len(d.Points)))
	for _, p := range d.Points {
		text.WriteString(" " + sp.Say("overview.heat.point", p.Name, sp.degrees(record.Num(p.Heat, quantity.DegreeCelsius)),
			sp.By.Amount(p.Rate, quantity.LitrePerHour)))
	}
	return text.String()
}

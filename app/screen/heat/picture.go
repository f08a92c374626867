package heat

import (
	"math"

	"ebbwell/app/kit/chart"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// The air temperatures of the picture in °C: at least from PictureLow to
// PictureHigh, a tick each pictureStep, the band at every BandStep.
const (
	PictureLow  = 10.0
	PictureHigh = 38.0
	BandStep    = 2.0
	pictureStep = 5.0
)

// Place is a stop in the picture.
type Place struct {
	Name        string
	Calculation consult.Calculation
}

// Picture is sweat rate against heat: the tests of a calculation as points, what
// they lead one to expect as a band, the stops that are based on an estimate as
// dashed boxes.
func (sp Speaker) Picture(r consult.Calculation, curve []consult.CurvePoint, stops []Place) chart.HeatData {
	d := chart.HeatData{HeatText: sp.Say("heat.axis.air", string(sp.By.Unit(quantity.DegreeCelsius))), RateText: string(sp.By.Unit(quantity.LitrePerHour)), Summary: sp.Say("heat.picture.summary")}
	low, high, most := PictureLow, PictureHigh, 0.0
	see := func(t, rate float64) {
		low, high, most = min(low, t), max(high, t), max(most, rate)
	}
	for i, t := range r.Compared {
		temperature, rate, reach := float64(t.Session.Weather.Temperature), float64(t.Rate), evidence.CoverageFactor*float64(t.U)
		d.Points = append(d.Points, chart.HeatPoint{Heat: temperature, Rate: rate, Name: sp.Day(consult.TestDay(r.Tests[i].Test)),
			Range: chart.Span{Low: rate - reach, High: rate + reach}})
		see(temperature, rate+reach)
	}
	for _, c := range curve {
		r := c.Rate.Rate
		d.Band = append(d.Band, chart.HeatBand{Heat: c.Temperature, Middle: r.Value, Range: chart.Span{Low: r.Range.Low, High: r.Range.High}, RangeOnly: c.Rate.RangeOnly})
		see(c.Temperature, r.Value)
	}
	for _, s := range stops {
		t, rate := s.Calculation.Outing.Air.Temperature, s.Calculation.Climate.Rate
		if t.Known() && rate.Known && rate.Estimate {
			d.Estimates = append(d.Estimates, chart.HeatPoint{Heat: *t.Value, Name: s.Name, Range: chart.Span{Low: rate.Range.Low, High: rate.Range.High}})
			see(*t.Value, rate.Range.High)
		}
	}
	d.Rates = sp.RateTicks(most)
	d.Heats = sp.heatTicks(low, high)
	return d
}

// heatTicks are the temperatures of an axis, both ends in °C and inside, at
// round numbers of the unit shown.
func (sp Speaker) heatTicks(low, high float64) []chart.Tick {
	u, step := sp.By.Unit(quantity.DegreeCelsius), pictureStep
	if sp.By.US {
		step *= 2
	}
	shown := func(c float64) float64 {
		x, err := quantity.Convert(c, quantity.DegreeCelsius, u)
		if err != nil {
			return c // the two units are of one kind
		}
		return x
	}
	var list []chart.Tick
	for x := math.Floor(shown(low)/step) * step; x <= math.Ceil(shown(high)/step)*step; x += step {
		if at, err := quantity.Convert(x, u, quantity.DegreeCelsius); err == nil {
			list = append(list, chart.Tick{At: at, Text: sp.Words.Number(x, 0)})
		}
	}
	return list
}

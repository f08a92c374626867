package athlete

import (
	"math"
	"strconv"
	"strings"

	"ebbwell/app/kit/chart"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Ends and steps of the axes of [heatData], °C and L/h.
const (
	heatLow, heatHigh, heatTick = 10.0, 38.0, 5.0
	heatStep                    = 2.0
	rateTick                    = 0.5
	// the same in °F and fl oz/h
	heatTickUS, rateTickUS = 10.0, 20.0
)

// heatData is the sweat rate of every test against the air it was made in, as it
// is compared with others, and the range the tests lead one to expect at other
// temperatures with the last test's humidity, sun and effort.
func (sp speaker) heatData(r consult.Calculation, curve []consult.CurvePoint) chart.HeatData {
	d := chart.HeatData{
		HeatText: sp.Say("overview.heat.air", string(sp.By.Unit(quantity.DegreeCelsius))),
		RateText: string(sp.By.Unit(quantity.LitrePerHour)),
		Summary:  sp.Say("overview.heat.none"),
	}
	low, high, top := heatLow, heatHigh, 2*rateTick
	for i := len(r.Tests) - 1; i >= 0; i-- {
		air, rate := r.Tests[i].Test.Air.Temperature, float64(r.Compared[i].Rate)
		if !air.Known() {
			continue
		}
		reach := evidence.CoverageFactor * float64(r.Compared[i].U)
		p := chart.HeatPoint{Heat: *air.Value, Rate: rate, Range: chart.Span{Low: max(0, rate-reach), High: rate + reach}}
		p.Name = sp.date(r.Tests[i].Test.Session.Date)
		d.Points = append(d.Points, p)
		low, high, top = min(low, p.Heat), max(high, p.Heat), max(top, p.Range.High)
	}
	if len(d.Points) == 0 {
		return d
	}
	d.Band = bandOf(curve)
	for _, b := range d.Band {
		top = max(top, b.Middle)
	}
	d.Heats = sp.heatTicks(low, high)
	d.Rates = sp.rateTicks(top)
	d.Summary = sp.heatSummary(d)
	return d
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
	text := sp.Say("overview.heat.summary", len(d.Points))
	for _, p := range d.Points {
		text += " " + sp.Say("overview.heat.point", p.Name, sp.degrees(record.Num(p.Heat, quantity.DegreeCelsius)),
			sp.By.Amount(p.Rate, quantity.LitrePerHour))
	}
	return text
}

// stepsData is the deficit at the end of the habit, of every step and of the
// aim, in per cent of body mass or in litres where that is hidden.
func (sp speaker) stepsData(c consult.Case) chart.StepBarsData {
	p := c.Plan
	d := chart.StepBarsData{}
	add := func(o record.Option, name, note string, now bool) {
		x, u := sp.deficit(c, o)
		signed := sp.By.Signed(-x, u)
		figure := strings.TrimSuffix(signed, "\u00a0"+string(sp.By.Unit(u)))
		d.Bars = append(d.Bars, chart.StepBar{Value: x, Figure: figure, Name: name, Note: note, Now: now})
		d.Summary += name + " " + signed + ". "
	}
	if habit, ok := consult.OptionOf(p, record.OptionHabit); ok {
		add(habit, sp.Say("overview.steps.habit"), "", false)
	}
	for i, s := range p.Steps {
		if o, ok := consult.OptionByID(p, s.OptionID); ok {
			add(o, sp.Say("overview.steps.step", strconv.Itoa(i+1)), sp.stepNote(s), s.State == record.StepNow)
		}
	}
	if len(p.Steps) == 0 {
		if o, ok := consult.InForce(p); ok && o.Kind != record.OptionAim {
			add(o, lower(o.Name), sp.Say("overview.steps.agreed"), true)
		}
	}
	if aim, ok := consult.OptionOf(p, record.OptionAim); ok {
		add(aim, sp.Say("overview.steps.aim"), sp.untilNote(p), false)
	}
	if !sp.By.Hidden {
		d.Limit = c.Limit()
		d.LimitText = sp.Say("overview.steps.limit", sp.percent(d.Limit))
	}
	return d
}

// deficit is the deficit at the end of an option over the expected session.
func (sp speaker) deficit(c consult.Case, o record.Option) (x float64, u quantity.Unit) {
	q := c.Planner.Evaluate(plan.Expected, c.Carried(o))
	if sp.By.Hidden {
		return q.DeficitL.Value, quantity.Litre
	}
	return q.Deficit.Value, quantity.PerCent
}

// stepNote says where a step stands: now, done, or from when.
func (sp speaker) stepNote(s record.Step) string {
	switch {
	case s.State == record.StepNow:
		return sp.Say("overview.steps.now")
	case s.State == record.StepDone || s.State == record.StepLeft:
		return sp.Say("overview.steps." + string(s.State))
	case s.From != "":
		return sp.date(s.From)
	}
	return ""
}

func (sp speaker) untilNote(p record.Plan) string {
	if p.Agreement.Until == "" {
		return ""
	}
	return sp.date(p.Agreement.Until)
}

package heat

import (
	"slices"
	"strings"
	"time"

	"ebbwell/app/kit/chart"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Answer is the sweat rate to expect, in words.
type Answer struct {
	// Figure answers the question; Beside says how sure and whether it is an
	// estimate. Figure is empty where nothing can be said.
	Figure, Beside string
	// Rests says what it is based on and what goes with that; Short the same for
	// the athlete's page.
	Rests, Short string
	// Advice says what to do so that the next plan is based on more; There is the
	// part of it that is done at the place.
	Advice, There string
}

// Days gives the dates of days of getting used to heat, empty where they are
// not known; within is false when they lie outside the stay.
type Days func(from, until int) (dates string, within bool)

// Answer words the rate of a calculation: the middle first where it is tested,
// else and above the tested heat the range.
func (sp Speaker) Answer(r consult.Calculation, days Days) Answer {
	a := Answer{Rests: sp.rests(r), Short: sp.short(r), Advice: sp.advice(r.Climate.Advice, days), There: sp.advice(there(r.Climate.Advice), days)}
	rate := r.Climate.Rate
	switch {
	case !rate.Known:
		a.Beside = sp.Say("basis.none")
	case r.Climate.RangeOnly:
		a.Figure, a.Beside = sp.Rates(rate.Range), sp.Say("heat.estimate")
	case !rate.Estimate:
		a.Figure, a.Beside = sp.Rate(rate.Value), sp.Say("heat.tested", sp.Rates(rate.Range))
	default:
		a.Figure, a.Beside = sp.Rates(rate.Range), sp.Say("heat.estimate.middle", sp.middle(rate.Value))
	}
	return a
}

// rests says what a rate is based on, and the codes that stand beside it.
func (sp Speaker) rests(r consult.Calculation) string {
	if !r.Climate.Rate.Known {
		return sp.codes(r.Climate.Codes, r.Climate.Start)
	}
	first := sp.first(r)
	if r.AssumedAir {
		first += " " + sp.Say("heat.basis.air")
	}
	if from := r.Climate.From; len(from) > 0 && r.Climate.Breath.Known && r.Tests[from[0]].Sweat.Fluid.Bias == 0 {
		first += " " + sp.Say("heat.basis.breath", sp.Rate(r.Climate.Breath.Value))
	}
	return strings.TrimSpace(first + " " + sp.codes(r.Climate.Codes, r.Climate.Start))
}

// first names what a rate is based on, with its grade.
func (sp Speaker) first(r consult.Calculation) string {
	if len(r.Climate.From) == 0 {
		return sp.tests(r)
	}
	return sp.Say("basis."+r.Climate.Grade.Code(), sp.tests(r))
}

// tests names the tests a rate is based on, or that there are none.
func (sp Speaker) tests(r consult.Calculation) string {
	from := r.Climate.From
	switch {
	case len(from) == 0 && !r.Climate.Rate.Known:
		return sp.Say("basis.none")
	case len(from) == 0:
		return sp.Say("basis.start")
	case len(from) == 1:
		return sp.Say("heat.basis.one", sp.Day(consult.TestDay(r.Tests[from[0]].Test)))
	}
	return sp.Say("heat.basis.many", len(from), sp.Day(consult.TestDay(r.Tests[from[0]].Test)))
}

// short is what a rate is based on for the athlete, and the limit that follows.
func (sp Speaker) short(r consult.Calculation) string {
	text := sp.Based(r)
	if slices.Contains(r.Climate.Codes, climate.CeilingIsLowEnd) {
		text += " " + sp.codes([]string{climate.CeilingIsLowEnd}, r.Climate.Start)
	}
	return strings.TrimSpace(text)
}

// Based is what a rate is based on, with what makes it doubtful.
func (sp Speaker) Based(r consult.Calculation) string {
	return strings.TrimSpace(sp.first(r) + " " + sp.doubts(r))
}

// Resting is [Speaker.Based] where the grade stands beside it.
func (sp Speaker) Resting(r consult.Calculation) string {
	return strings.TrimSpace(sp.tests(r) + " " + sp.doubts(r))
}

// doubts are what makes a rate doubtful.
func (sp Speaker) doubts(r consult.Calculation) string {
	var codes []string
	for _, code := range r.Climate.Codes {
		switch code {
		case climate.PlanInWater, climate.MeasuredInWater, climate.NoEstimate, climate.OwnTestOnly, climate.PlanNothingLeaves, climate.PlanUncompensable, climate.LimitUnsure:
			codes = append(codes, code)
		}
	}
	return sp.codes(codes, r.Climate.Start)
}

// there is the advice that is followed at the place itself.
func there(list []climate.Advice) []climate.Advice {
	var out []climate.Advice
	for _, a := range list {
		switch a.Code {
		case climate.AdviseWeighFirst, climate.AdviseRetestFirst, climate.AdviseRetestSecond:
			out = append(out, a)
		}
	}
	return out
}

// codes words the codes of a basis, each once; what is said elsewhere is left
// out. start is the one the basis began at.
func (sp Speaker) codes(list []string, start climate.Start) string {
	var out []string
	for _, code := range list {
		if code == climate.TestFirst || code == climate.RangeAlone {
			continue // said by what it is based on, by the advice, and beside the figure
		}
		var text string
		switch code {
		case climate.PracticeStart:
			text = sp.Say("basis.practice-start", start.Athletes)
		case climate.AirExtrapolated:
			text = sp.Say("basis.code.air-extrapolated", sp.By.Rounded(evidence.AirSpeedMax, quantity.MetrePerSecond, 0))
		default:
			text = sp.Say("basis.code." + code)
		}
		if !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	return strings.Join(out, " ")
}

// advice words what to do, with its days; what is due after the stay is left
// out.
func (sp Speaker) advice(list []climate.Advice, days Days) string {
	var out []string
	for _, a := range list {
		switch a.Code {
		case climate.AdviseRetestFirst, climate.AdviseRetestSecond:
			when, within := days(a.FromDay, a.UntilDay)
			if !within {
				continue
			}
			text := sp.Say(a.Code, sp.Words.Number(float64(a.FromDay), 0), sp.Words.Number(float64(a.UntilDay), 0))
			if when != "" {
				text = sp.Say("heat.advice.when", strings.TrimSuffix(text, "."), when)
			}
			out = append(out, text)
		default:
			out = append(out, sp.Say(a.Code))
		}
	}
	return strings.Join(out, " ")
}

// NoDays gives no dates: the days there are not known.
func NoDays(int, int) (string, bool) { return "", true }

// DaysOf gives the dates of the days of getting used to heat at a stop that
// begins on its first day, or on the day of getting used that was entered.
func (sp Speaker) DaysOf(s record.Stop) Days {
	start, ok := s.From.Time()
	end, ends := s.Until.Time()
	first := int(max(1, s.HeatDay.Or(1)))
	if !ok {
		return NoDays
	}
	return func(from, until int) (string, bool) {
		on := func(day int) time.Time { return start.AddDate(0, 0, day-first) }
		if until < first || ends && on(from).After(end) {
			return "", false
		}
		a, b := on(max(from, first)), on(until)
		if ends && b.After(end) {
			b = end
		}
		return sp.Span(a, b), true
	}
}

// Span is the days from one to another: "11–17 July".
func (sp Speaker) Span(a, b time.Time) string { return sp.span(a, b, sp.Day) }

// ShortSpan is [Speaker.Span] with short months and no year: "11–17 Jul".
func (sp Speaker) ShortSpan(a, b time.Time) string { return sp.span(a, b, sp.Words.ShortDay) }

func (sp Speaker) span(a, b time.Time, day func(time.Time) string) string {
	switch {
	case a.Equal(b):
		return day(a)
	case a.Month() == b.Month() && a.Year() == b.Year():
		return sp.Say("heat.span.days", sp.Words.Number(float64(a.Day()), 0), day(b))
	}
	return sp.Say("heat.span", day(a), day(b))
}

// Strip is the rate on a level line, with the tests as points.
func (sp Speaker) Strip(r consult.Calculation) chart.StripData {
	rate := r.Climate.Rate
	d := chart.StripData{Summary: sp.stripSummary(r)}
	most := 0.0
	for i, t := range r.Compared {
		d.Points = append(d.Points, chart.StripPoint{At: float64(t.Rate), Name: sp.Day(consult.TestDay(r.Tests[i].Test))})
		most = max(most, float64(t.Rate))
	}
	if rate.Known {
		d.Ranged, d.Estimate, d.RangeOnly = true, rate.Estimate, r.Climate.RangeOnly
		d.Range, d.Middle = chart.Span{Low: rate.Range.Low, High: rate.Range.High}, rate.Value
		most = max(most, rate.Range.High)
	}
	d.Ticks = sp.RateTicks(most)
	return d
}

// stripSummary is the strip in words.
func (sp Speaker) stripSummary(r consult.Calculation) string {
	a := sp.Answer(r, NoDays)
	return strings.TrimSpace(a.Figure + " " + a.Beside)
}

// RateTicks are the ticks of a scale of rates from nothing to a value in L/h,
// at round numbers of the unit shown.
func (sp Speaker) RateTicks(most float64) []chart.Tick {
	step, decimals := 0.5, 1
	if most > manyLitres {
		step = 1
	}
	if sp.By.US {
		step, decimals = 40*step, 0
	}
	return sp.ticks(most, step, decimals, mostTicks)
}

// RateScale is [Speaker.RateTicks] with at most so many ticks: they stand further
// apart where the value asks for more.
func (sp Speaker) RateScale(most float64, count int) []chart.Tick {
	step, decimals := 0.5, 1
	if sp.By.US {
		step, decimals = 20, 0
	}
	for {
		list := sp.ticks(most, step, decimals, count)
		if list[len(list)-1].At >= most || step > farthestApart {
			return list
		}
		step *= 2
		decimals = 0
	}
}

// farthestApart is past the step of any rate there is, in the unit shown.
const farthestApart = 1000.0

// ticks are so many ticks at most, up to the first that is not below a value in L/h.
func (sp Speaker) ticks(most, step float64, decimals, count int) []chart.Tick {
	u := sp.By.Unit(quantity.LitrePerHour)
	var list []chart.Tick
	for i := range count {
		shown := float64(i) * step
		at, err := quantity.Convert(shown, u, quantity.LitrePerHour)
		if err != nil {
			at = shown // the two units are of one kind
		}
		list = append(list, chart.Tick{At: at, Text: sp.Words.Number(shown, decimals)})
		if i > 0 && at >= most {
			break
		}
	}
	return list
}

// A scale beyond manyLitres an hour has ticks further apart, and never more
// than mostTicks.
const (
	manyLitres = 4.0
	mostTicks  = 12
)

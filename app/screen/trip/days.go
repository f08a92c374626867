package trip

import (
	"strconv"
	"time"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// daysPart is the heat days through the trip up to the stop in sight.
type daysPart struct {
	v     *View
	title *look.Label
	strip *chart.DayStrip
	body  *look.Sheet
}

func newDaysPart(v *View) *daysPart {
	p := &daysPart{v: v, title: look.NewLabel("", look.Strong, look.Ink), strip: chart.NewDayStrip()}
	p.body = look.NewSheet(look.VBox(8, p.title, p.strip))
	return p
}

// show shows the days up to the end of a stop; nothing where it is not hot, its days
// are open, nobody travels, or everybody is acclimatised already.
func (p *daysPart) show(sp heat.Speaker, crew []*member, i int) {
	cells, first, summary := p.v.heatDays(sp, crew, i)
	look.ShowIf(p.body, len(cells) > 0)
	if len(cells) == 0 {
		return
	}
	p.title.SetText(sp.Words.Say("trip.heatdays", sp.Day(first)))
	p.strip.Set(cells, summary)
	refresh(p.body)
}

// mostBefore is how many days before a stop are drawn; none where text is so many
// times its usual size.
const (
	mostBefore           = 8
	thisStopOnly float32 = 1.4
)

// heatDays are the days of the trip up to the end of a stop, counted as heat days,
// and the day they are counted from.
func (v *View) heatDays(sp heat.Speaker, crew []*member, i int) (cells []chart.DayCell, first time.Time, summary string) {
	t := v.now()
	there := v.newest(crew, t.Stops[i])
	from, ok := t.Stops[i].From.Time()
	if !ok || len(there.Days) == 0 || there.Days[0].Code == climate.Adapted && there.Days[0].Day <= evidence.AcclimatisationDays || consult.HeatOf(there.Air.Air) != plan.Hot {
		return nil, first, ""
	}
	before, start := v.daysBefore(sp, i)
	if first = from; len(before) > 0 {
		first = start
	}
	if look.Scaled(1) < thisStopOnly {
		cells = append(cells, before[max(0, len(before)-mostBefore):]...)
	}
	for n, d := range there.Days {
		c := dayCell(sp, from.AddDate(0, 0, n), d, d.Retest && (n == 0 || !there.Days[n-1].Retest))
		if n == 0 {
			c.Beside = sp.Words.Say("trip.heatday.first")
		}
		cells = append(cells, c)
	}
	lines, test := heatLines(sp, there)
	for _, line := range append(lines, test) {
		summary += line + " "
	}
	return cells, first, summary
}

// newest is the stop as it is for somebody who is not acclimatised, where there is
// such a traveller: for the others the days change nothing.
func (v *View) newest(crew []*member, s record.Stop) (out consult.StopPlan) {
	for n, m := range crew {
		there, _ := v.plan(m, s)
		if n == 0 || len(there.Days) > 0 && there.Days[0].Code != climate.Adapted {
			out = there
		}
	}
	return out
}

// dayCell is a day of the stop in sight; test says that a span of days begins in which
// to test again, which is said once.
func dayCell(sp heat.Speaker, on time.Time, d climate.HeatDay, test bool) chart.DayCell {
	c := chart.DayCell{Top: sp.Words.Say("trip.heatday.date", sp.Words.Say("field.weekday."+strconv.Itoa(int(on.Weekday()))), sp.Words.Number(float64(on.Day()), 0)),
		Big: sp.Words.Number(float64(d.Day), 0), Share: float64(d.Day) / evidence.AcclimatisationDays}
	switch {
	case test:
		c.Framed, c.Note = true, sp.Words.Say("trip.heatday.retest")
	case d.Code == climate.FirstDays:
		c.Note = sp.Words.Say("trip.heatday.easier")
	}
	return c
}

// daysBefore are the hot days at the stops before one, and the days of travel
// between.
func (v *View) daysBefore(sp heat.Speaker, i int) (cells []chart.DayCell, start time.Time) {
	t := v.now()
	var last time.Time
	for _, s := range t.Stops[:i+1] {
		from, ok1 := s.From.Time()
		until, ok2 := s.Until.Time()
		air, err := consult.AirOf(s, v.places)
		if !ok1 || !ok2 || until.Before(from) || err != nil || consult.HeatOf(air.Air) != plan.Hot {
			continue
		}
		for day := last.AddDate(0, 0, 1); len(cells) > 0 && day.Before(from); day = day.AddDate(0, 0, 1) {
			cells = append(cells, chart.DayCell{Top: sp.Words.Number(float64(day.Day()), 0), Big: "–", Slim: true})
		}
		if s.ID == t.Stops[i].ID {
			break
		}
		if len(cells) == 0 {
			start = from
		}
		count := int(max(1, consult.WithHeatDay(t, s, v.places).HeatDay.Or(1)))
		for day := from; !day.After(until) && len(cells) < mostDays; day = day.AddDate(0, 0, 1) {
			cells = append(cells, chart.DayCell{Top: sp.Words.Number(float64(day.Day()), 0), Big: sp.Words.Number(float64(count), 0), Slim: true,
				Share: float64(count) / evidence.AcclimatisationDays})
			count++
		}
		last = until
	}
	return cells, start
}

// mostDays is how many days before a stop are looked at.
const mostDays = 120

// heatLines are the days of a stop in the heat in words, those that are alike in one
// line, and when to test.
func heatLines(sp heat.Speaker, there consult.StopPlan) (lines []string, test string) {
	if len(there.Days) == 0 || consult.HeatOf(there.Air.Air) != plan.Hot {
		return nil, ""
	}
	var retest []string
	for _, run := range runs(there.Days, func(d climate.HeatDay) string { return d.Code }) {
		lines = append(lines, runLine(sp, there.Stop, run))
	}
	for _, run := range runs(there.Days, func(d climate.HeatDay) string {
		switch {
		case !d.Retest:
			return ""
		case d.First:
			return "first"
		}
		return "second"
	}) {
		if run[0].Retest {
			retest = append(retest, runDays(sp, there.Stop, run))
		}
	}
	if len(retest) > 0 {
		test = sp.Words.Say("trip.heatday.test", sp.Words.List(retest))
	}
	return lines, test
}

// runs parts days into runs that are alike.
func runs(days []climate.HeatDay, like func(climate.HeatDay) string) [][]climate.HeatDay {
	var list [][]climate.HeatDay
	for i, d := range days {
		if i > 0 && like(days[i-1]) == like(d) {
			list[len(list)-1] = append(list[len(list)-1], d)
			continue
		}
		list = append(list, []climate.HeatDay{d})
	}
	return list
}

// runDays are the days of a run, by count and by date.
func runDays(sp heat.Speaker, s record.Stop, run []climate.HeatDay) string {
	from, until, when := ends(sp, s, run)
	if from == until {
		return sp.Words.Say("trip.heatday.one", from, when)
	}
	return sp.Words.Say("trip.heatday.run", from, until, when)
}

// runLine says what the days of a run are: "Day 3 to 5 (4–6 Jun): sweat rate rises".
func runLine(sp heat.Speaker, s record.Stop, run []climate.HeatDay) string {
	from, until, when := ends(sp, s, run)
	if from == until {
		return sp.Words.Say("trip.heatday.line", from, when, sp.Words.Say(run[0].Code))
	}
	return sp.Words.Say("trip.heatday.lines", from, until, when, sp.Words.Say(run[0].Code))
}

// ends are the first and the last day of a run, and their dates.
func ends(sp heat.Speaker, s record.Stop, run []climate.HeatDay) (from, until, when string) {
	first, last := run[0].Day, run[len(run)-1].Day
	when, _ = sp.DaysOf(s)(first, last)
	return sp.Words.Number(float64(first), 0), sp.Words.Number(float64(last), 0), when
}

package chart

import (
	"math"

	"fyne.io/fyne/v2"
)

// match is the deficit over a match with five chances to drink.
func match() DeficitData {
	d := DeficitData{
		Minutes: 92, Limit: -2, LimitText: "limit, 2 %",
		Ticks:   []Tick{{0, "0"}, {-1, "−1 %"}, {-2, "−2 %"}, {-3, "−3 %"}},
		PlanEnd: EndLabel{"−2.1 %", "this plan"}, HabitEnd: EndLabel{"−2.5 %", "habit"},
		Comma: ", ", Dot: " · ",
		Summary: "Deficit at the end −2.1 %, habit −2.5 %, limit 2 %",
	}
	chances := []DrinkChance{
		{12.5, 2.5, "warm-up", "120 mL"}, {35, 2.5, "break 1", "160 mL"}, {51.5, 2.5, "half-time", "280 mL"},
		{74, 2.5, "break 2", "160 mL"}, {86.5, 2.5, "bench", "80 mL"},
	}
	d.Chances = chances
	plan, habit, last := 0.0, 0.0, 0.0
	add := func(minute float64) {
		d.Plan = append(d.Plan, Point{minute, plan})
		d.Habit = append(d.Habit, Point{minute, habit})
		wide := 0.011 * minute
		d.Range = append(d.Range, Span{plan - wide*1.1, plan + wide*0.9})
	}
	add(0)
	for i, ch := range append(chances, DrinkChance{Minute: 93}) {
		start := ch.Minute - 1.2
		plan -= (start - last) * 0.0355
		habit -= (start - last) * 0.0355
		add(start)
		if i < len(chances) {
			plan += []float64{0.12, 0.17, 0.36, 0.19, 0.04}[i]
			habit += []float64{0.06, 0.1, 0.22, 0.13, 0}[i]
			last = ch.Minute + 1.2
			add(last)
		}
	}
	return d
}

func deficitCases() []shown {
	long := match()
	long.LimitText = "limit set with the athlete on the fourteenth of May, 2 %"
	long.PlanEnd.Name, long.HabitEnd.Name = "with food and the second bottle", "what was done before"
	for i := range long.Chances {
		long.Chances[i].Name = "break in the middle of the quarter"
	}
	one := match()
	one.Plan, one.Habit, one.Range, one.Chances = one.Plan[:1], nil, one.Range[:1], nil
	one.Times = []Tick{{0, "0 min"}, {45, "45 min"}, {90, "90 min"}}
	extreme := match()
	extreme.Plan = append([]Point{}, extreme.Plan...)
	for i := range extreme.Plan {
		extreme.Plan[i].Change *= 4
	}
	extreme.Range = nil
	extreme.Plan[3].Change = math.NaN()
	extreme.PlanEnd.Figure = "−12.3 %"
	extreme.Plan[5].Change = math.Inf(-1)
	many := match()
	many.Chances = nil
	for i := range 14 {
		many.Chances = append(many.Chances, DrinkChance{4 + 6.3*float64(i), 1.5, "change of ends", "60 mL"})
	}
	many.Times = one.Times
	gain := match()
	gain.Plan, gain.Range = []Point{{0, 0}, {92, 1.2}}, []Span{{0, 0}, {0.6, 1.9}}
	gain.PlanEnd.Figure = "+1.2 %"
	return []shown{
		{"typical", 660, 240, func() fyne.Widget { return deficit(match()) }},
		{"narrow", 420, 200, func() fyne.Widget { return deficit(match()) }},
		{"long names", 520, 220, func() fyne.Widget { return deficit(long) }},
		{"one point", 420, 200, func() fyne.Widget { return deficit(one) }},
		{"extreme", 420, 220, func() fyne.Widget { return deficit(extreme) }},
		{"many chances", 660, 220, func() fyne.Widget { return deficit(many) }},
		{"more chances than room", 420, 220, func() fyne.Widget { return deficit(many) }},
		{"gain", 420, 220, func() fyne.Widget { return deficit(gain) }},
		{"empty", 420, 180, func() fyne.Widget {
			return deficit(DeficitData{Minutes: 90, Ticks: match().Ticks, Summary: "No plan yet"})
		}},
	}
}

func deficit(d DeficitData) *DeficitChart {
	c := NewDeficitChart()
	c.Set(d)
	return c
}

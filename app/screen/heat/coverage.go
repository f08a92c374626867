package heat

import (
	"cmp"
	"math"
	"slices"

	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Row is one test beside the session that is planned.
type Row struct {
	Test record.ID
	// Day, Air, Effort and Sun say how the test was; Holds how far it holds
	// here, and by what not.
	Day, Air, Effort, Sun, Holds string
	// Used: the sweat rate is based on it.
	Used bool
}

// Rows lists the tests of a calculation, the newest first, those that cannot be
// compared last.
func (sp Speaker) Rows(r consult.Calculation) []Row {
	var list []Row
	for _, i := range byDay(r.Tests) {
		row := sp.row(r.Tests[i])
		row.Holds, row.Used = sp.holds(r.Climate.Coverage[i]), slices.Contains(r.Climate.From, i)
		list = append(list, row)
	}
	for _, i := range byDay(r.Left) {
		row := sp.row(r.Left[i])
		row.Holds = sp.left(r.Left[i])
		list = append(list, row)
	}
	return list
}

// byDay are the places of tests, the newest first.
func byDay(tests []consult.Findings) []int {
	order := make([]int, len(tests))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(tests[b].Test.Session.Date, tests[a].Test.Session.Date)
	})
	return order
}

// row is a test by itself.
func (sp Speaker) row(f consult.Findings) Row {
	s := f.Test.Session
	day := sp.Day(consult.TestDay(f.Test))
	if s.Place != "" {
		day = sp.Say("heat.test.day", day, s.Place)
	}
	return Row{Test: f.Test.ID, Day: day, Air: sp.Air(f.Test.Air), Effort: sp.Effort(s), Sun: sp.Sun(f.Test.Air.Sun)}
}

// left says why a test could not be compared.
func (sp Speaker) left(f consult.Findings) string {
	if _, err := consult.WeatherOf(f.Test.Air); err != nil {
		return sp.Say("heat.left.air")
	}
	if !f.Sweat.Fluid.Rate.Ranged {
		return sp.Say("heat.left.rate")
	}
	return sp.Say("heat.left.effort")
}

// mostReasons is how many differences a line names.
const mostReasons = 3

// holds says how far a test holds, how much it counts, and what sets it apart.
func (sp Speaker) holds(c climate.Coverage) string {
	if c.Err != nil {
		return sp.Say("heat.left.effort")
	}
	grade, reasons := sp.Say("grade."+c.Grade.Code()), sp.reasons(c)
	text := sp.Say("grade.counts", grade, sp.Words.Number(100*c.Weight, 0))
	switch {
	case sp.By.Hidden:
		text = grade
	case quantity.Round(c.Weight, 2) <= 0:
		text = sp.Say("grade.hardly", grade)
	}
	if len(reasons) > 0 {
		text = sp.Say("grade.why", text, sp.Words.Commas(reasons))
	}
	if c.Odd {
		text += sp.Say("grade.odd")
	}
	return text
}

// reasons are what sets a test apart, the weightiest first.
func (sp Speaker) reasons(c climate.Coverage) []string {
	var list []string
	for _, d := range c.Reasons() {
		if len(list) < mostReasons {
			list = append(list, sp.reason(d))
		}
	}
	return list
}

// apartFrom says what sets a test apart from the session, or that it is alike.
func (sp Speaker) apartFrom(c climate.Coverage) string {
	if c.Err != nil {
		return sp.Say("heat.left.effort")
	}
	reasons := sp.reasons(c)
	if len(reasons) == 0 {
		return sp.Say("apart.alike")
	}
	return sp.Words.Commas(reasons)
}

// reason says one difference: "5 °C hotter".
func (sp Speaker) reason(d climate.Difference) string {
	way := ".more"
	if d.Size < 0 {
		way = ".less"
	}
	key := "apart." + d.By + way
	switch d.By {
	case climate.ByAir:
		return sp.Say(key, sp.By.Degrees(math.Abs(d.Size)))
	case climate.ByEffort:
		if sp.By.Hidden {
			return sp.Say(key + ".hidden")
		}
		return sp.Say(key, sp.Words.Number(math.Abs(d.Size), 0))
	case climate.ByMonths, climate.ByDuration:
		return sp.Say(key, sp.Words.Number(math.Abs(d.Size), 0))
	case climate.BySun, climate.ByClothing:
		if quantity.Round(d.Size, 2) == 0 {
			return sp.Say("apart." + d.By + ".other")
		}
	}
	return sp.Say(key)
}

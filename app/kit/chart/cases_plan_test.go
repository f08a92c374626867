package chart

import (
	"math"
	"testing"

	"fyne.io/fyne/v2"
)

func stepColumnsData() StepColumnsData {
	col := func(name, note string, parts []Part, figure, second, third, change, changeNote, secondChange string) StepColumn {
		return StepColumn{
			Name: name, Note: note, Parts: parts, Figure: figure, FigureNote: "deficit at the end", Second: second, SecondNote: "carbohydrate",
			Third: third, Change: change, ChangeNote: changeNote, SecondChange: secondChange,
		}
	}
	d := StepColumnsData{
		Columns: []StepColumn{
			col("Habit", "14 May", drinks(0.3, 0.25, 0), "−2.5 %", "9 g/h", "0.55 L", "", "", ""),
			col("Step 1, agreed", "from 18 May", drinks(0.45, 0.35, 0.09), "−2.1 %", "25 g/h", "0.80 L", "+250 mL", "and ½ fig bar", "+16 g/h"),
			col("Step 2", "from 9 June", drinks(0.5, 0.5, 0.09), "−1.8 %", "31 g/h", "1.00 L", "+200 mL", "in a match", "+6 g/h"),
			col("Aim", "from 23 June", drinks(0.55, 0.55, 0.09), "−1.6 %", "32 g/h", "1.10 L", "+100 mL", "in a match", "+1 g/h"),
		},
		Max: 1.2, Summary: "From 0.55 L to 1.10 L in three steps",
	}
	d.Columns[1].Now = true
	return d
}

func stepColumns(d StepColumnsData) fyne.Widget {
	c := NewStepColumns()
	c.Set(d)
	return c
}

func stepColumnsCases() []shown {
	one := stepColumnsData()
	one.Columns = one.Columns[:1]
	long := stepColumnsData()
	long.Columns = long.Columns[:2]
	long.Columns[1].Name, long.Columns[1].ChangeNote = "First step, with food, agreed on the eighteenth of May", "and half a fig-and-almond bar"
	extreme := stepColumnsData()
	extreme.Columns = extreme.Columns[:2]
	extreme.Columns[0].Parts = drinks(12, math.NaN(), -3)
	return []shown{
		{"typical", 1290, 270, func() fyne.Widget { return stepColumns(stepColumnsData()) }},
		{"one column", 240, 210, func() fyne.Widget { return stepColumns(one) }},
		{"small", 860, 214, func() fyne.Widget { return stepColumns(stepColumnsData()) }},
		{"empty", 240, 60, func() fyne.Widget { return stepColumns(StepColumnsData{Summary: "No steps yet"}) }},
		{"long names", 460, 214, func() fyne.Widget { return stepColumns(long) }},
		{"extreme", 460, 214, func() fyne.Widget { return stepColumns(extreme) }},
	}
}

func breakData() BreakData {
	return BreakData{
		Minutes: 95,
		Spells:  []Spell{{0, 12, "warm-up"}, {20, 35, "quarter 1"}, {37, 52, "quarter 2"}, {58, 73, "quarter 3"}, {75, 90, "quarter 4"}},
		Stops: []BreakStop{
			{12, drinks(75, 45, 0), "120 mL", "3 mouthfuls", "end of warm-up", "", "", false},
			{35, drinks(100, 60, 0), "160 mL", "4 mouthfuls", "after quarter 1", "", "", false},
			{53, drinks(150, 130, 24), "280 mL", "7 mouthfuls", "half-time", "", "", false},
			{73, drinks(75, 85, 0), "160 mL", "4 mouthfuls", "after quarter 3", "", "", false},
			{88, drinks(50, 30, 0), "80 mL", "2 mouthfuls", "on the bench", "only if substituted", "", true},
		},
		Ticks: []Tick{{0, "0 min"}, {15, "15 min"}, {30, "30 min"}, {45, "45 min"}, {60, "60 min"}, {75, "75 min"}, {90, "90 min"}},
		Max:   300, Summary: "Five chances, 800 mL",
	}
}

func breaks(d BreakData) fyne.Widget {
	c := NewBreakTimeline()
	c.Set(d)
	return c
}

func breakCases() []shown {
	one := breakData()
	one.Stops, one.Spells = one.Stops[2:3], []Spell{{0, 95, "long run"}}
	long := breakData()
	for i := range long.Stops {
		long.Stops[i].Name = "at the end of the quarter before the captains meet"
	}
	many := breakData()
	many.Stops, many.Spells = nil, nil
	for i := range 22 {
		many.Stops = append(many.Stops, BreakStop{4 + 4*float64(i), drinks(40, 20, 0), "60 mL", "2 mouthfuls", "change of ends", "", "", i > 17})
	}
	extreme := breakData()
	extreme.Stops[1].Parts = drinks(4000, math.NaN(), 0)
	extreme.Stops[3].Minute = 500
	return []shown{
		{"typical", 1300, 240, func() fyne.Widget { return breaks(breakData()) }},
		{"one stop", 480, 214, func() fyne.Widget { return breaks(one) }},
		{"small", 720, 214, func() fyne.Widget { return breaks(breakData()) }},
		{"empty", 480, 60, func() fyne.Widget { return breaks(BreakData{Summary: "No chances yet"}) }},
		{"long names", 720, 214, func() fyne.Widget { return breaks(long) }},
		{"extreme", 600, 214, func() fyne.Widget { return breaks(extreme) }},
		{"many", 720, 214, func() fyne.Widget { return breaks(many) }},
	}
}

func stripData() StripData {
	return StripData{
		Points: []StripPoint{{0.84, "22 Feb"}, {1.11, "9 Oct"}, {1.36, "14 May"}},
		Range:  Span{1.2, 2.0}, Middle: 1.56, Ranged: true, Estimate: true,
		Ticks:   []Tick{{0.5, "0.5"}, {1, "1.0"}, {1.5, "1.5"}, {2, "2.0"}},
		Summary: "1.2 to 2.0 L/h, an estimate, middle 1.56",
	}
}

func strip(d StripData) fyne.Widget {
	c := NewRangeStrip()
	c.Set(d)
	return c
}

func stripCases() []shown {
	one := stripData()
	one.Points, one.Ranged = one.Points[:1], false
	long := stripData()
	for i := range long.Points {
		long.Points[i].Name = "test of the second league match"
	}
	long.Points[0], long.Points[2] = long.Points[2], long.Points[0]
	extreme := stripData()
	extreme.Range, extreme.Middle, extreme.Estimate = Span{0.1, 9}, 3, false
	return []shown{
		{"typical", 660, 76, func() fyne.Widget { return strip(stripData()) }},
		{"small", 280, 72, func() fyne.Widget { return strip(stripData()) }},
		{"long names", 660, 72, func() fyne.Widget { return strip(long) }},
		{"one point", 280, 72, func() fyne.Widget { return strip(one) }},
		{"extreme", 400, 72, func() fyne.Widget { return strip(extreme) }},
		{"empty", 280, 40, func() fyne.Widget { return strip(StripData{Summary: "No test yet"}) }},
	}
}

func budgetData() BudgetData {
	return BudgetData{
		Shares:  []BudgetShare{{"patch to whole body", 0.94, "94 %"}, {"patch laboratory", 0.03, "3 %"}, {"weighing", 0.02, "2 %"}, {"time", 0.01, "1 %"}},
		Summary: "The patch equation gives 94 % of the range",
	}
}

func budget(d BudgetData) fyne.Widget {
	c := NewBudgetBars()
	c.Set(d)
	return c
}

func budgetCases() []shown {
	long := budgetData()
	long.Shares[0].Name = "from the patch on the forearm to the whole body"
	extreme := BudgetData{Shares: []BudgetShare{{"one", 7, "700 %"}, {"two", math.NaN(), "?"}, {"three", -1, "−100 %"}}}
	return []shown{
		{"typical", 370, 112, func() fyne.Widget { return budget(budgetData()) }},
		{"small", 230, 112, func() fyne.Widget { return budget(budgetData()) }},
		{"long names", 230, 112, func() fyne.Widget { return budget(long) }},
		{"extreme", 230, 84, func() fyne.Widget { return budget(extreme) }},
		{"one share", 230, 28, func() fyne.Widget { return budget(BudgetData{Shares: budgetData().Shares[:1]}) }},
		{"empty", 230, 28, func() fyne.Widget { return budget(BudgetData{Summary: "No range yet"}) }},
	}
}

func TestPictures(t *testing.T) {
	for name, cases := range all() {
		t.Run(name, func(t *testing.T) { pictures(t, name, cases) })
	}
}

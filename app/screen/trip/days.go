package trip

import (
	"strings"

	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// daysPart is what the days of a stop in the heat are good for.
type daysPart struct {
	lines *look.Paragraph
	test  *look.Paragraph
	body  *look.Sheet
}

func newDaysPart(v *View) *daysPart {
	say := v.desk.Words.Say
	p := &daysPart{lines: look.NewParagraph("", look.Note, look.Ink), test: look.NewParagraph("", look.NoteStrong, look.Ink)}
	p.body = look.NewPanel(say("trip.heatdays"), nil, p.lines, p.test, look.NewParagraph(say("trip.heatdays.note"), look.Note, look.Ink2))
	return p
}

// show shows the days; nothing where it is not hot or the days are open.
func (p *daysPart) show(sp heat.Speaker, there consult.StopPlan) {
	lines, test := heatLines(sp, there)
	look.ShowIf(p.body, len(lines) > 0)
	p.lines.SetText(strings.Join(lines, "\n"))
	setText(p.test, test)
	refresh(p.body)
}

// heatLines are the days of a stop in the heat, those that are alike in one
// line, and when to test.
func heatLines(sp heat.Speaker, there consult.StopPlan) (lines []string, test string) {
	if len(there.Days) == 0 || consult.HeatOf(there.Air.Air) != plan.Hot {
		return nil, ""
	}
	var retest []string
	for _, run := range runs(there.Days, func(d climate.HeatDay) string { return d.Code }) {
		lines = append(lines, capital(sp.Words.Say("trip.heatday.line", runDays(sp, there.Stop, run), sp.Words.Say(run[0].Code))))
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
	from, until := run[0].Day, run[len(run)-1].Day
	when, _ := sp.DaysOf(s)(from, until)
	if from == until {
		return sp.Words.Say("trip.heatday.one", sp.Words.Number(float64(from), 0), when)
	}
	return sp.Words.Say("trip.heatday.run", sp.Words.Number(float64(from), 0), sp.Words.Number(float64(until), 0), when)
}

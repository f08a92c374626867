package athlete

import (
	"context"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/copying"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/letter"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// askLetter shows how things stand as text: the last test, and the plan the athlete
// takes along.
func (v *Overview) askLetter() {
	a := v.file.athlete
	letter.Ask(v.desk, fyne.CurrentApp().Driver().CanvasForObject(v.body), letter.Source{
		Name: "overview.letter", File: v.sp.Say("letter.file.overview", a.Name), Athlete: a.ID, Kind: record.KindAthlete, Record: a.ID,
		Of: func(ctx context.Context, d *desk.Desk) (letter.Letter, error) {
			var last *consult.Findings
			if f, ok := v.file.last(); ok {
				found, err := d.Findings(ctx, f.Test, a)
				if err != nil {
					return letter.Letter{}, err
				}
				last = &found
			}
			in, err := letter.InputOf(ctx, d, a, last)
			return letter.Of(in), err
		},
	})
}

// rates are the figures of the two pictures of sweat rates: each test with its day, its
// air, and its rate as measured.
func (v *Overview) rates() copying.Table {
	sp := v.sp
	t := copying.Table{
		Name:   sp.Say("overview.heat", string(sp.By.Unit(quantity.LitrePerHour))),
		Titles: []string{sp.Say("testsheet.field.session.date"), sp.Say("testsheet.air.temperature"), sp.Say("findings.figure.sweat-rate"), sp.Say("findings.range.hidden")},
	}
	for i := len(v.file.tests) - 1; i >= 0; i-- {
		f := v.file.tests[i]
		rate := f.Sweat.Fluid.Rate
		if !rate.Known {
			continue
		}
		air := ""
		if f.Test.Air.Temperature.Known() {
			air = sp.degrees(f.Test.Air.Temperature)
		}
		t.Rows = append(t.Rows, []string{string(f.Test.Session.Date), air, sp.By.Found(rate), sp.By.Range(rate)})
	}
	return t
}

// trailTable is what has happened as a table.
func (v *Overview) trailTable(lines []line) copying.Table {
	t := copying.Table{Name: v.sp.Say("overview.trail")}
	for i, e := range v.file.trail() {
		t.Rows = append(t.Rows, []string{string(e.day), lines[i].title, lines[i].note})
	}
	return t
}

package trip

import (
	"strings"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/consult"
)

// picturePart is sweat rate against heat, with the stops of the trip.
type picturePart struct {
	v     *View
	chart *chart.HeatScatter
	note  *look.Paragraph
	body  *look.Sheet
}

func newPicturePart(v *View) *picturePart {
	p := &picturePart{v: v, chart: chart.NewHeatScatter(), note: look.NewParagraph("", look.Note, look.Ink2)}
	p.body = look.NewPanel(v.desk.Words.Say("trip.picture"), nil, look.MinSized(0, 260, p.chart), p.note)
	return p
}

// show shows the traveller's tests, what they lead one to expect in the air of
// the stop in sight, and every stop that was worked out.
func (p *picturePart) show(sp heat.Speaker, m *member, there consult.StopPlan) {
	look.ShowIf(p.body, len(there.Calculation.Compared) > 0)
	if len(there.Calculation.Compared) == 0 {
		return // without a test there is nothing to draw
	}
	var stops []heat.Place
	var held []string
	for i, s := range p.v.now().Stops {
		one := there
		if s.ID != there.Stop.ID {
			var err error
			if one, err = p.v.plan(m, s); err != nil {
				continue
			}
		}
		r := one.Calculation
		switch {
		case !r.Climate.Rate.Ranged:
		case r.Climate.Rate.Estimate:
			stops = append(stops, heat.Place{Name: stopPlace(sp, s, i), Calculation: r})
		default:
			held = append(held, stopPlace(sp, s, i))
		}
	}
	curve := there.Calculation.HeatCurve(m.athlete, heat.PictureLow, heat.PictureHigh, heat.BandStep, p.v.desk.Calculate())
	p.chart.Set(sp.Picture(there.Calculation, curve, stops))
	note := []string{sp.Words.Say("trip.picture.note")}
	if len(held) > 0 {
		note = append(note, sp.Words.Say("trip.picture.held", sp.Words.List(held)))
	}
	p.note.SetText(strings.Join(note, " "))
	refresh(p.body)
}

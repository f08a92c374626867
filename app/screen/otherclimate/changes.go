package otherclimate

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// changes is the difference another climate makes to the plan.
type changes struct {
	p     *panel
	lines []*changeLine
	note  *look.Paragraph
	rows  *fyne.Container
	box   *fyne.Container
}

// changeLine is one figure: as it is, and as it would be.
type changeLine struct {
	name       *look.Label
	now, there *look.Label
	box        fyne.CanvasObject
}

// changeRow is what a line says.
type changeRow struct {
	name, now, there string
	// strong: past the limit there.
	strong bool
}

func changeTracks() []look.Track {
	return []look.Track{look.Share(46), look.Share(27), look.Share(27)}
}

func newChanges(p *panel) *changes {
	say := p.desk.Words.Say
	head := look.Columns(10, changeTracks(), look.NewLabel("", look.Note, look.Ink2), look.NewLabel(say("otherclimate.now"), look.Note, look.Ink2).Right(),
		look.NewLabel(say("otherclimate.there"), look.Note, look.Ink2).Right())
	c := &changes{p: p, note: look.NewParagraph("", look.Body, look.Ink), rows: look.VBox(0, look.Pad(0, 8, 6, 8, head), look.NewRule())}
	c.box = look.VBox(10, c.rows, c.note)
	return c
}

// show shows the differences.
func (c *changes) show(out answer) {
	rows := c.rowsOf(out)
	for len(c.lines) < len(rows) {
		c.add()
	}
	for i, l := range c.lines {
		look.ShowIf(l.box, i < len(rows))
		if i >= len(rows) {
			continue
		}
		l.name.SetText(rows[i].name)
		l.now.SetText(rows[i].now)
		l.there.SetText(rows[i].there)
		l.there.SetStyle(look.Body)
		if rows[i].strong {
			l.there.SetStyle(look.Strong)
		}
	}
	show(c.note, c.says(out))
}

// add makes a further line.
func (c *changes) add() {
	right := func() *look.Label { return look.NewLabel("", look.Body, look.Ink).Right().Shorten() }
	l := &changeLine{name: look.NewLabel("", look.Body, look.Ink).Shorten(), now: right(), there: right()}
	l.box = look.VBox(0, look.Pad(5, 8, 5, 8, look.Columns(10, changeTracks(), l.name, l.now, l.there)), look.NewRule())
	c.lines = append(c.lines, l)
	c.rows.Add(l.box)
}

// rowsOf are the figures of the plan as it is and on the new basis: the rate,
// what is drunk at most, the deficit at the end.
func (c *changes) rowsOf(out answer) []changeRow {
	sp := c.p.sp
	say := sp.Words.Say
	rows := []changeRow{{name: say("otherclimate.rate"), now: say("heat.none"), there: sp.Rates(out.basis.Rate.Range)}}
	if out.now.Planned {
		rows[0].now = sp.Rates(out.now.Case.Basis.Rate.Range)
	}
	if !out.there.Planned {
		return rows
	}
	ceiling := func(t consult.Taken) string { return sp.By.Amount(t.At.Ceiling.FluidL, quantity.Litre) }
	drunk := func(t consult.Taken, mix plan.Mix) string {
		return sp.By.Amount(t.Case.Planner.Evaluate(plan.Expected, mix).Fluid.DrunkL, quantity.Litre)
	}
	deficit := func(t consult.Taken) string {
		if sp.By.Hidden {
			return say("otherclimate.range", sp.By.Signed(-t.At.DeficitL.Low, quantity.Litre), sp.By.Signed(-t.At.DeficitL.High, quantity.Litre))
		}
		return say("otherclimate.range.percent", sp.Words.Signed(-t.At.Deficit.Low, 1), sp.Words.Signed(-t.At.Deficit.High, 1))
	}
	lines := []changeRow{
		{name: say("otherclimate.ceiling"), there: ceiling(out.there)},
		{name: say("otherclimate.drunk"), there: drunk(out.there, out.there.Mix), strong: out.there.Cut},
		{name: say("otherclimate.deficit"), there: deficit(out.there), strong: out.there.At.Deficit.High > out.there.Case.Limit()},
	}
	for i := range lines {
		lines[i].now = say("heat.none")
	}
	if out.now.Planned {
		lines[0].now, lines[1].now, lines[2].now = ceiling(out.now), drunk(out.now, out.now.Home), deficit(out.now)
	}
	return append(rows, lines...)
}

// says sums the difference up.
func (c *changes) says(out answer) string {
	say, sp := c.p.sp.Words.Say, c.p.sp
	switch _, outruns := out.there.HighEnd(); {
	case !out.there.Planned && out.there.Trouble != nil:
		return say("otherclimate.noplan")
	case !out.there.Planned:
		return ""
	case out.there.Cut:
		return say("otherclimate.cut", sp.By.Amount(out.there.At.Fluid.DrunkL, quantity.Litre))
	case outruns:
		return say("caution.outruns")
	case c.p.in.same(consult.PlanBasisOf(out.basis, "")):
		return say("otherclimate.same")
	}
	return say("otherclimate.fits")
}

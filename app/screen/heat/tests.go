package heat

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/picture"
	"ebbwell/internal/consult"
)

// Tests shows which of the athlete's tests holds for a session, and the sweat
// rate to expect.
type Tests struct {
	sp      Speaker
	now     consult.Calculation
	table   *testRows
	none    *look.Paragraph
	figure  *look.Label
	beside  *look.Paragraph
	why     *field.Link
	strip   *chart.RangeStrip
	picture *field.Link
	rests   *look.Paragraph
	advice  *look.Paragraph
	known   fyne.CanvasObject
	body    *fyne.Container
}

// NewTests makes the part; name is how its controls begin ("climate").
func NewTests(d *desk.Desk, name string, sp Speaker, whose picture.Whose) *Tests {
	say := d.Words.Say
	p := &Tests{sp: sp, none: look.NewParagraph("", look.Body, look.Ink2), figure: look.NewLabel("", look.Key, look.Ink),
		beside: look.NewParagraph("", look.Body, look.Ink), strip: chart.NewRangeStrip(),
		rests: look.NewParagraph("", look.Body, look.Ink), advice: look.NewParagraph("", look.Body, look.Ink)}
	p.table = newTestRows(say)
	p.why = field.NewLink(d.Host, name+".why", say("heat.why"), func() {
		if c := canvasOf(p.body); c != nil {
			ShowWhy(d.Host, c, p.sp, p.now)
		}
	})
	rate := look.Columns(12, []look.Track{look.Fit(), look.Share(1), look.Fit()}, p.figure, p.beside, p.why)
	p.picture = picture.Link(d, name+".picture", say("picture.heat"), whose, func() fyne.CanvasObject { return p.strip })
	p.known = look.VBox(4, rate, p.strip, look.HBox(0, p.picture))
	p.body = look.VBox(14, p.table.box, p.none, p.known, p.rests, p.advice)
	return p
}

// Body is the part.
func (p *Tests) Body() fyne.CanvasObject { return p.body }

// Show shows a calculation; days gives dates for days of getting used to heat.
func (p *Tests) Show(r consult.Calculation, days Days) {
	p.now = r
	p.rows(r)
	a := p.sp.Answer(r, days)
	p.figure.SetText(a.Figure)
	look.ShowIf(p.figure, a.Figure != "")
	p.beside.SetText(a.Beside)
	look.ShowIf(p.why, a.Figure != "")
	look.ShowIf(p.strip, a.Figure != "")
	look.ShowIf(p.picture, a.Figure != "")
	p.strip.Set(p.sp.Strip(r))
	look.ShowIf(p.known, true)
	setText(p.rests, a.Rests)
	setText(p.advice, a.Advice)
	p.body.Refresh()
}

// rows fills the table.
func (p *Tests) rows(r consult.Calculation) {
	rows := p.sp.Rows(r)
	p.table.show(rows)
	look.ShowIf(p.table.box, len(rows) > 0)
	setText(p.none, "")
	if len(rows) == 0 {
		setText(p.none, p.sp.Say("heat.tests.none"))
	}
}

// setText sets a paragraph and hides it while it is empty.
func setText(p *look.Paragraph, text string) {
	p.SetText(text)
	look.ShowIf(p, text != "")
}

// canvasOf is the canvas an object stands on.
func canvasOf(o fyne.CanvasObject) fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(o) }

package trip

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// planPart is the plan taken along to a stop, at the low end, the middle and
// the high end of the loss there.
type planPart struct {
	v       *View
	title   *look.Label
	from    *look.Label
	table   *ends
	caution *look.Caution
	lines   *look.Paragraph
	none    *look.Paragraph
	open    *field.Button
	agreed  *look.Paragraph
	body    *look.Sheet
	now     *member
}

func newPlanPart(v *View) *planPart {
	p := &planPart{v: v, title: look.NewLabel("", look.Strong, look.Ink).Shorten(), from: look.NewLabel("", look.Note, look.Ink2), table: newEnds(),
		caution: look.NewCaution("", "", nil), lines: look.NewParagraph("", look.Body, look.Ink), none: look.NewParagraph("", look.Body, look.Ink),
		agreed: look.NewParagraph("", look.Note, look.Ink2)}
	p.open = field.NewButton(v.desk.Host, "trip.stop.planner", v.desk.Words.Say("trip.planner"), field.Outline, func() {
		if p.now != nil {
			v.desk.Go(desk.Place{Screen: desk.Plan, Athlete: p.now.athlete.ID})
		}
	})
	head := look.HBox(12, look.Grow(p.title), p.from)
	p.body = look.NewSheet(look.VBox(12, head, p.table.box, p.caution, p.lines, p.none, look.HBox(0, p.open), p.agreed))
	return p
}

// show shows the plan at a stop.
func (p *planPart) show(sp heat.Speaker, m *member, there consult.StopPlan) {
	p.now = m
	look.ShowIf(p.body, true)
	say := sp.Words.Say
	p.title.SetText(say("trip.plan"))
	p.from.SetText("")
	look.ShowIf(p.table.box, there.Planned)
	look.ShowIf(p.open, !there.Planned)
	setText(p.none, p.lacking(sp, m, there))
	setText(p.agreed, p.agreement(sp, m, there))
	defer refresh(p.body)
	if !there.Planned {
		p.caution.SetText("", "")
		setText(p.lines, "")
		return
	}
	p.title.SetText(say("trip.plan.session", sessionName(sp, there.Case.Plan, m.athlete), minutes(sp, there.At.Minutes)))
	p.from.SetText(fromPlan(sp, m))
	p.table.show(endRows(sp, there))
	p.caution.SetText(planCaution(sp, there))
	setText(p.lines, strings.Join(p.sentences(sp, m, there), " "))
}

// lacking says why there is no plan here.
func (p *planPart) lacking(sp heat.Speaker, m *member, there consult.StopPlan) string {
	switch {
	case there.Planned:
		return ""
	case there.Trouble != nil:
		return sp.Words.Say("trip.plan.trouble")
	case m.along == nil:
		return sp.Words.Say("trip.plan.none", m.athlete.Name)
	}
	return sp.Words.Say("trip.plan.norate")
}

// fromPlan names the plan that is taken along.
func fromPlan(sp heat.Speaker, m *member) string {
	if m.along == nil || m.along.Agreement.AgreedAt == nil {
		return ""
	}
	return sp.Words.Say("trip.plan.from", sp.Day(*m.along.Agreement.AgreedAt))
}

// agreement says what was agreed for this stop already.
func (p *planPart) agreement(sp heat.Speaker, m *member, there consult.StopPlan) string {
	agreed := consult.AgreedFor(there.Stop.ID, m.plans)
	if agreed == nil || agreed.Agreement.AgreedAt == nil {
		return ""
	}
	key := "trip.agreed"
	if agreed.Basis.Kind == record.BasisEstimate {
		key = "trip.agreed.estimate"
	}
	text := sp.Words.Say(key, sp.Day(*agreed.Agreement.AgreedAt))
	if review, ok := agreed.Agreement.Review.Time(); ok {
		text += " " + sp.Words.Say("trip.agreed.review", sp.Day(review))
	}
	return text
}

// sentences are what goes with the plan: that it was cut down, and what to do
// on a hotter or a cooler day.
func (p *planPart) sentences(sp heat.Speaker, m *member, there consult.StopPlan) []string {
	return append(cutSentences(sp, there), p.v.otherDays(sp, m, there)...)
}

// cutSentences say that and why the plan was cut down.
func cutSentences(sp heat.Speaker, there consult.StopPlan) []string {
	if !there.Cut {
		return []string{sp.Words.Say("trip.plan.as-agreed")}
	}
	home := there.Case.Planner.Evaluate(expected, there.Home)
	return []string{sp.Words.Say("trip.plan.cut", sp.By.Amount(home.Fluid.DrunkL, "L"), sp.By.Amount(there.At.Fluid.DrunkL, "L"))}
}

// otherDays say what to do on a cooler and on a hotter day.
func (v *View) otherDays(sp heat.Speaker, m *member, there consult.StopPlan) []string {
	today, d := v.desk.Now(), v.desk.Calculate()
	var list []string
	if cool, ok := there.OnAnotherDay(-evidence.PlanAirReach, m.athlete, m.tests, today, d); ok && cool.At.Fluid.DrunkL < there.At.Fluid.DrunkL {
		list = append(list, sp.Words.Say("trip.cooler", sp.Degrees(cool.Air.Temperature.Or(0)), sp.By.Amount(cool.At.Fluid.DrunkL, "L")))
	} else if ok {
		list = append(list, sp.Words.Say("trip.cooler.same", sp.Degrees(cool.Air.Temperature.Or(0))))
	}
	if hot, ok := there.OnAnotherDay(evidence.HotDayAdds, m.athlete, m.tests, today, d); ok {
		list = append(list, sp.Words.Say("trip.hotter", sp.Degrees(hot.Air.Temperature.Or(0)), deficitAt(sp, hot.At.Deficit.High, hot.At.DeficitL.High)))
	}
	return list
}

// planCaution is what has to be said about the plan there: first whether it may
// be agreed at all, then the high end of the loss, then the stomach.
func planCaution(sp heat.Speaker, there consult.StopPlan) (title, sentence string) {
	var list []string
	if there.At.Guards.Stops() {
		list = append(list, sp.Words.Say("trip.guard.stops"))
	}
	passes, outruns := there.HighEnd()
	switch {
	case outruns:
		title = sp.Words.Say("caution.outruns")
	case passes:
		title = sp.Words.Say("trip.high")
	}
	for _, g := range there.At.Guards.Each() {
		if text := guardSentence(sp, there, g); text != "" {
			list = append(list, text)
		}
	}
	return title, strings.Join(list, " ")
}

// ends is a table with three columns of figures that can be retitled.
type ends struct {
	titles [3]*look.Label
	rows   []*endLine
	box    *fyne.Container
}

// endLine is one line of it.
type endLine struct {
	name  *look.Label
	cells [3]*look.Label
	box   fyne.CanvasObject
}

// endRow is what a line says; strong cells stand out.
type endRow struct {
	name   string
	cells  [3]string
	strong [3]bool
}

// endTracks are the columns of the table.
func endTracks() []look.Track {
	return []look.Track{look.Share(38), look.Share(22), look.Share(20), look.Share(22)}
}

func newEnds() *ends {
	t := &ends{}
	head := []fyne.CanvasObject{look.NewLabel("", look.Note, look.Ink2)}
	for i := range t.titles {
		t.titles[i] = look.NewLabel("", look.Note, look.Ink2).Right().Shorten()
		head = append(head, t.titles[i])
	}
	t.box = look.VBox(0, look.Pad(0, 8, 6, 8, look.Columns(10, endTracks(), head...)), look.NewRule())
	return t
}

// show shows titles and lines.
func (t *ends) show(titles [3]string, rows []endRow) {
	for i, l := range t.titles {
		l.SetText(titles[i])
	}
	for len(t.rows) < len(rows) {
		t.add()
	}
	for i, line := range t.rows {
		look.ShowIf(line.box, i < len(rows))
		if i >= len(rows) {
			continue
		}
		line.name.SetText(rows[i].name)
		for j, c := range line.cells {
			c.SetText(rows[i].cells[j])
			c.SetStyle(styleIf(rows[i].strong[j]))
		}
	}
}

// add makes a further line.
func (t *ends) add() {
	line := &endLine{name: look.NewLabel("", look.Body, look.Ink).Shorten()}
	objects := []fyne.CanvasObject{line.name}
	for i := range line.cells {
		line.cells[i] = look.NewLabel("", look.Body, look.Ink).Right().Shorten()
		objects = append(objects, line.cells[i])
	}
	line.box = look.VBox(0, look.Pad(5, 8, 5, 8, look.Columns(10, endTracks(), objects...)), look.NewRule())
	t.rows = append(t.rows, line)
	t.box.Add(line.box)
}

func styleIf(strong bool) look.Style {
	if strong {
		return look.Strong
	}
	return look.Body
}

package squad

import (
	"math"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/copying"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// groupPage shows the findings of the group: a table, and one picture.
type groupPage struct {
	v     *View
	lines []squad.Line
	sort  squad.Sort
	by    *field.Choice
	table *look.Table
	chart *groupChart
	note  *look.Paragraph
	body  fyne.CanvasObject
}

// showGroup shows the findings of the group in place of the rows.
func (v *View) showGroup() {
	if v.open != nil {
		v.open.commit()
	}
	v.endJump(false)
	v.open = nil
	v.look()
	v.group = newGroupPage(v)
	v.ui.page.Objects[len(v.ui.page.Objects)-1].Hide()
	v.ui.title.Hide()
	v.ui.second.Hide()
	v.ui.page.Add(look.Grow(v.group.body))
	v.ui.page.Refresh()
	v.desk.HeadChanged()
}

// showRows goes back to the rows.
func (v *View) showRows() {
	if v.group == nil {
		return
	}
	v.group = nil
	v.ui.page.Objects = v.ui.page.Objects[:len(v.ui.page.Objects)-1]
	v.ui.page.Objects[len(v.ui.page.Objects)-1].Show()
	v.ui.title.Show()
	v.at = -1
	v.follow()
	v.openFirst()
	v.ui.page.Refresh()
}

func newGroupPage(v *View) *groupPage {
	say, h := v.say, v.desk.Host
	p := &groupPage{v: v, sort: squad.ByRate, note: look.NewParagraph("", look.Note, look.Ink2)}
	var options []field.Option
	for _, s := range squad.Sorts() {
		options = append(options, field.Option{Key: string(s), Text: say("squad.sort." + string(s))})
	}
	p.by = field.NewChoice(h, "squad.sort", options)
	p.by.Choose(string(p.sort))
	p.by.OnChosen = func(key string) {
		p.sort = squad.Sort(key)
		p.fill()
	}
	back := field.NewButton(h, "squad.rows", say("squad.rows"), field.Outline, v.showRows)
	coach := field.NewButton(h, "squad.coach", say("squad.coach"), field.Outline, v.printCoach)
	plans := field.NewButton(h, "squad.plans.begin", say("squad.plans.begin"), field.Outline, v.askPlans)
	p.table = look.NewTable("squad.table", []look.Column{
		{Title: say("squad.col.athlete"), Width: look.Share(1)},
		{Title: say("squad.group.loss"), Width: look.Fixed(52), Right: true}, {Title: say("squad.group.rate"), Width: look.Fixed(70), Right: true},
		{Title: say("squad.group.drunk"), Width: look.Fixed(52), Right: true}, {Title: say("squad.group.deficit"), Width: look.Fixed(106), Right: true},
		{Title: say("squad.group.sodium"), Width: look.Fixed(82), Right: true},
	})
	p.table.OneClick().OnOpened = p.open
	p.chart = newGroupChart()
	head := look.HBox(12, look.NewLabel(say("squad.group.title"), look.Title, look.Ink), look.Stretch(), plans, coach, back)
	copied := copying.Link(v.desk, "squad.table.copy", "copy.table", func() copying.Table { return copying.Of(say("squad.group.title"), p.table) })
	figures := copying.Link(v.desk, "squad.chart.copy", "copy.figures", p.charted)
	order := look.Columns(12, []look.Track{look.Fit(), look.Fixed(150), look.Share(1), look.Fit()}, look.NewLabel(say("squad.sorted"), look.Body, look.Ink2), p.by, p.note, copied)
	p.body = look.VBox(10, head, order, look.Grow(look.InMargin(look.PageScroll(look.NewPair(0.6, 1100, look.NewSheet(p.table), look.NewSheet(look.VBox(4, look.HBox(0, look.Stretch(), figures), p.chart)))))))
	p.fill()
	return p
}

// fill shows the lines in their order.
func (p *groupPage) fill() {
	v := p.v
	p.lines = squad.Lines(v.rows, p.sort)
	var rows [][]look.Cell
	for _, l := range p.lines {
		rows = append(rows, p.cells(l))
	}
	p.table.SetRows(rows)
	_, withheld := squad.ForCoach(p.lines)
	p.note.SetText(v.say("squad.group.note", withheld))
	p.chart.set(p.bars())
	if p.body != nil {
		p.body.Refresh()
	}
}

// cells are one athlete's line: litres only where mass is hidden.
func (p *groupPage) cells(l squad.Line) []look.Cell {
	v := p.v
	by := v.speaker(l.Row.Hidden).By
	amount := func(x *float64, u quantity.Unit) string {
		if x == nil {
			return v.say("squad.dash")
		}
		return by.Amount(*x, u)
	}
	deficit := v.deficitWords(l, true)
	if deficit == "" {
		deficit = v.say("squad.dash")
	}
	return []look.Cell{
		{Text: l.Row.Sheet.Athlete.Name}, {Text: amount(l.Loss, quantity.Litre)}, {Text: amount(l.Rate, quantity.LitrePerHour)},
		{Text: amount(l.Drunk, quantity.Litre)}, {Text: deficit}, {Text: amount(l.Sodium, quantity.MilligramPerHour)},
	}
}

// deficitWords say the deficit of a line, or the gain: in per cent where mass may be
// seen, after the litres where both are wanted; empty while not known.
func (v *View) deficitWords(l squad.Line, both bool) string {
	if l.Deficit == nil {
		return ""
	}
	by := v.speaker(l.Row.Hidden).By
	var text string
	litres := by.Amount(math.Abs(*l.Deficit), quantity.Litre)
	switch {
	case l.DeficitShare == nil, both && *l.Deficit < 0: // a gain has no room for both
		text = litres
	case both:
		text = v.say("squad.group.deficit.value", litres, by.Amount(math.Abs(*l.DeficitShare), quantity.PerCent))
	default:
		text = by.Amount(math.Abs(*l.DeficitShare), quantity.PerCent)
	}
	if *l.Deficit < 0 {
		return v.say("squad.group.gain", text)
	}
	return text
}

// open opens the consult of the i-th athlete; the keys to the next follow this order.
func (p *groupPage) open(i int) {
	if i < 0 || i >= len(p.lines) {
		return
	}
	var round []record.ID
	for _, l := range p.lines {
		round = append(round, l.Row.Sheet.Athlete.ID)
	}
	p.v.desk.Round = round
	p.v.desk.Go(desk.Place{Screen: desk.Overview, Athlete: round[i]})
}

// charted are the figures of the picture: who lost how much and drank how much.
func (p *groupPage) charted() copying.Table {
	say, by := p.v.say, p.v.speaker(false).By
	t := copying.Table{Name: say("squad.group.title"), Titles: []string{say("squad.col.athlete"), say("squad.group.loss"), say("squad.group.drunk")}}
	for _, b := range p.bars() {
		drunk := say("squad.dash")
		if b.took != "" {
			drunk = by.Amount(b.drunk, quantity.Litre)
		}
		t.Rows = append(t.Rows, []string{b.name, by.Amount(b.loss, quantity.Litre), drunk})
	}
	return t
}

// bars are the lines as the picture shows them.
func (p *groupPage) bars() []groupBar {
	var list []groupBar
	by := p.v.speaker(false).By
	for _, l := range p.lines {
		if l.Loss == nil {
			continue
		}
		b := groupBar{name: l.Row.Sheet.Athlete.Name, loss: *l.Loss, lost: p.v.say("squad.group.lost", by.Amount(*l.Loss, quantity.Litre))}
		if l.Drunk != nil {
			b.drunk = *l.Drunk
			b.took = p.v.say("squad.group.took", by.Amount(*l.Drunk, quantity.Litre))
		}
		if short := p.v.deficitWords(l, false); short != "" {
			b.short = short
			if *l.Deficit >= 0 {
				b.short = p.v.say("squad.group.short", short)
			}
		}
		if l.Sodium != nil {
			b.salt = p.v.say("squad.group.salt", by.Amount(*l.Sodium, quantity.MilligramPerHour))
		}
		list = append(list, b)
	}
	return list
}

package findings

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/look"
)

// whyPanel is the why of one figure.
type whyPanel struct {
	sp             speaker
	title          *look.Label
	figure, sure   *look.Paragraph
	beside         *look.Paragraph
	words, numbers *look.Paragraph
	inputs         *inputList
	budget         *chart.BudgetBars
	budgetPart     fyne.CanvasObject
	texts          map[string]*textPart
	frame          whyFrame
}

// whyFrame is what the panel stands in.
type whyFrame struct {
	column *fyne.Container
	scroll *look.Scroll
	body   fyne.CanvasObject
}

// textPart is a heading and sentences.
type textPart struct {
	text *look.Paragraph
	box  fyne.CanvasObject
}

// newWhyPanel makes an empty panel.
func newWhyPanel(sp speaker) *whyPanel {
	p := &whyPanel{
		sp: sp, title: look.NewLabel("", look.Strong, look.Ink).Shorten(), figure: look.NewParagraph("", look.Second, look.Ink),
		sure: look.NewParagraph("", look.Note, look.Ink2), beside: look.NewParagraph("", look.Note, look.Ink), words: look.NewParagraph("", look.Note, look.Ink2),
		numbers: look.NewParagraph("", look.Body, look.Ink), inputs: newInputList(), budget: chart.NewBudgetBars(), texts: map[string]*textPart{},
	}
	p.budgetPart = p.section("findings.why.budget", p.budget)
	p.frame.column = look.VBox(8, p.title, p.figure, p.sure, p.beside, p.words, p.numbers, p.section("findings.why.inputs", p.inputs.box), p.budgetPart)
	for _, key := range textKeys() {
		part := &textPart{text: look.NewParagraph("", look.Note, look.Ink2)}
		part.box = p.section(key, part.text)
		p.texts[key] = part
		p.frame.column.Add(part.box)
	}
	p.inputs.part = p.frame.column.Objects[6]
	p.frame.scroll = look.NewScroll(look.Pad(0, barRoom, 0, 0, p.frame.column))
	p.frame.body = look.NewSheet(p.frame.scroll)
	return p
}

// textKeys are the headings of the parts that are sentences, in their order.
func textKeys() []string {
	return []string{"findings.why.narrower", "findings.why.parts", "findings.why.places", "findings.why.notes", "findings.why.sources"}
}

// section is a heading with something below it.
func (p *whyPanel) section(key string, o fyne.CanvasObject) fyne.CanvasObject {
	return look.VBox(4, look.Gap(0, 6), look.NewLabel(p.sp.Say(key), look.NoteStrong, look.Ink), o)
}

// show shows a why; the zero Why leaves the panel asking for a row.
func (p *whyPanel) show(w Why) {
	if w.Title == "" {
		p.title.SetText(p.sp.Say("findings.why.none"))
	} else {
		p.title.SetText(p.sp.Say("findings.why", w.Title))
	}
	setText(p.figure, w.Figure)
	setText(p.sure, w.Sure)
	if w.Title == "" {
		setText(p.sure, p.sp.Say("findings.why.later"))
	}
	setText(p.beside, w.Beside)
	setText(p.words, equals(w.Formula.Words))
	setText(p.numbers, w.Formula.Numbers)
	p.inputs.show(w.Formula.Inputs)
	var shares []chart.BudgetShare
	for _, s := range w.Budget {
		shares = append(shares, chart.BudgetShare{Name: s.Name, Part: s.Part, Text: s.Text})
	}
	p.budget.Set(chart.BudgetData{Shares: shares})
	look.ShowIf(p.budgetPart, len(shares) > 0)
	for key, list := range map[string][]string{
		"findings.why.narrower": w.Narrower, "findings.why.parts": w.Parts, "findings.why.places": w.Places,
		"findings.why.notes": w.Notes, "findings.why.sources": w.Sources,
	} {
		part := p.texts[key]
		part.text.SetText(lines(list))
		look.ShowIf(part.box, len(list) > 0)
	}
	p.frame.scroll.ScrollTo(0)
	p.frame.column.Refresh()
	p.frame.scroll.Refresh()
}

// setText sets a paragraph and hides it while it is empty.
func setText(p *look.Paragraph, text string) {
	p.SetText(text)
	look.ShowIf(p, text != "")
}

// equals puts the sign before a formula.
func equals(formula string) string {
	if formula == "" {
		return ""
	}
	return "= " + formula
}

// lines sets sentences one below the other.
func lines(list []string) string {
	text := ""
	for i, s := range list {
		if i > 0 {
			text += "\n"
		}
		text += s
	}
	return text
}

// inputList is names and values in two columns.
type inputList struct {
	names, values []*look.Label
	rows          []fyne.CanvasObject
	box           *fyne.Container
	part          fyne.CanvasObject
}

func newInputList() *inputList { return &inputList{box: look.VBox(2)} }

// show shows inputs.
func (l *inputList) show(list []Line) {
	for len(l.rows) < len(list) {
		name := look.NewLabel("", look.Note, look.Ink2).Shorten()
		value := look.NewLabel("", look.Note, look.Ink).Right()
		row := look.Columns(8, []look.Track{look.Share(1), look.Fit()}, name, value)
		l.names, l.values, l.rows = append(l.names, name), append(l.values, value), append(l.rows, row)
		l.box.Add(row)
	}
	for i, row := range l.rows {
		if i < len(list) {
			l.names[i].SetText(list[i].Name)
			l.values[i].SetText(list[i].Value)
		}
		look.ShowIf(row, i < len(list))
	}
	look.ShowIf(l.part, len(list) > 0)
}

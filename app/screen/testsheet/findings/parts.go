package findings

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// cautionList is cautions one below the other.
type cautionList struct {
	list []*look.Caution
	box  *fyne.Container
}

func newCautionList() *cautionList { return &cautionList{box: look.VBox(8)} }

// show shows cautions, or none yet.
func (l *cautionList) show(cautions []Caution, on bool) {
	for len(l.list) < len(cautions) {
		c := look.NewCaution("", "", nil)
		l.list = append(l.list, c)
		l.box.Add(c)
	}
	for i, c := range l.list {
		if on && i < len(cautions) {
			c.SetText(cautions[i].Title, cautions[i].Sentence)
		} else {
			c.SetText("", "")
		}
	}
	look.ShowIf(l.box, on && len(cautions) > 0)
}

// comparePart puts another test of the athlete beside this one.
type comparePart struct {
	v      *View
	choice *field.Choice
	lines  *look.Paragraph
	body   fyne.CanvasObject
}

func newComparePart(v *View) *comparePart {
	p := &comparePart{v: v, lines: look.NewParagraph("", look.Body, look.Ink)}
	p.choice = field.NewChoice(v.desk.Host, "findings.compare", nil)
	p.choice.SetPlaceholder(v.sp.Say("findings.compare.none"))
	p.choice.OnChosen = func(string) { p.show() }
	head := look.HBox(12, look.NewLabel(v.sp.Say("findings.compare"), look.Strong, look.Ink), look.MinSized(300, 0, p.choice))
	p.body = look.NewSheet(look.VBox(10, head, p.lines, look.NewParagraph(v.sp.Say("findings.compare.note"), look.Note, look.Ink2)))
	return p
}

// show compares with the test chosen, the newest at first.
func (p *comparePart) show() {
	others := p.v.in.Others
	look.ShowIf(p.body, len(others) > 0 && p.v.in.Findings.Sweat.Fluid.Rate.Known)
	if len(others) == 0 {
		return
	}
	var options []field.Option
	for i, o := range others {
		options = append(options, field.Option{Key: strconv.Itoa(i), Text: o.Name})
	}
	p.choice.SetOptions(options)
	if p.choice.Chosen() == "" {
		p.choice.Choose("0")
	}
	i, err := strconv.Atoi(p.choice.Chosen())
	if err != nil || i >= len(others) {
		return
	}
	text := ""
	for _, s := range p.v.sp.compare(p.v.in, others[i]) {
		text += s + "\n"
	}
	p.lines.SetText(text[:max(0, len(text)-1)])
	p.v.main.column.Refresh()
}

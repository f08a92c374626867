package testsheet

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// troubleActions are what the links below a trouble do.
type troubleActions struct {
	goTo  func(part, control string)
	keep  func(trouble)
	drop  func(trouble)
	offer func(trouble)
}

// troubleItems are the cautions of what is wrong, each with its links.
type troubleItems struct {
	desk *desk.Desk
	do   troubleActions
	list []*troubleItem
	box  *fyne.Container
}

// troubleItem is one caution.
type troubleItem struct {
	caution               *look.Caution
	goTo, keep, drop, new *field.Link
	links                 *fyne.Container
	now                   trouble
}

func newTroubleItems(d *desk.Desk, do troubleActions) *troubleItems {
	return &troubleItems{desk: d, do: do, box: look.VBox(8)}
}

// item makes the i-th caution.
func (l *troubleItems) item(i int) *troubleItem {
	it, h, say := &troubleItem{}, l.desk.Host, l.desk.Words.Say
	name := "testsheet.trouble." + strconv.Itoa(i+1)
	it.goTo = field.NewLink(h, name+".go", say("testsheet.trouble.go"), func() { l.do.goTo(it.now.part, it.now.control) })
	it.keep = field.NewLink(h, name+".keep", say("testsheet.trouble.keep"), func() { l.do.keep(it.now) })
	it.drop = field.NewLink(h, name+".drop", say("testsheet.trouble.drop"), func() { l.do.drop(it.now) })
	it.new = field.NewLink(h, name+".offer", say("testsheet.trouble.nextday"), func() { l.do.offer(it.now) })
	for _, l := range []*field.Link{it.goTo, it.new, it.keep, it.drop} {
		l.PassBy() // Enter goes on filling in
	}
	it.links = look.HBox(12, it.goTo, it.new, it.keep, it.drop)
	it.caution = look.NewCaution("", "", look.Pad(0, 0, 0, -field.LinkPad, it.links))
	return it
}

// show shows what is wrong.
func (l *troubleItems) show(sp speaker, t record.Test, wrong []trouble) {
	for len(l.list) < len(wrong) {
		it := l.item(len(l.list))
		l.list = append(l.list, it)
		l.box.Add(it.caution)
	}
	for i, it := range l.list {
		if i >= len(wrong) {
			it.caution.SetText("", "")
			continue
		}
		it.now = wrong[i]
		look.ShowIf(it.goTo, it.now.control != "")
		look.ShowIf(it.keep, it.now.keepable)
		look.ShowIf(it.drop, it.now.code == codeKept)
		look.ShowIf(it.new, it.now.code == codeEndsBefore)
		it.links.Refresh()
		title, sentence := sp.trouble(t, it.now)
		it.caution.SetText(title, sentence)
	}
	look.ShowIf(l.box, len(wrong) > 0)
}

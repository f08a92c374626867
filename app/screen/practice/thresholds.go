package practice

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/copying"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// thresholds is every published figure the program calculates with.
type thresholds struct {
	v      *View
	all    []threshold
	shown  []threshold
	search *field.Line
	count  *look.Label
	table  *look.Table
	what   *look.Label
	source *look.Paragraph
	body   fyne.CanvasObject
}

// newEvidence builds the tab.
func newEvidence(v *View) *thresholds {
	say := v.desk.Words.Say
	t := &thresholds{
		v: v, all: thresholdsOf(v.desk.Words), count: look.NewLabel("", look.Note, look.Ink2),
		what: look.NewLabel("", look.Strong, look.Ink).Shorten(), source: look.NewParagraph("", look.Body, look.Ink2),
	}
	t.search = field.NewLine(v.desk.Host, "practice.thresholds.search", 80)
	t.search.SetPlaceholder(say("practice.thresholds.search"))
	t.search.OnChanged = func(string) { t.fill() }
	t.table = look.NewTable("practice.thresholds", []look.Column{
		{Title: say("practice.thresholds.what"), Width: look.Share(7)},
		{Title: say("practice.thresholds.value"), Width: look.Share(2), Right: true},
		{Title: say("practice.thresholds.source"), Width: look.Share(3), From: 1250},
		{Title: say("practice.sure"), Width: look.Share(3), From: 1040},
	}).Scrolling()
	t.table.OnChosen = func(int) { t.detail() }
	copied := copying.Link(v.desk, "practice.thresholds.copy", "copy.table", func() copying.Table { return copying.Of(say("practice.part.thresholds"), t.table) })
	top := look.Columns(16, []look.Track{look.Fixed(320), look.Share(1), look.Fit()}, t.search, t.count, copied)
	foot := look.NewSheet(look.VBox(4, t.what, t.source))
	t.body = look.Pad(0, 0, 20, 0, look.VBox(12, top, look.Grow(look.NewSheet(t.table)), foot))
	t.fill()
	return t
}

func (t *thresholds) box() fyne.CanvasObject { return t.body }
func (t *thresholds) follow()                {}

// fill shows what the search finds.
func (t *thresholds) fill() {
	w := t.v.desk.Words
	t.shown = search(t.all, t.search.Text(), w)
	rows := make([][]look.Cell, len(t.shown))
	for i, line := range t.shown {
		rows[i] = []look.Cell{
			{Text: line.what}, {Text: line.value(w)}, {Text: line.entry.Source.Name(w.Say), Tone: look.Ink2},
			{Text: desk.Sureness(w, line.entry.Sure), Tone: look.Ink2},
		}
	}
	t.table.SetRows(rows)
	t.table.Choose(min(0, len(rows)-1))
	t.count.SetText(w.Say("practice.thresholds.count", len(rows), evidence.Version))
	t.detail()
}

// detail shows the chosen line whole.
func (t *thresholds) detail() {
	w, i := t.v.desk.Words, t.table.Chosen()
	if i < 0 || i >= len(t.shown) {
		t.what.SetText(w.Say("practice.thresholds.none"))
		t.source.SetText("")
		return
	}
	e := t.shown[i].entry
	t.what.SetText(t.shown[i].what)
	if !t.shown[i].says {
		t.what.SetText(w.Say("practice.thresholds.is", t.shown[i].what, amount(w, e)))
	}
	text := w.Say("practice.thresholds.from", e.Source.Title(w.Say), desk.Sureness(w, e.Sure))
	if e.Valid != (quantity.Range{}) {
		text += " " + w.Say("practice.thresholds.valid", figure(w, e.Valid.Low), figure(w, e.Valid.High))
	}
	t.source.SetText(text)
	if t.body != nil {
		t.body.Refresh()
	}
}

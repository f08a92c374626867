package importing

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/tables"
)

// bothWays asks, once for a file, whether day or month comes first where every date can be
// read in both ways; nothing is imported before.
type bothWays struct {
	v     *View
	dates *fyne.Container
	box   *fyne.Container
}

// newBothWays builds the question.
func newBothWays(v *View) *bothWays {
	b := &bothWays{v: v, dates: look.VBox(2)}
	answer := func(o tables.Order) *field.Button {
		return v.button("import.both."+string(o), "import.order."+string(o), func() {
			m := v.s.mapping
			m.Order, m.Ordered = o, true
			v.with(m)
		})
	}
	action := look.VBox(8, b.dates, look.HBox(10, answer(tables.DayMonthYear), answer(tables.MonthDayYear)))
	b.box = look.VBox(0, look.NewCaution(v.Say("import.both.title"), v.Say("import.both"), action))
	return b
}

// follow shows the first dates in both ways while it is not known which is right.
func (b *bothWays) follow() {
	const most = 3
	v := b.v
	b.dates.Objects = nil
	if v.s.draft.OrderOpen() {
		for _, d := range tables.BothWays(v.s.book, v.s.mapping, v.desk.Today(), most) {
			b.dates.Add(look.NewParagraph(v.Say("import.both.date", d.Text, b.day(d.DayFirst), b.day(d.MonthFirst)), look.Note, look.Ink))
		}
	}
	look.ShowIf(b.box, v.s.draft.OrderOpen())
}

// day writes a day in words.
func (b *bothWays) day(d record.Date) string {
	t, _ := d.Time()
	return b.v.Words.Date(t)
}

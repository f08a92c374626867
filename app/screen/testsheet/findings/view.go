package findings

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/copying"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/picture"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Actions are what the findings hand back.
type Actions struct {
	// OwnEstimate is told the athlete's guess as it is typed, OwnEstimateLeft that the
	// field was left.
	OwnEstimate     func(field.Reading)
	OwnEstimateLeft func()
	// Letter shows the findings as text, for a letter or a record.
	Letter func()
}

// View shows the findings of a sheet: in its main part the pictures and the
// table, at its side the why of the figure chosen.
type View struct {
	desk  *desk.Desk
	sp    speaker
	do    Actions
	in    Input
	rows  []Row
	shown bool
	// first is how many of the rows stand in the table before the others are
	// asked for; all shows them all.
	first int
	all   bool
	main  mainPart
	side  *whyPanel
}

// mainPart are the widgets of the main part.
type mainPart struct {
	scroll          *look.Scroll
	column          *fyne.Container
	cautions        *cautionList
	ask, shownAfter fyne.CanvasObject
	guess           *field.Number
	picture         picturePart
	table           *look.Table
	more            *field.Link
	summary         summaryPart
	compare         *comparePart
}

// summaryPart is the finding in one sentence.
type summaryPart struct {
	title    *look.Label
	sentence *look.Paragraph
	box      *fyne.Container
}

// picturePart is the picture of the balance, or why there is none.
type picturePart struct {
	title         *look.Label
	bars          *chart.InOutBars
	nothing       *look.Paragraph
	sheet, noRate fyne.CanvasObject
}

// New makes an empty view.
func New(d *desk.Desk, by amount.Speaker, do Actions) *View {
	v := &View{desk: d, sp: speaker{by}, do: do}
	v.side = newWhyPanel(v.sp)
	v.build()
	return v
}

// Main is the part with pictures and table, Side the why beside it.
func (v *View) Main() fyne.CanvasObject { return v.main.scroll }

// Side is the why of the figure chosen.
func (v *View) Side() fyne.CanvasObject { return v.side.frame.body }

// Rows are the figures as they stand.
func (v *View) Rows() []Row { return v.rows }

// build makes the widgets.
func (v *View) build() {
	m, say := &v.main, v.sp.Say
	m.cautions = newCautionList()
	m.picture.title = look.NewLabel("", look.Strong, look.Ink).Shorten()
	m.picture.bars = chart.NewInOutBars()
	keep := picture.Link(v.desk, "findings.picture", v.desk.Words.Say("picture.findings"), func() []record.ID { return []record.ID{v.in.Athlete.ID} }, func() fyne.CanvasObject { return m.picture.bars })
	figures := copying.Link(v.desk, "findings.picture.copy", "copy.figures", v.pictured)
	m.picture.nothing = look.NewParagraph("", look.Note, look.Ink2)
	m.picture.sheet = look.NewSheet(look.VBox(14, look.HBox(8, look.Grow(m.picture.title), keep), m.picture.bars, look.Pad(0, 0, 0, -field.LinkPad, look.HBox(0, figures))))
	m.picture.noRate = look.NewSheet(look.VBox(8, look.NewLabel(say("findings.norate"), look.Strong, look.Ink), m.picture.nothing))
	within := say("findings.range")
	if v.sp.By.Hidden {
		within = say("findings.range.hidden")
	}
	m.table = look.NewTable("findings.table", []look.Column{
		{Width: look.Share(9)},
		{Title: say("findings.found"), Width: look.Fixed(86), Right: true},
		{Title: within, Width: look.Fixed(90), Right: true},
		{Title: say("findings.beside"), Width: look.Share(11)},
	})
	m.table.OnChosen = func(row int) {
		v.explain(row)
		v.reveal(row)
	}
	m.compare = newComparePart(v)
	m.more = field.NewLink(v.desk.Host, "findings.more", "", v.turn)
	m.summary.title = look.NewLabel("", look.Strong, look.Ink)
	m.summary.sentence = look.NewParagraph("", look.Body, look.Ink)
	text := field.NewLink(v.desk.Host, "findings.letter", say("letter.open.ask"), func() { v.do.Letter() })
	m.summary.box = look.VBox(4, look.HBox(12, look.Grow(m.summary.title), text), m.summary.sentence)
	copied := copying.Link(v.desk, "findings.copy", "copy.table", v.copied)
	table := look.NewSheet(look.VBox(4, m.table, look.Pad(0, 0, 0, -field.LinkPad, look.HBox(16, m.more, copied))))
	m.shownAfter = look.VBox(14, m.summary.box, m.picture.sheet, m.picture.noRate, table, m.compare.body)
	m.ask = v.askPart()
	m.column = look.VBox(14, m.cautions.box, m.ask, m.shownAfter)
	m.scroll = look.NewScroll(look.Pad(0, barRoom, 0, 0, m.column))
}

// barRoom keeps content clear of the scroll bar, in px.
const barRoom float32 = 12

// askPart asks for the athlete's guess before anything is shown: athletes take
// their loss for about half of what it is (O'Neal et al. 2020, Sports 8:113),
// and what one has guessed one remembers.
func (v *View) askPart() fyne.CanvasObject {
	m, say := &v.main, v.sp.Say
	m.guess = field.NewNumber(v.desk.Host, "findings.guess", "", quantity.Litre)
	m.guess.SetShown(v.sp.By.Unit(quantity.Litre))
	m.guess.SetBox(110)
	m.guess.OnChanged = func(r field.Reading) { v.do.OwnEstimate(r) }
	m.guess.OnLeft = func(field.Reading) { v.do.OwnEstimateLeft() }
	m.guess.OnEnter = func(field.Reading) { v.tell() }
	show := field.NewButton(v.desk.Host, "findings.show", say("findings.show"), field.Primary, v.tell)
	return look.NewSheet(look.VBox(12,
		look.NewLabel(say("findings.ask.title"), look.Strong, look.Ink),
		look.NewParagraph(say("findings.ask"), look.Body, look.Ink2),
		look.HBox(12, look.MinSized(110, 0, m.guess), show),
		look.NewParagraph(say("findings.ask.note"), look.Note, look.Ink2)))
}

// tell shows the findings.
func (v *View) tell() {
	v.shown = true
	v.Show(v.in)
}

// Open begins with asking where no guess was entered, and with showing where
// one was or the sheet is closed.
func (v *View) Open(in Input) {
	v.shown = v.shown || !in.Open || in.Findings.Test.Loss.Guess.Known()
	v.main.guess.Clear()
	if g := in.Findings.Test.Loss.Guess; g.Known() {
		v.main.guess.SetValue(*g.Value)
	}
	v.Show(in)
}

// Show shows findings; the figure chosen stays chosen.
func (v *View) Show(in Input) {
	m := &v.main
	key := ""
	if i := m.table.Chosen(); i >= 0 && i < len(v.rows) {
		key = v.rows[i].Key
	}
	v.in = in
	v.rows, v.first = arranged(Rows(v.sp.Speaker, in))
	look.ShowIf(m.ask, !v.shown)
	look.ShowIf(m.shownAfter, v.shown)
	v.showSummary()
	m.cautions.show(v.sp.cautions(in), v.shown)
	v.showBars()
	v.showTable(key)
	m.compare.show()
	m.column.Refresh()
	m.scroll.Refresh()
}

// showBars shows the picture, or why there is none.
func (v *View) showBars() {
	m, fluid := &v.main, v.in.Findings.Sweat.Fluid
	can := fluid.Loss.Known && fluid.Deficit.Known
	look.ShowIf(m.picture.sheet, can)
	look.ShowIf(m.picture.noRate, !fluid.Loss.Known)
	m.picture.title.SetText(v.sp.session(v.in))
	if can {
		m.picture.bars.Set(v.sp.bars(v.in))
	}
	text := ""
	for _, s := range v.sp.lacking(v.in) {
		text += s + "\n"
	}
	m.picture.nothing.SetText(text)
}

// showTable fills the table and chooses the row of a key, the sweat rate at
// first.
func (v *View) showTable(key string) {
	rows := v.rows
	if !v.all {
		rows = rows[:v.first]
	}
	cells := make([][]look.Cell, len(rows))
	at := 0
	for i, r := range rows {
		found := look.Cell{Text: r.Found, Style: look.Strong}
		if !r.Figure.Known && r.Figure.Range.Width() == 0 {
			found = look.Cell{Text: r.Found, Tone: look.Ink3}
		}
		beside := look.Cell{Text: r.Beside, Tone: look.Ink2, Short: []string{""}} // whole or not at all: its why says it too
		cells[i] = []look.Cell{{Text: r.Name}, found, {Text: r.Range, Tone: look.Ink2}, beside}
		if r.Key == key {
			at = i
		}
	}
	v.main.table.SetRows(cells)
	v.showMore()
	v.main.table.Choose(at)
	v.explain(at)
}

// showMore names what the link below the table does.
func (v *View) showMore() {
	behind := len(v.rows) - v.first
	look.ShowIf(v.main.more, behind > 0)
	if v.all {
		v.main.more.SetText(v.sp.Say("findings.fewer"))
		return
	}
	v.main.more.SetText(v.sp.Say("findings.more", v.sp.Words.Number(float64(behind), 0)))
}

// turn shows the other figures, or puts them away.
func (v *View) turn() {
	v.all = !v.all
	v.Show(v.in)
}

// showSummary says in one sentence what was found.
func (v *View) showSummary() {
	s, title := &v.main.summary, "findings.summary.title"
	if !v.in.Findings.Sweat.Fluid.Rate.Ranged {
		title += ".provisional"
	}
	s.title.SetText(v.sp.Say(title))
	s.sentence.SetText(v.sp.summary(v.in))
	look.ShowIf(s.box, s.sentence.Text() != "")
}

// explain shows the why of a row. Before the guess is asked there is none.
func (v *View) explain(row int) {
	if !v.shown || row < 0 || row >= len(v.rows) {
		v.side.show(Why{})
		return
	}
	v.side.show(v.sp.explain(v.rows[row], v.in))
}

// reveal scrolls a row of the table into sight.
func (v *View) reveal(row int) {
	pos, size, ok := v.main.table.RowSpot(row)
	if !ok {
		return
	}
	driver := fyne.CurrentApp().Driver()
	top := driver.AbsolutePositionForObject(v.main.table).Y - driver.AbsolutePositionForObject(v.main.column).Y + pos.Y
	v.main.scroll.Reveal(top, top+size.Height)
}

// Choose chooses a figure by its place in the table.
func (v *View) Choose(row int) {
	if row >= v.first && !v.all {
		v.turn()
	}
	v.main.table.Choose(row)
	v.explain(row)
	v.reveal(row)
}

// copied is every figure as a table, those behind "more" too.
func (v *View) copied() copying.Table {
	say := v.sp.Say
	within := say("findings.range")
	if v.sp.By.Hidden {
		within = say("findings.range.hidden")
	}
	t := copying.Table{Name: v.sp.session(v.in), Titles: []string{say("handout.report.figure"), say("findings.found"), within, say("findings.beside")}}
	for _, r := range v.rows {
		t.Rows = append(t.Rows, []string{r.Name, r.Found, r.Range, r.Beside})
	}
	return t
}

// pictured are the figures of the picture.
func (v *View) pictured() copying.Table {
	t := copying.Table{Name: v.sp.session(v.in)}
	d := v.sp.bars(v.in)
	for _, w := range []chart.Wording{d.OutWords, d.InWords, d.LeftWords} {
		t.Rows = append(t.Rows, []string{w.Name, w.Title, w.Note})
	}
	if d.EstimateText != "" {
		t.Rows = append(t.Rows, []string{"", d.EstimateText, ""})
	}
	return t
}

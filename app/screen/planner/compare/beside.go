package compare

import (
	"slices"
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/copying"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/record"
)

// Beside is the table of options side by side, with what can be done to the one
// in hand below it.
type Beside struct {
	v     *part.Plan
	Tools *optionTools
	// list is the options as they are shown, habit the first of them.
	list   []compared
	lines  []line
	chance int
	heads  []*field.Button
	names  []*look.Label
	cells  [][]besideCell
	table  *fyne.Container
	box    *fyne.Container
}

// besideCell is one entry of the table: the value, and before it the difference
// to the habit.
type besideCell struct{ text, differs *look.Label }

// Widths of the table, in px at 100 % text.
const (
	besideName  float32 = 168
	besideValue float32 = 84
)

// New makes the table of options.
func New(v *part.Plan) part.Part {
	b := &Beside{v: v, Tools: newOptionTools(v), table: look.VBox(0)}
	copied := copying.Link(v.Desk, "planner.beside.copy", "copy.table", b.copied)
	b.box = look.VBox(14, b.table, look.HBox(0, look.Stretch(), copied), b.Tools.box)
	return b
}

// copied is the table as it stands: a line for each figure, a column for each option.
func (b *Beside) copied() copying.Table {
	sp := b.v.Speaker
	t := copying.Table{Name: sp.Say("planner.tab.beside"), Titles: []string{""}}
	for _, c := range b.list {
		t.Titles = append(t.Titles, sp.OptionName(c.option))
	}
	for n := range b.lines {
		row := []string{b.names[n].Text()}
		for i := range b.list {
			row = append(row, b.cells[i][n].text.Text())
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// Body is what stands on the page.
func (b *Beside) Body() fyne.CanvasObject { return b.box }

// Open calculates all options and shows them. The table is made anew only when
// other options or lines are in it.
func (b *Beside) Open() {
	before, linesBefore := b.list, b.lines
	b.list = comparedAll(b.v)
	b.lines = lines(b.list)
	if !sameOptions(before, b.list) || !slices.Equal(linesBefore, b.lines) {
		b.make()
	}
	b.chance = widest(b.v.Live.Take)
	for i := range b.list {
		b.set(i)
	}
	b.nameLines()
	b.Tools.Open()
}

// Follow shows the selected option after a movement; the others stand still.
func (b *Beside) Follow() {
	for i := range b.list {
		if b.list[i].option.ID == b.v.Now.Option {
			c := &b.list[i]
			c.mix, c.at = b.v.Live.Mix, b.v.Live.At
			c.take.Takes = append(c.take.Takes[:0], b.v.Live.Take.Takes...)
			b.set(i)
		}
	}
	if at := widest(b.v.Live.Take); at != b.chance {
		b.chance = at
		for i := range b.list {
			b.set(i)
		}
		b.nameLines()
	}
}

// comparedAll calculates every option of the table for the selected length.
func comparedAll(v *part.Plan) []compared {
	var list []compared
	p := v.Now.PlanCase.Planner
	for _, o := range v.Now.InTable() {
		c := compared{option: o, mix: v.Now.MixOf(o)}
		p.Schedule(v.Now.Length, c.mix, v.Live.Chances, v.Live.Mouthful, &c.take)
		if o.Kind != record.OptionHabit {
			c.mix = c.take.Carried(c.mix)
		}
		c.at = p.Evaluate(v.Now.Length, c.mix)
		list = append(list, c)
	}
	return list
}

func sameOptions(a, b []compared) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].option.ID != b[i].option.ID {
			return false
		}
	}
	return true
}

// make builds the table for the options there are.
func (b *Beside) make() {
	b.heads, b.names, b.cells = nil, nil, make([][]besideCell, len(b.list))
	tracks := []look.Track{look.Fixed(besideName)}
	head := []fyne.CanvasObject{look.Gap(0, 0)}
	for i, c := range b.list {
		tracks = append(tracks, look.Share(1))
		button := field.NewButton(b.v.Desk.Host, "planner.option."+strconv.Itoa(i+1), "", field.Quiet, func() { b.v.ChooseOption(c.option.ID) })
		b.heads = append(b.heads, button)
		head = append(head, &fyne.Container{Layout: atRight{}, Objects: []fyne.CanvasObject{button}})
	}
	b.table.Objects = []fyne.CanvasObject{look.Pad(0, 10, 0, 0, look.Columns(8, tracks, head...)), look.NewRule()}
	for _, l := range b.lines {
		name := look.NewLabel("", look.Body, look.Ink).Shorten()
		b.names = append(b.names, name)
		row := []fyne.CanvasObject{name}
		for i := range b.list {
			c := besideCell{text: look.NewLabel("", look.Body, look.Ink).Right().Shorten()}
			b.cells[i] = append(b.cells[i], c)
			if !l.differs {
				row = append(row, c.text)
				continue
			}
			c.differs = look.NewLabel("", look.Note, look.Ink2).Right().WholeOrNone()
			b.cells[i][len(b.cells[i])-1] = c
			row = append(row, look.Columns(4, []look.Track{look.Share(1), look.Fixed(besideValue)}, c.differs, c.text))
		}
		b.table.Add(look.Pad(5, 10, 4, 0, look.Columns(8, tracks, row...)))
		b.table.Add(look.NewRule())
	}
	b.table.Refresh()
}

// set shows one option of the table.
func (b *Beside) set(i int) {
	c, sp := b.list[i], b.v.Speaker
	name, style, kind := sp.OptionName(c.option), look.Body, field.Quiet
	if c.option.ID == b.v.Now.Option {
		style, kind = look.Strong, field.Outline
	}
	if b.v.Now.Plan.Agreement.OptionID == c.option.ID {
		name = sp.Say("planner.option.marked", name)
	}
	b.heads[i].SetText(look.Ellipsis(name, look.Body, look.Scaled(150)))
	b.heads[i].SetKind(kind)
	for n, l := range b.lines {
		got := cellOf(sp, b.v.Now, l, c, b.list[0], b.chance)
		at := b.cells[i][n]
		at.text.SetText(got.text)
		at.text.SetStyle(style)
		if at.differs != nil {
			at.differs.SetText(got.differs)
		}
	}
}

// nameLines names the lines.
func (b *Beside) nameLines() {
	chance := ""
	if takes := b.v.Live.Take.Takes; b.chance >= 0 {
		chance = b.v.Speaker.ChanceName(takes[b.chance].Chance)
	}
	for n, l := range b.lines {
		b.names[n].SetText(lineName(b.v.Speaker, l, chance))
	}
}

// atRight is a layout of one button whose words end at the right, as the
// figures below them do.
type atRight struct{}

func (atRight) Layout(o []fyne.CanvasObject, size fyne.Size) {
	least := o[0].MinSize()
	width := min(least.Width, size.Width)
	o[0].Move(fyne.NewPos(size.Width-width+field.ButtonPad, 0))
	o[0].Resize(fyne.NewSize(width, size.Height))
}

func (atRight) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Scaled(40), o[0].MinSize().Height)
}

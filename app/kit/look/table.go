package look

import (
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Column is one column of a [Table].
type Column struct {
	Title string
	Width Track
	// Right aligns title and cells right, as figures are.
	Right bool
	// Sorts lets the person sort by it.
	Sorts bool
	// From leaves the column out of a table narrower than so many px at 100 %
	// text; zero never does.
	From float32
	// without: see [Table.Without].
	without bool
}

// Cell is one text in a [Table].
type Cell struct {
	Text  string
	Style Style
	Tone  Tone
	// Short are texts for less room, the longest first.
	Short []string
	// Person is a person's name, which stands in two lines rather than cut: the first
	// cell of a row of a roomy table.
	Person bool
}

// track is the width of the column: a fixed one is no narrower than its title, which
// may be longer in another language.
func (c Column) track() Track {
	if c.Width.px <= 0 {
		return c.Width
	}
	return Fixed(max(c.Width.px, ceil(Note.Width(c.Title))/Scaled(1)))
}

// fitting is the longest text of a cell that a width has room for, shortened where
// even the shortest has none.
func (c Cell) fitting(width float32) string {
	if width <= 0 {
		return ""
	}
	text := c.Text
	for _, less := range c.Short {
		if c.Style.Width(text) <= width {
			break
		}
		text = less
	}
	return Ellipsis(text, c.Style, width)
}

// Table shows rows of text under headers, with a hairline under each. One row
// may be chosen, by click or with the arrow keys; Enter or a second click
// opens it, or the first where [Table.OneClick] says so. Left and Right sort by the column before and after, Space turns
// the order round: the table only asks, its owner sorts.
//
// A table that scrolls draws the rows in sight and no others.
type Table struct {
	widget.BaseWidget

	// OnChosen is told the row the person chose, OnOpened the one to open,
	// OnSort the column to sort by. OnKey is offered every key the table has
	// no use for.
	OnChosen func(row int)
	OnOpened func(row int)
	OnSort   func(column int, down bool)
	OnKey    func(*fyne.KeyEvent)

	name    string
	columns []Column
	one     bool // one click opens
	count   int
	row     func(i int) []Cell
	state   tableState
	scroll  *wheelScroll
	body    *tableBody
}

// tableState is what changes while a table is used.
type tableState struct {
	rowHeight float32
	chosen    int
	hovered   int
	title     int // the title under the pointer, where it sorts; else -1
	sorted    int
	down      bool
	focused   bool
	pointed   bool // the keyboard came by a click: no ring
	clicked   time.Time
}

// NewTable makes a table; name is how tests and drivers find it.
func NewTable(name string, columns []Column) *Table {
	t := &Table{name: name, columns: columns}
	t.state = tableState{rowHeight: 29, chosen: -1, hovered: -1, title: -1, sorted: -1}
	t.body = newTableBody(t)
	t.ExtendBaseWidget(t)
	return t
}

// Roomy makes rows 38 px high at 100 % text instead of 29 and returns the table.
func (t *Table) Roomy() *Table {
	t.state.rowHeight = 38
	return t
}

// OneClick opens a row at the first click and returns the table.
func (t *Table) OneClick() *Table {
	t.one = true
	return t
}

// Scrolling lets the table be lower than its rows and returns it.
func (t *Table) Scrolling() *Table {
	t.scroll = newWheelScroll(t.body)
	t.scroll.OnScrolled = func(fyne.Position) { t.body.Refresh() }
	t.Refresh()
	return t
}

// Name is how tests and drivers find the table.
func (t *Table) Name() string { return t.name }

// SetRows shows other rows. The chosen row stays chosen by its place; what is
// drawn already and reads the same is left alone.
func (t *Table) SetRows(rows [][]Cell) {
	t.SetSource(len(rows), func(i int) []Cell { return rows[i] })
}

// SetSource shows so many rows whose cells are asked for when they come in
// sight, so that a long list costs what a screenful costs.
func (t *Table) SetSource(count int, row func(i int) []Cell) {
	t.count, t.row = count, row
	t.state.chosen = min(t.state.chosen, count-1)
	t.state.hovered = -1
	t.Refresh()
}

// SetTitle gives a column another title.
func (t *Table) SetTitle(column int, title string) {
	if t.columns[column].Title != title {
		t.columns[column].Title = title
		t.Refresh()
	}
}

// Without leaves a column out that has nothing to say, or brings it back. Its room goes to
// the others: they stay where the table would else be too narrow for them.
func (t *Table) Without(column int, out bool) {
	if t.columns[column].without != out {
		t.columns[column].without = out
		t.Refresh()
	}
}

// Titles returns the titles of the columns.
func (t *Table) Titles() []string {
	var list []string
	for _, c := range t.columns {
		list = append(list, c.Title)
	}
	return list
}

// Rows returns how many rows there are.
func (t *Table) Rows() int { return t.count }

// Row returns the texts of a row.
func (t *Table) Row(i int) []string {
	var list []string
	for _, c := range t.row(i) {
		list = append(list, c.Text)
	}
	return list
}

// AccessibilityLabel is the titles of the columns with the row that is chosen.
func (t *Table) AccessibilityLabel() string {
	row := make([]string, len(t.columns))
	if at := t.Chosen(); at >= 0 && at < t.Rows() {
		row = t.Row(at)
	}
	var list []string
	for i, c := range t.columns {
		switch {
		case i < len(row) && row[i] != "" && c.Title != "":
			list = append(list, c.Title+": "+row[i])
		case i < len(row) && row[i] != "":
			list = append(list, row[i])
		case c.Title != "":
			list = append(list, c.Title)
		}
	}
	return strings.Join(list, "\n")
}

// AccessibilityRole is button: a row is chosen and opened.
func (t *Table) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// Chosen returns the chosen row, -1 when there is none.
func (t *Table) Chosen() int { return t.state.chosen }

// Choose chooses a row without telling OnChosen; -1 chooses none.
func (t *Table) Choose(row int) {
	if row < -1 || row >= t.count || row == t.state.chosen {
		return
	}
	t.state.chosen = row
	t.reveal()
	t.body.Refresh()
}

// ShowSort shows by which column the rows are sorted, and whether from high to
// low; -1 shows nothing.
func (t *Table) ShowSort(column int, down bool) {
	t.state.sorted, t.state.down = column, down
	t.Refresh()
}

// HeaderHeight returns the height of the header, RowHeight that of a row.
func (t *Table) HeaderHeight() float32 { return Scaled(28) }

// RowHeight returns the height of a row with its hairline.
func (t *Table) RowHeight() float32 { return Scaled(t.state.rowHeight) }

// HeightFor returns the height of all rows, or of three when it scrolls.
func (t *Table) HeightFor(float32) float32 {
	n := t.count
	if t.scroll != nil {
		n = min(n, 3)
	}
	return t.HeaderHeight() + float32(n)*t.RowHeight()
}

// offset is how far the rows are scrolled.
func (t *Table) offset() float32 {
	if t.scroll == nil {
		return 0
	}
	return t.scroll.Offset.Y
}

// window is the first and the last row in sight, the last excluded.
func (t *Table) window() (first, last int) {
	if t.scroll == nil {
		return 0, t.count
	}
	h := t.RowHeight()
	first = max(int(t.offset()/h), 0)
	last = int((t.offset()+t.scroll.Size().Height)/h) + 1
	return min(first, t.count), min(last, t.count)
}

// reveal scrolls the chosen row into sight.
func (t *Table) reveal() {
	if t.scroll == nil || t.state.chosen < 0 || t.scroll.Size().Height <= 0 {
		return
	}
	top := float32(t.state.chosen) * t.RowHeight()
	switch at, height := t.offset(), t.scroll.Size().Height; {
	case top < at:
		t.scroll.ScrollToOffset(fyne.NewPos(0, top))
	case top+t.RowHeight() > at+height:
		t.scroll.ScrollToOffset(fyne.NewPos(0, top+t.RowHeight()-height))
	}
}

// RowSpot returns where a row stands within the table; ok is false when it is
// out of sight.
func (t *Table) RowSpot(row int) (pos fyne.Position, size fyne.Size, ok bool) {
	first, last := t.window()
	if row < first || row >= last {
		return pos, size, false
	}
	top := t.HeaderHeight() + float32(row)*t.RowHeight() - t.offset()
	return fyne.NewPos(0, top), fyne.NewSize(t.Size().Width, t.RowHeight()), true
}

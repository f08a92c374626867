package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Room in a table, in px: beside the text of a row, and between columns.
const (
	tablePad float32 = 8
	tableGap float32 = 16
)

// edge is where a column stands.
type edge struct{ x, width float32 }

// tableBody is the rows of a table.
type tableBody struct {
	widget.BaseWidget
	table *Table
}

func newTableBody(t *Table) *tableBody {
	b := &tableBody{table: t}
	b.ExtendBaseWidget(b)
	return b
}

// leftOut reports whether a column is not shown at a width of the table.
func (c Column) leftOut(width float32) bool {
	return c.without || c.From > 0 && width < Scaled(c.From)
}

// given is the room of the columns that have nothing to say.
func (t *Table) given() (room float32) {
	for _, c := range t.columns {
		if c.without {
			room += Scaled(c.track().px) + tableGap
		}
	}
	return room
}

// edges resolves the columns at a width of the table; one that is left out has
// no width.
func (b *tableBody) edges(width float32) []edge {
	cols := b.table.columns
	layout, with := columns{gap: tableGap}, width+b.table.given()
	var holders []fyne.CanvasObject
	for _, c := range cols {
		if !c.leftOut(with) {
			layout.tracks = append(layout.tracks, c.track())
			holders = append(holders, Gap(0, 0))
		}
	}
	widths := layout.widths(holders, width-2*tablePad)
	list := make([]edge, len(cols))
	x, next := tablePad, 0
	for i, c := range cols {
		if c.leftOut(with) {
			list[i] = edge{x: x}
			continue
		}
		list[i] = edge{x, widths[next]}
		x += widths[next] + tableGap
		next++
	}
	return list
}

// shortened fits a text into a column; nothing where that is left out.
func shortened(text string, style Style, e edge) string {
	if e.width <= 0 {
		return ""
	}
	return Ellipsis(text, style, e.width)
}

// CreateRenderer draws the rows in sight.
func (b *tableBody) CreateRenderer() fyne.WidgetRenderer {
	r := &tableBodyRenderer{body: b, ring: canvas.NewRectangle(color.Transparent)}
	r.ring.StrokeWidth = 2
	r.set()
	return r
}

// tableRow is the drawing of one row.
type tableRow struct {
	ground, rule *canvas.Rectangle
	texts        []*canvas.Text
	// second is the second line of a name.
	second *canvas.Text
}

type tableBodyRenderer struct {
	body  *tableBody
	pool  []*tableRow
	shown int
	ring  *canvas.Rectangle
}

// set fills the pool with the rows in sight.
func (r *tableBodyRenderer) set() {
	t := r.body.table
	first, last := t.window()
	for len(r.pool) < last-first {
		r.pool = append(r.pool, newTableRow(len(t.columns)))
	}
	r.shown = last - first
	edges := r.body.edges(r.body.Size().Width)
	p := PaletteNow()
	for i := range r.shown {
		r.setRow(r.pool[i], first+i, edges, p)
	}
	r.setRing(p)
}

func newTableRow(cells int) *tableRow {
	row := &tableRow{ground: canvas.NewRectangle(nil), rule: canvas.NewRectangle(nil), second: canvas.NewText("", nil)}
	for range cells {
		row.texts = append(row.texts, canvas.NewText("", nil))
	}
	return row
}

// setRow draws the i-th row of the table.
func (r *tableBodyRenderer) setRow(row *tableRow, i int, edges []edge, p Palette) {
	t := r.body.table
	width, h := r.body.Size().Width, t.RowHeight()
	y, base := float32(i)*h, float32(int((h-1-Body.Height())/2))+Body.Baseline()
	row.ground.FillColor = color.Transparent
	switch i {
	case t.state.chosen:
		row.ground.FillColor = p.Sunk
	case t.state.hovered:
		row.ground.FillColor = veil(p.Ink, 0x0B)
	}
	row.ground.Move(fyne.NewPos(0, y))
	row.ground.Resize(fyne.NewSize(width, h))
	row.rule.FillColor = p.Hairline
	row.rule.Move(fyne.NewPos(0, y+h-1))
	row.rule.Resize(fyne.NewSize(width, 1))
	cells := t.row(i)
	row.second.Text = ""
	for c, text := range row.texts {
		var cell Cell
		if c < len(cells) {
			cell = cells[c]
		}
		text.Alignment = alignment(t.columns[c].Right)
		if cell.Person && cell.Style.Width(cell.Text) > edges[c].width && edges[c].width > 0 {
			row.setName(cell, fyne.NewPos(edges[c].x, y), fyne.NewSize(edges[c].width, h-1), p)
			continue
		}
		short := cell.fitting(edges[c].width)
		at := fyne.NewPos(edges[c].x, y+base-cell.Style.Baseline())
		Write(text, cell.Style, p.Tone(cell.Tone), short, at, edges[c].width)
	}
}

// setName writes a long name in a place, the first of its lines in the first cell.
func (row *tableRow) setName(cell Cell, at fyne.Position, size fyne.Size, p Palette) {
	lines, style := NameLines(cell.Text, cell.Style, size.Width)
	at.Y += float32(int((size.Height - float32(len(lines))*style.Pitch()) / 2))
	Write(row.texts[0], style, p.Tone(cell.Tone), lines[0], at, size.Width)
	if len(lines) > 1 {
		Write(row.second, style, p.Tone(cell.Tone), lines[1], at.AddXY(0, style.Pitch()), size.Width)
	}
}

// setRing outlines the chosen row, or the first, while the table has the focus.
func (r *tableBodyRenderer) setRing(p Palette) {
	t := r.body.table
	r.ring.StrokeColor = color.Transparent
	if t.state.focused && !t.state.pointed && t.count > 0 {
		r.ring.StrokeColor = p.Ink
	}
	h := t.RowHeight()
	r.ring.Move(fyne.NewPos(1, float32(max(t.state.chosen, 0))*h+1))
	r.ring.Resize(fyne.NewSize(max(r.body.Size().Width-2, 0), h-3))
}

func alignment(right bool) fyne.TextAlign {
	if right {
		return fyne.TextAlignTrailing
	}
	return fyne.TextAlignLeading
}

func (r *tableBodyRenderer) Layout(fyne.Size) { r.set() }

func (r *tableBodyRenderer) MinSize() fyne.Size {
	t := r.body.table
	return fyne.NewSize(0, float32(t.count)*t.RowHeight())
}

func (r *tableBodyRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.body)
}

func (r *tableBodyRenderer) Objects() []fyne.CanvasObject {
	var list []fyne.CanvasObject
	for _, row := range r.pool[:r.shown] {
		list = append(list, row.ground, row.rule)
		for _, text := range row.texts {
			list = append(list, text)
		}
		if row.second.Text != "" {
			list = append(list, row.second)
		}
	}
	return append(list, r.ring)
}

func (r *tableBodyRenderer) Destroy() {}

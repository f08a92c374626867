package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// CreateRenderer draws header and rows.
func (t *Table) CreateRenderer() fyne.WidgetRenderer {
	r := &tableRenderer{table: t, rule: canvas.NewRectangle(nil)}
	for range t.columns {
		r.titles = append(r.titles, canvas.NewText("", nil))
		r.signs = append(r.signs, [2]*canvas.ArbitraryPolygon{NewTriangle(nil), NewTriangle(nil)})
	}
	r.set()
	return r
}

type tableRenderer struct {
	table  *Table
	titles []*canvas.Text
	rule   *canvas.Rectangle
	// signs are two triangles beside each title that sorts; of the sorted column only
	// one is seen: pointing up from low to high.
	signs [][2]*canvas.ArbitraryPolygon
}

// rows is what stands under the header: the rows, or a scroll around them.
func (r *tableRenderer) rows() fyne.CanvasObject {
	if r.table.scroll != nil {
		return r.table.scroll
	}
	return r.table.body
}

// set draws the header.
func (r *tableRenderer) set() {
	t, p := r.table, PaletteNow()
	h, width := t.HeaderHeight(), t.Size().Width
	edges := t.body.edges(width)
	for i, c := range t.columns {
		style, tone := Note, Ink2
		if i == t.state.sorted && edges[i].width > 0 {
			style, tone = NoteStrong, Ink
		}
		if i == t.state.title {
			tone = Ink
		}
		r.setSigns(i, edges[i], style.Width(c.Title), p.Tone(tone))
		title := r.titles[i]
		title.Alignment = alignment(c.Right)
		at := fyne.NewPos(edges[i].x, float32(int((h-1-style.Height())/2)))
		Write(title, style, p.Tone(tone), shortened(c.Title, style, edges[i]), at, edges[i].width)
	}
	r.rule.FillColor = p.Hairline
	r.rule.Move(fyne.NewPos(0, h-1))
	r.rule.Resize(fyne.NewSize(width, 1))
	r.rows().Move(fyne.NewPos(0, h))
	r.rows().Resize(fyne.NewSize(width, max(t.Size().Height-h, 0)))
}

// setSigns puts the triangles beside a title: both where one can sort by it, one
// where it is sorted, none else.
func (r *tableRenderer) setSigns(column int, e edge, title float32, ink color.Color) {
	c, signs, state := r.table.columns[column], r.signs[column], r.table.state
	w, h := Scaled(7), Scaled(4)
	x := e.x + min(title, e.width) + 5
	if c.Right {
		x = e.x + e.width - min(title, e.width) - w - 5
	}
	signs[0].Points = []fyne.Position{{X: 0.5, Y: 0}, {X: 1, Y: 1}, {X: 0, Y: 1}}
	signs[1].Points = []fyne.Position{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 0.5, Y: 1}}
	middle := r.table.HeaderHeight() / 2
	for i, sign := range signs {
		top := middle + 1
		switch {
		case column == state.sorted:
			top = middle - h/2
		case i == 0:
			top = middle - 1 - h
		}
		sign.FillColor = ink
		sign.Move(fyne.NewPos(round(x), round(top)))
		sign.Resize(fyne.NewSize(w, h))
		sign.Hidden = !c.Sorts || e.width <= 0 || column == state.sorted && (i == 1) != state.down
	}
}

func (r *tableRenderer) Layout(fyne.Size) { r.set() }

// MinSize asks for the fixed columns that are never left out, and a little for
// each of the others.
func (r *tableRenderer) MinSize() fyne.Size {
	w := 2*tablePad - tableGap
	for _, c := range r.table.columns {
		if c.From == 0 && !c.without {
			w += Scaled(max(c.track().px, 24)) + tableGap
		}
	}
	return fyne.NewSize(w, r.table.HeightFor(w))
}

func (r *tableRenderer) Refresh() {
	r.set()
	r.rows().Refresh()
	canvas.Refresh(r.table)
}

func (r *tableRenderer) Objects() []fyne.CanvasObject {
	list := []fyne.CanvasObject{r.rule}
	for i, title := range r.titles {
		list = append(list, title, r.signs[i][0], r.signs[i][1])
	}
	return append(list, r.rows())
}

func (r *tableRenderer) Destroy() {}

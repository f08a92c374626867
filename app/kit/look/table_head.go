package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// CreateRenderer draws header and rows.
func (t *Table) CreateRenderer() fyne.WidgetRenderer {
	r := &tableRenderer{table: t, rule: canvas.NewRectangle(nil), arrow: NewTriangle(nil)}
	for range t.columns {
		r.titles = append(r.titles, canvas.NewText("", nil))
	}
	r.set()
	return r
}

type tableRenderer struct {
	table  *Table
	titles []*canvas.Text
	rule   *canvas.Rectangle
	// arrow shows the sorted column: pointing up from low to high.
	arrow *canvas.ArbitraryPolygon
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
	r.arrow.Hide()
	for i, c := range t.columns {
		style, tone := Note, Ink2
		if i == t.state.sorted && edges[i].width > 0 {
			style, tone = NoteStrong, Ink
			r.setArrow(edges[i], style.Width(c.Title), c.Right)
		}
		title := r.titles[i]
		title.Alignment = alignment(c.Right)
		at := fyne.NewPos(edges[i].x, float32(int((h-1-style.Height())/2)))
		Write(title, style, p.Tone(tone), shortened(c.Title, style, edges[i]), at, edges[i].width)
	}
	r.rule.FillColor = p.Hairline
	r.rule.Move(fyne.NewPos(0, h-1))
	r.rule.Resize(fyne.NewSize(width, 1))
	r.arrow.FillColor = p.Ink
	r.rows().Move(fyne.NewPos(0, h))
	r.rows().Resize(fyne.NewSize(width, max(t.Size().Height-h, 0)))
}

// setArrow puts the triangle beside the title of the sorted column.
func (r *tableRenderer) setArrow(e edge, title float32, right bool) {
	w, h := Scaled(7), Scaled(5)
	x := e.x + min(title, e.width) + 5
	if right {
		x = e.x + e.width - min(title, e.width) - w - 5
	}
	r.arrow.Points = []fyne.Position{{X: 0.5, Y: 0}, {X: 1, Y: 1}, {X: 0, Y: 1}}
	if r.table.state.down {
		r.arrow.Points = []fyne.Position{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 0.5, Y: 1}}
	}
	r.arrow.Move(fyne.NewPos(round(x), round(r.table.HeaderHeight()/2-h/2)))
	r.arrow.Resize(fyne.NewSize(w, h))
	r.arrow.Show()
}

func (r *tableRenderer) Layout(fyne.Size) { r.set() }

// MinSize asks for the fixed columns that are never left out, and a little for
// each of the others.
func (r *tableRenderer) MinSize() fyne.Size {
	w := 2*tablePad - tableGap
	for _, c := range r.table.columns {
		if c.From == 0 {
			w += Scaled(max(c.Width.px, 24)) + tableGap
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
	list := []fyne.CanvasObject{r.rule, r.arrow}
	for _, title := range r.titles {
		list = append(list, title)
	}
	return append(list, r.rows())
}

func (r *tableRenderer) Destroy() {}

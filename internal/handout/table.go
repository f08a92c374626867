package handout

import "ebbwell/internal/handout/paper"

// table is rows of cells under the heads of their columns. Cells wrap; the
// heads are set again where the table runs on to another side.
type table struct {
	columns []col
	rows    []row
	// small sets the cells in the type of notes, for the pages of colleagues.
	small bool
}

// style is that of the cells.
func (t table) style(p *Press) paper.Style {
	if t.small {
		return noteStyle().In(paper.Black)
	}
	return p.body()
}

// col is a column: its head and where its cells stand.
type col struct {
	head   string
	width  float64
	align  paper.Align
	strong bool
	// check puts a square to tick into each row instead of a text.
	check bool
}

// row is one row; under is a second, smaller line below its first cell.
type row struct {
	cells  []string
	under  string
	strong bool
	// total has no square to tick.
	total bool
}

// Paddings of a row, mm.
const (
	cellPad = 2.0
	rowPad  = 1.5
	// tightPad is used from manyRows on and on a tight page, leastPad on the
	// tightest.
	tightPad = 0.9
	leastPad = 0.5
	manyRows = 8
)

// items are the heads and the rows as a flow.
func (t table) items(p *Press, width float64) []paper.Item {
	head := t.head(p, width)
	items := []paper.Item{{Block: head, Keep: true}}
	for _, r := range t.rows {
		items = append(items, paper.Item{Block: t.row(p, r, width), Head: &head})
	}
	if len(items) > 2 {
		items[1].Keep = true
	}
	if n := len(t.rows); n > 1 && t.rows[n-1].total {
		items[n-1].Keep = true // a total does not stand alone
	}
	return items
}

// head sets the heads of the columns over a hairline.
func (t table) head(p *Press, width float64) paper.Block {
	st := noteStyle()
	var out paper.Block
	x := 0.0
	for _, c := range t.columns {
		w := c.width - 2*cellPad
		use := st
		if c.strong {
			use = st.Heavy(paper.SemiBold).In(paper.Black)
		}
		lines := p.faces.Clip(use, p.faces.Wrap(use, c.head, w), 5, w)
		out = out.Over(p.faces.Lines(use, lines, w, c.align).At(x+cellPad, 0))
		x += c.width
	}
	out.Width, out.Height = width, max(out.Height, st.Leading)+1.4
	return out.With(rowLine(out.Height, width))
}

// pad is the room above and below the text of a row.
func (t table) pad(p *Press) float64 {
	switch {
	case p.tight == tightest || t.small && p.tight > 0:
		return leastPad
	case t.small || p.tight > 0 || len(t.rows) >= manyRows:
		return tightPad
	}
	return rowPad
}

// row sets one row over a hairline.
func (t table) row(p *Press, r row, width float64) paper.Block {
	var out paper.Block
	x, pad := 0.0, t.pad(p)
	for i, c := range t.columns {
		w := c.width - 2*cellPad
		st := t.style(p)
		if r.strong || c.strong {
			st = st.Heavy(paper.SemiBold)
		}
		var cell paper.Block
		switch {
		case c.check && !r.total:
			cell = paper.Space(w, st.Leading).With(paper.Check{X: w - checkSize, Y: (st.Leading - checkSize) / 2, Size: checkSize})
		case i < len(r.cells):
			cell = p.faces.Lines(st, p.faces.Wrap(st, r.cells[i], w), w, c.align)
		}
		if i == 0 && r.under != "" {
			cell = cell.Under(p.faces.Paragraph(noteStyle(), r.under, w), 0)
		}
		out = out.Over(cell.At(x+cellPad, pad))
		x += c.width
	}
	out.Width, out.Height = width, max(out.Height, t.style(p).Leading+pad)+pad
	return out.With(rowLine(out.Height, width))
}

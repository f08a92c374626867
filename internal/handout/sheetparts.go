package handout

import (
	"slices"
	"strconv"
	"strings"

	"ebbwell/internal/handout/paper"
)

// Measures of what is written on by hand, mm.
const (
	sheetGap = 1.8
	// shortGrid is up to how many rows a table to fill in is not parted.
	shortGrid = 8
)

// boxHeight and gridHeight are how high a field and a row of a table are: a hand
// still writes on the lowest.
func (s sheet) boxHeight() float64 { return []float64{11, 10.4, 9.5}[s.p.tight] }

func (s sheet) gridHeight() float64 { return []float64{8, 7.2, 6.6}[s.p.tight] }

// box is a field to write into: a label, a unit, what is known already, and
// perhaps squares to tick, for "none" say.
type box struct {
	label, unit, filled string
	ticks               []string
	share               float64
}

// part is a heading and the blocks under it.
func (s sheet) part(key string, blocks ...paper.Block) []paper.Item {
	items := []paper.Item{s.p.section(s.p.say.Say(key), s.width)}
	for i, b := range blocks {
		it := paper.Item{Block: b, Gap: sheetGap}
		if i == 0 {
			it.Gap = 0
		}
		items = append(items, it)
	}
	return items
}

// gridPart is a heading, a remark and a table, held together where the table
// is short.
func (s sheet) gridPart(title, remark string, g grid) []paper.Item {
	items := s.part(title, s.p.faces.Paragraph(noteStyle(), s.p.say.Say(remark), s.width))
	items[len(items)-1].Keep = true
	return append(items, s.grid(g)...)
}

// boxes sets fields in a row, by their shares of the width.
func (s sheet) boxes(list ...box) paper.Block {
	const gap = 1.6
	var shares float64
	for _, b := range list {
		shares += b.share
	}
	room := s.width - gap*float64(len(list)-1)
	var blocks []paper.Block
	for _, b := range list {
		blocks = append(blocks, s.box(b, room*b.share/shares))
	}
	return paper.Beside(gap, blocks...)
}

// box draws one field.
func (s sheet) box(b box, width float64) paper.Block {
	const pad = 1.4
	f, w, height := s.p.faces, width-2*pad, s.boxHeight()
	st := f.Fit(smallStyle(), b.label, w, 0.8)
	label := f.Lines(st, f.Clip(st, f.Wrap(st, b.label, w), 1, w), w, paper.Left).At(pad, 0.7)
	out := paper.Space(width, height).With(paper.Box{W: width, H: height, Radius: 0.8, Width: hairlineWidth, Stroke: paper.Faint})
	out = out.With(label.Marks...)
	low := height - noteStyle().Leading - 0.8
	if b.unit != "" {
		out = out.With(f.Line(noteStyle(), b.unit, w, paper.Right).At(pad, low).Marks...)
	}
	x := pad
	for _, tick := range b.ticks {
		text := f.Line(smallStyle(), tick, w-4, paper.Left).At(x+3.6, low+0.4)
		out = out.With(text.Marks...).With(paper.Check{X: x, Y: low + 0.6, Size: 2.8})
		x += 3.6 + f.Width(smallStyle(), tick) + 3
	}
	if b.filled != "" {
		fill := f.Fit(s.p.body(), b.filled, w, 0.7)
		out = out.With(f.Lines(fill, f.Clip(fill, f.Wrap(fill, b.filled, w), 1, w), w, paper.Left).At(pad, low-0.8).Marks...)
	}
	return out
}

// choices is a label and words to tick, on as many lines as a width needs.
func (s sheet) choices(width float64, label string, words ...string) paper.Block {
	st := noteStyle().In(paper.Black)
	st.Leading = 5.2
	return s.p.choices(st, st.In(paper.Grey), width, label, words...)
}

// choices sets the words to tick in one style and the label in another.
func (p *Press) choices(st, of paper.Style, width float64, label string, words ...string) paper.Block {
	const gap, apart = 1.2, 5.0
	f := p.faces
	out := f.Line(of, label, width, paper.Left)
	start := 0.0
	if label != "" {
		start = f.Width(of, label) + 3
	}
	x, y := start, 0.0
	for _, word := range words {
		w := checkSize + gap + f.Width(st, word)
		if x+w > width && x > start {
			x, y = start, y+st.Leading
		}
		text := f.Paragraph(st, word, width-x-checkSize-gap)
		out = out.With(paper.Check{X: x, Y: y + (st.Leading-checkSize)/2, Size: checkSize})
		out = out.With(text.At(x+checkSize+gap, y).Marks...)
		x += w + apart
		y += text.Height - st.Leading
	}
	out.Width, out.Height = width, y+st.Leading
	return out
}

// scale is a label and numbers to ring.
func (s sheet) scale(label string, from, to int) paper.Block {
	const room, each = 74.0, 9.4
	f := s.p.faces
	st := s.p.body()
	out := f.Paragraph(noteStyle().In(paper.Black), label, room-2).At(0, (st.Leading-noteStyle().Leading)/2)
	for i := from; i <= to; i++ {
		out = out.With(f.Line(st, strconv.Itoa(i), each, paper.Centre).At(room+float64(i-from)*each, 0).Marks...)
	}
	out.Width, out.Height = s.width, max(out.Height, st.Leading)
	return out
}

// grid is a table to fill in: a wide first column, columns of fixed width, and
// a last one to tick or to note in.
type grid struct {
	first     string
	columns   []gridCol
	last      string
	lastWidth float64
	rows      int
}

type gridCol struct {
	head  string
	width float64
}

// grid draws the heads and the numbered rows.
func (s sheet) grid(g grid) []paper.Item {
	all := s.columns(g)
	head := s.gridHead(all)
	items := []paper.Item{{Block: head, Keep: true, Gap: 0.6}}
	for i := range g.rows {
		together := g.rows <= shortGrid && i+1 < g.rows
		items = append(items, paper.Item{Block: s.gridRow(all, i+1), Head: &head, Keep: together})
	}
	return items
}

// pairs is a table whose rows stand two and two beside each other, first down the left
// half; one row alone has the whole width.
func (s sheet) pairs(g grid) []paper.Item {
	if g.rows < 2 {
		return s.grid(g)
	}
	const apart = 4.0
	half := s
	half.width = (s.width - apart) / 2
	all := half.columns(g)
	head := paper.Beside(apart, half.gridHead(all), half.gridHead(all))
	items := []paper.Item{{Block: head, Keep: true, Gap: 0.6}}
	down := (g.rows + 1) / 2
	for i := range down {
		row := []paper.Block{half.gridRow(all, i+1)}
		if n := down + i + 1; n <= g.rows {
			row = append(row, half.gridRow(all, n))
		}
		items = append(items, paper.Item{Block: paper.Beside(apart, row...), Head: &head, Keep: g.rows <= shortGrid && i+1 < down})
	}
	return items
}

// columns are those of a table: the first has the room that the others leave.
func (s sheet) columns(g grid) []gridCol {
	first := s.width - g.lastWidth
	for _, c := range g.columns {
		first -= c.width
	}
	all := append([]gridCol{{g.first, first}}, g.columns...)
	return append(all, gridCol{g.last, g.lastWidth})
}

func (s sheet) gridHead(all []gridCol) paper.Block {
	st := smallStyle()
	var out paper.Block
	x := 0.0
	for _, c := range all {
		w := c.width - 1.6
		out = out.Over(s.p.faces.Lines(st, s.p.faces.Wrap(st, c.head, w), w, paper.Left).At(x+0.8, 0))
		x += c.width
	}
	out.Width, out.Height = s.width, out.Height+0.8
	return out.With(gridLine(0, out.Height, s.width, out.Height))
}

// gridRow draws a row: its number, the lines between its cells and that below.
func (s sheet) gridRow(all []gridCol, n int) paper.Block {
	out := paper.Space(s.width, s.gridHeight())
	out = out.With(s.p.faces.Line(noteStyle(), strconv.Itoa(n), 6, paper.Left).At(1.2, (s.gridHeight()-noteStyle().Leading)/2).Marks...)
	x := 0.0
	for _, c := range all {
		out = out.With(gridLine(x, 0, x, s.gridHeight()))
		x += c.width
	}
	return out.With(gridLine(x, 0, x, s.gridHeight()), gridLine(0, s.gridHeight(), s.width, s.gridHeight()))
}

func gridLine(x1, y1, x2, y2 float64) paper.Line {
	return paper.Line{X1: x1, Y1: y1, X2: x2, Y2: y2, Width: hairlineWidth, Ink: paper.Faint}
}

// writing is lines to write on.
func (s sheet) writing(n int) paper.Block {
	out := paper.Space(s.width, float64(n)*s.gridHeight())
	for i := range n {
		out = out.With(rowLine(float64(i+1)*s.gridHeight(), s.width))
	}
	return out
}

// compactFooter carries the safety sentences in small type, for sheets that
// stay with the practitioner and need the room.
func (p *Press) compactFooter(t Terms, width float64, more ...string) paper.Block {
	return p.footerFor("handout.safety.title", t, width, more...)
}

// footerFor is a compact footer whose box begins with a title of its own.
func (p *Press) footerFor(title string, t Terms, width float64, more ...string) paper.Block {
	const inner = 2.4
	box := p.stopBox(title, t, noteStyle().In(paper.Black), width, inner)
	small := p.faces.Paragraph(smallStyle(), strings.Join(slices.Concat(smallPrint(p.say), more, p.lackPrint()), " "), width)
	return box.Under(small, 1.6)
}

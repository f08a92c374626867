package squad

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// column is a column of the rows.
type column int

// The columns, from left to right.
const (
	colNumber column = iota
	colName
	colBefore
	colSwatch
	colBottle
	colBottleAfter
	colRefill
	colDrunk
	colAfter
	colUrine
	colPatch
	colSymptoms
	colLoss
	colState
	columnsInAll
)

// Room in a row, in px at 100 % text.
const (
	rowGap   float32 = 8
	rowPadX  float32 = 12
	rowPadY  float32 = 5
	linePx   float32 = 18
	leastPx  float32 = 150 // of a name
	narrowPx float32 = 1130
	tinyPx   float32 = 760
)

// grid says where the columns stand at a width.
type grid struct {
	level level
	x, w  [columnsInAll]float32
}

// level is how much room there is for the size of the text.
type level int

// The levels.
const (
	wide level = iota
	// narrow: bottles, urine, patch and symptoms stand in the open row only.
	narrow
	// tiny: the mass before too.
	tiny
)

// gridFor resolves the columns: in a narrow window, or with large text, name,
// masses, loss and state stay.
func gridFor(width float32) grid {
	g := grid{}
	px := [columnsInAll]float32{24, 0, 62, 12, 52, 56, 66, 58, 84, 62, 92, 88, 108, 136}
	switch {
	case width < look.Scaled(tinyPx):
		g.level, px = tiny, [columnsInAll]float32{24, 0, 0, 0, 0, 0, 0, 0, 100, 0, 0, 0, 126, 150}
	case width < look.Scaled(narrowPx):
		g.level, px = narrow, [columnsInAll]float32{24, 0, 84, 0, 0, 0, 0, 0, 116, 0, 0, 0, 130, 190}
	}
	used, gap := float32(0), look.Scaled(rowGap)
	for c := range px {
		if px[c] > 0 {
			g.w[c] = look.Scaled(px[c])
			used += g.w[c] + gap
		}
	}
	g.w[colName] = max(look.Scaled(leastPx)*0.6, width-2*rowPadX-used)
	x := rowPadX
	for c := range g.x {
		g.x[c] = x
		if g.w[c] > 0 {
			x += g.w[c] + gap
		}
	}
	return g
}

// shows reports whether a column stands in rows that are closed.
func (g grid) shows(c column) bool { return g.w[c] > 0 }

// cell is an object in a column: on a line of the row, or below it on a second line
// of text.
type cell struct {
	object fyne.CanvasObject
	col    column
	line   int
	sub    bool
}

// place puts a cell into a row whose lines have a pitch and a box of a height.
func (c cell) place(g grid, top, pitch, box float32) {
	w := g.w[c.col]
	h := look.HeightFor(c.object, w)
	y := top + float32(c.line)*pitch
	if c.sub {
		y += subDrop(box)
	} else {
		y += float32(int((box - min(h, box)) / 2))
	}
	c.object.Move(fyne.NewPos(g.x[c.col], y))
	c.object.Resize(fyne.NewSize(w, h))
}

// foot is how far down a cell reaches from the top of the lines.
func (c cell) foot(g grid, pitch, box float32) float32 {
	w := g.w[c.col]
	y := float32(c.line) * pitch
	if c.sub {
		y += subDrop(box)
	}
	return y + look.HeightFor(c.object, w)
}

// leftOut reports whether a column stands below the open row at a level.
func leftOut(c column, at level) bool {
	switch {
	case c == colBefore:
		return at == tiny
	case c >= colSwatch && c <= colDrunk, c >= colUrine && c <= colSymptoms:
		return at != wide
	}
	return false
}

// subDrop is how far a second line of text lies below the top of a box.
func subDrop(box float32) float32 {
	drop := box/2 + look.Scaled(linePx)/2 - 1
	if box > look.Scaled(linePx) {
		drop += 4 // below a title
	}
	return drop
}

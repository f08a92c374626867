package paper

// Block is a piece of a page, laid out from its own top left corner.
type Block struct {
	Marks         []Mark
	Width, Height float64
}

// Align says where a line stands in its width.
type Align uint8

// The ways to align.
const (
	Left Align = iota
	Right
	Centre
)

// Space is an empty block.
func Space(width, height float64) Block { return Block{Width: width, Height: height} }

// Line sets one line of text in a width; it does not wrap.
func (f *Faces) Line(st Style, s string, width float64, a Align) Block {
	s = f.Clean(s)
	b := Block{Width: width, Height: st.Leading}
	if s == "" {
		return b
	}
	x := 0.0
	switch a {
	case Right:
		x = width - f.measure(st, s)
	case Centre:
		x = (width - f.measure(st, s)) / 2
	}
	b.Marks = []Mark{Text{X: x, Y: st.baseline(), Text: s, Size: st.Size, Weight: st.Weight, Ink: st.Ink}}
	return b
}

// baseline is how far below the top of its line a text stands: the small
// letters are in the middle of the leading.
func (st Style) baseline() float64 { return st.Leading/2 + st.Size*0.33 }

// Lines sets lines one under the other.
func (f *Faces) Lines(st Style, lines []string, width float64, a Align) Block {
	b := Block{Width: width, Height: float64(len(lines)) * st.Leading}
	for i, s := range lines {
		for _, m := range f.Line(st, s, width, a).Marks {
			b.Marks = append(b.Marks, m.moved(0, float64(i)*st.Leading))
		}
	}
	return b
}

// Paragraph wraps a text in a width.
func (f *Faces) Paragraph(st Style, s string, width float64) Block {
	return f.Lines(st, f.Wrap(st, s, width), width, Left)
}

// With returns the block with marks added; its size stays.
func (b Block) With(marks ...Mark) Block {
	b.Marks = append(append(make([]Mark, 0, len(b.Marks)+len(marks)), b.Marks...), marks...)
	return b
}

// At returns the block shifted inside a larger one.
func (b Block) At(dx, dy float64) Block {
	marks := make([]Mark, len(b.Marks))
	for i, m := range b.Marks {
		marks[i] = m.moved(dx, dy)
	}
	return Block{Marks: marks, Width: b.Width + dx, Height: b.Height + dy}
}

// Under puts c below b, a gap between them.
func (b Block) Under(c Block, gap float64) Block {
	if len(b.Marks) == 0 && b.Height == 0 {
		gap = 0
	}
	out := b.With(c.At(0, b.Height+gap).Marks...)
	out.Width, out.Height = max(b.Width, c.Width), b.Height+gap+c.Height
	return out
}

// Over puts the marks of c on those of b, both from the same corner.
func (b Block) Over(c Block) Block {
	out := b.With(c.Marks...)
	out.Width, out.Height = max(b.Width, c.Width), max(b.Height, c.Height)
	return out
}

// Stack puts blocks one under the other.
func Stack(gap float64, blocks ...Block) Block {
	var out Block
	for _, b := range blocks {
		out = out.Under(b, gap)
	}
	return out
}

// Beside puts blocks next to each other from the left, by their widths.
func Beside(gap float64, blocks ...Block) Block {
	var out Block
	x := 0.0
	for _, b := range blocks {
		out = out.Over(b.At(x, 0))
		x += b.Width + gap
	}
	return out
}

// Framed puts a block in a box with an inner margin.
func (b Block) Framed(width, margin float64) Block {
	in := b.At(margin, margin)
	frame := Box{W: width, H: b.Height + 2*margin, Radius: 1, Width: 0.3, Stroke: Black}
	return Block{Marks: append([]Mark{frame}, in.Marks...), Width: width, Height: frame.H}
}

// cut parts a block that is too tall at a height, so that no text is cut in
// two. At least the topmost text stays, so that cutting always comes to an end.
func (b Block) cut(height float64) (first, rest Block) {
	for at := height; ; at += height {
		first, rest = b.cutAt(at)
		if len(first.Marks) > 0 || len(rest.Marks) == 0 {
			return first, rest
		}
	}
}

// cutAt parts a block: what ends above at stays, what ends below moves on, and
// a box that lies across is parted in two.
func (b Block) cutAt(at float64) (first, rest Block) {
	first, rest = Block{Width: b.Width}, Block{Width: b.Width}
	top, moves := b.Height, false
	for _, m := range b.Marks {
		if t, bottom := m.span(); bottom > at && !isBox(m) {
			top, moves = min(top, t), true
		}
	}
	if !moves {
		return b, rest
	}
	top = min(top, at)
	for _, m := range b.Marks {
		t, bottom := m.span()
		switch {
		case bottom <= at:
			first.Marks = append(first.Marks, m)
			first.Height = max(first.Height, bottom)
		case isBox(m) && t < top:
			over, under := m.(Box), m.(Box)
			over.H = top - t
			under.Y, under.H = top, bottom-top
			first.Marks = append(first.Marks, over)
			rest.Marks = append(rest.Marks, under.moved(0, -top))
		default:
			rest.Marks = append(rest.Marks, m.moved(0, -top))
		}
	}
	rest.Height = b.Height - top
	return first, rest
}

func isBox(m Mark) bool {
	_, ok := m.(Box)
	return ok
}

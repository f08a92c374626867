package paper

// Mark is one thing drawn on a page. All measures are millimetres; X grows to
// the right and Y downward.
type Mark interface {
	// moved returns the mark shifted by (dx, dy).
	moved(dx, dy float64) Mark
	// scaled returns the mark made larger or smaller about the corner of the sheet.
	scaled(by float64) Mark
	// span returns the top and bottom of the mark.
	span() (top, bottom float64)
}

// Weight is a weight of the typeface.
type Weight uint8

// The weights.
const (
	Regular Weight = iota
	Medium
	SemiBold
)

// Text is one line of text; X is its left end and Y its baseline. Size is
// that of the em.
type Text struct {
	X, Y   float64
	Text   string
	Size   float64
	Weight Weight
	Ink    Ink
}

// Line is a straight line; Dash is the length of dashes and of the gaps
// between them, 0 for an unbroken line.
type Line struct {
	X1, Y1, X2, Y2 float64
	Width          float64
	Ink            Ink
	Dash           float64
}

// Box is a rectangle. Stroke and Fill may be [NoInk]. A dashed box is drawn
// with square corners.
type Box struct {
	X, Y, W, H float64
	Radius     float64
	Width      float64
	Stroke     Ink
	Fill       Ink
	Dash       float64
}

// Check is an empty square to tick.
type Check struct {
	X, Y, Size float64
}

// Hatch fills a rectangle with slanting lines Step apart.
type Hatch struct {
	X, Y, W, H float64
	Step       float64
	Ink        Ink
}

// checkLine is the line of a square to tick.
const checkLine = 0.26

func (m Text) moved(dx, dy float64) Mark {
	m.X, m.Y = m.X+dx, m.Y+dy
	return m
}

func (m Line) moved(dx, dy float64) Mark {
	m.X1, m.Y1, m.X2, m.Y2 = m.X1+dx, m.Y1+dy, m.X2+dx, m.Y2+dy
	return m
}

func (m Box) moved(dx, dy float64) Mark {
	m.X, m.Y = m.X+dx, m.Y+dy
	return m
}

func (m Check) moved(dx, dy float64) Mark {
	m.X, m.Y = m.X+dx, m.Y+dy
	return m
}

func (m Hatch) moved(dx, dy float64) Mark {
	m.X, m.Y = m.X+dx, m.Y+dy
	return m
}

func (m Text) scaled(by float64) Mark {
	m.X, m.Y, m.Size = m.X*by, m.Y*by, m.Size*by
	return m
}

func (m Line) scaled(by float64) Mark {
	m.X1, m.Y1, m.X2, m.Y2 = m.X1*by, m.Y1*by, m.X2*by, m.Y2*by
	m.Width, m.Dash = m.Width*by, m.Dash*by
	return m
}

func (m Box) scaled(by float64) Mark {
	m.X, m.Y, m.W, m.H = m.X*by, m.Y*by, m.W*by, m.H*by
	m.Radius, m.Width, m.Dash = m.Radius*by, m.Width*by, m.Dash*by
	return m
}

func (m Check) scaled(by float64) Mark {
	m.X, m.Y, m.Size = m.X*by, m.Y*by, m.Size*by
	return m
}

func (m Hatch) scaled(by float64) Mark {
	m.X, m.Y, m.W, m.H, m.Step = m.X*by, m.Y*by, m.W*by, m.H*by, m.Step*by
	return m
}

func (m Text) span() (top, bottom float64) { return m.Y - m.Size*ascent, m.Y + m.Size*descent }
func (m Line) span() (top, bottom float64) { return min(m.Y1, m.Y2), max(m.Y1, m.Y2) }
func (m Box) span() (top, bottom float64)  { return m.Y, m.Y + m.H }
func (m Check) span() (top, bottom float64) {
	return m.Y, m.Y + m.Size
}
func (m Hatch) span() (top, bottom float64) { return m.Y, m.Y + m.H }

// box is the outline of the square.
func (m Check) box() Box {
	return Box{X: m.X, Y: m.Y, W: m.Size, H: m.Size, Width: checkLine, Stroke: Black}
}

// lines are the slanting lines, cut off at the edges of the rectangle.
func (m Hatch) lines() []Line {
	const width = 0.18
	if m.Step <= 0 || m.W <= 0 || m.H <= 0 {
		return nil
	}
	var list []Line
	for c := m.Step; c < m.W+m.H; c += m.Step {
		// x + y = c, measured from the top left corner.
		x1, x2 := max(0, c-m.H), min(m.W, c)
		list = append(list, Line{
			X1: m.X + x1, Y1: m.Y + c - x1, X2: m.X + x2, Y2: m.Y + c - x2,
			Width: width, Ink: m.Ink,
		})
	}
	return list
}

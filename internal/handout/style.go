package handout

import "ebbwell/internal/handout/paper"

// The styles of the pages; one point is 0.353 mm.

func titleStyle() paper.Style {
	return paper.Style{Size: 7.2, Leading: 8.6, Weight: paper.SemiBold, Ink: paper.Black}
}

func headingStyle() paper.Style {
	return paper.Style{Size: 4.4, Leading: 6.6, Weight: paper.SemiBold, Ink: paper.Black}
}

func quoteStyle() paper.Style {
	return paper.Style{Size: 4.2, Leading: 5.8, Ink: paper.Black}
}

// body is the style of the text; closer set on a tight page.
func (p *Press) body() paper.Style {
	switch p.tight {
	case 0:
		return paper.Style{Size: 3.7, Leading: 5.05, Ink: paper.Black}
	case 1:
		return paper.Style{Size: 3.6, Leading: 4.75, Ink: paper.Black}
	}
	return paper.Style{Size: 3.5, Leading: 4.5, Ink: paper.Black}
}

func (p *Press) strong() paper.Style { return p.body().Heavy(paper.SemiBold) }

// gap is the room above a section.
func (p *Press) gap() float64 {
	return []float64{4.4, 3, 2.2}[p.tight]
}

func noteStyle() paper.Style { return paper.Style{Size: 3.1, Leading: 4.2, Ink: paper.Grey} }

// finePrint is the small print of the large pages: 8 points.
func finePrint() paper.Style { return paper.Style{Size: 2.85, Leading: 3.75, Ink: paper.Grey} }

// smallStyle is the smallest that is printed: 7.4 points.
func smallStyle() paper.Style { return paper.Style{Size: 2.6, Leading: 3.4, Ink: paper.Grey} }

// Measures of the large pages, mm.
const (
	margin        = 15.0
	top           = 12.0
	bottom        = 11.0
	hairlineWidth = 0.26
	rule          = 0.5
	columnGap     = 8.0
	checkSize     = 3.7
)

// rowLine is the hairline under a row of a table.
func rowLine(y, width float64) paper.Mark {
	return paper.Line{X2: width, Y1: y, Y2: y, Width: hairlineWidth, Ink: paper.Hairline}
}

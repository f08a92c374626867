package handout

import (
	"strconv"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// Stand is where a bottle stands before and after a break.
type Stand struct {
	// Name is what the athlete calls the bottle; empty where it has no name.
	Name string
	// Drink is its place among the drinks of the page.
	Drink int
	// Bottle counts the bottles of a drink from 1; 0 where there is one.
	Bottle int
	// Holds is the size of the bottle; Before and Left are what is in it.
	Holds, Before, Left quantity.Millilitres
	// Line counts the lines of the bottle from the top. Of breaks that share a row it is
	// that of the last; From is then that of the first.
	Line, From int
}

// Measures of a drawn bottle as shares of its height: the cap, and where the body
// begins below the shoulder.
const (
	capShare  = 0.08
	bodyShare = 0.22
)

// bottle draws a bottle: pale is what is drunk now, full colour what stays, and the
// line across is where to stop. Water has a small cap over a sloping shoulder,
// other drinks a wide cap over a straight one, so that they differ without colour.
func (p *Press) bottle(s Stand, sub Substance, maybe bool, width, height float64) paper.Block {
	body, foot := height*bodyShare, height
	deep := foot - body
	level := func(v quantity.Millilitres) float64 {
		return foot - deep*min(1, max(0, float64(v/max(1, s.Holds))))
	}
	b := paper.Space(width, height)
	before, left := level(s.Before), level(s.Left)
	b = b.With(
		paper.Box{Y: before, W: width, H: foot - before, Fill: sub.pale()},
		paper.Box{Y: left, W: width, H: foot - left, Fill: sub.ink()})
	b = b.With(neck(sub, width, height)...)
	b = b.With(paper.Box{Y: body, W: width, H: deep, Width: rule, Stroke: paper.Black})
	over := width * 0.2
	dash := 0.0
	if maybe {
		dash = 0.8
	}
	b = b.With(paper.Line{X1: -over, X2: width + over, Y1: left, Y2: left, Width: 0.7, Ink: paper.Black, Dash: dash})
	if s.Left <= 0 {
		return b
	}
	st := noteStyle().In(paper.Black).Heavy(paper.SemiBold)
	return b.With(p.faces.Line(st, strconv.Itoa(s.Line), 4, paper.Left).At(width+over+0.6, left-st.Leading/2).Marks...)
}

// neck is the cap and shoulder of a bottle.
func neck(sub Substance, width, height float64) []paper.Mark {
	lid, body := height*capShare, height*bodyShare
	if sub != Water {
		return []paper.Mark{
			paper.Box{X: width * 0.1, W: width * 0.8, H: lid * 1.4, Fill: paper.Black},
			paper.Box{X: width * 0.05, Y: lid * 1.4, W: width * 0.9, H: body - lid*1.4, Width: rule, Stroke: paper.Black},
		}
	}
	left, right := width*0.33, width*0.67
	return []paper.Mark{
		paper.Box{X: left, W: right - left, H: lid, Fill: paper.Black},
		paper.Line{X1: left, Y1: lid, X2: 0, Y2: body, Width: rule, Ink: paper.Black},
		paper.Line{X1: right, Y1: lid, X2: width, Y2: body, Width: rule, Ink: paper.Black},
	}
}

// pale is the tint of a substance, for what is drunk now.
func (s Substance) pale() paper.Ink {
	if s == Water {
		return paper.WaterPale
	}
	return paper.DrinkPale
}

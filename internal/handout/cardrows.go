package handout

import (
	"slices"

	"ebbwell/internal/handout/paper"
)

// twoSidesOfRows is how many rows a card has on its front and back.
const twoSidesOfRows = 12

// oneCard are the ways to set a card so that one holds it all: of many breaks those that
// ask the same share a row before the type becomes smaller.
func oneCard() []way {
	return []way{
		{tight: 1, low: 1}, {gather: gatherMost}, {tight: 1, low: 1, gather: gatherMost}, {tight: 1, low: 2}, {tight: 1, low: 2, gather: gatherMost},
		{tight: 2, low: 3}, {tight: 2, low: 3, gather: gatherMost},
	}
}

// severalCards are the ways to set what one card does not hold: in large type alone.
func severalCards() []way {
	return []way{{tight: 1, low: 1}, {gather: gatherMost}, {tight: 1, low: 1, gather: gatherMost}}
}

// cards fills one card where that is possible, else as few as large type needs.
func (p *Press) cards(c KitBagCard) []paper.Page {
	lay := func(of int) func(p *Press) (paper.Frame, []paper.Item) {
		return func(p *Press) (paper.Frame, []paper.Item) { return p.cardItems(c, of) }
	}
	pages := p.pourBy(oneCard(), lay(1))
	for of := 1; len(pages) > of; {
		of = len(pages)
		pages = p.pourBy(severalCards(), lay(of)) // with its number a title may need another line
	}
	return pages
}

// cardChances are the rows of a card: those of the plan, or fewer where breaks share one.
func (p *Press) cardChances(list []Chance) []Chance {
	if len(list) > fewRows {
		list = joinEqual(list)
	}
	if p.gather > 0 && len(list) > fewRows {
		list = joinSame(list)
	}
	if len(list) > twoSidesOfRows {
		list = gathered(list, max(gatherMost, (len(list)+twoSidesOfRows-1)/twoSidesOfRows))
	}
	return list
}

// joinSame joins neighbours that ask for the same, also from bottles with lines: "from
// line 2 to line 5".
func joinSame(list []Chance) []Chance {
	var out []Chance
	for _, c := range list {
		if n := len(out); n > 0 && out[n-1].asks(c) {
			out[n-1] = out[n-1].until(c)
			continue
		}
		out = append(out, c)
	}
	return out
}

// asks reports whether a break asks for the same as another, out of the same fillings of
// the same bottles.
func (c Chance) asks(next Chance) bool {
	same := func(a, b Stand) bool {
		return a.Name == b.Name && a.Drink == b.Drink && a.Bottle == b.Bottle && (a.Left > 0) == (b.Left > 0)
	}
	return c.Maybe == next.Maybe && !c.Together && !next.Together && c.Mouthfuls == next.Mouthfuls && slices.Equal(c.Volumes, next.Volumes) &&
		slices.Equal(c.Foods, next.Foods) && slices.EqualFunc(c.Stands, next.Stands, same)
}

// until is a row with one more break, as its bottles stand after that.
func (c Chance) until(next Chance) Chance {
	first := c.Stands
	c = c.with(next)
	c.More = append(c.More, next.More...)
	c.Stands = slices.Clone(next.Stands)
	for i, s := range first {
		if c.Stands[i].From = s.From; s.From == 0 {
			c.Stands[i].From = s.Line
		}
	}
	return c
}

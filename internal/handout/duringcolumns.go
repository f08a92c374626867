package handout

import (
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/words"
)

// breakColumns sets many breaks in two columns, first down the left one, then down
// the right.
func (p *Press) breakColumns(rows []Chance, d During, am amounts, width float64) []paper.Item {
	each := (width - columnGap) / 2
	f := cellForms()[min(p.low-fullForms, halfForms-1)]
	var columns [2]paper.Block
	half := (len(rows) + 1) / 2
	for i, c := range rows {
		b := p.breakCell(c, d, am, f, each)
		columns[i/half] = columns[i/half].Under(b.With(edges(c.Maybe, true, true, each, b.Height)...), 0.5)
	}
	both := paper.Beside(columnGap, columns[0], columns[1])
	total := p.marked(p.body(), p.totalText(d, am), width)
	return []paper.Item{
		{Block: p.duringHead(d, am, width), Gap: p.gap(), Keep: true}, {Block: both, Keep: true}, {Block: total, Gap: 1.2},
	}
}

// Measures of a cell, mm: the room for the number of mouthfuls and for the words
// behind it.
const (
	cellNumber = 9.0
	cellWords  = 24.0
)

// breakCell is a break in half the width: its bottle, the name over drink and food,
// the mouthfuls over the amount, a square to tick.
func (p *Press) breakCell(c Chance, d During, am amounts, f rowForm, width float64) paper.Block {
	const pad = 0.6
	var bottles paper.Block
	at := 1.0
	if d.across() == 1 { // the words alone say it of two
		for _, s := range c.Stands {
			bottles = p.bottle(s, d.substance(s.Drink), c.Maybe, f.bottleW, f.bottleH).At(at+f.bottleW*0.2, 0)
		}
		at += f.bottleW*1.4 + 3.2
	}
	edge := width - d.checksWidth() - 1 - cellWords
	text := p.cellText(c, d, am, f, edge-cellNumber-at-0.5)
	mouthfuls := p.mouthfulsIn(c, am, f, edge, cellNumber, cellWords)
	height := max(f.height, text.Height+2*pad, mouthfuls.Height+2*pad, bottles.Height+2*pad)
	mid := func(b paper.Block) float64 { return (height - b.Height) / 2 }
	out := paper.Space(width, height)
	out = out.With(bottles.At(0, mid(bottles)).Marks...)
	out = out.With(text.At(at, mid(text)).Marks...)
	out = out.With(mouthfuls.At(0, mid(mouthfuls)).Marks...)
	return out.With(checks(c.times(), width, height)...)
}

// checksWidth is the room that the squares of the row with most of them take.
func (d During) checksWidth() float64 {
	most := 0.0
	for _, c := range d.Chances {
		most = max(most, checksWidth(c.times()))
	}
	return most
}

// cellText is the name of a break, the drink with its line in few words, and the food.
func (p *Press) cellText(c Chance, d During, am amounts, f rowForm, width float64) paper.Block {
	name := "*" + unmarked(words.AtStart(am.typed(p.joinedName(c)))) + "*"
	if c.Maybe {
		name += " " + p.say.Say("handout.during.maybe")
	}
	b := p.marked(p.readable(f.name.Heavy(paper.SemiBold), unmarked(name), width).Heavy(paper.Regular), name, width)
	for _, line := range p.cardLines(c, d, am) {
		b = b.Under(p.marked(f.note, begins(line), width), 0)
	}
	return b.Under(p.breakFood(c, am, f, width), 0)
}

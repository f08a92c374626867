package handout

import (
	"strconv"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/words"
)

// breakColumns sets many breaks in two columns, first down the left one, then down
// the right.
func (p *Press) breakColumns(rows []Chance, d During, am amounts, width float64) []paper.Item {
	each := (width - columnGap) / 2
	var columns [2]paper.Block
	half := (len(rows) + 1) / 2
	for i, c := range rows {
		b := p.breakCell(c, d, am, each)
		columns[i/half] = columns[i/half].Under(b.With(edges(c.Maybe, true, true, each, b.Height)...), 0.5)
	}
	both := paper.Beside(columnGap, columns[0], columns[1])
	total := p.marked(p.body(), p.totalText(d, am), width)
	return []paper.Item{
		{Block: p.duringHead(d, am, width), Gap: p.gap(), Keep: true}, {Block: both, Keep: true}, {Block: total, Gap: 1.2},
	}
}

// breakCell is a break in half the width: its bottle, the name over drink and food,
// the mouthfuls over the amount, a square to tick.
func (p *Press) breakCell(c Chance, d During, am amounts, width float64) paper.Block {
	const pad, sips = 0.7, 20.0
	f := rowForms()[len(rowForms())-1]
	at := 1.0
	if d.lined() {
		at += f.bottleW*1.4 + 3.2
	}
	text := p.cellText(c, d, am, f, width-at-sips-boxEdge-1)
	amount := p.cellAmount(c, am, f, sips)
	height := max(f.height, text.Height+2*pad, amount.Height+2*pad)
	mid := func(b paper.Block) float64 { return (height - b.Height) / 2 }
	out := paper.Space(width, height)
	if len(c.Stands) > 0 {
		b := p.bottle(c.Stands[0], d.substance(c.Stands[0].Drink), c.Maybe, f.bottleW, f.bottleH)
		out = out.With(b.At(1+f.bottleW*0.2, mid(b)).Marks...)
	}
	out = out.With(text.At(at, mid(text)).Marks...)
	out = out.With(amount.At(width-sips-boxEdge-1, mid(amount)).Marks...)
	return out.With(checks(c.times(), width, height)...)
}

func (p *Press) cellText(c Chance, d During, am amounts, f rowForm, width float64) paper.Block {
	name := "*" + unmarked(words.AtStart(am.typed(p.joinedName(c)))) + "*"
	if c.Maybe {
		name += " " + p.say.Say("handout.during.maybe")
	}
	b := p.marked(f.name, name, width)
	for _, line := range p.drinkLines(c, d, am) {
		b = b.Under(p.marked(f.note, begins(line), width), 0)
	}
	return b.Under(p.breakFood(c, am, f, width), 0)
}

// cellAmount is the number of mouthfuls with the word behind it, and under them the
// amount.
func (p *Press) cellAmount(c Chance, am amounts, f rowForm, width float64) paper.Block {
	if sum(c.Volumes) <= 0 {
		return paper.Block{}
	}
	amount := am.millilitres(sum(c.Volumes))
	if c.Mouthfuls <= 0 {
		st := f.name.Heavy(paper.SemiBold)
		return p.faces.Line(p.faces.Fit(st, amount, width, 0.6), amount, width, paper.Right)
	}
	word := p.say.Say("handout.during.mouthfuls.word", c.Mouthfuls)
	if c.times() > 1 {
		word = p.say.Say("handout.during.mouthfuls.each", c.Mouthfuls)
	}
	line := "*" + strconv.Itoa(c.Mouthfuls) + "* " + word
	st := p.faces.Fit(f.note.Heavy(paper.SemiBold), unmarked(line), width, 0.7)
	if len(c.Stands) == 0 {
		amount = p.say.Say("handout.during.about", amount)
	}
	grey := f.note.In(paper.Grey)
	grey.Size *= 0.9
	b := p.marked(st.Heavy(paper.Regular), line, width)
	return b.Under(p.faces.Line(p.faces.Fit(grey, amount, width, 0.6), amount, width, paper.Left), 0)
}

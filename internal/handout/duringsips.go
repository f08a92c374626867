package handout

import (
	"strconv"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// mouthfuls is their number in large type, with the amount; the amount alone where no
// mouthful is known.
func (p *Press) mouthfuls(c Chance, am amounts, f rowForm, edge, room float64) paper.Block {
	return p.mouthfulsIn(c, am, f, edge, numberRoom, room)
}

// mouthfulsIn sets the number to the left of the edge and the words to its right, in
// so much room.
func (p *Press) mouthfulsIn(c Chance, am amounts, f rowForm, edge, numberRoom, room float64) paper.Block {
	amount := am.millilitres(sum(c.Volumes))
	if sum(c.Volumes) <= 0 {
		return paper.Block{}
	}
	if c.Mouthfuls <= 0 {
		st := f.name.Heavy(paper.SemiBold)
		return p.faces.Line(p.faces.Fit(st, amount, room+numberRoom, leastDuring/st.Size), amount, edge+room, paper.Right)
	}
	n := p.mouthfulCount(c)
	number := f.number.Heavy(paper.SemiBold)
	b := p.faces.Line(p.faces.Fit(number, n, numberRoom, 0.4), n, edge-1.6, paper.Right)
	under := p.faces.Paragraph(p.readable(f.note, p.mouthfulsWord(c), room), p.mouthfulsWord(c), room)
	amount = p.amountWord(c, amount)
	grey := f.note.In(paper.Grey)
	grey.Size = max(grey.Size*0.85, leastDuring)
	under = under.Under(p.faces.Paragraph(p.readable(grey, amount, room), amount, room), 0)
	b = b.At(0, max(0, (under.Height-b.Height)/2-0.3))
	return b.Over(under.At(edge, 0))
}

// readable is a style made smaller for a text, but no smaller than what is read in the
// session.
func (p *Press) readable(st paper.Style, s string, width float64) paper.Style {
	return p.faces.Fit(st, s, width, min(1, leastDuring/st.Size))
}

// mouthfulCount is the number of mouthfuls of a row; of breaks that differ the fewest and the
// most.
func (p *Press) mouthfulCount(c Chance) string {
	if c.Fewest > 0 && c.Fewest < c.Mouthfuls {
		return p.say.Between(quantity.Range{Low: float64(c.Fewest), High: float64(c.Mouthfuls)}, 0)
	}
	return strconv.Itoa(c.Mouthfuls)
}

// mouthfulsWord is the word for mouthfuls; of a row of several breaks that they are for each.
func (p *Press) mouthfulsWord(c Chance) string {
	if c.times() > 1 {
		return p.say.Say("handout.during.mouthfuls.each", c.Mouthfuls)
	}
	return p.say.Say("handout.during.mouthfuls.word", c.Mouthfuls)
}

// eachWord says of an amount that stands for several breaks that it is for each of them, or
// for all of them together; empty for one.
func (p *Press) eachWord(c Chance) string {
	switch {
	case c.Together:
		return p.say.Say("handout.during.all")
	case c.times() > 1:
		return p.say.Say("handout.during.each")
	}
	return ""
}

// amountWord says what an amount is: about, where no bottle is known; for all the breaks
// of a row together, where they differ.
func (p *Press) amountWord(c Chance, amount string) string {
	switch {
	case c.Together:
		return p.say.Say("handout.during.together", amount)
	case len(c.Stands) == 0:
		return p.say.Say("handout.during.about", amount)
	}
	return amount
}

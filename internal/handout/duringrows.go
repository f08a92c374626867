package handout

import (
	"slices"
	"strings"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

// fewRows is up to how many breaks each has a row of its own in full height.
const fewRows = 6

// rowForm is how a row of a break is set: mm of height, styles, and the bottle.
type rowForm struct {
	height             float64
	name, note, number paper.Style
	bottleW, bottleH   float64
}

// leastDuring is the smallest type of what is read in the session, mm: 10 points.
const leastDuring = 3.53

// How many forms there are of full rows and of cells; smallestForm is how low rows may
// become: past both there is none.
const (
	fullForms    = 3
	halfForms    = 3
	smallestForm = fullForms + halfForms - 1
)

func inBlack(size, leading float64) paper.Style {
	return paper.Style{Size: size, Leading: leading, Ink: paper.Black}
}

// rowForms are the full row, and lower ones.
func rowForms() [fullForms]rowForm {
	return [...]rowForm{
		{18.4, inBlack(5.3, 6.6), inBlack(4.2, 5.4), inBlack(7.9, 8.4), 7.2, 15.6},
		{14.6, inBlack(5.3, 6), inBlack(4, 4.9), inBlack(7, 7.4), 5.8, 12.4},
		{12, inBlack(5, 5.6), inBlack(3.7, 4.4), inBlack(6.2, 6.6), 4.8, 10},
	}
}

// cellForms are the breaks in two columns, and lower ones.
func cellForms() [halfForms]rowForm {
	return [...]rowForm{
		{12, inBlack(5, 5.6), inBlack(3.8, 4.5), inBlack(6.6, 6.8), 4.6, 9.8},
		{10.4, inBlack(4.4, 4.9), inBlack(3.6, 4.2), inBlack(5.8, 6), 4, 8.6},
		{9, inBlack(3.9, 4.3), inBlack(leastDuring, 3.95), inBlack(4.9, 5.1), 3.4, 7.4},
	}
}

// form is the row that so many breaks leave room for.
func (p *Press) form(rows int) rowForm {
	at := min(p.low, fullForms-1)
	if rows > fewRows {
		at = max(at, 1)
	}
	return rowForms()[at]
}

// breakRows has a row for each break, and under them the most in all.
func (p *Press) breakRows(d During, am amounts, width float64) []paper.Item {
	rows := d.Chances
	if len(rows) > fewRows {
		rows = joinEqual(rows)
	}
	if p.gather > 0 && len(rows) > fewRows {
		rows = gathered(rows, p.gather)
	}
	d.Chances = rows
	if p.low >= fullForms && len(rows) > 1 {
		return p.breakColumns(rows, d, am, width)
	}
	form := p.form(len(rows))
	items := []paper.Item{{Block: p.duringHead(d, am, width), Gap: p.gap(), Keep: true}}
	for i, c := range rows {
		b := p.breakRow(c, d, am, form, width)
		begins, ends := i == 0 || !rows[i-1].Maybe, i+1 == len(rows) || !rows[i+1].Maybe
		it := paper.Item{Block: b.With(edges(c.Maybe, begins, ends, width, b.Height)...)}
		if c.Maybe && begins || !c.Maybe && i > 0 && rows[i-1].Maybe {
			it.Gap = 0.9
		}
		items = append(items, it)
	}
	items[len(items)-1].Keep = true
	total := p.marked(p.body(), p.totalText(d, am), width)
	return append(items, paper.Item{Block: total, Gap: 1.6})
}

// duringHead is the heading, with what a line and a mouthful are beside it.
func (p *Press) duringHead(d During, am amounts, width float64) paper.Block {
	title := p.say.Say("handout.during.title")
	head := headingStyle()
	at := p.faces.Width(head, title) + 4
	b := p.faces.Line(head, title, width, paper.Left)
	done := p.say.Say("handout.during.done")
	right := p.faces.Width(noteStyle(), done)
	st := p.body().In(paper.Grey)
	st.Size = max(st.Size, leastDuring)
	note := p.faces.Paragraph(p.readable(st, p.stopNote(d, am), width-at-right-4), p.stopNote(d, am), width-at-right-4)
	b = b.Over(note.At(at, (head.Leading-st.Leading)/2+0.4))
	b = b.Over(p.faces.Line(noteStyle(), done, width, paper.Right).At(0, 1.6))
	b.Width, b.Height = width, b.Height+0.6
	return b.With(rowLine(b.Height, width))
}

// stopNote says where to stop, and what a mouthful is.
func (p *Press) stopNote(d During, am amounts) string {
	parts := []string{p.say.Say("handout.during.stop")}
	if d.lined() {
		parts[0] = p.say.Say("handout.during.stop.line")
	}
	switch {
	case d.Mouthful > 0:
		parts = append(parts, p.say.Say("handout.during.mouthful", am.size(d.Mouthful)))
	case d.Assumed > 0:
		parts = append(parts, p.say.Say("handout.during.mouthful.usual", am.size(d.Assumed)))
	}
	return strings.Join(parts, " ")
}

// lined reports whether a bottle with lines is known.
func (d During) lined() bool { return d.across() > 0 }

// totalText is the most in all, and what that gives.
func (p *Press) totalText(d During, am amounts) string {
	var what []string
	for i, c := range d.Drinks {
		if i < len(d.Total) && d.Total[i] > 0 {
			what = append(what, am.drink(d.Total[i], c.Name))
		}
	}
	if foods := am.foods(d.TotalFoods); foods != "" {
		what = append(what, unmarked(foods))
	}
	var parts []string
	if len(what) > 0 {
		parts = append(parts, p.say.Say("handout.during.most", p.say.Commas(what)))
	}
	if d.Carbohydrate > 0 {
		parts = append(parts, p.say.Say("handout.during.carbohydrate", p.say.Amount(float64(d.Carbohydrate), quantity.Gram)))
	}
	return strings.Join(parts, " ")
}

// Measures of a row from its right edge, mm.
const (
	foodEdge     = 44.0 // where the food begins
	mouthfulEdge = 68.0 // where the word for mouthfuls begins
	unfedEdge    = 41.0 // the same where there is nothing to eat
	joinedMore   = 5.0
	numberRoom   = 13.0
	boxEdge      = 5.2
)

// breakRow is one break: the bottle with its line, the name, mouthfuls, amount, food
// and a square to tick. One that may not happen stands in a dashed frame.
func (p *Press) breakRow(c Chance, d During, am amounts, f rowForm, width float64) paper.Block {
	pad := min(1.2, f.height/12)
	var bottles paper.Block
	each := f.bottleW*1.4 + 4
	at := 2.4 + float64(d.across())*each
	for i, s := range c.Stands[:min(2, len(c.Stands))] {
		x := 2.4 + f.bottleW*0.2 + float64(i)*each
		bottles = bottles.Over(p.bottle(s, d.substance(s.Drink), c.Maybe, f.bottleW, f.bottleH).At(x, 0))
	}
	edge := d.mouthfulEdge()
	room := width - edge - numberRoom - at
	text := p.breakText(c, d, am, f, room)
	mouthfuls := p.mouthfuls(c, am, f, width-edge, d.wordRoom())
	food := p.breakFood(c, am, f, foodEdge-checksWidth(c.times())-2)
	height := max(f.height, text.Height+2*pad, food.Height+2*pad, mouthfuls.Height+2*pad, bottles.Height+2*pad)
	mid := func(b paper.Block) float64 { return (height - b.Height) / 2 }
	out := paper.Space(width, height)
	out = out.With(bottles.At(0, mid(bottles)).Marks...)
	out = out.With(text.At(at, mid(text)).Marks...)
	out = out.With(mouthfuls.At(0, mid(mouthfuls)).Marks...)
	out = out.With(food.At(width-foodEdge, mid(food)).Marks...)
	out = out.With(checks(c.times(), width, height)...)
	return out
}

// mouthfulEdge is where the word for mouthfuls begins, mm from the right edge; rows of
// several breaks have more to say there.
func (d During) mouthfulEdge() float64 {
	edge := unfedEdge
	for _, c := range d.Chances {
		if len(c.Foods) > 0 {
			edge = max(edge, mouthfulEdge)
		}
	}
	if edge == mouthfulEdge && d.joins() {
		edge += joinedMore
	}
	return edge
}

// joins reports whether a row stands for several breaks.
func (d During) joins() bool {
	return slices.ContainsFunc(d.Chances, func(c Chance) bool { return c.times() > 1 })
}

// wordRoom is the room behind that edge: up to the food, or to the squares to tick.
func (d During) wordRoom() float64 {
	if edge := d.mouthfulEdge(); edge > unfedEdge {
		return edge - foodEdge - 1
	}
	return unfedEdge - d.checksWidth() - 2
}

// edges are the hairline under a row, or the dashed frame around those that may not
// happen.
func edges(maybe, begins, ends bool, width, height float64) []paper.Mark {
	if !maybe {
		return []paper.Mark{rowLine(height, width)}
	}
	dashed := func(x1, y1, x2, y2 float64) paper.Mark {
		return paper.Line{X1: x1, Y1: y1, X2: x2, Y2: y2, Width: rule, Ink: paper.Black, Dash: 1.4}
	}
	marks := []paper.Mark{dashed(0, 0, 0, height), dashed(width, 0, width, height)}
	if begins {
		marks = append(marks, dashed(0, 0, width, 0))
	}
	if ends {
		return append(marks, dashed(0, height, width, height))
	}
	return append(marks, rowLine(height, width))
}

// across is how many bottles stand side by side in a row at most.
func (d During) across() int {
	most := 0
	for _, c := range d.Chances {
		most = max(most, min(2, len(c.Stands)))
	}
	return most
}

// substance is what the drink of a column is.
func (d During) substance(i int) Substance {
	if i < len(d.Drinks) {
		return d.Drinks[i].Substance
	}
	return Drink
}

// checkOf is how large squares to tick are, and how many stand side by side.
func checkOf(n int) (size float64, across int) {
	if n > 1 {
		return 2.9, min(3, (n+1)/2)
	}
	return boxEdge - 1, 1
}

// checksWidth is the room that squares to tick take.
func checksWidth(n int) float64 {
	size, across := checkOf(n)
	return float64(across)*(size+0.8) + 0.2
}

// checks are squares to tick at the right, one for each time.
func checks(n int, width, height float64) []paper.Mark {
	size, across := checkOf(n)
	down := (n + across - 1) / across
	var marks []paper.Mark
	for i := range n {
		x := width - 1 - float64(across-i%across)*(size+0.8) + 0.8
		y := height/2 - float64(down)*(size+0.8)/2 + float64(i/across)*(size+0.8) + 0.4
		marks = append(marks, paper.Check{X: x, Y: y, Size: size})
	}
	return marks
}

// breakText is the name of a break and under it what to drink from, and how far.
func (p *Press) breakText(c Chance, d During, am amounts, f rowForm, width float64) paper.Block {
	name := "*" + unmarked(words.AtStart(am.typed(p.joinedName(c)))) + "*"
	if c.Maybe {
		name += " " + p.say.Say("handout.during.maybe")
	}
	lines := p.drinkLines(c, d, am)
	if c.Together {
		lines = p.cardLines(c, d, am)
	}
	st := p.faces.Fit(f.name, unmarked(name), width, 0.85)
	b := p.marked(st, name, width)
	for _, line := range lines {
		b = b.Under(p.marked(f.note, begins(line), width), 0)
	}
	return b
}

// drinkLines say for each drink of a break what to drink it from.
func (p *Press) drinkLines(c Chance, d During, am amounts) []string {
	var list []string
	several := c.several()
	for i, v := range c.Volumes {
		if v <= 0 || i >= len(d.Drinks) {
			continue
		}
		name := unmarked(am.product(d.Drinks[i].Name))
		if several > 1 {
			name = am.drink(v, d.Drinks[i].Name)
		}
		list = append(list, p.drinkLine(name, i, c, am)...)
	}
	return list
}

// several is how many drinks are taken at a break.
func (c Chance) several() int {
	n := 0
	for _, v := range c.Volumes {
		if v > 0 {
			n++
		}
	}
	return n
}

// drinkLine is one drink: for each of its bottles, where they are known, down to which
// line.
func (p *Press) drinkLine(name string, drink int, c Chance, am amounts) []string {
	var list []string
	for _, s := range c.Stands {
		if s.Drink == drink {
			list = append(list, p.standLine(name, s, am))
		}
	}
	if len(list) == 0 {
		return []string{"*" + name + "*"}
	}
	return list
}

// standLine is one bottle of a drink.
func (p *Press) standLine(name string, s Stand, am amounts) string {
	if s.Name != "" {
		return p.ownLine(name, s, am)
	}
	if s.Bottle > 0 {
		name = p.say.Say("handout.during.bottle", name, s.Bottle)
	}
	if s.Left <= 0 {
		return p.say.Say("handout.during.toEnd", name)
	}
	return p.say.Say("handout.during.toLine", name, s.Line, am.left(s.Left))
}

// ownLine is one drink from a bottle that has a name.
func (p *Press) ownLine(drink string, s Stand, am amounts) string {
	bottle := unmarked(am.typed(s.Name))
	if s.Bottle > 0 {
		bottle = p.say.Say("handout.during.filling", bottle, s.Bottle)
	}
	if s.Left <= 0 {
		return p.say.Say("handout.during.own.toEnd", bottle, drink)
	}
	return p.say.Say("handout.during.own.toLine", bottle, drink, s.Line, am.left(s.Left))
}

// left writes what stays in a bottle: rounded up where it is in ounces, so that no
// more is drunk than planned.
func (a amounts) left(v quantity.Millilitres) string {
	if !a.us {
		return a.millilitres(v)
	}
	ounce := quantity.Millilitres(convert(1, quantity.FluidOunce, quantity.Millilitre))
	return a.millilitres(v + ounce*0.999)
}

// breakFood is what to eat at a break.
func (p *Press) breakFood(c Chance, am amounts, f rowForm, width float64) paper.Block {
	var out paper.Block
	for _, food := range c.Foods {
		if food.Portions > 0 {
			text := p.say.Say("handout.during.food", am.food(food))
			out = out.Under(p.faces.Paragraph(f.note.Heavy(paper.SemiBold), text, width), 0)
		}
	}
	return out
}

// begins is a marked text that begins a line.
func begins(s string) string {
	if rest, ok := strings.CutPrefix(s, "*"); ok {
		return "*" + words.AtStart(rest)
	}
	return words.AtStart(s)
}

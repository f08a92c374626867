package handout

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

// KitBagCard is the card that goes into the kit bag: what to take at each
// chance, in type that can be read at arm's length, and when to stop.
type KitBagCard struct {
	Terms            Terms
	Athlete, Session string
	Step             string
	From             time.Time
	During           During
	// Estimate: the plan is based on an estimate.
	Estimate bool
}

// Measures of a card, mm.
const (
	cardMargin = 6.0
	cardTop    = 5.0
	cardBottom = 5.0
	boxPad     = 1.8
)

// KitBagCard lays out the card, one to a page of a quarter sheet. Many chances go on to
// further cards, which are numbered; each begins with a whole chance.
func (p *Press) KitBagCard(c KitBagCard) paper.Document {
	pages := p.cards(c)
	d := p.document(c.Terms, p.cardTitle(c), p.say.Say("handout.card.subject"), pages)
	d.Size = p.size.Quarter()
	return d
}

// cardItems are the cautions and the rows of the card, which is the first of so many.
func (p *Press) cardItems(c KitBagCard, of int) (paper.Frame, []paper.Item) {
	am := p.amounts(c.Terms)
	fr := paper.Frame{Size: p.size.Quarter(), Margin: cardMargin, Top: cardTop, Bottom: cardBottom}
	w := fr.Inner()
	fr.Footer = p.cardFooter(c.Terms, w)
	fr.Header = func(page int) paper.Block { return p.cardHeader(c, am, page, of, w) }
	var items []paper.Item
	for _, s := range c.Terms.Cautions {
		if s = am.typed(s); strings.TrimSpace(s) != "" {
			items = append(items, paper.Item{Block: p.cautionIn(noteStyle().In(paper.Black), s, w).Under(paper.Space(w, 1), 0), Gap: 0.5})
		}
	}
	return fr, append(items, p.cardRows(c.During, am, w)...)
}

// KitBagCards lays out the card four to a sheet, with lines to cut along.
func (p *Press) KitBagCards(c KitBagCard) paper.Document {
	d := p.KitBagCard(c)
	cards, quarter := d.Pages, d.Size
	for len(cards) < 4 {
		cards = append(cards, cards[:len(d.Pages)]...)
	}
	d.Size, d.Pages = p.size, nil
	for len(cards) > 0 {
		n := min(4, len(cards))
		var sheet paper.Block
		for i, card := range cards[:n] {
			b := paper.Block{Marks: card.Marks}
			sheet = sheet.Over(b.At(float64(i%2)*quarter.Width, float64(i/2)*quarter.Height))
		}
		cut := paper.Line{Width: 0.18, Ink: paper.Faint, Dash: 2}
		across, down := cut, cut
		across.X2, across.Y1, across.Y2 = p.size.Width, quarter.Height, quarter.Height
		down.X1, down.X2, down.Y2 = quarter.Width, quarter.Width, p.size.Height
		d.Pages = append(d.Pages, paper.Page{Marks: sheet.With(across, down).Marks})
		cards = cards[n:]
	}
	return d
}

// cardTitle is that of the athlete's page.
func (p *Press) cardTitle(c KitBagCard) string {
	return p.title(AthletePage{Terms: c.Terms, Heading: Heading{Athlete: c.Athlete, Session: c.Session}})
}

func (p *Press) cardHeader(c KitBagCard, am amounts, page, of int, width float64) paper.Block {
	title := p.cardTitle(c)
	st := paper.Style{Size: 5.4, Leading: 6.6, Weight: paper.SemiBold, Ink: paper.Black}
	st = p.faces.Fit(st, title, width, 0.7)
	b := p.faces.Lines(st, p.faces.Clip(st, p.faces.Wrap(st, title, width), 3, width), width, paper.Left)
	var under []string
	if of > 1 { // beside the title: of a long one the end may go
		under = append(under, p.say.Say("handout.card.more", strconv.Itoa(page), strconv.Itoa(of)))
	}
	if c.Step != "" && !c.From.IsZero() {
		under = append(under, p.say.Say("handout.page.step", am.typed(c.Step), p.say.Day(c.From)))
	}
	if c.Estimate {
		under = append(under, p.say.Say("handout.page.estimate"))
	}
	note, text := noteStyle(), strings.Join(under, " ")
	if beside := p.faces.Width(st, title) + 3 + p.faces.Width(note, text); beside <= width {
		b = b.Over(p.faces.Line(note, text, width, paper.Right).At(0, (st.Leading-note.Leading)*0.7))
	} else {
		lines := p.faces.Clip(note, p.faces.Wrap(note, text, width), 2, width)
		b = b.Under(p.faces.Lines(note, lines, width, paper.Left), 0)
	}
	b.Height++
	b = b.With(paper.Line{X2: width, Y1: b.Height, Y2: b.Height, Width: rule, Ink: paper.Black})
	b.Width, b.Height = width, b.Height+1
	return b
}

// cardForm is a row of the card: read at arm's length.
type cardForm struct {
	height             float64
	name, note, number paper.Style
	bottleW, bottleH   float64
}

// leastOnCard is the smallest type of a row of the card, mm.
const leastOnCard = 3.6

func (p *Press) cardForm() cardForm {
	return [...]cardForm{
		{15.6, inBlack(5.6, 6.6), inBlack(4.4, 5.4), inBlack(9.9, 9.4), 6.2, 13.6},
		{14.2, inBlack(5.6, 6.2), inBlack(4.2, 4.9), inBlack(9.9, 9.2), 5.6, 12},
		{12, inBlack(5, 5.6), inBlack(3.8, 4.4), inBlack(7.6, 7.4), 4.8, 10},
		{10, inBlack(4.6, 5), inBlack(leastOnCard, 4.1), inBlack(6.4, 6.2), 3.8, 8.4},
	}[min(p.low, 3)]
}

// cardRows has a row for each break, or for each drink where there are none, and the
// most in all.
func (p *Press) cardRows(d During, am amounts, width float64) []paper.Item {
	if d.Closed {
		return []paper.Item{{Block: p.faces.Paragraph(p.cardForm().name, p.say.Say("handout.during.closed"), width), Gap: 1.2}}
	}
	rows := p.cardChances(d.Chances)
	d.Chances = rows
	var items []paper.Item
	for i, c := range rows {
		b := p.cardBreak(c, d, am, width)
		begins, ends := i == 0 || !rows[i-1].Maybe, i+1 == len(rows) || !rows[i+1].Maybe
		it := paper.Item{Block: b.With(edges(c.Maybe, begins, ends, width, b.Height)...)}
		if c.Maybe && begins || !c.Maybe && i > 0 && rows[i-1].Maybe {
			it.Gap = 0.7
		}
		items = append(items, it)
	}
	if len(rows) == 0 {
		items = p.cardHours(d, am, width)
	}
	if len(items) > 0 {
		items[len(items)-1].Keep = true
		items = append(items, paper.Item{Block: p.marked(p.cardForm().total(), p.cardTotal(d, am), width), Gap: 1.2})
	}
	return items
}

// total is the style of the most in all.
func (f cardForm) total() paper.Style {
	st := f.note
	st.Size, st.Leading = min(st.Size, 3.5), min(st.Leading, 4.3)
	return st
}

// cardTotal is the most in all; millilitres stand here alone, since at arm's length
// one counts mouthfuls.
func (p *Press) cardTotal(d During, am amounts) string {
	d.Carbohydrate = 0
	text := p.bottleNames(d, am) + p.totalText(d, am)
	if slices.ContainsFunc(d.Chances, func(c Chance) bool { return c.Maybe }) {
		text += " " + p.say.Say("handout.card.maybe")
	}
	return text
}

// bottleNames say what is in the bottles that have names.
func (p *Press) bottleNames(d During, am amounts) string {
	text := ""
	for i, drink := range d.Drinks {
		for _, c := range d.Chances {
			if at := slices.IndexFunc(c.Stands, func(s Stand) bool { return s.Drink == i && s.Name != "" }); at >= 0 {
				text += p.say.Say("handout.card.bottle", unmarked(words.AtStart(am.typed(c.Stands[at].Name))), unmarked(am.product(drink.Name))) + " "
				break
			}
		}
	}
	return text
}

// cardBreak is a break on the card: bottle, name, what to drink from, mouthfuls.
func (p *Press) cardBreak(c Chance, d During, am amounts, width float64) paper.Block {
	const pad, numberRoom = 0.7, 19.0
	f := p.cardForm()
	each := f.bottleW*1.4 + 3.6
	at := 0.0
	if c.Maybe || d.lined() {
		at = 1.6
	}
	var bottles paper.Block
	if c.times() == 1 { // of several breaks the words say it
		for i, s := range c.Stands[:min(2, len(c.Stands))] {
			bottles = bottles.Over(p.bottle(s, d.substance(s.Drink), c.Maybe, f.bottleW, f.bottleH).At(at+f.bottleW*0.2+float64(i)*each, 0))
		}
		at += float64(d.across()) * each
	}
	text := p.cardText(c, d, am, f, width-at-numberRoom)
	number := p.cardNumber(c, am, f, numberRoom-1)
	height := max(f.height, text.Height+2*pad, number.Height+2*pad, bottles.Height+2*pad)
	mid := func(b paper.Block) float64 { return (height - b.Height) / 2 }
	out := paper.Space(width, height)
	out = out.With(bottles.At(0, mid(bottles)).Marks...)
	out = out.With(text.At(at, mid(text)).Marks...)
	return out.With(number.At(width-numberRoom, mid(number)).Marks...)
}

// cardText is the name of a break, the drink with its line, and the food.
func (p *Press) cardText(c Chance, d During, am amounts, f cardForm, width float64) paper.Block {
	name := "*" + unmarked(words.AtStart(am.typed(p.joinedName(c)))) + "*"
	b := p.marked(p.faces.Fit(f.name.Heavy(paper.SemiBold), unmarked(name), width, max(0.7, leastOnCard/f.name.Size)), name, width)
	lines, foods := p.cardLines(c, d, am), am.foods(c.Foods)
	if foods != "" {
		foods = "*" + unmarked(p.say.Say("handout.during.food", foods)) + "*"
		if n := len(lines); n == 1 {
			lines[0] += " " + foods
		} else {
			lines = append(lines, foods)
		}
	}
	for _, line := range lines {
		st := p.faces.Fit(f.note.Heavy(paper.SemiBold), unmarked(line), width, leastOnCard/f.note.Size)
		b = b.Under(p.marked(st.Heavy(paper.Regular), begins(line), width), 0)
	}
	return b
}

// cardLines say in few words what to drink from, and down to which line.
func (p *Press) cardLines(c Chance, d During, am amounts) []string {
	var list []string
	several := c.several()
	for i, v := range c.Volumes {
		if v <= 0 || i >= len(d.Drinks) {
			continue
		}
		line := "*" + unmarked(am.product(d.Drinks[i].Name)) + "*"
		if several > 1 {
			line = am.say.AmountOf(am.millilitres(v), line)
		}
		for _, s := range c.Stands {
			if s.Drink != i {
				continue
			}
			list, line = append(list, p.cardLine(unmarked(am.product(d.Drinks[i].Name)), s, am)), ""
		}
		if line != "" {
			list = append(list, line)
		}
	}
	return list
}

// cardLine is one bottle in few words; of one that is filled several times, which
// filling.
func (p *Press) cardLine(drink string, s Stand, am amounts) string {
	name := drink
	if s.Name != "" {
		name = unmarked(am.typed(s.Name))
	}
	if s.Bottle > 0 {
		name = p.say.Say("handout.during.filling", name, s.Bottle)
	}
	if s.Left <= 0 {
		return "*" + name + "*"
	}
	if s.From > 0 {
		return p.say.Say("handout.card.toLines", name, s.From, s.Line)
	}
	return p.say.Say("handout.card.toLine", name, s.Line)
}

// cardNumber is the number of mouthfuls in large type, or the amount where none is
// known.
func (p *Press) cardNumber(c Chance, am amounts, f cardForm, width float64) paper.Block {
	big := f.number.Heavy(paper.SemiBold)
	text, under := p.mouthfulCount(c), p.mouthfulsWord(c)
	switch {
	case sum(c.Volumes) <= 0:
		return paper.Block{}
	case c.Mouthfuls <= 0:
		text, under = am.millilitres(sum(c.Volumes)), p.eachWord(c)
	}
	b := p.faces.Line(p.faces.Fit(big, text, width, 0.3), text, width, paper.Right)
	if under == "" {
		return b
	}
	st := p.faces.Fit(noteStyle().In(paper.Black), under, width, 0.8)
	return b.Under(p.faces.Lines(st, p.faces.Wrap(st, under, width), width, paper.Right), 0)
}

// cardHours has a row for each drink and food: what is for an hour.
func (p *Press) cardHours(d During, am amounts, width float64) []paper.Item {
	var items []paper.Item
	for i, drink := range d.Drinks {
		if i < len(d.PerHour) && d.PerHour[i] > 0 {
			items = append(items, paper.Item{Block: p.cardRow(am.product(drink.Name), am.millilitres(d.PerHour[i]), p.say.Say("handout.during.hour"), width)})
		}
	}
	for _, f := range d.Foods {
		items = append(items, paper.Item{Block: p.cardRow(am.product(f.Name), p.say.Half(f.Portions), p.say.Say("handout.during.hour"), width)})
	}
	return items
}

// cardRow is a name, an amount in large type and a smaller line under them.
func (p *Press) cardRow(name, amount, under string, width float64) paper.Block {
	f := p.cardForm()
	big, label := f.name.Heavy(paper.SemiBold), f.name.Heavy(paper.Medium)
	room := width - p.faces.Width(big, amount) - 3
	label = p.faces.Fit(label, name, room, 0.6)
	b := p.faces.Paragraph(label, name, room)
	b = b.Over(p.faces.Line(big, amount, width, paper.Right))
	b = b.Under(p.faces.Paragraph(f.note, under, width), 0).At(0, 0.5)
	b.Width, b.Height = width, b.Height+0.7
	return b.With(rowLine(b.Height, width))
}

// cardFooter is the box and the small print, in the sizes of a card.
func (p *Press) cardFooter(t Terms, width float64) paper.Block {
	list := append([]string{p.say.Say("handout.safety.title")}, stopSentences(p.say, t.Practice.Emergency)...)
	box := p.marked(noteStyle().In(paper.Black), strings.Join(list, " "), width-2*boxPad).Framed(width, boxPad)
	small := append(cardPrint(p.say), p.lackPrint()...)
	am := p.amounts(t)
	if name := p.say.Commas(trim([]string{clipRunes(am.typed(t.Practice.Name), 100), am.typed(t.Practice.Telephone)})); name != "" {
		small = append(small, name)
	}
	st := smallStyle()
	st.Size, st.Leading = 2.4, 3
	return box.Under(p.faces.Paragraph(st, strings.Join(small, " "), width), 1.2)
}

// sum adds volumes up.
func sum(list []quantity.Millilitres) quantity.Millilitres {
	var total quantity.Millilitres
	for _, v := range list {
		total += v
	}
	return total
}

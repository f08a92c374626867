package handout

import (
	"strconv"
	"strings"
	"time"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// KitBagCard is the card that goes into the kit bag: what to take at each
// chance, in type that can be read at arm's length, and when to stop.
type KitBagCard struct {
	Terms            Terms
	Athlete, Session string
	Step             string
	From             time.Time
	During           During
	// Estimate: the plan rests on an estimate.
	Estimate bool
}

// Measures of a card, mm.
const (
	cardMargin = 6.0
	cardTop    = 5.0
	cardBottom = 5.0
)

// KitBagCard lays out the card, one to a page of a quarter sheet. A card with
// many chances goes on to a second.
func (p *Press) KitBagCard(c KitBagCard) paper.Document {
	pages := p.pour(func(p *Press) (paper.Frame, []paper.Item) { return p.cardItems(c) })
	d := p.document(c.Terms, p.cardTitle(c), p.say.Say("handout.card.subject"), pages)
	d.Size = p.size.Quarter()
	return d
}

// cardItems are the cautions and the rows of the card.
func (p *Press) cardItems(c KitBagCard) (paper.Frame, []paper.Item) {
	am := p.amounts(c.Terms)
	fr := paper.Frame{Size: p.size.Quarter(), Margin: cardMargin, Top: cardTop, Bottom: cardBottom}
	w := fr.Inner()
	fr.Footer = p.cardFooter(c.Terms, w)
	fr.Header = func(page int) paper.Block { return p.cardHeader(c, am, page, w) }
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

func (p *Press) cardHeader(c KitBagCard, am amounts, page int, width float64) paper.Block {
	title := p.cardTitle(c)
	if page > 1 {
		title = p.say.Say("handout.card.more", title, strconv.Itoa(page))
	}
	st := paper.Style{Size: 5.4, Leading: 6.6, Weight: paper.SemiBold, Ink: paper.Black}
	st = p.faces.Fit(st, title, width, 0.7)
	b := p.faces.Lines(st, p.faces.Clip(st, p.faces.Wrap(st, title, width), 3, width), width, paper.Left)
	var under []string
	if c.Step != "" && !c.From.IsZero() {
		under = append(under, p.say.Say("handout.page.step", am.typed(c.Step), p.say.Day(c.From)))
	}
	if c.Estimate {
		under = append(under, p.say.Say("handout.page.estimate"))
	}
	note := noteStyle()
	lines := p.faces.Clip(note, p.faces.Wrap(note, strings.Join(under, " "), width), 2, width)
	b = b.Under(p.faces.Lines(note, lines, width, paper.Left), 0)
	b.Height++
	b = b.With(paper.Line{X2: width, Y1: b.Height, Y2: b.Height, Width: rule, Ink: paper.Black})
	b.Width, b.Height = width, b.Height+1
	return b
}

// cardRows has a row for each chance, or for each drink where there are none,
// and the most in all.
func (p *Press) cardRows(d During, am amounts, width float64) []paper.Item {
	var items []paper.Item
	add := func(name, amount, under string, strong bool) {
		items = append(items, paper.Item{Block: p.cardRow(name, amount, under, strong, width)})
	}
	for _, c := range d.Chances {
		var under []string
		if len(d.Drinks) > 1 {
			under = append(under, am.mix(d.Drinks, c.Volumes))
		}
		if c.Mouthfuls > 0 {
			under = append(under, p.say.Say("handout.card.mouthfuls", c.Mouthfuls))
		}
		if food := am.foods(c.Foods); food != "" {
			under = append(under, p.say.Say("handout.card.eat", food))
		}
		if c.Maybe {
			under = append(under, p.say.Say("handout.during.maybe"))
		}
		add(am.typed(c.Name), am.millilitres(sum(c.Volumes)), join(under), false)
	}
	if len(d.Chances) == 0 {
		for i, name := range d.Drinks {
			if i < len(d.PerHour) && d.PerHour[i] > 0 {
				add(am.product(name.Name), am.millilitres(d.PerHour[i]), p.say.Say("handout.during.hour"), false)
			}
		}
		for _, f := range d.Foods {
			add(am.product(f.Name), p.say.Half(f.Portions), p.say.Say("handout.during.hour"), false)
		}
	}
	if total := sum(d.Total); total > 0 {
		under := ""
		if len(d.Drinks) > 1 {
			under = am.mix(d.Drinks, d.Total)
		}
		add(p.say.Say("handout.during.total"), am.millilitres(total), under, true)
	}
	return items
}

// cardRow is a name, an amount in large type and a smaller line under them.
func (p *Press) cardRow(name, amount, under string, strong bool, width float64) paper.Block {
	big := paper.Style{Size: 5, Leading: 5.8, Weight: paper.SemiBold, Ink: paper.Black}
	label := paper.Style{Size: 4.2, Leading: 5.8, Weight: paper.Medium, Ink: paper.Black}
	note := noteStyle().In(paper.Black)
	if p.tight > 0 {
		big.Size, big.Leading, label.Size, label.Leading, note.Leading = 4.4, 4.9, 3.7, 4.9, 3.8
	}
	if strong {
		label = label.Heavy(paper.SemiBold)
	}
	room := width - p.faces.Width(big, amount) - 3
	label = p.faces.Fit(label, name, room, 0.75)
	b := p.faces.Paragraph(label, name, room)
	b = b.Over(p.faces.Line(big, amount, width, paper.Right))
	b = b.Under(p.faces.Paragraph(note, under, width), 0)
	b = b.At(0, 0.5)
	b.Width, b.Height = width, b.Height+0.7
	return b.With(rowLine(b.Height, width))
}

// cardFooter is the box and the small print, in the sizes of a card.
func (p *Press) cardFooter(t Terms, width float64) paper.Block {
	const inner = 2.2
	w := width - 2*inner
	strong := noteStyle().In(paper.Black).Heavy(paper.SemiBold)
	title := p.faces.Line(strong, p.say.Say("handout.safety.title"), w, paper.Left)
	text := strings.Join(stopSentences(p.say, t.Practice.Emergency), " ")
	box := title.Under(p.faces.Paragraph(noteStyle().In(paper.Black), text, w), 0).Framed(width, inner)
	small := smallPrint(p.say)
	if name := p.amounts(t).typed(t.Practice.Name); name != "" {
		small = append(small, clipRunes(name, 100))
	}
	return box.Under(p.faces.Paragraph(smallStyle(), strings.Join(small, " "), width), 1.4)
}

// mix writes the volumes of several drinks: "water 75 mL + sports drink 45 mL".
func (a amounts) mix(drinks []Column, volumes []quantity.Millilitres) string {
	var parts []string
	for i, d := range drinks {
		if i < len(volumes) && volumes[i] > 0 {
			parts = append(parts, a.product(d.Name)+"\u00a0"+a.millilitres(volumes[i]))
		}
	}
	return strings.Join(parts, " + ")
}

// sum adds volumes up.
func sum(list []quantity.Millilitres) quantity.Millilitres {
	var total quantity.Millilitres
	for _, v := range list {
		total += v
	}
	return total
}

// join sets short texts behind one another, with a dot between.
func join(parts []string) string {
	var list []string
	for _, s := range parts {
		if s != "" {
			list = append(list, s)
		}
	}
	return strings.Join(list, " · ")
}

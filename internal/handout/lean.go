package handout

import (
	"strings"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// leanest is the most that is folded; see [way].
const leanest = 3

// leanParts are what is read before and after the session in running lines, each behind
// its title, so that the page has room for the breaks.
func (p *Press) leanParts(a AthletePage, am amounts, width float64) []paper.Item {
	after := []string{p.afterText(a.After, am)}
	for _, f := range a.After.Further {
		after = append(after, am.further(f))
	}
	parts := trim([]string{
		p.running("handout.before.title", p.beforeTexts(a.Before, am)), p.running("handout.after.title", after),
		p.running("handout.practise.title", []string{p.practiseText(a.Practise, am)}),
	})
	items := []paper.Item{{Block: p.marked(p.body(), strings.Join(parts, " "), width), Gap: p.gap()}}
	if b := p.runningBag(a.Bag, am, width); b.Height > 0 {
		items = append(items, paper.Item{Block: b, Gap: 1})
	}
	return append(items, paper.Item{Block: p.runningBlanks(a.FollowUp, am, width), Gap: 1})
}

// running is a title and sentences behind it; empty without sentences.
func (p *Press) running(title string, texts []string) string {
	text := unmarked(strings.Join(trim(texts), " "))
	if text == "" {
		return ""
	}
	return "*" + p.say.Say(title) + "* " + text
}

// runningBag is what goes into the bag, each behind a square to tick.
func (p *Press) runningBag(list []BagItem, am amounts, width float64) paper.Block {
	var what []string
	for _, it := range list {
		what = append(what, am.bagItem(it))
	}
	if len(what) == 0 {
		return paper.Block{}
	}
	b := p.choices(p.body(), p.strong(), width, p.say.Say("handout.bag.title"), what...)
	if list[0].Assumed {
		b = b.Under(p.faces.Paragraph(noteStyle(), p.say.Say("handout.bag.assumed", am.size(list[0].Volume)), width), 0)
	}
	return b
}

// runningBlanks are the lines to write on, side by side.
func (p *Press) runningBlanks(f FollowUp, am amounts, width float64) paper.Block {
	title := p.say.Say("handout.went.title")
	const apart, room = 6.0, 11.0
	unit := string(quantity.Millilitre)
	if am.us {
		unit = string(quantity.FluidOunce)
	}
	n := min(max(f.Sessions, 1), 4)
	half := (width - p.faces.Width(p.strong(), title) - 2*apart) / 2
	st := p.strong()
	st.Leading = 5.7
	out := p.faces.Line(st, title, width, paper.Left)
	at := p.faces.Width(p.strong(), title) + apart
	out = out.Over(p.blanks(p.say.Say("handout.went.stomach"), "", n, room, half).At(at, 0))
	return out.Over(p.blanks(p.say.Say("handout.went.left"), unit, n, room, half).At(at+half+apart, 0))
}

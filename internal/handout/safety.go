package handout

import (
	"slices"
	"strings"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/words"
)

// SafetySentences lists the sentences that stand on every side of every page,
// with the emergency number of the practice in place. What they say follows
// Hew-Butler et al. 2015, Clin J Sport Med 25:303: drink to thirst, the signs
// of drinking too much, and no hypotonic fluid by mouth in an emergency; and
// McCartney et al. 2017, Sports Med Open 3:13: extra fluid only after a loss.
func SafetySentences(w *words.Words, emergency string) []string {
	return append(plainSentences(stopSentences(w, emergency)), smallPrint(w)...)
}

func plainSentences(marked []string) []string {
	var list []string
	for _, s := range marked {
		list = append(list, unmarked(s))
	}
	return list
}

// stopSentences stand in the box; what stands out is marked.
func stopSentences(w *words.Words, emergency string) []string {
	call := w.Say("handout.safety.number.unset")
	if emergency = strings.TrimSpace(unmarked(emergency)); emergency != "" {
		call = emergency
	}
	return []string{w.Say("handout.safety.thirst"), w.Say("handout.safety.signs"), w.Say("handout.safety.emergency", call)}
}

// smallPrint stands under the box.
func smallPrint(w *words.Words) []string {
	return append([]string{w.Say("handout.safety.doctor")}, cardPrint(w)...)
}

func cardPrint(w *words.Words) []string {
	return []string{
		w.Say("handout.safety.education"),
		w.Say("handout.safety.after"),
		w.Say("handout.safety.painkillers"),
		w.Say("handout.safety.rules"),
	}
}

// footer is the bottom of every side: the box and the small print, to which a page
// may add sentences of its own.
func (p *Press) footer(t Terms, width float64, more ...string) paper.Block {
	const inner = 4.0
	box := p.stopBox("handout.safety.title", t, p.body(), width, inner-1)
	small := p.faces.Paragraph(finePrint(), strings.Join(slices.Concat(smallPrint(p.say), more, p.lackPrint()), " "), width)
	return paper.Stack(0, box, paper.Space(width, 2.4), small)
}

// stopBox frames the sentences that say when to stop, one under the other.
func (p *Press) stopBox(title string, t Terms, st paper.Style, width, inner float64) paper.Block {
	list := stopSentences(p.say, t.Practice.Emergency)
	list[0] = p.say.Say(title) + " " + list[0]
	var lines []paper.Block
	for _, s := range list {
		lines = append(lines, p.marked(st, s, width-2*inner))
	}
	return paper.Stack(0, lines...).Framed(width, inner)
}

// caution is a sentence with a bar of ink at its left.
func (p *Press) caution(s string, width float64) paper.Block {
	return p.cautionIn(p.body(), s, width)
}

func (p *Press) cautionIn(st paper.Style, s string, width float64) paper.Block {
	const bar, gap = 0.9, 3.2
	text := p.marked(st, s, width-gap-2).At(gap, 1.2)
	text.Height += 1.2
	ground := paper.Box{W: width, H: text.Height, Fill: paper.Sunk}
	ink := paper.Box{W: bar, H: text.Height, Fill: paper.Black}
	return paper.Block{Marks: append([]paper.Mark{ground, ink}, text.Marks...), Width: width, Height: text.Height}
}

// Titled is a caution whose title stands out before its sentence.
func Titled(title, sentence string) string {
	title, sentence = strings.TrimSpace(unmarked(title)), unmarked(sentence)
	if title == "" {
		return sentence
	}
	return strings.TrimSpace("*" + title + "* " + sentence)
}

// cautions are the sentences of the terms and of the page, one item each.
func (p *Press) cautions(width float64, list ...string) []paper.Item {
	var items []paper.Item
	for _, s := range list {
		if strings.TrimSpace(s) == "" {
			continue
		}
		gap := 1.2
		if len(items) == 0 {
			gap = p.gap()
		}
		items = append(items, paper.Item{Block: p.caution(s, width), Gap: gap})
	}
	return items
}

package handout

import (
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
	return append(stopSentences(w, emergency), smallPrint(w)...)
}

// stopSentences stand in the box.
func stopSentences(w *words.Words, emergency string) []string {
	call := w.Say("handout.safety.number.unset")
	if strings.TrimSpace(emergency) != "" {
		call = w.Say("handout.safety.number", emergency)
	}
	return []string{
		w.Say("handout.safety.thirst"),
		w.Say("handout.safety.signs"),
		w.Say("handout.safety.emergency", call),
		w.Say("handout.safety.after"),
	}
}

// smallPrint stands under the box.
func smallPrint(w *words.Words) []string {
	return []string{
		w.Say("handout.safety.education"),
		w.Say("handout.safety.doctor"),
		w.Say("handout.safety.painkillers"),
		w.Say("handout.safety.rules"),
	}
}

// footer is the bottom of every side: the box, a hairline and the small print,
// to which a page may add sentences of its own.
func (p *Press) footer(t Terms, width float64, more ...string) paper.Block {
	const inner = 4.0
	w := width - 2*inner
	title := p.faces.Line(p.strong(), p.say.Say("handout.safety.title"), w, paper.Left)
	text := p.faces.Paragraph(p.body(), strings.Join(stopSentences(p.say, t.Practice.Emergency), " "), w)
	box := title.Under(text, 0).Framed(width, inner-1)
	small := p.faces.Paragraph(noteStyle(), strings.Join(append(smallPrint(p.say), more...), " "), width)
	line := paper.Space(width, 1.8).With(rowLine(0, width))
	return paper.Stack(0, box, paper.Space(width, 3), line, small)
}

// caution is a sentence with a bar of ink at its left.
func (p *Press) caution(s string, width float64) paper.Block {
	return p.cautionIn(p.body(), s, width)
}

func (p *Press) cautionIn(st paper.Style, s string, width float64) paper.Block {
	const bar, gap = 0.9, 3.2
	text := p.faces.Paragraph(st, s, width-gap-2).At(gap, 1.2)
	text.Height += 1.2
	ground := paper.Box{W: width, H: text.Height, Fill: paper.Sunk}
	ink := paper.Box{W: bar, H: text.Height, Fill: paper.Black}
	return paper.Block{Marks: append([]paper.Mark{ground, ink}, text.Marks...), Width: width, Height: text.Height}
}

// cautions are the sentences of the terms and of the page, one item each.
func (p *Press) cautions(width float64, list ...string) []paper.Item {
	var items []paper.Item
	for _, s := range list {
		if strings.TrimSpace(s) == "" {
			continue
		}
		gap := 2.0
		if len(items) == 0 {
			gap = p.gap()
		}
		items = append(items, paper.Item{Block: p.caution(s, width), Gap: gap})
	}
	return items
}

package handout

import (
	"math"
	"slices"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// Measures of the bars, mm.
const (
	barHeight  = 7.9
	barLabel   = 21.0
	barVerdict = 44.0
	barGap     = 3.0
)

// bars is the picture of what happened and what changes.
func (p *Press) bars(given []Bar, am amounts, width float64) []paper.Item {
	if len(given) == 0 {
		return nil
	}
	var list []Bar
	for _, b := range given {
		list = append(list, b.drawable())
	}
	var items []paper.Item
	scale := barScale(list, width-barLabel-barVerdict-2*barGap)
	for i, b := range list {
		it := paper.Item{Block: p.bar(b, am, scale, width), Gap: 1.6, Keep: true}
		if i == 0 {
			it.Gap = p.gap()
		}
		items = append(items, it)
	}
	note := p.faces.Paragraph(noteStyle(), p.barNote(list, am), width-barLabel-barGap).At(barLabel+barGap, 0)
	return append(items, paper.Item{Block: note, Gap: 1})
}

// pageBars are the bars of the athlete's page; on a lean one without the note, on the
// leanest the plan's alone.
func (p *Press) pageBars(list []Bar, am amounts, width float64) []paper.Item {
	if n := len(list); p.lean > 1 && n > 1 {
		list = list[n-1:]
	}
	items := p.bars(list, am, width)
	if p.lean > 0 && len(items) > 0 {
		items = items[:len(items)-1]
		items[len(items)-1].Keep = false
	}
	return items
}

// barScale is how many mm stand for a litre: the longest bar fills the width.
func barScale(list []Bar, width float64) float64 {
	longest := quantity.Litres(0.1)
	for _, b := range list {
		longest = max(longest, b.whole(), b.taken())
		if b.Estimate && b.Ranged {
			longest = max(longest, quantity.Litres(b.LossRange.High))
		}
	}
	return width / float64(longest)
}

// bar is one session: label, parts with their names above, verdict.
func (p *Press) bar(b Bar, am amounts, scale, width float64) paper.Block {
	x := barLabel + barGap
	room := width - x - barGap - barVerdict
	names := p.partNames(b, am, scale, room)
	y := names.Height
	out := names.At(x, 0)
	out = out.With(b.shapes(x, y, scale)...)
	out = out.With(p.lacking(b, am, x, y, scale).Marks...)

	label := am.typed(b.Label)
	st := p.faces.Fit(p.body(), label, barLabel, 0.75)
	lines := p.faces.Clip(st, p.faces.Wrap(st, label, barLabel), 3, barLabel)
	lb := p.faces.Lines(st, lines, barLabel, paper.Right)
	out = out.Over(lb.At(0, y+(barHeight-lb.Height)/2))

	verdict := p.verdict(b, am)
	out = out.Over(verdict.At(width-barVerdict, y+(barHeight-verdict.Height)/2))
	out.Width, out.Height = width, max(out.Height, y+barHeight)
	return out
}

// shapes are the coloured parts, what was not replaced, and the sign of an
// estimate or of a gain.
func (b Bar) shapes(x, y, scale float64) []paper.Mark {
	var marks []paper.Mark
	at := x
	if left := float64(b.whole()-b.taken()) * scale; left > 0 {
		marks = append(marks, paper.Box{X: x + float64(b.taken())*scale, Y: y, W: left, H: barHeight, Fill: paper.LossPale})
	}
	for _, part := range b.Parts {
		w := float64(part.Litres) * scale
		if w <= 0 {
			continue
		}
		marks = append(marks, part.Substance.area(at, y, w, barHeight)...)
		at += w
		marks = append(marks, paper.Line{X1: at, X2: at, Y1: y, Y2: y + barHeight, Width: hairlineWidth, Ink: paper.White})
	}
	if w := float64(b.Food) * scale; w > 0 {
		marks = append(marks, paper.Box{X: at, Y: y, W: w, H: barHeight, Fill: paper.Food},
			paper.Line{X1: at + w, X2: at + w, Y1: y, Y2: y + barHeight, Width: hairlineWidth, Ink: paper.White})
	}
	if w := float64(max(b.whole(), b.taken())) * scale; w > 0 && !(b.Estimate && b.Ranged) {
		marks = append(marks, paper.Box{X: x, Y: y, W: w, H: barHeight, Width: hairlineWidth, Stroke: paper.Faint})
	}
	end := x + float64(b.Loss)*scale
	switch {
	case b.Estimate && b.Ranged:
		low, high := x+b.LossRange.Low*scale, x+b.LossRange.High*scale
		marks = append(marks,
			paper.Hatch{X: low, Y: y, W: high - low, H: barHeight, Step: 1.6, Ink: paper.Grey},
			paper.Box{X: x, Y: y, W: high - x, H: barHeight, Width: hairlineWidth, Stroke: paper.Black, Dash: 1.1})
	case b.gain():
		marks = append(marks, paper.Line{X1: end, X2: end, Y1: y - 1.4, Y2: y + barHeight + 1.4, Width: rule, Ink: paper.Black})
	}
	return marks
}

// area is a rectangle of a substance. A drink is hatched in white: in grey it is as
// dark as water.
func (s Substance) area(x, y, w, h float64) []paper.Mark {
	marks := []paper.Mark{paper.Box{X: x, Y: y, W: w, H: h, Fill: s.ink()}}
	if s == Drink {
		marks = append(marks, paper.Hatch{X: x, Y: y, W: w, H: h, Step: 1.1, Ink: paper.White})
	}
	return marks
}

// partNames are the names of the parts above the bar, each with a square of
// its colour. They keep to their parts where there is room and otherwise
// follow one another, on further lines if need be.
func (p *Press) partNames(b Bar, am amounts, scale, room float64) paper.Block {
	const square, gap, apart = 1.9, 1.0, 3.0
	st := noteStyle().In(paper.Black)
	out := paper.Space(room, st.Leading+0.4)
	at, free, line := 0.0, 0.0, 0.0
	for _, part := range b.named() {
		if part.Litres <= 0 {
			continue
		}
		amount := am.millilitres(part.Litres.Millilitres())
		if part.Substance == Food {
			part.Name, amount = p.say.Say("handout.bars.food"), p.say.Amount(1000*float64(part.Litres), quantity.Gram)
		}
		left := room - square - gap - p.faces.Width(st, p.say.Say("handout.bars.part", "", amount))
		name := amount
		if lines := p.faces.Clip(st, p.faces.Wrap(st, am.product(part.Name), left), 1, left); len(lines) > 0 {
			name = p.say.Say("handout.bars.part", lines[0], amount)
		}
		w := square + gap + p.faces.Width(st, name)
		x := max(at, free)
		if x+w > room {
			x = max(0, room-w)
			if x < free {
				x, line = 0, line+st.Leading
			}
		}
		text := p.faces.Line(st, name, w, paper.Left).At(x+square+gap, line)
		out = out.With(text.Marks...)
		out = out.With(part.Substance.area(x, line+(st.Leading-square)/2+0.1, square, square)...)
		free = x + w + apart
		at += float64(part.Litres) * scale
		out.Height = max(out.Height, line+st.Leading+0.4)
	}
	return out
}

// named are the parts that have a name above the bar: the drinks, and the food where
// it weighs anything to see.
func (b Bar) named() []Part {
	const seen = 0.005
	if b.Food < seen {
		return b.Parts
	}
	return append(slices.Clone(b.Parts), Part{Substance: Food, Litres: b.Food})
}

// lacking writes the rest of the bar into it, where it fits: the deficit at the
// end, or where body mass is hidden that it was not replaced.
func (p *Press) lacking(b Bar, am amounts, x, y, scale float64) paper.Block {
	rest := b.whole() - b.taken()
	if rest <= 0 || (b.Estimate && b.Ranged) {
		return paper.Block{}
	}
	st := noteStyle().In(paper.Black)
	texts := []string{p.say.Say("handout.bars.rest")}
	if b.Deficit.Litres > 0 {
		texts = append([]string{p.say.Say("handout.bars.rest.amount", am.volume(b.Deficit.Litres))}, texts...)
	}
	for _, text := range texts {
		if w := p.faces.Width(st, text); w+3.6 <= float64(rest)*scale {
			return p.faces.Line(st, text, w, paper.Left).At(x+float64(b.taken())*scale+1.8, y+(barHeight-st.Leading)/2)
		}
	}
	return paper.Block{}
}

// verdict is how much lighter the athlete ends, or in litres what was not replaced,
// with the range under it.
func (p *Press) verdict(b Bar, am amounts) paper.Block {
	text, under := p.verdictTexts(b, am)
	st := p.faces.Fit(p.strong(), text, barVerdict, 0.8)
	out := p.faces.Lines(st, p.faces.Wrap(st, text, barVerdict), barVerdict, paper.Left)
	if under != "" {
		out = out.Under(p.faces.Paragraph(finePrint(), under, barVerdict), 0)
	}
	return out
}

func (p *Press) verdictTexts(b Bar, am amounts) (text, under string) {
	d, r, say := am.deficit(b.Deficit), am.deficitRange(b.Deficit), p.say
	inLitres := am.hidden || !b.Deficit.PercentKnown
	switch {
	case b.Deficit.Litres < 0 || b.Deficit.Percent < 0:
		return say.Say("handout.bars.up", d), r
	case b.Estimate && b.RangeAlone && r != "":
		return say.Say("handout.options.estimate", r), ""
	case b.Estimate && inLitres:
		text = say.Say("handout.bars.left.estimate", d)
	case b.Estimate:
		text = say.Say("handout.bars.down.estimate", d)
	case inLitres:
		text = say.Say("handout.bars.left", d)
	case b.Planned:
		text = say.Say("handout.bars.down.planned", d)
	default:
		text = say.Say("handout.bars.down", d)
	}
	switch {
	case r == "":
		return text, ""
	case b.Planned:
		return text, say.Say("handout.bars.range.planned", r)
	}
	return text, say.Say("handout.bars.range", r)
}

// barNote says what the whole bar is.
func (p *Press) barNote(list []Bar, am amounts) string {
	for _, b := range list {
		switch {
		case b.gain():
			return p.say.Say("handout.bars.whole.gain")
		case b.Estimate && b.Ranged && b.RangeAlone:
			return p.say.Say("handout.bars.whole.estimate.range", am.volumes(b.LossRange))
		case b.Estimate && b.Ranged:
			return p.say.Say("handout.bars.whole.estimate", am.volume(b.Loss)) + " " + p.say.Say("handout.bars.whole.estimate.range", am.volumes(b.LossRange))
		}
	}
	first := p.wholeNote(list[0], am)
	if len(list) > 1 && am.volume(list[1].whole()) != am.volume(list[0].whole()) {
		return p.say.Say("handout.bars.whole.each") + " " + first
	}
	return first
}

// wholeNote adds up what a bar is: as it is written, so that the figures on the page
// come to one another.
func (p *Press) wholeNote(b Bar, am amounts) string {
	if b.Breath <= 0 && b.Urine <= 0 || am.us {
		return p.say.Say("handout.bars.whole", am.volume(b.Loss))
	}
	cents := func(v quantity.Litres) float64 { return math.Round(100 * float64(v)) }
	whole, loss, urine := cents(b.whole()), cents(b.Loss), cents(b.Urine)
	if b.Deficit.Litres > 0 {
		whole = cents(b.Deficit.Litres) + cents(b.taken())
	}
	volume := func(x float64) string { return am.volume(quantity.Litres(x / 100)) }
	label := am.typed(b.Label)
	if urine > 0 {
		return p.say.Say("handout.bars.whole.urine", label, volume(whole), volume(loss), volume(whole-loss-urine), volume(urine))
	}
	return p.say.Say("handout.bars.whole.breath", label, volume(whole), volume(loss), volume(whole-loss))
}

package handout

import (
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
	title := p.say.Say("handout.bars.title")
	switch {
	case len(list) > 1:
		title = p.say.Say("handout.bars.title.change")
	case list[0].Planned:
		title = p.say.Say("handout.bars.title.planned")
	}
	items := []paper.Item{p.section(title, width)}
	scale := barScale(list, width-barLabel-barVerdict-2*barGap)
	for _, b := range list {
		items = append(items, paper.Item{Block: p.bar(b, am, scale, width), Gap: 1.6})
	}
	note := p.faces.Paragraph(noteStyle(), p.barNote(list, am), width-barLabel-barGap).At(barLabel+barGap, 0)
	items[len(items)-1].Keep = true
	return append(items, paper.Item{Block: note, Gap: 1.4})
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
		if beside := min(float64(b.Breath+b.Urine)*scale, left); beside > 0 {
			marks = append(marks, paper.Box{X: x + float64(b.whole())*scale - beside, Y: y, W: beside, H: barHeight, Fill: paper.Hairline})
		}
	}
	for _, part := range b.Parts {
		w := float64(part.Litres) * scale
		if w <= 0 {
			continue
		}
		marks = append(marks, paper.Box{X: at, Y: y, W: w, H: barHeight, Fill: part.Substance.ink()})
		at += w
		marks = append(marks, paper.Line{X1: at, X2: at, Y1: y, Y2: y + barHeight, Width: hair, Ink: paper.White})
	}
	if w := float64(b.Food) * scale; w > 0 {
		marks = append(marks, paper.Box{X: at, Y: y, W: w, H: barHeight, Fill: paper.Food},
			paper.Line{X1: at + w, X2: at + w, Y1: y, Y2: y + barHeight, Width: hair, Ink: paper.White})
	}
	end := x + float64(b.Loss)*scale
	switch {
	case b.Estimate && b.Ranged:
		low, high := x+b.LossRange.Low*scale, x+b.LossRange.High*scale
		marks = append(marks,
			paper.Hatch{X: low, Y: y, W: high - low, H: barHeight, Step: 1.6, Ink: paper.Grey},
			paper.Box{X: x, Y: y, W: high - x, H: barHeight, Width: hair, Stroke: paper.Black, Dash: 1.1})
	case b.gain():
		marks = append(marks, paper.Line{X1: end, X2: end, Y1: y - 1.4, Y2: y + barHeight + 1.4, Width: rule, Ink: paper.Black})
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
	for _, part := range b.Parts {
		if part.Litres <= 0 {
			continue
		}
		amount := " " + am.millilitres(part.Litres.Millilitres())
		left := room - square - gap - p.faces.Width(st, amount)
		name := amount[1:]
		if lines := p.faces.Clip(st, p.faces.Wrap(st, am.product(part.Name), left), 1, left); len(lines) > 0 {
			name = lines[0] + amount
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
		out = out.With(paper.Box{X: x, Y: line + (st.Leading-square)/2 + 0.1, W: square, H: square, Fill: part.Substance.ink()})
		free = x + w + apart
		at += float64(part.Litres) * scale
		out.Height = max(out.Height, line+st.Leading+0.4)
	}
	return out
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
	if !am.hidden && b.Deficit.Litres > 0 {
		texts = []string{p.say.Say("handout.bars.rest.amount", am.volume(b.Deficit.Litres))}
	}
	for _, text := range texts {
		if w := p.faces.Width(st, text); w+3.6 <= float64(rest-b.Breath-b.Urine)*scale {
			return p.faces.Line(st, text, w, paper.Left).At(x+float64(b.taken())*scale+1.8, y+(barHeight-st.Leading)/2)
		}
	}
	return paper.Block{}
}

// verdict is how far down the athlete ends, with the range under it.
func (p *Press) verdict(b Bar, am amounts) paper.Block {
	d, say := am.deficit(b.Deficit), p.say
	var text string
	switch {
	case b.Deficit.Litres < 0 || b.Deficit.Percent < 0:
		text = say.Say("handout.bars.up", d)
	case b.Estimate:
		text = say.Say("handout.bars.down.estimate", d)
	case b.Planned:
		text = say.Say("handout.bars.down.planned", d)
	default:
		text = say.Say("handout.bars.down", d)
	}
	r := am.deficitRange(b.Deficit)
	if b.Estimate && b.RangeAlone && r != "" {
		text, r = say.Say("handout.options.estimate", r), ""
	}
	st := p.faces.Fit(p.strong(), text, barVerdict, 0.8)
	out := p.faces.Lines(st, p.faces.Wrap(st, text, barVerdict), barVerdict, paper.Left)
	if r != "" {
		out = out.Under(p.faces.Paragraph(noteStyle(), r, barVerdict), 0)
	}
	return out
}

// barNote says what the whole bar is.
func (p *Press) barNote(list []Bar, am amounts) string {
	first := list[0]
	for _, b := range list {
		if b.gain() {
			return p.say.Say("handout.bars.whole.gain")
		}
		if b.Estimate && b.Ranged && b.RangeAlone {
			return p.say.Say("handout.bars.whole.estimate.range", am.volumes(b.LossRange))
		}
		if b.Estimate && b.Ranged {
			return p.say.Say("handout.bars.whole.estimate", am.volume(b.Loss), am.volumes(b.LossRange))
		}
		if am.volume(b.Loss) != am.volume(first.Loss) {
			return p.say.Say("handout.bars.whole.each") + p.besideNote(list, am)
		}
	}
	return p.say.Say("handout.bars.whole", am.volume(first.Loss)) + p.besideNote(list, am)
}

// besideNote says what the thin grey end of the bars is.
func (p *Press) besideNote(list []Bar, am amounts) string {
	breath, urine := quantity.Litres(0), quantity.Litres(0)
	for _, b := range list {
		breath, urine = max(breath, b.Breath), max(urine, b.Urine)
	}
	switch {
	case urine > 0:
		return " " + p.say.Say("handout.bars.beside.urine")
	case breath > 0:
		return " " + p.say.Say("handout.bars.beside", am.volume(breath))
	}
	return ""
}

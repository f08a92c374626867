package handout

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"ebbwell/internal/consult"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// BottleBands are strips of paper at true size to tape along an athlete's bottles: a
// line at the level down to which to drink at each break.
type BottleBands struct {
	Terms            Terms
	Athlete, Session string
	Step             string
	From             time.Time
	// Draft is true until what is printed is agreed.
	Draft bool
	Bands []Band
	// Refused are the bottles without a band, as sentences.
	Refused []string
}

// Band is the strip of one bottle.
type Band struct {
	Substance Substance
	Drink     string
	Bottle    consult.OwnBottle
	// Fill is what is poured in.
	Fill  quantity.Millilitres
	Lines []BandLine
}

// BandLine is a break of a band.
type BandLine struct {
	Name      string
	Mouthfuls int
	Foods     []Portion
	// Left is what stays in the bottle, Line its number from the top.
	Left  quantity.Millilitres
	Line  int
	Maybe bool
}

// low is the lowest volume that a line is drawn for.
func (b Band) low() quantity.Millilitres { return b.Bottle.Low }

// drawn are the lines that lie on the straight part of the bottle.
func (b Band) drawn() (on, under []BandLine) {
	for _, l := range b.Lines {
		if l.Left > 0 && l.Left >= b.low() {
			on = append(on, l)
		} else {
			under = append(under, l)
		}
	}
	return on, under
}

// BottleBandsOf are the bands of a plan, for one of its options. A bottle has none
// that was not measured, whose measures are no usual bottle's, or that is filled
// more than once.
func BottleBandsOf(c consult.Case, chosen record.Option, p record.Practice, w *words.Words) BottleBands {
	k := compose(c, chosen, w)
	k.us = p.Settings.Units == "us"
	h := k.heading()
	out := BottleBands{Terms: k.terms(p), Athlete: h.Athlete, Session: h.Session, Step: h.Step, From: h.From, Draft: h.Draft}
	if k.over {
		return out
	}
	d := k.during()
	for i, drink := range d.Drinks {
		own, known := k.holds(i)
		b := Band{Substance: drink.Substance, Drink: drink.Name, Bottle: own, Fill: d.Total[i]}
		once := len(d.Chances) > 0 && d.Total[i] <= own.Full
		for _, ch := range d.Chances {
			for _, s := range ch.Stands {
				if s.Drink == i {
					once = once && s.Bottle == 0
					b.Lines = append(b.Lines, BandLine{ch.Name, ch.Mouthfuls, ch.Foods, s.Left, s.Line, ch.Maybe})
				}
			}
		}
		switch name := firstOf(own.Name, drink.Name); {
		case !known || !own.Lined():
			out.Refused = append(out.Refused, w.Say("handout.band.unmeasured", name))
		case own.Doubtful():
			out.Refused = append(out.Refused, w.Say("handout.band.doubtful", name))
		case !once:
			out.Refused = append(out.Refused, w.Say("handout.band.refilled", name))
		default:
			out.Bands = append(out.Bands, b)
		}
	}
	return out
}

// Measures of a band, mm.
const (
	bandWidth = 44.0
	bandStrip = 2.4
	bandApart = 9.0
	// bandHead is the paper above the mark.
	bandHead = 17.0
	// checkLength is the line by which the print's scale is checked.
	checkLength = 100.0
	// bandsAcross is how many stand on a sheet.
	bandsAcross = 2
)

// BottleBands lays the bands out, two to a sheet. Nothing on it is made smaller to
// fit: a line is where it has to be, or is not there.
func (p *Press) BottleBands(b BottleBands) paper.Document {
	title := p.say.Say("handout.band.title", p.amounts(b.Terms).typed(b.Athlete))
	pages := p.once(func(p *Press) (paper.Frame, []paper.Item) { return p.bandItems(b, title) })
	return p.document(b.Terms, title, p.say.Say("handout.band.subject"), pages)
}

// bandItems are what was refused, and the bands.
func (p *Press) bandItems(b BottleBands, title string) (paper.Frame, []paper.Item) {
	am := p.amounts(b.Terms)
	var under []string
	if b.Draft {
		under = append(under, p.say.Say("handout.draft"))
	}
	if b.Step != "" && !b.From.IsZero() {
		under = append(under, p.say.Say("handout.page.step", am.typed(b.Step), p.say.Day(b.From)))
	}
	under = append(under, p.say.Say("handout.band.size"))
	fr := p.frame(b.Terms, head{title: title, under: strings.Join(under, " ")})
	w := fr.Inner()
	fr.Footer = p.compactFooter(b.Terms, w, p.say.Say("handout.band.only"))
	room := fr.Size.Height - fr.Top - fr.Bottom - fr.Header(1).Height - fr.Footer.Height - 4 - 13
	var fits []Band
	for _, band := range b.Bands {
		if band.Bottle.FullMM+bandHead <= room {
			fits = append(fits, band)
		} else {
			b.Refused = append(b.Refused, p.say.Say("handout.band.tall", am.typed(band.Bottle.Name)))
		}
	}
	var items []paper.Item
	for _, s := range b.Refused {
		items = append(items, paper.Item{Block: p.caution(am.typed(s), w), Gap: 1.2})
	}
	for len(fits) > 0 {
		n := min(bandsAcross, len(fits))
		items = append(items, paper.Item{Block: p.bandSheet(fits[:n], am, w), Gap: 2})
		fits = fits[n:]
	}
	return fr, items
}

// bandSheet is two bands beside how to use them, over the line to check the size by.
func (p *Press) bandSheet(list []Band, am amounts, width float64) paper.Block {
	height := 0.0
	for _, b := range list {
		height = max(height, b.Bottle.FullMM+bandHead)
	}
	out := paper.Space(width, height)
	x := 0.0
	for _, b := range list {
		out = out.With(p.band(b, am).At(x, height-b.Bottle.FullMM-bandHead).Marks...)
		x += bandWidth + bandApart
	}
	side := p.bandSide(list, am, width-2*(bandWidth+bandApart))
	out = out.Over(side.At(2*(bandWidth+bandApart), 2))
	check := p.checkLine(width)
	out = out.With(check.At(0, height+4).Marks...)
	out.Width, out.Height = width, max(out.Height, height+4+check.Height)
	return out
}

// band draws one, its foot at the bottom.
func (p *Press) band(b Band, am amounts) paper.Block {
	foot := b.Bottle.FullMM + bandHead
	at := func(v quantity.Millilitres) float64 { return foot - b.Bottle.Height(v) }
	out := paper.Space(bandWidth, foot)
	out = out.With(
		paper.Box{W: bandStrip, H: foot, Fill: b.Substance.ink()},
		paper.Box{W: bandWidth, H: foot, Width: hairlineWidth, Stroke: paper.Black, Dash: 0.6},
		paper.Line{X1: -2, X2: bandWidth + 2, Y1: foot, Y2: foot, Width: rule, Ink: paper.Black})
	inner, left := bandWidth-bandStrip-4, bandStrip+2.0
	on, under := b.drawn()
	if last := len(on) - 1; last >= 0 && len(under) == 0 {
		y := at(on[last].Left)
		out = out.With(paper.Box{X: bandStrip, Y: y, W: bandWidth - bandStrip, H: foot - y, Fill: paper.Sunk})
	}
	out = out.With(p.bandTicks(b, am, at)...)
	name := p.faces.Fit(p.strong(), am.typed(b.Bottle.Name), inner, 0.6)
	out = out.With(p.faces.Line(name, am.typed(b.Bottle.Name), inner, paper.Left).At(left, 0.8).Marks...)
	drink := p.faces.Fit(noteStyle().In(paper.Black), am.product(b.Drink), inner, 0.6)
	out = out.With(p.faces.Line(drink, am.product(b.Drink), inner, paper.Left).At(left, 5.4).Marks...)
	out = out.With(p.bandLine(at(b.Fill), p.say.Say("handout.band.fill", am.millilitres(b.Fill)), "", "", false)...)
	above := at(b.Fill)
	for _, l := range on {
		y := at(l.Left)
		out = out.With(p.bandBreak(l, y, y-above, am)...)
		above = y
	}
	return out.With(p.bandFoot(under, foot, above, am).Marks...)
}

// bandTicks are short marks at each 50 mL, with figures at each 100 where no line of a
// break is near, from the lowest line that is true up to the mark.
func (p *Press) bandTicks(b Band, am amounts, at func(quantity.Millilitres) float64) []paper.Mark {
	const step = 50
	if am.us {
		return nil // the bottle's own figures are in another unit
	}
	var marks []paper.Mark
	for v := quantity.Millilitres(step); v <= b.Bottle.Full; v += step {
		if v < b.low() {
			continue
		}
		long := 2.0
		if int(v)%100 == 0 {
			long = 3.4
		}
		marks = append(marks, paper.Line{X1: bandStrip, X2: bandStrip + long, Y1: at(v), Y2: at(v), Width: hairlineWidth, Ink: paper.Grey})
		if int(v)%100 == 0 && v < b.Fill && !b.nearLine(at(v), at) {
			st, text := smallStyle(), p.say.Number(float64(v), 0)
			marks = append(marks, p.faces.Line(st, text, p.faces.Width(st, text), paper.Left).At(bandStrip+long+0.8, at(v)-st.Leading/2).Marks...)
		}
	}
	return marks
}

// nearLine reports whether the words over a line of a break, over the mark or at the foot are
// where a figure would stand.
func (b Band) nearLine(y float64, at func(quantity.Millilitres) float64) bool {
	const above, beside = 12.0, 2.2 // the words of a line, and half a figure
	near := func(line float64) bool { return y > line-above-beside && y < line+beside }
	on, _ := b.drawn()
	for _, l := range on {
		if near(at(l.Left)) {
			return true
		}
	}
	return near(at(b.Fill)) || y > at(0)-above
}

// bandLine is a line over the whole band with a text over its right end.
func (p *Press) bandLine(y float64, text, under, number string, maybe bool) []paper.Mark {
	dash := 0.0
	if maybe {
		dash = 1.2
	}
	marks := []paper.Mark{paper.Line{X1: bandStrip, X2: bandWidth, Y1: y, Y2: y, Width: 0.6, Ink: paper.Black, Dash: dash}}
	const numberRoom = 9.5
	inner := bandWidth - bandStrip - 2 - numberRoom
	low := y - 0.5
	if under != "" {
		st := p.faces.Fit(noteStyle().In(paper.Black), under, inner, 0.7)
		low -= st.Leading
		marks = append(marks, p.faces.Line(st, under, inner, paper.Right).At(bandStrip+numberRoom, low).Marks...)
	}
	if text != "" {
		st := p.faces.Fit(p.strong(), text, inner, 0.6)
		low -= st.Leading
		marks = append(marks, p.faces.Line(st, text, inner, paper.Right).At(bandStrip+numberRoom, low).Marks...)
	}
	if number != "" {
		st := paper.Style{Size: 6, Leading: 6.4, Weight: paper.SemiBold, Ink: paper.Black}
		marks = append(marks, p.faces.Line(st, number, numberRoom, paper.Left).At(bandStrip+4, y-6.6).Marks...)
	}
	return marks
}

// bandBreak is a break with as many words as there is room for above its line.
func (p *Press) bandBreak(l BandLine, y, room float64, am amounts) []paper.Mark {
	name, mouthfuls := words.AtStart(am.typed(l.Name)), ""
	if l.Mouthfuls > 0 {
		mouthfuls = strconv.Itoa(l.Mouthfuls) + " " + p.say.Say("handout.during.mouthfuls.word", l.Mouthfuls)
	}
	if foods := am.foods(l.Foods); foods != "" {
		mouthfuls = strings.TrimSpace(mouthfuls + " " + p.say.Say("handout.during.food", foods))
	}
	number := strconv.Itoa(l.Line)
	switch body, note := p.strong().Leading, noteStyle().Leading; {
	case room < body+0.6:
		name, mouthfuls = "", ""
		if room < 7 {
			number = ""
		}
	case room < body+note+0.8:
		mouthfuls = ""
	}
	return p.bandLine(y, name, mouthfuls, number, l.Maybe)
}

// bandFoot says what is not drawn any more near the foot.
func (p *Press) bandFoot(under []BandLine, foot, above float64, am amounts) paper.Block {
	st := noteStyle().In(paper.Black)
	width := bandWidth - bandStrip - 4
	text := p.say.Say("handout.band.stop")
	if len(under) > 0 {
		var names []string
		for _, l := range under {
			names = append(names, words.AtStart(am.typed(l.Name)))
		}
		text = p.say.Say("handout.band.end", p.say.Commas(names))
	}
	lines := p.faces.Wrap(st, text, width)
	if high := foot - above - 2; float64(len(lines))*st.Leading > high {
		lines = p.faces.Clip(st, lines, max(1, int(high/st.Leading)), width)
	}
	b := p.faces.Lines(st, lines, width, paper.Left)
	return b.At(bandStrip+2, foot-b.Height-1)
}

// bandSide tells how to use the bands, and what was measured.
func (p *Press) bandSide(list []Band, am amounts, width float64) paper.Block {
	st := p.body()
	out := p.faces.Line(headingStyle(), p.say.Say("handout.band.how"), width, paper.Left)
	for _, n := range []string{"1", "2", "3", "4", "5"} {
		out = out.Under(p.faces.Paragraph(st, p.say.Say("handout.band.how."+n), width), 0.6)
	}
	out = out.Under(p.faces.Line(headingStyle(), p.say.Say("handout.band.measured"), width, paper.Left), 3)
	note := noteStyle().In(paper.Black)
	for _, b := range list {
		text := p.say.Say("handout.band.marks", am.typed(b.Bottle.Name), am.size(b.Bottle.Full), p.mm(b.Bottle.FullMM))
		if b.Bottle.About() {
			text += " " + p.say.Say("handout.band.about")
		} else {
			text += " " + p.say.Say("handout.band.low", am.size(b.Bottle.Low), p.mm(b.Bottle.LowMM))
		}
		out = out.Under(p.faces.Paragraph(note, text, width), 0.8)
	}
	out = out.Under(p.faces.Paragraph(noteStyle(), p.say.Say("handout.band.straight"), width), 0.8)
	out = out.Under(p.faces.Line(headingStyle(), p.say.Say("handout.band.limits"), width, paper.Left), 3)
	limits := []string{"handout.band.limits.thirst", "handout.band.limits.missed", "handout.band.limits.refill"}
	if slices.ContainsFunc(list, func(b Band) bool {
		return slices.ContainsFunc(b.Lines, func(l BandLine) bool { return l.Maybe })
	}) {
		limits = append(limits, "handout.band.limits.maybe")
	}
	for _, key := range limits {
		out = out.Under(p.faces.Paragraph(st, p.say.Say(key), width), 0.6)
	}
	return out
}

// mm writes a height.
func (p *Press) mm(x float64) string { return p.say.Number(x, 0) + "\u00a0mm" }

// checkLine is the line that tells whether the printer kept the size.
func (p *Press) checkLine(width float64) paper.Block {
	out := paper.Space(width, 9)
	out = out.With(paper.Line{X2: checkLength, Y1: 3, Y2: 3, Width: hairlineWidth, Ink: paper.Black})
	for i := range 11 {
		x, long := float64(i)*checkLength/10, 1.2
		if i%5 == 0 {
			long = 2.6
		}
		out = out.With(paper.Line{X1: x, X2: x, Y1: 3 - long, Y2: 3, Width: hairlineWidth, Ink: paper.Black})
	}
	out = out.With(p.faces.Line(p.body(), p.say.Say("handout.band.check"), width-checkLength-3, paper.Left).At(checkLength+3, 0.6).Marks...)
	return out.With(p.faces.Line(noteStyle(), p.say.Say("handout.band.check.else"), width, paper.Left).At(0, 4.4).Marks...)
}

package handout

import (
	"math"
	"strings"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// after says what to drink afterwards: extra fluid only for who is lighter, and
// what the further sessions of the day are done by.
func (p *Press) after(a After, am amounts) column {
	return column{title: p.say.Say("handout.after.title"), body: func(w float64) []paper.Block {
		out := []paper.Block{p.faces.Paragraph(p.body(), p.afterText(a, am), w)}
		for _, f := range a.Further {
			out = append(out, p.faces.Paragraph(p.body(), am.further(f), w))
		}
		return out
	}}
}

// further words a further session: when, how long, and by what.
func (a amounts) further(f FurtherSession) string {
	say := a.say
	when := f.Start
	if when == "" {
		when = say.Say("handout.further.later")
	}
	if f.Minutes > 0 {
		when = say.Say("handout.further.minutes", when, say.Number(float64(f.Minutes), 0))
	}
	var what []string
	for _, part := range f.Parts {
		what = append(what, a.drink(part.Litres.Millilitres(), part.Name))
	}
	if foods := a.foods(f.Foods); foods != "" {
		what = append(what, foods)
	}
	switch {
	case f.Other:
		return say.Say("handout.further.other", when)
	case f.Again:
		return say.Say("handout.further.again", when)
	case len(what) == 0:
		return say.Say("handout.further.nothing", when)
	}
	return say.Say("handout.further.part", when, say.Commas(what))
}

// afterText words the advice. Where mass is hidden only the one who weighs
// knows who is lighter, and the amount is that of the planned deficit, in
// litres, as a most.
func (p *Press) afterText(a After, am amounts) string {
	say := p.say
	var parts []string
	switch {
	case am.hidden && a.Soon && a.Extra.High > 0:
		parts = append(parts, say.Say("handout.after.hidden", am.volume(quantity.Litres(a.Extra.High))))
	case am.hidden && a.Large && a.Extra.High > 0:
		parts = append(parts, say.Say("handout.after.hidden.large", am.volume(quantity.Litres(a.Extra.High))))
	case am.hidden:
		parts = append(parts, say.Say("handout.after.hidden.later"))
	case a.Soon && a.PerKilogram.High > 0:
		parts = append(parts, say.Say("handout.after.soon", am.perMass(a.PerKilogram)))
	case a.Large && a.PerKilogram.High > 0:
		parts = append(parts, say.Say("handout.after.large", am.perMass(a.PerKilogram)))
	default:
		parts = append(parts, say.Say("handout.after.later"))
	}
	if (a.Soon || a.Large) && !am.saltWithheld {
		parts = append(parts, say.Say("handout.after.salty"))
	}
	parts = append(parts, say.Say("handout.after.level"), say.Say("handout.after.meals"))
	return strings.Join(parts, " ")
}

// perMass writes litres for each kilogram, or fluid ounces for each pound.
func (a amounts) perMass(r quantity.Range) string {
	if !a.us {
		return a.say.Say("handout.after.each.kilogram", a.say.Number(r.Low, decimals(r.Low)), a.say.Number(r.High, decimals(r.High)))
	}
	pound := convert(1, quantity.Pound, quantity.Kilogram)
	ounces := func(litres float64) string {
		return a.say.Number(convert(litres*pound, quantity.Litre, quantity.FluidOunce), 0)
	}
	return a.say.Say("handout.after.each.pound", ounces(r.Low), ounces(r.High))
}

// decimals is how many a number near 1 needs, two at most.
func decimals(x float64) int {
	for d := range 2 {
		if math.Abs(quantity.Round(x, d)-x) < 1e-9 {
			return d
		}
	}
	return 2
}

// followUp is what to practise, and what is filled in by hand after each session.
func (p *Press) followUp(f FollowUp, x Practise, am amounts) column {
	title := p.say.Say("handout.went.title")
	if !x.From.IsZero() {
		title = p.say.Say("handout.practise.title")
	}
	return column{title: title, body: func(w float64) []paper.Block {
		say := p.say
		unit := string(quantity.Millilitre)
		if am.us {
			unit = string(quantity.FluidOunce)
		}
		var out []paper.Block
		if text := p.practiseText(x, am); text != "" {
			out = append(out, p.faces.Paragraph(p.body(), text, w))
		}
		n := min(max(f.Sessions, 1), 4)
		return append(out,
			p.blanks(say.Say("handout.went.stomach"), "", n, 13, w),
			p.blanks(say.Say("handout.went.left"), unit, n, 13, w))
	}}
}

// blanks is a text with lines to write on, one for each session.
func (p *Press) blanks(label, unit string, n int, room, width float64) paper.Block {
	const gap = 1.4
	first := p.blank(label, room)
	at := p.faces.Width(p.body(), label) + gap
	if at+float64(n)*(room+gap)+8 > width {
		n = max(1, int((width-at-8)/(room+gap)))
	}
	for i := 1; i < n; i++ {
		first = first.Over(p.blank("", room).At(at-gap+float64(i)*(room+gap), 0))
	}
	end := at + float64(n)*(room+gap)
	return first.Over(p.faces.Line(p.body(), unit, p.faces.Width(p.body(), unit), paper.Left).At(end, 0.3))
}

// blank is a text with a line to write on.
func (p *Press) blank(label string, room float64) paper.Block {
	const gap = 1.4
	st := p.body()
	st.Leading = 5.7
	w := p.faces.Width(st, label)
	b := p.faces.Line(st, label, w, paper.Left)
	y := st.Leading*0.5 + st.Size*0.42
	return b.With(paper.Line{X1: w + gap, X2: w + gap + room, Y1: y, Y2: y, Width: hairlineWidth, Ink: paper.Black})
}

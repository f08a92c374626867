package figures

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// Bars is carbohydrate, sodium and drinking against what the evidence says
// and against the habit.
type Bars struct {
	sp   wording.Speaker
	bars [3]*chart.SourceBar
	Data [3]chart.SourceData
	// Key is the figure of carbohydrate, Small the two that stand beside.
	key
	Small *fyne.Container
	said  barsSaid
}

// The bars.
const (
	BarCarbohydrate = iota
	BarSodium
	BarDrinking
)

// NewBars makes the bars, empty until they are shown a case.
func NewBars(h *field.Host, sp wording.Speaker, why func()) *Bars {
	p := &Bars{sp: sp}
	for i := range p.bars {
		p.bars[i] = chart.NewSourceBar()
		p.Data[i].Bare, p.Data[i].Brief = i == BarCarbohydrate, i != BarCarbohydrate
		p.Data[i].Summary = func() string { return p.summary(&p.Data[i]) }
		p.bars[i].Set(p.Data[i])
	}
	p.key = newKey(look.NewOneOf(look.Strong, sp.Say("planner.carbohydrate")), field.NewLink(h, "planner.carbohydrate.why", sp.Say("planner.why"), why), p.bars[BarCarbohydrate], carbohydrateFigure)
	p.Small = &fyne.Container{Layout: smallLayout{p}, Objects: []fyne.CanvasObject{p.bars[BarSodium], p.bars[BarDrinking]}}
	return p
}

// Open sets what a movement leaves alone: names, the habit, the ends.
func (p *Bars) Open(s state.State, k *state.Calculation) {
	say, habit := p.sp.Say, &k.Habit
	c, n, d := &p.Data[BarCarbohydrate], &p.Data[BarSodium], &p.Data[BarDrinking]
	advice := habit.Carbohydrate.Advice.Range
	c.Name, n.Name, d.Name = say("planner.carbohydrate"), say("planner.sodium"), say("planner.drinking")
	c.Band, c.Banded = chart.Span{Low: advice.Low, High: advice.High}, advice.High > 0
	now := &k.At
	c.Habit, c.Marked = habit.Carbohydrate.TotalGH, true
	c.Max = max(advice.High*aboveAdvice, 30, c.Habit*barInside, now.Carbohydrate.TotalGH*barInside)
	n.Habit, n.Marked = habit.Sodium.InMgH, true
	n.Limit, n.Limited = habit.Sodium.LossMgH.Value, habit.Sodium.LossMgH.Known
	n.Max = max(n.Limit*barInside, 300, n.Habit*barInside, now.Sodium.InMgH*barInside)
	// The bar of drinking is drawn in mL of the session, its figure is a rate.
	d.Habit, d.Marked = habit.Fluid.DrunkL*1000, true
	d.Limit, d.Limited = habit.Ceiling.FluidL*1000, true
	d.Max = max(habit.LossL.Value*1000, d.Limit*barInside, d.Habit)
	p.said = barsSaid{}
	n.Summary = func() string { return p.sodiumSummary(s, k) }
	c.Notes[0] = advised(p.sp, *habit)
	p.side.set(c.Notes[0], "")
	d.Notes, d.Short = [2]string{drinkingNote(p.sp, s)}, ""
	if u := s.PlanCase.Planner.Basis().Usual; u.Known {
		d.Short = p.sp.Say("planner.tolerates.short", p.sp.Plain(u.LH, quantity.LitrePerHour))
	}
}

// The ends of the bars: aboveAdvice is how far the scale of carbohydrate goes above the
// advice, barInside leaves room behind what stands last. They are set when a plan is
// opened and when a movement ends, and stand while it goes on.
const (
	aboveAdvice = 1.25
	barInside   = 1.05
)

// Follow shows what a movement changes. A slot at nothing is a part of no width,
// so that the picture has the same parts at every movement.
func (p *Bars) Follow(s state.State, k *state.Calculation) {
	q := &k.At
	c, n, d := &p.Data[BarCarbohydrate], &p.Data[BarSodium], &p.Data[BarDrinking]
	c.Parts, n.Parts, d.Parts = c.Parts[:0], n.Parts[:0], d.Parts[:0]
	for slot := plan.Water; slot < plan.Slots; slot++ {
		if !s.PlanCase.Slots[slot].InUse {
			continue
		}
		of := desk.Substance(slot)
		c.Parts = append(c.Parts, chart.Part{Of: of, Value: q.Carbohydrate.BySlotGH[slot]})
		n.Parts = append(n.Parts, chart.Part{Of: of, Value: q.Sodium.BySlotMgH[slot]})
		if slot.IsDrink() {
			d.Parts = append(d.Parts, chart.Part{Of: of, Value: q.Fluid.BySlotML[slot]})
		}
	}
	p.say(s, k)
	for i := range p.bars {
		p.bars[i].Set(p.Data[i])
	}
}

// barsSaid is what the words beside the bars were made of.
type barsSaid struct {
	set                                bool
	carbohydrate, sodium, rate, strong float64
}

// say words the figures, each where it changed.
func (p *Bars) say(_ state.State, k *state.Calculation) {
	q, was := &k.At, p.said
	now := barsSaid{true, q.Carbohydrate.TotalGH, q.Sodium.InMgH, q.Fluid.RateLH, q.StrengthPercent}
	if now == was {
		return
	}
	p.said = now
	c, n, d := &p.Data[BarCarbohydrate], &p.Data[BarSodium], &p.Data[BarDrinking]
	if !was.set || was.carbohydrate != now.carbohydrate || was.strong != now.strong {
		c.Figure, c.Notes[1] = p.sp.Carbohydrate(q.Carbohydrate.TotalGH), strengthNote(p.sp, *q)
		p.Figure.SetText(c.Figure)
		against := againstAdvice(p.sp, *q)
		p.foot.SetTexts(p.sp.Joined(against, c.Notes[1]), against, c.Notes[1])
	}
	if !was.set || was.sodium != now.sodium || was.rate != now.rate {
		n.Figure, n.Notes[0] = p.sp.Sodium(q.Sodium.InMgH), sodiumShare(p.sp, q.Sodium)
	}
	if !was.set || was.rate != now.rate {
		d.Figure = p.sp.Rate(q.Fluid.RateLH)
	}
}

// summary is a bar in words.
func (p *Bars) summary(d *chart.SourceData) string {
	if d.Notes[1] == "" {
		return p.sp.Say("planner.bar.summary.short", d.Name, d.Figure, d.Notes[0])
	}
	return p.sp.Say("planner.bar.summary", d.Name, d.Figure, d.Notes[0], d.Notes[1])
}

// sodiumSummary is the bar of sodium in words, with what is in the drink.
func (p *Bars) sodiumSummary(s state.State, k *state.Calculation) string {
	d := p.Data[BarSodium]
	d.Notes = SodiumNotes(p.sp, k.At, k.Habit, s.Salted())
	return p.summary(&d)
}

// againstAdvice says how the carbohydrate stands to the advice; empty where none is
// needed.
func againstAdvice(sp wording.Speaker, q plan.Prediction) string {
	a, x := q.Carbohydrate.Advice.Range, sp.Rounded(q.Carbohydrate.TotalGH)
	switch {
	case a.High <= 0:
		return ""
	case x < a.Low:
		return sp.Say("planner.advised.below", sp.Words.Number(a.Low-x, 0))
	case x > a.High:
		return sp.Say("planner.advised.above", sp.Words.Number(x-a.High, 0))
	}
	return sp.Say("planner.advised.within")
}

// strengthNote says how strong what is drunk is, and above one source the share of
// fructose.
func strengthNote(sp wording.Speaker, q plan.Prediction) string {
	c := q.Carbohydrate
	second := ""
	if q.StrengthPercent > 0 {
		second = sp.Say("planner.strength", sp.Strength(q.StrengthPercent))
	}
	switch split := fuelSplitShown(c); {
	case split && q.StrengthPercent > 0:
		second = sp.Say("planner.fructose", sp.Strength(q.StrengthPercent), fructose(sp, c))
	case split:
		second = sp.Say("planner.fructose.food", fructose(sp, c))
	}
	return second
}

// advised says what the evidence advises for such a session.
func advised(sp wording.Speaker, q plan.Prediction) string {
	a := q.Carbohydrate.Advice.Range
	switch {
	case a.High <= 0:
		return sp.Say("planner.advised.none")
	case a.Low <= 0:
		return sp.Say("planner.advised.upto", sp.Words.Number(a.High, 0))
	}
	return sp.Say("planner.advised", sp.Words.Number(a.Low, 0), sp.Words.Number(a.High, 0))
}

// fructose is its share of the carbohydrate whose family is known; its amount
// where no per cent is to be on the screen.
func fructose(sp wording.Speaker, c plan.Carbohydrate) string {
	if sp.By.Hidden {
		return sp.Carbohydrate(c.FructoseGH)
	}
	return sp.Percent(100*c.FructoseShare, 0)
}

// SodiumNotes say what part of the loss goes in, and what is in the drink beside
// what drinks for replacement hold; that is advice to add salt, so it gives way
// to the habit where such advice is withheld.
func SodiumNotes(sp wording.Speaker, q, habit plan.Prediction, salted bool) [2]string {
	n := q.Sodium
	second := ""
	switch {
	case n.Incomplete:
		second = sp.Say("planner.sodium.incomplete")
	case q.Fluid.DrunkL > 0 && salted:
		second = sp.Say("planner.sodium.usual", sp.Words.Number(n.DrunkMmolL, 0), sp.Words.Number(evidence.ReplacementLow, 0), sp.Words.Number(evidence.ReplacementHigh, 0))
	case q.Fluid.DrunkL > 0:
		second = sp.Say("planner.sodium.drink", sp.Words.Number(n.DrunkMmolL, 0), sp.Plain(habit.Sodium.InMgH, quantity.MilligramPerHour))
	}
	return [2]string{sodiumShare(sp, n), second}
}

// sodiumShare says what part of the loss goes in.
func sodiumShare(sp wording.Speaker, n plan.Sodium) string {
	if !n.LossMgH.Known {
		return sp.Say("planner.sodium.unknown")
	}
	lost := sp.Plain(n.LossMgH.Value, quantity.MilligramPerHour)
	if sp.By.Hidden {
		return sp.Say("planner.sodium.share.hidden", lost)
	}
	return sp.Say("planner.sodium.share", sp.Words.Number(100*n.Share.Value, 0), lost)
}

// drinkingNote says what is tolerated and what is lost.
func drinkingNote(sp wording.Speaker, s state.State) string {
	b := s.PlanCase.Planner.Basis()
	losing := sp.Plain(b.SweatRate.Value, quantity.LitrePerHour)
	if b.Kind == plan.Estimate { // never a number alone
		low, high := sp.RateEnds(quantity.Range{Low: b.SweatRate.Low, High: b.SweatRate.High})
		losing = sp.Say("planner.losing.estimate", low, high)
	}
	first := sp.Say("planner.losing", losing)
	if b.Usual.Known {
		first = sp.Say("planner.tolerates", sp.Plain(b.Usual.LH, quantity.LitrePerHour), losing)
	}
	return first
}

// fuelSplitShown reports whether the share of fructose matters: above what one
// source gives.
func fuelSplitShown(c plan.Carbohydrate) bool {
	_, _, needed := fuel.SourceSplit(c.TotalGH)
	return needed
}

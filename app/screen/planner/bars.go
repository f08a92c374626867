package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// barsPanel is carbohydrate, sodium and drinking against what the evidence says
// and against the habit.
type barsPanel struct {
	sp   speaker
	bars [3]*chart.SourceBar
	data [3]chart.SourceData
	row  *fyne.Container
	box  *look.Sheet
}

// The bars.
const (
	barCarbohydrate = iota
	barSodium
	barDrinking
)

func newBarsPanel(sp speaker) *barsPanel {
	p := &barsPanel{sp: sp}
	var list []fyne.CanvasObject
	for i := range p.bars {
		p.bars[i] = chart.NewSourceBar()
		list = append(list, p.bars[i])
	}
	p.row = &fyne.Container{Layout: &inRow{gap: 36, least: 150}, Objects: list}
	p.box = look.NewSheet(p.row)
	return p
}

// open sets what a movement leaves alone: names, the habit, the ends.
func (p *barsPanel) open(k *calculation) {
	say, habit := p.sp.say, &k.habit
	c, n, d := &p.data[barCarbohydrate], &p.data[barSodium], &p.data[barDrinking]
	advice := habit.Carbohydrate.Advice.Range
	c.Name, n.Name, d.Name = say("planner.carbohydrate"), say("planner.sodium"), say("planner.drinking")
	c.Band, c.Banded = chart.Span{Low: advice.Low, High: advice.High}, advice.High > 0
	c.Habit, c.Marked, c.Max = habit.Carbohydrate.TotalGH, true, max(advice.High*1.25, 30)
	n.Habit, n.Marked = habit.Sodium.InMgH, true
	n.Limit, n.Limited = habit.Sodium.LossMgH.Value, habit.Sodium.LossMgH.Known
	n.Max = max(n.Limit*1.05, 300)
	// The bar of drinking is drawn in mL of the session, its figure is a rate.
	d.Habit, d.Marked = habit.Fluid.DrunkL*1000, true
	d.Limit, d.Limited = habit.Ceiling.FluidL*1000, true
	d.Max = max(habit.LossL.Value*1000, d.Limit)
}

// follow shows what a movement changes. A slot at nothing is a part of no width,
// so that the picture has the same parts at every movement.
func (p *barsPanel) follow(s state, k *calculation) {
	q := &k.at
	c, n, d := &p.data[barCarbohydrate], &p.data[barSodium], &p.data[barDrinking]
	c.Figure, n.Figure, d.Figure = p.sp.carbohydrate(q.Carbohydrate.TotalGH), p.sp.sodium(q.Sodium.InMgH), p.sp.rate(q.Fluid.RateLH)
	c.Parts, n.Parts, d.Parts = c.Parts[:0], n.Parts[:0], d.Parts[:0]
	for slot := plan.Water; slot < plan.Slots; slot++ {
		if !s.planCase.Slots[slot].InUse {
			continue
		}
		of := substance(slot)
		c.Parts = append(c.Parts, chart.Part{Of: of, Value: q.Carbohydrate.BySlotGH[slot]})
		n.Parts = append(n.Parts, chart.Part{Of: of, Value: q.Sodium.BySlotMgH[slot]})
		if slot.IsDrink() {
			d.Parts = append(d.Parts, chart.Part{Of: of, Value: q.Fluid.BySlotML[slot]})
		}
	}
	c.Notes = p.sp.carbohydrateNotes(*q)
	n.Notes = p.sp.sodiumNotes(*q, k.habit, s.salted())
	d.Notes = p.sp.drinkingNotes(s, *q)
	for i := range p.bars {
		d := &p.data[i]
		d.Summary = p.sp.say("planner.bar.summary", d.Name, d.Figure, d.Notes[0], d.Notes[1])
		p.bars[i].Set(*d)
	}
}

// sodium writes milligrams an hour.
func (sp speaker) sodium(mgh float64) string { return sp.by.Amount(mgh, quantity.MilligramPerHour) }

// carbohydrateNotes say where it comes from, what is advised, and above one
// source the share of fructose.
func (sp speaker) carbohydrateNotes(q plan.Prediction) [2]string {
	c := q.Carbohydrate
	first := sp.advised(q)
	second := ""
	if q.StrengthPercent > 0 {
		second = sp.say("planner.strength", sp.strength(q.StrengthPercent))
	}
	switch split := fuelSplitShown(c); {
	case split && q.StrengthPercent > 0:
		second = sp.say("planner.fructose", sp.strength(q.StrengthPercent), sp.fructose(c))
	case split:
		second = sp.say("planner.fructose.food", sp.fructose(c))
	}
	return [2]string{first, second}
}

// advised says what the evidence advises for such a session.
func (sp speaker) advised(q plan.Prediction) string {
	a := q.Carbohydrate.Advice.Range
	switch {
	case a.High <= 0:
		return sp.say("planner.advised.none")
	case a.Low <= 0:
		return sp.say("planner.advised.upto", sp.w.Number(a.High, 0))
	}
	return sp.say("planner.advised", sp.w.Number(a.Low, 0), sp.w.Number(a.High, 0))
}

// fructose is its share of the carbohydrate whose family is known; its amount
// where no per cent is to be on the screen.
func (sp speaker) fructose(c plan.Carbohydrate) string {
	if sp.by.Hidden {
		return sp.carbohydrate(c.FructoseGH)
	}
	return sp.percent(100*c.FructoseShare, 0)
}

// sodiumNotes say what part of the loss goes in, and what is in the drink beside
// what drinks for replacement hold; that is advice to add salt, so it gives way
// to the habit where such advice is withheld.
func (sp speaker) sodiumNotes(q, habit plan.Prediction, salted bool) [2]string {
	n := q.Sodium
	first := sp.say("planner.sodium.unknown")
	if n.LossMgH.Known {
		lost := sp.plain(n.LossMgH.Value, quantity.MilligramPerHour)
		first = sp.say("planner.sodium.share", sp.w.Number(100*n.Share.Value, 0), lost)
		if sp.by.Hidden {
			first = sp.say("planner.sodium.share.hidden", lost)
		}
	}
	second := ""
	switch {
	case n.Incomplete:
		second = sp.say("planner.sodium.incomplete")
	case q.Fluid.DrunkL > 0 && salted:
		second = sp.say("planner.sodium.usual", sp.w.Number(n.DrunkMmolL, 0), sp.w.Number(evidence.ReplacementLow, 0), sp.w.Number(evidence.ReplacementHigh, 0))
	case q.Fluid.DrunkL > 0:
		second = sp.say("planner.sodium.drink", sp.w.Number(n.DrunkMmolL, 0), sp.plain(habit.Sodium.InMgH, quantity.MilligramPerHour))
	}
	return [2]string{first, second}
}

// drinkingNotes say what the stomach is used to, what is lost, and the volume.
func (sp speaker) drinkingNotes(s state, q plan.Prediction) [2]string {
	b := s.planCase.Planner.Basis()
	losing := sp.plain(b.SweatRate.Value, quantity.LitrePerHour)
	if b.Kind == plan.Estimate { // never a number alone
		losing = sp.say("planner.losing.estimate", sp.plain(b.SweatRate.Low, quantity.LitrePerHour), sp.plain(b.SweatRate.High, quantity.LitrePerHour))
	}
	first := sp.say("planner.losing", losing)
	if b.Usual.Known {
		first = sp.say("planner.usedto", sp.plain(b.Usual.LH, quantity.LitrePerHour), losing)
	}
	return [2]string{first, sp.say("planner.inall", sp.litres(q.Fluid.DrunkL), sp.stopsAt(q.Ceiling))}
}

// fuelSplitShown reports whether the share of fructose matters: above what one
// source gives.
func fuelSplitShown(c plan.Carbohydrate) bool {
	_, _, needed := fuel.SourceSplit(c.TotalGH)
	return needed
}

// inRow is a layout that sets objects side by side in equal widths, or one below
// the other where they would be narrower than least, px at 100 % text.
type inRow struct{ gap, least float32 }

func (l *inRow) across(o []fyne.CanvasObject, width float32) bool {
	return (width-l.gap*float32(len(o)-1))/float32(len(o)) >= look.Scaled(l.least)
}

func (l *inRow) Layout(o []fyne.CanvasObject, size fyne.Size) {
	if l.across(o, size.Width) {
		each := (size.Width - l.gap*float32(len(o)-1)) / float32(len(o))
		for i, one := range o {
			one.Move(fyne.NewPos(float32(int(float32(i)*(each+l.gap))), 0))
			one.Resize(fyne.NewSize(float32(int(each)), size.Height))
		}
		return
	}
	y := float32(0)
	for _, one := range o {
		h := one.MinSize().Height
		one.Move(fyne.NewPos(0, y))
		one.Resize(fyne.NewSize(size.Width, h))
		y += h + middleGap
	}
}

// height is what the objects need at a width.
func (l *inRow) height(o []fyne.CanvasObject, width float32) float32 {
	h := float32(0)
	for _, one := range o {
		if l.across(o, width) {
			h = max(h, one.MinSize().Height)
			continue
		}
		h += one.MinSize().Height + middleGap
	}
	return h
}

func (l *inRow) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Scaled(l.least), o[0].MinSize().Height)
}

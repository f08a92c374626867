package sweat

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// Evaluate works out a test sheet, whole or partly filled; it is cheap enough
// to run at every key stroke.
//
// A figure is known once it can be computed at all, and has its range only when
// everything it is based on is in. A refused value is not used unless Options.Kept
// names it. The error joins one [evidence.Problem] for each value that makes
// everything meaningless (time or body mass that is not a number, or not above
// zero); the result then holds the problems and no figure.
func Evaluate(in Input) (Result, error) {
	s := open(in)
	if err := s.check.err(); err != nil {
		return Result{Problems: s.check.problems}, err
	}
	b := s.balance()
	r := Result{
		Balance:     s.lines(),
		Bottles:     s.intake.bottles,
		Corrections: s.fix.list(),
		Fluid:       s.fluid(b),
	}
	c := s.concentration()
	r.Sodium = s.sodium(b, c, r.Fluid)
	r.Markers = s.markers()
	r.Flags = s.flags(r, b)
	r.Narrowing = s.narrowing(b, c)
	r.Problems, r.Missing = s.check.problems, s.missing
	return r, nil
}

// balanceSource is the evidence entry that carries the balance's citation.
const balanceSource = "balance.density"

// balance is the sum, and how far it can be trusted.
type balance struct {
	loss term
	rate term
	// known: there is a sum. in: everything it is based on is in.
	known, in bool
	rateKnown bool
	drunk     term // L
	// weighed is the loss before the corrections are taken off, kg.
	weighed term
}

// balance adds up the sheet.
func (s *sheet) balance() balance {
	var b balance
	b.drunk = number(0)
	for i, d := range s.intake.drunk {
		litres := d.mass.over(d.density)
		if i == 0 {
			b.drunk = litres
			continue
		}
		b.drunk = b.drunk.plus(litres)
	}
	if !s.body.has {
		return b
	}
	b.weighed = s.sum()
	b.loss = s.lessBreath(b.weighed)
	b.in = s.intake.in && s.intake.foodIn && s.out.urine.ok && (s.out.stool.ok || !s.out.stool.given) && s.fix.known
	b.known = true
	if s.timed {
		s.rate(&b)
	}
	return b
}

// sum is what left as it was weighed, in kg: sweat, breath and gas exchange.
func (s *sheet) sum() term {
	t := s.body.before.minus(s.body.after)
	for _, d := range s.intake.drunk {
		t = t.plus(d.mass)
	}
	for _, f := range s.intake.eaten {
		t = t.plus(f)
	}
	if s.out.urine.ok {
		t = t.minus(s.out.urine.term)
	}
	if s.out.stool.ok {
		t = t.minus(s.out.stool.term)
	}
	return t
}

// lessBreath is the sweat loss in kg, which is litres: what was weighed less
// water breathed out and gas exchange. By the field method nothing is taken off
// and the low end reaches down for them.
func (s *sheet) lessBreath(t term) term {
	switch {
	case s.fix.on:
		return t.minus(symbol("respiratory", s.fix.respiratory.q, quantity.Kilogram)).
			minus(symbol("exchange", s.fix.swap.q, quantity.Kilogram))
	case s.fix.bias > 0:
		t.q = t.q.Plus(uncertainty.Below(s.fix.bias, uncertainty.Source{Name: SourceUncorrected}))
	}
	return t
}

// time is the elapsed time as a value.
func (s *sheet) time() term {
	q := uncertainty.Measured(s.minutes, evidence.DurationU, uncertainty.Source{Name: SourceTime})
	return symbol("minutes", q, quantity.Minute)
}

// perHour is a total by the elapsed time.
func (s *sheet) perHour(t term) term { return t.over(s.time().over(number(60))) }

// rate adds the sweat rate. A rate, or a drinking rate, that is refused takes
// the balance with it: one of its parts must be wrong.
func (s *sheet) rate(b *balance) {
	b.rate = s.perHour(symbol("loss", b.loss.q, quantity.Litre))
	b.rateKnown = true
	drinking := 60 * b.drunk.q.Value() / s.minutes
	if !s.check.usable(evidence.DrinkingRate, 0, drinking) {
		b.known, b.rateKnown = false, false
	}
	if b.in && !s.check.usable(evidence.SweatRate, 0, b.rate.q.Value()) {
		b.known, b.rateKnown = false, false
	}
}

// lines lays the balance out for the screen.
func (s *sheet) lines() []Line {
	line := func(id string, q uncertainty.Quantity, sign float64, known bool) Line {
		if !known {
			return Line{ID: id}
		}
		q = q.Scaled(sign)
		low, high := q.Ends()
		return Line{ID: id, Kilograms: q.Value(), Known: true, Bounds: quantity.Range{Low: low, High: high}}
	}
	list := []Line{line(LineBody, s.body.before.q.Minus(s.body.after.q), 1, s.body.has)}
	drunk, eaten := uncertainty.Exact(0), uncertainty.Exact(0)
	for _, d := range s.intake.drunk {
		drunk = drunk.Plus(d.mass.q)
	}
	for _, f := range s.intake.eaten {
		eaten = eaten.Plus(f.q)
	}
	list = append(list,
		line(LineDrunk, drunk, 1, s.intake.in || len(s.intake.drunk) > 0),
		line(LineEaten, eaten, 1, s.intake.foodIn || len(s.intake.eaten) > 0),
		line(LineUrine, s.out.urine.q, -1, s.out.urine.ok),
	)
	if s.out.stool.given {
		list = append(list, line(LineStool, s.out.stool.q, -1, s.out.stool.ok))
	}
	if s.fix.on {
		list = append(list,
			line(LineRespiratory, s.fix.respiratory.q, -1, true),
			line(LineExchange, s.fix.swap.q, -1, true))
	}
	return list
}

// fluid makes the figures of the balance.
func (s *sheet) fluid(b balance) Fluid {
	f := Fluid{FoodWater: s.intake.water}
	s.drinking(&f, b)
	if s.body.has {
		s.deficit(&f)
	}
	if !b.known {
		return f
	}
	f.Loss = b.loss.figure(kind{quantity.Litre, 0, b.in}, balanceSource)
	f.Loss.Why.Notes = append(s.asWeighed(NoteAsWeighed, b.weighed), s.lossNotes(b)...)
	f.NotReplaced = symbol("loss", b.loss.q, quantity.Litre).minus(symbol("drunk", b.drunk.q, quantity.Litre)).
		figure(kind{quantity.Litre, anywhere(), b.in}, balanceSource)
	f.Replaced = b.replaced()
	if !b.rateKnown {
		return f
	}
	f.Rate = b.rate.figure(kind{quantity.LitrePerHour, 0, b.in}, balanceSource)
	f.Rate.Why.Notes = append(s.asWeighed(NoteRateAsWeighed, s.perHour(b.weighed)), s.lossNotes(b)...)
	f.Rate.Why.Notes = append(f.Rate.Why.Notes, figure.Note{ID: NoteDayToDay, Args: []float64{evidence.DayToDayRate}})
	f.Bias = 60 * s.fix.bias / s.minutes
	byMass := number(1000).times(symbol("rate", b.rate.q, quantity.LitrePerHour)).over(s.bodyBefore())
	f.RateByMass = byMass.figure(kind{quantity.MillilitrePerKilogramPerHour, 0, b.in}, balanceSource)
	return f
}

// replaced is the share of the loss that was drunk, %. Where the loss could be
// nought there is no such share.
func (b balance) replaced() figure.Figure {
	ratio, sure := b.drunk.q.RatioInterval(b.loss.q)
	if !sure || b.loss.q.Value() <= 0 || !finite(ratio.Low, ratio.High) {
		return figure.Figure{Unit: quantity.PerCent, Why: figure.Why{Notes: []figure.Note{{ID: NoteLossTooSmall}}}}
	}
	share := number(100).times(symbol("drunk", b.drunk.q, quantity.Litre)).over(symbol("loss", b.loss.q, quantity.Litre))
	f := share.figure(kind{quantity.PerCent, 0, b.in}, balanceSource)
	if f.Ranged {
		f.Range = quantity.Range{Low: max(0, min(f.Value, 100*ratio.Low)), High: max(f.Value, 100*ratio.High)}
	}
	return f
}

// drinking makes the figures of what was drunk.
func (s *sheet) drinking(f *Fluid, b balance) {
	if !s.intake.in && len(s.intake.drunk) == 0 {
		return
	}
	f.Drunk = b.drunk.figure(kind{quantity.Litre, 0, s.intake.in})
	if s.timed {
		rate := s.perHour(symbol("drunk", b.drunk.q, quantity.Litre))
		f.DrinkingRate = rate.figure(kind{quantity.LitrePerHour, 0, s.intake.in})
	}
}

// bodyBefore is the body mass before as one value.
func (s *sheet) bodyBefore() term { return symbol("mass", s.body.before.q, quantity.Kilogram) }

// deficit makes the change of body mass and the deficit at the end, which are the
// same with opposite signs: what the scale says.
func (s *sheet) deficit(f *Fluid) {
	after := symbol("massafter", s.body.after.q, quantity.Kilogram)
	f.MassChange = number(100).times(after.minus(s.bodyBefore())).over(s.bodyBefore()).
		figure(kind{quantity.PerCent, anywhere(), true}, balanceSource)
	f.Deficit = s.body.before.minus(s.body.after).figure(kind{quantity.Litre, anywhere(), true}, balanceSource)
	f.DeficitShare = number(100).times(s.bodyBefore().minus(after)).over(s.bodyBefore()).
		figure(kind{quantity.PerCent, anywhere(), true}, "deficit.aim", balanceSource)
}

// asWeighed is the sentence that gives a figure without the corrections; none
// where they are off.
func (s *sheet) asWeighed(id string, weighed term) []figure.Note {
	if !s.fix.on {
		return nil
	}
	return []figure.Note{{ID: id, Args: []float64{weighed.q.Value()}}}
}

// lossNotes are the sentences beside sweat loss and rate.
func (s *sheet) lossNotes(b balance) []figure.Note {
	var list []figure.Note
	note := func(id string, args ...float64) { list = append(list, figure.Note{ID: id, Args: args}) }
	switch {
	case s.fix.bias > 0:
		note(NoteFieldMethod, evidence.UncorrectedBias)
	case s.fix.reason == ReasonRating:
		note(NoteEffortRated)
	case s.fix.reason == ReasonSport:
		note(NoteEffortOfSport)
	case s.fix.reason == ReasonAssumed:
		note(NoteEffortAssumed, evidence.EffortNotKnownMet)
	}
	if low, high := b.drunk.q.Ends(); math.Abs(high-low) > 0 {
		note(NoteSharedBottles, low, high)
	}
	if s.in.Body.DressBefore == "" || s.in.Body.DressAfter == "" {
		note(NoteDressNotSaid)
	}
	if s.in.Body.DressAfter == KitOn && s.pouredOver() {
		note(NotePouredInKit)
	}
	return list
}

// pouredOver reports whether a drink went over the athlete.
func (s *sheet) pouredOver() bool {
	for _, b := range s.in.Intake.Bottles {
		if b.Use == PouredOver {
			return true
		}
	}
	return false
}

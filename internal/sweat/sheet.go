package sweat

import (
	"math"
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// sheet is an input after its checks, with what was made of it so far.
type sheet struct {
	in      Input
	check   checker
	missing []Missing
	// minutes is the elapsed time when timed.
	minutes float64
	timed   bool
	played  float64
	body    body
	intake  intake
	out     output
	fix     corrected
}

// body is the two weighings, free of kit.
type body struct {
	before, after  term
	hasBefore, has bool // has: both, and their difference can be believed
	step           float64
	kitOn          bool // or not said
	kitWeighed     bool
	// gained: heavier after than before, whether or not that is refused.
	gained bool
}

// output is what left besides sweat.
type output struct {
	urine, stool entered
}

// entered is a value that may not be there: ok when it can be used, given when
// something was entered, used or not.
type entered struct {
	term
	ok, given bool
}

// mass is the best body mass there is, kg; 0 when there is none.
func (s *sheet) mass() float64 {
	if s.body.hasBefore {
		return s.body.before.q.Value()
	}
	return 0
}

// open checks an input and reads its parts; the balance comes after.
func open(in Input) *sheet {
	s := &sheet{in: in, check: checker{limits: evidence.Limits(), kept: in.Options.Kept}}
	s.essentials()
	if len(s.check.fatal) > 0 {
		return s
	}
	s.readTime()
	s.readBody()
	s.readIntake()
	s.readOutput()
	s.fix = s.correct()
	return s
}

// essentials looks for what makes everything meaningless.
func (s *sheet) essentials() {
	if t := s.in.Time.Elapsed; t != nil {
		s.check.essential(evidence.Duration, 0, float64(*t))
	}
	for i, m := range s.in.Body.Before {
		s.check.essential(evidence.MassBefore, i+1, float64(m))
	}
	for i, m := range s.in.Body.After {
		s.check.essential(evidence.MassAfter, i+1, float64(m))
	}
}

// readTime takes elapsed and played time.
func (s *sheet) readTime() {
	s.minutes, s.timed = read(&s.check, evidence.Duration, 0, s.in.Time.Elapsed)
	if s.in.Time.Elapsed == nil {
		s.miss(Missing{ID: MissingDuration})
	}
	s.played = s.minutes
	p, ok := read(&s.check, evidence.PlayedMinutes, 0, s.in.Time.Played)
	switch {
	case !ok || !s.timed:
	case p > s.minutes:
		s.check.refuse(evidence.PlayedMinutes, 0, p)
	default:
		s.played = p
	}
}

// readBody takes the weighings and frees them of kit.
func (s *sheet) readBody() {
	b := &s.body
	in := s.in.Body
	b.step, _ = read(&s.check, evidence.ScaleStep, 0, in.Step)
	before, ok1 := s.weighing(evidence.MassBefore, "before", SourceBefore, 1, in.Before)
	after, ok2 := s.weighing(evidence.MassAfter, "after", SourceAfter, 2, in.After)
	s.missWeighings()
	b.before, b.after, b.hasBefore = before, after, ok1
	b.kitOn = in.DressBefore != Minimal || in.DressAfter != Minimal
	ok3 := s.takeOffKit()
	b.hasBefore = b.hasBefore && ok3
	b.has = ok1 && ok2 && ok3
	if !b.has {
		return
	}
	towel := evidence.TowelU
	if b.kitOn && !b.kitWeighed {
		towel = evidence.KitOnU
	}
	b.after = b.after.with(towel, uncertainty.Source{Name: SourceTowel})
	change := 100 * (b.after.q.Value() - b.before.q.Value()) / b.before.q.Value()
	b.has = b.before.q.Value() > 0 && s.check.usable(evidence.MassChange, 0, change)
	b.gained = b.before.q.Value() > 0 && change > 0 && (b.has || change <= evidence.GainToBelieve)
}

// missWeighings notes a weighing that was not entered.
func (s *sheet) missWeighings() {
	if len(s.in.Body.Before) == 0 {
		s.miss(Missing{ID: MissingBefore})
	}
	if len(s.in.Body.After) == 0 {
		s.miss(Missing{ID: MissingAfter})
	}
}

// weighing is the mean of duplicate readings. Their scatter averages out, the
// step of the scale does not; the constant offset of the scale is a source of
// its own, shared by both weighings when the scale was.
func (s *sheet) weighing(f evidence.Field, name, source string, moment int, readings []quantity.Kilograms) (t term, ok bool) {
	var used []float64
	for i, m := range readings {
		if s.check.usable(f, i+1, float64(m)) {
			used = append(used, float64(m))
		}
	}
	if len(used) == 0 || len(used) < len(readings) {
		return term{}, false
	}
	if spread := slices.Max(used) - slices.Min(used); !s.check.usable(evidence.MassSpread, moment, spread) {
		return term{}, false
	}
	u := ScaleU(s.body.step, len(used))
	list := make([]term, len(used))
	for i, m := range used {
		one := figure.Input{Symbol: numbered(name, i, len(used)), Value: m, Unit: quantity.Kilogram, U: ScaleU(s.body.step, 1)}
		list[i] = term{uncertainty.Exact(m), one.Symbol, atom, []figure.Input{one}}
	}
	scale := 0 // the same at both moments
	if s.in.Body.OtherScale {
		scale = moment
	}
	return mean(list).with(u, uncertainty.Source{Name: source}).
		with(evidence.ScaleOffsetU, uncertainty.Source{Name: SourceOffset, Item: scale}), true
}

// ScaleU is the standard uncertainty of the mean of n weighings on a field
// scale with a step, kg: 0.03 kg for one, falling with the root of n, but never
// less than the step allows (step over the root of 12).
func ScaleU(step float64, n int) float64 {
	return max(step/math.Sqrt(12), evidence.FieldScaleU/math.Sqrt(float64(max(1, n))))
}

// takeOffKit frees the weighings of kit that was on the scale. It is false when
// kit was on at one weighing only and its mass is not known.
func (s *sheet) takeOffKit() bool {
	in := s.in.Body
	dry, hasDry := s.kit(1, "kitdry", in.KitDry)
	wet, hasWet := s.kit(2, "kitwet", in.KitWet)
	if hasDry && hasWet && wet.q.Value() < dry.q.Value() {
		s.check.refuse(evidence.KitMass, 2, wet.q.Value())
		hasWet = false
	}
	onBefore, onAfter := in.DressBefore == KitOn, in.DressAfter == KitOn
	switch {
	case onBefore && onAfter && !(hasDry && hasWet):
		s.miss(Missing{ID: MissingKit, Optional: true,
			Effect: quantity.Range{Low: -evidence.KitMissingHigh, High: -evidence.KitMissingLow}})
		return true
	case onBefore && !hasDry:
		s.miss(Missing{ID: MissingKitDry})
		return false
	case onAfter && !hasWet:
		s.miss(Missing{ID: MissingKitWet})
		return false
	}
	s.body.kitWeighed = onBefore || onAfter
	if onBefore && len(in.Before) > 0 {
		s.body.before = s.body.before.minus(dry)
	}
	if onAfter && len(in.After) > 0 {
		s.body.after = s.body.after.minus(wet)
	}
	return true
}

// kit is clothes weighed apart from the body; item 1 dry, 2 wet.
func (s *sheet) kit(item int, name string, m *quantity.Kilograms) (t term, ok bool) {
	x, ok := read(&s.check, evidence.KitMass, item, m)
	return symbol(name, uncertainty.Measured(x, evidence.KitWeighingU, uncertainty.Source{Name: SourceKit, Item: item}), quantity.Kilogram), ok
}

// readOutput takes urine and stool.
func (s *sheet) readOutput() {
	s.out.urine = s.caught(evidence.UrineMass, "urine", SourceUrine, s.in.Output.Urine)
	s.out.stool = s.caught(evidence.StoolMass, "stool", SourceStool, s.in.Output.Stool)
	if !s.out.urine.given {
		s.miss(Missing{ID: MissingUrine, Effect: quantity.Range{Low: evidence.UrineMissingLow, High: evidence.UrineMissingHigh}})
	}
}

// caught is urine or stool that was weighed, in kg. None passed is exact.
func (s *sheet) caught(f evidence.Field, name, source string, m *quantity.Grams) entered {
	x, ok := read(&s.check, f, 0, m)
	u := evidence.UrineU
	if x == 0 {
		u = 0
	}
	q := uncertainty.Measured(x, u, uncertainty.Source{Name: source}).Scaled(1.0 / 1000)
	return entered{symbol(name, q, quantity.Kilogram), ok, m != nil}
}

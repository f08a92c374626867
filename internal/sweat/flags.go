package sweat

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/uncertainty"
)

// flags lists what must be spoken of: drinking beyond the loss first.
func (s *sheet) flags(r Result, b balance) []Flag {
	var list []Flag
	if s.body.gained {
		gain := s.body.after.q.Value() - s.body.before.q.Value()
		list = append(list, Flag{FlagGained, gain, above(r.Fluid.MassChange, 0)})
	}
	list = append(list, drinkingFlags(r, b)...)
	if f, aim := r.Fluid.DeficitShare, s.deficitAim(); f.Known && f.Value > aim {
		list = append(list, Flag{FlagDeficit, f.Value, above(f, aim)})
	}
	return append(list, s.sodiumFlags(r)...)
}

// drinkingFlags speak of drinking near or beyond the loss. Whether it is
// certain hangs on the difference of the two, which stays straight where the
// share does not.
func drinkingFlags(r Result, b balance) []Flag {
	if !b.known || !(b.drunk.q.Value() > 0) {
		return nil
	}
	sure := func(over uncertainty.Quantity) bool { return b.in && over.Interval().Low > 0 }
	if over := b.drunk.q.Minus(b.loss.q); over.Value() > 0 {
		return []Flag{{FlagOverdrank, over.Value(), sure(over)}}
	}
	if f := r.Fluid.Replaced; f.Known && f.Value >= evidence.NearLoss {
		near := b.drunk.q.Minus(b.loss.q.Scaled(evidence.NearLoss / 100))
		return []Flag{{FlagNearLoss, f.Value, sure(near)}}
	}
	return nil
}

// above reports whether the whole range of a figure lies above a value.
func above(f figure.Figure, x float64) bool { return f.Ranged && f.Range.Low > x }

// deficitAim is the limit in use, %.
func (s *sheet) deficitAim() float64 {
	if x, ok := read(&s.check, evidence.AimDeficit, 0, s.in.Options.DeficitAim); ok {
		return x
	}
	return evidence.DeficitAim
}

// sodiumFlags says when sodium is worth planning: a high rate, salty sweat or a
// long session (ACSM/AND/DC 2016, from memory).
func (s *sheet) sodiumFlags(r Result) []Flag {
	var list []Flag
	if f := r.Fluid.Rate; f.Known && f.Value > evidence.SodiumMattersRate {
		list = append(list, Flag{FlagSodiumRate, f.Value, above(f, evidence.SodiumMattersRate)})
	}
	if f := r.Sodium.Concentration; f.Known && f.Value > evidence.WholeBodyTopEdge {
		list = append(list, Flag{FlagSodiumSalty, f.Value, above(f, evidence.WholeBodyTopEdge)})
	}
	if s.timed && s.minutes > evidence.SodiumMattersAfter {
		list = append(list, Flag{FlagSodiumLong, s.minutes, true})
	}
	return list
}

package proposal

import "ebbwell/internal/evidence"

// GelWaterEach is the water a gel is taken with, mL. Where gels were taken, and the
// stomach stayed calm, it is a step below what the habit had for each of them, but no
// less than some take and no more than others are given.
func GelWaterEach(habit *Sum, calm bool) float64 {
	if !calm || !Passes(habit.Gels, 0) {
		return evidence.GelWater
	}
	return min(evidence.GelWater, max(evidence.GelWaterUsed, evidence.GelWaterStep*habit.GelWaterML/habit.Gels))
}

// Dry reports that a mix lacks water for its gels, each mL for a gel.
func (s *Sum) Dry(each float64) bool { return Passes(each*s.Gels, s.GelWaterML) }

// crowded reports more gels and portions together than what is drunk, or where little
// is drunk the time, lets one get down.
func (s *Sum) crowded(hours float64) bool {
	pieces := s.Gels + s.Portions
	little := Passes(evidence.LittleDrunk*1000*hours, s.DrunkML)
	return Passes(pieces*evidence.PieceWater, s.DrunkML) || little && Passes(pieces*evidence.PieceEvery, hours*perHour)
}

// lacksWater reports gels without their water, or more to eat than goes down with what
// is drunk. What the base has may stay as it is, with no less water.
func (p *program) lacksWater(s *Sum) bool {
	from := &p.from
	if s.Dry(p.gelWater) && (Passes(s.Gels, from.Gels) || Passes(from.GelWaterML, s.GelWaterML)) {
		return true
	}
	return Passes(s.Gels+s.Portions, from.Gels+from.Portions) && s.crowded(p.c.hours())
}

// KeepML is how far a loss may lie past the aim for it and still meet it, mL: 0.2 % of
// body mass, or, where that is hidden, a volume that does not tell it.
func KeepML(massKg float64, hidden bool) float64 {
	if hidden {
		return evidence.TargetKeepHidden
	}
	return evidence.TargetKeep * massKg * 10
}

// PastAim reports that a loss, mL, passes the aim for it by more than is kept. Proposal,
// guards and bands all ask it.
func PastAim(lossML, aimML, massKg float64, hidden bool) bool {
	return Passes(lossML, aimML+KeepML(massKg, hidden))
}

// pastAim asks for a change of body mass at the end, %, below zero for a loss.
func (c *Case) pastAim(end, aim float64) bool {
	return PastAim(-end*c.percent(), aim*c.percent(), c.MassKg, c.Hidden)
}

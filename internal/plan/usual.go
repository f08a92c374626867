package plan

// UsualFluid is what the stomach is used to over a whole session of a length,
// L; ok is false where that is not known.
func (p *Planner) UsualFluid(l Length) (litres float64, ok bool) {
	return p.basis.Usual.LH * p.hours(l), p.basis.Usual.Known
}

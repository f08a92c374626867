package sweat

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// sodium makes the figures of the patches.
func (s *sheet) sodium(b balance, c concentration, fluid Fluid) Sodium {
	out := Sodium{Patches: c.results, Sites: c.sites, Methods: c.methods}
	k := kind{quantity.MillimolePerLitre, 0, c.in}
	if !c.known {
		s.sodiumRanges(&out, b, c)
		return out
	}
	out.Concentration = c.t.figure(k, c.sources...)
	out.Concentration.Why.Notes = c.notes
	if !b.known {
		return out
	}
	conc := symbol("concentration", c.t.q, quantity.MillimolePerLitre)
	loss := symbol("loss", b.loss.q, quantity.Litre)
	in := b.in && c.in
	from := append([]string{"sodium.molar-mass"}, c.sources...)
	lost := loss.times(conc)
	out.Millimoles = lost.figure(kind{quantity.Millimole, 0, in}, c.sources...)
	out.Loss = lost.times(molarMass()).figure(kind{quantity.Milligram, 0, in}, from...)
	out.Loss.Why.Notes = c.notes
	if !b.rateKnown {
		return out
	}
	rate := symbol("rate", b.rate.q, quantity.LitrePerHour)
	hourly := rate.times(conc)
	out.MillimoleRate = hourly.figure(kind{quantity.MillimolePerHour, 0, in}, c.sources...)
	perHour := hourly.times(molarMass())
	out.LossRate = perHour.figure(kind{quantity.MilligramPerHour, 0, in}, from...)
	out.LossRate.Why.Notes = c.notes
	out.Hold = b.hold(c, perHour.q, in, fluid)
	return out
}

// molarMass of sodium.
func molarMass() term { return constant("molarmass", evidence.SodiumMolarMass, "mg/mmol") }

// sodiumRanges gives the sites without an equation their ranges.
func (s *sheet) sodiumRanges(out *Sodium, b balance, c concentration) {
	if len(c.spans) == 0 {
		return
	}
	over := func(by term, unit quantity.Unit, mg, in bool) figure.Figure {
		var list []term
		for _, sp := range c.spans {
			t := by.times(sp.t)
			if mg {
				t = t.times(molarMass())
			}
			list = append(list, t)
		}
		f := rangeOnly(list, kind{unit, 0, in}, "sodium.molar-mass")
		f.Why.Notes = append(f.Why.Notes, c.spans[0].notes...)
		return f
	}
	out.Concentration = over(number(1), quantity.MillimolePerLitre, false, c.in)
	if b.known {
		loss := symbol("loss", b.loss.q, quantity.Litre)
		out.Loss = over(loss, quantity.Milligram, true, b.in && c.in)
		out.Millimoles = over(loss, quantity.Millimole, false, b.in && c.in)
	}
	if b.rateKnown {
		rate := symbol("rate", b.rate.q, quantity.LitrePerHour)
		out.LossRate = over(rate, quantity.MilligramPerHour, true, b.in && c.in)
		out.MillimoleRate = over(rate, quantity.MillimolePerHour, false, b.in && c.in)
	}
}

// hold is the intake that would hold plasma sodium, mg/h, never above what is
// lost. There is none where more was drunk than lost: sodium does not protect
// from that. Its low end uses the low end of the concentration.
func (b balance) hold(c concentration, lost uncertainty.Quantity, in bool, fluid Fluid) figure.Figure {
	if !fluid.Replaced.Known || b.rate.q.Value() <= 0 || b.drunk.q.Value() > b.loss.q.Value() {
		return figure.Figure{}
	}
	share := symbol("replaced", b.drunk.q.Over(b.loss.q).Scaled(100), quantity.PerCent)
	conc := symbol("concentration", c.t.q, quantity.MillimolePerLitre)
	kalium := symbol("potassium", c.potassium.q, quantity.MillimolePerLitre)
	limit := constant("hold", evidence.HoldPlasma, quantity.MillimolePerLitre)
	need := conc.plus(kalium).minus(limit.times(number(1).minus(share.over(number(100)))))
	rate := symbol("rate", b.rate.q, quantity.LitrePerHour)
	f := rate.times(need).times(molarMass()).figure(kind{quantity.MilligramPerHour, 0, in}, "sodium.hold", "sodium.molar-mass")
	if !f.Known {
		return figure.Figure{}
	}
	f.Why.Formula = "rate * min(max(0, " + need.text + "), concentration) * molarmass"
	capped := f.Value > lost.Value()
	f.Value = min(max(0, f.Value), lost.Value())
	if f.Ranged {
		least := SodiumToHold(max(0, c.t.q.Interval().Low), c.potassium.q.Value(), share.q.Value()/100)
		f.Range.Low = min(max(0, f.Range.Low), f.Value, b.rate.q.Value()*least*evidence.SodiumMolarMass)
		f.Range.High = max(f.Value, min(f.Range.High, lost.Interval().High))
	}
	f.Why.Notes = holdNotes(share.q.Value()/100, c.t.q.Value(), capped)
	return f
}

// holdNotes says when holding plasma sodium matters at all.
func holdNotes(share, sodium float64, capped bool) []figure.Note {
	var list []figure.Note
	if share <= evidence.HoldFromShare || sodium < evidence.HoldFromSodium {
		list = append(list, figure.Note{ID: NoteHoldNotNeeded, Args: []float64{100 * evidence.HoldFromShare, evidence.HoldFromSodium}})
	}
	if capped {
		list = append(list, figure.Note{ID: NoteHoldCapped})
	}
	return list
}

// SodiumToHold is the sodium, mmol per litre of sweat, that holds plasma sodium
// when a share of the loss (0 to 1) is replaced: max(0, c - 159 (1 - f)) with c
// the sodium and potassium of whole-body sweat, and never more than the sodium
// lost. It follows from the equation of Nguyen and Kurtz with nothing else
// changing; it matters mainly in prolonged exercise with more than 0.8 replaced
// and 40 mmol/L or more (McCubbin 2022). Sodium does not protect from drinking
// too much.
func SodiumToHold(sodium, potassium, share float64) float64 {
	return min(sodium, max(0, sodium+potassium-evidence.HoldPlasma*(1-share)))
}

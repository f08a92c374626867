package plan

import (
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/quantity"
)

// Band is the interval of one slot's values that meets all aims and guards
// with the other slots held, as far as the slot may be moved.
type Band struct {
	quantity.Range
	// Empty: no value meets them all.
	Empty bool
	// Clash names, when Empty, aims that leave nothing: one that no value of
	// this slot meets, or two that cannot be met together.
	Clash Condition
}

// Bands returns the band of every slot. A slot that is not in use, or may not
// change, has an empty band without a clash.
func (p *Planner) Bands(l Length, mix Mix) [Slots]Band {
	var bands [Slots]Band
	r := p.rowsOf(l)
	for s := range p.menu {
		if !p.menu[s].InUse || !p.aim.allows(Slot(s)) {
			bands[s] = Band{Empty: true}
			continue
		}
		bands[s] = bandOf(&r, p.menu[s].Most, mix, s)
		if most, _ := p.most(l, mix, Slot(s)); !bands[s].Empty && most >= bands[s].Low {
			bands[s].High = min(bands[s].High, most) // as far as the slider goes
		}
	}
	return bands
}

// bandOf cuts the slider's travel by each row in turn.
func bandOf(r *rows, most float64, mix Mix, s int) Band {
	b := Band{Range: quantity.Range{Low: 0, High: most}}
	var lowBy, highBy Condition
	mix[s] = 0
	for i := range r.all() {
		w := &r.list[i]
		room := w.most - w.sum(&mix)
		switch a := w.a[s]; {
		case a > 0 && room/a < b.High:
			b.High, highBy = room/a, w.condition
		case a < 0 && room/a > b.Low:
			b.Low, lowBy = room/a, w.condition
		case a == 0 && w.misses(&mix):
			return Band{Empty: true, Clash: w.condition}
		}
	}
	if proposal.Passes(b.Low, b.High) {
		return Band{Empty: true, Clash: lowBy | highBy}
	}
	b.High = max(b.High, b.Low)
	return b
}

package plan

import "ebbwell/internal/plan/proposal"

// roomFor is the whole mL that a mix's drinks may come to: the mix, or what the
// ceiling leaves beside the water in foods.
func (p *Planner) roomFor(l Length, mix Mix, planned int) int {
	room := p.CeilingOf(l).FluidL
	for s := range p.menu {
		if p.menu[s].InUse {
			room -= p.menu[s].Unit.FoodWaterL * mix[s]
		}
	}
	return min(planned, int(proposal.FloorTo(room*1000, 1)))
}

// negligibleML is below what any mL shows.
const negligibleML = 1e-4

// exceeds reports that a volume, mL, is above another by more than is shown.
func exceeds(ml, most float64) bool { return ml > most+negligibleML }

// At returns a planner that also asks that a mix can be drunk at these
// chances: no more than [Planner.CarriesML]. A session without a chance leaves
// drinking free.
func (p *Planner) At(chances []Chance) *Planner {
	at := *p
	at.chances = chances
	for l := range at.carried {
		length := Length(l)
		at.carried[l] = Within(0, proposal.FloorTo(p.CarriesML(length, chances), 1)/1000)
		at.carried[l].On = len(p.place(length, chances, nil)) > 0
	}
	return &at
}

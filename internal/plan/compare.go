package plan

// Difference is how option b differs from a, b less a.
type Difference struct {
	Mix            Mix
	DeficitL       float64
	Deficit        float64 // % of body mass
	DrunkL         float64
	RateLH         float64
	CarbohydrateGH float64
	SodiumMgH      float64
	Strength       float64 // g per 100 mL
	// Gained are guards that speak for b and not for a; Lost the reverse.
	Gained, Lost Guard
}

// Compare returns how b differs from a.
func (p *Planner) Compare(l Length, a, b Mix) Difference {
	x, y := p.Evaluate(l, a), p.Evaluate(l, b)
	d := Difference{
		DeficitL:       y.DeficitL.Value - x.DeficitL.Value,
		Deficit:        y.Deficit.Value - x.Deficit.Value,
		DrunkL:         y.Fluid.DrunkL - x.Fluid.DrunkL,
		RateLH:         y.Fluid.RateLH - x.Fluid.RateLH,
		CarbohydrateGH: y.Carbohydrate.TotalGH - x.Carbohydrate.TotalGH,
		SodiumMgH:      y.Sodium.InMgH - x.Sodium.InMgH,
		Strength:       y.StrengthPercent - x.StrengthPercent,
		Gained:         y.Guards &^ x.Guards, Lost: x.Guards &^ y.Guards,
	}
	for s := range a {
		d.Mix[s] = b[s] - a[s]
	}
	return d
}

package fuel

import "ebbwell/internal/evidence"

// Total is a sum over the items of a mixture. Missing counts the items whose
// part is unknown and therefore not in Value.
type Total struct {
	Value   float64
	Missing int
}

// Complete reports whether every item's part was known.
func (t Total) Complete() bool { return t.Missing == 0 }

// add counts in a part of one item.
func (t *Total) add(c Content) {
	if !c.Known {
		t.Missing++
		return
	}
	t.Value += c.Value
}

// Drunk is the part of a mixture that is drunk.
type Drunk struct {
	// VolumeL is how the trade counts drinks; WaterL is the water inside them.
	VolumeL, WaterL Total
	// Carbohydrate is available carbohydrate, g.
	Carbohydrate Total
	// SodiumMg counts added salt in.
	SodiumMg Total
	// Osmoles is mOsm, an ideal sum.
	Osmoles Total
}

// Mixture is what a set of amounts comes to.
type Mixture struct {
	MassG Total
	Drunk Drunk
	// FoodWaterL is the water inside foods.
	FoodWaterL Total
	// Carbohydrate is available carbohydrate, g, and Split its families.
	Carbohydrate Total
	Split        Split
	SodiumMg     Total
	PotassiumMg  Total
	EnergyKcal   Total
}

// Mix adds up amounts, and salt in g of sodium chloride that goes into the
// drinks. Whatever has the form of a drink is drunk; all else is food.
func Mix(amounts []Amount, saltG float64) Mixture {
	var m Mixture
	for _, a := range amounts {
		m.add(a)
	}
	sodium := Of(saltG * evidence.SodiumInSalt)
	m.MassG.add(Of(saltG))
	m.SodiumMg.add(sodium)
	m.Drunk.SodiumMg.add(sodium)
	m.Drunk.Osmoles.add(Of(saltG * SodiumChloride.Osmoles()))
	return m
}

// add counts in one amount.
func (m *Mixture) add(a Amount) {
	if a.Grams == 0 {
		return
	}
	c, parts := a.Product.Per100, a.Grams/100
	water := c.Water.Times(parts / 1000)
	carbohydrate := c.AvailableCarbohydrate().Times(parts)
	m.MassG.add(Of(a.Grams))
	m.Carbohydrate.add(carbohydrate)
	m.Split = m.Split.plus(c.Split().times(parts))
	m.SodiumMg.add(c.Sodium.Times(parts))
	m.PotassiumMg.add(c.Potassium.Times(parts))
	m.EnergyKcal.add(c.Energy.Times(parts))
	if a.Product.Form != Drink {
		m.FoodWaterL.add(water)
		return
	}
	m.Drunk.VolumeL.add(a.Volume().Times(1.0 / 1000))
	m.Drunk.WaterL.add(water)
	m.Drunk.Carbohydrate.add(carbohydrate)
	m.Drunk.SodiumMg.add(c.Sodium.Times(parts))
	m.Drunk.Osmoles.add(a.Product.osmolesPer100().Times(parts))
}

// SodiumMmolL is the sodium of what is drunk, mmol/L, added salt included.
func (m Mixture) SodiumMmolL() Content {
	return m.Drunk.per(m.Drunk.SodiumMg, 1/evidence.SodiumMolarMass)
}

// Osmolality of what is drunk, mOsm/L, by an ideal sum: an estimate.
func (m Mixture) Osmolality() Content { return m.Drunk.per(m.Drunk.Osmoles, 1) }

// nothing is a volume in L below which nothing was drunk.
const nothing = 1e-9

// per divides a total by the volume drunk.
func (d Drunk) per(t Total, factor float64) Content {
	if !t.Complete() || !d.VolumeL.Complete() || !(d.VolumeL.Value > nothing) {
		return Content{}
	}
	return Of(t.Value * factor / d.VolumeL.Value)
}

// Strength is the carbohydrate of one drink, g per 100 mL of it.
func (p Product) Strength() Content {
	c := p.Per100.AvailableCarbohydrate()
	if !p.Density.Known {
		return Content{}
	}
	return c.Times(p.Density.Value)
}

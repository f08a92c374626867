package fuel

import "ebbwell/internal/evidence"

// Per is the amount that the figures on a label are for.
type Per string

// The amounts a label can speak of.
const (
	Per100Grams       Per = "100-g"
	Per100Millilitres Per = "100-mL"
	PerPortion        Per = "portion"
)

// Label is what has to be known of a label to read its figures as parts of
// 100 g.
type Label struct {
	Per  Per
	Form Form
	// Density in g/mL where it is known.
	Density Content
	// Carbohydrate in the label's amount, g.
	Carbohydrate Content
	// PortionGrams is the portion by mass, PortionMillilitres by volume.
	PortionGrams, PortionMillilitres Content
}

// Weight is the density of the product in g/mL: as known, else that of water
// with the drink's carbohydrate dissolved in it, which takes up about 0.62 mL
// a gram as sucrose does. A drink whose carbohydrate is not known counts as
// water; what is not a drink has none.
func (l Label) Weight() Content {
	if l.Density.Known && l.Density.Value > 0 {
		return l.Density
	}
	if l.Form != Drink {
		return Content{}
	}
	gain := 1 - evidence.SugarSpecificVolume
	held := l.Carbohydrate.Value
	switch {
	case !l.Carbohydrate.Known:
		return Of(1)
	case l.Per == Per100Millilitres:
		return Of(1 + gain*held/100)
	case l.Per == PerPortion && l.PortionMillilitres.Known && l.PortionMillilitres.Value > 0:
		return Of(1 + gain*held/l.PortionMillilitres.Value)
	case l.Per == PerPortion && l.PortionGrams.Known && l.PortionGrams.Value > 0:
		held *= 100 / l.PortionGrams.Value
	}
	return Of(1 / (1 - gain*min(held, 100)/100))
}

// Portion is the mass of a portion in g, by mass or by volume.
func (l Label) Portion() Content {
	if l.PortionGrams.Known {
		return l.PortionGrams
	}
	weight := l.Weight()
	if !l.PortionMillilitres.Known || !weight.Known {
		return Content{}
	}
	return l.PortionMillilitres.Times(weight.Value)
}

// Grams is the mass of the amount that the figures are for; unknown where a
// density or a portion is needed that nobody gave.
func (l Label) Grams() Content {
	switch l.Per {
	case Per100Millilitres:
		return l.Weight().Times(100)
	case PerPortion:
		if p := l.Portion(); p.Value > 0 {
			return p
		}
		return Content{}
	}
	return Of(100)
}

// SugarsOver reports whether the sugars that are given, as a sum or by their
// kinds, come to more than the carbohydrate they are part of, by more than
// rounding: half a gram in 100 g.
func (c Composition) SugarsOver() bool {
	available, s := c.AvailableCarbohydrate(), c.Sugars
	sum := s.Glucose.Value + s.Fructose.Value + s.Sucrose.Value + s.Lactose.Value + s.Maltose.Value + s.Starch.Value + s.Maltodextrin.Value
	const rounding = 0.5
	return available.Known && max(sum, s.Total.Value) > available.Value+rounding
}

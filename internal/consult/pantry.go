package consult

import (
	"slices"

	"ebbwell/internal/fuel"
	"ebbwell/internal/record"
)

// Water is the id of plain water in the generic catalogue.
const Water = record.ID("generic.water")

// Pantry is what there is to drink and eat: the generic catalogue and the
// practitioner's own products, which go before the generic ones they correct.
// A Pantry is never changed; make a new one when a product changes.
type Pantry struct {
	list  []fuel.Product
	place map[record.ID]int
}

// NewPantry joins the generic catalogue and the practitioner's own products.
// Own products stand first, in their order.
func NewPantry(generic *fuel.Catalogue, own []record.Product) *Pantry {
	p := &Pantry{place: map[record.ID]int{}}
	replaced := map[record.ID]record.ID{}
	for _, r := range own {
		if r.Deleted() {
			continue
		}
		p.place[r.ID] = len(p.list)
		p.list = append(p.list, ProductOf(r))
		if r.Replaces != "" {
			replaced[record.ID(r.Replaces)] = r.ID
		}
	}
	for _, g := range generic.Products() {
		id := record.ID(g.ID)
		if by, ok := replaced[id]; ok {
			p.place[id] = p.place[by]
			continue
		}
		p.place[id] = len(p.list)
		p.list = append(p.list, g)
	}
	return p
}

// Find returns a product by its id; a generic one that was corrected gives
// its correction.
func (p *Pantry) Find(id record.ID) (fuel.Product, bool) {
	i, ok := p.place[id]
	if !ok {
		return fuel.Product{}, false
	}
	return p.list[i], true
}

// Products lists everything; the slice is the caller's own.
func (p *Pantry) Products() []fuel.Product { return slices.Clone(p.list) }

// Drinks lists what can be drunk as it is or made up from a powder.
func (p *Pantry) Drinks() []fuel.Product {
	return slices.DeleteFunc(p.Products(), func(q fuel.Product) bool { return !IsDrink(q) })
}

// Foods lists what is eaten: solids and gels.
func (p *Pantry) Foods() []fuel.Product {
	return slices.DeleteFunc(p.Products(), func(q fuel.Product) bool { return IsDrink(q) || q.Form == fuel.Powder })
}

// IsDrink reports whether a product is drunk.
func IsDrink(p fuel.Product) bool { return p.Form == fuel.Drink }

// ProductOf turns a product as kept into one as calculated with.
func ProductOf(r record.Product) fuel.Product {
	c := r.Per100
	return fuel.Product{
		ID: string(r.ID), Name: r.Name, Form: fuel.Form(r.Form), Density: content(r.Density),
		Per100: fuel.Composition{
			Water: content(c.Water), Energy: content(c.Energy), Carbohydrate: content(c.Carbohydrate), Fibre: content(c.Fibre),
			Available: content(c.Available),
			Sugars: fuel.Sugars{
				Total: content(c.Sugars), Glucose: content(c.Glucose), Fructose: content(c.Fructose), Sucrose: content(c.Sucrose),
				Lactose: content(c.Lactose), Maltose: content(c.Maltose), Starch: content(c.Starch),
				Maltodextrin: content(c.Maltodextrin),
			},
			Sodium: content(c.Sodium), Potassium: content(c.Potassium), Osmolality: content(c.Osmolality),
		},
		Portion: fuel.Portion{Name: r.PortionName, Grams: r.PortionMass.Or(0)},
		Origin:  fuel.Origin{Source: r.Source, Note: r.Note},
	}
}

// content is a part of a product; what was not entered stays unknown.
func content(n record.Number) fuel.Content {
	if !n.Known() {
		return fuel.Content{}
	}
	return fuel.Of(*n.Value)
}

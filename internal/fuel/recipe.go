package fuel

import (
	"errors"
	"fmt"

	"ebbwell/internal/evidence"
)

// ErrTooStrong means: more is dissolved than the volume can hold.
var ErrTooStrong = errors.New("more than the volume holds")

// Recipe is powders, sugar and salt made up to a volume with water: "60 g of
// sugar and 1.2 g of salt made up to 1 L".
type Recipe struct {
	ID, Name string
	Parts    []Amount
	Litres   float64
}

// MadeUp is a powder made up to a drink at a strength in g of powder per
// 100 mL of the finished drink, with a portion of 500 mL. The error is
// [ErrNotPowder], [ErrAmount] or [ErrTooStrong].
func (p Product) MadeUp(gramsPer100mL float64) (Product, error) {
	if p.Form != Powder {
		return Product{}, fmt.Errorf("make up %s: %w", p.ID, ErrNotPowder)
	}
	part, err := p.ByMass(gramsPer100mL * 10)
	if err != nil {
		return Product{}, fmt.Errorf("make up a drink: %w", err)
	}
	return Recipe{ID: p.ID, Name: p.Name, Parts: []Amount{part}, Litres: 1}.Drink()
}

// Drink is the finished drink. Its density follows from what is dissolved,
// which takes up about 0.62 mL a gram as sucrose does; its water is the
// rest. Unknown parts of an ingredient stay unknown in the drink.
func (r Recipe) Drink() (Product, error) {
	if !(r.Litres > 0) || r.Litres > maxFinite {
		return Product{}, fmt.Errorf("make up %s to %g L: %w", r.ID, r.Litres, ErrAmount)
	}
	dissolved := 0.0
	for _, a := range r.Parts {
		dissolved += a.Grams
	}
	water := 1000*r.Litres - dissolved*evidence.SugarSpecificVolume
	if water < 0 {
		return Product{}, fmt.Errorf("make up %s with %g g in %g L: %w", r.ID, dissolved, r.Litres, ErrTooStrong)
	}
	mass := water + dissolved
	d := Product{
		ID: r.ID, Name: r.Name, Form: Drink,
		Density: Of(mass / (1000 * r.Litres)),
		Per100:  r.composition(mass),
		Portion: Portion{Grams: mass / (1000 * r.Litres) * evidence.UsualBottle},
		Origin:  Origin{Sure: evidence.Derived},
	}
	d.Per100.Water = Of(min(100, 100*(water+r.water())/mass))
	return d, nil
}

// water is the water the ingredients bring, g; an unknown one counts as none.
func (r Recipe) water() float64 {
	sum := 0.0
	for _, a := range r.Parts {
		sum += a.Product.Per100.Water.Value * a.Grams / 100
	}
	return sum
}

// composition is what the ingredients come to in 100 g of a mass of drink.
func (r Recipe) composition(mass float64) Composition {
	sum := func(part func(Composition) Content) Content {
		total := 0.0
		for _, a := range r.Parts {
			c := part(a.Product.Per100)
			if !c.Known && a.Grams > 0 {
				return Content{}
			}
			total += c.Value * a.Grams / mass
		}
		return Of(total)
	}
	// A kind of sugar that one ingredient leaves empty is what the others
	// hold of it; what stays unassigned shows in the split of the drink.
	sugar := func(part func(Sugars) Content) Content {
		total := Content{}
		for _, a := range r.Parts {
			if c := part(a.Product.Per100.Sugars); c.Known {
				total = Of(total.Value + c.Value*a.Grams/mass)
			}
		}
		return total
	}
	return Composition{
		Energy:       sum(func(c Composition) Content { return c.Energy }),
		Carbohydrate: sum(func(c Composition) Content { return c.Carbohydrate }),
		Fibre:        sum(func(c Composition) Content { return c.Fibre }),
		Available:    sum(Composition.AvailableCarbohydrate),
		Sodium:       sum(func(c Composition) Content { return c.Sodium }),
		Potassium:    sum(func(c Composition) Content { return c.Potassium }),
		Sugars: Sugars{
			Total:        sum(func(c Composition) Content { return c.Sugars.Total }),
			Glucose:      sugar(func(s Sugars) Content { return s.Glucose }),
			Fructose:     sugar(func(s Sugars) Content { return s.Fructose }),
			Sucrose:      sugar(func(s Sugars) Content { return s.Sucrose }),
			Lactose:      sugar(func(s Sugars) Content { return s.Lactose }),
			Maltose:      sugar(func(s Sugars) Content { return s.Maltose }),
			Starch:       sugar(func(s Sugars) Content { return s.Starch }),
			Maltodextrin: sugar(func(s Sugars) Content { return s.Maltodextrin }),
		},
	}
}

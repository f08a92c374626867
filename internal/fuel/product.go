package fuel

import (
	"errors"
	"fmt"

	"ebbwell/internal/evidence"
)

// Form says how a product is taken.
type Form string

// The forms of a product.
const (
	Drink     Form = "drink"
	Solid     Form = "solid"
	SemiSolid Form = "semi-solid"
	Gel       Form = "gel"
	Powder    Form = "powder"
)

// Known reports whether the form is one of the five.
func (f Form) Known() bool {
	switch f {
	case Drink, Solid, SemiSolid, Gel, Powder:
		return true
	}
	return false
}

// Content is a part of a product that may be unknown. The zero Content is
// unknown; nothing is ever taken as zero because it is not known.
type Content struct {
	Known bool
	Value float64
}

// Of returns a known content.
func Of(x float64) Content { return Content{Known: true, Value: x} }

// Times scales a content; an unknown one stays unknown.
func (c Content) Times(factor float64) Content {
	if !c.Known {
		return Content{}
	}
	return Of(c.Value * factor)
}

// Composition is what 100 g of a product hold.
type Composition struct {
	Water  Content // g
	Energy Content // kcal
	// Carbohydrate counts the fibre; Available does not, and is what a plan
	// calculates with. Where only one of fibre and Available is known, see
	// [Composition.AvailableCarbohydrate].
	Carbohydrate Content // g
	Fibre        Content // g
	Available    Content // g
	Sugars       Sugars
	Sodium       Content // mg
	Potassium    Content // mg
	// Osmolality in mOsm/L where the label or the formula states it; it then
	// goes before the estimate.
	Osmolality Content
}

// Sugars is the analysed carbohydrate of 100 g, g each. Total is the sum of
// the free sugars as a table or a label prints it; the rest are its parts and
// the longer chains.
type Sugars struct {
	Total        Content
	Glucose      Content
	Fructose     Content
	Sucrose      Content
	Lactose      Content
	Maltose      Content
	Starch       Content
	Maltodextrin Content
}

// AvailableCarbohydrate is the carbohydrate without fibre, g per 100 g: as
// stated, or total less fibre. It is unknown when neither can be had.
func (c Composition) AvailableCarbohydrate() Content {
	switch {
	case c.Available.Known:
		return c.Available
	case c.Carbohydrate.Known && c.Fibre.Known:
		return Of(max(0, c.Carbohydrate.Value-c.Fibre.Value))
	}
	return Content{}
}

// Portion is the amount people count in: a slice, a bottle, a gel.
type Portion struct {
	Name  string
	Grams float64
}

// Origin says where a composition comes from.
type Origin struct {
	Source string
	// Number is the number of the row in the source: NDB, FDC.
	Number string
	// Title is the row's name in the source.
	Title string
	Sure  evidence.Sureness
	Note  string
}

// Product is a drink or a food.
type Product struct {
	// ID is stable; generic ones begin with "generic.".
	ID   string
	Name string
	Form Form
	// Density in g/mL; known for what is drunk, and for a gel.
	Density Content
	Per100  Composition
	Portion Portion
	Origin  Origin
}

// What can be wrong with a product or an amount.
var (
	// ErrProduct: a product has no id or name, a form nobody knows, or a
	// part that 100 g cannot hold.
	ErrProduct = errors.New("product not usable")
	// ErrNoDensity: a volume was asked of a product whose density is unknown.
	ErrNoDensity = errors.New("density unknown")
	// ErrNoPortion: the product has no portion.
	ErrNoPortion = errors.New("portion unknown")
	// ErrNotPowder: only a powder is made up to a drink.
	ErrNotPowder = errors.New("not a powder")
	// ErrAmount: an amount is negative or not a number.
	ErrAmount = errors.New("amount not usable")
)

// Check reports what makes a product unusable; it wraps [ErrProduct].
func (p Product) Check() error {
	if p.ID == "" || p.Name == "" {
		return fmt.Errorf("%w: id or name missing", ErrProduct)
	}
	if !p.Form.Known() {
		return fmt.Errorf("%w: %s has form %q", ErrProduct, p.ID, p.Form)
	}
	c, s := p.Per100, p.Per100.Sugars
	grams := []Content{
		c.Water, c.Carbohydrate, c.Fibre, c.Available, s.Total, s.Glucose, s.Fructose,
		s.Sucrose, s.Lactose, s.Maltose, s.Starch, s.Maltodextrin,
	}
	for _, part := range grams {
		if part.Known && !(part.Value >= 0 && part.Value <= 100) {
			return fmt.Errorf("%w: %s holds %g g in 100 g", ErrProduct, p.ID, part.Value)
		}
	}
	for _, part := range []Content{p.Density, c.Energy, c.Sodium, c.Potassium, c.Osmolality, Of(p.Portion.Grams)} {
		if part.Known && !(part.Value >= 0 && part.Value <= maxFinite) {
			return fmt.Errorf("%w: %s has a part of %g", ErrProduct, p.ID, part.Value)
		}
	}
	if p.Density.Known && p.Density.Value == 0 {
		return fmt.Errorf("%w: %s has no density", ErrProduct, p.ID)
	}
	return nil
}

// Amount is a product and how much of it.
type Amount struct {
	Product Product
	Grams   float64
}

// ByMass is an amount in grams.
func (p Product) ByMass(grams float64) (Amount, error) {
	if !(grams >= 0) || grams > maxFinite {
		return Amount{}, fmt.Errorf("take %g g of %s: %w", grams, p.ID, ErrAmount)
	}
	return Amount{Product: p, Grams: grams}, nil
}

// ByVolume is an amount in millilitres, by the product's density.
func (p Product) ByVolume(millilitres float64) (Amount, error) {
	if !p.Density.Known || p.Density.Value <= 0 {
		return Amount{}, fmt.Errorf("take %g mL of %s: %w", millilitres, p.ID, ErrNoDensity)
	}
	return p.ByMass(millilitres * p.Density.Value)
}

// ByPortion is an amount in portions; halves are usual.
func (p Product) ByPortion(portions float64) (Amount, error) {
	if p.Portion.Grams <= 0 {
		return Amount{}, fmt.Errorf("take %g portions of %s: %w", portions, p.ID, ErrNoPortion)
	}
	return p.ByMass(portions * p.Portion.Grams)
}

// Volume of an amount in mL; unknown where the density is.
func (a Amount) Volume() Content {
	if !a.Product.Density.Known || a.Product.Density.Value <= 0 {
		return Content{}
	}
	return Of(a.Grams / a.Product.Density.Value)
}

// maxFinite keeps infinities out of amounts.
const maxFinite = 1e9

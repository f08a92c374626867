package pantry

import (
	"context"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/sweat"
)

// form is a product as it is entered: the figures as its label prints them.
// What is kept is the product in 100 g; see [form.record].
type form struct {
	// product has everything but the composition, the portion and the density.
	product record.Product
	per     fuel.Per
	// american labels count fibre into the carbohydrate and give sodium;
	// European ones leave fibre out and give salt.
	american bool
	// figures are for the label's amount. Sodium stands in salt on a European
	// label, in g.
	figures record.Composition
	salt    record.Number
	// volume is the portion of a drink in mL, mass that of all else in g.
	volume, mass, density record.Number
}

// formOf shows a product the way its labels are mostly printed: a drink in
// 100 mL, all else in 100 g.
func formOf(p record.Product, american bool) form {
	f := form{product: p, per: fuel.Per100Grams, american: american, density: p.Density, mass: p.PortionMass}
	product := consult.ProductOf(p)
	if product.Form == fuel.Drink {
		f.per = fuel.Per100Millilitres
		if calculated := (fuel.Label{Per: fuel.Per100Grams, Form: fuel.Drink, Carbohydrate: product.Per100.AvailableCarbohydrate()}).Weight(); p.Density.Known() && near(*p.Density.Value, calculated.Value) {
			f.density = record.Number{}
		}
		f.mass = record.Number{}
		if weight := f.labelOf(fuel.Per100Grams, p.Per100).Weight(); p.PortionMass.Known() && weight.Value > 0 {
			f.volume = record.Num(*p.PortionMass.Value/weight.Value, quantity.Millilitre)
		}
	}
	return f.withFigures(p.Per100)
}

// near reports whether two densities are one.
func near(a, b float64) bool { return a-b < 1e-6 && b-a < 1e-6 }

// withFigures turns a composition in 100 g into the figures of the label.
func (f form) withFigures(per100 record.Composition) form {
	grams := f.labelOf(fuel.Per100Grams, per100)
	grams.Per = f.per
	// The weight was found from 100 g; it is the same for any amount.
	grams.Density = f.labelOf(fuel.Per100Grams, per100).Weight()
	if whole := grams.Grams(); whole.Known {
		f.figures = scaled(per100, whole.Value/100)
	} else {
		f.per, f.figures = fuel.Per100Grams, per100
	}
	f.salt = record.Number{}
	if f.figures.Sodium.Known() {
		f.salt = record.Num(float64(sweat.LabelOfSodium(quantity.Milligrams(*f.figures.Sodium.Value))), quantity.Gram)
	}
	if f.american && !f.figures.Carbohydrate.Known() && f.figures.Available.Known() && f.figures.Fibre.Known() {
		f.figures.Carbohydrate = record.Num(*f.figures.Available.Value+*f.figures.Fibre.Value, quantity.Gram)
	}
	return f
}

// labelOf is what has to be known to read the figures of an amount.
func (f form) labelOf(per fuel.Per, figures record.Composition) fuel.Label {
	c := consult.ProductOf(record.Product{Per100: figures}).Per100
	l := fuel.Label{Per: per, Form: fuel.Form(f.product.Form), Carbohydrate: c.AvailableCarbohydrate(), Density: contentOf(f.density)}
	if !l.Carbohydrate.Known {
		l.Carbohydrate = c.Carbohydrate // its fibre is still to come
	}
	if l.Form == fuel.Drink {
		l.PortionMillilitres = contentOf(f.volume)
	} else {
		l.PortionGrams = contentOf(f.mass)
	}
	return l
}

func contentOf(n record.Number) fuel.Content {
	if !n.Known() {
		return fuel.Content{}
	}
	return fuel.Of(*n.Value)
}

// printed are the figures in one form: carbohydrate and sodium as the program
// calculates with them, whichever kind of label they came from.
func (f form) printed() record.Composition {
	c := f.figures
	if f.american {
		return c // the carbohydrate is the total less the fibre, once both are there
	}
	if c.Available.Known() {
		c.Carbohydrate = record.Number{}
	}
	c.Sodium = record.Number{}
	if f.salt.Known() {
		c.Sodium = record.Num(float64(sweat.SodiumOfLabel(quantity.Grams(*f.salt.Value))), quantity.Milligram)
	}
	return c
}

// readable reports whether the figures can be read as parts of 100 g: a label
// that counts by the portion needs the portion.
func (f form) readable() bool { return f.labelOf(f.per, f.printed()).Grams().Known }

// hold remembers the composition before what it is read by changes: a portion
// that is taken away must not take the figures with it.
func (f *form) hold() {
	if f.readable() {
		f.product.Per100 = f.record().Per100
	}
}

// record is the product as it is kept. While the label's amount is not known
// the composition stays what it was.
func (f form) record() record.Product {
	p, printed := f.product, f.printed()
	label := f.labelOf(f.per, printed)
	if grams := label.Grams(); grams.Value > 0 {
		p.Per100 = scaled(printed, 100/grams.Value)
	}
	p.Per100.Osmolality = printed.Osmolality
	p.Density = f.density
	if weight := label.Weight(); !p.Density.Known() && weight.Known && label.Carbohydrate.Known {
		p.Density = record.Num(weight.Value, quantity.GramPerMillilitre)
	}
	p.PortionMass = f.mass
	if label.Form == fuel.Drink {
		p.PortionMass = record.Number{}
		if portion := label.Portion(); portion.Known {
			p.PortionMass = record.Num(portion.Value, quantity.Gram)
		}
	}
	return p
}

// counting shows the same product in another amount.
func (f form) counting(per fuel.Per) form {
	kept := f.record().Per100
	f.per = per
	return f.withFigures(kept)
}

// printedIn shows the same product as the other kind of label prints it.
func (f form) printedIn(american bool) form {
	kept := f.record().Per100
	f.american = american
	if !american && !kept.Available.Known() {
		if c := consult.ProductOf(record.Product{Per100: kept}).Per100.AvailableCarbohydrate(); c.Known {
			kept.Available = record.Num(c.Value, quantity.Gram)
		}
	}
	return f.withFigures(kept)
}

// taken is the product in another form, its portion kept: what was a volume
// becomes the mass it weighs, and the other way round.
func (f form) taken(to fuel.Form) form {
	kept := f.record()
	kept.Form = string(to)
	g := formOf(kept, f.american)
	if to == fuel.Drink == (f.product.Form == string(fuel.Drink)) {
		g = g.counting(f.per)
	}
	return g
}

// scaled multiplies every part of a composition; what is unknown stays so, and
// an osmolality, which is no part, stays what it is.
func scaled(c record.Composition, by float64) record.Composition {
	for _, n := range []*record.Number{
		&c.Water, &c.Energy, &c.Carbohydrate, &c.Fibre, &c.Available, &c.Sugars, &c.Glucose, &c.Fructose, &c.Sucrose,
		&c.Lactose, &c.Maltose, &c.Starch, &c.Maltodextrin, &c.Sodium, &c.Potassium,
	} {
		if n.Known() {
			*n = record.Num(*n.Value*by, n.Unit)
		}
	}
	return c
}

// copyOf is an own product with the composition of a generic one, which it
// stands in for; source names what it was copied from.
func copyOf(g fuel.Product, source string) record.Product {
	number := func(c fuel.Content, u quantity.Unit) record.Number {
		if !c.Known {
			return record.Number{}
		}
		return record.Num(c.Value, u)
	}
	c, s, gram := g.Per100, g.Per100.Sugars, quantity.Gram
	p := record.Product{
		Meta: record.Meta{ID: record.NewID()}, Name: g.Name, Form: string(g.Form), Replaces: g.ID,
		Density: number(g.Density, quantity.GramPerMillilitre), PortionName: g.Portion.Name, Source: source, Note: g.Origin.Note,
		Per100: record.Composition{
			Water: number(c.Water, gram), Energy: number(c.Energy, quantity.Kilocalorie), Carbohydrate: number(c.Carbohydrate, gram),
			Fibre: number(c.Fibre, gram), Available: number(c.AvailableCarbohydrate(), gram), Sugars: number(s.Total, gram),
			Glucose: number(s.Glucose, gram), Fructose: number(s.Fructose, gram), Sucrose: number(s.Sucrose, gram),
			Lactose: number(s.Lactose, gram), Maltose: number(s.Maltose, gram), Starch: number(s.Starch, gram),
			Maltodextrin: number(s.Maltodextrin, gram), Sodium: number(c.Sodium, quantity.Milligram), Potassium: number(c.Potassium, quantity.Milligram),
			Osmolality: number(c.Osmolality, quantity.MilliosmolePerLitre),
		},
	}
	if g.Portion.Grams > 0 {
		p.PortionMass = record.Num(g.Portion.Grams, gram)
	}
	return p
}

// blank reports that no figure of the label was entered.
func (f form) blank() bool { return f.figures == record.Composition{} && !f.salt.Known() }

// doubt is what is odd about a product as entered; empty when nothing is. Its
// words are under "pantry.doubt." and the code.
func (f form) doubt() string {
	product := consult.ProductOf(f.record())
	product.ID, product.Name = "-", "-" // what they are is no matter of the figures
	switch {
	case f.blank():
		return "" // nothing to doubt yet
	case !f.readable():
		return "portion"
	case product.Check() != nil:
		return "hundred"
	case product.Per100.SugarsOver():
		return "sugars"
	case product.Form == fuel.Drink && product.Strength().Known && product.Strength().Value > evidence.StrengthHigh:
		return "strong"
	case !product.Per100.AvailableCarbohydrate().Known:
		return "carbohydrate"
	case !product.Per100.Sodium.Known:
		return "sodium"
	}
	return ""
}

// keep writes a form as the product it stands for.
func keep(s *store.Store) func(context.Context, form, store.Edit) (form, error) {
	return func(ctx context.Context, f form, e store.Edit) (form, error) {
		kept, err := s.SaveProduct(ctx, f.record(), e)
		if err != nil {
			return f, err
		}
		f.product = kept
		return f, nil
	}
}

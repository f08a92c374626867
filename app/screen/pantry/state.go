// Package pantry is what there is to drink and eat: the practitioner's own
// products and the generic ones, in 100 g or 100 mL and in a portion, each with
// its source. A generic product is corrected from a label by a copy that stands
// in for it; an own one is entered the way its label prints it; powders are
// made up to a drink.
package pantry

import (
	"cmp"
	"slices"
	"strings"

	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plain"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Show is which products the list shows.
type Show string

// What can be shown.
const (
	ShowAll    Show = "all"
	ShowDrinks Show = "drinks"
	ShowFoods  Show = "foods"
	ShowOwn    Show = "own"
)

// Held is what an amount of a product holds.
type Held struct {
	Carbohydrate fuel.Content // available, g
	Sodium       fuel.Content // mg
}

// Row is one product in the list.
type Row struct {
	Product fuel.Product
	// Own is the practitioner's record; nil for a generic product.
	Own *record.Product
	// Per is the hundred that is shown: of millilitres for what is drunk.
	Per              fuel.Per
	Hundred, Portion Held
	// Strength of a drink, g in 100 mL; Osmolality in mOsm/L, an estimate
	// unless it was stated.
	Strength, Osmolality fuel.Content
	// Fructose is its share of the carbohydrate, 0 to 1, when FructoseKnown.
	Fructose      quantity.Range
	FructoseKnown bool
}

// ID is the product's id.
func (r Row) ID() record.ID { return record.ID(r.Product.ID) }

// rowOf works out one product.
func rowOf(p fuel.Product, own *record.Product) Row {
	r := Row{Product: p, Own: own, Per: fuel.Per100Grams}
	whole, err := p.ByMass(100)
	if drunk, volumeErr := p.ByVolume(100); consult.IsDrink(p) && volumeErr == nil {
		whole, r.Per = drunk, fuel.Per100Millilitres
		r.Osmolality = fuel.Mix([]fuel.Amount{drunk}, 0).Osmolality()
		r.Strength = p.Strength()
	}
	if err == nil {
		r.Hundred = heldIn(whole)
	}
	if portion, err := p.ByPortion(1); err == nil {
		r.Portion = heldIn(portion)
	}
	r.Fructose, r.FructoseKnown = p.Per100.Split().FructoseRange()
	return r
}

// Stated reports whether the osmolality was stated by the maker.
func (r Row) Stated() bool { return r.Osmolality.Known && r.Product.Per100.Osmolality.Known }

// heldIn is what an amount holds.
func heldIn(a fuel.Amount) Held {
	c := a.Product.Per100
	return Held{Carbohydrate: c.AvailableCarbohydrate().Times(a.Grams / 100), Sodium: c.Sodium.Times(a.Grams / 100)}
}

// Column is what the list can be sorted by; the numbers are those of the table.
type Column int

// The columns.
const (
	ByName Column = iota
	byPer
	ByCarbohydrate
	BySodium
	ByStrength
	ByFructose
	ByOsmolality
	byPortion
	ByPortionCarbohydrate
	ByPortionSodium
	BySource
)

// State is the list as it is shown.
type State struct {
	all    []Row
	text   string
	show   Show
	column Column
	down   bool
	sorted bool
	// order compares names.
	order func(a, b string) int
}

// NewState makes the list from the pantry and the practitioner's own records: own
// products and what is made for sport first, then what was used lately, in that order,
// then all else as the catalogue has it.
func NewState(p *consult.Pantry, own []record.Product, lately []record.ID, order func(a, b string) int) State {
	s := State{show: ShowAll, order: order}
	for _, product := range p.Products() {
		var mine *record.Product
		for i := range own {
			if string(own[i].ID) == product.ID {
				mine = &own[i]
			}
		}
		s.all = append(s.all, rowOf(product, mine))
	}
	place := func(r Row) int {
		switch at := slices.Index(lately, r.ID()); {
		case r.Own != nil:
			return -2
		case fuel.MadeForSport(r.Product):
			return -1
		case at >= 0:
			return at
		}
		return len(lately)
	}
	slices.SortStableFunc(s.all, func(a, b Row) int { return cmp.Compare(place(a), place(b)) })
	return s
}

// Search shows only the products whose name, form or source holds every word.
func (s State) Search(text string) State {
	s.text = text
	return s
}

// Showing shows a part of the list.
func (s State) Showing(show Show) State {
	s.show = show
	return s
}

// Sort sorts by a column; without it the order is that of [NewState].
func (s State) Sort(c Column, down bool) State {
	s.column, s.down, s.sorted = c, down, true
	return s
}

// Rows are the products to show, in order; word gives the word of a form, by
// which it is searched.
func (s State) Rows(word func(form fuel.Form) string) []Row {
	wanted := plain.Words(s.text)
	var list []Row
	for _, r := range s.all {
		hay := plain.Text(strings.Join([]string{r.Product.Name, word(r.Product.Form), r.Product.Origin.Source, r.Product.Origin.Number}, " "))
		if r.shownAs(s.show) && plain.Holds(hay, wanted) {
			list = append(list, r)
		}
	}
	if s.sorted {
		slices.SortStableFunc(list, s.compare)
	}
	return list
}

// shownAs reports whether a row belongs to a part of the list.
func (r Row) shownAs(show Show) bool {
	switch show {
	case ShowDrinks:
		return consult.IsDrink(r.Product) || r.Product.Form == fuel.Powder
	case ShowFoods:
		return !consult.IsDrink(r.Product) && r.Product.Form != fuel.Powder
	case ShowOwn:
		return r.Own != nil
	}
	return true
}

// compare orders two rows by the chosen column. What is not known stands last,
// whichever way the column is sorted.
func (s State) compare(a, b Row) int {
	turn := 1
	if s.down {
		turn = -1
	}
	switch s.column {
	case ByName:
		return turn * s.order(a.Product.Name, b.Product.Name)
	case BySource:
		return turn * strings.Compare(a.Product.Origin.Source+a.Product.Origin.Number, b.Product.Origin.Source+b.Product.Origin.Number)
	}
	x, y := s.figure(a), s.figure(b)
	if !x.Known || !y.Known {
		return cmp.Compare(unknownLast(x), unknownLast(y))
	}
	return turn * cmp.Compare(x.Value, y.Value)
}

func unknownLast(c fuel.Content) int {
	if c.Known {
		return 0
	}
	return 1
}

// figure is what a row has in the chosen column.
func (s State) figure(r Row) fuel.Content {
	switch s.column {
	case ByCarbohydrate:
		return r.Hundred.Carbohydrate
	case BySodium:
		return r.Hundred.Sodium
	case ByStrength:
		return r.Strength
	case ByOsmolality:
		return r.Osmolality
	case ByPortionCarbohydrate:
		return r.Portion.Carbohydrate
	case ByPortionSodium:
		return r.Portion.Sodium
	case ByFructose:
		if r.FructoseKnown {
			return fuel.Of(r.Fructose.Low)
		}
	}
	return fuel.Content{}
}

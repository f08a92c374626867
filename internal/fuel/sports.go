package fuel

import "slices"

// MadeForSport reports whether a product is made for sport: gels, and what the
// catalogue lists as drinks, chews and powders of that kind. Our own sorting, no source.
func MadeForSport(p Product) bool {
	return p.Form == Gel || slices.Contains([]string{
		"generic.drink-6", "generic.drink-4", "generic.drink-8", "generic.drink-2.5", "generic.drink-16", "generic.home-drink",
		"generic.rehydration-solution", "generic.chews", "generic.maltodextrin", "generic.glucose", "generic.fructose",
	}, p.ID)
}

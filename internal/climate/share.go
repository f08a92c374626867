package climate

import (
	"cmp"
	"slices"

	"ebbwell/internal/figure"
)

// shares puts the parts of a variance in order, largest first, and drops
// those that give nothing.
func shares(parts ...figure.Share) []figure.Share {
	parts = slices.DeleteFunc(parts, func(s figure.Share) bool { return !(s.Part > 0) })
	slices.SortStableFunc(parts, func(a, b figure.Share) int { return cmp.Compare(b.Part, a.Part) })
	return parts
}

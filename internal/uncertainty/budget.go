package uncertainty

import (
	"cmp"
	"slices"
)

// Share is one contribution to the variance of a result.
type Share struct {
	// Source is the name of what contributes.
	Source string
	// Part is its share of the variance, 0 to 1.
	Part float64
}

// Budget tells what the variance of q is made of: the share of every source
// name, largest first, adding up to 1; equal shares by name. It is empty when
// q is exact.
func (q Quantity) Budget() []Share {
	total := q.variance(true)
	if total == 0 {
		return nil
	}
	list := make([]Share, 0, len(q.parts))
	for _, p := range q.parts {
		share := p.size * p.size / total
		if n := len(list); n > 0 && list[n-1].Source == p.source.Name {
			list[n-1].Part += share
			continue
		}
		list = append(list, Share{Source: p.source.Name, Part: share})
	}
	slices.SortStableFunc(list, func(a, b Share) int {
		return cmp.Compare(b.Part, a.Part)
	})
	return list
}

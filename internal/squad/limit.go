package squad

import (
	"slices"
	"strings"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// outside looks for values of a row that lie outside their limits and of which nothing
// else was found: a mass, a bottle, urine. A hidden mass is not held against them, since
// that would narrow it.
func outside(r Row, found []Odd) []Odd {
	var list []Odd
	for _, p := range r.Found.Sweat.Problems {
		path := consult.PathOf(r.Sheet.Test, p)
		weighed := strings.HasPrefix(path, "weighings.")
		if p.Code != evidence.CodeOutside || weighed && r.Hidden || !inRow(path) ||
			slices.ContainsFunc(append(found, list...), func(o Odd) bool { return o.Path == path }) {
			continue
		}
		o := Odd{Code: OddLimit, Path: path, A: p.Value, Problem: p, WeighAgain: weighed}
		if weighed {
			o.Moment = record.Before
			if p.Field == evidence.MassAfter {
				o.Moment = record.After
			}
		}
		list = append(list, o)
	}
	return list
}

// inRow reports whether a value is one that is typed in a row: what holds for all is said
// where it is typed.
func inRow(path string) bool {
	return slices.ContainsFunc([]string{"weighings.", "bottles.", "loss.urine"}, func(begin string) bool { return strings.HasPrefix(path, begin) })
}

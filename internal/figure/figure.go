// Package figure is the shape of every computed number: its value, its range,
// and why it is what it is. The "why" is made from the same values the number
// was computed from, so that anyone can work it out again.
package figure

import "ebbwell/internal/quantity"

// Figure is a computed number. The zero Figure is unknown.
type Figure struct {
	// Known is false while what the figure is based on is missing.
	Known bool
	Value float64
	Unit  quantity.Unit
	// U is the standard uncertainty, in Unit; meaningful when Ranged.
	U float64
	// Range is the 95 % range; meaningful when Ranged. Its ends need not lie
	// evenly about Value.
	Range quantity.Range
	// Ranged is false for a provisional figure: something it is based on is not
	// in yet, so it has a value but no honest range.
	Ranged bool
	// Estimate is true when the figure was not measured but calculated for
	// other conditions; it is then always called an estimate.
	Estimate bool
	Why      Why
}

// Why tells how a figure came about.
type Why struct {
	// Formula is arithmetic in the symbols of Inputs, with + - * / ( ) and
	// the functions exp, ln, sqrt, min, max: put the inputs in and the
	// figure comes out.
	Formula string
	Inputs  []Input
	// Budget names what the range is made of, largest share first.
	Budget []Share
	// Sources are the ids of evidence entries and citations.
	Sources []string
	// Notes are ids of sentences that belong beside the figure ("note.…").
	Notes []Note
}

// Input is one value that went into a formula.
type Input struct {
	// Symbol is the name in the formula: letters and digits only.
	Symbol string
	Value  float64
	Unit   quantity.Unit
	// U is the standard uncertainty in Unit; zero for an exact value.
	U float64
}

// Share is one contribution to the variance of a figure.
type Share struct {
	// Source names what contributes: an id such as "patch.equation".
	Source string
	// Part is the share of the variance, 0 to 1.
	Part float64
}

// Note is a sentence beside a figure: its id and the numbers that go into it.
type Note struct {
	ID   string
	Args []float64
}

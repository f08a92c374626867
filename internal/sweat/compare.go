package sweat

import (
	"math"
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// What can be said about the difference of two tests.
const (
	DifferenceReal    = "difference.real"
	DifferenceWithin  = "difference.within"  // no larger than like days differ
	DifferenceUnknown = "difference.unknown" // a figure has no range, or no single value
)

// What makes two sodium figures hard to compare.
const (
	CompareOtherSite   = "compare.other-site"
	CompareOtherMethod = "compare.other-method"
)

// Difference is a second test less a first one, held against the smallest
// difference that two single tests can show.
type Difference struct {
	// Code is one of the three above.
	Code string
	// Size is second less first, in Unit.
	Size float64
	// Smallest is the smallest detectable change, in Unit.
	Smallest float64
	Unit     quantity.Unit
	// Beside are codes of what makes the comparison weaker.
	Beside []string
}

// Comparison is what changed between two tests of one athlete.
type Comparison struct {
	Rate          Difference // L/h
	Concentration Difference // mmol/L, whole body
	SodiumRate    Difference // mg/h
}

// Compare asks whether two single tests of one athlete really differ: by more
// than 1.96 sqrt(2) CV of their mean, CV 11 % for field rates (worked out from
// Smith et al. 2021) and 10.4 % for sodium (Hayden 2004); more where a test is
// less certain than that. The error of a site's equation goes with the athlete
// and so cancels between tests on the same sites by the same method; otherwise
// it counts whole. Whether heat and effort were alike is for the caller.
func Compare(first, second Result) Comparison {
	beside := unlike(first.Sodium, second.Sodium)
	both := math.Hypot(evidence.DayToDayRateCV, evidence.LocalSodiumCV)
	c := Comparison{
		Rate:          differ(first.Fluid.Rate, second.Fluid.Rate, evidence.DayToDayRateCV, true),
		Concentration: differ(first.Sodium.Concentration, second.Sodium.Concentration, evidence.LocalSodiumCV, len(beside) > 0),
		SodiumRate:    differ(first.Sodium.LossRate, second.Sodium.LossRate, both, len(beside) > 0),
	}
	c.Concentration.Beside, c.SodiumRate.Beside = beside, beside
	return c
}

// differ holds a difference against the smallest detectable one; whole counts
// the uncertainty of each figure where it is larger than the usual spread.
func differ(a, b figure.Figure, cv float64, whole bool) Difference {
	if !a.Known || !b.Known || !a.Ranged || !b.Ranged {
		return Difference{Code: DifferenceUnknown, Unit: a.Unit}
	}
	d := Difference{Code: DifferenceWithin, Size: b.Value - a.Value, Unit: a.Unit}
	usual := cv * (a.Value + b.Value) / 2
	ua, ub := usual, usual
	if whole {
		ua, ub = max(usual, a.U), max(usual, b.U)
	}
	d.Smallest = evidence.CoverageFactor * math.Hypot(ua, ub)
	if math.Abs(d.Size) > d.Smallest {
		d.Code = DifferenceReal
	}
	return d
}

// unlike lists what sets two sodium results apart.
func unlike(a, b Sodium) []string {
	var list []string
	if !sameSet(a.Sites, b.Sites) {
		list = append(list, CompareOtherSite)
	}
	if !sameSet(a.Methods, b.Methods) {
		list = append(list, CompareOtherMethod)
	}
	return list
}

// sameSet reports whether two short lists hold the same, in any order.
func sameSet[T comparable](a, b []T) bool {
	within := func(x, y []T) bool {
		return !slices.ContainsFunc(x, func(v T) bool { return !slices.Contains(y, v) })
	}
	return within(a, b) && within(b, a)
}

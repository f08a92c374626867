package squad

import (
	"cmp"
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// Sort is what the findings of a group are sorted by.
type Sort string

// The orders.
const (
	ByRate    Sort = "rate"
	ByDeficit Sort = "deficit"
	ByDrunk   Sort = "drunk"
	BySodium  Sort = "sodium"
	ByName    Sort = "name"
	ByScale   Sort = "scale"
)

// Sorts lists the orders.
func Sorts() []Sort { return []Sort{ByRate, ByDeficit, ByDrunk, BySodium, ByName, ByScale} }

// Line is an athlete in the findings of a group. Where mass is hidden the deficit is
// in litres only.
type Line struct {
	Row Row
	// Loss and Drunk in L, Rate in L/h, Deficit in L (DeficitShare in %), SodiumRate in
	// mg/h; nil while not known.
	Loss, Drunk, Rate, Deficit, DeficitShare, Sodium *float64
	// Shared: consent to share with the coach holds on the day.
	Shared bool
}

// Lines are the findings of a group, sorted; who has no value of the order stands
// last.
func Lines(rows []Row, by Sort) []Line {
	var list []Line
	for _, r := range rows {
		list = append(list, lineOf(r))
	}
	of := map[Sort]func(Line) *float64{
		ByRate: func(l Line) *float64 { return l.Rate }, ByDrunk: func(l Line) *float64 { return l.Drunk },
		ByDeficit: func(l Line) *float64 {
			if l.Row.Hidden || l.DeficitShare == nil {
				return l.Deficit
			}
			return l.DeficitShare
		},
		BySodium: func(l Line) *float64 { return l.Sodium },
	}[by]
	slices.SortStableFunc(list, func(a, b Line) int {
		if by == ByName {
			return cmp.Compare(a.Row.Sheet.Athlete.Name, b.Row.Sheet.Athlete.Name)
		}
		if of == nil {
			return 0
		}
		x, y := of(a), of(b)
		switch {
		case x == nil && y == nil:
			return 0
		case x == nil:
			return 1
		case y == nil:
			return -1
		}
		return cmp.Compare(*y, *x)
	})
	return list
}

// lineOf is one athlete's line.
func lineOf(r Row) Line {
	l := Line{Row: r, Shared: Shares(r.Sheet.Athlete, r.Sheet.Test.Session.Date)}
	known := func(ok bool, x float64) *float64 {
		if !ok {
			return nil
		}
		return &x
	}
	f := r.Found.Sweat.Fluid
	l.Loss, l.Rate, l.Drunk = known(f.Loss.Known, f.Loss.Value), known(f.Rate.Known, f.Rate.Value), known(f.Drunk.Known, f.Drunk.Value)
	l.Deficit = known(f.Deficit.Known, f.Deficit.Value)
	if !r.Hidden {
		l.DeficitShare = known(f.DeficitShare.Known, f.DeficitShare.Value)
	}
	s := r.Found.Sweat.Sodium.LossRate
	l.Sodium = known(s.Known, s.Value)
	return l
}

// Shares reports whether an athlete consented to sharing with the coach on a day.
func Shares(a record.Athlete, on record.Date) bool {
	return slices.ContainsFunc(a.Consents, func(c record.Consent) bool { return c.Purpose == record.ConsentCoach && !c.Deleted() && c.Holds(on) })
}

// ForCoach are the lines of those who consented to sharing, and how many did not.
func ForCoach(lines []Line) (shared []Line, withheld int) {
	for _, l := range lines {
		if l.Shared {
			shared = append(shared, l)
		} else {
			withheld++
		}
	}
	return shared, withheld
}

// MeanRate is the mean sweat rate of the rows that have one but one, L/h, and of how
// many; rows whose odd value is open do not count.
func MeanRate(rows []Row, but int) (rate float64, n int) {
	for i, r := range rows {
		if i == but || !r.Rate.Known || slices.ContainsFunc(r.Odd, func(o Odd) bool { return !o.Kept() }) {
			continue
		}
		rate += r.Rate.Value
		n++
	}
	if n > 0 {
		rate /= float64(n)
	}
	return rate, n
}

// Drift is by how much a scale reads too high with a known mass, kg; ok is false
// while it was not checked. Beyond the resolution it is spoken of.
func Drift(g record.GroupSession) (kg float64, beyond, ok bool) {
	if !g.Check.Known.Known() || !g.Check.Read.Known() {
		return 0, false, false
	}
	kg = *g.Check.Read.Value - *g.Check.Known.Value
	return kg, max(kg, -kg) > g.ScaleStep.Or(evidence.ScaleOffsetU)+1e-9, true
}

package squad

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// A value typed twice: bottles rarely weigh the same to the gram once somebody drank
// from them. What was finished does, so that a bottle that is empty is never asked
// about.

// twice looks whether the mass after of the i-th bottle, which can be right, is one
// that was typed before: its own, that of another bottle of the athlete, or that of the
// same bottle of the neighbour.
func twice(rows []Row, at, i int) []Odd {
	r := rows[at]
	b := r.Sheet.Test.Bottles[i]
	x := *b.After.Value
	o := Odd{Path: "bottles." + string(b.ID) + ".after", A: x, Item: i + 1}
	if finished(r, i) {
		return nil
	}
	if *b.Before.Value == x && len(b.Refills) == 0 && b.Poured.Or(0) == 0 {
		o.Code = OddUndrunk
		return []Odd{o}
	}
	for j, other := range r.Sheet.Test.Bottles[:i] {
		if other.After.Known() && *other.After.Value == x {
			o.Code, o.Other = OddBottleTwice, j+1
			return []Odd{o}
		}
	}
	if at == 0 {
		return nil
	}
	above := rows[at-1].Sheet
	if i < len(above.Test.Bottles) && above.Test.Bottles[i].After.Known() && *above.Test.Bottles[i].After.Value == x {
		o.Code, o.Name = OddBottleNext, above.Athlete.Name
		return []Odd{o}
	}
	return nil
}

// finished reports whether the i-th bottle weighs what it does empty.
func finished(r Row, i int) bool {
	return i < len(r.empty) && r.empty[i] > 0 && *r.Sheet.Test.Bottles[i].After.Value <= r.empty[i]*(1+evidence.LikeAnother/100)
}

// rowTwice looks whether all bottles before weigh what those of the neighbour do: of
// one bottle that is chance, of several the row above typed again.
func rowTwice(rows []Row, at int) []Odd {
	if at == 0 {
		return nil
	}
	mine, theirs := rows[at].Sheet.Test.Bottles, rows[at-1].Sheet.Test.Bottles
	if len(mine) < 2 || len(mine) != len(theirs) {
		return nil
	}
	for i := range mine {
		if !sameNumber(mine[i].Before, theirs[i].Before) {
			return nil
		}
	}
	last := len(mine) - 1
	return []Odd{{
		Code: OddRowTwice, Path: "bottles." + string(mine[last].ID) + ".before", Item: last + 1, Name: rows[at-1].Sheet.Athlete.Name,
	}}
}

// sameNumber reports whether two numbers are known and the same.
func sameNumber(x, y record.Number) bool { return x.Known() && y.Known() && *x.Value == *y.Value }

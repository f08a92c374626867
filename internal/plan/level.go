package plan

import "slices"

// Level is how much is left in a bottle after a chance.
type Level struct {
	// Take is the place of the chance in the schedule.
	Take int
	// Bottle counts the bottles of the drink from 1. Full is what is poured into
	// it, mL, Left what stands in it after the chance.
	Bottle, FullML, LeftML int
	// Line counts the marks of the bottle from the top; the last one is the bottom.
	Line, Lines int
}

// Levels appends to buf, for one drink of a schedule, how far its bottles are down
// after each chance at which it is drunk. A bottle holds so many mL; each break is
// drunk from one bottle, so a bottle is filled with what whole breaks take from it,
// and the next is begun where the rest would not do. Where one break takes more than
// a bottle holds, its bottle is filled again.
func (s *Schedule) Levels(drink Slot, holdsML int, buf []Level) []Level {
	first, bottle, full := len(buf), 0, 0
	for i := range s.Takes {
		ml := s.Takes[i].ByDrink[drink]
		if ml == 0 {
			continue
		}
		if bottle == 0 || full+ml > holdsML {
			bottle, full = bottle+1, 0
		}
		full += ml
		buf = append(buf, Level{Take: i, Bottle: bottle, FullML: full})
	}
	levels := buf[first:]
	for i, l := range slices.Backward(levels) {
		last := i
		if i+1 < len(levels) && levels[i+1].Bottle == l.Bottle {
			last = i + 1
		}
		levels[i].LeftML = levels[last].FullML - l.FullML
		levels[i].FullML = levels[last].FullML
	}
	for i := range levels {
		levels[i].Line = 1
		if i > 0 && levels[i-1].Bottle == levels[i].Bottle {
			levels[i].Line = levels[i-1].Line + 1
		}
	}
	for i, l := range slices.Backward(levels) {
		levels[i].Lines = l.Line
		if i+1 < len(levels) && levels[i+1].Bottle == l.Bottle {
			levels[i].Lines = levels[i+1].Lines
		}
	}
	return buf
}

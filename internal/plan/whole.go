package plan

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan/proposal"
)

// pouring gives out whole mouthfuls, one after another, each to the chance that a
// rising fill reaches next. So a larger plan only adds to what a smaller one gives.
type pouring struct {
	gut
	takes []Take
	// mouthful in mL, and the fill that is not passed.
	mouthful, most float64
	// calm: no chance is filled above [Take.calmML].
	calm bool
	// single: no chance has a second bottle.
	single bool
	// left is what each drink still has, mL; done drinks have not enough for one
	// mouthful more.
	left [Drinks]float64
	done [Drinks]bool
}

// pour gives out mouthfuls until drinks or chances are used up.
func (w *pouring) pour() {
	for {
		at, drink := w.next()
		if at < 0 {
			return
		}
		w.add(at, drink)
	}
}

// next is the chance whose next mouthful comes first as the fill rises, the
// earlier one of two alike, and the drink for it; -1 when there is none.
func (w *pouring) next() (at, drink int) {
	at, first := -1, math.Inf(1)
	for i := range w.takes {
		t := &w.takes[i]
		if t.full {
			continue
		}
		d := w.drinkFor(t)
		if d < 0 {
			continue
		}
		if key := w.reached(t); key < first {
			at, drink, first = i, d, key
		}
	}
	return at, drink
}

// reached is the fill at which the middle of a chance's next mouthful is reached.
// What was set by hand comes before all else.
func (w *pouring) reached(t *Take) float64 {
	if t.Chance.Fixed.On {
		return -1
	}
	return t.Chance.fillFor((float64(t.Mouthfuls) + 0.5) * w.mouthful)
}

// drinkFor is the drink of which most is left among those that stand at a chance.
func (w *pouring) drinkFor(t *Take) int {
	best := -1
	for d := range w.left {
		if t.stands[d] && !w.done[d] && (best < 0 || w.left[d] > w.left[best]) {
			best = d
		}
	}
	return best
}

// add gives one mouthful of a drink, or marks why it cannot be given.
func (w *pouring) add(at, drink int) {
	t := &w.takes[at]
	ml := w.shown(t.mouthfuls[drink] + 1)
	switch {
	case float64(ml-t.ByDrink[drink]) > w.left[drink]:
		w.done[drink] = true
	case w.over(t) || !w.bears(at):
		t.full = true
	default:
		w.left[drink] -= float64(ml - t.ByDrink[drink])
		t.ML += ml - t.ByDrink[drink]
		t.ByDrink[drink] = ml
		t.mouthfuls[drink]++
		t.Mouthfuls++
	}
}

// shown is what mouthfuls come to, rounded down to 5 mL.
func (w *pouring) shown(mouthfuls int) int {
	return int(proposal.FloorTo(float64(mouthfuls)*w.mouthful, evidence.ScheduleRound))
}

// over reports whether one mouthful more is above what the chance carries, or was
// set by hand.
func (w *pouring) over(t *Take) bool {
	c, next := t.Chance, float64(t.Mouthfuls+1)
	if c.Fixed.On {
		return next > math.Round(c.Fixed.ML/w.mouthful) || exceeds(next*w.mouthful, c.MostML())
	}
	if w.calm && next*w.mouthful > t.calmML()+w.mouthful/2 {
		return true
	}
	return exceeds(next*w.mouthful, c.FillML(w.most))
}

// calmML is how far a chance is filled for the sake of one bottle there, mL: a little
// above comfort, or above what the whole plan fills it with evenly where that is more.
// A carried bottle is there at any time.
func (t *Take) calmML() float64 {
	if t.Chance.Seconds == 0 {
		return math.Inf(1)
	}
	return evidence.OneBottleOver * max(t.Chance.ComfortableML(), t.even)
}

// pourAll gives out the drinks. Where there are several it does so calmly first, a
// second bottle at a break before more than is comfortable at another; then what is left
// goes as far as the chances bear. One drink has no second bottle: a larger plan of it
// only adds to a smaller one.
func (w *pouring) pourAll() {
	for _, calm := range [...]bool{true, false} {
		if w.calm = calm; calm && w.drinks() < 2 {
			continue
		}
		for i := range w.takes {
			w.takes[i].full = false
		}
		w.pour()
		w.shareOut()
	}
}

// lacks reports whether drinks come to more than a mouthful of each less than was wanted.
func (w *pouring) lacks(wanted [Drinks]float64, given int) bool {
	missing := -float64(given)
	for _, ml := range wanted {
		if ml > 0 {
			missing += ml - w.mouthful
		}
	}
	return exceeds(missing, 0)
}

// drinks is how many drinks there are to give out.
func (w *pouring) drinks() int {
	n := 0
	for _, ml := range w.left {
		if ml > 0 {
			n++
		}
	}
	return n
}

// bears reports whether stomach and loss bear one mouthful more at a chance, there
// and at all that follow.
func (w *pouring) bears(at int) bool {
	s := sofar{gut: w.gut}
	for i := range w.takes {
		t := &w.takes[i]
		ml := float64(t.Mouthfuls) * w.mouthful
		if i == at {
			ml += w.mouthful
		}
		if exceeds(ml, s.room(t.Chance.Minute)) {
			return false
		}
		s.drink(ml)
	}
	return true
}

// shareOut lets a drink that its own chances could not carry stand as a second
// bottle at others, the longest certain ones first, and pours again; where a chance has
// one bottle alone, at those where nothing is drunk yet.
func (w *pouring) shareOut() {
	for d := range w.left {
		for w.left[d] >= float64(w.shown(1)) && !w.done[d] {
			at := w.sharing(d)
			if at < 0 {
				break
			}
			if w.single {
				w.takes[at].stands = [Drinks]bool{}
			}
			w.takes[at].stands[d] = true
			w.pour()
		}
	}
}

// sharing is the chance at which a second bottle is borne best; -1 for none.
func (w *pouring) sharing(drink int) int {
	best := -1
	for i := range w.takes {
		t := &w.takes[i]
		if t.full || t.stands[drink] || t.bottles() > 1 || w.single && t.ML > 0 {
			continue
		}
		if best < 0 || t.before(&w.takes[best]) {
			best = i
		}
	}
	return best
}

// bottles is how many drinks stand at a chance.
func (t *Take) bottles() int {
	n := 0
	for _, stands := range t.stands {
		if stands {
			n++
		}
	}
	return n
}

// before orders chances for bottles: certain ones first, then the longest, then
// by time. A carried bottle is no break, and last.
func (t *Take) before(o *Take) bool {
	switch {
	case t.Chance.mayNotHappen() != o.Chance.mayNotHappen():
		return o.Chance.mayNotHappen()
	case t.Chance.Seconds != o.Chance.Seconds:
		return t.Chance.Seconds > o.Chance.Seconds
	}
	return t.Chance.Minute < o.Chance.Minute
}

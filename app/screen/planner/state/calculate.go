package state

import (
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// Calculation is what the planner says of the selected mix and of the habit. Its
// memory is used again, so that a movement makes nothing anew.
type Calculation struct {
	// Mix is what is shown: the selected mix as the chances carry it; that of the
	// habit as it was measured.
	Mix       plan.Mix
	At, Habit plan.Prediction
	Bands     [plan.Slots]plan.Band
	// Most is how far each slider goes with the others held, ends why.
	Most [plan.Slots]float64
	Ends [plan.Slots]plan.Reason

	Chances       []plan.Chance
	Mouthful      plan.Mouthful
	Take, took    plan.Schedule
	Course, Usual []plan.Point
}

// Open calculates everything: another case, option or length is in hand.
func (r *Calculation) Open(s State, chances []plan.Chance) {
	p := s.PlanCase.Planner
	r.Chances = chances
	r.Mouthful = consult.MouthfulOf(s.PlanCase.Athlete)
	r.Habit = p.Evaluate(s.Length, s.Habit)
	p.Schedule(s.Length, s.Habit, r.Chances, r.Mouthful, &r.took)
	r.Usual = p.Course(s.Length, &r.took, r.Usual[:0])
	r.Follow(s)
}

// Follow calculates what a movement changes.
func (r *Calculation) Follow(s State) {
	p := s.PlanCase.Planner
	p.Schedule(s.Length, s.Mix, r.Chances, r.Mouthful, &r.Take)
	r.Mix = s.Mix
	if s.Selected().Kind != record.OptionHabit {
		r.Mix = r.Take.Carried(s.Mix)
	}
	r.At = p.Evaluate(s.Length, r.Mix)
	raw := p.Evaluate(s.Length, s.Mix)
	r.At.Guards |= raw.Guards & (plan.OverCeiling | plan.GainInMass) // also where breaks do not carry it
	r.Bands = p.Bands(s.Length, s.Mix)
	for slot := range r.Most {
		r.Most[slot], r.Ends[slot] = p.Most(s.Length, s.Mix, plan.Slot(slot))
	}
	r.Course = p.Course(s.Length, &r.Take, r.Course[:0])
}

// Even reports whether the sport has no chances of its own within the session:
// drinking is then drawn as even.
func (r *Calculation) Even() bool { return len(r.Take.Takes) == 0 }

// mostLost is the share of the habit, in mouthfuls that were not whole, up to which
// it is still drawn at the breaks.
const mostLost = 0.05

// HabitEven reports whether the habit is drawn as drunk evenly: it was measured, and
// where the breaks set do not carry it, it was drunk otherwise.
func (r *Calculation) HabitEven() bool {
	return r.Even() || float64(r.took.DrinkableML) < (1-mostLost)*float64(r.took.PlannedML)
}

// nudges is how many steps a slider goes on by itself.
const nudges = 6

// OnTo goes on with a movement upwards by a step, from what was shown, that was too
// small for one mouthful more: else a key pressed again and again would show the
// same. Where the breaks have no room left to drink it stays, whatever food they leave over.
func (s State) OnTo(k *Calculation, slot plan.Slot, to, shown float64) State {
	step := s.PlanCase.Planner.Menu()[slot].Step
	if !slot.IsDrink() || to <= shown || to > shown+step {
		return s
	}
	for range nudges {
		k.Follow(s)
		if k.Mix[slot] > shown || s.Stop != plan.Free || !k.Take.DrinksFit {
			break
		}
		to += step
		s = s.Move(slot, to)
	}
	return s
}

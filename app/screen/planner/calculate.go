package planner

import (
	"ebbwell/internal/plan"
	"ebbwell/internal/sweat"
)

// calculation is what the planner says of the mix in hand and of the habit. Its
// memory is used again, so that a movement makes nothing anew.
type calculation struct {
	at, habit plan.Prediction
	bands     [plan.Slots]plan.Band
	// most is how far each slider goes with the others held, ends why.
	most [plan.Slots]float64
	ends [plan.Slots]plan.Reason

	chances       []plan.Chance
	mouthful      plan.Mouthful
	take, took    plan.Schedule
	course, usual []plan.Point
}

// open calculates everything: another case, option or length is in hand.
func (r *calculation) open(s state, chances []plan.Chance) {
	p := s.planCase.Planner
	r.chances = chances
	r.mouthful = plan.Mouthful(s.planCase.Athlete.Mouthful.Or(0))
	if r.mouthful == 0 {
		r.mouthful = plan.UsualMouthful(sweat.Sex(s.planCase.Athlete.Sex))
	}
	r.habit = p.Evaluate(s.length, s.habit)
	p.Schedule(s.length, s.habit, r.chances, r.mouthful, &r.took)
	r.usual = p.Course(s.length, &r.took, r.usual[:0])
	r.follow(s)
}

// follow calculates what a movement changes.
func (r *calculation) follow(s state) {
	p := s.planCase.Planner
	r.at = p.Evaluate(s.length, s.mix)
	r.bands = p.Bands(s.length, s.mix)
	for slot := range r.most {
		r.most[slot], r.ends[slot] = p.Most(s.length, s.mix, plan.Slot(slot))
	}
	p.Schedule(s.length, s.mix, r.chances, r.mouthful, &r.take)
	r.course = p.Course(s.length, &r.take, r.course[:0])
}

// even reports whether the sport has no chances of its own within the session:
// drinking is then drawn as even.
func (r *calculation) even() bool { return len(r.take.Takes) == 0 }

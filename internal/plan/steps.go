package plan

import (
	"math"
	"time"

	"ebbwell/internal/evidence"
)

// StepRules size and space the steps. No trial sets them: they are common
// practice, and the practitioner may change each.
type StepRules struct {
	// FluidLH is the most that the drinking rate changes in one step, L/h.
	// Where Share is above zero, that part of the gap goes before it (0.25 to 0.33).
	FluidLH, Share float64
	// CarbohydrateGH is the most that carbohydrate changes in one step, g/h.
	CarbohydrateGH float64
	// Sessions to do on a step, and how many there are a week.
	Sessions int
	PerWeek  float64
	// ClearDays before an event in which nothing changes.
	ClearDays int
}

// DefaultStepRules is 150 mL/h and 15 g/h at most, three sessions on a step,
// three a week, nothing new in the last ten days.
func DefaultStepRules() StepRules {
	return StepRules{
		FluidLH: evidence.StepFluidHigh, CarbohydrateGH: evidence.StepFuelHigh,
		Sessions: int(evidence.StepSessionsHigh), PerWeek: evidence.StepSessionsHigh,
		ClearDays: int(evidence.StepClearDaysHigh),
	}
}

// Smaller proposes half the step where the athlete's confidence is below 7 of
// 10 (from memory; the half is our proposal); ok is false where it is not.
func (r StepRules) Smaller(confidence float64) (smaller StepRules, ok bool) {
	if !(confidence < evidence.ConfidenceEnough) {
		return r, false
	}
	part := evidence.SmallerStepShare / 100
	r.FluidLH, r.Share, r.CarbohydrateGH = r.FluidLH*part, r.Share*part, r.CarbohydrateGH*part
	return r, true
}

// fluid is the most that the drinking rate changes in one step of a gap, L/h.
func (r StepRules) fluid(gap float64) float64 {
	if r.Share > 0 {
		return r.Share * math.Abs(gap)
	}
	return r.FluidLH
}

// days that a step is held.
func (r StepRules) days() int {
	if !(r.PerWeek > 0) {
		return 7
	}
	return int(math.Ceil(float64(max(1, r.Sessions)) * 7 / r.PerWeek))
}

// Climb is what a ladder is built from.
type Climb struct {
	Length     Length
	Habit, Aim Mix
	Rules      StepRules
	Start      time.Time
	Event      time.Time // zero when there is none
}

// Step is one rung between habit and aim.
type Step struct {
	Mix  Mix
	From time.Time
	// Prediction of the mix, and its change from the rung before.
	Prediction Prediction
	Change     Difference
	// Goals counts the slots that change at once; more than two are many
	// for one visit (Brauer et al. 2022).
	Goals int
	// Large: more than the rules allow at once, since an increment is.
	Large bool
	// InTime: it begins before the days in which nothing changes.
	InTime bool
}

// Why a ladder ends before the aim; words under each.
const (
	EndsAtAim       = ""
	EndsAtCeiling   = "steps.ends-ceiling"   // the next would pass the loss
	EndsAtTolerance = "steps.ends-tolerance" // a review has to raise it first
	EndsAtStomach   = "steps.ends-stomach"   // no stomach usually takes more
)

// Ladder is the way from habit to aim.
type Ladder struct {
	Steps []Step
	Ends  string
	// Reached is the index of the last step that begins in time for the
	// event; -1 when none does.
	Reached int
}

// Steps builds the rungs from habit to aim. Every slot, fluid and carbohydrate
// go one way from rung to rung. No rung passes the ceiling, nor what the
// stomach is used to: there the ladder ends, and goes on after a review has
// raised it. A habit that itself lies above the ceiling comes down in one
// step. A step is larger than the rules only where one increment is, or where no
// mix in whole increments lies between; it is then marked.
func (p *Planner) Steps(c Climb) Ladder {
	ladder := Ladder{Reached: -1}
	before := c.Habit
	for k, mix := range p.rungs(c) {
		q := p.Evaluate(c.Length, mix)
		if ladder.Ends = p.ends(c, q); ladder.Ends != EndsAtAim {
			break
		}
		step := Step{Mix: mix, Prediction: q, Change: p.Compare(c.Length, before, mix), From: c.Start.AddDate(0, 0, k*c.Rules.days())}
		for s := range mix {
			if mix[s] != before[s] {
				step.Goals++
			}
		}
		step.Large = p.large(c, step.Change)
		step.InTime = c.Event.IsZero() || !step.From.After(c.Event.AddDate(0, 0, -c.Rules.ClearDays))
		if step.InTime {
			ladder.Reached = k
		}
		ladder.Steps = append(ladder.Steps, step)
		before = mix
	}
	return ladder
}

// large reports whether a change is more than the rules allow at once.
func (p *Planner) large(c Climb, d Difference) bool {
	gap := p.totalsOf(c.Length, c.Aim).fluid - p.totalsOf(c.Length, c.Habit).fluid
	over := func(change, most float64) bool { return most > 0 && math.Abs(change) > most*(1+hair) }
	return over(d.RateLH, c.Rules.fluid(gap)) || over(d.CarbohydrateGH, c.Rules.CarbohydrateGH)
}

// ends tells why a rung may not be on the ladder.
func (p *Planner) ends(c Climb, q Prediction) string {
	habit := p.Evaluate(c.Length, c.Habit)
	rate := q.Fluid.RateLH
	takes := StomachTakes(p.session.Running).High
	switch usual := p.basis.Usual; {
	case q.Guards.Stops():
		return EndsAtCeiling
	case rate <= habit.Fluid.RateLH+hair:
		return EndsAtAim
	case rate > takes+hair && !(usual.Known && rate <= usual.LH+hair):
		return EndsAtStomach
	case usual.Known && rate > usual.LH+hair:
		return EndsAtTolerance
	}
	return EndsAtAim
}

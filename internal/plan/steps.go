package plan

import (
	"math"
	"time"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan/proposal"
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
	// Large: more than the rules allow at once, since nothing smaller lies between.
	Large bool
	// Held: the habit, held until the stomach is calm. Cut: fluid that comes down
	// at once.
	Held, Cut bool
	// InTime: it begins before the days in which nothing changes.
	InTime bool
}

// Why a ladder ends before the aim; words under each.
const (
	EndsAtAim     = ""
	EndsAtCeiling = "steps.ends-ceiling" // the next would pass the loss
	EndsAtReview  = "steps.ends-review"  // six steps are practised, then comes a review
)

// Ladder is the way from habit to aim.
type Ladder struct {
	Steps []Step
	Ends  string
	// Reached is the index of the last step that begins in time for the
	// event; -1 when none does.
	Reached int
}

// Steps builds the rungs from habit to aim, six at most; see
// [proposal.Ladder]. No rung passes the ceiling: there the ladder ends. A habit
// that itself lies above the ceiling comes down in one step.
func (p *Planner) Steps(c Climb) Ladder {
	ladder := Ladder{Reached: -1}
	facts := p.proposalCase(c.Length, c.Habit, c.Rules)
	before := c.Habit
	for k, rung := range proposal.Ladder(&facts, proposal.Mix(c.Aim)) {
		mix := Mix(rung.Mix)
		q := p.Evaluate(c.Length, mix)
		if q.Guards.Stops() && !rung.Held {
			ladder.Ends = EndsAtCeiling
			return ladder
		}
		step := Step{
			Mix: mix, Prediction: q, Change: p.Compare(c.Length, before, mix), From: c.Start.AddDate(0, 0, k*c.Rules.days()),
			Large: rung.Large, Held: rung.Held, Cut: rung.Cut,
		}
		for s := range mix {
			if mix[s] != before[s] {
				step.Goals++
			}
		}
		step.InTime = c.Event.IsZero() || !step.From.After(c.Event.AddDate(0, 0, -c.Rules.ClearDays))
		if step.InTime {
			ladder.Reached = k
		}
		ladder.Steps = append(ladder.Steps, step)
		before = mix
	}
	if before != c.Aim {
		ladder.Ends = EndsAtReview
	}
	return ladder
}

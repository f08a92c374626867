package proposal

import (
	"math"

	"ebbwell/internal/evidence"
)

// FluidCase says by which rule the target of fluid was set.
type FluidCase int

// The rules.
const (
	// Unsure: the habit lies above the limit through the low end of the
	// estimate alone, and was measured to end low enough, or is above it by less than
	// a scale tells: no fluid is added.
	Unsure FluidCase = iota
	// Less: the habit may be more than is lost; it comes down at once.
	Less
	// Keep: the habit is about what is needed, or no more drink is wanted.
	Keep
	// NoRoom: more is needed, and some limit has no room for it.
	NoRoom
	// More: more is needed, and there is room.
	More
)

// Bound names what sets the reach.
type Bound int

// The bounds.
const (
	BoundLoss Bound = iota
	BoundStomach
	BoundBreaks
)

// Limits is what bounds the fluid of a proposal, mL.
type Limits struct {
	// LimitML is what drinks and food water together never pass.
	LimitML float64
	// BreaksML, StomachML: what the breaks carry and the stomach takes.
	BreaksML, StomachML float64
	// ReachML is the most that is proposed to drink, Bound what sets it, and
	// NextML where the reach would be without that bound.
	ReachML float64
	Bound   Bound
	NextML  float64
	// NeedML of drinks meets the aim for the deficit, AimPercent.
	NeedML, AimPercent float64
	// TargetML of drinks, and the rule that set it.
	TargetML float64
	Case     FluidCase
	// Increment in mL that fluid missing is counted in.
	Increment float64
	// Clash: the need is past the reach.
	Clash bool
}

// LimitsOf works out limits and target of a case.
func LimitsOf(c *Case) Limits {
	habit := c.SumOf(c.Habit)
	v0, f0 := habit.DrunkML, habit.FoodWaterML
	l := Limits{LimitML: c.limit(), AimPercent: c.DeficitAim, Increment: evidence.ProposalWater}
	if c.long() {
		l.Increment = evidence.ProposalWaterLong
	}
	if c.careful() {
		l.AimPercent = max(l.AimPercent, evidence.CarefulDeficit)
	}
	l.NeedML = max(0, c.LossML+c.BreathML-l.AimPercent*c.percent())
	share := c.share(v0+f0, l.LimitML)
	over := Passes(v0+f0, l.LimitML)
	unsure := over && (c.measuredLow(v0+f0) || c.withinScale(v0, f0, share*l.LimitML-f0, l.Increment))
	if unsure {
		l.LimitML, share = v0+f0, 1
	}
	l.StomachML, l.BreaksML = c.stomach(v0), c.BreaksML
	if len(c.Chances) == 0 && v0 > 0 {
		l.BreaksML = v0
	}
	l.reach(share*l.LimitML-f0, v0, over && !unsure)
	l.target(c, v0, f0, share, over, unsure)
	return l
}

// limit is the low end of the loss, past three hours also what leaves 1 % of
// body mass; in coarse steps where the mass is hidden.
func (c *Case) limit() float64 {
	limit := c.LowML
	if c.Minutes > evidence.LongSession {
		long := c.LossML + c.BreathML - evidence.LongSessionAtMost*c.percent()
		if c.Hidden {
			long = FloorTo(long, evidence.HiddenLimitStep*1000)
		}
		limit = min(limit, max(0, long))
	}
	return limit
}

// measuredLow reports that the habit was measured in the conditions of the plan, that
// the stomach did not ask for less, and that the test ended at -1 % or lower, or, in no
// more than three hours, with no more than half of what was lost taken, or with so much
// of it left that a similar day loses more, and mass that clearly fell. More than the
// sweat of such a day is a gain to come, whatever breath took in the test.
func (c *Case) measuredLow(taken float64) bool {
	if !c.Tested || c.careful() || c.upset() || Passes(taken, c.LossML) {
		return false
	}
	lost := c.LossML + c.BreathML
	fell := !Passes(taken, evidence.TestedTakenClear*lost) && !Passes(evidence.TestedFall*1000, lost-taken)
	little := c.Minutes <= evidence.LongSession && (fell || !Passes(taken, evidence.TestedTaken*lost))
	return little || !Passes(evidence.TestedEnds*c.percent(), lost-taken)
}

// withinScale reports that a habit would come down by no more than a scale tells, in no
// more than three hours, from no more than the mean of the loss: nobody is asked to pour
// 50 mL away.
func (c *Case) withinScale(drunk, eaten, most, increment float64) bool {
	held := !c.careful() && !c.upset() && c.Minutes <= evidence.LongSession
	return held && !Passes(drunk+eaten, c.LossML) && !Passes(drunk-FloorTo(most, increment), evidence.CutLeast)
}

// share of the limit that is aimed at.
func (c *Case) share(taken, limit float64) float64 {
	switch {
	case c.careful():
		return evidence.ReachShareCareful
	case Passes(taken, limit) && !Passes(taken, c.LossML):
		return evidence.ReachShareNear
	}
	return evidence.ReachShare
}

// stomach is what a stomach takes in the session, or what it was measured to take.
func (c *Case) stomach(drunk float64) float64 {
	rate := evidence.ReachStomach
	if c.Running {
		rate = evidence.ReachStomachRun
	}
	most := rate * 1000 * c.hours()
	if c.calm() {
		most = max(most, drunk)
	}
	if c.MostLH > 0 {
		most = min(most, c.MostLH*1000*c.hours())
	}
	return most
}

// reach is the smallest of the bounds. A cut does not ask the breaks; a habit
// inside the limit is never out of reach.
func (l *Limits) reach(loss, v0 float64, cut bool) {
	bounds := [...]float64{BoundLoss: loss, BoundStomach: l.StomachML, BoundBreaks: evidence.ReachShareBreaks * l.BreaksML}
	l.Bound = BoundLoss
	for b, x := range bounds {
		if x < bounds[l.Bound] && (!cut || Bound(b) != BoundBreaks) {
			l.Bound = Bound(b)
		}
	}
	l.ReachML, l.NextML = max(0, bounds[l.Bound]), math.Inf(1)
	for b, x := range bounds {
		if Bound(b) != l.Bound && (!cut || Bound(b) != BoundBreaks) {
			l.NextML = min(l.NextML, max(0, x))
		}
	}
	if !cut {
		l.ReachML = max(l.ReachML, v0)
	}
}

// target sets the target of fluid and tells the rule.
func (l *Limits) target(c *Case, v0, f0, share float64, over, unsure bool) {
	l.Clash = Passes(l.NeedML, l.ReachML)
	room := FloorTo(l.ReachML, l.Increment) - v0
	switch {
	case unsure:
		l.Case, l.TargetML = Unsure, v0
	case over:
		l.Case, l.TargetML = Less, FloorTo(share*l.LimitML-f0, l.Increment)
	case c.NoMoreDrink || !c.pastAim((v0-c.LossML-c.BreathML)/c.percent(), l.AimPercent):
		l.Case, l.TargetML = Keep, v0
	case Passes(evidence.TargetLeastRoom, room):
		l.Case, l.TargetML = NoRoom, v0
	default:
		l.Case, l.TargetML = More, l.more(c, v0)
	}
}

// more is the target where more is needed and there is room.
func (l *Limits) more(c *Case, v0 float64) float64 {
	grain := l.Increment
	if c.Hidden {
		grain = evidence.TargetHidden
	}
	t := FloorTo(l.ReachML, grain)
	if !l.Clash {
		above := min(evidence.TargetAboveMass*c.percent(), (l.ReachML-l.NeedML)/evidence.TargetAbovePart)
		t = CeilTo(l.NeedML+above, grain)
	}
	t = max(t, v0+evidence.TargetLeastMore)
	return min(t, FloorTo(l.ReachML, l.Increment))
}

// moreBreaksHelp reports whether more breaks would make room for so much more than the
// aim that asking for them is worth it, and for any more than those there are carry.
func (l *Limits) moreBreaksHelp() bool {
	return l.Bound == BoundBreaks && l.NextML >= l.TargetML+evidence.AskedRoom && l.NextML > l.BreaksML
}

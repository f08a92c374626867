package proposal

import (
	"math"
	"slices"

	"ebbwell/internal/evidence"
)

// Saying is one thing to say about a proposal: a code and its figures, volumes
// in L, carbohydrate in g/h, body mass change in % below zero for a loss.
type Saying struct {
	Code    string
	Figures []float64
}

// What is said; the figures of each stand behind it.
const (
	SayGained      = "proposal.gained"
	SayPastSodium  = "proposal.past-low-sodium"
	SayLess        = "proposal.less" // drunk, limit, target
	SayUnsure      = "proposal.limit-unsure"
	SayInPlace     = "proposal.food-in-place" // litres less to drink
	SayNothing     = "proposal.nothing"
	SayStuck       = "proposal.stuck"
	SayFirstDrinks = "proposal.first-drinks"
	SayFirstFood   = "proposal.first-food"
	SayFirstHold   = "proposal.first-hold"
	SayFirstBack   = "proposal.first-back"
	SayAim         = "proposal.aim"            // drinks, end, carbohydrate, steps
	SayAimHidden   = "proposal.aim-hidden"     // drinks, carbohydrate, steps
	SayNoMore      = "proposal.no-more-drink"  // end, more that the aim takes
	SayNoMoreBlind = "proposal.no-more-hidden" //
	SayBreaksCarry = "proposal.breaks-carry"   // drunk, carried
	SayEndsBreaks  = "proposal.ends-breaks"    // end, aim, room
	SayEndsStomach = "proposal.ends-stomach"   // end, aim, room
	SayEndsLoss    = "proposal.ends-loss"      // end, aim
	SayRoomBreaks  = "proposal.room-breaks"    // room; for a hidden mass
	SayRoomStomach = "proposal.room-stomach"   // room; for a hidden mass
	SayRoomLoss    = "proposal.room-loss"      // for a hidden mass
	SayAskBreaks   = "proposal.ask-breaks"     // litres that more breaks would allow
	SayAskFirst    = "proposal.ask-first"      // carried, and what more breaks would allow
	SayAskCut      = "proposal.ask-cut"        // carried, and what the habit comes down to
	SayDeep        = "proposal.deep"
	SayStomach     = "proposal.stomach"      // rating
	SayStomachBad  = "proposal.stomach-bad"  // rating
	SayDrinksShort = "proposal.drinks-short" // carbohydrate, asked for
	SayNoFoodShort = "proposal.no-food-short"
	SayFoodShort   = "proposal.food-short"
	SaySaltShort   = "proposal.sodium-short"     // sodium mg/L, asked for
	SaySaltAim     = "proposal.sodium-aim-short" // sodium mg/h, asked for
	SayStrong      = "proposal.strong-drink"
	SayStrongBlind = "proposal.strong-drink-hidden"
	SaySecondTest  = "proposal.second-test"
	SayCool        = "proposal.cool"
	SayAboveAdvice = "proposal.above-advice" // carbohydrate
	SayYoung       = "proposal.young"
	SayOlder       = "proposal.older"
	SayUpTo        = "proposal.up-to"
	SayRinse       = "proposal.rinse"
	SayThirst      = "proposal.thirst"
	SayHalfSteps   = "proposal.half-steps"
	SayBottles     = "proposal.not-whole-bottles"
	SayClosed      = "proposal.closed"
	SayBefore      = "proposal.closed.before"       // from, to, hours before
	SayBeforeBlind = "proposal.closed.before-blind" // hours before; for a hidden mass
	SayAfter       = "proposal.closed.after"        // hours to the next, from, to for each kg lost
	SayAfterGain   = "proposal.closed.after-thirst"
)

// speech gathers what is said.
type speech struct {
	c    *Case
	o    *Proposal
	mix  Mix // the picked aim, or the habit
	end  Sum // what it comes to
	list []Saying
}

func (s *speech) add(code string, figures ...float64) {
	s.list = append(s.list, Saying{Code: code, Figures: figures})
}

// say lists what is said about a proposal, most urgent first.
func (c *Case) say(o *Proposal) []Saying {
	s := speech{c: c, o: o, mix: c.Habit}
	if r := o.Picked(); r.Exists {
		s.mix = r.Aim
	}
	s.end = c.SumOf(s.mix)
	s.urgent()
	s.steps()
	s.ends()
	s.stomach()
	s.fuel()
	s.rest()
	return s.list
}

// Picked is the route that is proposed first.
func (o *Proposal) Picked() *Route { return &o.Routes[o.Pick] }

// urgent says what stands before everything.
func (s *speech) urgent() {
	c, habit := s.c, s.c.SumOf(s.c.Habit)
	if c.Gained {
		s.add(SayGained)
	}
	if c.PastLowSodium {
		s.add(SayPastSodium)
	}
	if s.o.Outcome == DrinkLess {
		cut := c.SumOf(s.o.Cut)
		s.add(SayLess, (habit.DrunkML+habit.FoodWaterML)/1000, s.o.Limits.LimitML/1000, cut.DrunkML/1000)
	}
	if s.o.Limits.Case == Unsure {
		s.add(SayUnsure)
	}
	if f := s.o.Routes[WithFood]; f.Exists && s.o.Limits.Case == Unsure && !c.long() {
		aim := c.SumOf(f.Aim)
		if less := habit.DrunkML - aim.DrunkML; Passes(less, 0) && Passes(aim.FoodWaterML, habit.FoodWaterML) {
			s.add(SayInPlace, less/1000)
		}
	}
	switch {
	case s.o.Lacking:
		s.add(SayBreaksCarry, habit.DrunkML/1000, max(c.BreaksML, c.AllBreaksML)/1000)
	case s.o.Ask && s.o.Limits.Case == Less:
		s.add(SayAskCut, max(c.BreaksML, c.AllBreaksML)/1000, c.SumOf(s.o.Cut).DrunkML/1000)
	case s.o.Ask:
		s.add(SayAskFirst, s.o.Limits.BreaksML/1000, s.o.Limits.NextML/1000)
	}
}

// steps says what comes first and where it leads.
func (s *speech) steps() {
	r := s.o.Picked()
	switch {
	case s.o.Outcome == Nothing:
		s.add(SayNothing)
		return
	case s.o.Outcome == Stuck:
		s.add(SayStuck)
		return
	case r.Steps[0].Back:
		s.add(SayFirstBack)
		return
	case r.Aim == s.o.Cut:
		return
	case r.Steps[0].Held:
		s.add(SayFirstHold)
	case r.Steps[0].Cut:
	case Passes(s.c.SumOf(r.Steps[0].Mix).FoodG, s.c.SumOf(s.o.Cut).FoodG):
		s.add(SayFirstFood)
	default:
		s.add(SayFirstDrinks)
	}
	gh, steps := s.end.CarbohydrateG/s.c.hours(), float64(len(r.Steps))
	if s.c.Hidden {
		s.add(SayAimHidden, s.end.DrunkML/1000, gh, steps)
		return
	}
	s.add(SayAim, s.end.DrunkML/1000, s.c.ShownEnd(s.mix), gh, steps)
}

// ends says where a plan that misses the aim for the deficit ends, and what set it.
func (s *speech) ends() {
	c, l := s.c, &s.o.Limits
	end := c.EndPercent(s.end)
	short := c.pastAim(end, l.AimPercent)
	if short && l.Clash && (l.Case == More || l.Case == NoRoom) {
		s.bound(s.c.ShownEnd(s.mix))
		if next := l.NextML; !s.o.Ask && l.moreBreaksHelp() && !math.IsInf(next, 1) {
			s.add(SayAskBreaks, next/1000)
		}
	}
	if -end > evidence.DeepDeficit && !c.Hidden {
		s.add(SayDeep)
	}
	if c.NoMoreDrink && short {
		if c.Hidden {
			s.add(SayNoMoreBlind)
		} else {
			s.add(SayNoMore, s.c.ShownEnd(s.mix), max(0, l.NeedML-s.end.DrunkML)/1000)
		}
	}
}

// bound names the limit that is used up. The breaks are named with the margin that is
// kept of them, so that what is said to fit is what is proposed.
func (s *speech) bound(end float64) {
	l := &s.o.Limits
	shown := [...]string{BoundLoss: SayEndsLoss, BoundStomach: SayEndsStomach, BoundBreaks: SayEndsBreaks}
	blind := [...]string{BoundLoss: SayRoomLoss, BoundStomach: SayRoomStomach, BoundBreaks: SayRoomBreaks}
	room := [...]float64{BoundLoss: l.LimitML, BoundStomach: l.StomachML, BoundBreaks: evidence.ReachShareBreaks * l.BreaksML}
	if s.c.Hidden {
		s.add(blind[l.Bound], room[l.Bound]/1000)
		return
	}
	s.add(shown[l.Bound], end, -l.AimPercent, room[l.Bound]/1000)
}

// stomach says that a stomach that was not calm comes first.
func (s *speech) stomach() {
	r := s.o.Picked()
	back := r.Exists && r.Steps[0].Back
	switch c := s.c; {
	case back:
		s.add(SayStomachBad, c.Stomach.Value)
	case c.Stomach.Known && c.Stomach.Value >= evidence.StomachHold:
		s.add(SayStomach, c.Stomach.Value)
	}
	if s.c.halved() && s.o.Outcome == Change && !back && !r.WholeFuel {
		s.add(SayHalfSteps)
	}
}

// fuel says what carbohydrate and sodium stay short, and why.
func (s *speech) fuel() {
	c, h, aim := s.c, s.c.hours(), s.o.Wants.AimGH
	a, b := &s.o.Routes[DrinksAlone], &s.o.Routes[WithFood]
	if a.Exists && a.Misses.Carbohydrate > 0 {
		code := SayNoFoodShort
		if b.Exists {
			code = SayDrinksShort
		}
		s.add(code, c.SumOf(a.Aim).CarbohydrateG/h, aim)
	}
	if b.Exists && b.Misses.Carbohydrate > 0 {
		s.add(SayFoodShort, c.SumOf(b.Aim).CarbohydrateG/h, aim)
	}
	s.sodium()
	s.strong()
	if g := c.SumOf(c.Habit).CarbohydrateG / h; c.AdviceMost > 0 && Passes(g, c.AdviceMost) && s.o.Outcome != DrinkLess {
		s.add(SayAboveAdvice, g)
	}
}

// sodium says what sodium stays short of what is asked for.
func (s *speech) sodium() {
	r, asked := s.o.Picked(), s.o.Wants.SodiumMgH
	switch {
	case !r.Exists || r.Misses.Sodium == 0:
	case asked > 0:
		s.add(SaySaltAim, s.end.SodiumMg/s.c.hours(), asked)
	case s.end.DrunkML > 0:
		s.add(SaySaltShort, s.end.SodiumMg/s.end.DrunkML*1000, evidence.SodiumAim)
	}
}

// strong says that a drink on the way is stronger than stomachs take well, also where
// with the water beside it all is no stronger than that.
func (s *speech) strong() {
	mixes := []Mix{s.c.Habit}
	for _, r := range s.o.Routes {
		if r.Exists {
			mixes = append(mixes, r.Aim)
		}
	}
	for i, src := range s.c.Sources {
		taken := slices.ContainsFunc(mixes, func(m Mix) bool { return Passes(m[i], 0) })
		if src.Kind != Drink || !taken || !Passes(100*src.CarbohydrateG, evidence.StrengthHigh) {
			continue
		}
		if s.c.Hidden { // no per cent is on the screen then
			s.add(SayStrongBlind)
		} else {
			s.add(SayStrong, 100*src.CarbohydrateG, evidence.StrengthHigh)
		}
		return
	}
}

// rest says what holds besides.
func (s *speech) rest() {
	c, l := s.c, &s.o.Limits
	habit := c.SumOf(c.Habit)
	if taken := habit.DrunkML + habit.FoodWaterML; l.Case == Less && !Passes(taken, c.LossML) && !c.careful() {
		s.add(SaySecondTest)
	}
	if c.Cool {
		s.add(SayCool)
	}
	if c.Age.Known && c.Age.Value < evidence.YoungUnder {
		s.add(SayYoung)
	}
	if c.Age.Known && c.Age.Value >= evidence.ThirstWeaker {
		s.add(SayOlder)
	}
	switch {
	case c.Minutes > evidence.UpToMinutes:
		s.add(SayUpTo)
	case c.Minutes < evidence.RinseUnder:
		s.add(SayRinse)
	case l.NeedML <= 0:
		s.add(SayThirst)
	}
}

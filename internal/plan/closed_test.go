package plan

import (
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan/proposal"
)

// Where one may not drink nothing is scheduled, carried or proposed, whatever was drunk
// in the test and whatever other breaks are listed; what is said is when to drink instead.
func TestSessionsInWhichOneMayNotDrink(t *testing.T) { //nolint:gocognit // one case after the other
	sports, err := Sports()
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, s := range sports {
		for _, minutes := range [...]float64{1, 30, 100} {
			chances := s.Chances(minutes, Hot)
			if !Closed(chances) {
				continue
			}
			seen++
			chances = append(chances, Chance{Code: "half-time", Minute: 10, Seconds: 600, CanEat: true})
			for _, habit := range [...]Mix{{}, {Water: 700, Food3: 1}, {Water: 4000}} {
				p := courtPlanner(t).At(chances).From(habit, Background{})
				var out Schedule
				p.Schedule(Expected, Mix{Water: 500, Drink1: 300, Food1: 1, Food3: 2}, chances, 25, &out)
				if !out.Closed() || out.DrinkableML != 0 || out.Carried(Mix{Water: 500, Drink1: 300, Food1: 1, Food3: 2}) != (Mix{}) {
					t.Errorf("%s %s: %+v", s.Code, s.Session, out.Takes)
				}
				found := p.Propose(DefaultStepRules())
				if found.Outcome != proposal.Closed || found.Cut != (proposal.Mix{}) || found.Ask || found.Routes[0].Exists || found.Routes[1].Exists {
					t.Errorf("%s %s, habit %v: %+v", s.Code, s.Session, habit, found)
				}
				var said []string
				for _, one := range found.Said {
					said = append(said, one.Code)
				}
				if len(said) != 3 || said[0] != proposal.SayClosed || said[1] != proposal.SayBefore || said[2] != proposal.SayAfter {
					t.Errorf("%s %s: said %v", s.Code, s.Session, said)
				}
			}
		}
	}
	if seen != 9 {
		t.Errorf("%d closed sessions of three sports", seen)
	}
}

// Who had low blood sodium, or gained mass, is told to drink to thirst, not how much;
// a hidden mass is not told by an amount for each kilogram.
func TestClosedSessionsOfThoseAtRisk(t *testing.T) {
	for name, c := range map[string]struct {
		of   proposal.Case
		want string
	}{
		"low blood sodium": {proposal.Case{PastLowSodium: true}, proposal.SayAfterGain},
		"gain":             {proposal.Case{Gained: true}, proposal.SayAfterGain},
		"hidden":           {proposal.Case{Hidden: true}, proposal.SayBeforeBlind},
		"others":           {proposal.Case{}, proposal.SayBefore},
	} {
		c.of.Closed, c.of.Minutes, c.of.MassKg, c.of.LossML, c.of.LowML = true, 20, 70, 400, 300
		has := map[string]bool{}
		for _, one := range proposal.Propose(&c.of).Said {
			has[one.Code] = true
		}
		if !has[c.want] || !has[proposal.SayClosed] || has[proposal.SayBefore] && c.want != proposal.SayBefore {
			t.Errorf("%s: %v", name, has)
		}
	}
}

// A bottle of its own at each break does not lift a long break above comfort: in a
// hockey match 700 mL of a drink and 100 mL of water stand at three breaks, 350 mL being
// comfortable at half-time.
func TestOneBottleLiftsNoLongBreak(t *testing.T) {
	p := courtPlanner(t)
	chances := []Chance{
		{Code: "quarter-interval", Minute: 25, Seconds: 120, CanEat: true},
		{Code: "half-time", Minute: 50, Seconds: 600, CanEat: true},
		{Code: "quarter-interval", Minute: 75, Seconds: 120, CanEat: true},
	}
	var s Schedule
	p.Schedule(Expected, Mix{Water: 100, Drink1: 700}, chances, 20, &s)
	if half := s.Takes[1]; float64(half.ML) > evidence.OneBottleOver*half.Chance.ComfortableML()+20 || s.DrinkableML != 800 {
		t.Errorf("%d mL at half-time, %d in all", half.ML, s.DrinkableML)
	}
	p.Schedule(Expected, Mix{Drink1: 1000}, chances, 20, &s)
	if half := s.Takes[1]; float64(half.ML) < evidence.OneBottleOver*half.Chance.ComfortableML()+20 {
		t.Errorf("%d mL at half-time of a plan that needs more", half.ML)
	}
}

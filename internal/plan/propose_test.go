package plan

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan/proposal"
)

// A strength set below the 8 % of the advice is a limit of a proposal; drinks are cut to
// what is left of water first.
func TestLimitsSetOnAPlan(t *testing.T) {
	b, s := courtBasis(), courtSession()
	for percent, want := range map[float64]float64{7.5: 7.5, 7.9: 7.9, 8: 0, 9: 0} {
		p := newPlanner(t, b, s, byHand(), Aim{Strength: Within(0, percent)})
		if c := p.proposalCase(Expected, Mix{}, DefaultStepRules()); c.MostStrength != want {
			t.Errorf("%g %%: %g", percent, c.MostStrength)
		}
	}
	for sum, want := range map[float64][Drinks]float64{900: {300, 200, 400}, 700: {100, 200, 400}, 500: {0, 100, 400}, 250: {0, 0, 250}, 0: {}, 2000: {300, 200, 400}} {
		if got := cutTo([Drinks]int{300, 200, 400}, sum); got != want {
			t.Errorf("to %g mL: %v, want %v", sum, got, want)
		}
	}
	if exceeds(100.00005, 100) || !exceeds(100.001, 100) || exceeds(99, 100) {
		t.Error("a volume exceeds another by what is shown of a mL")
	}
}

// The next mouthful of a chance comes at the fill that reaches its middle: the second of 30
// mL at 45 mL; where the chance was set by hand before all else. In calm a chance is filled
// to half a mouthful past a tenth above comfort.
func TestNextMouthfulByHand(t *testing.T) {
	w := pouring{mouthful: 30, most: 4}
	take := Take{Chance: Chance{Seconds: 60}, Mouthfuls: 1}
	near(t, "the second", w.reached(&take), 45/117.6)
	take.Mouthfuls = 4
	near(t, "past comfort", w.reached(&take), 3+(135-117.6)/50.4)
	take.Chance.Fixed.On = true
	near(t, "set by hand", w.reached(&take), -1)
	for mouthful, over := range map[float64]bool{28: false, 28.7: false, 29: true, 33: true} { // five of 1.1 x 117.6 = 129.36 mL
		w := pouring{mouthful: mouthful, most: 4, calm: true}
		if got := w.over(&Take{Chance: Chance{Seconds: 60}, Mouthfuls: 4}); got != over {
			t.Errorf("five mouthfuls of %g mL: %v", mouthful, got)
		}
		w.calm = false
		if got := w.over(&Take{Chance: Chance{Seconds: 60}, Mouthfuls: 4}); got {
			t.Errorf("five mouthfuls of %g mL, not in calm", mouthful)
		}
	}
}

// outing is one session of one athlete at the breaks of a sport.
type outing struct {
	name    string
	planner *Planner
	chances []Chance
	habit   Mix
}

// outingOf makes the planner of a sport's session in an air, with a habit that is
// a part of the loss.
func outingOf(t *testing.T, s Sport, celsius, kg, part float64, b Background) outing {
	t.Helper()
	minutes, heat, rate := 0.0, Temperate, 0.75
	for _, r := range s.Rules {
		minutes = max(minutes, r.Minutes)
	}
	if minutes == 0 {
		minutes = 120
	}
	if celsius > 27 {
		heat, rate = Hot, 1.5
	}
	rate *= kg / 70
	session := Session{Minutes: [Lengths]float64{minutes, minutes, minutes}, Effort: fuel.Hard, Heat: heat, Running: s.Code == "football" || s.Code == "road-running"}
	basis := Basis{
		Kind: Test, Code: "basis.test", Tests: 1, SweatRate: Between(rate, rate*0.73, rate*1.32), RespiratoryLH: 0.12,
		Sodium: Between(40, 30, 52), Body: Body{MassKg: kg, AgeYears: 28},
	}
	menu := menuOf(t, []string{"drink-6"}, []string{"gel", "banana"})
	chances := s.Chances(minutes, heat)
	habit := Mix{Water: 10 * float64(int(part*rate*minutes/60*100))}
	p := newPlanner(t, basis, session, menu, DefaultAim(basis.Usual, session)).At(chances).From(habit, b)
	return outing{fmt.Sprintf("%s %s, %g °C, %g kg, habit %.0f mL", s.Code, s.Session, celsius, kg, habit[Water]), p, chances, habit}
}

// meantBySteps are the guards that say what a step is there for, or not yet at its end:
// more than the stomach is used to, and a loss that is still past the limit.
const meantBySteps = OverUsual | NearStomach | PastLimit

// check holds every step of every way: none over the limit, none below the habit
// but where that may be more than is lost, and then that is said first.
func (o outing) check(t *testing.T) proposal.Proposal {
	t.Helper()
	p := o.planner
	found := p.Propose(DefaultStepRules())
	habit := p.Evaluate(Expected, o.habit)
	least := proposal.FloorTo(habit.Fluid.DrunkL*1000, evidence.ProposalWater) / 1000 // what was poured is on no increment
	for way, r := range found.Routes {
		for k, step := range r.Steps {
			q := p.Evaluate(Expected, Mix(step.Mix))
			if q.Guards.Stops() && !step.Held {
				t.Errorf("%s, way %d, step %d: over the limit: %v", o.name, way, k, step.Mix)
			}
			if cautioned := q.Guards &^ habit.Guards &^ meantBySteps; cautioned != 0 && !step.Held {
				t.Errorf("%s, way %d, step %d: %v is cautioned about: %v", o.name, way, k, step.Mix, cautioned.Codes())
			}
			if q.Fluid.DrunkL < least-1e-9 && found.Outcome != proposal.DrinkLess {
				t.Errorf("%s, way %d, step %d: %g L, less than the habit's %g", o.name, way, k, q.Fluid.DrunkL, habit.Fluid.DrunkL)
			}
			if found.Outcome != proposal.DrinkLess && !step.Back && q.Carbohydrate.TotalGH < min(habit.Carbohydrate.TotalGH, found.Wants.AimGH)-1e-9 {
				t.Errorf("%s, way %d, step %d: less carbohydrate than the habit", o.name, way, k)
			}
		}
	}
	if found.Outcome == proposal.DrinkLess {
		first := found.Said[0].Code
		if first != proposal.SayLess && first != proposal.SayGained && first != proposal.SayPastSodium {
			t.Errorf("%s: drinks less, and says %s first", o.name, first)
		}
	}
	return found
}

// TestEverySport: over every sport of the table, a habit of none to 1.2 of the
// loss, in cool and in hot air, tested and not: nothing proposed is worse than the
// habit, and no step passes the limit.
func TestEverySport(t *testing.T) {
	outcomes := map[proposal.Outcome]int{}
	for _, s := range sports(t) {
		for _, part := range []float64{0, 0.4, 0.7, 0.95, 1.2} {
			for _, celsius := range []float64{12, 32} {
				for _, tested := range []bool{true, false} {
					b := Background{Stomach: proposal.Is(2), Confidence: proposal.Is(8), Tested: tested}
					found := outingOf(t, s, celsius, 70, part, b).check(t)
					outcomes[found.Outcome]++
				}
			}
		}
	}
	for _, o := range []proposal.Outcome{proposal.Nothing, proposal.Change, proposal.DrinkLess} {
		if outcomes[o] < 10 {
			t.Errorf("outcome %d came %d times", o, outcomes[o])
		}
	}
}

// TestDrawnOutings: the same over drawn athletes with flags and wishes.
func TestDrawnOutings(t *testing.T) {
	list := sports(t)
	for seed := range uint64(200) {
		d := dice{rand.New(rand.NewPCG(seed, 21))}
		b := Background{
			PastLowSodium: d.IntN(8) == 0, Gained: d.IntN(12) == 0, AsksLess: d.IntN(8) == 0, NoFood: d.IntN(8) == 0,
			NoMoreDrink: d.IntN(8) == 0, NoNewDrink: d.IntN(8) == 0, Tested: d.yes(),
			Stomach: proposal.Is(float64(d.IntN(9))), Confidence: proposal.Is(float64(3 + d.IntN(8))),
		}
		o := outingOf(t, oneOf(d, list...), oneOf(d, 12.0, 32), d.between(45, 115), d.between(0, 1.3), b)
		if d.yes() {
			o.habit[Drink1], o.habit[Food1] = 50*float64(d.IntN(8)), float64(d.IntN(3))
			o.planner = o.planner.From(o.habit, b)
		}
		o.name = fmt.Sprintf("seed %d: %s", seed, o.name)
		o.check(t)
	}
}

// The ladder built to a proposed aim is the one proposed.
func TestLadderOfAProposal(t *testing.T) {
	compared := 0
	for _, s := range sports(t) {
		o := outingOf(t, s, 32, 70, 0.3, Background{Stomach: proposal.Is(2), Tested: true})
		for way, r := range o.planner.Propose(DefaultStepRules()).Routes {
			if !r.Exists {
				continue
			}
			l := o.planner.Steps(Climb{Length: Expected, Habit: o.habit, Aim: Mix(r.Aim), Rules: DefaultStepRules(), Start: day("2026-05-18")})
			if len(l.Steps) != len(r.Steps) {
				t.Errorf("%s, way %d: %d steps, proposed %d", o.name, way, len(l.Steps), len(r.Steps))
				continue
			}
			for k := range l.Steps {
				if l.Steps[k].Mix != Mix(r.Steps[k].Mix) {
					t.Errorf("%s, way %d, step %d: %v, proposed %v", o.name, way, k, l.Steps[k].Mix, r.Steps[k].Mix)
				}
			}
			compared++
		}
	}
	if compared < 15 {
		t.Errorf("%d compared", compared)
	}
}

// Where a proposal is said to end is where the planner ends it: what the scale shows, the
// mass of food counted.
func TestSaidEndIsThePlanners(t *testing.T) {
	said := 0
	for _, s := range sports(t) {
		for _, part := range []float64{0.1, 0.4, 0.7} {
			o := outingOf(t, s, 32, 70, part, Background{Stomach: proposal.Is(2), Tested: true})
			found := o.planner.Propose(DefaultStepRules())
			for _, one := range found.Said {
				if one.Code != proposal.SayAim {
					continue
				}
				said++
				if end := -o.planner.Evaluate(Expected, Mix(found.Picked().Aim)).Deficit.Value; math.Abs(one.Figures[1]-end) > 1e-9 {
					t.Errorf("%s: said to end at %g %%, the planner ends at %g", o.name, one.Figures[1], end)
				}
			}
		}
	}
	if said < 20 {
		t.Errorf("%d said", said)
	}
}

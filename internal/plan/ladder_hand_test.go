package plan

import (
	"math"
	"testing"
	"time"
)

// The steps by hand: three sessions at three a week are a week, at two a week 11 days,
// at none known a week; the last may begin ten days before the event, and not nine.
func TestDatesOfSteps(t *testing.T) {
	for _, c := range []struct {
		sessions int
		perWeek  float64
		days     int
	}{{3, 3, 7}, {3, 2, 11}, {3, 1, 21}, {2, 7, 2}, {0, 7, 1}, {3, 0, 7}, {1, 7, 1}, {3, 0.5, 42}} {
		if got := (StepRules{Sessions: c.sessions, PerWeek: c.perWeek}).days(); got != c.days {
			t.Errorf("%d sessions at %g a week: %d days, want %d", c.sessions, c.perWeek, got, c.days)
		}
	}
	p := courtPlanner(t)
	for event, reached := range map[string]int{"2026-05-27": -1, "2026-05-28": 0, "2026-06-03": 0, "2026-06-04": 1} {
		l := p.Steps(Climb{Length: Expected, Habit: courtHabit(), Aim: Mix{Water: 900, Drink1: 750}, Rules: DefaultStepRules(), Start: day("2026-05-18"), Event: day(event)})
		if len(l.Steps) < 2 || l.Reached != reached {
			t.Errorf("event on %s: step %d of %d", event, l.Reached, len(l.Steps))
		}
	}
	l := p.Steps(Climb{Length: Expected, Habit: courtHabit(), Aim: Mix{Water: 900, Drink1: 750}, Rules: DefaultStepRules(), Start: day("2026-05-18")})
	if l.Reached != len(l.Steps)-1 || l.Ends != EndsAtAim {
		t.Errorf("without an event step %d of %d, %q", l.Reached, len(l.Steps), l.Ends)
	}
	before := courtHabit()
	for k, s := range l.Steps {
		goals := 0
		for slot := range s.Mix {
			if s.Mix[slot] != before[slot] {
				goals++
			}
		}
		if s.Goals != goals || goals == 0 || s.Change != p.Compare(Expected, before, s.Mix) || !s.From.Equal(day("2026-05-18").Add(time.Duration(k)*7*24*time.Hour)) {
			t.Errorf("step %d: %+v", k, s)
		}
		before = s.Mix
	}
}

// A part of the gap goes before the step of the practice; half of either with low
// confidence.
func TestSizeOfSteps(t *testing.T) {
	r := StepRules{FluidLH: 0.15, CarbohydrateGH: 15}
	if r.fluid(0.6) != 0.15 || r.fluid(-0.6) != 0.15 {
		t.Error("0.15 L/h whatever the gap")
	}
	r.Share = 0.25
	if math.Abs(r.fluid(0.6)-0.15) > 1e-12 || math.Abs(r.fluid(-0.8)-0.2) > 1e-12 {
		t.Error("a quarter of the gap, up or down")
	}
	half, ok := r.Smaller(6.9)
	if !ok || half.FluidLH != 0.075 || half.CarbohydrateGH != 7.5 || half.Share != 0.125 {
		t.Errorf("%+v", half)
	}
}

// A review by hand: three sessions of 70, 80 and 90 % are 80 % done, however they are
// rounded; after it 0.1 L/h more than was drunk is tolerated, no more than stomachs take.
func TestReviewByHand(t *testing.T) {
	session := func(share, rate float64) Done { return Done{Share: share, DrunkLH: rate, Stomach: 1, Asked: true} }
	for _, shares := range [][3]float64{{0.7, 0.8, 0.9}, {0.9, 0.8, 0.7}, {0.8, 0.9, 0.7}, {0.75, 0.8, 0.85}} {
		done := []Done{session(shares[0], 0.5), session(shares[1], 0.6), session(shares[2], 0.7)}
		p := Review(done, Usual{Known: true, LH: 0.65}, false)
		if p.Decision != Next || math.Abs(p.Usual.LH-0.7) > 1e-9 {
			t.Errorf("%v: %+v", shares, p)
		}
	}
	if p := Review([]Done{session(0.79, 0.5), session(0.8, 0.5)}, Usual{}, false); p.Decision != Hold {
		t.Errorf("79.5 %%: %+v", p)
	}
	if p := Review([]Done{session(1, 0), session(1, 0)}, Usual{}, false); p.Usual.Known {
		t.Errorf("nothing drunk: %+v", p.Usual)
	}
	four := []Done{{Gained: true}, session(1, 0.5), session(1, 0.5), session(1, 0.5)}
	if p := Review(four, Usual{}, false); p.Decision != Next {
		t.Errorf("a gain four sessions ago: %+v", p)
	}
	if p := Review(four[:3], Usual{}, false); p.Decision != Back || p.Reason != ReviewGained {
		t.Errorf("a gain three sessions ago: %+v", p)
	}
	unasked := session(1, 0.5)
	unasked.Asked, unasked.Stomach = false, 9
	if p := Review([]Done{unasked, session(1, 0.5)}, Usual{}, false); p.Reason != ReviewNotAsked {
		t.Errorf("a stomach that was not asked is none: %+v", p)
	}
}

// Two ranges multiplied and divided by hand, and their floor.
func TestRangesByHand(t *testing.T) {
	wide := Between(1, 0.1, 3).product(Between(10, 1, 30))
	near(t, "low", wide.Low, 0) // 10 - hypot(9, 9) is below nothing
	near(t, "high", wide.High, 10+math.Hypot(20, 20))
	if r := Between(1, 0.5, 2).product(Ranged{}); r.Known {
		t.Errorf("times the unknown: %+v", r)
	}
	if r := (Ranged{}).product(Between(1, 0.5, 2)); r.Known {
		t.Errorf("the unknown times: %+v", r)
	}
	u := Between(4, 2, 5).under(10)
	near(t, "value", u.Value, 2.5)
	near(t, "low", u.Low, 2)
	near(t, "high", u.High, 5)
	if u := Between(4, 0, 5).under(10); u.High != 2.5 || u.Low != 2 {
		t.Errorf("over nothing: %+v", u)
	}
	if u := (Ranged{Value: 4}).under(10); u.Known {
		t.Errorf("over the unknown: %+v", u)
	}
	x := Between(4, 2, 5).plus(1).times(2)
	if x != Between(10, 6, 12) {
		t.Errorf("%+v", x)
	}
}

package plan

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/published"
	"ebbwell/internal/sweat"
)

// checked is one row of a table of published values.
type checked struct {
	check string
	in    published.In
}

// number reads an input of a row; a missing or unreadable one fails the test.
func (r checked) number(t testing.TB, key string) float64 {
	t.Helper()
	return r.in.Number(key)
}

// text reads an input that may be absent.
func (r checked) text(key string) string {
	if !r.in.Has(key) {
		return ""
	}
	return r.in.Text(key)
}

// walk holds every row of a table against what compute makes of it.
func walk(t *testing.T, name string, compute func(t testing.TB, r checked) any) {
	t.Helper()
	published.WalkAll(t, name, func(in published.In) any { return compute(in.TB(), checked{in.Case(), in}) })
}

// rowPlanner is the planner that a row describes: a loss of so many L in so
// many minutes, with the range of one test.
func rowPlanner(t testing.TB, r checked) (*Planner, Mix) {
	t.Helper()
	minutes := r.number(t, "minutes")
	rate := r.or(t, "rate", r.or(t, "loss", 0)/(minutes/60))
	span := afterOneTest(rate)
	b := Basis{SweatRate: Between(rate, span.Low, span.High), Body: Body{MassKg: r.number(t, "kg")}}
	if r.text("tight") != "" {
		b.SweatRate = Between(rate, rate, rate)
	}
	if c := r.or(t, "concentration", 0); c > 0 {
		b.Sodium = Between(c, c, c)
	}
	b.Usual = Usual{Known: r.text("usual") != "", LH: r.or(t, "usual", 0)}
	m := NewMenu()
	if err := m.SetDrink(Drink1, find(t, "drink-6")); err != nil {
		t.Fatal(err)
	}
	m[Drink2] = Item{InUse: true, ID: "bottle", Step: 1, Unit: Unit{
		FluidL: 0.5, CarbohydrateG: r.or(t, "grams", 0), Split: fuel.Split{Unknown: r.or(t, "grams", 0)}, SodiumMg: r.or(t, "sodium", 0),
	}}
	m[Food1] = Item{InUse: true, ID: "snack", Step: 1, Unit: Unit{CarbohydrateG: 1, Split: fuel.Split{Glucose: 1}}}
	s := Session{Minutes: [Lengths]float64{minutes, minutes, minutes}, Effort: fuel.Hard, Intermittent: true}
	return newPlanner(t, b, s, m, Aim{}), Mix{
		Water: r.or(t, "water", 0), Drink1: r.or(t, "six", 0), Drink2: r.or(t, "drink", 0), Food1: r.or(t, "snack", 0),
	}
}

// or reads an input that may be absent.
func (r checked) or(t testing.TB, key string, other float64) float64 {
	t.Helper()
	if r.text(key) == "" {
		return other
	}
	return r.number(t, key)
}

// one is 1 where something holds, 0 where not.
func one(holds bool) float64 {
	if holds {
		return 1
	}
	return 0
}

func TestPublishedCommonPractice(t *testing.T) {
	walk(t, "common_practice", func(t testing.TB, r checked) any {
		switch r.check {
		case "before inside early":
			return one(inRange(fuel.BeforeFourHours(r.number(t, "kg")).Range, r.number(t, "litres")))
		case "before inside late":
			return one(inRange(fuel.BeforeTwoHours(r.number(t, "kg")).Range, r.number(t, "litres")))
		}
		p, mix := rowPlanner(t, r)
		q := p.Evaluate(Expected, mix)
		switch r.check {
		case "sweat rate":
			return q.LossL.Value / (q.Minutes / 60)
		case "deficit":
			return q.Deficit.Value
		case "carbohydrate rate":
			return q.Carbohydrate.TotalGH
		case "drinking rate":
			return q.Fluid.RateLH
		case "sodium in":
			return q.Sodium.InMg
		case "sodium loss rate":
			return q.Sodium.LossMgH.Value
		case "sodium loss":
			return q.Sodium.LossMg.Value
		case "stomach guard":
			return one(q.Guards.Has(OverStomach))
		case "over usual guard":
			return one(q.Guards.Has(OverUsual))
		}
		t.Fatalf("case %q", r.check)
		return 0
	})
}

func TestPublishedSchedule(t *testing.T) {
	walk(t, "schedule", func(t testing.TB, r checked) any {
		switch r.check {
		case "limit litres":
			b := Basis{SweatRate: Between(1, 1, 1), Body: Body{MassKg: r.number(t, "kg")}}
			p := newPlanner(t, b, Session{Minutes: [Lengths]float64{60, 60, 60}}, NewMenu(), Aim{})
			if p.limit != r.number(t, "percent") {
				t.Fatalf("the limit is %g %%", p.limit)
			}
			return p.limit / p.percent(1)
		case "mouthful":
			return float64(UsualMouthful(sweat.Sex(r.text("sex"))))
		case "stomach low":
			return StomachTakes(r.text("running") == "yes").Low
		case "stomach high":
			return StomachTakes(r.text("running") == "yes").High
		case "ceiling share":
			p, _ := rowPlanner(t, r)
			return p.CeilingOf(Expected).FluidL / p.Evaluate(Expected, Mix{}).LossL.Value
		case "ceiling deficit":
			p, mix := rowPlanner(t, r)
			mix[Water] = p.CeilingOf(Expected).FluidL * 1000
			return p.Evaluate(Expected, mix).Deficit.Value
		case "step fluid":
			return DefaultStepRules().FluidLH
		case "step carbohydrate":
			return DefaultStepRules().CarbohydrateGH
		case "step sessions":
			return float64(DefaultStepRules().Sessions)
		case "step clear days":
			return float64(DefaultStepRules().ClearDays)
		case "smaller step":
			_, smaller := DefaultStepRules().Smaller(r.number(t, "confidence"))
			return one(smaller)
		case "deficit limit":
			return DeficitLimit(map[string]Heat{"cold": Cold, "mild": Temperate, "hot": Hot}[r.text("heat")])
		case "thirst will do":
			return thirstRow(t, r)
		case "review":
			list := make([]Done, int(r.number(t, "sessions")))
			for i := range list {
				list[i] = Done{Share: r.number(t, "done") / 100, DrunkLH: 0.5, Stomach: r.number(t, "stomach"), Asked: true}
			}
			return string(Review(list, Usual{}, false).Decision)
		case "hours before", "hours until", "hours after":
			return dayRow(t, r)
		case "entry":
			e, ok := evidence.Find(r.text("id"))
			if !ok {
				t.Fatalf("no entry %q", r.text("id"))
			}
			return e.Value
		}
		return chanceRow(t, r)
	})
}

// thirstRow asks whether drinking to thirst serves as well as a plan.
func thirstRow(t testing.TB, r checked) float64 {
	t.Helper()
	minutes := r.number(t, "minutes")
	s := Session{Minutes: [Lengths]float64{minutes, minutes, minutes}}
	s.Heat = map[string]Heat{"hot": Hot, "mild": Temperate}[r.text("heat")]
	s.Effort = map[string]fuel.Effort{"hard": fuel.Hard, "moderate": fuel.Moderate}[r.text("effort")]
	if s.Heat == Heat(0) && r.text("heat") != "mild" || s.Effort == fuel.EffortUnknown {
		t.Fatal("heat or effort unknown")
	}
	var a Aim
	if g := r.or(t, "carbohydrate", 0); g > 0 {
		a.Carbohydrate = Within(g, g)
	}
	rate := r.or(t, "rate", 1)
	return one(ThirstWillDo(Basis{SweatRate: Between(rate, rate, rate)}, s, a))
}

// dayRow is where an event of the day stands, in hours from the session.
func dayRow(t testing.TB, r checked) float64 {
	t.Helper()
	s := Session{Minutes: [Lengths]float64{90, 90, 90}, NextHours: r.or(t, "next", 0)}
	p := newPlanner(t, Basis{SweatRate: Between(1, 1, 1), Body: Body{MassKg: 70}}, s, NewMenu(), Aim{})
	start := time.Date(2026, 6, 1, 12, 0, 0, 0, time.UTC)
	d, err := PlanDay([]DaySession{{Start: start, Planner: p, Length: Expected}})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range d.Events {
		switch {
		case e.Code != r.text("of"):
		case r.check == "hours before":
			return start.Sub(e.From).Hours()
		case r.check == "hours until":
			return start.Sub(e.Until).Hours()
		default:
			return e.Until.Sub(e.From).Hours()
		}
	}
	t.Fatalf("nothing of the day is %q", r.text("of"))
	return 0
}

// chanceRow counts chances or their seconds.
func chanceRow(t testing.TB, r checked) float64 {
	t.Helper()
	var list []Chance
	if r.text("sets") != "" {
		var sets []TennisSet
		for _, s := range strings.Split(r.text("sets"), ",") {
			var set TennisSet
			if _, err := fmt.Sscanf(s, "%d-%d", &set.Won, &set.Lost); err != nil {
				t.Fatal(err)
			}
			sets = append(sets, set)
		}
		var err error
		if list, err = TennisChances(sets, 100); err != nil {
			t.Fatal(err)
		}
	}
	heat := Temperate
	if r.text("heat") == "hot" {
		heat = Hot
	}
	for _, s := range sports(t) {
		if session := r.text("session"); s.Code == r.text("sport") && (session == "" || s.Session == session) {
			list = append(list, s.Chances(100, heat)...)
		}
	}
	seconds := 0.0
	for _, c := range list {
		seconds += c.Seconds
		if r.check == "seconds of" && c.Code == r.text("chance") {
			return c.Seconds
		}
	}
	switch r.check {
	case "chances", "tennis chances":
		return float64(len(list))
	case "tennis seconds":
		return seconds
	}
	t.Fatalf("case %q", r.check)
	return 0
}

func TestPublishedCarbohydrateRate(t *testing.T) {
	walk(t, "carbohydrate_rate", func(t testing.TB, r checked) any {
		switch r.check {
		case "rate":
			return hourOf(t, r.number(t, "every"), Item{InUse: true, Step: 1, Unit: Unit{CarbohydrateG: r.number(t, "grams")}}, 1)
		case "drink rate":
			perML := Unit{FluidL: 0.001, CarbohydrateG: r.number(t, "strength") / 100}
			return hourOf(t, r.number(t, "every"), Item{InUse: true, Step: 1, Unit: perML}, r.number(t, "ml"))
		case "hold":
			c, rate := r.number(t, "concentration"), r.number(t, "rate")
			b := Basis{SweatRate: Between(rate, rate, rate), Sodium: Between(c, c, c), Body: Body{MassKg: 70}}
			p := newPlanner(t, b, Session{Minutes: [Lengths]float64{60, 60, 60}}, NewMenu(), Aim{})
			return p.Evaluate(Expected, Mix{Water: 1000 * rate * r.number(t, "share")}).Sodium.HoldMgH.Value
		case "drunk mmol":
			p := courtPlanner(t)
			return p.Evaluate(Expected, Mix{Water: r.number(t, "ml"), Salt: r.number(t, "salt")}).Sodium.DrunkMmolL
		}
		t.Fatalf("case %q", r.check)
		return 0
	})
}

// hourOf takes an amount of an item every so many minutes for an hour, and
// returns the carbohydrate rate.
func hourOf(t testing.TB, every float64, item Item, amount float64) float64 {
	t.Helper()
	m := NewMenu()
	m[Food1] = item
	b := Basis{SweatRate: Between(1, 1, 1), Body: Body{MassKg: 70}}
	p := newPlanner(t, b, Session{Minutes: [Lengths]float64{60, 60, 60}}, m, Aim{})
	var chances []Chance
	for at := every; at <= 60; at += every {
		chances = append(chances, Chance{Minute: at, CanEat: true})
	}
	return p.Evaluate(Expected, Mix{Food1: amount * float64(len(chances))}).Carbohydrate.TotalGH
}

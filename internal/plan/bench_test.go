package plan

import "testing"

// BenchmarkEvaluate is one slider move: prediction, range and guards.
func BenchmarkEvaluate(b *testing.B) {
	p, mix := courtPlanner(b), Mix{Water: 600, Drink1: 600, Food1: 1, Food3: 1, Salt: 0.5}
	b.ReportAllocs()
	for b.Loop() {
		_ = p.Evaluate(Expected, mix)
	}
}

// BenchmarkMove is a whole move on the screen: evaluation, schedule over nine
// chances, the deficit over time, and every slider's band.
func BenchmarkMove(b *testing.B) {
	p, mix := courtPlanner(b), Mix{Water: 600, Drink1: 600, Food1: 1, Food3: 1, Salt: 0.5}
	chances := courtChances(b, 105)
	var s Schedule
	points := make([]Point, 0, 64)
	b.ReportAllocs()
	for b.Loop() {
		_ = p.Evaluate(Expected, mix)
		p.Schedule(Expected, mix, chances, 30, &s)
		points = p.Course(Expected, &s, points[:0])
		_ = p.Bands(Expected, mix)
	}
}

// BenchmarkSuggest is the largest mix there can be, all slots free.
func BenchmarkSuggest(b *testing.B) {
	p := courtPlanner(b)
	habit := courtHabit()
	b.ReportAllocs()
	for b.Loop() {
		if s := p.Suggest(Search{Length: Expected, Habit: habit}); !s.Proved {
			b.Fatal("not proved")
		}
	}
}

// BenchmarkSuggestTight asks for narrow ranges of everything.
func BenchmarkSuggestTight(b *testing.B) {
	base := courtPlanner(b)
	aim := base.Aim()
	aim.Deficit, aim.Carbohydrate, aim.Sodium = Within(1.9, 2.0), Within(44, 46), Within(500, 520)
	p := newPlanner(b, base.Basis(), base.Session(), base.Menu(), aim)
	habit := Mix{Water: 430, Drink1: 215, Drink2: 90}
	b.ReportAllocs()
	for b.Loop() {
		if s := p.Suggest(Search{Length: Expected, Habit: habit}); !s.Proved {
			b.Fatal("not proved")
		}
	}
}

// BenchmarkSuggestClash asks for what cannot be met, so that the clashing set
// and the nearest for each condition are looked for too.
func BenchmarkSuggestClash(b *testing.B) {
	base := courtPlanner(b)
	aim := base.Aim()
	aim.Deficit, aim.Carbohydrate, aim.Sodium, aim.Drinking = Within(0, 1), Within(80, 90), Within(900, 1200), Within(0, 0.6)
	p := newPlanner(b, base.Basis(), base.Session(), base.Menu(), aim)
	b.ReportAllocs()
	for b.Loop() {
		if s := p.Suggest(Search{Length: Expected, Habit: courtHabit()}); s.Met || !s.Proved {
			b.Fatal("met, or not proved")
		}
	}
}

// BenchmarkBaseline is what a spreadsheet would do for a move: fluid,
// carbohydrate and sodium summed over the slots and divided by the hours, with
// neither range nor guard.
func BenchmarkBaseline(b *testing.B) {
	p, mix := courtPlanner(b), Mix{Water: 600, Drink1: 600, Food1: 1, Food3: 1, Salt: 0.5}
	var fluid, carbohydrate, sodium float64
	b.ReportAllocs()
	for b.Loop() {
		fluid, carbohydrate, sodium = 0, 0, 0
		for s, x := range mix {
			u := &p.menu[s].Unit
			fluid += x * u.fluidL()
			carbohydrate += x * u.CarbohydrateG
			sodium += x * u.SodiumMg
		}
		h := p.hours(Expected)
		fluid, carbohydrate, sodium = fluid/h, carbohydrate/h, sodium/h
	}
	if fluid <= 0 || carbohydrate <= 0 || sodium <= 0 {
		b.Fatal("nothing was summed")
	}
}

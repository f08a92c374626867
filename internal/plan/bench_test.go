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

// BenchmarkPropose is a whole proposal: both ways with their steps.
func BenchmarkPropose(b *testing.B) {
	p := courtPlanner(b).At(courtChances(b, 105)).From(courtHabit(), Background{})
	b.ReportAllocs()
	for b.Loop() {
		if out := p.Propose(DefaultStepRules()); !out.Picked().Exists {
			b.Fatal("nothing proposed")
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

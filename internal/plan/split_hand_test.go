package plan

import "testing"

// 0.3 of the loss in the first 0.4 of the time: half-way there half of it, and after it
// the rest evenly. Nothing weighed within, or at an end, is an even rate.
func TestSplitByHand(t *testing.T) {
	s := Split{At: 0.4, Share: 0.3}
	for time, want := range map[float64]float64{0: 0, 0.2: 0.15, 0.4: 0.3, 0.7: 0.65, 1: 1} {
		near(t, "share", s.by(time), want)
	}
	for _, even := range []Split{{}, {At: 1, Share: 0.6}, {At: -0.5, Share: 0.6}, {At: 1.05, Share: 0.6}} {
		near(t, "even", even.by(0.25), 0.25)
		near(t, "even", even.by(1), 1)
	}
	near(t, "late", Split{At: 0.95, Share: 0.5}.by(0.475), 0.25)
	near(t, "early", Split{At: 0.02, Share: 0.5}.by(0.51), 0.75)
}

// The line by hand: 1.2 L/h for an hour with 0.1 L/h of breath, 200 g at a break from
// 30 to 32 min and 100 g at a last one of five minutes that the end cuts off.
func TestCourseByHand(t *testing.T) {
	b := Basis{SweatRate: Between(1.2, 1, 1.5), RespiratoryLH: 0.07, ExchangeLH: 0.03, Body: Body{MassKg: 50}}
	p := newPlanner(t, b, Session{Minutes: [Lengths]float64{60, 60, 60}}, fullMenu(t), Aim{})
	p.menu[Food1].Unit.MassKg = 0.05
	s := Schedule{Takes: []Take{
		{Chance: Chance{Minute: 30, Seconds: 120}, ByDrink: [Drinks]int{Water: 150}, Food: [Foods]float64{1}},
		{Chance: Chance{Minute: 58, Seconds: 300}, ByDrink: [Drinks]int{Water: 100}},
	}}
	points := p.Course(Expected, &s, nil)
	want := []struct{ minute, litres, low, high float64 }{
		{0, 0, 0, 0}, {30, 0.65, 0.55, 0.8}, {32, 1.3*32/60 - 0.2, 1.1*32/60 - 0.2, 1.6*32/60 - 0.2},
		{58, 1.3*58/60 - 0.2, 1.1*58/60 - 0.2, 1.6*58/60 - 0.2}, {60, 1, 0.8, 1.3}, {60, 1, 0.8, 1.3},
	}
	if len(points) != len(want) {
		t.Fatalf("%d points: %+v", len(points), points)
	}
	for i, w := range want {
		near(t, "minute", points[i].Minute, w.minute)
		near(t, "litres", points[i].DeficitL.Value, w.litres)
		near(t, "low", points[i].DeficitL.Low, w.low)
		near(t, "high", points[i].DeficitL.High, w.high)
		near(t, "per cent", points[i].Deficit.Value, 2*w.litres)
	}
	// Two breaks within each other's time: the first ends where the second begins.
	s.Takes[1].Chance.Minute = 31
	points = p.Course(Expected, &s, nil)
	near(t, "first ends", points[2].Minute, 31)
	// The bend lies within a break: intake goes on rising evenly.
	p.basis.Split = Split{At: 31.0 / 60, Share: 0.5}
	s.Takes = s.Takes[:1]
	points = p.Course(Expected, &s, nil)
	near(t, "bend", points[2].Minute, 31)
	near(t, "half of it taken", points[2].DeficitL.Value, 0.6+0.1*31/60-0.1)
	s.Takes = append(s.Takes, Take{Chance: Chance{Minute: 40, Seconds: 240}, ByDrink: [Drinks]int{Water: 120}})
	p.basis.Split = Split{At: 41.0 / 60, Share: 0.5}
	again := p.Course(Expected, &s, nil)
	near(t, "bend in a second break", again[4].Minute, 41)
	near(t, "all of the first and a quarter of the second", again[4].DeficitL.Value, 0.6+0.1*41/60-0.2-0.03)
	s.Takes = s.Takes[:1]
	p.basis.Split = Split{At: 0.5, Share: 0.5}
	if n := len(p.Course(Expected, &s, nil)); n != len(points)-1 { // at 30 min, where a point is
		t.Errorf("%d points with a bend where one is", n)
	}
}

// A menu of an earlier version has no masses: its fluid then counts on the scale.
func TestFluidCountsWhereNoMassIsKept(t *testing.T) {
	p := courtPlanner(t)
	p.menu[Food1].Unit.MassKg, p.menu[Food1].Unit.FoodWaterL = 0.06, 0.02
	near(t, "mass", p.FoodKg(Mix{Food1: 2, Water: 500}), 0.12)
	near(t, "nothing below nothing", p.FoodKg(Mix{Food1: -2}), 0)
	p.menu[Food1].Unit.MassKg = 0
	near(t, "water", p.FoodKg(Mix{Food1: 2}), 0.04)
	p.menu[Food2].Unit.MassKg = 0.1
	p.menu[Food4].Unit.MassKg = 0.3
	near(t, "all foods", p.FoodKg(Mix{Food1: 1, Food2: 1, Food4: 1}), 0.42)
	p.menu[Food4].InUse = false
	near(t, "not on the menu", p.FoodKg(Mix{Food4: 1}), 0)
}

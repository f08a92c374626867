package proposal

import (
	"math"
	"testing"
)

// TestRests: three slots that may change, the last of the order first. What they come to with
// so many changed is the sum of so many of the largest steps from the base, part by part.
func TestRests(t *testing.T) {
	menu := things()
	c := runner()
	c.Sources = [Slots]Source{menu["water"], menu["sport6"], menu["gel"]}
	p := program{c: &c, base: Mix{600, 200, 1}, strength: 0.08, gelWater: 200}
	p.values[0], p.values[1], p.values[2] = []float64{600, 0, 700}, []float64{200, 0, 500}, []float64{1, 2, 3}
	order := p.order()
	if len(order) != 3 || order[0] != 2 || order[1] != 1 || order[2] != 0 {
		t.Fatalf("order %v", order)
	}
	list := p.rests(order)
	all := &list[0]
	for _, x := range []struct {
		what    string
		is      float64
		want    float64
		changed int
	}{
		{"drunk as it is", all.by[0].most[partDrunk], 800, 0},
		{"drunk at most by one", all.by[1].most[partDrunk], 1100, 1},
		{"drunk at most by two", all.by[2].most[partDrunk], 1200, 2},
		{"drunk at most by three", all.by[3].most[partDrunk], 1200, 3},
		{"drunk at least by one", all.by[1].least[partDrunk], 200, 1},
		{"drunk at least by two", all.by[2].least[partDrunk], 0, 2},
		{"carbohydrate at most by one", all.by[1].most[partFuel], 12 + 26 + 52, 1},
		{"carbohydrate at most by two", all.by[2].most[partFuel], 30 + 26 + 52, 2},
		{"food at most by one", all.by[1].most[partInFood], 78, 1},
		{"food at least", all.by[4].least[partInFood], 26, 4},
		{"too strong at least by one", all.by[1].least[partTooStrong], 12 - 64 - 8, 1},     // water comes by 100 mL
		{"too strong at least by two", all.by[2].least[partTooStrong], 12 - 64 - 8 - 6, 2}, // and 300 of the drink
		{"too dry at least by one", all.by[1].least[partTooDry], 200 - 600 - 200*menuPart(menu["sport6"]) - 300*menuPart(menu["sport6"]), 1},
		{"the richest gel", all.gel, 26, 0}, {"a portion", all.portion, 0, 0}, {"the richest drink", all.drink, 0.06, 0},
		{"the saltiest drink", all.salty, 0.46, 0}, {"sodium of gels", all.salted, 150, 0},
		{"one thing taken before", all.forFuel.begin, 2, 0}, {"a gram by gels", all.forFuel.each, 3.0 / 26, 0}, {"and in full", all.forFuel.inFull, 3.0 / 26, 0},
		{"a gram by drinks", list[1].forFuel.each, 1.1 / 50 / 0.06, 0}, {"in full by drinks", list[1].forFuel.inFull, 2.1 / 50 / 0.06, 0},
		{"a mg of sodium by drinks", list[1].forSodium.each, 1.1 / 50 / 0.46, 0}, {"in full by drinks", list[1].forSodium.inFull, 2.1 / 50 / 0.46, 0},
		{"no gels after them", list[1].gel, 0, 0}, {"water has none", list[2].drink, 0, 0},
		{"water alone by three", list[2].by[3].most[partDrunk], 700, 3},
	} {
		if math.Abs(x.is-x.want) > 1e-9 {
			t.Errorf("%s: %g, want %g", x.what, x.is, x.want)
		}
	}
	if p.base[1] = 0; p.rests(order)[1].forFuel.begin != 4 {
		t.Error("a thing that is new costs 4")
	}
	if list[2].forFuel != noWay() || list[3].forSodium != noWay() || !math.IsInf(noWay().of(1, 0), 1) {
		t.Error("water brings no carbohydrate at any cost")
	}
}

// menuPart is what a mL of a source counts toward the water of gels.
func menuPart(src Source) float64 {
	var s Sum
	s.add(&src, 1)
	return s.GelWaterML
}

// TestPayForWhatIsMissing: 100 g are missing of what the best has. Gels are not there; by
// drinks of 6 % they cost 22 for the carbohydrate and 2 for the thing, and where all is drunk
// that may be, 20 more for the 1,000 mL of water they take the place of.
func TestPayForWhatIsMissing(t *testing.T) {
	s, sum := begun()
	s.p.targetML, s.p.leastML = 650, 0
	s.p.fuelGH = 135 // with 5 more missing in the best: 130 g, 30 are chosen
	r := &s.rest[1]
	r.forSodium = dues{}
	r.forFuel = dues{begin: 2, each: 0.022 / 0.06, inFull: 0.042 / 0.06}
	for _, x := range []struct{ most, want float64 }{
		{5000, 2 + 100*0.022/0.06},
		{650, 2 + 100*0.042/0.06},
		{1150, 2 + 100*0.042/0.06 - 10}, // room for 500 mL
	} {
		s.p.mostML = x.most
		if got := s.toPay(sum, r, &r.by[2]); math.Abs(got-x.want) > 1e-9 {
			t.Errorf("at most %g mL: %g, want %g", x.most, got, x.want)
		}
	}
	// 200 of 500 mg are there, and the best misses 50 more than it has to: 250 by salt of 4 for a
	// gram with 400 mg.
	s.p.mostML, s.p.fuelGH, s.best.misses.Sodium = 5000, 35, 1
	if r.forSodium = (dues{begin: 2, each: 0.01, inFull: 0.01}); math.Abs(s.toPay(sum, r, &r.by[2])-4.5) > 1e-9 {
		t.Errorf("for sodium: %g", s.toPay(sum, r, &r.by[2]))
	}
	s.best.misses.Sodium = 6
	if s.toPay(sum, r, &r.by[2]) != 0 {
		t.Error("nothing is missing, and it costs")
	}
}

// TestWindow: where a sum that begins at 100 and rises or falls by 2 ends within limits.
func TestWindow(t *testing.T) {
	for _, x := range []struct {
		what         string
		narrow       func(w *window)
		in, inside   float64
		out, outside float64
	}{
		{"rises below 200", func(w *window) { w.below(100, 2, 200) }, 50, -1e9, 51, 50.001},
		{"falls below 50", func(w *window) { w.below(100, -2, 50) }, 25, 1e9, 24, 24.999},
		{"rises above 200", func(w *window) { w.above(100, 2, 200) }, 50, 1e9, 49, 49.999},
		{"falls above 50", func(w *window) { w.above(100, -2, 50) }, 25, -1e9, 26, 25.001},
	} {
		w := anywhere()
		x.narrow(&w)
		if w.leavesOut(x.in) || w.leavesOut(x.inside) || !w.leavesOut(x.out) || !w.leavesOut(x.outside) {
			t.Errorf("%s: %+v", x.what, w)
		}
	}
	stays := anywhere()
	if stays.below(100, 0, 100); stays.leavesOut(0) || stays.leavesOut(1e9) {
		t.Error("a sum at its limit that stays leaves out nothing")
	}
	if stays.below(100, 0, 99); !stays.leavesOut(0) || !stays.leavesOut(1e9) {
		t.Error("a sum past its limit that stays leaves out all")
	}
}

// TestAskedSodium: by the litre 405 mg of what is drunk, from 300 mL on, or what is set by
// hand, less 50 mg/h for each that the best misses.
func TestAskedSodium(t *testing.T) {
	s, _ := begun()
	for _, x := range []struct {
		sodium          bool
		mg, drunk, want float64
		missed          int
	}{
		{true, 500, 0, 500, 0}, {true, 500, 900, 500, 0}, {true, 500, 900, 400, 2}, {false, 500, 900, 0, 0},
		{true, 0, 1000, 405, 0}, {true, 0, 1000, 355, 1}, {true, 0, 301, 0.405 * 301, 0}, {true, 0, 300, 0, 0},
	} {
		s.p.sodium, s.p.sodiumMg, s.best.misses.Sodium = x.sodium, x.mg, x.missed
		if got := s.askedSodium(x.drunk); math.Abs(got-x.want) > 1e-9 {
			t.Errorf("%+v: %g", x, got)
		}
	}
}

// TestWindowOfWhatFollows: drinks of 6 %, 40 mg in 100 mL, of which 400 mL are chosen with 30 g
// and 200 mg; what follows adds 300 mL, 118 g and 150 mg at most.
func TestWindowOfWhatFollows(t *testing.T) {
	for _, x := range []struct {
		what      string
		change    func(s *search)
		low, high float64
	}{
		{"at most two litres", func(*search) {}, -700, 1600},
		{"at least a litre", func(s *search) { s.p.leastML = 1000 }, 300, 1600},
		{"with what is eaten", func(s *search) { s.p.intakeML = 1000 }, -700, 540},
		{"carbohydrate", func(s *search) { s.p.mostG = 60 }, -700, 500},
		{"least carbohydrate", func(s *search) { s.p.leastG = 160 }, 200, 1600},
		{"sodium", func(s *search) { s.p.mostSodiumMg = 400 }, -700, 500},
		{"no worse in fluid", func(s *search) { s.best = found{ok: true, misses: Misses{2, 9, 9}} }, 200, 1600},
		{"no worse in carbohydrate where fluid can be no better", func(s *search) {
			s.best, s.floor, s.p.fuelGH = found{ok: true, misses: Misses{2, 0, 9}}, Misses{2, 9, 0}, 171
		}, 300, 1600},
		{"no worse in sodium where nothing else can be better", func(s *search) {
			s.best, s.floor, s.p.sodiumMg = found{ok: true, misses: Misses{2, 0, 2}}, Misses{2, 0, 0}, 610
		}, 400, 1600},
		{"sodium does not count where carbohydrate can be better", func(s *search) {
			s.best, s.floor, s.p.sodiumMg = found{ok: true, misses: Misses{2, 1, 2}}, Misses{2, 0, 0}, 610
		}, 200, 1600},
	} {
		s, sum := begun()
		s.p.fuelGH = 0
		s.p.c.Sources = [Slots]Source{{Kind: Drink, CarbohydrateG: 0.06, SodiumMg: 0.4}}
		s.order = []int{0}
		x.change(s)
		// What is at an edge is left to be looked at.
		w := s.window(sum, 0, 2)
		if math.Abs(w.low-x.low) > 0.02 || math.Abs(w.high-x.high) > 0.02 {
			t.Errorf("%s: %+v", x.what, w)
		}
	}
}

package plan

import (
	"math"
	"testing"
)

// What a chance is filled with at each number, by hand: 60 s are 117.6 mL in comfort
// and 168 at most, 300 s 350 and 500.
func TestFillByHand(t *testing.T) {
	short, long := Chance{Seconds: 60}, Chance{Seconds: 300}
	almost, maybe, bottle := Chance{Seconds: 299}, Chance{Seconds: 300, Certainty: Maybe}, Chance{}
	for _, c := range []struct {
		name  string
		of    Chance
		fills map[float64]float64
	}{
		{"a minute", short, map[float64]float64{0: 0, 0.5: 58.8, 1: 117.6, 2: 117.6, 3: 117.6, 3.5: 142.8, 4: 168, 5: 168}},
		{"five minutes", long, map[float64]float64{0.5: 175, 1: 350, 2: 350, 2.5: 425, 3: 500, 4: 500}},
		{"a little less", almost, map[float64]float64{1: 350, 3: 350, 4: 500}},
		{"not certain", maybe, map[float64]float64{1: 0, 1.5: 175, 2: 350, 3: 350, 4: 500}},
		{"a bottle", bottle, map[float64]float64{1: 150, 3: 150, 4: 250}},
	} {
		for fill, want := range c.fills {
			if got := c.of.FillML(fill); math.Abs(got-want) > 1e-9 {
				t.Errorf("%s at %g: %g mL, want %g", c.name, fill, got, want)
			}
		}
	}
}

// A station is as short as 8 s; a second more is a break, and taken without hurry.
func TestComfort(t *testing.T) {
	for seconds, want := range map[float64]float64{0: 150, 5: 64, 8: 64, 8.5: 44.8, 60: 117.6} {
		if got := (Chance{Seconds: seconds}).ComfortableML(); math.Abs(got-want) > 1e-9 {
			t.Errorf("%g s: %g mL, want %g", seconds, got, want)
		}
	}
	if c := (Chance{Code: NoDrinking, Seconds: 900}); c.ComfortableML() != 0 || c.MostML() != 0 {
		t.Errorf("where one may not drink: %g and %g mL", c.ComfortableML(), c.MostML())
	}
}

// What was set by hand is wanted at any fill, but no more than the chance carries and
// no less than nothing.
func TestFixedIsWanted(t *testing.T) {
	for ml, want := range map[float64]float64{-50: 0, 0: 0, 100: 100, 168: 168, 400: 168} {
		c := Chance{Seconds: 60, Fixed: Fixed{On: true, ML: ml}}
		if low, high := c.wantML(0), c.wantML(4); math.Abs(low-want) > 1e-9 || math.Abs(high-want) > 1e-9 {
			t.Errorf("%g mL set: %g and %g, want %g", ml, low, high, want)
		}
	}
	if got := (Chance{Seconds: 60}).wantML(1); math.Abs(got-117.6) > 1e-9 {
		t.Errorf("nothing set: %g mL", got)
	}
}

// The fill at which a chance has so much, by hand.
func TestFillFor(t *testing.T) {
	for _, c := range []struct {
		of       Chance
		ml, want float64
	}{
		{Chance{Seconds: 60}, 58.8, 0.5}, {Chance{Seconds: 60}, 117.6, 1}, {Chance{Seconds: 60}, 142.8, 3.5}, {Chance{Seconds: 60}, 168, 4},
		{Chance{Seconds: 300}, 425, 2.5}, {Chance{Seconds: 300}, 500, 3}, {Chance{Seconds: 300, Certainty: Maybe}, 175, 1.5},
		{Chance{Seconds: 300, Certainty: Maybe}, 425, 3.5}, {Chance{}, 200, 3.5}, {Chance{Seconds: 60}, 169, math.Inf(1)},
	} {
		if got := c.of.fillFor(c.ml); got != c.want && !(math.Abs(got-c.want) < 1e-9) {
			t.Errorf("%+v, %g mL: %g, want %g", c.of, c.ml, got, c.want)
		}
	}
}

// What is counted on: 1.2 L/h at the low end are 20 mL a minute, so that after 6 min
// 120 of 168 mL can be drunk, whatever the middle of the loss is. A chance that may
// not happen is counted for half of comfort, and in full only for the very most.
func TestCarriesByHand(t *testing.T) {
	p := courtPlanner(t)
	p.basis.SweatRate = Between(2, 1.2, 3)
	one := func(minute float64, c Certainty) []Chance {
		return []Chance{{Minute: minute, Seconds: 60, Certainty: c}}
	}
	for _, c := range []struct {
		name                string
		got, want           float64
		gotMost, wantAtMost float64
	}{
		{"early", p.CarriesML(Expected, one(6, Certain)), 120, p.carriesAtMostML(Expected, one(6, Certain)), 168},
		{"very early", p.CarriesML(Expected, one(3, Certain)), 60, p.carriesAtMostML(Expected, one(3, Certain)), 100},
		{"later", p.CarriesML(Expected, one(60, Certain)), 168, p.carriesAtMostML(Expected, one(60, Certain)), 168},
		{"may not happen", p.CarriesML(Expected, one(60, Maybe)), 58.8, p.carriesAtMostML(Expected, one(60, Maybe)), 168},
		{"after the end", p.CarriesML(Expected, one(106, Certain)), 0, p.carriesAtMostML(Expected, one(106, Certain)), 0},
	} {
		if math.Abs(c.got-c.want) > 1e-6 || math.Abs(c.gotMost-c.wantAtMost) > 1e-6 {
			t.Errorf("%s: %g, at most %g mL; want %g and %g", c.name, c.got, c.gotMost, c.want, c.wantAtMost)
		}
	}
	p.session.Comfortable = true
	if got := p.carriesAtMostML(Expected, one(60, Certain)); math.Abs(got-168) > 1e-6 {
		t.Errorf("at the very most, in a session filled comfortably: %g", got)
	}
	at := p.At([]Chance{{Minute: 60, Seconds: 60}, {Minute: 130, Seconds: 60}})
	for l, want := range [Lengths]float64{0.117, 0.117, 0.235} { // whole mL of 117.6 and 235.2
		if got := at.carried[l]; !got.On || math.Abs(got.High-want) > 1e-9 || got.Low != 0 {
			t.Errorf("length %d: %+v, want %g L", l, got, want)
		}
	}
	if none := p.At(nil).carried[Expected]; none.On {
		t.Errorf("without a chance: %+v", none)
	}
}

// Stomach and loss by hand: 20 mL are lost a minute, 18 leave the stomach. Of 500 mL
// wanted at 30, 35 and 60 min the second may bring 90, what left since, and the third 450.
func TestStomachByHand(t *testing.T) {
	g := gut{lossPerMin: 20, emptiesPerMin: 18}
	takes := []Take{{Chance: Chance{Minute: 30}}, {Chance: Chance{Minute: 35}}, {Chance: Chance{Minute: 60}}}
	sum := g.run(takes, func(Chance) float64 { return 500 })
	for i, want := range []float64{500, 90, 450} {
		if math.Abs(takes[i].even-want) > 1e-9 {
			t.Errorf("chance %d: %g mL, want %g", i, takes[i].even, want)
		}
	}
	if math.Abs(sum-1040) > 1e-9 {
		t.Errorf("%g mL in all", sum)
	}
	takes = []Take{{Chance: Chance{Minute: 10}}, {Chance: Chance{Minute: 100}}}
	if g.run(takes, func(Chance) float64 { return 500 }); takes[0].even != 200 || takes[1].even != 500 {
		t.Errorf("%g and %g mL where 200 were lost, and the stomach was empty again", takes[0].even, takes[1].even)
	}
	b := courtBasis()
	b.SweatRate = Between(1.2, 1, 1.4)
	s := courtSession()
	if got := newPlanner(t, b, s, NewMenu(), Aim{}).gut(); math.Abs(got.lossPerMin-20) > 1e-9 || got.emptiesPerMin != 18 {
		t.Errorf("%+v", got)
	}
	s.Running = true
	if got := newPlanner(t, b, s, NewMenu(), Aim{}).gut(); got.emptiesPerMin != 12 {
		t.Errorf("running: %+v", got)
	}
}

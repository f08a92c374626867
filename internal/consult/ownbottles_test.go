package consult

import (
	"math"
	"testing"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// The heights of the lines, by hand: (600-50) mL over 170-22 mm is 3.716 mL a mm.
func TestOwnBottleHeights(t *testing.T) {
	blue := OwnBottle{Name: "Blue", Full: 600, FullMM: 170, Low: 50, LowMM: 22}
	green := OwnBottle{Name: "Green", Full: 500, FullMM: 158, Low: 50, LowMM: 24}
	for _, c := range []struct {
		b    OwnBottle
		v    quantity.Millilitres
		want float64
	}{{blue, 600, 170}, {blue, 450, 129.6}, {blue, 300, 89.3}, {blue, 150, 48.9}, {blue, 75, 28.7}, {blue, 50, 22}, {green, 200, 68.7}} {
		if got := c.b.Height(c.v); math.Abs(got-c.want) > 0.05 {
			t.Errorf("%s, %g mL: %.2f mm, want %g", c.b.Name, float64(c.v), got, c.want)
		}
	}
	for _, c := range []struct {
		b    OwnBottle
		want float64
	}{{blue, 69}, {green, 65}} {
		if got := c.b.Width(); math.Abs(got-c.want) > 0.5 {
			t.Errorf("%s: %.1f mm wide, want %g", c.b.Name, got, c.want)
		}
	}
	plain := OwnBottle{Full: 500, FullMM: 150}
	if !plain.Lined() || !plain.About() || plain.Height(250) != 75 || plain.Doubtful() {
		t.Errorf("from one mark: lined %v, about %v, %g mm", plain.Lined(), plain.About(), plain.Height(250))
	}
	for name, b := range map[string]OwnBottle{
		"no height": {Full: 500}, "low above full": {Full: 500, FullMM: 150, Low: 600, LowMM: 20}, "low mark too high": {Full: 500, FullMM: 150, Low: 50, LowMM: 160},
		"low volume alone": {Full: 500, FullMM: 150, Low: 50},
	} {
		if b.Lined() {
			t.Errorf("%s: lines are drawn", name)
		}
	}
	for name, b := range map[string]OwnBottle{"a straw": {Full: 500, FullMM: 800}, "a bowl": {Full: 1000, FullMM: 50}} {
		if !b.Doubtful() {
			t.Errorf("%s is not questioned", name)
		}
	}
}

func TestOwnBottlesAreKept(t *testing.T) {
	var a record.Athlete
	list := []OwnBottle{{Name: "Blue\tone", Full: 600, FullMM: 170, Low: 50, LowMM: 22}, {Name: "", Full: 500}, {Name: "nothing"}}
	SetOwnBottles(&a, list)
	got := OwnBottles(a)
	if len(got) != 2 || got[0].Name != "Blue one" || got[0].Height(450) != list[0].Height(450) || got[1] != (OwnBottle{Full: 500}) {
		t.Errorf("%+v", got)
	}
	if a.Bottles = "x\tNaN\t1\n\t-5\nold\t500"; len(OwnBottles(a)) != 1 || OwnBottles(a)[0].Full != 500 {
		t.Errorf("%+v", OwnBottles(a))
	}
}

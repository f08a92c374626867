package handout

import (
	"image"
	"math"
	"testing"

	"ebbwell/internal/handout/paper"
)

// greyOf is how light a part of a picture is on a printer without colour, 0 to 255 by
// the weights of ITU-R BT.601, and how much it varies.
func greyOf(img *image.RGBA, at image.Rectangle) (mean, spread float64) {
	n, squares := 0.0, 0.0
	for y := at.Min.Y; y < at.Max.Y; y++ {
		for x := at.Min.X; x < at.Max.X; x++ {
			c := img.RGBAAt(x, y)
			grey := 0.299*float64(c.R) + 0.587*float64(c.G) + 0.114*float64(c.B)
			n, mean, squares = n+1, mean+grey, squares+grey*grey
		}
	}
	mean /= n
	return mean, math.Sqrt(max(0, squares/n-mean*mean))
}

// Without colour the parts of a bar differ in lightness or by hatching, and what is
// drunk now differs from what stays in a bottle.
func TestGreyPrintTellsTheParts(t *testing.T) {
	const scale, apart, hatched = 12.0, 40.0, 12.0
	a := match()
	a.Bars[0].Food = 0.2
	img, err := press(t).AthletePage(a).Picture(0, scale)
	if err != nil {
		t.Fatal(err)
	}
	type look struct{ mean, spread float64 }
	seen := map[paper.Ink]look{}
	for _, m := range press(t).AthletePage(a).Pages[0].Marks {
		b, ok := m.(paper.Box)
		if !ok || b.H < 2 || b.W < 3.5 || seen[b.Fill].mean > 0 {
			continue
		}
		// The lower right corner holds no text and none of the lines between.
		in := image.Rect(int((b.X+b.W/2)*scale), int((b.Y+b.H*0.72)*scale), int((b.X+b.W-0.5)*scale), int((b.Y+b.H-0.5)*scale))
		if b.Fill == paper.WaterPale || b.Fill == paper.DrinkPale {
			// What is drunk now is the top; what stays is drawn over the rest.
			in = image.Rect(int((b.X+0.8)*scale), int((b.Y+0.3)*scale), int((b.X+b.W-0.8)*scale), int((b.Y+1.2)*scale))
		}
		switch b.Fill {
		case paper.Water, paper.Drink, paper.Food, paper.LossPale, paper.WaterPale, paper.DrinkPale:
			if in.Dx() > 4 && in.Dy() > 4 {
				mean, spread := greyOf(img, in)
				seen[b.Fill] = look{mean, spread}
			}
		}
	}
	pairs := [][2]paper.Ink{
		{paper.Water, paper.Drink}, {paper.Water, paper.Food}, {paper.Drink, paper.Food}, {paper.Water, paper.LossPale},
		{paper.Drink, paper.LossPale}, {paper.Food, paper.LossPale}, {paper.Water, paper.WaterPale}, {paper.Drink, paper.DrinkPale},
	}
	for _, pair := range pairs {
		x, y := seen[pair[0]], seen[pair[1]]
		if x.mean == 0 || y.mean == 0 {
			t.Errorf("inks %d and %d: not both on the page: %v", pair[0], pair[1], seen)
			continue
		}
		if math.Abs(x.mean-y.mean) < apart && math.Abs(x.spread-y.spread) < hatched {
			t.Errorf("inks %d and %d look alike in grey: %.0f and %.0f, varying %.0f and %.0f", pair[0], pair[1], x.mean, y.mean, x.spread, y.spread)
		}
	}
}

// An estimate, a chance that may not happen and a warning are told by lines, which
// need no colour.
func TestGreyPrintTellsTheStates(t *testing.T) {
	count := func(a AthletePage) (dashed, hatches, bars int) {
		for _, m := range press(t).AthletePage(a).Pages[0].Marks {
			switch m := m.(type) {
			case paper.Line:
				if m.Dash > 0 {
					dashed++
				}
			case paper.Hatch:
				if m.Ink == paper.Grey {
					hatches++
				}
			case paper.Box:
				if m.Dash > 0 {
					dashed++
				}
				if m.Fill == paper.Black && m.W < 1 && m.H > 4 {
					bars++
				}
			}
		}
		return dashed, hatches, bars
	}
	plain := match()
	plain.During.Chances = plain.During.Chances[:4]
	d0, h0, b0 := count(plain)
	d1, _, _ := count(match())
	_, h2, b2 := count(estimate())
	if d1 <= d0 {
		t.Errorf("a chance that may not happen has %d dashed lines, one that does %d", d1, d0)
	}
	if h2 <= h0 || b2 <= b0 {
		t.Errorf("an estimate with a caution: %d hatched and %d bars, without %d and %d", h2, b2, h0, b0)
	}
}

package chart

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

// Of many tests those that another one lies on are not drawn; of few all are, and none is
// left out that stands by itself.
func TestManyPointsAreDrawnOnce(t *testing.T) {
	test.NewTempApp(t)
	drawn := func(points []HeatPoint) int {
		c := NewHeatScatter()
		c.Set(HeatData{Points: points, Heats: []Tick{{At: 0}, {At: 100}}, Rates: []Tick{{At: 0}, {At: 2}}})
		c.Resize(fyne.NewSize(400, 300))
		c.redraw()
		return len(c.seen)
	}
	same := func(n int) []HeatPoint {
		list := make([]HeatPoint, n)
		for i := range list {
			list[i] = HeatPoint{Heat: 50, Rate: 1, Range: Span{Low: 0.9, High: 1.1}}
		}
		return list
	}
	if n := drawn(same(manyPoints)); n != manyPoints {
		t.Errorf("of %d points %d are drawn", manyPoints, n)
	}
	if n := drawn(same(5 * manyPoints)); n != 1 {
		t.Errorf("%d points at one place are drawn", n)
	}
	several := same(2 * manyPoints)
	several[0].Heat, several[1].Rate, several[2].Range.High, several[3].As, several[3].Ringed = 60, 1.5, 1.5, 0.5, true
	if n := drawn(several); n != 5 {
		t.Errorf("%d of five that differ are drawn", n)
	}
}

// However many tests there are, a name stands whole or in short, never cut; the first ones
// are named.
func TestNamesAreNeverCut(t *testing.T) {
	test.NewTempApp(t)
	c, known, named := NewHeatScatter(), map[string]bool{"": true}, 0
	d := HeatData{Heats: []Tick{{At: 0}, {At: 100}}, Rates: []Tick{{At: 0, Text: "0.0"}, {At: 2, Text: "2.0"}}}
	for i := range 40 {
		rate := fmt.Sprintf("%.2f", 0.8+float64(i%7)/10)
		d.Points = append(d.Points, HeatPoint{Heat: float64(i) * 2.5, Rate: 0.8 + float64(i%7)/10, Name: rate + " · 14 May 2025, 31 °C", Short: rate})
		known[d.Points[i].Name], known[rate] = true, true
	}
	known["0.0"], known["2.0"] = true, true
	c.Set(d)
	for _, width := range []float32{300, 420, 900} {
		c.Resize(fyne.NewSize(width, 220))
		c.redraw()
		for _, o := range rendered(c) {
			text, ok := o.(*canvas.Text)
			if !ok {
				continue
			}
			if !known[text.Text] {
				t.Errorf("%g px wide: %q", width, text.Text)
			}
			if text.Text != "" {
				named++
			}
		}
	}
	if named < 3*12 {
		t.Errorf("only %d texts", named)
	}
}

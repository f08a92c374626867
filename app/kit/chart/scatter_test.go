package chart

import (
	"testing"

	"fyne.io/fyne/v2"
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

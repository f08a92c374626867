package chart

import (
	"testing"

	"fyne.io/fyne/v2"
)

// A column is dragged from where it is taken, and is another one only after it was
// let go; without a listener nothing moves.
func TestColumnIsDragged(t *testing.T) {
	c := NewBreakTimeline()
	c.Resize(fyne.NewSize(600, 240))
	c.Set(BreakData{Minutes: 90, Stops: []BreakStop{
		{Minute: 30, Parts: []Part{{Value: 100}}}, {Minute: 60, Parts: []Part{{Value: 200}}},
	}})
	drag := func(x, y, dx, dy float32) {
		c.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, y)}, Dragged: fyne.NewDelta(dx, dy)})
	}
	drag(c.columns.across.at(30), 80, 0, -10)
	stop, to, released := -1, 0.0, 0
	c.OnDragged = func(at int, x float64) { stop, to = at, x }
	c.OnReleased = func() { released++ }
	at := c.columns.across.at(30) + 3
	drag(at, c.columns.up.at(100)-10, 0, -10)
	if stop != 0 || to <= 100 || to >= 200 {
		t.Errorf("column %d dragged to %g", stop, to)
	}
	drag(c.columns.across.at(60), c.columns.up.at(0), 40, 20)
	if stop != 0 || to > 1e-3 {
		t.Errorf("down to the ground column %d is at %g", stop, to)
	}
	c.DragEnd()
	c.DragEnd()
	if released != 1 {
		t.Errorf("let go %d times", released)
	}
	drag(c.columns.across.at(60), c.columns.up.at(200), 0, 0)
	if stop != 1 || to < 199 || to > 201 {
		t.Errorf("column %d taken at %g", stop, to)
	}
}

package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// columnGrip is the column that is dragged, from what height, and how much a px is.
type columnGrip struct {
	on          bool
	stop        int
	from, perPx float64
	y           float32
}

var _ fyne.Draggable = (*BreakTimeline)(nil)

// Dragged moves the top of the column that the pointer was at when it began.
func (c *BreakTimeline) Dragged(e *fyne.DragEvent) {
	if c.OnDragged == nil || len(c.data.Stops) == 0 || c.up.start <= c.up.end {
		return
	}
	if !c.grip.on {
		x, y := e.Position.X-e.Dragged.DX, e.Position.Y-e.Dragged.DY
		at := c.nearest(x)
		c.grip = columnGrip{
			on: true, stop: at, from: drunk(c.data.Stops[at].Parts), y: y,
			perPx: (c.up.to - c.up.from) / float64(c.up.start-c.up.end),
		}
	}
	c.OnDragged(c.grip.stop, max(0, c.grip.from+float64(c.grip.y-e.Position.Y)*c.grip.perPx))
}

// drunk is the height of a column without the food on top of it.
func drunk(parts []Part) float64 {
	sum := 0.0
	for _, p := range parts {
		if p.Of != look.Food {
			sum += length(p.Value)
		}
	}
	return sum
}

// DragEnd lets the column go.
func (c *BreakTimeline) DragEnd() {
	if c.grip.on && c.OnReleased != nil {
		c.OnReleased()
	}
	c.grip = columnGrip{}
}

// nearest is the stop that stands nearest to a place.
func (c *BreakTimeline) nearest(x float32) int {
	best, least := 0, float32(-1)
	for i, s := range c.data.Stops {
		d := c.across.inside(s.Minute) - x
		if d = max(d, -d); least < 0 || d < least {
			best, least = i, d
		}
	}
	return best
}

package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// breakColumns are columns that can be dragged: the scales as drawn last, and the
// column in hand.
type breakColumns struct {
	across, up scale
	held       columnDrag
}

// columnDrag is the column that is dragged, from what height, and how much a px is.
type columnDrag struct {
	on          bool
	stop        int
	from, perPx float64
	y           float32
}

var (
	_ fyne.Draggable = (*BreakTimeline)(nil)
	_ fyne.Draggable = (*DeficitChart)(nil)
)

// Dragged moves the top of the column that the pointer was at when it began.
func (c *BreakTimeline) Dragged(e *fyne.DragEvent) { c.columns.drag(c.data.Stops, e, c.OnDragged) }

// DragEnd lets the column go.
func (c *BreakTimeline) DragEnd() { c.columns.release(c.OnReleased) }

// Dragged moves the top of the bottle that the pointer was at when it began.
func (c *DeficitChart) Dragged(e *fyne.DragEvent) { c.columns.drag(c.data.Stops, e, c.OnDragged) }

// DragEnd lets the bottle go.
func (c *DeficitChart) DragEnd() { c.columns.release(c.OnReleased) }

func (b *breakColumns) drag(stops []BreakStop, e *fyne.DragEvent, dragged func(stop int, to float64)) {
	if dragged == nil || len(stops) == 0 || b.up.start <= b.up.end {
		return
	}
	if !b.held.on {
		x, y := e.Position.X-e.Dragged.DX, e.Position.Y-e.Dragged.DY
		at := b.nearest(stops, x)
		b.held = columnDrag{
			on: true, stop: at, from: drunk(stops[at].Parts), y: y,
			perPx: (b.up.to - b.up.from) / float64(b.up.start-b.up.end),
		}
	}
	dragged(b.held.stop, max(0, b.held.from+float64(b.held.y-e.Position.Y)*b.held.perPx))
}

func (b *breakColumns) release(released func()) {
	if b.held.on && released != nil {
		released()
	}
	b.held = columnDrag{}
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

// nearest is the stop that stands nearest to a place.
func (b *breakColumns) nearest(stops []BreakStop, x float32) int {
	best, least := 0, float32(-1)
	for i, s := range stops {
		d := b.across.inside(s.Minute) - x
		if d = max(d, -d); least < 0 || d < least {
			best, least = i, d
		}
	}
	return best
}

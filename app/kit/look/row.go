package look

import (
	"math"

	"fyne.io/fyne/v2"
)

// row is how high the objects of one row stand about their common baseline.
type row struct {
	// above and below the baseline, of the objects that have one.
	above, below float32
	// plain is the greatest height of those that have none.
	plain float32
	based bool
}

func rowOf(objects []fyne.CanvasObject, widths []float32) row {
	var r row
	for i, o := range objects {
		h := HeightFor(o, widths[i])
		y, ok := BaselineOf(o)
		if !ok {
			r.plain = max(r.plain, h)
			continue
		}
		r.based = true
		r.above = max(r.above, y)
		r.below = max(r.below, h-y)
	}
	return r
}

func (r row) height() float32 { return max(r.above+r.below, r.plain) }

// baseline of the row, measured from its top at its least height.
func (r row) baseline() (float32, bool) {
	return (r.height()-r.above-r.below)/2 + r.above, r.based
}

// setRow places objects side by side on one baseline, centred in a height;
// those without a baseline are centred by themselves.
func setRow(objects []fyne.CanvasObject, widths []float32, gap, height float32) {
	r := rowOf(objects, widths)
	top := (height - r.above - r.below) / 2
	x := float32(0)
	for i, o := range objects {
		h := HeightFor(o, widths[i])
		y := (height - h) / 2
		if b, ok := BaselineOf(o); ok {
			y = top + r.above - b
		}
		o.Move(fyne.NewPos(x, round(y)))
		o.Resize(fyne.NewSize(widths[i], h))
		x += widths[i] + gap
	}
}

func round(x float32) float32 { return float32(math.Round(float64(x))) }

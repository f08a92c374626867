package chart

import (
	"fmt"
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

// at is the colour that is seen at a point of a drawing on a sheet.
func at(objects []fyne.CanvasObject, sheet color.Color, x, y float32) color.Color {
	seen := sheet
	for _, o := range objects {
		r, ok := o.(*canvas.Rectangle)
		if !ok || !o.Visible() || r.FillColor == nil {
			continue
		}
		p, s := r.Position(), r.Size()
		if _, _, _, alpha := r.FillColor.RGBA(); alpha > 0 && x >= p.X && x < p.X+s.Width && y >= p.Y && y < p.Y+s.Height {
			seen = r.FillColor
		}
	}
	return seen
}

// What is pale, an advice or what was not replaced, cannot be told from the sheet by its
// fill (WCAG 2.2, 1.4.11), so on each side something stands by it that can.
func TestPaleAreasHaveEdges(t *testing.T) {
	checked := 0
	for _, m := range []golden.Mode{golden.Light(), golden.Dark()} {
		golden.Use(t, m)
		k := newInks(look.PaletteNow())
		for name, cases := range all() {
			for _, c := range cases {
				w := c.build()
				w.Resize(fyne.NewSize(c.width, c.height))
				objects := test.WidgetRenderer(w).Objects()
				for i, o := range objects {
					r, ok := o.(*canvas.Rectangle)
					if !ok || r.FillColor != k.rest && r.FillColor != k.band || r.Size().Width < 3 || r.Size().Height < 3 {
						continue
					}
					checked++
					if side := bare(objects, r, k.Sheet); side != "" {
						t.Errorf("%s, %s, %s: area %d has no edge %s", m, name, c.name, i, side)
					}
				}
			}
		}
	}
	if checked < 20 {
		t.Errorf("only %d areas were looked at", checked)
	}
}

// bare is a side of an area with nothing by it that can be told from the sheet; empty
// where there is none.
func bare(objects []fyne.CanvasObject, r *canvas.Rectangle, sheet color.Color) string {
	p, s := r.Position(), r.Size()
	const by = 0.5
	for side, point := range map[string]fyne.Position{
		"at the left": {X: p.X - by, Y: p.Y + s.Height/2}, "at the right": {X: p.X + s.Width + by, Y: p.Y + s.Height/2},
		"above": {X: p.X + s.Width/2, Y: p.Y - by}, "below": {X: p.X + s.Width/2, Y: p.Y + s.Height + by},
	} {
		if got := golden.Contrast(at(objects, sheet, point.X, point.Y), sheet); got < 3 {
			return fmt.Sprintf("%s, %.1f:1", side, got)
		}
	}
	return ""
}

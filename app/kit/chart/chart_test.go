package chart

import (
	"flag"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

var update = flag.Bool("update", false, "keep the pictures anew")

// shown is one case of a chart on its sheet of pictures.
type shown struct {
	name          string
	width, height float32
	build         func() fyne.Widget
}

// pictures keeps all cases of a chart on one sheet: light and dark at 100 %,
// light at 150 % text.
func pictures(t *testing.T, name string, cases []shown) {
	for _, m := range golden.Modes() {
		t.Run(m.String(), func(t *testing.T) {
			golden.Use(t, m)
			content, size := sheet(cases)
			w := golden.Open(t, content, size)
			golden.Window(t, name+"-"+m.String(), w, *update)
		})
	}
}

// sheet sets cases in two columns, each on its own white ground with its name.
func sheet(cases []shown) (fyne.CanvasObject, fyne.Size) {
	const pad = 12
	p := look.PaletteNow()
	line := look.Note.Pitch()
	var objects []fyne.CanvasObject
	var column [2]float32
	wide := [2]float32{}
	for i, c := range cases {
		wide[i%2] = max(wide[i%2], look.Scaled(c.width))
	}
	for i, c := range cases {
		x := float32(pad)
		if i%2 == 1 {
			x += wide[0] + 3*pad
		}
		y := column[i%2] + pad
		ground := canvas.NewRectangle(p.Sheet)
		ground.Move(fyne.NewPos(x-pad/2, y+line))
		size := fyne.NewSize(look.Scaled(c.width), look.Scaled(c.height))
		ground.Resize(size.AddWidthHeight(pad, pad))
		title := look.NewLabel(c.name, look.Note, look.Ink3)
		title.Move(fyne.NewPos(x, y-2))
		title.Resize(title.MinSize())
		chart := c.build()
		chart.Move(fyne.NewPos(x, y+line+pad/2))
		chart.Resize(size)
		objects = append(objects, ground, title, chart)
		column[i%2] = y + line + size.Height + pad
	}
	back := canvas.NewRectangle(p.Paper)
	size := fyne.NewSize(wide[0]+wide[1]+5*pad, max(column[0], column[1])+pad)
	back.Resize(size)
	return container.NewWithoutLayout(append([]fyne.CanvasObject{back}, objects...)...), size
}

// A chart that is laid out at the size it has is not drawn anew: it would ask for one more
// picture of the whole window.
func TestAChartLaidOutAgainIsNotDrawnAgain(t *testing.T) {
	test.NewTempApp(t)
	c := NewRangeBar()
	drawn := 0
	draw := c.draw
	c.draw = func(size fyne.Size) { drawn++; draw(size) }
	r := test.WidgetRenderer(c)
	c.Resize(fyne.NewSize(200, 40))
	drawn = 0
	r.Layout(c.Size())
	if drawn != 0 {
		t.Errorf("drawn %d times at the same size", drawn)
	}
	c.Resize(fyne.NewSize(240, 40))
	if drawn != 1 {
		t.Errorf("drawn %d times at another size", drawn)
	}
}

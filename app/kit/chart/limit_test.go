package chart

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/kit/look"
)

// The name of the limit stands beside the columns of the breaks: none of their sides
// strikes it through.
func TestLimitStandsBesideTheBreaks(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.NewTheme(false, 100))
	d := match()
	for _, minute := range []float64{6, 15, 24, 33, 58, 70, 77, 84} {
		d.Stops = append(d.Stops, BreakStop{Minute: minute, Maybe: true, Amount: "80 mL"})
	}
	for _, width := range []float32{420, 590, 760, 1000} {
		c := deficit(d)
		size := fyne.NewSize(width, 240)
		c.Resize(size)
		at := c.plot(size)
		wide := look.Note.Width(d.LimitText)
		x, free := c.limitX(at, wide)
		if !free {
			continue // then it has a ground of its own
		}
		bottle := c.bottleWidth(at)
		for _, s := range d.Stops {
			for _, side := range [2]float32{at.x.inside(s.Minute) - bottle/2, at.x.inside(s.Minute) + bottle/2} {
				if side >= x && side <= x+wide {
					t.Errorf("%g px: the side at %g strikes through %g to %g", width, side, x, x+wide)
				}
			}
		}
		if x+wide > at.x.end {
			t.Errorf("%g px: it ends at %g, beyond %g", width, x+wide, at.x.end)
		}
	}
	c := deficit(match())
	if x, free := c.limitX(c.plot(fyne.NewSize(660, 240)), 50); !free || x != c.plot(fyne.NewSize(660, 240)).x.start+limitAside {
		t.Errorf("without breaks it stands at %g", x)
	}
}

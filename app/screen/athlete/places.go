package athlete

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/layout"

	"ebbwell/app/kit/look"
)

// container is objects in one of the layouts of this package.
func container(l fyne.Layout, objects ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: l, Objects: objects}
}

// stack is objects one over the other.
func stack(objects ...fyne.CanvasObject) *fyne.Container {
	return container(layout.NewStackLayout(), objects...)
}

// picturesMost is how high the pictures of the overview grow, in px at 100 %
// text.
const picturesMost float32 = 460

// standing sets the sheets of the overview one below the other, each as high as it
// needs; the second, the pictures, takes what is left up to a most where it grows.
type standing struct {
	grows bool
	width float32
}

func (s *standing) Layout(o []fyne.CanvasObject, size fyne.Size) {
	s.width = size.Width
	heights, all := s.heights(o, size.Width)
	if spare := max(0, size.Height-all); s.grows && len(heights) > 1 {
		heights[1] += max(0, min(spare, look.Scaled(picturesMost)-heights[1]))
	}
	y := float32(0)
	for i, h := range heights {
		o[i].Resize(fyne.NewSize(size.Width, h))
		o[i].Move(fyne.NewPos(0, y))
		y += h + look.SheetGap
	}
}

// heights are the least heights of the sheets, and of all with their gaps.
func (s *standing) heights(o []fyne.CanvasObject, width float32) (list []float32, all float32) {
	all = -look.SheetGap
	for _, sheet := range o {
		h := look.HeightFor(sheet, width)
		list, all = append(list, h), all+h+look.SheetGap
	}
	return list, all
}

// MinSize is the least height at the width laid out last.
func (s *standing) MinSize(o []fyne.CanvasObject) fyne.Size {
	_, all := s.heights(o, max(s.width, standingLeast))
	return fyne.NewSize(standingLeast, all)
}

// standingLeast is the least width of the sheets, in px.
const standingLeast float32 = 380

package athlete

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// container is objects in one of the layouts of this package.
func container(l fyne.Layout, objects ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: l, Objects: objects}
}

// beside sets two objects side by side over the whole height: the first has a
// share of the width, within a least and a most in px at 100 % text.
type beside struct{ share, least, most float32 }

func (b *beside) Layout(o []fyne.CanvasObject, size fyne.Size) {
	first := float32(int(min(max(size.Width*b.share, look.Scaled(b.least)), look.Scaled(b.most))))
	o[0].Resize(fyne.NewSize(first, size.Height))
	o[0].Move(fyne.NewPos(0, 0))
	o[1].Resize(fyne.NewSize(max(0, size.Width-first-look.SheetGap), size.Height))
	o[1].Move(fyne.NewPos(first+look.SheetGap, 0))
}

func (b *beside) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(640, 300) }

// picturesMost is how high the pictures of the overview grow, in px at 100 %
// text.
const picturesMost float32 = 420

// standing sets the sheets of the overview one below the other: words as high
// as they need, pictures, where there are any, with what is left up to a most,
// and what is due with the rest.
type standing struct{ width float32 }

func (s *standing) Layout(o []fyne.CanvasObject, size fyne.Size) {
	s.width = size.Width
	heights, all := s.heights(o, size.Width)
	spare := max(0, size.Height-all)
	if len(o) == 3 {
		more := max(0, min(spare, look.Scaled(picturesMost)-heights[1]))
		heights[1] += more
		spare -= more
	}
	heights[len(o)-1] += spare
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

package athlete

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/look"
)

// container is objects in one of the layouts of this package.
func container(l fyne.Layout, objects ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: l, Objects: objects}
}

// control is how a line of a list is named for tests and drivers, counted from 1.
func control(list string, i int, what string) string {
	return list + "." + strconv.Itoa(i+1) + "." + what
}

// beside sets two objects side by side over the whole height: the first has a
// share of the width, within a least and a most in px at 100 % text.
type beside struct{ share, least, most float32 }

func (b *beside) Layout(o []fyne.CanvasObject, size fyne.Size) {
	first := float32(int(min(max(size.Width*b.share, look.Scaled(b.least)), look.Scaled(b.most))))
	o[0].Resize(fyne.NewSize(first, size.Height))
	o[0].Move(fyne.NewPos(0, 0))
	o[1].Resize(fyne.NewSize(max(0, size.Width-first-sheetGap), size.Height))
	o[1].Move(fyne.NewPos(first+sheetGap, 0))
}

func (b *beside) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(640, 300) }

// picturesMost is how high the pictures of the overview grow, in px at 100 %
// text.
const picturesMost float32 = 420

// standing sets the three sheets of the overview one below the other: words as
// high as they need, pictures with what is left up to a most, and what is due
// with the rest.
type standing struct{ width float32 }

func (s *standing) Layout(o []fyne.CanvasObject, size fyne.Size) {
	s.width = size.Width
	words, least, due := look.HeightFor(o[0], size.Width), look.HeightFor(o[1], size.Width), look.HeightFor(o[2], size.Width)
	spare := size.Height - words - due - 2*sheetGap
	pictures := max(least, min(spare, look.Scaled(picturesMost)))
	y := float32(0)
	for i, h := range []float32{words, pictures, max(due, size.Height-words-pictures-2*sheetGap)} {
		o[i].Resize(fyne.NewSize(size.Width, h))
		o[i].Move(fyne.NewPos(0, y))
		y += h + sheetGap
	}
}

// MinSize is the least height at the width laid out last.
func (s *standing) MinSize(o []fyne.CanvasObject) fyne.Size {
	width := max(s.width, standingLeast)
	height := 2 * sheetGap
	for _, sheet := range o {
		height += look.HeightFor(sheet, width)
	}
	return fyne.NewSize(standingLeast, height)
}

// standingLeast is the least width of the sheets, in px.
const standingLeast float32 = 380

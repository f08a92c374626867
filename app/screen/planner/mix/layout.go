package mix

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// fillMiddle sets the first object at the top, the last at the foot, and gives
// the middle one the room between. Where the rows need more, they are set close; only
// where that is not enough do they scroll.
type fillMiddle struct{ p *Panel }

const middleGap float32 = 10

// RingRoom is the room beside a slider in a scroll, so that the ring around a
// knob at its end is not cut off.
const RingRoom float32 = 6

func (f *fillMiddle) Layout(o []fyne.CanvasObject, size fyne.Size) {
	top := look.HeightFor(o[0], size.Width)
	room := func() float32 { return max(size.Height-top-look.HeightFor(o[2], size.Width)-2*middleGap, 0) }
	f.p.setTight(false)
	if f.p.rowsHeight(size.Width) > room()+1 {
		f.p.setTight(true)
		f.p.loosen(size.Width, room())
	}
	foot := look.HeightFor(o[2], size.Width)
	o[0].Move(fyne.Position{})
	o[0].Resize(fyne.NewSize(size.Width, top))
	o[1].Move(fyne.NewPos(-RingRoom, top+middleGap))
	o[1].Resize(fyne.NewSize(size.Width+2*RingRoom, room()))
	o[2].Move(fyne.NewPos(0, size.Height-foot))
	o[2].Resize(fyne.NewSize(size.Width, foot))
}

func (*fillMiddle) MinSize(o []fyne.CanvasObject) fyne.Size {
	width := max(o[0].MinSize().Width, o[2].MinSize().Width)
	return fyne.NewSize(width, o[0].MinSize().Height+look.Scaled(160)+o[2].MinSize().Height+2*middleGap)
}

// headLayout sets the title, what is said behind it where there is room for the whole
// of it, and a button at the right.
type headLayout struct{}

func (headLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	button := fyne.Size{}
	if o[2].Visible() {
		button = o[2].MinSize()
	}
	o[2].Resize(button)
	o[2].Move(fyne.NewPos(size.Width-button.Width, 0))
	room := size.Width - button.Width - 8
	label, _ := o[0].(*look.Label)
	wide := min(look.Strong.Width(label.Text())+1, room)
	y := float32(int((size.Height - look.Strong.Height()) / 2))
	o[0].Move(fyne.NewPos(0, y))
	o[0].Resize(fyne.NewSize(wide, look.Strong.Height()))
	hint := o[1].MinSize()
	o[1].Move(fyne.NewPos(wide+8, y+look.Strong.Baseline()-look.Note.Baseline()))
	o[1].Resize(hint)
	look.ShowIf(o[1], hint.Width > 0 && wide+8+hint.Width <= room)
}

func (headLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Scaled(60)+o[2].MinSize().Width, look.ControlHeight())
}

package figures

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// pictureHead sets the title at the left, a button at the right, and between them, at
// the right, what is taken at the selected break, as much of it as has room.
type pictureHead struct {
	title *look.OneOf
	split *split
}

const headGap float32 = 14

func (h pictureHead) Layout(o []fyne.CanvasObject, size fyne.Size) {
	button := fyne.Size{}
	if o[2].Visible() {
		button = o[2].MinSize()
	}
	o[2].Move(fyne.NewPos(size.Width-button.Width, 0))
	o[2].Resize(button)
	room := size.Width
	if button.Width > 0 {
		room -= button.Width + headGap
	}
	split := fyne.Size{}
	if h.split.row.Visible() && h.split.fit(room-headGap-h.title.MinSize().Width) {
		split = h.split.row.MinSize()
	}
	fits := split.Width > 0
	look.ShowIf(o[1], fits)
	wide := room
	if fits {
		wide = room - split.Width - headGap
	}
	y := float32(int((size.Height - look.Strong.Height()) / 2))
	o[0].Move(fyne.NewPos(0, y))
	o[0].Resize(fyne.NewSize(wide, look.Strong.Height()))
	o[1].Move(fyne.NewPos(room-split.Width, y+look.Strong.Baseline()-look.NoteStrong.Baseline()))
	o[1].Resize(split)
}

func (h pictureHead) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(h.title.MinSize().Width+headGap+o[2].MinSize().Width, look.ControlHeight())
}

package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// barLayout sets the title with what is said behind it at the left and the buttons at
// the right of one line. Where that has no room, what is said goes first, then, above the
// steps, which say themselves what they are, the title; the buttons stand below it only
// where something else is open.
type barLayout struct{}

// barHintGap is between the title and what is said behind it.
const barHintGap float32 = 12

// room is what stands beside the buttons at a width, and whether they go below it.
func (barLayout) room(o []fyne.CanvasObject, width float32) (title, hint, wraps bool) {
	said, _ := o[1].(*look.Label)
	steps := said.Text() != ""
	left := width - o[2].MinSize().Width - stripGap
	named := o[0].MinSize().Width
	switch {
	case steps && named+barHintGap+o[1].MinSize().Width <= left:
		return true, true, false
	case named <= left:
		return true, false, false
	case steps && left+stripGap >= 0:
		return false, false, false
	}
	return true, false, true
}

func (l barLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	title, buttons := o[0].MinSize(), o[2].MinSize()
	named, hint, wraps := l.room(o, size.Width)
	look.ShowIf(o[0], named)
	look.ShowIf(o[1], hint)
	o[0].Resize(fyne.NewSize(min(title.Width, size.Width), title.Height))
	o[1].Resize(o[1].MinSize())
	o[2].Resize(buttons)
	if wraps {
		o[0].Move(fyne.Position{})
		o[2].Move(fyne.NewPos(0, title.Height+4))
		return
	}
	y := float32(int((size.Height - title.Height) / 2))
	o[0].Move(fyne.NewPos(0, y))
	o[1].Move(fyne.NewPos(title.Width+barHintGap, y+look.Strong.Baseline()-look.Note.Baseline()))
	o[2].Move(fyne.NewPos(size.Width-buttons.Width, 0))
}

func (l barLayout) height(o []fyne.CanvasObject, width float32) float32 {
	title, buttons := o[0].MinSize(), o[2].MinSize()
	if _, _, wraps := l.room(o, width); wraps {
		return buttons.Height + 4 + title.Height
	}
	return max(title.Height, buttons.Height)
}

func (l barLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(o[0].MinSize().Width, l.height(o, 1e6))
}

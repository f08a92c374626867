package mix

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// rowLayout sets a slider's row: the name, with the amount in the athlete's own
// measures below it, at the left; the change from the habit; the number at the right;
// the slider below. Where the mix is tight, the words stand behind the name.
type rowLayout struct {
	r *row
	// number is the width of the number, px at 100 % text.
	number float32
}

const rowGap float32 = 8

func (l *rowLayout) head() float32 {
	if l.r.name.tight {
		return look.ControlHeight()
	}
	return max(look.ControlHeight(), look.Strong.Height()+look.Note.Height())
}

// amount is the width of what stands at the right: the number, or the amount of an
// agreed plan, which leaves the rest to the name.
func (l *rowLayout) amount() float32 {
	if l.r.Number.Visible() {
		return look.Scaled(l.number)
	}
	return l.r.fixed.MinSize().Width
}

func (l *rowLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	r, high, wide := l.r, l.head(), l.amount()
	base := r.name.Baseline()
	middle := float32(int((high - look.ControlHeight()) / 2))
	at := size.Width - wide
	r.Number.Move(fyne.NewPos(at, middle))
	r.Number.Resize(fyne.NewSize(wide, look.ControlHeight()))
	r.fixed.Move(fyne.NewPos(at, base-look.Strong.Baseline()))
	r.fixed.Resize(fyne.NewSize(wide, look.Strong.Height()))
	differs := r.differs.MinSize().Width
	at -= rowGap + differs
	r.differs.Move(fyne.NewPos(at, base-look.Note.Baseline()))
	r.differs.Resize(fyne.NewSize(differs, look.Note.Height()))
	// the words below the name may run under the change, which stands on the name's line
	r.name.line = max(at-rowGap, 0)
	r.name.Move(fyne.Position{})
	r.name.Resize(fyne.NewSize(max(size.Width-wide-rowGap, 0), high))
	r.name.place()
	r.Slider.Move(fyne.NewPos(0, high))
	r.Slider.Resize(fyne.NewSize(size.Width, r.Slider.MinSize().Height))
}

func (l *rowLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	gap := float32(4)
	if l.r.name.tight {
		gap = 0
	}
	return fyne.NewSize(look.Scaled(160), l.head()+l.r.Slider.MinSize().Height+gap)
}

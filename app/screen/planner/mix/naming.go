package mix

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// noteLeast is the room below which a note is left out: a letter or two say
// nothing.
const noteLeast float32 = 44

// naming is the beginning of a slider's row: the square of its substance, its
// name, what may stand behind it (the strength of a powder), and a note. Where
// room is short the note gives way first, then the name.
type naming struct {
	widget.BaseWidget
	swatch *look.Swatch
	name   *look.Label
	behind fyne.CanvasObject
	note   *look.Label
}

var (
	_ look.Based  = (*naming)(nil)
	_ look.Holder = (*naming)(nil)
)

func newNaming(of look.Substance, behind fyne.CanvasObject) *naming {
	n := &naming{
		swatch: look.NewSwatch(of), name: look.NewLabel("", look.Strong, look.Ink).Shorten(), behind: behind,
		note: look.NewLabel("", look.Note, look.Ink2).Shorten(),
	}
	n.ExtendBaseWidget(n)
	return n
}

// set changes name and note; what reads the same is left alone.
func (n *naming) set(name, note string) {
	if n.name.Text() == name && n.note.Text() == note {
		return
	}
	n.name.SetText(name)
	n.note.SetText(note)
	n.Refresh()
}

// Parts returns what stands in the row.
func (n *naming) Parts() []fyne.CanvasObject {
	return []fyne.CanvasObject{n.swatch, n.name, n.behind, n.note}
}

// Baseline is that of the name in the middle of a row of controls.
func (n *naming) Baseline() float32 {
	return float32(int((look.ControlHeight()-look.Strong.Height())/2)) + look.Strong.Baseline()
}

// CreateRenderer places the parts.
func (n *naming) CreateRenderer() fyne.WidgetRenderer { return &namingRenderer{n} }

type namingRenderer struct{ n *naming }

func (r *namingRenderer) Layout(size fyne.Size) {
	n, base := r.n, r.n.Baseline()
	x := float32(0)
	put := func(o fyne.CanvasObject, baseline, width, height float32) {
		o.Move(fyne.NewPos(x, base-baseline))
		o.Resize(fyne.NewSize(width, height))
		x += width
	}
	square := n.swatch.MinSize()
	put(n.swatch, n.swatch.Baseline(), square.Width, square.Height)
	x += 8
	behind := float32(0)
	if n.behind.Visible() {
		behind = n.behind.MinSize().Width + 8
	}
	put(n.name, n.name.Baseline(), max(min(look.Strong.Width(n.name.Text())+1, size.Width-x-behind), 0), look.Strong.Height())
	x += 8
	if behind > 0 {
		least := n.behind.MinSize()
		drop, _ := look.BaselineOf(n.behind)
		put(n.behind, drop, least.Width, least.Height)
		x += 8
	}
	look.ShowIf(n.note, size.Width-x >= look.Scaled(noteLeast))
	put(n.note, n.note.Baseline(), max(size.Width-x, 0), look.Note.Height())
}

func (r *namingRenderer) MinSize() fyne.Size {
	return fyne.NewSize(look.Scaled(120), look.ControlHeight())
}

func (r *namingRenderer) Refresh() {
	r.Layout(r.n.Size())
	r.n.swatch.Refresh()
}

func (r *namingRenderer) Objects() []fyne.CanvasObject { return r.n.Parts() }
func (r *namingRenderer) Destroy()                     {}

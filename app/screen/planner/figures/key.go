package figures

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// key is one of the two figures that answer: a title, the figure with what stands
// beside it, a bar, and a sentence.
type key struct {
	Figure *look.Label
	side   *twoLines
	foot   *look.OneOf
	Key    *fyne.Container
}

// newKey makes a figure; why may be nil.
func newKey(title fyne.CanvasObject, why *field.Link, bar fyne.CanvasObject, figure float32) key {
	k := key{Figure: look.NewLabel("", look.Key, look.Ink), side: &twoLines{text: look.NewParagraph("", look.Note, look.Ink2)}}
	k.foot = look.NewOneOf(look.Note)
	head := look.HBox(8, look.Grow(title))
	if why != nil {
		head.Add(why)
	}
	side := &fyne.Container{Layout: k.side, Objects: []fyne.CanvasObject{k.side.text}}
	row := &fyne.Container{Layout: beside{figure}, Objects: []fyne.CanvasObject{k.Figure, side}}
	k.Key = look.VBox(2, look.MinSized(0, 24, head), row, bar, k.foot)
	return k
}

// twoLines gives a text the room of two lines: what stands below has the rest. Where
// the whole of it takes more, the short one stands there.
type twoLines struct {
	text         *look.Paragraph
	whole, short string
	width        float32
}

// set changes the text; short may be empty, where the whole of it always fits.
func (l *twoLines) set(whole, short string) {
	if l.whole == whole && l.short == short {
		return
	}
	l.whole, l.short = whole, short
	l.choose()
}

// choose shows the whole text, or the short one.
func (l *twoLines) choose() {
	l.text.SetText(l.whole)
	if l.short != "" && l.width > 0 && look.HeightFor(l.text, l.width) > 2*look.Note.Pitch()+1 {
		l.text.SetText(l.short)
	}
}

func (l *twoLines) Layout(o []fyne.CanvasObject, size fyne.Size) {
	if l.width != size.Width {
		l.width = size.Width
		l.choose()
	}
	h := min(look.HeightFor(o[0], size.Width), size.Height)
	o[0].Move(fyne.NewPos(0, (size.Height-h)/2))
	o[0].Resize(fyne.NewSize(size.Width, h))
}

func (*twoLines) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(40, 2*look.Note.Pitch()) }

// beside sets the second object beside the first, which has so many px at 100 %
// text.
type beside struct{ px float32 }

func (l beside) Layout(o []fyne.CanvasObject, size fyne.Size) {
	wide, h := look.Scaled(l.px), look.Key.Height()
	o[0].Move(fyne.NewPos(0, (size.Height-h)/2))
	o[0].Resize(fyne.NewSize(wide, h))
	o[1].Move(fyne.NewPos(wide+8, 0))
	o[1].Resize(fyne.NewSize(max(size.Width-wide-8, 0), size.Height))
}

func (l beside) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Scaled(l.px)+60, max(look.Key.Height(), o[1].MinSize().Height))
}

// upon lays objects upon each other.
type upon struct{}

func (*upon) Layout(o []fyne.CanvasObject, size fyne.Size) {
	for _, one := range o {
		one.Move(fyne.Position{})
		one.Resize(size)
	}
}

func (*upon) MinSize(o []fyne.CanvasObject) fyne.Size { return o[0].MinSize() }

// underStops sets fields under the bottles of a picture.
type underStops struct{ picture *chart.DeficitChart }

func (l underStops) Layout(o []fyne.CanvasObject, _ fyne.Size) {
	l.picture.Fields(func(stop int, x, width float32) {
		if stop < len(o) {
			o[stop].Resize(fyne.NewSize(width, look.ControlHeight()))
			o[stop].Move(fyne.NewPos(x, l.picture.FieldTop()))
		}
	})
}

func (underStops) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.Size{} }

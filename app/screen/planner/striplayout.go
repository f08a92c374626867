package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// stripLayout sets the words at the left with the link behind them, and the
// controls at the right; below, where the words would have little room. Where all words
// take more than a line and the short ones do not, those stand there.
type stripLayout struct{ s *strip }

const (
	stripGap   float32 = 12
	stripWords float32 = 360
)

// below reports whether the controls stand under the words, and the width that
// words and link have.
func (stripLayout) below(o []fyne.CanvasObject, width float32) (bool, float32) {
	rest := width - o[2].MinSize().Width - stripGap
	if rest < look.Scaled(stripWords) {
		return true, width
	}
	return false, rest
}

// words chooses the words that stand in a room with the link, and is their width.
func (l stripLayout) words(o []fyne.CanvasObject, room float32) float32 {
	room -= o[1].MinSize().Width + stripGap
	text := l.s.whole
	if wide(text) > room && wide(l.s.short) <= room {
		text = l.s.short
	}
	l.s.words.SetText(text)
	return min(wide(text), room)
}

// wide is the width of words in one line.
func wide(text string) float32 { return look.Body.Width(text) + 2 }

func (l stripLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	below, room := l.below(o, size.Width)
	words := l.words(o, room)
	h := look.HeightFor(o[0], words)
	controls, link := o[2].MinSize(), o[1].MinSize()
	line := max(look.ControlHeight(), h)
	o[0].Move(fyne.NewPos(0, (line-h)/2))
	o[0].Resize(fyne.NewSize(words, h))
	o[1].Move(fyne.NewPos(words+stripGap, (line-link.Height)/2))
	o[1].Resize(link)
	if below {
		o[2].Move(fyne.NewPos(0, line+4))
	} else {
		o[2].Move(fyne.NewPos(size.Width-controls.Width, (line-controls.Height)/2))
	}
	o[2].Resize(controls)
}

// height is what the strip needs at a width.
func (l stripLayout) height(o []fyne.CanvasObject, width float32) float32 {
	below, room := l.below(o, width)
	line := max(look.ControlHeight(), look.HeightFor(o[0], l.words(o, room)))
	if below {
		line += 4 + o[2].MinSize().Height
	}
	return line
}

func (stripLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Scaled(stripWords), look.ControlHeight())
}

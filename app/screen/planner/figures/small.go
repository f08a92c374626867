package figures

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/look"
)

// smallLayout sets the bars of sodium and drinking below each other, or side by side
// where there is room for two.
type smallLayout struct{ p *Bars }

const (
	smallGap float32 = 6
	// smallBeside is between two side by side, smallTwo the least width for them, the
	// second px at 100 % text.
	smallBeside float32 = 20
	smallTwo    float32 = 290
)

func (smallLayout) two(width float32) bool { return width >= look.Scaled(smallTwo) }

func (l smallLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	high := l.p.smallHigh(l.p.Folded())
	for i, one := range o {
		if l.two(size.Width) {
			wide := float32(int((size.Width - smallBeside) / 2))
			one.Move(fyne.NewPos(float32(i)*(wide+smallBeside), 0))
			one.Resize(fyne.NewSize(wide, high))
			continue
		}
		one.Move(fyne.NewPos(0, float32(i)*(high+smallGap)))
		one.Resize(fyne.NewSize(size.Width, high))
	}
}

func (l smallLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(o[0].MinSize().Width, l.p.SmallHeight(0, l.p.Folded()))
}

// SmallHeight is the height of the two bars at a width, folded to lines or with their
// bars.
func (p *Bars) SmallHeight(width float32, folded bool) float32 {
	if (smallLayout{p}).two(width) {
		return p.smallHigh(folded)
	}
	return 2*p.smallHigh(folded) + smallGap
}

// smallHigh is the height of one of them.
func (*Bars) smallHigh(folded bool) float32 {
	if folded {
		return look.Strong.Height()
	}
	return chart.BriefHeight()
}

// Folded reports whether the two bars are lines.
func (p *Bars) Folded() bool { return p.Data[BarSodium].Line }

// Fold has the two bars be lines of name and figure, or have their bars again.
func (p *Bars) Fold(on bool) {
	if on == p.Folded() {
		return
	}
	for _, i := range []int{BarSodium, BarDrinking} {
		p.Data[i].Line = on
		p.bars[i].Set(p.Data[i])
	}
}

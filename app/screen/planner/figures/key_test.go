package figures

import (
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

// What stands beside a figure never needs a third line, which would lie over the bar;
// all of it stands there where there is room.
func TestTwoLines(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	const whole, short = "−1.4 to −5.2\u00a0% on a day that is rather similar", "−1.4 to −5.2\u00a0%"
	l := &twoLines{text: look.NewParagraph("", look.Note, look.Ink2)}
	l.set(whole, short)
	o := []fyne.CanvasObject{l.text}
	for width, want := range map[float32]string{90: short, 260: whole} {
		l.Layout(o, fyne.NewSize(width, l.MinSize(o).Height))
		if got := l.text.Text(); got != want || look.HeightFor(l.text, width) > l.MinSize(o).Height+1 {
			t.Errorf("%v px show %q, %v high", width, got, look.HeightFor(l.text, width))
		}
	}
	l.Layout(o, fyne.NewSize(90, l.MinSize(o).Height))
	if l.set(whole+" today", short+" "); l.text.Text() != short+" " {
		t.Errorf("after a change it shows %q", l.text.Text())
	}
}

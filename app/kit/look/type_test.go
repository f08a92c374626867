package look_test

import (
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ebbwell/app/kit/look"
)

// wantLine holds a style to the height and the baseline of its line as they were measured.
func wantLine(t *testing.T, s look.Style, height, base float32) {
	t.Helper()
	if s.Height() != height || s.Baseline() != base {
		t.Errorf("style %d: a line of %v with a baseline at %v, measured %v and %v", s, s.Height(), s.Baseline(), height, base)
	}
}

// TestHeightsFollowTextSizeAndTheme: what is kept of a text is another for another text, size
// or theme, and the same again when it comes back. A line is as the toolkit measures it then.
func TestHeightsFollowTextSizeAndTheme(t *testing.T) {
	a := test.NewTempApp(t)
	long := "This plan stops at 1.59 L, the low end of the likely loss: a limit, not a goal."
	p := look.NewParagraph(long, look.Body, look.Ink)
	heights := map[int]float32{}
	for _, x := range []struct {
		theme   fyne.Theme
		percent int
	}{
		{look.NewTheme(false, 100), 100}, {look.NewTheme(false, 150), 150}, {look.NewTheme(true, 100), 100},
		{look.NewTheme(false, 125).Still(), 125}, {theme.DefaultTheme(), 0}, {look.NewTheme(true, 150), 150}, {look.NewTheme(false, 100), 100},
	} {
		a.Settings().SetTheme(x.theme)
		for s := look.Body; s <= look.Key; s++ {
			for range 2 { // measured, then kept
				size, base := a.Driver().RenderedTextSize("M", s.Size(), s.Text(), s.Source("M"))
				wantLine(t, s, ceil(size.Height), ceil(base))
			}
		}
		height := p.HeightFor(200)
		if fresh := look.NewParagraph(long, look.Body, look.Ink).HeightFor(200); height != fresh {
			t.Errorf("%d %%: %v high, a new one %v", x.percent, height, fresh)
		}
		if was, seen := heights[x.percent]; seen && was != height {
			t.Errorf("%d %%: %v high, then %v", x.percent, was, height)
		}
		heights[x.percent] = height
		p.SetText("Drink.")
		if one := p.HeightFor(200); one != look.Body.Height() || one >= height {
			t.Errorf("%d %%: a word is %v high, the sentence %v", x.percent, one, height)
		}
		p.SetText(long)
		if wide := p.HeightFor(400); wide >= height {
			t.Errorf("%d %%: %v high where it is twice as wide", x.percent, wide)
		}
	}
	if heights[100] >= heights[125] || heights[125] >= heights[150] {
		t.Errorf("heights %v", heights)
	}
}

func ceil(x float32) float32 { return float32(math.Ceil(float64(x) - 1e-3)) }

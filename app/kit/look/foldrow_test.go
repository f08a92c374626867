package look_test

import (
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

// A row that folds is one line where there is room, and two where there is not: nothing
// lies on another, and all of it is as high as it says.
func TestFoldRow(t *testing.T) {
	for _, percent := range []int{100, 150} {
		golden.Use(t, golden.Mode{Percent: percent})
		var labels []fyne.CanvasObject
		for _, text := range []string{"1", "half-time", "45", "900", "take"} {
			labels = append(labels, look.NewLabel(text, look.Body, look.Ink))
		}
		columns := []look.Column{{Width: look.Fixed(18)}, {Width: look.Share(1)}, {Width: look.Fixed(86)}, {Width: look.Fixed(86)}, {Width: look.Share(1)}}
		row := look.FoldRow(10, columns, look.Fold{Below: 400, First: []int{0, 1, 4}}, labels...)
		for width, lines := range map[float32]int{700: 1, 300: 2} {
			row.Resize(fyne.NewSize(width, look.HeightFor(row, width)))
			ys := map[float32]bool{}
			for i, o := range labels {
				ys[o.Position().Y] = true
				for _, other := range labels[:i] {
					if o.Position().Y == other.Position().Y && o.Position().X < other.Position().X+other.Size().Width && other.Position().X < o.Position().X+o.Size().Width {
						t.Errorf("%d %%, %v px: two objects lie on one another", percent, width)
					}
				}
			}
			if len(ys) != lines {
				t.Errorf("%d %%, %v px: %d lines, want %d", percent, width, len(ys), lines)
			}
			if got := look.HeightFor(row, width); lines == 2 && got < 2*look.Body.Height() {
				t.Errorf("%d %%: two lines are %v high", percent, got)
			}
		}
	}
}

package field_test

import (
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look/golden"
)

// A field that takes nothing has the ground it lies on, in the dark too; one to type in has
// a ground of its own.
func TestDisabledDoesNotLookLikeAnInput(t *testing.T) {
	type fieldOf interface {
		fyne.CanvasObject
		fyne.Disableable
	}
	for name, build := range map[string]func(h *field.Host) fieldOf{
		"line": func(h *field.Host) fieldOf { return field.NewLine(h, "line", 0) },
		"choice": func(h *field.Host) fieldOf {
			return field.NewChoice(h, "choice", []field.Option{{Key: "a", Text: "a"}})
		},
	} {
		for _, dark := range []bool{false, true} {
			for _, off := range []bool{false, true} {
				img := golden.Shoot(t, golden.Mode{Dark: dark, Percent: 100}, fyne.NewSize(200, 60), func() fyne.CanvasObject {
					f := build(newHost(t))
					if off {
						f.Disable()
					}
					return f
				})
				inside, under := img.At(120, 16), img.At(120, 55)
				if same := golden.Contrast(inside, under) < 1.005; same != off {
					t.Errorf("%s, dark %v, disabled %v: the ground is %v on %v", name, dark, off, inside, under)
				}
			}
		}
	}
}

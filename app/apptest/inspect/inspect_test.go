package inspect_test

import (
	"image/color"
	"math"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/apptest/inspect"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

// put sets an object at a place.
func put(o fyne.CanvasObject, x, y, w, h float32) fyne.CanvasObject {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(w, h))
	return o
}

func label(text string, tone look.Tone) *look.Label { return look.NewLabel(text, look.Body, tone) }

// Each rule finds what breaks it, and nothing else does.
func TestEachRule(t *testing.T) {
	for name, c := range map[string]struct {
		build func() []fyne.CanvasObject
		want  []inspect.Kind
	}{
		"well": {func() []fyne.CanvasObject {
			return []fyne.CanvasObject{put(label("Body mass", look.Ink), 10, 10, 90, 20), put(label("64 kg", look.Ink3), 110, 10, 60, 20)}
		}, nil},
		"cut": {func() []fyne.CanvasObject {
			inner := container.NewWithoutLayout(put(label("a text that is cut", look.Ink), 0, 0, 200, 20))
			inner.Resize(fyne.NewSize(200, 60))
			return []fyne.CanvasObject{put(container.NewHScroll(inner), 10, 10, 60, 40)}
		}, []inspect.Kind{inspect.Cut}},
		"wider": {func() []fyne.CanvasObject {
			return []fyne.CanvasObject{put(label("wider than its place", look.Ink), 10, 10, 40, 20)}
		}, []inspect.Kind{inspect.Wider}},
		"shortened": {func() []fyne.CanvasObject {
			return []fyne.CanvasObject{put(label("a long name", look.Ink).Shorten(), 10, 10, 40, 20), put(label("Save …", look.Ink), 80, 10, 60, 20)}
		}, []inspect.Kind{inspect.Shortened}},
		"unworded": {func() []fyne.CanvasObject {
			return []fyne.CanvasObject{put(label("trip.day-plan.title", look.Ink), 10, 10, 140, 20), put(label("e.g. 4.5 L", look.Ink), 160, 10, 90, 20)}
		}, []inspect.Kind{inspect.Unworded}},
		"typed": {func() []fyne.CanvasObject {
			typed := field.NewLine(field.NewHost(nil), "typed", 80)
			typed.SetText("more than there is room for in this field")
			return []fyne.CanvasObject{put(typed, 10, 10, 90, 30)}
		}, nil},
		"overlap": {func() []fyne.CanvasObject {
			return []fyne.CanvasObject{put(label("one text", look.Ink), 10, 10, 90, 20), put(label("another", look.Ink), 30, 14, 90, 20)}
		}, []inspect.Kind{inspect.Overlap}},
		"covered": {func() []fyne.CanvasObject {
			sheet := canvas.NewRectangle(look.PaletteNow().Sheet)
			return []fyne.CanvasObject{put(label("one text", look.Ink), 10, 10, 90, 20), put(sheet, 0, 0, 200, 60), put(label("another", look.Ink), 30, 14, 90, 20)}
		}, nil},
		"outside": {func() []fyne.CanvasObject {
			return []fyne.CanvasObject{put(label("past the edge", look.Ink), 270, 10, 90, 20)}
		}, []inspect.Kind{inspect.Outside}},
		"faint": {func() []fyne.CanvasObject {
			ground := canvas.NewRectangle(look.PaletteNow().Hairline)
			return []fyne.CanvasObject{put(ground, 0, 0, 200, 60), put(label("ink 3 on a hairline's colour", look.Ink3), 10, 10, 180, 20)}
		}, []inspect.Kind{inspect.Faint}},
		"faint shape": {func() []fyne.CanvasObject {
			p := look.PaletteNow()
			return []fyne.CanvasObject{put(canvas.NewRectangle(p.Edge), 0, 0, 90, 60), put(canvas.NewRectangle(p.Salt), 20, 20, 20, 20)}
		}, []inspect.Kind{inspect.FaintShape}},
	} {
		golden.Use(t, golden.Mode{Percent: 100})
		w := golden.Open(t, container.NewWithoutLayout(c.build()...), fyne.NewSize(300, 200))
		var got []inspect.Kind
		for _, f := range inspect.Canvas(w.Canvas()) {
			got = append(got, f.Kind)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: found %v, want %v", name, inspect.Canvas(w.Canvas()), c.want)
		}
	}
}

// Two controls on one another are told, and one in another is not; what cannot
// be used may be faint.
func TestControls(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	h := field.NewHost(nil)
	button := func(name string) *field.Button { return field.NewButton(h, name, "press", field.Outline, nil) }
	off := button("off")
	off.Disable()
	w := golden.Open(t, container.NewWithoutLayout(put(button("a"), 10, 10, 80, 30), put(button("b"), 60, 30, 80, 30), put(off, 200, 10, 80, 30)), fyne.NewSize(300, 200))
	var overlaps []string
	for _, f := range inspect.Canvas(w.Canvas()) {
		if f.Kind == inspect.Overlap {
			overlaps = append(overlaps, f.What)
		}
		if f.Kind == inspect.Faint {
			t.Errorf("told %v", f)
		}
	}
	if !slices.Equal(overlaps, []string{"a / b"}) {
		t.Errorf("overlaps %v", overlaps)
	}
}

// A control that is hidden where another lies is no overlap; one that shows is.
func TestCoveredControls(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	h := field.NewHost(nil)
	for cover, want := range map[float32]int{200: 0, 70: 1} {
		sheet := canvas.NewRectangle(look.PaletteNow().Sheet)
		a, b := field.NewButton(h, "a", "press", field.Outline, nil), field.NewButton(h, "b", "press", field.Outline, nil)
		w := golden.Open(t, container.NewWithoutLayout(put(a, 10, 10, 80, 30), put(sheet, 0, 0, cover, 100), put(b, 60, 30, 80, 30)), fyne.NewSize(300, 200))
		n := 0
		for _, f := range inspect.Canvas(w.Canvas()) {
			if f.Kind == inspect.Overlap && f.What == "a / b" {
				n++
			}
		}
		if n != want {
			t.Errorf("covered up to %g px: %d overlaps", cover, n)
		}
	}
}

// The values are those of black, white and #777777 in WCAG 2.2's own examples
// and the formula worked by hand.
func TestContrast(t *testing.T) {
	black, white, grey := color.Gray{}, color.Gray{Y: 255}, color.Gray{Y: 0x77}
	for _, c := range []struct {
		a, b color.Color
		want float64
	}{{black, white, 21}, {white, white, 1}, {white, grey, 4.48}, {grey, white, 4.48}} {
		if got := golden.Contrast(c.a, c.b); math.Abs(got-c.want) > 0.005 {
			t.Errorf("%v and %v: %.3f, want %.2f", c.a, c.b, got, c.want)
		}
	}
}

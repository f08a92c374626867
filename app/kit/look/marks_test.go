package look

import (
	"testing"

	"pgregory.net/rapid"
)

// The words of two marks never touch where there is room for both, and stay within the
// scale.
func TestMarkPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := rapid.Float32Range(200, 900).Draw(t, "width")
		first, second := rapid.Float32Range(0, width).Draw(t, "first"), rapid.Float32Range(0, width).Draw(t, "second")
		a, b := rapid.Float32Range(1, 80).Draw(t, "first words"), rapid.Float32Range(1, 80).Draw(t, "second words")
		x, y := MarkPlaces(width, first, a, second, b, 9)
		if !apart(x, a, y, b) && x+a+marksGap > y+0.01 && y+b+marksGap > x+0.01 {
			t.Fatalf("%g wide, marks at %g and %g: words at %g (%g) and %g (%g) touch", width, first, second, x, a, y, b)
		}
		if room := first-9 > a+b+13 || width-first-9 > a+b+13; room && y < first+9 && y+b > first-9 {
			t.Fatalf("%g wide, marks at %g and %g: the second's words at %g (%g) are on the triangle", width, first, second, y, b)
		}
		if x < 0 || y < 0 || x+a > width+0.01 || y+b > width+0.01 {
			t.Fatalf("%g wide, marks at %g and %g: words at %g (%g) and %g (%g)", width, first, second, x, a, y, b)
		}
	})
	for _, c := range []struct{ first, second, x, y float32 }{
		{100, 300, 109, 270}, // each at its own mark
		{100, 150, 31, 120},  // the habit's before it, so that both stand at their marks
		{100, 130, 31, 115},  // and the limit's clear of the triangle
		{10, 20, 19, 85},     // no room before it: the limit's gives way
	} {
		if x, y := MarkPlaces(400, c.first, 60, c.second, 60, 9); x != c.x || y != c.y {
			t.Errorf("marks at %g and %g: words at %g and %g", c.first, c.second, x, y)
		}
	}
}

package drive

import (
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseFrame(t *testing.T) {
	got, err := parseFrame("WINDOW=2097165\nX=10\nY=-5\nWIDTH=1180\nHEIGHT=760\nSCREEN=0\n")
	if want := (frame{10, -5, 1180, 760}); err != nil || got != want {
		t.Errorf("got %+v, %v", got, err)
	}
	for _, bad := range []string{"", "X=1\nY=2\n", "WIDTH=wide\nHEIGHT=7\n", "WIDTH=0\nHEIGHT=7\n"} {
		if f, err := parseFrame(bad); err == nil {
			t.Errorf("%q was read as %+v", bad, f)
		}
	}
}

func TestWithin(t *testing.T) {
	size := [2]float64{1180, 760}
	button := Control{Name: "button", X: 100, Y: 50, W: 80, H: 30}
	for _, c := range []struct {
		name         string
		f            frame
		control      Control
		across, down float64
		want         point
		fails        string
	}{
		{"middle", frame{0, 0, 1180, 760}, button, 0.5, 0.5, point{140, 65}, ""},
		{"window elsewhere", frame{30, 20, 1180, 760}, button, 0.5, 0.5, point{170, 85}, ""},
		{"two pixels a unit", frame{0, 0, 2360, 1520}, button, 0.5, 0.5, point{280, 130}, ""},
		{"left end", frame{0, 0, 1180, 760}, button, 0, 0.5, point{100, 65}, ""},
		{"right end is still inside", frame{0, 0, 1180, 760}, button, 1, 1, point{179, 79}, ""},
		{"scrolled away", frame{0, 0, 1180, 760}, Control{Name: "far", X: 100, Y: 900, W: 80, H: 30}, 0.5, 0.5, point{}, "outside"},
		{"left of the window", frame{0, 0, 1180, 760}, Control{Name: "far", X: -100, Y: 9, W: 80, H: 30}, 0.5, 0.5, point{}, "outside"},
		{"no size", frame{0, 0, 1180, 760}, Control{Name: "none", X: 1, Y: 1}, 0.5, 0.5, point{}, "no size"},
	} {
		got, err := c.f.within(c.control, size, c.across, c.down)
		if got != c.want || (err != nil) != (c.fails != "") {
			t.Errorf("%s: got %+v, %v", c.name, got, err)
		}
		if err != nil && !strings.Contains(err.Error(), c.fails) {
			t.Errorf("%s: %v does not say %q", c.name, err, c.fails)
		}
	}
}

func TestWithinStaysInTheWindow(t *testing.T) {
	share := rapid.Float64Range(0, 1)
	side := rapid.Float64Range(-50, 3000)
	rapid.Check(t, func(t *rapid.T) {
		f := frame{rapid.IntRange(-9, 99).Draw(t, "x"), rapid.IntRange(-9, 99).Draw(t, "y"), rapid.IntRange(1, 4000).Draw(t, "w"), rapid.IntRange(1, 4000).Draw(t, "h")}
		c := Control{Name: "c", X: side.Draw(t, "cx"), Y: side.Draw(t, "cy"), W: side.Draw(t, "cw"), H: side.Draw(t, "ch")}
		size := [2]float64{rapid.Float64Range(1, 3000).Draw(t, "sw"), rapid.Float64Range(1, 3000).Draw(t, "sh")}
		p, err := f.within(c, size, share.Draw(t, "across"), share.Draw(t, "down"))
		if err == nil && (p.x < f.x || p.y < f.y || p.x >= f.x+f.w || p.y >= f.y+f.h) {
			t.Fatalf("%+v is outside %+v", p, f)
		}
	})
}

func TestBetween(t *testing.T) {
	got := between(point{0, 10}, point{10, 0}, 4)
	if want := []point{{3, 7}, {5, 5}, {8, 2}, {10, 0}}; !reflect.DeepEqual(got, want) {
		t.Errorf("got %v", got)
	}
	if got := between(point{1, 1}, point{9, 9}, 1); len(got) != 1 || got[0] != (point{9, 9}) {
		t.Errorf("one move: got %v", got)
	}
}

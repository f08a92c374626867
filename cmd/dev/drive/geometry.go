package drive

import (
	"bufio"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// point is a place on the screen, in pixels.
type point struct{ x, y int }

// frame is where the window's content stands on the screen, in pixels.
type frame struct{ x, y, w, h int }

// parseFrame reads what `xdotool getwindowgeometry --shell` prints.
func parseFrame(printed string) (frame, error) {
	values := map[string]int{}
	lines := bufio.NewScanner(strings.NewReader(printed))
	for lines.Scan() {
		name, text, ok := strings.Cut(lines.Text(), "=")
		if !ok {
			continue
		}
		n, err := strconv.Atoi(text)
		if err != nil {
			return frame{}, fmt.Errorf("read window geometry: %w", err)
		}
		values[name] = n
	}
	f := frame{values["X"], values["Y"], values["WIDTH"], values["HEIGHT"]}
	if f.w <= 0 || f.h <= 0 {
		return frame{}, fmt.Errorf("read window geometry: no width or height in %q", printed)
	}
	return f, nil
}

// within returns the pixel at a share of a control's width and height (0 to 1
// each). It is an error when that lies outside the window: a control that is
// scrolled away cannot be clicked.
func (f frame) within(c Control, size [2]float64, across, down float64) (point, error) {
	// A share of 1 is the last pixel in the control, not the first beyond it.
	x := c.X + math.Min(across*c.W, math.Max(c.W-1, 0))
	y := c.Y + math.Min(down*c.H, math.Max(c.H-1, 0))
	if x < 0 || y < 0 || x >= size[0] || y >= size[1] {
		return point{}, fmt.Errorf("%q is outside the window: %.0f, %.0f of %.0f x %.0f", c.Name, x, y, size[0], size[1])
	}
	if c.W <= 0 || c.H <= 0 {
		return point{}, fmt.Errorf("%q has no size", c.Name)
	}
	return point{
		x: f.x + int(x*float64(f.w)/size[0]),
		y: f.y + int(y*float64(f.h)/size[1]),
	}, nil
}

// between lists the points of a straight way in a number of moves, the end included.
func between(from, to point, moves int) []point {
	list := make([]point, 0, moves)
	for i := 1; i <= moves; i++ {
		share := float64(i) / float64(moves)
		list = append(list, point{
			x: from.x + int(math.Round(share*float64(to.x-from.x))),
			y: from.y + int(math.Round(share*float64(to.y-from.y))),
		})
	}
	return list
}

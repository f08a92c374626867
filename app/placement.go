package app

import "fyne.io/fyne/v2"

// Area is a part of the desktop, in the units of the system: the free part of a
// screen, or a window.
type Area struct{ X, Y, Width, Height int }

// The size a window opens at where there is room, in px of the toolkit.
const usualWidth, usualHeight float32 = 1440, 900

// Placement is where and how large a window stood when it was closed. The place
// is in the units of the system, the size in px of the toolkit; zero is not known.
type Placement struct {
	X, Y  int
	Width float32
	// Height is that of the content.
	Height float32
	// Placed says that X and Y are known.
	Placed bool
}

// Fit returns where a window is to open: as it stood, no larger than the screen
// it is on, and wholly on it. Screens are the free areas, the main one first;
// scale is units of the system a px; frame is what title and borders add, in
// units of the system.
func (p Placement) Fit(screens []Area, scale float32, frame fyne.Size) Placement {
	if p.Width <= 0 || p.Height <= 0 {
		p.Width, p.Height = usualWidth, usualHeight
	}
	if len(screens) == 0 || scale <= 0 {
		return p
	}
	on, there := screens[0], false
	for _, s := range screens {
		if p.Placed && s.holds(p.X, p.Y) {
			on, there = s, true
			break
		}
	}
	p.Placed = there // a screen that is gone is no place
	p.Width = min(p.Width, (float32(on.Width)-frame.Width)/scale)
	p.Height = min(p.Height, (float32(on.Height)-frame.Height)/scale)
	if there {
		p.X = min(p.X, on.X+on.Width-int(p.Width*scale+frame.Width))
		p.Y = min(p.Y, on.Y+on.Height-int(p.Height*scale))
		p.X, p.Y = max(p.X, on.X), max(p.Y, on.Y)
	}
	return p
}

// holds reports whether a point lies in an area.
func (a Area) holds(x, y int) bool {
	return x >= a.X && x < a.X+a.Width && y >= a.Y && y < a.Y+a.Height
}

// The names a placement is kept under in the settings of the window, which are
// not part of the records.
const (
	keyX, keyY, keyPlaced = "window.x", "window.y", "window.placed"
	keyWidth, keyHeight   = "window.width", "window.height"
)

// LoadPlacement reads where the window stood.
func LoadPlacement(from fyne.Preferences) Placement {
	return Placement{
		X: from.Int(keyX), Y: from.Int(keyY), Placed: from.Bool(keyPlaced),
		Width: float32(from.Float(keyWidth)), Height: float32(from.Float(keyHeight)),
	}
}

// Save keeps where the window stands.
func (p Placement) Save(to fyne.Preferences) {
	to.SetInt(keyX, p.X)
	to.SetInt(keyY, p.Y)
	to.SetBool(keyPlaced, p.Placed)
	to.SetFloat(keyWidth, float64(p.Width))
	to.SetFloat(keyHeight, float64(p.Height))
}

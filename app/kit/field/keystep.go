package field

import "fyne.io/fyne/v2"

// stepOf is how far a key moves a value: the arrows by little, Page Up and Page Down
// by much; 0 for another key.
func stepOf[T int | float64](e *fyne.KeyEvent, little, much T) T {
	switch e.Name {
	case fyne.KeyUp:
		return little
	case fyne.KeyDown:
		return -little
	case fyne.KeyPageUp:
		return much
	case fyne.KeyPageDown:
		return -much
	}
	return 0
}

package look

import "fyne.io/fyne/v2"

// ShowIf shows or hides an object; one that is so already is left alone.
func ShowIf(o fyne.CanvasObject, on bool) {
	switch {
	case o.Visible() == on:
	case on:
		o.Show()
	default:
		o.Hide()
	}
}

// EnableIf lets a control be used, or keeps it from it; one that is so already
// is left alone.
func EnableIf(c fyne.Disableable, on bool) {
	switch {
	case on != c.Disabled():
		return
	case on:
		c.Enable()
	default:
		c.Disable()
	}
	if o, ok := c.(fyne.CanvasObject); ok {
		o.Refresh() // a text of many lines does not by itself
	}
}

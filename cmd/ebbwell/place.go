package main

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"ebbwell/app"
)

// frameRoom is kept for a title and borders that are not known before the
// window is there, in units of the system.
func frameRoom() fyne.Size { return fyne.NewSize(16, 48) }

// place opens the window as it stood, on a screen it fits.
func place(a fyne.App, w fyne.Window) {
	screens, scale := screensNow()
	p := app.LoadPlacement(a.Preferences()).Fit(screens, scale*userScale(a), frameRoom())
	w.Resize(fyne.NewSize(p.Width, p.Height))
	if d, ok := w.(desktop.Window); ok && p.Placed {
		d.RequestPosition(p.X, p.Y)
	}
}

// userScale is the scale chosen in the settings of the toolkit.
func userScale(a fyne.App) float32 {
	if s := a.Settings().Scale(); s > 0 {
		return s
	}
	return 1
}

// remember keeps where the window stands; a window over the whole screen is
// remembered as it stood before.
func remember(a fyne.App, w fyne.Window) {
	if w.FullScreen() {
		return
	}
	size := w.Canvas().Size()
	p := app.Placement{Width: size.Width, Height: size.Height}
	p.X, p.Y, p.Placed = spotOf(w)
	p.Save(a.Preferences())
}

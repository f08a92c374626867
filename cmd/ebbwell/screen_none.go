//go:build ci

package main

import (
	"fyne.io/fyne/v2"

	"ebbwell/app"
)

// screensNow knows no screen where the toolkit has none.
func screensNow() (list []app.Area, scale float32) { return nil, 1 }

// spotOf knows no place.
func spotOf(fyne.Window) (x, y int, known bool) { return 0, 0, false }

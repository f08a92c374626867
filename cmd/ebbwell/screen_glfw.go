//go:build !ci

package main

import (
	"fyne.io/fyne/v2"
	"github.com/go-gl/glfw/v3.4/glfw"

	"ebbwell/app"
)

// The toolkit does not tell how large a screen is, nor where a window stands;
// the library below it does.

// screensNow lists the free areas of the screens, the main one first, and the
// scale of the main one. The toolkit has begun GLFW by the time there is a window.
func screensNow() (list []app.Area, scale float32) {
	scale = 1
	main := glfw.GetPrimaryMonitor()
	for _, m := range glfw.GetMonitors() {
		var area app.Area
		area.X, area.Y, area.Width, area.Height = m.GetWorkarea()
		if area.Width <= 0 || area.Height <= 0 {
			continue
		}
		if main != nil && m.GetName() == main.GetName() && len(list) > 0 {
			list = append([]app.Area{area}, list...)
			continue
		}
		list = append(list, area)
	}
	if main != nil {
		if x, _ := main.GetContentScale(); x > 0 {
			scale = x
		}
	}
	return list, scale
}

// spotOf tells where a window stands; known is false where the system does not say.
func spotOf(w fyne.Window) (x, y int, known bool) {
	drawn, ok := w.(interface{ RunWithContext(func()) })
	if !ok {
		return 0, 0, false
	}
	drawn.RunWithContext(func() {
		if native := glfw.GetCurrentContext(); native != nil {
			x, y = native.GetPos()
			known = x != 0 || y != 0
		}
	})
	return x, y, known
}

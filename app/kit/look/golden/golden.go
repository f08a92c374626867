// Package golden compares pictures of widgets and screens with pictures that
// were looked at and kept.
//
// Widgets are kept in several looks, see [Modes]. Of screens a few are kept,
// in one look and size, see [Album]: the other looks and sizes are held to the
// rules of the layout instead, which needs no picture.
//
// Pictures are drawn by the software painter with the program's own typeface.
// Nothing in them depends on time: the theme of [Use] leaves out scroll bars,
// which come and go by themselves, and nothing else of the window moves. How
// pictures are kept and compared is said in ebbwell/internal/golden.
package golden

import (
	"fmt"
	"image"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/kit/look"
	"ebbwell/internal/golden"
)

// Mode is a look a picture is taken in.
type Mode struct {
	Dark    bool
	Percent int
}

// Modes lists the looks every widget is kept in: light and dark, and at 150 %
// text.
func Modes() []Mode {
	return []Mode{{false, 100}, {true, 100}, {false, 150}}
}

// Light is the mode most screens are shown in.
func Light() Mode { return Mode{Percent: 100} }

// Dark is the dark mode.
func Dark() Mode { return Mode{Dark: true, Percent: 100} }

// LargeText is the light mode with text of one and a half times the size.
func LargeText() Mode { return Mode{Percent: 150} }

// SmallRoom is what a window of 1180 x 760 leaves a screen, px.
func SmallRoom() fyne.Size { return fyne.NewSize(1000, 704) }

// LargeRoom is what a window of 1600 x 1000 leaves a screen, px.
func LargeRoom() fyne.Size { return fyne.NewSize(1420, 944) }

// String names the mode in file names: "dark-150".
func (m Mode) String() string {
	if m.Dark {
		return fmt.Sprintf("dark-%d", m.Percent)
	}
	return fmt.Sprintf("light-%d", m.Percent)
}

// Use gives the test an app of its own in a mode.
func Use(t testing.TB, m Mode) fyne.App {
	a := test.NewTempApp(t)
	a.Settings().SetTheme(look.NewTheme(m.Dark, m.Percent).Still())
	return a
}

// Open shows content in a window of a size; call [Use] before content is
// built. The window is closed when the test ends.
func Open(t testing.TB, content fyne.CanvasObject, size fyne.Size) fyne.Window {
	w := test.NewTempWindow(t, content)
	w.SetPadded(false)
	w.Resize(size)
	LayOutAgain(w.Canvas())
	return w
}

// LayOutAgain lays a window out again until heights that depend on widths agree,
// as the window of the running program does by itself.
func LayOutAgain(c fyne.Canvas) {
	for range 3 {
		c.Content().Refresh()
		for _, o := range c.Overlays().List() {
			o.Refresh()
		}
	}
}

// Shoot builds content in a mode and takes its picture at a size in px at
// 100 % text; the size grows with the text.
func Shoot(t testing.TB, m Mode, size fyne.Size, build func() fyne.CanvasObject) image.Image {
	Use(t, m)
	grown := fyne.NewSize(look.Scaled(size.Width), look.Scaled(size.Height))
	return Open(t, build(), grown).Canvas().Capture()
}

// Check compares a picture with the kept one of that name under
// testdata/golden, or keeps it when update is set.
func Check(t testing.TB, name string, got image.Image, update bool) {
	t.Helper()
	golden.Check(t, name, got, update)
}

// Needed skips a test that is of no use without pictures.
func Needed(t testing.TB) {
	t.Helper()
	golden.Needed(t)
}

// Same reports whether two pictures have the same size and pixels.
func Same(a, b image.Image) bool { return golden.Same(a, b) }

// Window is [Check] for what a window shows; without pictures in this run it
// draws nothing.
func Window(t testing.TB, name string, w fyne.Window, update bool) {
	t.Helper()
	if golden.Off() {
		return
	}
	golden.Check(t, name, w.Canvas().Capture(), update)
}

// Album is the few screens of a package that are kept as pictures.
type Album struct {
	// Keep are their names; a screen with another name is not drawn.
	Keep []string
	// Update keeps new pictures in place of the old.
	Update bool
}

// Screen compares what a window shows with the kept picture of that name, if
// the album has it.
func (a Album) Screen(t testing.TB, name string, w fyne.Window) {
	t.Helper()
	if slices.Contains(a.Keep, name) {
		Window(t, name, w, a.Update)
	}
}

// Package golden compares pictures of widgets with pictures that were looked
// at and kept.
//
// A test shoots a widget with [Shoot], in light or dark and at a text size,
// and hands the picture to [Check]. Pictures are drawn by the software painter
// with the program's own typeface, so they are the same on every machine and
// are compared pixel for pixel. One that differs is written beside the kept
// one as .failed.png, with the difference as .diff.png; a test's -update flag
// keeps the new one instead.
package golden

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/kit/look"
)

// Mode is a look a picture is taken in.
type Mode struct {
	Dark    bool
	Percent int
}

// Modes lists the looks every widget is kept in: light and dark, at 100 and
// 150 % text.
func Modes() []Mode {
	return []Mode{{false, 100}, {true, 100}, {false, 150}, {true, 150}}
}

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
	a.Settings().SetTheme(look.NewTheme(m.Dark, m.Percent))
	return a
}

// Open shows content in a window of a size; call [Use] before content is
// built. The window is closed when the test ends.
func Open(t testing.TB, content fyne.CanvasObject, size fyne.Size) fyne.Window {
	w := test.NewTempWindow(t, content)
	w.SetPadded(false)
	w.Resize(size)
	Settle(w.Canvas())
	return w
}

// Settle lays a window out again until heights that depend on widths agree,
// as the window of the running program does by itself.
func Settle(c fyne.Canvas) {
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
	path := filepath.Join("testdata", "golden", name+".png")
	failed, diff := filepath.Join("testdata", "golden", name+".failed.png"), filepath.Join("testdata", "golden", name+".diff.png")
	_ = os.Remove(failed)
	_ = os.Remove(diff)
	if update {
		if err := write(path, got); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := read(path)
	if errors.Is(err, os.ErrNotExist) {
		t.Errorf("no picture kept as %s; look at %s and run with -update", path, failed)
		if err := write(failed, got); err != nil {
			t.Error(err)
		}
		return
	}
	if err != nil {
		t.Fatal(err)
	}
	if Same(want, got) {
		return
	}
	n, marked := difference(want, got)
	t.Errorf("%s: %d pixels differ; see %s and %s", path, n, failed, diff)
	for to, img := range map[string]image.Image{failed: got, diff: marked} {
		if err := write(to, img); err != nil {
			t.Error(err)
		}
	}
}

// Same reports whether two pictures have the same size and pixels.
func Same(a, b image.Image) bool {
	p, q := pixels(a), pixels(b)
	return p.Bounds() == q.Bounds() && bytes.Equal(p.Pix, q.Pix)
}

// pixels is a picture in the form that Capture makes and PNG files hold.
func pixels(img image.Image) *image.NRGBA {
	if p, ok := img.(*image.NRGBA); ok {
		return p
	}
	p := image.NewNRGBA(img.Bounds())
	draw.Draw(p, p.Bounds(), img, img.Bounds().Min, draw.Src)
	return p
}

// difference counts the pixels that differ and marks them on a faded picture.
func difference(a, b image.Image) (n int, marked image.Image) {
	bounds := a.Bounds().Union(b.Bounds())
	out := image.NewNRGBA(bounds)
	for y := bounds.Min.Y; y < bounds.Max.Y; y++ {
		for x := bounds.Min.X; x < bounds.Max.X; x++ {
			p := color.NRGBAModel.Convert(a.At(x, y)).(color.NRGBA)
			q := color.NRGBAModel.Convert(b.At(x, y)).(color.NRGBA)
			if p == q {
				faded := uint8(200 + (int(p.R)+int(p.G)+int(p.B))/3/5)
				out.SetNRGBA(x, y, color.NRGBA{faded, faded, faded, 255})
				continue
			}
			n++
			out.SetNRGBA(x, y, color.NRGBA{210, 0, 60, 255})
		}
	}
	return n, out
}

func read(path string) (image.Image, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer func() { _ = f.Close() }()
	img, err := png.Decode(f)
	if err != nil {
		return nil, fmt.Errorf("read picture %s: %w", path, err)
	}
	return img, nil
}

func write(path string, img image.Image) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return fmt.Errorf("keep picture: %w", err)
	}
	f, err := os.Create(path)
	if err != nil {
		return fmt.Errorf("keep picture: %w", err)
	}
	if err := png.Encode(f, img); err != nil {
		return errors.Join(fmt.Errorf("keep picture %s: %w", path, err), f.Close())
	}
	return f.Close()
}

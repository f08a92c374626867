package picture

import (
	"context"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/apptest"
)

// A chart's picture is twice its size, shows what it shows, and leaves it where it is.
func TestOfDrawsTheChart(t *testing.T) {
	bar := canvas.NewRectangle(color.NRGBA{R: 0xD5, G: 0x5E, A: 0xFF})
	apptest.Window(t, bar, 320, 200, false, 100)
	before := bar.Size()
	img := Of(bar)
	if got := img.Bounds().Size(); got.X != int(2*before.Width) || got.Y != int(2*before.Height) {
		t.Errorf("%v px of a chart of %v", got, before)
	}
	if r, g, b, _ := img.At(50, 50).RGBA(); r>>8 != 0xD5 || g>>8 != 0x5E || b>>8 != 0 {
		t.Errorf("the picture is %x %x %x there", r>>8, g>>8, b>>8)
	}
	if bar.Size() != before {
		t.Errorf("the chart is now %v, was %v", bar.Size(), before)
	}
}

// Several pages are kept in files of their own; a file is a picture.
func TestSavesEachPicture(t *testing.T) {
	d, _ := apptest.Desk(t)
	w := apptest.Window(t, canvas.NewRectangle(color.White), 900, 600, false, 100)
	path, done := filepath.Join(t.TempDir(), "page.png"), ""
	Save(d, w.Canvas(), Request{
		Name: "test.picture", File: "page", Done: func(p string) { done = p },
		Pictures: func(context.Context) ([]image.Image, error) {
			return []image.Image{image.NewGray(image.Rect(0, 0, 4, 5)), image.NewGray(image.Rect(0, 0, 6, 7))}, nil
		},
	})
	apptest.Type(t, w, "test.picture.path", path)
	apptest.Press(w, fyne.KeyReturn)
	if done != path {
		t.Fatalf("told %q", done)
	}
	for name, wide := range map[string]int{path: 4, filepath.Join(filepath.Dir(path), "page 2.png"): 6} {
		file, err := os.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(file)
		if err != nil || img.Bounds().Dx() != wide {
			t.Errorf("%s: %v, %v", name, img.Bounds(), err)
		}
		if err := file.Close(); err != nil {
			t.Error(err)
		}
	}
}

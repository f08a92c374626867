package golden_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/golden"
)

// noisy draws a picture of a number of colours.
func noisy(colours int, seed uint32) *image.NRGBA {
	img := image.NewNRGBA(image.Rect(0, 0, 64, 64))
	next := func() uint8 { seed = seed*1664525 + 1013904223; return uint8(seed >> 24) }
	palette := make([]color.NRGBA, colours)
	for i := range palette {
		palette[i] = color.NRGBA{R: next(), G: next(), B: next(), A: 0xFF}
	}
	for i := range 64 * 64 {
		img.SetNRGBA(i%64, i/64, palette[i%colours])
	}
	return img
}

// kept is a picture as it comes back from its file.
func kept(t testing.TB, img image.Image) *image.Paletted {
	t.Helper()
	var file bytes.Buffer
	if err := png.Encode(&file, golden.Reduce(img)); err != nil {
		t.Fatal(err)
	}
	back, err := png.Decode(&file)
	if err != nil {
		t.Fatal(err)
	}
	return back.(*image.Paletted)
}

// A picture agrees with itself kept, whatever its colours, and also when each
// channel is off by the rounding; one channel of one pixel further off is seen.
func TestKeptPictureAgrees(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		img := noisy(rapid.SampledFrom([]int{1, 7, 200, 255, 400, 2000}).Draw(r, "colours"), rapid.Uint32().Draw(r, "seed"))
		want := kept(t, img)
		off := rapid.IntRange(-golden.Rounding, golden.Rounding).Draw(r, "off")
		for i := range img.Pix {
			if i%4 != 3 {
				img.Pix[i] = uint8(min(max(int(img.Pix[i])+off, 0), 255))
			}
		}
		if n, _ := golden.Difference(want, img); n != 0 {
			r.Fatalf("%d pixels differ", n)
		}
	})
}

func TestOneChangedPixelIsSeen(t *testing.T) {
	for _, c := range []struct {
		name    string
		colours int
		by      uint8 // more than a whole step and the rounding
	}{{"fine", 100, 12}, {"coarse", 1500, 68}} {
		img := noisy(c.colours, 3)
		want := kept(t, img)
		for at := range 4 * 64 {
			if at%4 == 3 {
				continue
			}
			was := img.Pix[at]
			img.Pix[at] = was + c.by
			if was > 127 {
				img.Pix[at] = was - c.by
			}
			if n, _ := golden.Difference(want, img); n != 1 {
				t.Errorf("%s: %d pixels differ after byte %d went from %d to %d", c.name, n, at, was, img.Pix[at])
			}
			img.Pix[at] = was
		}
	}
}

// A picture of another size differs by what the other does not have.
func TestOtherSizeIsSeen(t *testing.T) {
	img := image.NewNRGBA(image.Rect(0, 0, 10, 10))
	for i := range img.Pix {
		img.Pix[i] = 0xFF
	}
	want := kept(t, img)
	if n, _ := golden.Difference(want, img.SubImage(image.Rect(0, 0, 10, 8))); n != 20 {
		t.Errorf("%d pixels differ, want two rows of ten", n)
	}
}

// recorder takes the failures of a check.
type recorder struct {
	testing.TB
	failed int
}

func (r *recorder) Errorf(string, ...any) { r.failed++ }
func (r *recorder) Helper()               {}

func TestCheck(t *testing.T) {
	t.Chdir(t.TempDir())
	t.Setenv(golden.Switch, "") // the run around may have switched pictures off
	a, b := noisy(9, 1), noisy(9, 2)
	check := func(img image.Image, update bool) int {
		r := &recorder{TB: t}
		golden.Check(r, "one", img, update)
		return r.failed
	}
	there := func(name string) bool {
		_, err := os.Stat(golden.Folder + "/" + name)
		return err == nil
	}
	if check(a, false) != 1 || !there("one.failed.png") {
		t.Error("a picture that nobody kept passes, or is not written to be looked at")
	}
	if check(a, true) != 0 || check(a, false) != 0 || there("one.failed.png") {
		t.Error("a kept picture does not pass, or the failed one is left")
	}
	if check(b, false) != 1 || !there("one.diff.png") {
		t.Error("another picture passes")
	}
	t.Setenv(golden.Switch, "off")
	if !golden.Off() || check(b, false) != 0 {
		t.Error("pictures are compared though they are off")
	}
}

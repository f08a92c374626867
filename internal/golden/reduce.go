package golden

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
)

// Rounding is what a channel may differ by, of 255, beside half the step the
// kept picture was rounded to.
const Rounding = 3

// The steps that channels of a kept picture are rounded to: fine, and twice as
// coarse again and again where the colours do not fit one palette. Of the
// coarsest there are 64, which always do.
const (
	fine     = 8
	coarsest = 64
)

// Reduce rounds the colours of a picture so that they fit a palette.
func Reduce(img image.Image) *image.Paletted {
	from := pixels(img)
	for step := fine; ; step *= 2 {
		if out := reduce(from, step); out != nil {
			return out
		}
	}
}

// reduce rounds to a step; nil when more than 256 colours are left.
func reduce(from *image.NRGBA, step int) *image.Paletted {
	out := image.NewPaletted(from.Bounds(), nil)
	index := map[[3]uint8]uint8{}
	for i := 0; i < len(from.Pix); i += 4 {
		c := [3]uint8{middle(from.Pix[i], step), middle(from.Pix[i+1], step), middle(from.Pix[i+2], step)}
		at, known := index[c]
		if !known {
			if len(out.Palette) == 256 {
				return nil
			}
			at = uint8(len(out.Palette)) // below 256
			index[c] = at
			out.Palette = append(out.Palette, color.NRGBA{R: c[0], G: c[1], B: c[2], A: 0xFF})
		}
		out.Pix[i/4] = at
	}
	return out
}

// middle is the middle of the step a channel lies in.
func middle(v uint8, step int) uint8 {
	return uint8(int(v)/step*step + step/2) // below 256: 255 lies in the last step
}

// stepOf tells from its colours what a kept picture was rounded to.
func stepOf(p color.Palette) int {
	step := coarsest
	for _, c := range p {
		n := color.NRGBAModel.Convert(c).(color.NRGBA)
		for _, v := range []uint8{n.R, n.G, n.B} {
			for step > fine && int(v)%step != step/2 {
				step /= 2
			}
		}
	}
	return step
}

// Difference counts the pixels of a drawn picture that lie outside the
// tolerance of the kept one, and marks them red on a faded picture.
func Difference(want *image.Paletted, got image.Image) (n int, marked *image.NRGBA) {
	a, b := pixels(want), pixels(got)
	marked = image.NewNRGBA(a.Bounds().Union(b.Bounds()))
	apart := stepOf(want.Palette)/2 + Rounding
	for y := marked.Rect.Min.Y; y < marked.Rect.Max.Y; y++ {
		for x := marked.Rect.Min.X; x < marked.Rect.Max.X; x++ {
			p, q := a.NRGBAAt(x, y), b.NRGBAAt(x, y)
			if far(p.R, q.R, apart) || far(p.G, q.G, apart) || far(p.B, q.B, apart) || p.A != q.A {
				n++
				marked.SetNRGBA(x, y, color.NRGBA{R: 0xD2, B: 0x3C, A: 0xFF})
				continue
			}
			faded := uint8(200 + (int(p.R)+int(p.G)+int(p.B))/15) // at most 251
			marked.SetNRGBA(x, y, color.NRGBA{R: faded, G: faded, B: faded, A: 0xFF})
		}
	}
	return n, marked
}

func far(a, b uint8, apart int) bool { return int(max(a, b))-int(min(a, b)) > apart }

// Same reports whether two drawn pictures have the same size and pixels.
func Same(a, b image.Image) bool {
	p, q := pixels(a), pixels(b)
	return p.Bounds() == q.Bounds() && bytes.Equal(p.Pix, q.Pix)
}

// pixels is a picture from its corner at 0, 0, four bytes a pixel.
func pixels(img image.Image) *image.NRGBA {
	if p, ok := img.(*image.NRGBA); ok && p.Rect.Min == (image.Point{}) {
		return p
	}
	size := img.Bounds().Size()
	p := image.NewNRGBA(image.Rectangle{Max: size})
	draw.Draw(p, p.Bounds(), img, img.Bounds().Min, draw.Src)
	return p
}

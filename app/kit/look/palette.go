package look

import (
	"image/color"

	"fyne.io/fyne/v2"
)

// Grounds are the surfaces everything stands on, and the lines between them.
type Grounds struct {
	// Paper is the window, Sheet a panel on it, Sunk a chosen row or a caution.
	Paper, Sheet, Sunk color.Color
	// Hairline is the hairline; it separates and carries no meaning by itself.
	Hairline color.Color
	// Edge outlines what can be typed in or pressed: at least 3:1 on every ground
	// (WCAG 2.2, success criterion 1.4.11).
	Edge color.Color
}

// Inks are the colours of text: at least 4.5:1 on paper and sheet (WCAG 2.2,
// success criterion 1.4.3).
type Inks struct {
	Ink, Ink2, Ink3 color.Color
}

// Hues belong to substances and mean nothing else. They come from the palette
// for colour-blind readers of Okabe and Ito (Color Universal Design, 2008),
// lightened for dark grounds.
type Hues struct {
	Water, Drink, Food, Loss, Salt color.Color
}

// Palette is all the colour there is, for a light or a dark window.
type Palette struct {
	Dark bool
	Grounds
	Inks
	Hues
}

// NewPalette returns the light or the dark palette.
func NewPalette(dark bool) Palette {
	if dark {
		return Palette{
			Dark:    true,
			Grounds: Grounds{Paper: rgb(0x16191C), Sheet: rgb(0x1F2327), Sunk: rgb(0x111315), Hairline: rgb(0x363B41), Edge: rgb(0x737980)},
			Inks:    Inks{Ink: rgb(0xECE9E2), Ink2: rgb(0xA9AEB4), Ink3: rgb(0x8E9399)},
			Hues:    Hues{Water: rgb(0x56B4E9), Drink: rgb(0x2FBF95), Food: rgb(0xD88FB8), Loss: rgb(0xF0803C), Salt: rgb(0x9AA0A7)},
		}
	}
	return Palette{
		Grounds: Grounds{Paper: rgb(0xF5F2EB), Sheet: rgb(0xFFFFFF), Sunk: rgb(0xECE7DC), Hairline: rgb(0xD8D2C4), Edge: rgb(0x857F72)},
		Inks:    Inks{Ink: rgb(0x1D2227), Ink2: rgb(0x565C63), Ink3: rgb(0x676C72)},
		Hues:    Hues{Water: rgb(0x0072B2), Drink: rgb(0x009E73), Food: rgb(0xCC79A7), Loss: rgb(0xD55E00), Salt: rgb(0x8A8F96)},
	}
}

// PaletteNow returns the palette of the running program's theme; the light one
// when that theme is not ours.
func PaletteNow() Palette {
	if t := themeNow(); t != nil {
		return t.palette
	}
	return NewPalette(false)
}

// Substance is what a colour stands for.
type Substance int

// The substances.
const (
	Nothing Substance = iota
	Water
	Drink
	Food
	Loss
	Salt
)

// Hue returns the colour of a substance; ink 2 for [Nothing].
func (p Palette) Hue(s Substance) color.Color {
	switch s {
	case Water:
		return p.Water
	case Drink:
		return p.Drink
	case Food:
		return p.Food
	case Loss:
		return p.Loss
	case Salt:
		return p.Salt
	}
	return p.Ink2
}

// Pale returns a hue thinned onto the sheet: the ground of bands and ranges.
func (p Palette) Pale(c color.Color) color.Color {
	part := 0.24
	if p.Dark {
		part = 0.30
	}
	return Mix(p.Sheet, c, part)
}

// Tone is the ink a text is written in.
type Tone int

// The tones.
const (
	Ink Tone = iota
	Ink2
	Ink3
	// Reversed is paper on ink.
	Reversed
)

// Tone returns the colour of a tone.
func (p Palette) Tone(t Tone) color.Color {
	switch t {
	case Ink2:
		return p.Ink2
	case Ink3:
		return p.Ink3
	case Reversed:
		return p.Paper
	}
	return p.Ink
}

// Mix blends part (0 to 1) of b into a, both opaque.
func Mix(a, b color.Color, part float64) color.Color {
	x, y := color.NRGBAModel.Convert(a).(color.NRGBA), color.NRGBAModel.Convert(b).(color.NRGBA)
	blend := func(m, n uint8) uint8 { return uint8(float64(m)*(1-part) + float64(n)*part + 0.5) }
	return color.NRGBA{R: blend(x.R, y.R), G: blend(x.G, y.G), B: blend(x.B, y.B), A: 0xFF}
}

// veil is c with an alpha, 0 to 255.
func veil(c color.Color, alpha uint8) color.Color {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	n.A = alpha
	return n
}

func rgb(hex uint32) color.Color {
	return color.NRGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: 0xFF}
}

// themeNow is the running program's theme when it is ours, else nil.
func themeNow() *Theme {
	app := fyne.CurrentApp()
	if app == nil {
		return nil
	}
	t, _ := app.Settings().Theme().(*Theme)
	return t
}

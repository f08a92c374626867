package look

import (
	"image/color"
	"maps"
	"sync"
	"sync/atomic"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Theme is the program's look: palette, typeface and sizes. Set it again, with
// another palette or text size, and every widget follows.
type Theme struct {
	palette  Palette
	factor   float32
	regular  fyne.Resource
	semibold fyne.Resource
	colours  map[fyne.ThemeColorName]color.Color
	// lines are the lines of each style, once they have been measured.
	lines *[Key + 1]atomic.Pointer[line]
	// letters beyond the typeface, whether a font has them, regular and semibold.
	letters *[2]sync.Map
}

var _ fyne.Theme = (*Theme)(nil)

// NewTheme makes the light or dark theme with text at a percentage of its
// designed size; 100, 125 and 150 are offered, anything from 75 to 200 works.
func NewTheme(dark bool, textPercent int) *Theme {
	t := &Theme{
		palette:  NewPalette(dark),
		factor:   float32(min(max(textPercent, 75), 200)) / 100,
		regular:  regularFont(),
		semibold: semiboldFont(),
		lines:    new([Key + 1]atomic.Pointer[line]),
		letters:  new([2]sync.Map),
	}
	t.colours = colours(t.palette)
	return t
}

// Still returns the theme without scroll bars: the toolkit shows and hides
// them by the clock, and a picture must not depend on it.
func (t *Theme) Still() *Theme {
	still := *t
	still.colours = maps.Clone(t.colours)
	still.colours[theme.ColorNameScrollBar] = color.Transparent
	return &still
}

// OpenGL returns the theme for a window that the toolkit's OpenGL painter draws. Version
// 2.8 of it begins each picture with the background taken as so many of 255 times 255,
// while colours have 255 times 257: paper would be a shade too light.
func (t *Theme) OpenGL() *Theme {
	drawn := *t
	drawn.colours = maps.Clone(t.colours)
	p := color.NRGBAModel.Convert(t.palette.Paper).(color.NRGBA)
	drawn.colours[theme.ColorNameBackground] = color.NRGBA64{R: uint16(p.R) * 255, G: uint16(p.G) * 255, B: uint16(p.B) * 255, A: 0xFFFF}
	return &drawn
}

// Palette returns the colours of the theme.
func (t *Theme) Palette() Palette { return t.palette }

// Factor returns the text size as a share of the designed one: 1, 1.25, 1.5.
func (t *Theme) Factor() float32 { return t.factor }

// Factor returns the text size of the running program as a share of the
// designed one; 1 when its theme is not ours.
func Factor() float32 {
	if t := themeNow(); t != nil {
		return t.factor
	}
	return 1
}

// Color answers every name the toolkit asks for from the palette, so that a
// stock widget is ink on paper too. The variant is ignored: the window is
// light or dark because the person said so.
func (t *Theme) Color(name fyne.ThemeColorName, _ fyne.ThemeVariant) color.Color {
	if c, ok := t.colours[name]; ok {
		return c
	}
	return t.palette.Ink
}

// colours maps the toolkit's names to the palette.
func colours(p Palette) map[fyne.ThemeColorName]color.Color {
	ink := func(alpha uint8) color.Color { return veil(p.Ink, alpha) }
	return map[fyne.ThemeColorName]color.Color{
		theme.ColorNameBackground:                p.Paper,
		theme.ColorNameButton:                    p.Sheet,
		theme.ColorNameDisabled:                  p.Ink3,
		theme.ColorNameDisabledButton:            p.Sunk,
		theme.ColorNameError:                     p.Ink,
		theme.ColorNameFocus:                     ink(0x1E),
		theme.ColorNameForeground:                p.Ink,
		theme.ColorNameForegroundOnError:         p.Paper,
		theme.ColorNameForegroundOnPrimary:       p.Paper,
		theme.ColorNameForegroundOnSuccess:       p.Paper,
		theme.ColorNameForegroundOnWarning:       p.Paper,
		theme.ColorNameHeaderBackground:          p.Sunk,
		theme.ColorNameHover:                     ink(0x0E),
		theme.ColorNameHyperlink:                 p.Ink,
		theme.ColorNameInnerWindowBorder:         p.Hairline,
		theme.ColorNameInnerWindowBorderInactive: p.Hairline,
		theme.ColorNameInputBackground:           p.Sheet,
		theme.ColorNameInputBorder:               p.Edge,
		theme.ColorNameMenuBackground:            p.Sheet,
		theme.ColorNameOverlayBackground:         p.Sheet,
		theme.ColorNamePlaceHolder:               p.Ink3,
		theme.ColorNamePressed:                   ink(0x1E),
		theme.ColorNamePrimary:                   p.Ink,
		theme.ColorNameScrollBar:                 p.Edge,
		theme.ColorNameScrollBarBackground:       color.Transparent,
		theme.ColorNameSelection:                 ink(0x2B),
		theme.ColorNameSeparator:                 p.Hairline,
		theme.ColorNameShadow:                    color.Transparent,
		theme.ColorNameSuccess:                   p.Ink,
		theme.ColorNameWarning:                   p.Ink,
	}
}

// Font returns semibold for bold and regular for all else; figures of the
// typeface share one width, so monospace needs no other.
func (t *Theme) Font(style fyne.TextStyle) fyne.Resource {
	switch {
	case style.Symbol:
		return theme.DefaultSymbolFont()
	case style.Bold:
		return t.semibold
	}
	return t.regular
}

// Icon returns the toolkit's own icon: there is hardly one in the program.
func (t *Theme) Icon(name fyne.ThemeIconName) fyne.Resource {
	return theme.DefaultTheme().Icon(name)
}

// Size returns text sizes at the chosen percentage, and spacing that keeps a
// stock layout calm on the 4 px grid.
func (t *Theme) Size(name fyne.ThemeSizeName) float32 {
	switch name {
	case theme.SizeNameText:
		return 14 * t.factor
	case theme.SizeNameCaptionText:
		return 12 * t.factor
	case theme.SizeNameSubHeadingText:
		return 18 * t.factor
	case theme.SizeNameHeadingText:
		return 20 * t.factor
	case theme.SizeNameInlineIcon:
		return 16 * t.factor
	case theme.SizeNameInnerPadding:
		return 5
	case theme.SizeNamePadding, theme.SizeNameLineSpacing, theme.SizeNameScrollBarSmall:
		return 4
	case theme.SizeNameScrollBar:
		return 10
	case theme.SizeNameSeparatorThickness, theme.SizeNameInputBorder, theme.SizeNameSplitThickness:
		return 1
	case theme.SizeNameInputRadius, theme.SizeNameButtonRadius, theme.SizeNamePopupRadius, theme.SizeNameMenuRadius:
		return ControlRadius
	case theme.SizeNameCardRadius, theme.SizeNameDialogRadius, theme.SizeNameInnerWindowRadius:
		return SheetRadius
	case theme.SizeNameSelectionRadius, theme.SizeNameScrollBarRadius:
		return 2
	case theme.SizeNameModalBlurRadius:
		return 0
	}
	return theme.DefaultTheme().Size(name)
}

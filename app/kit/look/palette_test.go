package look_test

import (
	"fmt"
	"image/color"
	"maps"
	"math"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

// Every text that stands on a ground needs 4.5:1, every shape that carries a message and
// every edge of a control 3:1 (WCAG 2.2, success criteria 1.4.3 and 1.4.11). The hues of
// substances stand on sheets, or within an edge of ink 3; ink 3 stands on paper and
// sheets only.
func TestContrast(t *testing.T) {
	for _, dark := range []bool{false, true} {
		p := look.NewPalette(dark)
		grounds := map[string]color.Color{"paper": p.Paper, "sheet": p.Sheet, "sunk": p.Sunk, "selection": p.Hairline}
		for _, s := range []look.Substance{look.Nothing, look.Water, look.Drink, look.Food, look.Loss, look.Salt} {
			grounds[fmt.Sprint("pale ", s)] = p.Pale(p.Hue(s))
		}
		grounds["band of advice"] = look.Mix(p.Sheet, p.Ink3, 0.26)
		all, sheets := slices.Sorted(maps.Keys(grounds)), []string{"paper", "sheet"}
		for _, c := range []struct {
			name    string
			of      color.Color
			on      []string
			atLeast float64
		}{
			{"ink", p.Ink, all, 4.5}, {"ink 2", p.Ink2, []string{"paper", "sheet", "sunk"}, 4.5}, {"ink 3", p.Ink3, sheets, 4.5},
			{"edge", p.Edge, []string{"paper", "sheet", "sunk"}, 3}, {"ink 3 as an edge", p.Ink3, []string{"paper", "sheet", "sunk"}, 3},
			{"water", p.Water, []string{"sheet"}, 3}, {"drink", p.Drink, []string{"sheet"}, 3}, {"food", p.Food, []string{"sheet"}, 3},
			{"loss", p.Loss, []string{"sheet"}, 3}, {"salt", p.Salt, []string{"sheet"}, 3},
		} {
			for _, ground := range c.on {
				if got := golden.Contrast(c.of, grounds[ground]); got < c.atLeast {
					t.Errorf("dark %v, %s on %s: %.2f:1, want %.1f:1", dark, c.name, ground, got, c.atLeast)
				}
			}
		}
		if got := golden.Contrast(p.Paper, p.Ink); got < 4.5 {
			t.Errorf("dark %v, paper on ink: %.2f:1", dark, got)
		}
	}
}

func TestHueBelongsToOneSubstance(t *testing.T) {
	p := look.NewPalette(false)
	seen := map[color.Color]look.Substance{}
	for s := look.Nothing; s <= look.Salt; s++ {
		if other, twice := seen[p.Hue(s)]; twice {
			t.Errorf("substances %d and %d share a hue", other, s)
		}
		seen[p.Hue(s)] = s
	}
}

// Every name the toolkit knows is answered, and nothing casts a shadow.
func TestThemeAnswersAllNames(t *testing.T) {
	grey := func(c color.Color) bool { // ink, paper or in between: no substance hue
		n := color.NRGBAModel.Convert(c).(color.NRGBA)
		return max(n.R, n.G, n.B)-min(n.R, n.G, n.B) <= 26
	}
	th := look.NewTheme(false, 100)
	for _, name := range []fyne.ThemeColorName{
		theme.ColorNameBackground, theme.ColorNameButton, theme.ColorNameDisabled, theme.ColorNameDisabledButton, theme.ColorNameError,
		theme.ColorNameFocus, theme.ColorNameForeground, theme.ColorNameForegroundOnPrimary, theme.ColorNameHeaderBackground,
		theme.ColorNameHover, theme.ColorNameHyperlink, theme.ColorNameInputBackground, theme.ColorNameInputBorder,
		theme.ColorNameMenuBackground, theme.ColorNameOverlayBackground, theme.ColorNamePlaceHolder, theme.ColorNamePressed,
		theme.ColorNamePrimary, theme.ColorNameScrollBar, theme.ColorNameSelection, theme.ColorNameSeparator, theme.ColorNameSuccess,
		theme.ColorNameWarning, "a name from a later toolkit",
	} {
		if c := th.Color(name, theme.VariantDark); c == nil || !grey(c) {
			t.Errorf("%s: %v is not ink, paper or between", name, c)
		}
	}
	if _, _, _, a := th.Color(theme.ColorNameShadow, 0).RGBA(); a != 0 {
		t.Error("there is a shadow")
	}
}

func TestThemeGrowsWithText(t *testing.T) {
	for percent, want := range map[int]float32{100: 14, 125: 17.5, 150: 21, 10: 10.5, 900: 28} {
		if got := look.NewTheme(false, percent).Size(theme.SizeNameText); got != want {
			t.Errorf("%d %%: text %v, want %v", percent, got, want)
		}
	}
}

func TestPaletteNowFollowsTheme(t *testing.T) {
	a := golden.Use(t, golden.Mode{Dark: true, Percent: 150})
	if !look.PaletteNow().Dark || look.Factor() != 1.5 {
		t.Error("the dark theme at 150 % is not followed")
	}
	a.Settings().SetTheme(theme.DefaultTheme())
	if look.PaletteNow().Dark || look.Factor() != 1 {
		t.Error("a theme that is not ours must fall back to light at 100 %")
	}
}

// What a person points at is at least 24 px high, and controls are 28 to 32 px
// at 100 % text.
func TestControlHeight(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	if h := look.ControlHeight(); h < 28 || h > 32 {
		t.Errorf("controls are %v px high", h)
	}
}

// The background of a theme for the OpenGL painter, taken as that painter takes it, is
// paper, in each of its 255 steps.
func TestPaperOfTheOpenGLPainter(t *testing.T) {
	for _, dark := range []bool{false, true} {
		own := look.NewTheme(dark, 100)
		r, g, b, a := own.OpenGL().Color(theme.ColorNameBackground, 0).RGBA()
		want := color.NRGBAModel.Convert(own.Palette().Paper).(color.NRGBA)
		step := func(x uint32) uint8 { return uint8(math.Round(min(float64(x)/(255*255), 1) * 255)) }
		if got := (color.NRGBA{R: step(r), G: step(g), B: step(b), A: step(a)}); got != want {
			t.Errorf("dark %v: %v, not %v", dark, got, want)
		}
		if bare := own.Color(theme.ColorNameBackground, 0); bare != own.Palette().Paper {
			t.Errorf("dark %v: the theme itself has %v", dark, bare)
		}
	}
}

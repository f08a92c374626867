package look

import (
	"strings"
	"sync"
	"unicode"

	"fyne.io/fyne/v2"
)

// unshown stands for letters that no font here draws, one or several in a row; paper
// writes the same.
const unshown = '…'

// Shown is a text as it can be drawn: where neither the typeface nor a font of the system
// has a letter, the toolkit would draw a box, and "…" stands instead.
func (s Style) Shown(text string) string {
	if covered(text) {
		return text
	}
	var b strings.Builder
	open := false
	for _, r := range text {
		if s.draws(r) {
			b.WriteRune(r)
			open = false
			continue
		}
		if !open {
			b.WriteRune(unshown)
		}
		open = true
	}
	return b.String()
}

// Drawn is a text as it can be drawn while it is typed: "…" for each letter that no font
// has, so that the caret stands between them.
func (s Style) Drawn(text string) string {
	if covered(text) {
		return text
	}
	return strings.Map(func(r rune) rune {
		if s.draws(r) {
			return r
		}
		return unshown
	}, text)
}

// Unshown lists the letters of a text that no font here draws, each once.
func (s Style) Unshown(text string) []string {
	var list []string
	if covered(text) {
		return list
	}
	seen := map[rune]bool{}
	for _, r := range text {
		if !seen[r] && !s.draws(r) {
			seen[r] = true
			list = append(list, string(r))
		}
	}
	return list
}

// draws reports whether a font has a letter. The toolkit does not say; but what no font
// has is as wide as a code point that is no letter in any.
func (s Style) draws(r rune) bool {
	const large, none = 100, "\U0010FFFD"
	if r >= ' ' && r <= '~' || unicode.IsSpace(r) || inTypeface(r) {
		return true
	}
	known := lettersNow(s.Text().Bold)
	if known != nil {
		if draws, ok := known.Load(r); ok {
			return draws.(bool) //nolint:forcetypeassert // nothing else is stored
		}
	}
	draws := s.wideAt(large, string(r)) != s.wideAt(large, none)
	if known != nil {
		known.Store(r, draws)
	}
	return draws
}

// lettersNow is which letters beyond the typeface a weight of the theme in use is known to
// draw or not to: fonts do not change while the program runs. Nil without a theme of ours.
func lettersNow(bold bool) *sync.Map {
	t := themeNow()
	switch {
	case t == nil:
		return nil
	case bold:
		return &t.letters[1]
	}
	return &t.letters[0]
}

// wideAt is how wide a text is in one size, whatever that of the style is.
func (s Style) wideAt(size float32, text string) float32 {
	at, _ := fyne.CurrentApp().Driver().RenderedTextSize(text, size, s.Text(), nil)
	return at.Width
}

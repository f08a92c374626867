package paper

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"

	"ebbwell/assets"
)

// Lacking stands for letters that the typeface cannot draw, one or several in a row.
const Lacking = "…"

// ascent and descent are how far text reaches from its baseline, in ems: the
// room that a line of it needs, a little within the font's own figures.
const (
	ascent  = 0.90
	descent = 0.26
)

// Faces measures text in the embedded typeface. It is not safe for use by
// two goroutines at once.
type Faces struct {
	fonts [3]*sfnt.Font
	units float64
	glyph [3]map[rune]glyph
	buf   sfnt.Buffer
	// lacked are the letters that could not be drawn since [Faces.Forget].
	lacked []string
}

// glyph is the drawing of a character: its number and its width in ems.
type glyph struct {
	index sfnt.GlyphIndex
	width float64
}

// Load reads the three embedded weights.
func Load() (*Faces, error) {
	f := &Faces{}
	for i, data := range [][]byte{assets.FontRegular(), assets.FontMedium(), assets.FontSemiBold()} {
		font, err := opentype.Parse(data)
		if err != nil {
			return nil, fmt.Errorf("read the typeface for paper: %w", err)
		}
		f.fonts[i] = font
		f.glyph[i] = map[rune]glyph{}
	}
	f.units = float64(f.fonts[0].UnitsPerEm())
	return f, nil
}

// lookUp returns the drawing of a character; ok is false when there is none.
func (f *Faces) lookUp(w Weight, r rune) (g glyph, ok bool) {
	if g, ok = f.glyph[w][r]; ok {
		return g, g.index != 0
	}
	index, err := f.fonts[w].GlyphIndex(&f.buf, r)
	if err != nil {
		index = 0
	}
	advance, err := f.fonts[w].GlyphAdvance(&f.buf, index, fixed.I(int(f.units)), 0)
	if err != nil {
		advance = 0
	}
	g = glyph{index: index, width: float64(advance) / 64 / f.units}
	f.glyph[w][r] = g
	return g, index != 0
}

// Width returns the width of a text in mm. The text is taken as [Faces.Clean]
// would write it.
func (f *Faces) Width(st Style, s string) float64 { return f.measure(st, f.Clean(s)) }

// measure is the width of a clean text.
func (f *Faces) measure(st Style, s string) float64 {
	var ems float64
	for _, r := range s {
		g, _ := f.lookUp(st.Weight, r)
		ems += g.width
	}
	return ems * st.Size
}

// Clean writes a text so that the typeface can draw all of it. Letters with
// separate accents are joined; line ends and tabs become spaces; what has no
// look of its own (joiners, direction marks) goes; letters that the typeface lacks
// become [Lacking] and are noted.
func (f *Faces) Clean(s string) string {
	if plain(s) {
		return s
	}
	var b strings.Builder
	gap := false // the last that was written stands for letters that are lacking
	for _, r := range norm.NFC.String(strings.ToValidUTF8(s, string(utf8.RuneError))) {
		switch {
		case r == '\n' || r == '\r' || r == '\t' || r == '\u2028' || r == '\u2029':
			b.WriteByte(' ')
		case unicode.In(r, unicode.Cc, unicode.Cf, unicode.Variation_Selector):
			continue
		case !f.draws(r), gap && unicode.Is(unicode.Mn, r):
			if !gap {
				b.WriteString(Lacking)
			}
			f.note(r)
			gap = true
			continue
		default:
			b.WriteRune(r)
		}
		gap = false
	}
	return b.String()
}

// draws reports whether the typeface has a letter.
func (f *Faces) draws(r rune) bool {
	if r == utf8.RuneError || r > 0xFFFF {
		return false
	}
	_, ok := f.lookUp(Regular, r)
	return ok
}

// note keeps a letter that could not be drawn, once.
func (f *Faces) note(r rune) {
	if s := string(r); !slices.Contains(f.lacked, s) {
		f.lacked = append(f.lacked, s)
	}
}

// Lacked lists the letters that could not be drawn since [Faces.Forget], each once.
func (f *Faces) Lacked() []string { return slices.Clone(f.lacked) }

// Forget begins a new list of letters that could not be drawn.
func (f *Faces) Forget() { f.lacked = nil }

// plain reports whether a text is all printable ASCII, which needs no cleaning.
func plain(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

package look

import (
	"bytes"
	"reflect"
	"testing"

	"github.com/go-text/typesetting/font"

	"ebbwell/assets"
)

// The toolkit draws U+FFFD for a letter that no font has, as wide as glyph 0: both look as
// "…" does in the typeface of the screen, and every other glyph as it did.
func TestTypefaceHasNoBox(t *testing.T) {
	for weight, files := range map[string][2][]byte{
		"regular":  {assets.FontRegular(), regularFont().Content()},
		"semibold": {assets.FontSemiBold(), semiboldFont().Content()},
	} {
		was, is := parsed(t, files[0]), parsed(t, files[1])
		dots, ok := was.NominalGlyph(unshown)
		box, okToo := was.NominalGlyph(replacement)
		if !ok || !okToo || dots == box {
			t.Fatalf("%s: glyphs %d and %d", weight, dots, box)
		}
		n := glyphs(t, files[0])
		if n < 900 || n != glyphs(t, files[1]) {
			t.Fatalf("%s: %d glyphs were %d", weight, glyphs(t, files[1]), n)
		}
		for g := range font.GID(n) { //nolint:gosec // a typeface has at most 65,535
			as := g
			if g == 0 || g == box {
				as = dots
				if reflect.DeepEqual(was.GlyphData(g), was.GlyphData(dots)) {
					t.Errorf("%s: glyph %d was as “…” already", weight, g)
				}
			}
			if is.HorizontalAdvance(g) != was.HorizontalAdvance(as) || !reflect.DeepEqual(is.GlyphData(g), was.GlyphData(as)) {
				t.Errorf("%s: glyph %d is not as %d was", weight, g, as)
			}
		}
	}
}

// What is no typeface, or is built otherwise, stays as it is.
func TestDottedLeavesWhatItCannotRead(t *testing.T) {
	cut := func(tag string) []byte {
		tables, err := readTables(bytes.NewReader(assets.FontRegular()))
		if err != nil {
			t.Fatal(err)
		}
		tables[tag] = tables[tag][:4]
		return tables.file()
	}
	for name, file := range map[string][]byte{"none": []byte("letters"), "empty": nil, "head": cut("head"), "loca": cut("loca"), "glyf": cut("glyf"), "cmap": cut("cmap"), "hhea": cut("hhea")} {
		if !bytes.Equal(dotted(file), file) {
			t.Errorf("%s: changed", name)
		}
	}
}

func parsed(t *testing.T, file []byte) *font.Face {
	t.Helper()
	face, err := font.ParseTTF(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return face
}

// glyphs is how many glyphs a typeface has.
func glyphs(t *testing.T, file []byte) int {
	t.Helper()
	tables, err := readTables(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	list, err := tables.outlines()
	if err != nil {
		t.Fatal(err)
	}
	return len(list)
}

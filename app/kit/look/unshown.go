package look

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
	"sync"

	"fyne.io/fyne/v2"
	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
	"github.com/go-text/typesetting/font/opentype/tables"

	"ebbwell/assets"
)

// replacement is the letter that the toolkit draws for one that no font has.
const replacement = '\ufffd'

// regularFont and semiboldFont are the typeface as the screen has it, made once.
func regularFont() fyne.Resource { return fontsOnce().regular }

func semiboldFont() fyne.Resource { return fontsOnce().semibold }

type fonts struct{ regular, semibold fyne.Resource }

var fontsOnce = sync.OnceValue(func() fonts { //nolint:gochecknoglobals // made once, never changed
	return fonts{
		regular:  fyne.NewStaticResource("plex-regular.ttf", dotted(assets.FontRegular())),
		semibold: fyne.NewStaticResource("plex-semibold.ttf", dotted(assets.FontSemiBold())),
	}
})

// dotted is a typeface that draws "…" for a letter it has not, where it had a box: the
// toolkit's own editor, which our notes are, draws letters as they were typed. A typeface
// that is built otherwise stays as it is.
func dotted(file []byte) []byte {
	t, err := readTables(bytes.NewReader(file))
	if err != nil {
		return file
	}
	if err := t.copyGlyph(unshown, 0, replacement); err != nil {
		return file
	}
	return t.file()
}

// fontTables are the parts of a TrueType file by their tag.
type fontTables map[string][]byte

func readTables(file opentype.Resource) (fontTables, error) {
	loader, err := opentype.NewLoader(file)
	if err != nil {
		return nil, fmt.Errorf("no typeface: %w", err)
	}
	t := fontTables{}
	for _, tag := range loader.Tables() {
		if t[tag.String()], err = loader.RawTable(tag); err != nil {
			return nil, fmt.Errorf("a part of the typeface cannot be read: %w", err)
		}
	}
	return t, nil
}

// file is the TrueType file of the tables.
func (t fontTables) file() []byte {
	var list []opentype.Table
	for tag, content := range t {
		list = append(list, opentype.Table{Tag: opentype.MustNewTag(tag), Content: content})
	}
	slices.SortFunc(list, func(a, b opentype.Table) int { return cmp.Compare(a.Tag, b.Tag) })
	return opentype.WriteTTF(list)
}

// errFont is said of a typeface whose outlines are not where they are looked for.
var errFont = errors.New("the outlines of the typeface cannot be read")

// copyGlyph draws the letter from in place of glyph zero, which is no letter, and of the
// letter to, as wide as from is.
func (t fontTables) copyGlyph(from rune, zero int, to rune) error {
	cmap, _, err := tables.ParseCmap(t["cmap"])
	if err != nil {
		return fmt.Errorf("which letters there are cannot be read: %w", err)
	}
	letters, _, err := font.ProcessCmap(cmap, tables.FPNone)
	if err != nil {
		return fmt.Errorf("which letters there are cannot be read: %w", err)
	}
	source, has := letters.Lookup(from)
	target, hasToo := letters.Lookup(to)
	outlines, err := t.outlines()
	if err != nil || !has || !hasToo || max(int(source), int(target)) >= len(outlines) {
		return errFont
	}
	for _, at := range []int{zero, int(target)} {
		outlines[at] = outlines[source]
		copy(t.metric(at), t.metric(int(source)))
	}
	t.setOutlines(outlines)
	return nil
}

// outlines are the outlines of the glyphs, in the order of their numbers: what lies between
// two places of the table loca (OpenType specification, "loca" and "glyf").
func (t fontTables) outlines() ([][]byte, error) {
	if len(t["head"]) < headLength || len(t["hhea"]) < hheaLength {
		return nil, errFont
	}
	places := make([]int, 0, len(t["loca"])/2)
	if t.short() {
		for at := 0; at+2 <= len(t["loca"]); at += 2 {
			places = append(places, 2*int(binary.BigEndian.Uint16(t["loca"][at:])))
		}
	} else {
		for at := 0; at+4 <= len(t["loca"]); at += 4 {
			places = append(places, int(binary.BigEndian.Uint32(t["loca"][at:])))
		}
	}
	if len(places) == 0 || !slices.IsSorted(places) || places[len(places)-1] > len(t["glyf"]) {
		return nil, errFont
	}
	list := make([][]byte, len(places)-1)
	for i := range list {
		list[i] = t["glyf"][places[i]:places[i+1]]
	}
	return list, nil
}

// setOutlines writes the outlines anew.
func (t fontTables) setOutlines(list [][]byte) {
	glyf, loca := make([]byte, 0, len(t["glyf"])+1<<10), make([]byte, 0, len(t["loca"]))
	place := func() {
		if t.short() {
			loca = binary.BigEndian.AppendUint16(loca, uint16(len(glyf)/2)) //nolint:gosec // the typeface is ours, and tried by a test
			return
		}
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf))) //nolint:gosec // as above
	}
	for _, one := range list {
		place()
		glyf = append(glyf, one...)
	}
	place()
	t["glyf"], t["loca"] = glyf, loca
}

// The lengths of the tables head and hhea, in bytes, and where in them it is said how loca
// is written and how many glyphs have a width of their own (OpenType specification).
const (
	headLength, locaFormat = 54, 50
	hheaLength, widths     = 36, 34
)

// short reports whether loca has half places of two bytes each.
func (t fontTables) short() bool { return binary.BigEndian.Uint16(t["head"][locaFormat:]) == 0 }

// metric is the width of a glyph and the room on its left, as they are written; empty for a
// glyph that has its width from another.
func (t fontTables) metric(glyph int) []byte {
	if glyph >= int(binary.BigEndian.Uint16(t["hhea"][widths:])) || 4*glyph+4 > len(t["hmtx"]) {
		return nil
	}
	return t["hmtx"][4*glyph : 4*glyph+4]
}

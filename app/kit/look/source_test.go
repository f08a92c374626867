package look

import (
	"bytes"
	"testing"

	"fyne.io/fyne/v2/test"
	"github.com/go-text/typesetting/font"

	"ebbwell/assets"
)

// Every letter that is counted on is in each weight of the typeface; one that is
// not there would be a box.
func TestLettersAreInTheTypeface(t *testing.T) {
	for weight, data := range map[string][]byte{"regular": assets.FontRegular(), "semibold": assets.FontSemiBold()} {
		face, err := font.ParseTTF(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		counted := 0
		for r := rune(' '); r < 0xffff; r++ {
			if r == 0x7f || !covered(string(r)) {
				continue
			}
			counted++
			if _, ok := face.NominalGlyph(r); !ok {
				t.Errorf("%s has no %q (%U)", weight, r, r)
			}
		}
		if counted < 400 {
			t.Errorf("only %d letters are counted on", counted)
		}
	}
}

// A text with a letter that the typeface lacks is left to the toolkit, which has
// others beside it; everything else is set in ours at once.
func TestSource(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(NewTheme(false, 100))
	for text, ours := range map[string]bool{"Ann Weirside": true, "1.05 L/h − 2 %": true, "Zoë Łukasz Чехов": true, "Ελένη Όθων Παπαδάκη": true, "Юлія Ґалаґан Ђорђе": true, "Nguyễn Thị Ánh": true, "Ștefan": true, "سلمى": false, "Ann 🏃": false, "李": false} {
		for _, s := range []Style{Body, Strong, Note, Key} {
			if got := s.Source(text) != nil; got != ours {
				t.Errorf("%q in style %d: ours %t, want %t", text, s, got, ours)
			}
		}
	}
}

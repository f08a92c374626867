package look

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
)

// A name is whole in one line or two, then with initials; its family name is never cut
// while it fits a line by itself.
func TestNameLines(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(NewTheme(false, 100))
	long := "Wilhelmina Charlotte van der Featherstonehaugh"
	one := Strong.Width(long)
	second := NoteStrong.Width("van der Featherstonehaugh")
	for _, c := range []struct {
		name  string
		width float32
		want  []string
	}{
		{"Sefa Quillonde", 197, []string{"Sefa Quillonde"}},
		{long, one, []string{long}},
		{long, one - 1, []string{"Wilhelmina Charlotte", "van der Featherstonehaugh"}},
		{long, second, []string{"Wilhelmina Charlotte", "van der Featherstonehaugh"}},
		{"Anna-Maria Theodora-Wilhelmina-Charlotte Quarrow", Strong.Width("A.-M. T.-W.-C. Quarrow") + 1, []string{"A.-M. T.-W.-C. Quarrow"}},
		{"Wilhelmina-Charlotte Bartholomew-Featherstonehaugh", NoteStrong.Width("W.-C. Bartholomew-") + 1, []string{"W.-C. Bartholomew-", "Featherstonehaugh"}},
		{"Cher", 100, []string{"Cher"}},
	} {
		if got, _ := NameLines(c.name, Strong, c.width); !slices.Equal(got, c.want) {
			t.Errorf("%s in %g px: %q, want %q", c.name, c.width, got, c.want)
		}
	}
	for width := float32(40); width < 400; width += 7 {
		lines, style := NameLines(long, Strong, width)
		for _, line := range lines {
			if style.Width(line) > width {
				t.Errorf("%q is wider than %g px", line, width)
			}
		}
		if all := strings.Join(lines, " "); width >= second && !strings.HasSuffix(all, "van der Featherstonehaugh") {
			t.Errorf("in %g px the family name is cut: %q", width, all)
		}
	}
}

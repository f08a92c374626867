package look

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
)

// Names in any script: what the typeface has is drawn with it; of the others, these tests
// have no font, as a computer may have none, and never is a box drawn for them.
func TestShown(t *testing.T) {
	a := test.NewApp()
	t.Cleanup(a.Quit)
	a.Settings().SetTheme(NewTheme(false, 100))
	for name, want := range map[string]struct{ shown, lacks string }{
		"Ravka Oldenmoor": {"Ravka Oldenmoor", ""}, "Nguyễn Thị Ánh": {"Nguyễn Thị Ánh", ""},
		"Ελένη Παπαδάκη": {"Ελένη Παπαδάκη", ""}, "Юлія Ґалаґан": {"Юлія Ґалаґан", ""},
		"王伟 Wei": {"… Wei", "王伟"}, "سلمى Haddad": {"… Haddad", "سلمى"}, "שלום": {"…", "שלום"}, "देव": {"…", "देव"}, "ქეთი Z": {"… Z", "ქეთი"},
		"Jo 🏑": {"Jo 🏑", ""}, // the toolkit brings its emoji along
	} {
		for _, s := range []Style{Body, Strong, Note, Title} {
			if got := s.Shown(name); got != want.shown {
				t.Errorf("%s is shown as %q", name, got)
			}
			if got := strings.Join(s.Unshown(name), ""); got != want.lacks {
				t.Errorf("%s lacks %q", name, got)
			}
		}
	}
}

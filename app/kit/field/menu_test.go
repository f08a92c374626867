package field

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"golang.org/x/text/language"

	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/words"
)

// pressItem does what a click on an item of the menu does; one that is greyed
// out does nothing.
func pressItem(t *testing.T, m *fyne.Menu, word string) {
	t.Helper()
	for _, i := range m.Items {
		if i.Label == word && !i.Disabled {
			i.Action()
			return
		}
	}
	t.Fatalf("%q cannot be pressed", word)
}

// The menu under the right button cuts, copies, pastes and selects all, and
// greys out what would do nothing.
func TestEditMenu(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	english, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	h := NewHost(english)
	l := NewLine(h, "line", 40)
	w := golden.Open(t, l, fyne.NewSize(300, 200))
	l.SetText("sixty")
	greyed := func() string {
		var list []string
		for _, i := range editMenu(&l.entry, h, l.Text() != "").Items {
			if i.Disabled {
				list = append(list, i.Label)
			}
		}
		return strings.Join(list, ",")
	}
	fyne.CurrentApp().Clipboard().SetContent("")
	if got := greyed(); got != "Cut,Copy,Paste" {
		t.Errorf("nothing selected: greyed out %q", got)
	}
	menu := func() *fyne.Menu { return editMenu(&l.entry, h, l.Text() != "") }
	pressItem(t, menu(), "Select all")
	pressItem(t, menu(), "Cut")
	if l.Text() != "" || fyne.CurrentApp().Clipboard().Content() != "sixty" {
		t.Errorf("cut leaves %q and keeps %q", l.Text(), fyne.CurrentApp().Clipboard().Content())
	}
	pressItem(t, menu(), "Paste")
	pressItem(t, menu(), "Paste")
	if l.Text() != "sixtysixty" {
		t.Errorf("pasted twice: %q", l.Text())
	}
	l.Disable()
	pressItem(t, menu(), "Select all")
	if got := greyed(); got != "Cut,Paste" {
		t.Errorf("read only: greyed out %q", got)
	}
	test.TapSecondary(l)
	if w.Canvas().Overlays().Top() == nil {
		t.Error("the right button opens no menu")
	}
}

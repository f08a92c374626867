package profile

import (
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// A name is kept in any script; which of its letters cannot be printed is said below it.
func TestNamesInAnyScript(t *testing.T) {
	for name, letters := range map[string]string{
		"Ravka Oldenmoor": "", "Ελένη Παπαδάκη": "", "Юлія Ґалаґан": "", "王 Wei": "王", "سلمى": "س, ل, م, ى", "שני": "ש, נ, י", "देव": "द, े, व", "ქეთი": "ქ, ე, თ, ი", "Jo 🏑": "🏑",
	} {
		d, _ := apptest.Desk(t)
		b := openProfile(t, d, desk.Place{Athlete: apptest.Athlete(t, d).ID})
		b.enter("profile.name", name)
		said := b.v.parts.person.letters
		if said.Visible() != (letters != "") {
			t.Errorf("%s: the note is in sight: %v", name, said.Visible())
		}
		if letters != "" && !strings.Contains(said.Text(), "This name has letters that can’t be printed: "+letters+".") {
			t.Errorf("%s: it says %q", name, said.Text())
		}
		fonts := "" // these tests have no font of the system
		for _, o := range b.v.b.Field("profile.name").Field.(*field.Line).Parts() {
			fonts += o.(*look.Paragraph).Text()
		}
		if want := letters != "" && letters != "🏑"; strings.Contains(fonts, "has no font for") != want {
			t.Errorf("%s: of fonts it says %q", name, fonts)
		}
		if kept := b.kept(); kept.Name != name {
			t.Errorf("kept as %q", kept.Name)
		}
	}
}

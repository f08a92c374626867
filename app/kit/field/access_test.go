package field_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// Every kind of field says its name, what it is and what stands in it, with the role
// the toolkit has for it, and never its dotted name.
func TestFieldsAreSpoken(t *testing.T) {
	h := use(t)
	line, number, choice := field.NewLine(h, "a.line", 0), field.NewNumber(h, "a.mass", "", "kg"), field.NewChoice(h, "a.choice", foods())
	toggle, check, rating := field.NewToggle(h, "a.toggle", foods()[:2]), field.NewCheck(h, "a.check", "none passed"), field.NewRating(h, "a.rating", "", "")
	tabs, slider, notes := field.NewTabs(h, "a.tabs", []field.Tab{{Key: "a", Text: "Before"}}), litres(h), field.NewNotes(h, "a.notes", 2)
	line.SetText("Hall 2")
	number.SetValue(64)
	choice.Choose(foods()[0].Key)
	toggle.Choose(foods()[1].Key)
	check.Set(true)
	rating.SetValue(7)
	slider.SetValue(0.5)
	notes.SetText("tired")
	inner := func(n *field.Notes) fyne.CanvasObject { return n.Parts()[0] }
	const button, text = fyne.AccessibleRoleButton, fyne.AccessibleRoleText
	for _, c := range []struct {
		o    fyne.CanvasObject
		at   fyne.CanvasObject
		role fyne.AccessibleRole
		want []string
	}{
		{line, line, text, []string{"Name", "text field", "Hall 2"}},
		{number, number, text, []string{"Name", "64", "kg"}},
		{choice, choice, button, []string{"Name", "list", foods()[0].Text}},
		{toggle, toggle, button, []string{"Name", "choice", foods()[1].Text}},
		{check, check, button, []string{"Name", "tick box: ticked"}},
		{rating, rating, button, []string{"Name", "rating", "7"}},
		{tabs, tabs, button, []string{"Name", "tabs", "Before"}},
		{slider, slider, button, []string{"Name", "slider", "0.5, from"}},
		{notes, inner(notes), text, []string{"Name", "tired"}},
	} {
		look.NewEntry("Name", look.MaxWidth(200, c.o)) // in a box, as forms have it
		a, ok := c.at.(fyne.Accessible)
		if !ok {
			t.Errorf("%T is not accessible", c.at)
			continue
		}
		said := a.AccessibilityLabel()
		for _, want := range c.want {
			if !strings.Contains(said, want) {
				t.Errorf("%T says %q without %q", c.at, said, want)
			}
		}
		if strings.Contains(said, "a.") || a.AccessibilityRole() != c.role {
			t.Errorf("%T says %q as %q", c.at, said, a.AccessibilityRole())
		}
	}
	number.Cover(true)
	if said := number.AccessibilityLabel(); strings.Contains(said, "64") {
		t.Errorf("a covered number is said: %q", said)
	}
}

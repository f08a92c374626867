package field

import (
	"fyne.io/fyne/v2"

	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

// The toolkit knows four roles: button, container, link and text. What else a field is
// (slider, list, tick box) therefore stands in its words, behind its name and before
// its value: "Sun, list: part cloud".

// spokenAs puts together what a screen reader says: the name, what kind of field it is,
// what stands in it. Without a name the kind stands alone: the dotted name is for
// programs.
func (c *control) spokenAs(kind, value string) string {
	return spoken(c.host.Words, c.spoken, kind, value)
}

// spoken is what is read out for a control: name and kind, and what it shows.
func spoken(w *words.Words, name, kind, value string) string {
	text := w.Say("field.kind." + kind)
	if name != "" {
		text = w.Say("field.spoken.kind", name, text)
	}
	if value == "" {
		return text
	}
	return w.Say("field.spoken.value", text, value)
}

// Spoken returns the name a screen reader says; empty while nobody gave one.
func (c *control) Spoken() string { return c.spoken }

// AccessibilityLabel is the field with what stands in it; covered text is not said.
func (t *entry) AccessibilityLabel() string {
	text := t.Text()
	switch {
	case t.setup.covered && !t.focused:
		text = ""
	case text != "" && t.setup.suffix != "":
		text += "\u00a0" + t.setup.suffix
	}
	if _, note := t.Trouble(); note != "" && text != "" {
		text = t.host.Words.Say("field.spoken.trouble", text, note)
	}
	return t.spokenAs("entry", text)
}

// AccessibilityLabel is the choice and what is chosen.
func (c *Choice) AccessibilityLabel() string {
	return c.spokenAs("list", chosenOf(c.options, c.chosen).Text)
}

// AccessibilityRole is button: it opens.
func (c *Choice) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// AccessibilityLabel is the words to choose from and which is chosen.
func (t *Toggle) AccessibilityLabel() string {
	return t.spokenAs("toggle", chosenOf(t.options, t.chosen).Text)
}

// AccessibilityRole is button: it changes what is chosen.
func (t *Toggle) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// AccessibilityLabel is the words of the box and whether it is ticked.
func (c *Check) AccessibilityLabel() string {
	name, state := c.text, "field.unticked"
	if c.spoken != "" {
		name = c.spoken
	}
	if c.on {
		state = "field.ticked"
	}
	return spoken(c.host.Words, name, "check", c.host.Words.Say(state))
}

// AccessibilityLabel is the rating and its value.
func (r *Rating) AccessibilityLabel() string {
	text := ""
	if r.value != Unrated {
		text = r.host.Words.Number(float64(r.value), 0)
	}
	return r.spokenAs("rating", text)
}

// AccessibilityRole is button: it is set by a key or a click.
func (r *Rating) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// AccessibilityLabel is the tabs and which is chosen.
func (t *Tabs) AccessibilityLabel() string {
	text := ""
	if t.chosen >= 0 && t.chosen < len(t.tabs) {
		text = t.tabs[t.chosen].Text
	}
	return t.spokenAs("tabs", text)
}

// AccessibilityRole is button: it changes what is shown.
func (t *Tabs) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// sliderDecimals is with how many decimals the value of a slider is said at most.
const sliderDecimals = 2

// AccessibilityLabel is the slider, where it stands and how far it goes.
func (s *Slider) AccessibilityLabel() string {
	number := func(x float64) string {
		x = quantity.Round(x, sliderDecimals)
		return s.host.Words.Number(x, neededDecimals(x))
	}
	return s.spokenAs("slider", s.host.Words.Say("field.slider.value", number(s.value), number(s.scale.Min), number(s.top())))
}

// AccessibilityRole is button: it is moved by keys.
func (s *Slider) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// SetSpoken sets the name a screen reader says.
func (n *Notes) SetSpoken(text string) { n.inner.spoken = text }

// Spoken returns it.
func (n *Notes) Spoken() string { return n.inner.spoken }

// AccessibilityLabel is the text with its name.
func (e *notesEntry) AccessibilityLabel() string {
	return spoken(e.host.Words, e.spoken, "notes", e.Text)
}

// AccessibilityRole is text.
func (e *notesEntry) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

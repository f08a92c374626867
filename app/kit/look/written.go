package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// written is what a [Label] and a [Paragraph] share: a text, its style and its ink. It
// redraws only when something really changed.
type written struct {
	widget.BaseWidget

	text  string
	style Style
	tone  Tone
}

// Text returns the whole text.
func (w *written) Text() string { return w.text }

// SetText changes the text.
func (w *written) SetText(text string) { change(w, &w.text, text) }

// SetTone changes the ink.
func (w *written) SetTone(tone Tone) { change(w, &w.tone, tone) }

// SetStyle changes size and weight.
func (w *written) SetStyle(style Style) { change(w, &w.style, style) }

// Baseline returns the distance from the top, at the least height, to the first baseline.
func (w *written) Baseline() float32 { return w.style.Baseline() }

// AccessibilityLabel is the text.
func (w *written) AccessibilityLabel() string { return w.text }

// AccessibilityRole is text.
func (w *written) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// change puts a value into something written, and draws it anew where it is another.
func change[T comparable](w *written, at *T, to T) {
	if *at != to {
		*at = to
		w.Refresh()
	}
}

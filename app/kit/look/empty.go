package look

import "fyne.io/fyne/v2"

// Empty says what to do next where there is nothing to show yet: a sentence
// and one action, which may be nil.
func Empty(sentence string, action fyne.CanvasObject) *fyne.Container {
	words := NewParagraph(sentence, Body, Ink2)
	if action == nil {
		return Pad(8, 0, 8, 0, MaxWidth(520, words))
	}
	return Pad(8, 0, 8, 0, VBox(12, MaxWidth(520, words), HBox(0, action)))
}

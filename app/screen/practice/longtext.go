package practice

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/assets"
)

// longTextWidth is the width of a dialog with a text to read, in px.
const longTextWidth = 680

// ShowChanges shows the list of changes on top of a window, in its language.
func ShowChanges(h *field.Host, over fyne.Canvas) {
	showText(h, over, "changes", "practice.about.changes.title", read(assets.Changes(h.Words.Language().String())))
}

// read is a list of changes as it is read on a screen: without the marks of its file and
// without its title, which is that of the dialog.
func read(changes string) string {
	_, text, _ := strings.Cut(changes, "\n\n")
	return strings.TrimSpace(strings.NewReplacer("## ", "", "\n- ", "\n• ").Replace(text))
}

// showText shows a text that fills pages; name is that of the dialog, title a key.
func showText(h *field.Host, over fyne.Canvas, name, title, text string) {
	h.Ask(over, field.Question{
		Name: "practice." + name, Title: h.Words.Say(title), Content: look.NewParagraph(text, look.Note, look.Ink), Width: longTextWidth,
		Actions: []field.Action{{Name: "close", Text: h.Words.Say("field.strip.close"), Kind: field.Primary}},
	})
}

package help

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/words"
)

// Key is a key of the keyboard and what it does, in words.
type Key struct{ Name, Does string }

// keyWidth is the room for the name of a key, in px at 100 % text.
const keyWidth float32 = 116

// content is a page as it is read from top to bottom.
func content(w *words.Words, page desk.HelpPage, everywhere []Key) fyne.CanvasObject {
	text := func(part string) string { return w.Explain("help." + string(page) + "." + part) }
	column := look.VBox(6)
	for line := range strings.Lines(text("for")) {
		column.Add(look.NewParagraph(strings.TrimSpace(line), look.Body, look.Ink))
	}
	heading(column, w.Say("help.enter"))
	terms(column, text("enter"))
	heading(column, w.Say("help.figures"))
	terms(column, text("figures"))
	heading(column, w.Say("help.keys"))
	for line := range strings.Lines(text("keys")) {
		name, does, _ := strings.Cut(strings.TrimSpace(line), "\t")
		column.Add(keyRow(Key{name, does}))
	}
	heading(column, w.Say("help.keys.everywhere"))
	for _, k := range everywhere {
		column.Add(keyRow(k))
	}
	return column
}

// heading begins a part of the page.
func heading(column *fyne.Container, text string) {
	column.Add(look.Pad(12, 0, 0, 0, look.NewLabel(text, look.Strong, look.Ink)))
}

// terms adds the lines of a part: a term in semibold with what it means below it, or a
// line without a term.
func terms(column *fyne.Container, text string) {
	for line := range strings.Lines(text) {
		term, meaning, has := strings.Cut(strings.TrimSpace(line), "\t")
		if !has {
			column.Add(look.NewParagraph(term, look.Body, look.Ink))
			continue
		}
		column.Add(look.VBox(0, look.NewParagraph(term, look.NoteStrong, look.Ink2), look.NewParagraph(meaning, look.Body, look.Ink)))
	}
}

// keyRow is a key and what it does.
func keyRow(k Key) fyne.CanvasObject {
	return look.Columns(12, []look.Track{look.Fixed(keyWidth), look.Share(1)},
		look.NewParagraph(k.Name, look.NoteStrong, look.Ink), look.NewParagraph(k.Does, look.Body, look.Ink))
}

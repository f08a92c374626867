package testsheet

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// newForm makes the form of this screen: room for a number with its unit beside
// short words, two columns in the narrow window.
func newForm(entries ...look.Entry) *look.Form { return look.NewForm(entries...).Measured(128, 300, 2) }

// rowNote is what is wrong or odd in a line of a table, below it.
type rowNote struct {
	text *look.Paragraph
	box  *fyne.Container
}

func newRowNote() *rowNote {
	n := &rowNote{text: look.NewParagraph("", look.Note, look.Ink)}
	n.box = look.Pad(3, 0, 7, 0, n.text)
	n.box.Hide()
	return n
}

// set shows a sentence, or nothing.
func (n *rowNote) set(text string) {
	n.text.SetText(text)
	look.ShowIf(n.box, text != "")
}

// panel is a [look.NewPanel] whose note is a text.
func panel(title, note string, body ...fyne.CanvasObject) *look.Sheet {
	return look.NewPanel(title, look.NewLabel(note, look.Note, look.Ink2), body...)
}

// small keeps a field from growing over its column.
func small(o fyne.CanvasObject) fyne.CanvasObject {
	if box, ok := o.(interface{ SetBox(px float32) }); ok { // its note may be wider
		box.SetBox(smallBox)
		return o
	}
	return look.MaxWidth(smallBox, o)
}

// smallBox is the width of a number's box, in px at 100 % text.
const smallBox float32 = 124

package look

import "fyne.io/fyne/v2"

// HeaderRow is the header above rows of inputs: titles in note style with a
// hairline below, in the same tracks and gap as the [FieldRow]s under it.
func HeaderRow(gap float32, columns []Column) *fyne.Container {
	var tracks []Track
	var titles []fyne.CanvasObject
	for _, c := range columns {
		title := NewLabel(c.Title, Note, Ink2).Shorten()
		if c.Right {
			title.Right()
		}
		tracks = append(tracks, c.track())
		titles = append(titles, title)
	}
	return VBox(0, Pad(4, tablePad, 6, tablePad, Columns(gap, tracks, titles...)), NewRule())
}

// FieldRow is one row of inputs and labels with a hairline below.
func FieldRow(gap float32, columns []Column, objects ...fyne.CanvasObject) *fyne.Container {
	var tracks []Track
	for _, c := range columns {
		tracks = append(tracks, c.track())
	}
	return VBox(0, Pad(4, tablePad, 4, tablePad, Columns(gap, tracks, objects...)), NewRule())
}

package apptest

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

// Texts are all texts that are drawn in a window.
func Texts(o fyne.CanvasObject) []string {
	var list []string
	switch o := o.(type) {
	case *canvas.Text:
		list = append(list, o.Text)
	case *fyne.Container:
		for _, child := range o.Objects {
			list = append(list, VisibleTexts(child)...)
		}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(o).Objects() {
			list = append(list, VisibleTexts(child)...)
		}
	}
	return list
}

// VisibleTexts are those of an object that is not hidden.
func VisibleTexts(o fyne.CanvasObject) []string {
	if o == nil || !o.Visible() {
		return nil
	}
	return Texts(o)
}

// Revealing are the marks of what must not be seen where body mass is hidden.
func Revealing(list []string) []string {
	var found []string
	for _, text := range list {
		for _, mark := range []string{"kg", "%", "kcal", " lb", "\u00a0lb"} {
			if strings.Contains(text, mark) {
				found = append(found, text)
			}
		}
	}
	return found
}

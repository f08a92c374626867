package inspect

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Places lists where everything in a window lies that paints, in whole px, from the first
// painted to the last: two layouts of one screen are the same if their lists are.
func Places(c fyne.Canvas) []string {
	root := c.Content()
	if top := c.Overlays().Top(); top != nil {
		root = top
	}
	var s sight
	s.look(root, fyne.Position{}, areaOf(fyne.Position{}, c.Size()))
	list := make([]string, len(s.drawn))
	for i, d := range s.drawn {
		what := strings.TrimPrefix(fmt.Sprintf("%T", d.object), "*canvas.")
		if text, ok := d.object.(*canvas.Text); ok {
			what = fmt.Sprintf("%q", text.Text)
		}
		list[i] = fmt.Sprintf("%s of %s at %.0f, %.0f to %.0f, %.0f", what, d.of, d.place.left, d.place.top, d.place.right, d.place.bottom)
	}
	return list
}

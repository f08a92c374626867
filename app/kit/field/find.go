package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/look"
)

// Spot is one named object of a screen and where it stands.
type Spot struct {
	Name string
	// Pos is measured from the root's own corner, in px; Size in px.
	Pos      fyne.Position
	Size     fyne.Size
	Disabled bool
	// Object is nil for a place within a widget: a word of tabs, a row of a table.
	Object fyne.CanvasObject
}

// Find returns the visible object with a name below root, nil when there is
// none.
func Find(root fyne.CanvasObject, name string) fyne.CanvasObject {
	var found fyne.CanvasObject
	walk(root, fyne.Position{}, func(o fyne.CanvasObject, _ fyne.Position) bool {
		if nameOf(o) == name {
			found = o
		}
		return found == nil
	})
	return found
}

// Names lists every visible named object below root, in reading order.
func Names(root fyne.CanvasObject) []Spot {
	var list []Spot
	walk(root, fyne.Position{}, func(o fyne.CanvasObject, at fyne.Position) bool {
		if name := nameOf(o); name != "" {
			d, ok := o.(fyne.Disableable)
			list = append(list, Spot{Name: name, Pos: at, Size: o.Size(), Disabled: ok && d.Disabled(), Object: o})
			for _, s := range inside(o) {
				s.Pos = at.Add(s.Pos)
				list = append(list, s)
			}
		}
		return true
	})
	return list
}

func nameOf(o fyne.CanvasObject) string {
	if n, ok := o.(interface{ Name() string }); ok {
		return n.Name()
	}
	return ""
}

// walk visits root and what is visible below it, parents first, until visit
// returns false. It reports whether it came to the end.
func walk(o fyne.CanvasObject, at fyne.Position, visit func(fyne.CanvasObject, fyne.Position) bool) bool {
	if o == nil || !o.Visible() {
		return true
	}
	if !visit(o, at) {
		return false
	}
	for _, child := range Children(o) {
		if child != nil && !walk(child, at.Add(child.Position()), visit) {
			return false
		}
	}
	return true
}

// Children lists what stands in a container or widget.
func Children(o fyne.CanvasObject) []fyne.CanvasObject {
	switch o := o.(type) {
	case *fyne.Container:
		return o.Objects
	case look.Holder:
		return o.Parts()
	case *container.Scroll:
		return []fyne.CanvasObject{o.Content}
	case *container.Split:
		return []fyne.CanvasObject{o.Leading, o.Trailing}
	}
	return nil
}

// reveal scrolls every scroll around an object so that it is in sight.
func reveal(o fyne.CanvasObject) {
	on := canvasOf(o)
	if on == nil {
		return
	}
	root := on.Content()
	if top := on.Overlays().Top(); top != nil {
		root = top
	}
	steps, _, _ := pathTo(root, o)
	for _, step := range steps {
		step.scroll.Reveal(step.top, step.top+o.Size().Height)
	}
}

// pathStep is a scroll on the way to an object, and how far below the top of
// its content the object begins.
type pathStep struct {
	scroll *look.Scroll
	top    float32
}

// pathTo lists the scrolls between at and an object, the innermost first, and
// how far below the top of at the object begins; ok is false when it is not
// there.
func pathTo(at, o fyne.CanvasObject) (steps []pathStep, top float32, ok bool) {
	if at == nil || !at.Visible() {
		return nil, 0, false
	}
	if at == o {
		return nil, 0, true
	}
	for _, child := range Children(at) {
		steps, top, ok := pathTo(child, o)
		if !ok {
			continue
		}
		if s, is := at.(*look.Scroll); is {
			return append(steps, pathStep{s, top}), top - s.Offset(), true
		}
		return steps, top + child.Position().Y, true
	}
	return nil, 0, false
}

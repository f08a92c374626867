package look

import "fyne.io/fyne/v2"

// Flowing is what needs to know its width before its height.
type Flowing interface {
	// HeightFor returns the height at a width, both in px.
	HeightFor(width float32) float32
}

// Based is what has a line of text that its neighbours line up with.
type Based interface {
	// Baseline returns the distance from the top, at the least height, to the
	// first baseline, in px.
	Baseline() float32
}

// Holder is a widget with children that can be walked.
type Holder interface {
	// Parts returns the children.
	Parts() []fyne.CanvasObject
}

// flowingLayout is a layout whose height depends on the width.
type flowingLayout interface {
	heightFor(objects []fyne.CanvasObject, width float32) float32
}

// HeightFor returns the height of an object at a width: its own answer where
// it has one, else its least height.
func HeightFor(o fyne.CanvasObject, width float32) float32 {
	switch o := o.(type) {
	case Flowing:
		return o.HeightFor(width)
	case *fyne.Container:
		if l, ok := o.Layout.(flowingLayout); ok {
			return l.heightFor(o.Objects, width)
		}
	}
	return o.MinSize().Height
}

// BaselineOf returns the first baseline of an object; ok is false when it has
// none.
func BaselineOf(o fyne.CanvasObject) (y float32, ok bool) {
	switch o := o.(type) {
	case Based:
		return o.Baseline(), true
	case *fyne.Container:
		if l, ok := o.Layout.(interface {
			baseline([]fyne.CanvasObject) (float32, bool)
		}); ok {
			return l.baseline(o.Objects)
		}
	}
	return 0, false
}

// visible leaves out what is hidden.
func visible(objects []fyne.CanvasObject) []fyne.CanvasObject {
	for i, o := range objects {
		if o.Visible() {
			continue
		}
		list := append([]fyne.CanvasObject{}, objects[:i]...)
		for _, o := range objects[i+1:] {
			if o.Visible() {
				list = append(list, o)
			}
		}
		return list
	}
	return objects
}

package look

import "fyne.io/fyne/v2"

// VBox stacks objects with a gap between them, each as wide as the box and as
// high as it needs; what [Grow] marks shares the height that is left.
func VBox(gap float32, objects ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &vbox{gap: gap}, Objects: objects}
}

// HBox sets objects in a row, each as wide as it needs, on one baseline; what
// [Grow] marks shares the width that is left. Text that wraps belongs in
// [Columns] or under Grow.
func HBox(gap float32, objects ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &hbox{gap: gap}, Objects: objects}
}

// Grow marks an object that takes the room that is left in an [HBox] or [VBox].
func Grow(o fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &grow{}, Objects: []fyne.CanvasObject{o}}
}

// Stretch is empty room that grows.
func Stretch() *fyne.Container { return Grow(Gap(0, 0)) }

// Gap is empty room of a fixed size, in px.
func Gap(width, height float32) fyne.CanvasObject {
	g := &gap{least: fyne.NewSize(width, height)}
	if width <= 0 && height <= 0 {
		g.least = fyne.NewSize(0.01, 0.01)
	}
	return g
}

// gap is nothing to draw: unlike a rectangle without colour it asks for no frame when it
// is moved or resized.
type gap struct {
	at          fyne.Position
	size, least fyne.Size
	hidden      bool
}

func (g *gap) MinSize() fyne.Size      { return g.least }
func (g *gap) Move(to fyne.Position)   { g.at = to }
func (g *gap) Position() fyne.Position { return g.at }
func (g *gap) Resize(size fyne.Size)   { g.size = size }
func (g *gap) Size() fyne.Size         { return g.size }
func (g *gap) Hide()                   { g.hidden = true }
func (g *gap) Show()                   { g.hidden = false }
func (g *gap) Visible() bool           { return !g.hidden }
func (g *gap) Refresh()                {}

type grow struct{}

func (*grow) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.Position{})
		o.Resize(size)
	}
}

func (*grow) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	return size
}

func (*grow) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	return HeightFor(objects[0], width)
}

func (*grow) baseline(objects []fyne.CanvasObject) (float32, bool) { return BaselineOf(objects[0]) }

func grows(o fyne.CanvasObject) bool {
	c, ok := o.(*fyne.Container)
	if !ok {
		return false
	}
	_, ok = c.Layout.(*grow)
	return ok
}

// growing counts the objects that take what is left.
func growing(objects []fyne.CanvasObject) float32 {
	n := float32(0)
	for _, o := range objects {
		if grows(o) {
			n++
		}
	}
	return n
}

// vbox remembers the width it was given: its least height depends on it.
type vbox struct {
	gap   float32
	width float32
}

func (b *vbox) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	b.width = size.Width
	objects = visible(objects)
	spare := max(size.Height-b.heightFor(objects, size.Width), 0)
	if n := growing(objects); n > 0 {
		spare /= n
	}
	y := float32(0)
	for _, o := range objects {
		h := HeightFor(o, size.Width)
		if grows(o) {
			h += spare
		}
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, h))
		y += h + b.gap
	}
}

func (b *vbox) MinSize(objects []fyne.CanvasObject) fyne.Size {
	objects = visible(objects)
	var size fyne.Size
	for _, o := range objects {
		m := o.MinSize()
		size.Width = max(size.Width, m.Width)
		size.Height += m.Height
	}
	size.Height += b.gap * float32(max(len(objects)-1, 0))
	if b.width > 0 {
		size.Height = b.heightFor(objects, b.width)
	}
	return size
}

func (b *vbox) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	objects = visible(objects)
	h := b.gap * float32(max(len(objects)-1, 0))
	for _, o := range objects {
		h += HeightFor(o, width)
	}
	return h
}

func (b *vbox) baseline(objects []fyne.CanvasObject) (float32, bool) {
	if objects = visible(objects); len(objects) > 0 {
		return BaselineOf(objects[0])
	}
	return 0, false
}

type hbox struct{ gap float32 }

// widths gives each object its least width, and the growing ones the rest.
func (b *hbox) widths(objects []fyne.CanvasObject, width float32) []float32 {
	list := make([]float32, len(objects))
	spare := width - b.gap*float32(max(len(objects)-1, 0))
	for i, o := range objects {
		list[i] = o.MinSize().Width
		spare -= list[i]
	}
	n := growing(objects)
	for i, o := range objects {
		if grows(o) && spare > 0 {
			list[i] += spare / n
		}
	}
	return list
}

func (b *hbox) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects = visible(objects)
	setRow(objects, b.widths(objects, size.Width), b.gap, size.Height)
}

func (b *hbox) MinSize(objects []fyne.CanvasObject) fyne.Size {
	objects = visible(objects)
	widths := b.widths(objects, 0)
	w := b.gap * float32(max(len(objects)-1, 0))
	for _, x := range widths {
		w += x
	}
	return fyne.NewSize(w, rowOf(objects, widths).height())
}

func (b *hbox) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	objects = visible(objects)
	return rowOf(objects, b.widths(objects, width)).height()
}

func (b *hbox) baseline(objects []fyne.CanvasObject) (float32, bool) {
	objects = visible(objects)
	return rowOf(objects, b.widths(objects, 0)).baseline()
}

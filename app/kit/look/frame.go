package look

import "fyne.io/fyne/v2"

// Pad keeps room around an object, in px.
func Pad(top, right, bottom, left float32, o fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &frame{top: top, right: right, bottom: bottom, left: left}, Objects: []fyne.CanvasObject{o}}
}

// MaxWidth keeps an object from growing wider than so many px at 100 % text;
// it stays at the left.
func MaxWidth(px float32, o fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &frame{most: px}, Objects: []fyne.CanvasObject{o}}
}

// MinSized keeps an object at least so many px wide and high at 100 % text;
// zero leaves a side free.
func MinSized(width, height float32, o fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &frame{least: fyne.NewSize(width, height)}, Objects: []fyne.CanvasObject{o}}
}

// frame is a layout of one object.
type frame struct {
	top, right, bottom, left float32
	// most is the greatest width of the object; zero is no limit.
	most  float32
	least fyne.Size
}

// inner is the width left for the object.
func (f *frame) inner(width float32) float32 {
	w := max(width-f.left-f.right, 0)
	if f.most > 0 {
		w = min(w, Scaled(f.most))
	}
	return w
}

func (f *frame) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(f.left, f.top))
		o.Resize(fyne.NewSize(f.inner(size.Width), max(size.Height-f.top-f.bottom, 0)))
	}
}

func (f *frame) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := fyne.NewSize(f.left+f.right, f.top+f.bottom)
	for _, o := range visible(objects) {
		m := o.MinSize()
		size.Width = max(size.Width, m.Width+f.left+f.right)
		size.Height = max(size.Height, m.Height+f.top+f.bottom)
	}
	return size.Max(fyne.NewSize(Scaled(f.least.Width), Scaled(f.least.Height)))
}

func (f *frame) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	h := f.top + f.bottom
	for _, o := range visible(objects) {
		h += HeightFor(o, f.inner(width))
	}
	return max(h, Scaled(f.least.Height))
}

func (f *frame) baseline(objects []fyne.CanvasObject) (float32, bool) {
	y, ok := BaselineOf(objects[0])
	return y + f.top, ok
}

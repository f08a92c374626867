package look

import "fyne.io/fyne/v2"

// Track is the width of a column.
type Track struct {
	px    float32
	share float32
	fit   bool
	// most is the width a share does not pass, px at 100 % text; 0 is any.
	most float32
}

// Fixed is a column of so many px at 100 % text; it grows with the text.
func Fixed(px float32) Track { return Track{px: px} }

// Share is a column that takes a share of what the fixed ones leave.
func Share(weight float32) Track { return Track{share: weight} }

// AtMost keeps a share from more than so many px at 100 % text; the others have the rest.
func (t Track) AtMost(px float32) Track {
	t.most = px
	return t
}

// Fit is a column as wide as what stands in it. Rows that must line up cannot
// use it.
func Fit() Track { return Track{fit: true} }

// Columns sets one row of objects into columns, on one baseline. Rows with the
// same tracks, gap and width line up.
func Columns(gap float32, tracks []Track, objects ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &columns{gap: gap, tracks: tracks}, Objects: objects}
}

// Panels is Columns with every object as high as the row: sheets side by side.
func Panels(gap float32, tracks []Track, objects ...fyne.CanvasObject) *fyne.Container {
	return &fyne.Container{Layout: &columns{gap: gap, tracks: tracks, full: true}, Objects: objects}
}

type columns struct {
	gap    float32
	tracks []Track
	// full makes each object as high as the row.
	full  bool
	width float32
}

// track of the i-th object; one share where none was named.
func (c *columns) track(i int) Track {
	if i < len(c.tracks) {
		return c.tracks[i]
	}
	return Track{share: 1}
}

// widths resolves the tracks at a width; hidden objects keep their column.
func (c *columns) widths(objects []fyne.CanvasObject, width float32) []float32 {
	list := make([]float32, len(objects))
	spare := width - c.gap*float32(max(len(objects)-1, 0))
	shares := float32(0)
	for i, o := range objects {
		switch t := c.track(i); {
		case t.share > 0:
			shares += t.share
		case t.fit:
			list[i] = o.MinSize().Width
		default:
			list[i] = Scaled(t.px)
		}
		spare -= list[i]
	}
	for i := range objects { // those that are held to less leave the rest to the others
		t := c.track(i)
		if most := Scaled(t.most); t.most > 0 && shares > t.share && spare*t.share/shares > most {
			list[i], spare, shares = most, spare-most, shares-t.share
		}
	}
	for i := range objects {
		if t := c.track(i); t.share > 0 && spare > 0 && list[i] == 0 {
			list[i] = spare * t.share / shares
		}
	}
	return list
}

func (c *columns) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	c.width = size.Width
	widths := c.widths(objects, size.Width)
	if !c.full {
		setRow(objects, widths, c.gap, size.Height)
		return
	}
	x := float32(0)
	for i, o := range objects {
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(widths[i], size.Height))
		x += widths[i] + c.gap
	}
}

// MinSize is wide enough for the shares as well: the widest need of a share
// counts for all of them.
func (c *columns) MinSize(objects []fyne.CanvasObject) fyne.Size {
	widths := c.widths(objects, 0)
	w := c.gap * float32(max(len(objects)-1, 0))
	need, shares := float32(0), float32(0)
	for i, o := range objects {
		if t := c.track(i); t.share > 0 {
			need = max(need, o.MinSize().Width/t.share)
			shares += t.share
		}
		w += widths[i]
	}
	w += need * shares
	return fyne.NewSize(w, c.heightFor(objects, max(w, c.width)))
}

func (c *columns) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	widths := c.widths(objects, width)
	if !c.full {
		return rowOf(objects, widths).height()
	}
	h := float32(0)
	for i, o := range objects {
		h = max(h, HeightFor(o, widths[i]))
	}
	return h
}

func (c *columns) baseline(objects []fyne.CanvasObject) (float32, bool) {
	if c.full {
		return 0, false
	}
	return rowOf(objects, c.widths(objects, c.width)).baseline()
}

package field

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// spotted is a widget with places of its own inside: the words of tabs, the
// rows of a table.
type spotted interface{ spots() []Spot }

// spots are the words of the tabs, named by key.
func (t *Tabs) spots() []Spot {
	var list []Spot
	height := t.Size().Height
	for i, s := range t.spans() {
		list = append(list, Spot{
			Name: t.name + "." + t.tabs[i].Key, Pos: fyne.NewPos(s.from, 0), Size: fyne.NewSize(s.to-s.from, height),
		})
	}
	return list
}

// spots are the places of the rail, named by key.
func (r *Rail) spots() []Spot {
	var list []Spot
	pitch := look.Scaled(railPitch)
	for i, t := range r.tabs {
		list = append(list, Spot{
			Name: r.name + "." + t.Key, Pos: fyne.NewPos(0, float32(i)*pitch), Size: fyne.NewSize(r.Size().Width, pitch),
		})
	}
	return list
}

// rowSpots are the rows of a table in sight, numbered from 0.
func rowSpots(t *look.Table) []Spot {
	var list []Spot
	for i := range t.Rows() {
		pos, size, ok := t.RowSpot(i)
		if ok {
			list = append(list, Spot{Name: t.Name() + "." + strconv.Itoa(i), Pos: pos, Size: size})
		}
	}
	return list
}

// inside lists the places within a widget.
func inside(o fyne.CanvasObject) []Spot {
	switch o := o.(type) {
	case spotted:
		return o.spots()
	case *look.Table:
		return rowSpots(o)
	}
	return nil
}

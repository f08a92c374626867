package inspect

import (
	"fmt"
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

// area is a rectangle of the window, in px.
type area struct{ left, top, right, bottom float32 }

func areaOf(at fyne.Position, size fyne.Size) area {
	return area{at.X, at.Y, at.X + size.Width, at.Y + size.Height}
}

func (a area) and(b area) area {
	return area{max(a.left, b.left), max(a.top, b.top), min(a.right, b.right), min(a.bottom, b.bottom)}
}

func (a area) width() float32  { return a.right - a.left }
func (a area) height() float32 { return a.bottom - a.top }
func (a area) empty() bool     { return a.width() <= 0 || a.height() <= 0 }

// holds reports whether b lies in a, but for slack px.
func (a area) holds(b area, slack float32) bool {
	return b.left >= a.left-slack && b.top >= a.top-slack && b.right <= a.right+slack && b.bottom <= a.bottom+slack
}

// drawn is one object as it is painted: where, and within what it can be seen.
type drawn struct {
	object fyne.CanvasObject
	place  area
	clip   area
	// of is the name of what it belongs to; off that this cannot be used now.
	of  string
	off bool
	// typed: it belongs to a control that is typed into.
	typed bool
}

// control is something that is pressed or typed into.
type control struct {
	object fyne.CanvasObject
	place  area
	above  []fyne.CanvasObject // what it lies in
	// begin and end are how many objects had been drawn before it, and once all of it was.
	begin, end int
}

// sight is all that one tree of objects paints, from the first to the last.
type sight struct {
	drawn    []drawn
	controls []control
	path     []fyne.CanvasObject
}

// look gathers what an object and all below it paint.
func (s *sight) look(o fyne.CanvasObject, from fyne.Position, clip area) {
	if o == nil || !o.Visible() {
		return
	}
	at := from.Add(o.Position())
	var parts []fyne.CanvasObject
	switch o := o.(type) {
	case *fyne.Container:
		parts = o.Objects
	case fyne.Widget:
		r := test.WidgetRenderer(o)
		parts = r.Objects()
		_, scrolls := o.(fyne.Scrollable)
		if _, clips := r.(interface{ IsClip() }); clips || scrolls {
			clip = clip.and(areaOf(at, o.Size()))
		}
		if at := s.control(o, areaOf(at, o.Size()).and(clip)); at >= 0 {
			defer func() { s.controls[at].end = len(s.drawn) }()
		}
	default:
		of, off := s.owner()
		s.drawn = append(s.drawn, drawn{o, areaOf(at, o.Size()), clip, of, off, slices.ContainsFunc(s.path, typed)})
	}
	s.path = append(s.path, o)
	for _, p := range parts {
		s.look(p, at, clip)
	}
	s.path = s.path[:len(s.path)-1]
}

// owner is the name of the innermost named widget on the way, else its sort,
// and whether one on the way is disabled.
func (s *sight) owner() (name string, off bool) {
	for _, o := range s.path {
		if n, ok := o.(interface{ Name() string }); ok && n.Name() != "" {
			name = n.Name()
		}
		if d, ok := o.(fyne.Disableable); ok && d.Disabled() {
			off = true
		}
	}
	for i := len(s.path) - 1; i >= 0 && name == ""; i-- {
		if w, ok := s.path[i].(fyne.Widget); ok {
			name = fmt.Sprintf("%T", w)
		}
	}
	return name, off
}

// control notes a widget that has the keyboard or is pressed, and returns its place in
// the list, -1 for others.
func (s *sight) control(w fyne.Widget, place area) int {
	_, named := w.(interface{ Name() string })
	_, typed := w.(fyne.Focusable)
	_, pressed := w.(fyne.Tappable)
	if named && (typed || pressed) && !place.empty() {
		s.controls = append(s.controls, control{object: w, place: place, above: append([]fyne.CanvasObject(nil), s.path...), begin: len(s.drawn)})
		return len(s.controls) - 1
	}
	return -1
}

// covered reports whether something painted after a control and before another hides the
// first in an area, so that only the other can be seen and pressed there.
func (s *sight) covered(c, by control, in area) bool {
	return by.begin >= c.end && s.coveredBetween(c.end, by.begin, in)
}

// coveredBetween reports whether one of the objects painted from the begin-th to before
// the end-th hides what lies in an area.
func (s *sight) coveredBetween(begin, end int, in area) bool {
	for _, d := range s.drawn[begin:end] {
		if f := fill(d.object); f != nil && solid(f) && d.place.and(d.clip).holds(in, 0.5) {
			return true
		}
	}
	return false
}

// fill is the colour an object covers its place with; nil when it does not.
func fill(o fyne.CanvasObject) color.Color {
	switch o := o.(type) {
	case *canvas.Rectangle:
		return o.FillColor
	case *canvas.ArbitraryPolygon:
		return o.FillColor
	case *canvas.Circle:
		return o.FillColor
	}
	return nil
}

// covers reports whether a filled object covers a point.
func covers(d drawn, x, y float32) bool {
	p := d.place.and(d.clip)
	if x < p.left || x > p.right || y < p.top || y > p.bottom {
		return false
	}
	o, ok := d.object.(*canvas.ArbitraryPolygon)
	if !ok {
		return true
	}
	inside := false
	n := len(o.Points)
	for i := range n {
		a, b := corner(o, d.place, i), corner(o, d.place, (i+1)%n)
		if (a.Y > y) != (b.Y > y) && x < (b.X-a.X)*(y-a.Y)/(b.Y-a.Y)+a.X {
			inside = !inside
		}
	}
	return inside
}

// corner is a corner of a polygon in the window.
func corner(o *canvas.ArbitraryPolygon, place area, i int) fyne.Position {
	p := o.Points[i]
	if o.NormalizedPoints {
		p = fyne.NewPos(p.X*place.width(), p.Y*place.height())
	}
	return p.AddXY(place.left, place.top)
}

package inspect

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// Kind is the rule that is broken.
type Kind string

// The kinds.
const (
	// Cut text loses letters at the edge of what it lies in.
	Cut Kind = "cut"
	// Wider text is wider than the place it was given.
	Wider Kind = "wider than its place"
	// Shortened text ends in an ellipsis.
	Shortened Kind = "shortened"
	// Overlap is of two texts, or of two controls.
	Overlap Kind = "overlap"
	// Outside lies outside the window, where nothing scrolls to it.
	Outside Kind = "outside the window"
	// Small is a control that is less than 24 px high or wide (WCAG 2.2, 2.5.8).
	Small Kind = "small target"
	// Squeezed is a control that is narrower than what stands in it.
	Squeezed Kind = "narrower than what stands in it"
	// Unworded text is the key of a text that no catalogue has.
	Unworded Kind = "unworded"
	// Faint text and FaintShape have too little contrast.
	Faint      Kind = "faint text"
	FaintShape Kind = "faint shape"
)

// Finding is one rule broken by one thing.
type Finding struct {
	Kind Kind
	// What is the text, or the names of controls, or the role of the colour.
	What string
	// Of is the name of the widget it belongs to, or its sort.
	Of string
}

// Canvas tells what breaks the rules in a window: in what lies on top, if
// something does, else in its content. Each finding is told once.
func Canvas(c fyne.Canvas) []Finding {
	root := c.Content()
	if top := c.Overlays().Top(); top != nil {
		root = top
	}
	if root == nil {
		return nil
	}
	var s sight
	everywhere := float32(math.MaxInt32)
	s.look(root, fyne.Position{}, area{-everywhere, -everywhere, everywhere, everywhere})
	window := areaOf(fyne.Position{}, c.Size())
	ground := look.PaletteNow().Paper
	lines := s.lines()
	all := slices.Concat(textsCut(lines), unworded(lines), s.textsOverlap(lines), s.controlsOverlap(), s.small(), s.outside(window), s.faint(lines, ground), s.faintShapes(ground))
	var list []Finding
	for _, f := range all {
		if !slices.Contains(list, f) {
			list = append(list, f)
		}
	}
	return list
}

// controlsOverlap tells of controls that lie on one another.
func (s *sight) controlsOverlap() []Finding {
	var list []Finding
	for i, a := range s.controls {
		for _, b := range s.controls[i+1:] {
			both := a.place.and(b.place)
			if both.width() > 1 && both.height() > 1 && !s.covered(a, b, both) && !slices.Contains(b.above, a.object) && !slices.Contains(a.above, b.object) {
				list = append(list, Finding{Overlap, name(a.object) + " / " + name(b.object), ""})
			}
		}
	}
	return list
}

// leastTarget is the least height and width of what is pointed at, px (WCAG 2.2,
// success criterion 2.5.8).
const leastTarget = 24

// squeezed is the share of its least width that a control may be without losing words.
const squeezed = 0.9

// small tells of controls that a pointer hits with difficulty, or that are narrower than
// what stands in them.
func (s *sight) small() []Finding {
	var list []Finding
	for _, c := range s.controls {
		if at := c.object.Size(); min(at.Width, at.Height) < leastTarget {
			list = append(list, Finding{Small, fmt.Sprintf("%.0f x %.0f", at.Width, at.Height), name(c.object)})
		}
		if least := c.object.MinSize().Width; c.object.Size().Width < least*squeezed && !typed(c.object) {
			list = append(list, Finding{Squeezed, fmt.Sprintf("%.0f of %.0f px", c.object.Size().Width, least), name(c.object)})
		}
	}
	return list
}

// typed reports that a control is typed into: it shows what it has room for.
func typed(o fyne.CanvasObject) bool {
	_, ok := o.(fyne.Shortcutable)
	return ok
}

func name(o fyne.CanvasObject) string {
	if n, ok := o.(interface{ Name() string }); ok && n.Name() != "" {
		return n.Name()
	}
	return fmt.Sprintf("%T", o)
}

// outside tells of what is painted past the window's edge and not within
// something that scrolls.
func (s *sight) outside(window area) []Finding {
	var list []Finding
	for _, d := range s.drawn {
		place, what := d.place, fmt.Sprintf("%T", d.object)
		switch o := d.object.(type) {
		case *canvas.Text:
			if strings.TrimSpace(o.Text) == "" {
				continue
			}
			place, what = inkOf(o, d.place), strings.TrimSpace(o.Text)
		case *canvas.Line:
			// its place follows from its ends
		default:
			if c := fill(o); seenThrough(c) {
				continue
			}
		}
		if seen := place.and(d.clip); !seen.empty() && !window.holds(seen, 1) {
			list = append(list, Finding{Outside, what, d.of})
		}
	}
	return list
}

package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

var (
	_ desktop.Mouseable = (*Slider)(nil)
	_ fyne.Draggable    = (*Slider)(nil)
	_ fyne.Tappable     = (*Slider)(nil)
)

// MouseDown takes the knob, or brings it to the pointer.
func (s *Slider) MouseDown(e *desktop.MouseEvent) {
	if e.Button != desktop.MouseButtonPrimary || !s.press() {
		return
	}
	s.drag = sliderDrag{held: true, clicked: true}
	if off := e.Position.X - s.at(s.value); off > -knobSide/2 && off < knobSide/2 {
		s.drag.off = off
		return
	}
	s.move(s.under(e.Position.X))
}

// MouseUp ends the movement.
func (s *Slider) MouseUp(*desktop.MouseEvent) {
	if s.drag.held {
		s.release()
	}
}

// Dragged follows the pointer.
func (s *Slider) Dragged(e *fyne.DragEvent) {
	if s.Disabled() {
		return
	}
	if !s.drag.held {
		s.press()
		s.drag = sliderDrag{held: true}
	}
	s.drag.clicked = false
	s.move(s.under(e.Position.X - s.drag.off))
}

// DragEnd ends the movement.
func (s *Slider) DragEnd() {
	if s.drag.held {
		s.release()
	}
}

// Tapped brings the knob to the pointer where MouseDown did not come first.
func (s *Slider) Tapped(e *fyne.PointEvent) {
	if s.drag.clicked || !s.press() {
		s.drag.clicked = false
		return
	}
	s.move(s.under(e.Position.X))
	s.release()
}

// TypedKey moves the knob.
func (s *Slider) TypedKey(e *fyne.KeyEvent) {
	s.keyed()
	var to float64
	switch e.Name {
	case fyne.KeyLeft, fyne.KeyDown:
		to = s.next(-s.scale.Step)
	case fyne.KeyRight, fyne.KeyUp:
		s.noteStop(s.value + s.scale.Step)
		to = s.next(s.scale.Step)
	case fyne.KeyPageDown:
		to = s.next(-s.page())
	case fyne.KeyPageUp:
		s.noteStop(s.value + s.page())
		to = s.next(s.page())
	case fyne.KeyHome:
		to = s.scale.Min
	case fyne.KeyEnd:
		to = s.top()
	default:
		s.host.Key(e)
		return
	}
	s.move(to)
	s.release()
}

// page is the movement of Page Up and Page Down: five steps unless said.
func (s *Slider) page() float64 {
	if s.scale.Page > 0 {
		return s.scale.Page
	}
	return 5 * s.scale.Step
}

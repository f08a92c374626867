package field

import (
	"math"

	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// Scale is what a [Slider] measures. Steps count from Min.
type Scale struct {
	Min, Max float64
	// Step is the least movement, Page that of Page Up and Page Down.
	Step, Page float64
}

// Slider is the banded slider: a thin track, filled in the hue of a substance
// up to a round knob; a pale outlined band for the advice; a filled triangle
// under the track for the habit; an upright line where it stops.
//
// It moves by drag, click, arrow keys, Page Up and Page Down, Home and End. A
// movement only moves what is drawn already: it allocates nothing and measures
// no text.
type Slider struct {
	control

	// OnMoved is told every movement by the person, OnReleased the value when
	// the movement is over. OnStopped is told, once a movement, that the hard
	// limit held it.
	OnMoved    func(value float64)
	OnReleased func(value float64)
	OnStopped  func()

	of    look.Substance
	scale Scale
	value float64
	marks sliderMarks
	drag  sliderDrag
	// still shows the value in full colour with no knob: it is not to be moved.
	still bool
	// worded: the marks have words below them.
	worded bool
	draw   sliderDrawing
}

// sliderMarks are what stands on the scale beside the value; each only when
// its flag is set.
type sliderMarks struct {
	bandLow, bandHigh, mark, limit float64
	band, marked, limited          bool
}

// sliderDrag is a movement under way.
type sliderDrag struct {
	held, moved, stopped bool
	// clicked is true from MouseDown until the Tapped that belongs to it.
	clicked bool
	// off is how far from the middle of the knob it was taken, in px.
	off float32
}

var _ Field = (*Slider)(nil)

// NewSlider makes a slider that stands at Min.
func NewSlider(h *Host, name string, of look.Substance, scale Scale) *Slider {
	s := &Slider{of: of, scale: scale, value: scale.Min, draw: newSliderDrawing()}
	s.init(s, h, name)
	return s
}

// Value returns where the slider stands.
func (s *Slider) Value() float64 { return s.value }

// Scale returns what the slider measures.
func (s *Slider) Scale() Scale { return s.scale }

// SetValue moves the knob, not beyond the ends and the limit; nobody is told.
// A value between steps is shown where it is.
func (s *Slider) SetValue(x float64) {
	if x = s.within(x); x == s.value || math.IsNaN(x) {
		return
	}
	s.value = x
	s.placeKnob()
}

// SetScale changes what the slider measures; nobody is told.
func (s *Slider) SetScale(scale Scale) {
	if scale == s.scale {
		return
	}
	s.scale = scale
	s.value = s.within(s.value)
	s.place()
}

// SetBand shows the advised range; low above high takes it away.
func (s *Slider) SetBand(low, high float64) {
	m := &s.marks
	if on := low <= high; m.band != on || m.bandLow != low || m.bandHigh != high {
		m.band, m.bandLow, m.bandHigh = on, low, high
		s.placeMarks()
	}
}

// Banded reports whether the advised range is in sight.
func (s *Slider) Banded() bool { return s.marks.band }

// SetMark shows the habit.
func (s *Slider) SetMark(x float64) {
	if m := &s.marks; !m.marked || m.mark != x {
		m.marked, m.mark = true, x
		s.placeMarks()
	}
}

// KeepWords keeps room for the words of the marks below the track.
func (s *Slider) KeepWords() { s.worded = true }

// SetMarkWords names the habit where it is marked: "habit 0.30".
func (s *Slider) SetMarkWords(text string) { s.reword(&s.draw.markWords, text) }

// SetLimitWords names where the slider stops: "limit 0.90".
func (s *Slider) SetLimitWords(text string) { s.reword(&s.draw.limitWords, text) }

func (s *Slider) reword(w *sliderWords, text string) {
	if w.set(text) {
		s.placeMarks()
		canvas.Refresh(w.text)
	}
}

// MarkWords are the words of the habit; empty where it is not marked.
func (s *Slider) MarkWords() string { return seen(s.draw.markWords.text) }

// LimitWords are the words of where the slider stops; empty where that is its end.
func (s *Slider) LimitWords() string { return seen(s.draw.limitWords.text) }

func seen(t *canvas.Text) string {
	if !t.Visible() {
		return ""
	}
	return t.Text
}

// ClearMark takes the habit away.
func (s *Slider) ClearMark() {
	if s.marks.marked {
		s.marks.marked = false
		s.placeMarks()
	}
}

// SetLimit shows where the slider stops. A value beyond it is not moved: its
// owner decides.
func (s *Slider) SetLimit(x float64) {
	if m := &s.marks; !m.limited || m.limit != x {
		m.limited, m.limit = true, x
		s.placeMarks()
	}
}

// ClearLimit takes the limit away.
func (s *Slider) ClearLimit() {
	if s.marks.limited {
		s.marks.limited = false
		s.placeMarks()
	}
}

// SetStill shows the value without a knob, as one that is settled.
func (s *Slider) SetStill(on bool) {
	if s.still != on {
		s.still = on
		s.Refresh()
	}
}

// top is the highest value that can be reached.
func (s *Slider) top() float64 {
	if s.marks.limited {
		return max(min(s.marks.limit, s.scale.Max), s.scale.Min)
	}
	return s.scale.Max
}

// within keeps a value between the ends and below the limit.
func (s *Slider) within(x float64) float64 { return min(max(x, s.scale.Min), s.top()) }

// sliderTiny is what may be missing to a whole step by rounding.
const sliderTiny = 1e-9

// stepped is the nearest step that can be reached.
func (s *Slider) stepped(x float64) float64 {
	if s.scale.Step <= 0 {
		return s.within(x)
	}
	n := math.Round((x - s.scale.Min) / s.scale.Step)
	most := math.Floor((s.top()-s.scale.Min)/s.scale.Step + sliderTiny)
	n = max(min(n, most), 0)
	return s.onGrid(n)
}

// onGrid is the n-th step, without the dust of binary fractions.
func (s *Slider) onGrid(n float64) float64 {
	x := s.scale.Min + n*s.scale.Step
	return math.Round(x*1e9) / 1e9
}

// next is the value a number of steps away; from between steps the first
// movement goes to the next step.
func (s *Slider) next(by float64) float64 {
	if s.scale.Step <= 0 {
		return s.within(s.value + by)
	}
	n := (s.value - s.scale.Min) / s.scale.Step
	steps := by / s.scale.Step
	if by > 0 {
		return s.stepped(s.onGrid(math.Floor(n+sliderTiny) + math.Round(steps)))
	}
	return s.stepped(s.onGrid(math.Ceil(n-sliderTiny) + math.Round(steps)))
}

// move is a movement by the person.
func (s *Slider) move(to float64) {
	s.noteStop(to)
	to = s.stepped(to)
	if to == s.value {
		return
	}
	if !s.drag.moved {
		s.placeGhost()
	}
	s.value = to
	s.drag.moved = true
	s.placeKnob()
	if s.OnMoved != nil {
		s.OnMoved(to)
	}
}

// noteStop tells once that the limit held a movement.
func (s *Slider) noteStop(to float64) {
	if !s.marks.limited || s.drag.stopped || to <= s.marks.limit+sliderTiny {
		return
	}
	s.drag.stopped = true
	if s.OnStopped != nil {
		s.OnStopped()
	}
}

// release ends a movement.
func (s *Slider) release() {
	moved := s.drag.moved
	s.drag = sliderDrag{clicked: s.drag.clicked}
	if show(s.draw.ghost, false) {
		canvas.Refresh(s)
	}
	if moved && s.OnReleased != nil {
		s.OnReleased(s.value)
	}
}

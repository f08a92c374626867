package field

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// The slider's measures, in px; it does not grow with the text.
const (
	knobSide    float32 = 20
	trackThick  float32 = 4
	bandThick   float32 = 14
	markWidth   float32 = 10
	markHeight  float32 = 8
	trackMiddle float32 = 13
	limitHigh   float32 = 24 // from the top: seen behind the knob that stands at it, clear of the words below
	sliderHigh  float32 = 32
	// wordsTop is the top of the words of the marks; wordsHalf the half of a mark
	// with its room.
	wordsTop  float32 = 22
	wordsHalf float32 = markWidth/2 + 4
)

// sliderDrawing is what is drawn, made once.
type sliderDrawing struct {
	band              *look.Outline
	track             *look.Outline
	fill, limit       *canvas.Rectangle
	ring, knob, ghost *canvas.Circle
	mark              *canvas.ArbitraryPolygon
	markWords         sliderWords
	limitWords        sliderWords
}

// sliderWords are the words of a mark, with their width.
type sliderWords struct {
	text *canvas.Text
	wide float32
}

// set changes the words; it reports whether they are others.
func (w *sliderWords) set(text string) bool {
	if w.text.Text == text {
		return false
	}
	w.text.Text = look.Note.Shown(text)
	w.measure()
	return true
}

// measure takes the size of the text.
func (w *sliderWords) measure() {
	w.wide = 0
	w.text.FontSource = look.Note.Source(w.text.Text)
	if w.text.Text != "" {
		w.wide = look.Note.Width(w.text.Text)
	}
	w.text.Resize(fyne.NewSize(w.wide, look.Note.Height()))
}

func newSliderDrawing() sliderDrawing {
	return sliderDrawing{
		band: look.NewOutline(), track: look.NewOutline(),
		fill: canvas.NewRectangle(nil), limit: canvas.NewRectangle(nil),
		ring: canvas.NewCircle(nil), knob: canvas.NewCircle(nil), ghost: hiddenCircle(),
		mark: look.NewTriangle(nil), markWords: sliderWords{text: canvas.NewText("", nil)}, limitWords: sliderWords{text: canvas.NewText("", nil)},
	}
}

// at is the distance from the left of a value. The knob stays within the
// slider, so values begin half a knob from its ends.
func (s *Slider) at(x float64) float32 {
	width := max(s.Size().Width-knobSide, 0)
	if s.scale.Max <= s.scale.Min {
		return knobSide / 2
	}
	part := (x - s.scale.Min) / (s.scale.Max - s.scale.Min)
	return knobSide/2 + float32(math.Round(min(max(part, 0), 1)*float64(width)))
}

// under is the value at a distance from the left.
func (s *Slider) under(x float32) float64 {
	width := s.Size().Width - knobSide
	if width <= 0 {
		return s.scale.Min
	}
	return s.scale.Min + float64((x-knobSide/2)/width)*(s.scale.Max-s.scale.Min)
}

// placeKnob moves knob and fill, and nothing else.
func (s *Slider) placeKnob() {
	x := s.at(s.value)
	show(s.draw.fill, s.value > s.scale.Min) // at nothing no knob may cover the beginning
	s.draw.fill.Resize(fyne.NewSize(x, trackThick))
	s.draw.knob.Move(fyne.NewPos(x-knobSide/2+1, trackMiddle-knobSide/2+1))
	s.draw.ring.Move(fyne.NewPos(x-knobSide/2-3, trackMiddle-knobSide/2-3))
}

// hiddenCircle is a circle that is not in sight yet.
func hiddenCircle() *canvas.Circle {
	c := canvas.NewCircle(nil)
	c.Hide()
	return c
}

// placeGhost leaves a ring where a movement began.
func (s *Slider) placeGhost() {
	s.draw.ghost.Move(fyne.NewPos(s.at(s.value)-knobSide/2+2, trackMiddle-knobSide/2+2))
	if show(s.draw.ghost, true) {
		canvas.Refresh(s)
	}
}

// placeMarks moves band, habit and limit.
func (s *Slider) placeMarks() {
	m, d := s.marks, s.draw
	low, high := s.at(m.bandLow), s.at(m.bandHigh)
	d.band.Place(fyne.NewPos(low, trackMiddle-bandThick/2), fyne.NewSize(max(high-low, 3), bandThick))
	turned := d.band.Show(m.band)
	d.mark.Move(fyne.NewPos(s.at(m.mark)-markWidth/2, trackMiddle+knobSide/2+1))
	turned = show(d.mark, m.marked) || turned
	d.limit.Move(fyne.NewPos(s.at(m.limit)-1, 0))
	turned = show(d.limit, m.limited && m.limit < s.scale.Max) || turned
	if s.worded {
		turned = s.placeWords() || turned
	}
	s.placeKnob()
	if turned {
		canvas.Refresh(s)
	}
}

// placeWords sets the words under their marks, and reports whether one came or went.
func (s *Slider) placeWords() bool {
	m, d := s.marks, &s.draw
	mark, limit := d.markWords.wide, d.limitWords.wide
	if !m.marked {
		mark = 0
	}
	if d.limit.Hidden {
		limit = 0
	}
	x, y := look.MarkPlaces(s.Size().Width, s.at(m.mark), mark, s.at(m.limit), limit, wordsHalf)
	d.markWords.text.Move(fyne.NewPos(float32(math.Round(float64(x))), wordsTop))
	d.limitWords.text.Move(fyne.NewPos(float32(math.Round(float64(y))), wordsTop))
	turned := show(d.markWords.text, mark > 0)
	return show(d.limitWords.text, limit > 0) || turned
}

// place puts everything where it belongs.
func (s *Slider) place() {
	d := s.draw
	d.track.Place(fyne.NewPos(0, trackMiddle-trackThick/2), fyne.NewSize(s.Size().Width, trackThick))
	d.fill.Move(fyne.NewPos(0, trackMiddle-trackThick/2))
	d.limit.Resize(fyne.NewSize(2, limitHigh))
	d.mark.Resize(fyne.NewSize(markWidth, markHeight))
	d.knob.Resize(fyne.NewSquareSize(knobSide - 2))
	d.ring.Resize(fyne.NewSquareSize(knobSide + 6))
	d.ghost.Resize(fyne.NewSquareSize(knobSide - 4))
	s.placeMarks()
}

// paint takes the colours of the theme.
func (s *Slider) paint() {
	p, d := look.PaletteNow(), s.draw
	hue := p.Hue(s.of)
	d.band.Paint(p.Pale(hue), hue, 1, 2)
	d.track.Paint(p.Sheet, p.Ink3, 1, trackThick/2)
	d.fill.FillColor, d.fill.CornerRadius = hue, trackThick/2
	d.limit.FillColor = p.Ink
	d.mark.FillColor = p.Ink2
	d.knob.FillColor, d.knob.StrokeColor, d.knob.StrokeWidth = p.Sheet, p.Ink, 2
	d.ring.FillColor, d.ring.StrokeColor, d.ring.StrokeWidth = color.Transparent, p.Ink, 2
	if s.hovered && !s.Disabled() {
		d.knob.FillColor = p.Sunk
	}
	d.ghost.FillColor, d.ghost.StrokeColor, d.ghost.StrokeWidth = color.Transparent, p.Ink2, 1
	show(d.knob, !s.still)
	if s.Disabled() && !s.still {
		d.fill.FillColor, d.knob.StrokeColor, d.knob.FillColor = p.Ink3, p.Ink3, p.Sunk
	}
	show(d.ring, s.ringed())
	for _, w := range [2]*sliderWords{&s.draw.markWords, &s.draw.limitWords} {
		w.text.Color, w.text.TextSize, w.text.TextStyle = p.Ink2, look.Note.Size(), look.Note.Text()
		w.measure()
	}
}

// CreateRenderer draws the slider.
func (s *Slider) CreateRenderer() fyne.WidgetRenderer {
	s.paint()
	s.place()
	return &sliderRenderer{s}
}

type sliderRenderer struct{ s *Slider }

func (r *sliderRenderer) Layout(fyne.Size) { r.s.place() }

func (r *sliderRenderer) MinSize() fyne.Size {
	if r.s.worded {
		return fyne.NewSize(120, wordsTop+look.Note.Height())
	}
	return fyne.NewSize(120, sliderHigh)
}

func (r *sliderRenderer) Refresh() {
	r.s.paint()
	r.s.place()
	canvas.Refresh(r.s)
}

func (r *sliderRenderer) Objects() []fyne.CanvasObject {
	d := r.s.draw
	list := append(d.band.With(), d.track.With(d.fill, d.limit, d.mark, d.ghost, d.ring, d.knob)...)
	if r.s.worded {
		list = append(list, d.markWords.text, d.limitWords.text)
	}
	return list
}

func (r *sliderRenderer) Destroy() {}

package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// TotalData is what a [TotalBar] shows.
type TotalData struct {
	Parts []Part
	// Habit and Limit are marked, with their words below; Max is the end of the scale.
	Habit, Limit, Max      float64
	HabitWords, LimitWords string
	Summary                string
}

// TotalBar draws what is drunk in all as one level bar by drink, with the habit and
// the limit named where they stand.
type TotalBar struct {
	base
	data TotalData
}

// totalThick is the height of the bar, totalWords the top of the words, px.
const (
	totalThick float32 = 10
	totalOver  float32 = 4
	totalWords float32 = totalThick + 2*totalOver
)

// NewTotalBar makes an empty bar.
func NewTotalBar() *TotalBar {
	c := &TotalBar{}
	c.start(c, func() fyne.Size { return fyne.NewSize(look.Scaled(120), totalWords+look.Note.Height()) }, c.paint)
	return c
}

// Set shows other data. The parts are copied.
func (c *TotalBar) Set(d TotalData) {
	parts := append(c.data.Parts[:0], d.Parts...)
	c.data = d
	c.data.Parts = parts
	c.shown(d.Summary)
}

func (c *TotalBar) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	at := scale{from: 0, to: max(length(d.Max), length(d.Limit), 1e-9), start: 0, end: size.Width}
	c.pen.edged(0, totalOver, size.Width, totalThick, k.Sheet)
	c.pen.stack(d.Parts, at, totalOver, totalThick)
	habit, limit := at.inside(d.Habit), at.inside(d.Limit)
	c.pen.rect(limit-1, 0, 2, totalThick+2*totalOver, k.Ink)
	habit = min(max(habit, markHalf), size.Width-markHalf)
	c.pen.habit(habit, totalOver+totalThick+2)
	first, second := look.Note.Width(d.HabitWords), look.Note.Width(d.LimitWords)
	x, y := look.MarkPlaces(size.Width, habit, first, limit, second, markHalf+4)
	c.pen.text(d.HabitWords, x, totalWords, first, look.Note, k.Ink2, left)
	c.pen.text(d.LimitWords, y, totalWords, second, look.Note, k.Ink2, left)
}

// markHalf is the half of the mark of the habit, px.
const markHalf float32 = 5

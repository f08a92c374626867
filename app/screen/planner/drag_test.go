package planner

import (
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// dragMoves is how many movements a slider is dragged in over its whole length.
const dragMoves = 200

// dragged drags the drink's slider over its length and returns how long each
// movement took, from the event to the drawn picture.
func (b *bench) dragged() []time.Duration {
	s := b.slider(plan.Drink1)
	width := s.Size().Width - 20
	at := func(i int) *fyne.DragEvent {
		e := &fyne.DragEvent{}
		e.Position = fyne.NewPos(10+width*float32(i)/dragMoves, 13)
		return e
	}
	s.SetValue(0)
	s.Dragged(at(0))
	var list []time.Duration
	for i := range dragMoves {
		began := time.Now()
		s.Dragged(at(i + 1))
		b.w.Canvas().Capture()
		list = append(list, time.Since(began))
	}
	s.DragEnd()
	return list
}

// median and worst of a list of times.
func median(list []time.Duration) (mid, worst time.Duration) {
	list = slices.Sorted(slices.Values(list))
	return list[len(list)/2], list[len(list)-1]
}

// BenchmarkDrag drags a slider over its whole length in 200 movements, each drawn
// by the software painter, and compares it with the same window in which the
// movement is evaluated by nobody.
func BenchmarkDrag(b *testing.B) {
	w := begun(b)
	w.option(record.OptionFood)
	slider := w.slider(plan.Drink1)
	told := slider.OnMoved
	w.dragged() // texts are measured once
	for b.Loop() {
		slider.OnMoved = told
		mid, worst := median(w.dragged())
		slider.OnMoved = nil
		midOff, worstOff := median(w.dragged())
		b.ReportMetric(float64(mid.Microseconds()), "us-median")
		b.ReportMetric(float64(worst.Microseconds()), "us-worst")
		b.ReportMetric(float64(mid)/float64(midOff), "median-ratio")
		b.ReportMetric(float64(worst)/float64(worstOff), "worst-ratio")
	}
}

// BenchmarkMove is one movement without the drawing: the mix, the record, the
// figures, the charts.
func BenchmarkMove(b *testing.B) {
	w := begun(b)
	w.option(record.OptionFood)
	amounts := [2]float64{300, 350}
	i := 0
	b.ReportAllocs()
	for b.Loop() {
		w.v.move(plan.Drink1, amounts[i%2])
		i++
	}
}

// BenchmarkCalculate is what of it is calculated.
func BenchmarkCalculate(b *testing.B) {
	w := begun(b)
	w.option(record.OptionFood)
	b.ReportAllocs()
	for b.Loop() {
		w.v.Live.Follow(w.v.Now)
	}
}

// BenchmarkKeystroke is a key typed into a field of the session: the case is made
// anew and everything is shown.
func BenchmarkKeystroke(b *testing.B) {
	w := begun(b)
	w.option(record.OptionFood)
	b.ReportAllocs()
	for b.Loop() {
		w.v.Changed()
	}
}

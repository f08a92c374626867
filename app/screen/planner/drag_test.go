package planner

import (
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

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

// amounts are two amounts of a slot that are shown differently: a movement from one
// to the other changes something each time.
func (b *bench) amounts(slot plan.Slot) (list [2]float64) {
	b.t.Helper()
	step := b.v.Now.PlanCase.Planner.Menu()[slot].Step
	shown, found := 0.0, 0
	for to := step; found < len(list); to += step {
		if to > b.slider(slot).Scale().Max {
			b.t.Fatal("no two amounts are shown differently")
		}
		b.v.move(slot, to)
		if x := b.v.Live.Mix[slot]; x > shown {
			list[found], shown, found = to, x, found+1
		}
	}
	return list
}

// BenchmarkDraw is one movement that changes something, from the movement to the
// picture by the software painter.
func BenchmarkDraw(b *testing.B) {
	w := begun(b)
	w.option(record.OptionFood)
	amounts := w.amounts(plan.Drink1)
	i := 0
	w.w.Canvas().Capture()
	b.ReportAllocs()
	for b.Loop() {
		w.v.move(plan.Drink1, amounts[i%2])
		w.w.Canvas().Capture()
		i++
	}
}

// BenchmarkMove is one movement without the drawing: the mix, the record, the
// figures, the charts.
func BenchmarkMove(b *testing.B) {
	w := begun(b)
	w.option(record.OptionFood)
	amounts := w.amounts(plan.Drink1)
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

// objectsInSight counts what a canvas paints.
func objectsInSight(o fyne.CanvasObject) int {
	if !o.Visible() {
		return 0
	}
	n := 1
	switch x := o.(type) {
	case *fyne.Container:
		for _, one := range x.Objects {
			n += objectsInSight(one)
		}
	case fyne.Widget:
		for _, one := range test.WidgetRenderer(x).Objects() {
			n += objectsInSight(one)
		}
	}
	return n
}

func TestZZCount(t *testing.T) {
	w := begun(t)
	w.option(record.OptionFood)
	a := w.amounts(plan.Drink1)
	i := 0
	t.Log(a, objectsInSight(w.w.Content()), testing.AllocsPerRun(100, func() { w.v.move(plan.Drink1, a[i%2]); i++ }))
}

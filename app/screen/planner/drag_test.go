package planner

import (
	"testing"

	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// amounts are two amounts of the sports drink that are shown differently: a movement from one
// to the other changes something each time.
func (b *bench) amounts() (list [2]float64) {
	b.t.Helper()
	const slot = plan.Drink1
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
	amounts := w.amounts()
	i := 0
	w.w.Canvas().Capture()
	b.ReportAllocs()
	for b.Loop() {
		w.v.move(plan.Drink1, amounts[i%2])
		w.w.Canvas().Capture()
		i++
	}
}

// BenchmarkDrawBaseline is the same picture while nothing moves.
func BenchmarkDrawBaseline(b *testing.B) {
	w := begun(b)
	w.option(record.OptionFood)
	w.w.Canvas().Capture()
	b.ReportAllocs()
	for b.Loop() {
		w.w.Canvas().Capture()
	}
}

// BenchmarkMove is one movement without the drawing: the mix, the record, the
// figures, the charts.
func BenchmarkMove(b *testing.B) {
	w := begun(b)
	w.option(record.OptionFood)
	amounts := w.amounts()
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

// moveAllocations is what a movement that changes something may allocate: the record
// and its copy for the next step back, the texts that read otherwise, and nothing for
// what stays.
const moveAllocations = 135

// A movement that changes something stays within its budget. It is counted, not timed.
func TestAMoveAllocatesLittle(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	amounts := b.amounts()
	shown := map[string]bool{}
	i := 0
	n := testing.AllocsPerRun(100, func() {
		b.v.move(plan.Drink1, amounts[i%2])
		shown[b.v.ui.page.deficit.Figure.Text()+b.v.ui.page.bars.Data[0].Figure] = true
		i++
	})
	if len(shown) < 2 {
		t.Errorf("the movements show %v: nothing changes", shown)
	}
	if n > moveAllocations {
		t.Errorf("%v allocations a movement, at most %d", n, moveAllocations)
	}
}

// A movement that changes nothing that is shown makes next to nothing anew.
func TestAMoveThatChangesNothing(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	to := b.amounts()[0]
	b.v.move(plan.Drink1, to)
	if n := testing.AllocsPerRun(100, func() { b.v.figures() }); n > 0 {
		t.Errorf("%v allocations to show the same again", n)
	}
}

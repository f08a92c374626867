package planner

import (
	"image/color"
	"runtime"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/apptest/inspect"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/cputime"
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
	painted := w.painted()
	b.ReportMetric(float64(painted.Objects), "objects")
	b.ReportMetric(float64(painted.Outside), "objects-outside")
	b.ReportMetric(float64(painted.Rounded), "windows-rounded")
}

// painted counts what the planner paints, without the head, whose place is another.
func (b *bench) painted() inspect.Painted {
	b.w.Canvas().Content().(*fyne.Container).Objects[0].Hide()
	return inspect.PaintedOn(b.w.Canvas())
}

// mostRounded is how many windows rectangles with round corners may cover: half of
// what they did when each sheet was one. They are what a picture takes longest for.
const mostRounded = 0.88

// The planner paints nothing that lies outside the window, and few round corners. It
// is counted, not timed.
func TestThePlannerPaintsWhatIsSeen(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.w.Canvas().Capture()
	if p := b.painted(); p.Objects == 0 || p.Outside > 0 || p.Rounded > mostRounded {
		t.Errorf("%+v", p)
	}
}

// BenchmarkPicture is a movement with its picture beside the same picture at rest and
// beside a plain one: a hundred short texts on one ground. All are told without what
// an empty window of the size takes, by turns in one loop, as medians of processor
// time.
func BenchmarkPicture(b *testing.B) {
	w := begun(b)
	w.option(record.OptionFood)
	amounts := w.amounts()
	size := w.w.Canvas().Size()
	plain, empty := golden.Open(b, hundredTexts(size), size), golden.Open(b, canvas.NewRectangle(color.White), size)
	var took [4][]time.Duration
	i := 0
	for b.Loop() {
		for k, draw := range []func(){
			func() { w.v.move(plan.Drink1, amounts[i%2]); w.w.Canvas().Capture() },
			func() { w.w.Canvas().Capture() },
			func() { plain.Canvas().Capture() },
			func() { empty.Canvas().Capture() },
		} {
			runtime.GC() // else what all four leave is collected in one and the same of them
			begun := cputime.Used()
			draw()
			took[k] = append(took[k], cputime.Used()-begun)
		}
		i++
	}
	b.ReportMetric(0, "ns/op") // of the four together: says nothing
	ms := func(k int) float64 { return float64(middle(took[k])-middle(took[3])) / 1e6 }
	b.ReportMetric(ms(0), "ms-move")
	b.ReportMetric(ms(1), "ms-rest")
	b.ReportMetric(ms(2), "ms-plain")
	b.ReportMetric(float64(middle(took[3]))/1e6, "ms-empty")
}

// middle is the median.
func middle(list []time.Duration) time.Duration {
	return slices.Sorted(slices.Values(list))[len(list)/2]
}

// hundredTexts are a plain picture to measure another against.
func hundredTexts(size fyne.Size) fyne.CanvasObject {
	ground := canvas.NewRectangle(color.White)
	ground.Resize(size)
	all := container.NewWithoutLayout(ground)
	for i := range 100 {
		one := canvas.NewText("1.36 L/h of water", color.Black)
		one.Move(fyne.NewPos(float32(i%5)*size.Width/5, float32(i/5)*size.Height/20))
		all.Add(one)
	}
	return all
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
const moveAllocations = 80

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

package field_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

// litres is a slider from 0 to 1.6 L in steps of 50 mL.
func litres(h *field.Host) *field.Slider {
	return field.NewSlider(h, "water", look.Water, field.Scale{Max: 1.6, Step: 0.05, Page: 0.25})
}

func listen(s *field.Slider) *diary {
	events := &diary{}
	s.OnMoved = func(x float64) { events.note("moved %.4g", x) }
	s.OnReleased = func(x float64) { events.note("settled %.4g", x) }
	s.OnStopped = func() { events.note("stopped") }
	return events
}

func TestSliderKeys(t *testing.T) {
	for _, c := range []struct {
		from  float64
		limit float64
		keys  []fyne.KeyName
		want  string
	}{
		{0.3, 0, []fyne.KeyName{fyne.KeyRight}, "[moved 0.35 settled 0.35]"},
		{0.3, 0, []fyne.KeyName{fyne.KeyUp, fyne.KeyLeft, fyne.KeyDown}, "[moved 0.35 settled 0.35 moved 0.3 settled 0.3 moved 0.25 settled 0.25]"},
		{0.3, 0, []fyne.KeyName{fyne.KeyPageUp, fyne.KeyPageDown}, "[moved 0.55 settled 0.55 moved 0.3 settled 0.3]"},
		{0.3, 0, []fyne.KeyName{fyne.KeyEnd, fyne.KeyHome}, "[moved 1.6 settled 1.6 moved 0 settled 0]"},
		{0, 0, []fyne.KeyName{fyne.KeyLeft}, "[]"},
		{0.47, 0, []fyne.KeyName{fyne.KeyRight}, "[moved 0.5 settled 0.5]"},
		{0.47, 0, []fyne.KeyName{fyne.KeyLeft}, "[moved 0.45 settled 0.45]"},
		{0.5, 0.59, []fyne.KeyName{fyne.KeyRight, fyne.KeyRight}, "[moved 0.55 settled 0.55 stopped]"},
		{0.5, 0.59, []fyne.KeyName{fyne.KeyEnd}, "[moved 0.55 settled 0.55]"},
		{0.5, 0.6, []fyne.KeyName{fyne.KeyPageUp}, "[stopped moved 0.6 settled 0.6]"},
	} {
		h := use(t)
		s := litres(h)
		if c.limit > 0 {
			s.SetLimit(c.limit)
		}
		s.SetValue(c.from)
		events := listen(s)
		d := open(t, s)
		d.Focus("water")
		d.Key(c.keys...)
		if got := fmt.Sprint(*events); got != c.want {
			t.Errorf("from %v, limit %v, %v: %v, want %v", c.from, c.limit, c.keys, got, c.want)
		}
	}
}

// Steps count from Min, also where Min is no multiple of the step.
func TestSliderStepsFromMin(t *testing.T) {
	h := use(t)
	s := field.NewSlider(h, "s", look.Food, field.Scale{Min: 0.2, Max: 3, Step: 0.5})
	open(t, s).Focus("s")
	for range 10 {
		s.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	}
	if s.Value() != 2.7 {
		t.Errorf("the last step is %v", s.Value())
	}
}

func TestSliderMouse(t *testing.T) {
	h := use(t)
	s := litres(h)
	events := listen(s)
	d := open(t, s) // 400 px wide: values lie on 380 px from 10
	at := func(x float64) float32 { return 10 + float32(math.Round(380*x/1.6)) }
	d.ClickAt("water", at(0.8), 13)
	events.expect(t, "moved 0.8", "settled 0.8")
	if d.Focused() != "water" {
		t.Error("a click must give the keyboard")
	}
	d.ClickAt("water", at(0.8)+4, 13) // on the knob: it is taken, not moved
	events.expect(t)
	d.ClickAt("water", at(0.4), 13)
	events.expect(t, "moved 0.4", "settled 0.4")
	d.Drag("water", fyne.NewPos(at(0.4)+6, 13), fyne.NewPos(at(0.5)+6, 13), 2)
	events.expect(t, "moved 0.45", "moved 0.5", "settled 0.5")
	d.Drag("water", fyne.NewPos(at(0.5), 13), fyne.NewPos(900, 300), 1)
	events.expect(t, "moved 1.6", "settled 1.6")
	if _, scrolls := any(s).(fyne.Scrollable); scrolls {
		t.Error("the wheel must not move a slider")
	}
}

// Dragging into the limit stops there and says so once.
func TestSliderStopsAtTheLimit(t *testing.T) {
	h := use(t)
	s := litres(h)
	s.SetLimit(1.19)
	s.SetValue(1.1)
	events := listen(s)
	d := open(t, s)
	d.Drag("water", fyne.NewPos(271, 13), fyne.NewPos(390, 13), 6)
	events.expect(t, "moved 1.15", "stopped", "settled 1.15")
	s.SetValue(5)
	if s.Value() != 1.19 {
		t.Errorf("code set it to %v, beyond its limit", s.Value())
	}
	s.ClearLimit()
	s.SetValue(5)
	if s.Value() != 1.6 {
		t.Errorf("without a limit it stands at %v", s.Value())
	}
}

func TestSliderSetTellsNobody(t *testing.T) {
	h := use(t)
	s := litres(h)
	events := listen(s)
	open(t, s)
	s.SetValue(0.47)
	s.SetBand(0.5, 0.7)
	s.SetMark(0.3)
	s.SetLimit(1.2)
	s.SetScale(field.Scale{Max: 1, Step: 0.1})
	s.SetValue(math.NaN())
	events.expect(t)
	if s.Value() != 0.47 {
		t.Errorf("it stands at %v", s.Value())
	}
}

func TestSliderDisabled(t *testing.T) {
	h := use(t)
	s := litres(h)
	s.Disable()
	events := listen(s)
	d := open(t, s)
	d.ClickAt("water", 300, 13)
	d.Drag("water", fyne.NewPos(10, 13), fyne.NewPos(200, 13), 3)
	events.expect(t)
}

// Wherever it is pushed, a slider stands on a step, between its ends and not
// beyond its limit.
func TestSliderStaysOnItsSteps(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	h := newHost(t)
	rapid.Check(t, func(t *rapid.T) {
		sc := field.Scale{Min: rapid.Float64Range(-2, 2).Draw(t, "min"), Step: rapid.SampledFrom([]float64{0.05, 0.1, 0.5, 50}).Draw(t, "step")}
		sc.Max = sc.Min + sc.Step*float64(rapid.IntRange(1, 60).Draw(t, "steps"))
		s := field.NewSlider(h, "s", look.Water, sc)
		s.Resize(fyne.NewSize(rapid.Float32Range(40, 900).Draw(t, "width"), 32))
		limit := sc.Max
		if rapid.Bool().Draw(t, "limited") {
			limit = rapid.Float64Range(sc.Min, sc.Max).Draw(t, "limit")
			s.SetLimit(limit)
		}
		for range 10 {
			s.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(rapid.Float32Range(-50, 950).Draw(t, "x"), 5)}})
			n := (s.Value() - sc.Min) / sc.Step
			if s.Value() < sc.Min-1e-9 || s.Value() > limit+1e-6 || math.Abs(n-math.Round(n)) > 1e-6 {
				t.Fatalf("%v is %v steps from %v, limit %v", s.Value(), n, sc.Min, limit)
			}
		}
	})
}

// A movement allocates nothing: it moves what is drawn already. That holds for
// what the planner does to the other sliders meanwhile as well.
func TestSliderMovesWithoutAllocating(t *testing.T) {
	h := use(t)
	s := litres(h)
	s.SetBand(0.5, 0.7)
	s.SetMark(0.3)
	moved := 0.0
	s.OnMoved = func(x float64) { moved += x }
	open(t, s)
	e := &fyne.DragEvent{}
	x := float32(0)
	n := testing.AllocsPerRun(200, func() {
		x += 7
		e.Position = fyne.NewPos(float32(math.Mod(float64(x), 400)), 13)
		s.Dragged(e)
		s.SetBand(0.4+float64(x)/9000, 0.8)
		s.SetLimit(1.2 + float64(x)/9000)
	})
	if n != 0 {
		t.Errorf("%v allocations a movement", n)
	}
	if moved == 0 {
		t.Error("nothing moved")
	}
}

func BenchmarkSliderMove(b *testing.B) {
	golden.Use(b, golden.Mode{Percent: 100})
	s := litres(newHost(b))
	golden.Open(b, s, fyne.NewSize(400, 60))
	e := &fyne.DragEvent{}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		e.Position = fyne.NewPos(float32(i*7%400), 13)
		s.Dragged(e)
	}
}

// While a slider moves, a ring stands where the movement began; let go, it is gone.
func TestSliderLeavesAGhost(t *testing.T) {
	h := use(t)
	s := field.NewSlider(h, "s", look.Water, field.Scale{Max: 1000, Step: 50})
	s.Resize(fyne.NewSize(320, 32))
	s.SetValue(400)
	rings := func() (at []float32) {
		for _, o := range test.WidgetRenderer(s).Objects() {
			if c, ok := o.(*canvas.Circle); ok && c.Visible() {
				at = append(at, c.Position().X+c.Size().Width/2)
			}
		}
		return at
	}
	before := rings()
	for x := float32(130); x <= 200; x += 10 {
		e := &fyne.DragEvent{Dragged: fyne.NewDelta(10, 0)}
		e.Position = fyne.NewPos(x, 13)
		s.Dragged(e)
	}
	if now := rings(); s.Value() <= 400 || len(now) != len(before)+1 || !slices.Contains(now, before[len(before)-1]) {
		t.Errorf("moved to %v, circles at %v, before at %v", s.Value(), now, before)
	}
	s.DragEnd()
	if now := rings(); len(now) != len(before) {
		t.Errorf("let go, circles at %v", now)
	}
}

package chart

import (
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"pgregory.net/rapid"

	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

// amounts draws values a chart may be handed, absurd ones among them.
func amounts(t *rapid.T, name string) float64 {
	return rapid.OneOf(rapid.Float64Range(0, 3), rapid.SampledFrom([]float64{0, -1, 1e9, math.NaN(), math.Inf(1)})).Draw(t, name)
}

// texts draws words as short and as long as there may be.
func texts(t *rapid.T, name string) string {
	return rapid.SampledFrom([]string{"", "−2.1 %", "25 g/h", "0.45 + 0.35 L + ½ fig bar", "the break in the middle of the second half, on the bench", "half-time"}).Draw(t, name)
}

func parts(t *rapid.T) []Part {
	return []Part{{look.Water, amounts(t, "water")}, {look.Drink, amounts(t, "drink")}, {look.Food, amounts(t, "food")}}
}

// stopsOf draws breaks in order of time, those that may not happen among them.
func stopsOf(t *rapid.T) []BreakStop {
	var list []BreakStop
	at := 0.0
	for range rapid.IntRange(0, 24).Draw(t, "stops") {
		at += rapid.Float64Range(0.5, 30).Draw(t, "later")
		list = append(list, BreakStop{
			Minute: at, Parts: parts(t), Amount: texts(t, "amount"), Mouthfuls: texts(t, "mouthfuls"), Name: texts(t, "name"), Maybe: rapid.Bool().Draw(t, "maybe"),
		})
	}
	return list
}

// planned draws one of the charts that only a plan has.
func planned(t *rapid.T) (fyne.Widget, fyne.Size) {
	size := fyne.NewSize(rapid.Float32Range(150, 900).Draw(t, "width"), 0)
	switch rapid.IntRange(0, 3).Draw(t, "chart") {
	case 0:
		c := NewRangeBar()
		c.Set(RangeBarData{
			At: amounts(t, "at"), Max: amounts(t, "max"), Range: Span{amounts(t, "low"), amounts(t, "high")}, Habit: amounts(t, "habit"), Limit: amounts(t, "limit"),
			Limited: rapid.Bool().Draw(t, "limited"), Estimate: rapid.Bool().Draw(t, "estimate"),
		})
		return c, fyne.NewSize(size.Width, c.MinSize().Height)
	case 1:
		c := NewStepCard()
		c.Set(StepCardData{
			Name: texts(t, "name"), Note: texts(t, "note"), Figure: texts(t, "figure"), FigureNote: texts(t, "figure note"), Second: texts(t, "second"), SecondNote: texts(t, "second note"),
			Parts: parts(t), Max: amounts(t, "max"), Amount: "0.45 + 0.35 L", Drunk: "0.80 L", Change: texts(t, "change"), Chosen: rapid.Bool().Draw(t, "chosen"),
		})
		return c, fyne.NewSize(max(size.Width, 320), c.MinSize().Height)
	case 2:
		c := NewTotalBar()
		c.Set(TotalData{Parts: parts(t), Habit: amounts(t, "habit"), Limit: amounts(t, "limit"), Max: amounts(t, "max"), HabitWords: "habit 0.55", LimitWords: "limit 1.34"})
		return c, fyne.NewSize(size.Width, c.MinSize().Height)
	}
	d := match()
	d.Stops, d.StopMax, d.Fields, d.Selected = stopsOf(t), amounts(t, "most"), rapid.Bool().Draw(t, "fields"), rapid.IntRange(-1, 30).Draw(t, "selected")
	d.Aside, d.Lowest = texts(t, "aside"), -rapid.Float64Range(0, 9).Draw(t, "lowest")
	c := deficit(d)
	c.OnDragged = func(int, float64) {}
	c.redraw()
	return c, fyne.NewSize(max(size.Width, 420), rapid.Float32Range(240, 500).Draw(t, "height"))
}

// Whatever the charts of a plan are handed, everything they draw is somewhere, and
// inside.
func TestChartsOfAPlanStayInside(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	rapid.Check(t, func(t *rapid.T) {
		w, size := planned(t)
		w.Resize(size)
		for _, o := range rendered(w) {
			if text, ok := o.(*canvas.Text); ok && (text.Text == "" || o.Size().Width > size.Width) {
				continue // a word that is wider than the whole chart
			}
			if fault := outside(o, size); fault != "" {
				t.Fatalf("%T at %v: %T: %s", w, size, o, fault)
			}
		}
	})
}

// The scale of the deficit does not move with what moves: its levels stand where they
// stood, whatever the plan comes to.
func TestTheScaleStandsStill(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	d := match()
	d.Lowest = -5
	c := deficit(d)
	c.Resize(fyne.NewSize(660, 260))
	levels := func() (at []float32) {
		for _, o := range rendered(c) {
			if text, ok := o.(*canvas.Text); ok && (text.Text == "0" || text.Text == "−1 %" || text.Text == "−3 %") {
				at = append(at, o.Position().Y)
			}
		}
		return at
	}
	before := levels()
	for _, by := range []float64{0, 0.5, 2.3} {
		moved := match()
		moved.Lowest = d.Lowest
		for i := range moved.Plan {
			moved.Plan[i].Change *= by
			moved.Range[i] = Span{moved.Plan[i].Change * 1.6, moved.Plan[i].Change * 0.4}
		}
		c.Set(moved)
		for i, y := range levels() {
			if y != before[i] {
				t.Errorf("at %g times the deficit a level stands at %g, not at %g", by, y, before[i])
			}
		}
	}
	b := NewSourceBar()
	b.Resize(fyne.NewSize(300, 32))
	e := carbohydrate()
	e.Bare = true
	mark := func() float32 {
		b.Set(e)
		for _, o := range rendered(b) {
			if _, ok := o.(*canvas.ArbitraryPolygon); ok {
				return o.Position().X
			}
		}
		return -1
	}
	stood := mark()
	e.Parts[0].Value *= 40
	if now := mark(); now != stood || now < 0 {
		t.Errorf("the mark of the habit moved from %g to %g", stood, now)
	}
}

// A bar that is handed more than its scale ends at its end.
func TestStackEndsWithTheBar(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	rapid.Check(t, func(t *rapid.T) {
		b := NewTotalBar()
		b.Set(TotalData{Parts: parts(t), Max: rapid.Float64Range(0.1, 3).Draw(t, "max")})
		b.Resize(fyne.NewSize(200, 40))
		for _, o := range rendered(b) {
			if r, ok := o.(*canvas.Rectangle); ok && r.Position().X+r.Size().Width > 200.5 {
				t.Fatalf("a part ends at %g of 200", r.Position().X+r.Size().Width)
			}
		}
	})
}

// Breaks that are called the same are named once in the legend, and every break is in
// it.
func TestTheLegendNamesEveryBreak(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	d := match()
	d.Stops = nil
	for i := range 8 {
		d.Stops = append(d.Stops, BreakStop{Minute: 5 + 11*float64(i), Name: []string{"time-out", "quarter break"}[i%2], Parts: drinks(100, 0, 0), Amount: "100 mL"})
	}
	c := deficit(d)
	size := fyne.NewSize(520, 260)
	c.Resize(size)
	if got := c.legend(size); len(got) != 1 || got[0] != "1,\u00a03,\u00a05,\u00a07\u00a0time-out · 2,\u00a04,\u00a06,\u00a08\u00a0quarter\u00a0break" {
		t.Errorf("the legend says %q", got)
	}
}

// A click selects the break it is nearest to; beside the line of time it selects none.
func TestAClickSelectsABreak(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	d := match()
	d.Stops = []BreakStop{{Minute: 20, Parts: drinks(100, 0, 0)}, {Minute: 60, Parts: drinks(100, 0, 0)}}
	c := deficit(d)
	c.Resize(fyne.NewSize(660, 260))
	selected := -1
	c.OnSelected = func(stop int) { selected = stop }
	tap := func(x float32) int {
		selected = -1
		c.Tapped(&fyne.PointEvent{Position: fyne.NewPos(x, 200)})
		return selected
	}
	if got := tap(c.StopX(1) + 4); got != 1 {
		t.Errorf("selected %d", got)
	}
	if got := tap(c.StopX(0) - 30); got != 0 {
		t.Errorf("selected %d", got)
	}
	if got := tap(655); got != -1 {
		t.Errorf("beside the line %d is selected", got)
	}
}

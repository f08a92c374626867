package chart

import (
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

// TestSetMakesNothingAnew shows each chart other data of the same shape, as a
// slider does, and counts what was made for it.
func TestSetMakesNothingAnew(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	for _, c := range []moving{
		movingDeficit(), movingSource(), movingBalance(), movingInOut(), movingHeat(), movingIntake(),
		movingColumns(), movingBreaks(), movingStrip(), movingBudget(), movingRange(), movingCard(), movingTotal(), movingBottles(),
	} {
		t.Run(c.name, func(t *testing.T) {
			c.set[0]()
			golden.Open(t, c.widget, fyne.NewSize(look.Scaled(760), look.Scaled(300)))
			c.set[0]()
			first := picture(c.widget)
			c.set[1]()
			if picture(c.widget) == first {
				t.Error("other data draw the same: this count would mean nothing")
			}
			i := 0
			if n := testing.AllocsPerRun(40, func() { c.set[i%2](); i++ }); n > 0 {
				t.Errorf("showing other data makes %.2f things anew", n)
			}
		})
	}
}

// moving is a chart that is shown one set of data and another of the same shape.
type moving struct {
	name   string
	widget fyne.Widget
	set    [2]func()
}

// between makes a chart that moves between two sets of data.
func between[D any](name string, widget fyne.Widget, set func(D), one, other D) moving {
	return moving{name, widget, [2]func(){func() { set(one) }, func() { set(other) }}}
}

func movingDeficit() moving {
	w, one, other := NewDeficitChart(), match(), match()
	for i := range other.Plan {
		other.Plan[i].Change *= 0.9
		other.Range[i].Low *= 0.9
	}
	return between("deficit", w, w.Set, one, other)
}

func movingSource() moving {
	w, one, other := NewSourceBar(), carbohydrate(), carbohydrate()
	other.Parts[0].Value, other.Habit = 19, 11
	return between("source", w, w.Set, one, other)
}

func movingBalance() moving {
	w, one, other := NewBalanceBars(), balanceData(), balanceData()
	other.Rows[0].Parts[0].Value = 1.4
	return between("balance", w, w.Set, one, other)
}

func movingInOut() moving {
	w, one, other := NewInOutBars(), inOutData(), inOutData()
	other.In[0].Value, other.Estimate = 0.5, 1
	return between("in and out", w, w.Set, one, other)
}

func movingHeat() moving {
	w, one, other := NewHeatScatter(), heatData(), heatData()
	other.Estimates[0].Range.High, other.Points[0].Rate = 1.7, 0.9
	return between("heat", w, w.Set, one, other)
}

func movingIntake() moving {
	w, one, other := NewIntakeCard(), intakeData(), intakeData()
	other.Drink[1].Value = 0.4
	return between("intake card", w, w.Set, one, other)
}

func movingColumns() moving {
	w, one, other := NewStepColumns(), stepColumnsData(), stepColumnsData()
	other.Columns[1].Parts[0].Value = 0.6
	return between("step columns", w, w.Set, one, other)
}

func movingBreaks() moving {
	w, one, other := NewBreakTimeline(), breakData(), breakData()
	other.Stops[2].Parts[1].Value, other.Stops[1].Minute = 90, 36
	return between("breaks", w, w.Set, one, other)
}

func movingStrip() moving {
	w, one, other := NewRangeStrip(), stripData(), stripData()
	other.Range, other.Middle = Span{1.1, 1.8}, 1.4
	return between("strip", w, w.Set, one, other)
}

func movingBudget() moving {
	w, one, other := NewBudgetBars(), budgetData(), budgetData()
	other.Shares[0].Part = 0.5
	return between("budget", w, w.Set, one, other)
}

func movingRange() moving {
	w, one := NewRangeBar(), RangeBarData{At: 2.1, Max: 5, Range: Span{1.2, 3.2}, Habit: 2.5, Limit: 2, Limited: true}
	other := one
	other.At, other.Range = 1.7, Span{0.9, 2.8}
	return between("range bar", w, w.Set, one, other)
}

func movingCard() moving {
	w, one := NewStepCard(), StepCardData{Name: "Step 1", Figure: "−2.1 %", Second: "25 g/h", Parts: drinks(0.45, 0.35, 0.1), Max: 1.4, Amount: "0.45 + 0.35 L", Change: "0.25 L more"}
	other := one
	other.Parts = drinks(0.3, 0.35, 0.1)
	return between("step card", w, w.Set, one, other)
}

func movingTotal() moving {
	w, one := NewTotalBar(), TotalData{Parts: drinks(0.45, 0.35, 0), Habit: 0.55, Limit: 1.34, Max: 1.5, HabitWords: "habit 0.55", LimitWords: "limit 1.34"}
	other := one
	other.Parts = drinks(0.6, 0.35, 0)
	return between("total bar", w, w.Set, one, other)
}

func movingBottles() moving {
	w, one, other := NewDeficitChart(), match(), match()
	for _, d := range []*DeficitData{&one, &other} {
		d.Stops, d.StopMax, d.Aside = breakData().Stops, 500, "If the bench break does not happen: −2.2 %"
	}
	other.Stops = breakData().Stops
	other.Stops[2].Parts[0].Value = 60
	return between("bottles", w, w.Set, one, other)
}

// picture is where all objects of a chart are, as one number.
func picture(w fyne.Widget) float32 {
	var sum float32
	for i, o := range rendered(w) {
		p, s := o.Position(), o.Size()
		sum += float32(i+1) * (p.X + 3*p.Y + 7*s.Width + 11*s.Height)
	}
	return sum
}

// rendered lists what a chart has drawn.
func rendered(w fyne.Widget) []fyne.CanvasObject {
	return w.(interface{ objects() []fyne.CanvasObject }).objects()
}

// objects lists what was drawn last.
func (b *base) objects() []fyne.CanvasObject { return b.pen.drawn() }

package chart

import (
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/look"
	"ebbwell/app/look/golden"
)

// TestSetMakesNothingAnew shows each chart other data of the same shape, as a
// slider does, and counts what was made for it.
func TestSetMakesNothingAnew(t *testing.T) {
	deficitA, deficitB := match(), match()
	for i := range deficitB.Plan {
		deficitB.Plan[i].Change *= 0.9
		deficitB.Range[i].Low *= 0.9
	}
	sourceA, sourceB := carbohydrate(), carbohydrate()
	sourceB.Parts[0].Value, sourceB.Habit = 19, 11
	balanceA, balanceB := balanceData(), balanceData()
	balanceB.Rows[0].Parts[0].Value = 1.4
	inOutA, inOutB := inOutData(), inOutData()
	inOutB.In[0].Value, inOutB.Guess = 0.5, 1
	heatA, heatB := heatData(), heatData()
	heatB.Estimates[0].Range.High, heatB.Points[0].Rate = 1.7, 0.9
	barsA, barsB := stepBarsData(), stepBarsData()
	barsB.Bars[1].Value = 1.9
	columnsA, columnsB := stepColumnsData(), stepColumnsData()
	columnsB.Columns[1].Parts[0].Value = 0.6
	breaksA, breaksB := breakData(), breakData()
	breaksB.Stops[2].Parts[1].Value, breaksB.Stops[1].Minute = 90, 36
	stripA, stripB := stripData(), stripData()
	stripB.Range, stripB.Middle = Span{1.1, 1.8}, 1.4
	groupA, groupB := groupData(), groupData()
	groupB.Mark = 1.1
	budgetA, budgetB := budgetData(), budgetData()
	budgetB.Shares[0].Part = 0.5
	miniA, miniB := miniData(), miniData()
	miniB.Parts[0].Value = 0.3

	golden.Use(t, golden.Mode{Percent: 100})
	deficit, source, balance, inOut := NewDeficitChart(), NewSourceBar(), NewBalanceBars(), NewInOutBars()
	heat, bars, columns, breaks := NewHeatScatter(), NewStepBars(), NewStepColumns(), NewBreakTimeline()
	strip, group, budget, mini := NewRangeStrip(), NewGroupPlace(), NewBudgetBars(), NewMiniBar()
	for _, c := range []struct {
		name   string
		widget fyne.Widget
		set    [2]func()
	}{
		{"deficit", deficit, [2]func(){func() { deficit.Set(deficitA) }, func() { deficit.Set(deficitB) }}},
		{"source", source, [2]func(){func() { source.Set(sourceA) }, func() { source.Set(sourceB) }}},
		{"balance", balance, [2]func(){func() { balance.Set(balanceA) }, func() { balance.Set(balanceB) }}},
		{"in and out", inOut, [2]func(){func() { inOut.Set(inOutA) }, func() { inOut.Set(inOutB) }}},
		{"heat", heat, [2]func(){func() { heat.Set(heatA) }, func() { heat.Set(heatB) }}},
		{"step bars", bars, [2]func(){func() { bars.Set(barsA) }, func() { bars.Set(barsB) }}},
		{"step columns", columns, [2]func(){func() { columns.Set(columnsA) }, func() { columns.Set(columnsB) }}},
		{"breaks", breaks, [2]func(){func() { breaks.Set(breaksA) }, func() { breaks.Set(breaksB) }}},
		{"strip", strip, [2]func(){func() { strip.Set(stripA) }, func() { strip.Set(stripB) }}},
		{"group", group, [2]func(){func() { group.Set(groupA) }, func() { group.Set(groupB) }}},
		{"budget", budget, [2]func(){func() { budget.Set(budgetA) }, func() { budget.Set(budgetB) }}},
		{"mini", mini, [2]func(){func() { mini.Set(miniA) }, func() { mini.Set(miniB) }}},
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

package handout

import (
	"strings"

	"ebbwell/internal/consult"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// Done is one line of what was done in a test: what it is and what was written down,
// both worded.
type Done struct{ Label, Value string }

// Calculated is how a figure came about in the trade's words: the rule, and the sum
// with its numbers.
type Calculated struct{ Name, Rule, Sum string }

// ReportDone says what was done and measured, in eight lines. What was not written
// down is said to be missing. Where body mass is hidden the weighings are left out.
func ReportDone(f consult.Findings, t Terms, w *words.Words) []Done {
	r := doneWriter{f, f.Test, amounts{say: w, us: t.USUnits, hidden: t.MassHidden, concealed: map[string]string{}}, w}
	list := []Done{
		r.line("session", r.session(f)), r.line("air", r.air()), r.line("heat", r.heat()), r.line("effort", r.effort()),
		r.line("mass", r.mass()), r.line("bottles", r.bottles()), r.line("patch", r.patch()), r.line("by", f.Test.CreatedBy),
	}
	if t.MassHidden {
		list[4] = r.line("mass", w.Say("handout.report.done.mass.hidden"))
	}
	return list
}

type doneWriter struct {
	f    consult.Findings
	test record.Test
	am   amounts
	w    *words.Words
}

func (r doneWriter) line(key string, value string) Done {
	if strings.TrimSpace(value) == "" {
		value = r.w.Say("handout.report.done.missing")
	}
	return Done{r.w.Say("handout.report.done." + key), value}
}

// listed puts what is known behind one another.
func (r doneWriter) listed(parts ...string) string {
	return r.w.Commas(trim(parts))
}

func (r doneWriter) session(f consult.Findings) string {
	s, times, minutes := r.test.Session, "", ""
	if s.Start != "" && s.End != "" {
		times = r.w.Say("handout.between", string(s.Start), string(s.End))
	}
	if f.Timed {
		minutes = r.w.Say("handout.report.done.minutes", r.w.Number(f.Minutes, 0))
	}
	return r.listed(s.Place, minutes, times)
}

// unit writes a number that was typed, with so many decimals.
func (r doneWriter) unit(n record.Number, decimals int, u quantity.Unit) string {
	if !n.Known() {
		return ""
	}
	return r.w.Number(*n.Value, decimals) + "\u00a0" + string(u)
}

func (r doneWriter) air() string {
	a, temperature, sun := r.test.Air, "", ""
	if a.Temperature.Known() {
		temperature = r.am.air(quantity.Range{Low: *a.Temperature.Value, High: *a.Temperature.Value})
	}
	if a.Sun != "" {
		sun = r.w.Say("handout.report.done.sun", r.w.Say("sun."+string(a.Sun)))
	}
	humidity := ""
	if !r.am.hidden {
		humidity = r.unit(a.Humidity, 0, quantity.PerCent)
	}
	return r.listed(temperature, humidity, sun, r.unit(a.Wind, 1, quantity.MetrePerSecond))
}

func (r doneWriter) heat() string {
	wbgt, used := "", ""
	if n := r.test.Air.Wbgt; n.Known() {
		wbgt = r.w.Say("handout.report.done.wbgt", r.am.air(quantity.Range{Low: *n.Value, High: *n.Value}))
	}
	switch r.test.Session.UsedToHeat {
	case record.AcclimatisedYes:
		used = r.w.Say("handout.report.done.acclimatised")
	case record.AcclimatisedNo:
		used = r.w.Say("handout.report.done.unacclimatised")
	}
	return r.listed(wbgt, used)
}

func (r doneWriter) effort() string {
	s, rated := r.test.Session, ""
	if s.Effort.Known() {
		rated = r.w.Say("handout.report.done.rated", r.w.Number(*s.Effort.Value, 0))
	}
	return r.listed(rated, r.unit(s.Met, 1, quantity.Met), r.unit(s.Power, 0, quantity.Watt), r.unit(s.Speed, 1, quantity.KilometrePerHour))
}

// mass is the last weighing of each moment.
func (r doneWriter) mass() string {
	last := map[record.Moment]string{}
	unit := quantity.Kilogram
	if r.am.us {
		unit = quantity.Pound
	}
	for _, x := range r.test.Weighings {
		if x.Mass.Known() {
			last[x.Moment] = r.w.Number(convert(*x.Mass.Value, quantity.Kilogram, unit), 1) + "\u00a0" + string(unit)
		}
	}
	before, after := last[record.Before], last[record.After]
	if before != "" {
		before = r.w.Say("handout.report.done.before", before)
	}
	if after != "" {
		after = r.w.Say("handout.report.done.after", after)
	}
	return r.listed(before, after)
}

func (r doneWriter) bottles() string {
	weighed, shared := 0, ""
	for _, b := range r.test.Bottles {
		if b.Before.Known() && b.After.Known() {
			weighed++
		}
		if b.ShareLow.Known() || b.ShareHigh.Known() {
			shared = r.w.Say("handout.report.done.shared")
		}
	}
	switch n := len(r.test.Bottles); {
	case n == 0 && r.test.Loss.NothingDrunk:
		return r.w.Say("handout.report.done.nothing")
	case n == 0:
		return ""
	default:
		return r.listed(r.w.Say("handout.report.done.count", n, r.w.Number(float64(weighed), 0)), shared)
	}
}

func (r doneWriter) patch() string {
	n := len(r.test.Patches)
	if n == 0 {
		return r.w.Say("handout.report.done.patch.none")
	}
	first, times := r.test.Patches[0], ""
	if on, ok := r.f.Since(first.On); ok {
		if off, ok := r.f.Since(first.Off); ok && off > on {
			times = r.w.Say("handout.report.done.on", r.w.Number(off-on, 0))
		}
	}
	return r.listed(r.w.Say("handout.report.done.patches", n), times)
}

// ReportCalculation says in the trade's words how the main figures came about. Where
// body mass is hidden, or the figures are not known, there is nothing.
func ReportCalculation(f consult.Findings, hidden bool, w *words.Words) []Calculated {
	fluid, out := f.Sweat.Fluid, f.OtherLosses()
	if hidden || !fluid.Loss.Known || !fluid.Rate.Known || !fluid.Drunk.Known {
		return nil
	}
	n := func(x float64) string { return w.Number(x, 2) }
	cents := func(x float64) float64 { return quantity.Round(x, 2) }
	loss, drunk := cents(fluid.Loss.Value), cents(fluid.Drunk.Value)
	breath, urine, food := cents(max(0, out.Breath)), cents(out.Urine), cents(out.Food)
	lighter := loss + breath + urine - drunk - food
	list := []Calculated{
		{w.Say("handout.report.calc.loss"), w.Say("handout.report.calc.loss.rule"),
			w.Say("handout.report.calc.loss.sum", n(lighter), n(drunk), n(food), n(urine), n(breath), n(loss))},
		{w.Say("handout.report.calc.rate"), w.Say("handout.report.calc.rate.rule"),
			w.Say("handout.report.calc.rate.sum", n(loss), w.Number(f.Minutes/60, 2), n(fluid.Rate.Value))},
	}
	s := f.Sweat.Sodium
	if s.LossRate.Known && s.Concentration.Known {
		list = append(list, Calculated{w.Say("handout.report.calc.sodium"), w.Say("handout.report.calc.sodium.rule"),
			w.Say("handout.report.calc.sodium.sum", n(fluid.Rate.Value), w.Number(s.Concentration.Value, 1), w.Number(s.LossRate.Value, -1))})
	}
	return list
}

// doneTable sets the lines in two columns, down the left one first.
func (p *Press) doneTable(list []Done, am amounts, width float64) []paper.Item {
	if len(list) == 0 {
		return nil
	}
	const label = 24.0
	each := (width - columnGap) / 2
	st := noteStyle()
	var columns [2]paper.Block
	half := (len(list) + 1) / 2
	for i, d := range list {
		b := p.faces.Paragraph(st, d.Label, label-1).At(0, 0.8)
		b = b.Over(p.faces.Paragraph(st.In(paper.Black), am.typed(d.Value), each-label).At(label, 0.8))
		b.Width, b.Height = each, b.Height+0.8
		columns[i/half] = columns[i/half].Under(b.With(rowLine(b.Height, each)), 0)
	}
	both := paper.Beside(columnGap, columns[0], columns[1])
	return []paper.Item{p.section(p.say.Say("handout.report.done"), width), {Block: both}}
}

// calculated sets the rules and their sums.
func (p *Press) calculated(list []Calculated, width float64) []paper.Item {
	if len(list) == 0 {
		return nil
	}
	const name, total = 38.0, 60.0
	t := table{small: true, columns: []col{{width: name}, {width: width - name - total}, {width: total, align: paper.Right}}}
	for _, c := range list {
		t.rows = append(t.rows, row{cells: []string{c.Name, c.Rule, c.Sum}})
	}
	items := []paper.Item{p.section(p.say.Say("handout.report.calculation"), width)}
	for i, r := range t.rows {
		items = append(items, paper.Item{Block: t.row(p, r, width), Keep: i+1 < len(t.rows)})
	}
	return items
}

package heat

import (
	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// Why is the reason for a sweat rate in words.
type Why struct {
	Figure, Beside, Rests string
	// Rule says in three sentences how the figure comes about; Held what the
	// range was held against.
	Rule, Held string
	// Formula is in words, Numbers the same with its numbers in, Inputs what
	// went in; all empty where they could lead back to body mass.
	Formula, Numbers string
	Inputs           []Line
	// Steps are the steps of the heat balance with their ranges.
	Steps []Line
	// Budget is what the range is made of.
	Budget  []chart.BudgetShare
	Sources []string
	// Soldiers compares with soldiers' sweat, or says why that says nothing
	// here; empty where mass is hidden.
	Soldiers string
	// Stated is what is known beside the figure, each with its source.
	Stated []string
	// Tests says of each test what it gave or why it gave nothing.
	Tests []string
}

// Line is a name and a value.
type Line struct{ Name, Value string }

// Why explains the rate of a calculation.
func (sp Speaker) Why(r consult.Calculation) Why {
	answer := sp.Answer(r, NoDays)
	rate := r.Climate.Rate
	w := Why{Figure: answer.Figure, Beside: answer.Beside, Rests: answer.Rests}
	own := r.OwnTests() != ""
	switch {
	case own:
		w.Rule = sp.Say("heat.why.own")
	case rate.Known:
		w.Rule, w.Held = sp.Say("heat.why.rule"), sp.held()
	}
	for _, s := range rate.Why.Budget {
		w.Budget = append(w.Budget, chart.BudgetShare{Name: sp.Say("source." + s.Source), Part: s.Part,
			Text: sp.Words.Number(100*s.Part, 0) + "\u00a0" + string(quantity.PerCent)})
	}
	w.Sources, w.Tests = sp.sources(rate.Why.Sources), sp.Weights(r)
	w.Stated = desk.Statements(sp.Words, sp.By.Hidden, "heat.consensus", "heat.policies", "heat.nutrition", "heat.edition", "sweat.models", "sweat.outdoor")
	if sp.By.Hidden || !rate.Ranged || own {
		return w
	}
	if rate.Why.Formula != "" && len(rate.Why.Inputs) > 1 {
		w.Formula, w.Numbers = rate.Why.Print(sp.symbol), rate.Why.PrintValues(sp.value)
		if !r.Climate.RangeOnly {
			w.Numbers += " = " + sp.Rate(rate.Value)
		}
	}
	for _, in := range rate.Why.Inputs {
		w.Inputs = append(w.Inputs, Line{sp.symbol(in.Symbol), sp.input(in)})
	}
	w.Steps = sp.steps(r.Steps)
	w.Sources = append(w.Sources, sp.more(w.Sources, r.Steps)...)
	w.Soldiers = sp.soldiers(r.Soldiers)
	return w
}

// soldiers sets the rate beside two regressions of soldiers' sweat (Gonzalez
// et al. 2009), or says why they do not hold here. Nothing is based on them.
func (sp Speaker) soldiers(s consult.Soldiers) string {
	if !s.Asked {
		return ""
	}
	for _, p := range climate.Problems(s.Refused) {
		if p.Code == evidence.CodeOutOfFit {
			return sp.Say("heat.soldiers.refused", sp.outside("problem."+p.Code, p))
		}
	}
	if s.Refused != nil {
		return ""
	}
	rate := func(x quantity.GramsPerHour) string {
		if x <= 0 {
			return sp.Say("heat.soldiers.below")
		}
		return sp.Rate(float64(x) / 1000)
	}
	return sp.Say("heat.soldiers.rates", rate(s.Rates.Exponential), rate(s.Rates.Linear))
}

// steps are the steps of the heat balance.
func (sp Speaker) steps(e climate.Explained) []Line {
	var list []Line
	for _, s := range []struct {
		key string
		f   figure.Figure
	}{
		{"heat.step.need", e.Need}, {"heat.step.capacity", e.Capacity}, {"heat.step.wettedness", e.Wettedness},
		{"heat.step.first", e.First}, {"heat.step.onset", e.Onset}, {"heat.step.breath", e.Breath},
	} {
		if s.f.Known {
			list = append(list, Line{sp.Say(s.key), sp.step(s.f)})
		}
	}
	return list
}

// step is a figure with its range.
func (sp Speaker) step(f figure.Figure) string {
	u := f.Unit
	decimals := 2
	if u == quantity.WattPerSquareMetre {
		decimals = 0
	}
	value := sp.Words.Number(f.Value, decimals)
	if u == quantity.LitrePerHour {
		value = sp.By.Number(f.Value, u)
	}
	if u != quantity.None {
		value += "\u00a0" + string(sp.By.Unit(u))
	}
	switch {
	case !f.Ranged:
		return value
	case u == quantity.LitrePerHour:
		return sp.Say("heat.step.ranged", value, sp.By.Range(f))
	}
	return sp.Say("heat.step.ranged", value, sp.Words.Between(f.Range, decimals))
}

// more are the sources of the steps that are not named yet.
func (sp Speaker) more(named []string, e climate.Explained) []string {
	var ids []string
	for _, f := range []figure.Figure{e.Need, e.Capacity, e.Wettedness} {
		ids = append(ids, f.Why.Sources...)
	}
	seen := map[string]bool{}
	for _, s := range named {
		seen[s] = true
	}
	var list []string
	for _, s := range sp.sources(ids) {
		if !seen[s] {
			list = append(list, s)
		}
	}
	return list
}

// sources names references, each once, with how surely they were read.
func (sp Speaker) sources(ids []string) []string {
	var list []string
	seen := map[string]bool{}
	for _, id := range ids {
		e, ok := evidence.Find(id)
		if !ok {
			continue
		}
		text := sp.Say("heat.source", e.Source.Title(sp.Words.Say), desk.Sureness(sp.Words, e.Sure))
		if !seen[text] {
			seen[text] = true
			list = append(list, text)
		}
	}
	return list
}

// held says what the ranges were held against, and where they are weak.
func (sp Speaker) held() string {
	number := func(x float64) string { return sp.Words.Number(x, 0) }
	return sp.Say("heat.why.held", number(evidence.HeldTests), number(evidence.HeldInside), number(evidence.HeldBelow), number(evidence.HeldCoolBelow))
}

// Weights says of each test what it gave and how much it counts, or why it does
// not, the newest first.
func (sp Speaker) Weights(r consult.Calculation) []string {
	var list []string
	for _, i := range byDay(r.Tests) {
		day, c := sp.Day(consult.TestDay(r.Tests[i].Test)), r.Climate.Coverage
		switch {
		case i >= len(c):
		case c[i].Err != nil:
			list = append(list, sp.Say("heat.refused", day, sp.Say("refusal.code."+refusal(c[i].Err))))
		default:
			list = append(list, sp.Say("heat.why.test", day, sp.Rate(float64(r.Compared[i].Rate)), sp.holds(c[i])))
		}
	}
	return list
}

// refusal is the code of why a test does not count.
func refusal(err error) string {
	for _, p := range climate.Problems(err) {
		if p.Code == evidence.CodeInWater {
			return "in-water"
		}
	}
	return "impossible"
}

// symbol is the word for a symbol.
func (sp Speaker) symbol(symbol string) string {
	return sp.Symbol(symbol, func(s string) string { return "heat.symbol." + s })
}

// value is an input with its unit.
func (sp Speaker) value(in figure.Input) string {
	if in.Unit == quantity.LitrePerHour {
		return sp.Rate(in.Value)
	}
	number := sp.Words.Number(in.Value, digitsOf(in.Value, valueDigits))
	if in.Unit == quantity.None {
		return number
	}
	return number + "\u00a0" + string(in.Unit)
}

// input is a value with its standard uncertainty.
func (sp Speaker) input(in figure.Input) string {
	if in.U <= 0 {
		return sp.value(in)
	}
	return sp.Say("heat.input", sp.value(in), sp.Words.Number(in.U, digitsOf(in.U, doubtDigits)))
}

// The digits that a value and its standard uncertainty are shown with.
const (
	valueDigits  = 3
	doubtDigits  = 2
	mostDecimals = 4
)

// digitsOf is how many decimals leave so many digits that matter, none idle.
func digitsOf(x float64, digits int) int { return figure.Decimals(x, digits, mostDecimals) }

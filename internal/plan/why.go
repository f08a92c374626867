package plan

import (
	"fmt"
	"strings"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// Figures are a prediction's figures with their why, for panels and pages.
// Unlike [Planner.Evaluate] they allocate; ask for them when they are shown.
type Figures struct {
	DeficitL, Deficit           figure.Figure
	Drinking                    figure.Figure
	Carbohydrate, Strength      figure.Figure
	SodiumIn, SodiumLoss, Share figure.Figure
}

// Notes beside the figures.
const (
	NoteSimilarDay    = "note.plan.like-day"       // the range is that of a similar day
	NoteEstimate      = "note.plan.estimate"       // is based on an estimate
	NoteSodiumUnknown = "note.plan.sodium-unknown" // a product's sodium is not known
)

// SourcePlannedRate names the planned sweat rate in a budget.
const (
	SourcePlannedRate   = "planned.sweat-rate"
	SourcePlannedSodium = "planned.sodium"
)

// Explain returns a mix's figures, each with the formula and inputs that it
// can be worked out from again.
func (p *Planner) Explain(l Length, mix Mix) Figures {
	q := p.Evaluate(l, mix)
	e := explainer{p: p, mix: mix, hours: p.hours(l)}
	litres := e.lossFormula() + e.sum(" - ", "taken", func(u *Unit) float64 { return u.massKg() }, quantity.Kilogram)
	rate := []figure.Share{{Source: SourcePlannedRate, Part: 1}}
	f := Figures{
		DeficitL: e.figure(q.DeficitL, quantity.Litre, litres, rate, "deficit.aim"),
		Deficit:  e.figure(q.Deficit, quantity.PerCent, "100 * ("+litres+") / mass", rate, "deficit.aim"),
	}
	e.inputs = nil
	drunk := strings.TrimPrefix(e.sum(" + ", "drunk", func(u *Unit) float64 { return u.FluidL }, quantity.Litre), " + ")
	f.Drinking = e.exact(q.Fluid.RateLH, quantity.LitrePerHour, "("+orZero(drunk)+") / hours", "stomach.high")
	e.inputs = nil
	carbohydrate := strings.TrimPrefix(e.sum(" + ", "carbohydrate", func(u *Unit) float64 { return u.CarbohydrateG }, quantity.Gram), " + ")
	f.Carbohydrate = e.exact(q.Carbohydrate.TotalGH, quantity.GramPerHour, "("+orZero(carbohydrate)+") / hours", q.Carbohydrate.Advice.LowID, q.Carbohydrate.Advice.HighID)
	f.Strength = e.strength(q)
	e.sodium(&f, q)
	return f
}

// explainer gathers the inputs of a formula.
type explainer struct {
	p      *Planner
	mix    Mix
	hours  float64
	inputs []figure.Input
}

func orZero(s string) string {
	if s == "" {
		return "0"
	}
	return s
}

func (e *explainer) input(symbol string, x float64, u quantity.Unit) {
	e.inputs = append(e.inputs, figure.Input{Symbol: symbol, Value: x, Unit: u})
}

// lossFormula is what is lost, L.
func (e *explainer) lossFormula() string {
	b := e.p.basis
	e.inputs = nil
	rate := figure.Input{Symbol: "rate", Value: b.SweatRate.Value, Unit: quantity.LitrePerHour, U: halfWidth(b.SweatRate)}
	e.inputs = append(e.inputs, rate)
	e.input("hours", e.hours, quantity.Hour)
	e.input("mass", b.Body.MassKg, quantity.Kilogram)
	if b.BreathLH() == 0 {
		return "rate * hours"
	}
	e.input("breath", b.BreathLH(), quantity.LitrePerHour)
	return "(rate + breath) * hours"
}

// sum writes what the slots add up to, one symbol a slot.
func (e *explainer) sum(sign, symbol string, of func(*Unit) float64, u quantity.Unit) string {
	text := ""
	for s := range e.p.menu {
		item := &e.p.menu[s]
		if x := of(&item.Unit) * e.mix[s]; item.InUse && x > 0 {
			name := fmt.Sprintf("%s%d", symbol, s)
			e.input(name, x, u)
			text += sign + name
		}
	}
	return text
}

// halfWidth is the standard uncertainty that the wider side of a range stands for.
func halfWidth(r Ranged) float64 {
	return max(r.High-r.Value, r.Value-r.Low) / evidence.CoverageFactor
}

func (e *explainer) figure(r Ranged, u quantity.Unit, formula string, budget []figure.Share, sources ...string) figure.Figure {
	f := figure.Figure{
		Known: r.Known, Value: r.Value, Unit: u, U: halfWidth(r), Range: r.Range, Ranged: true,
		Estimate: e.p.basis.Kind == Estimate,
		Why:      figure.Why{Formula: formula, Inputs: append([]figure.Input(nil), e.inputs...), Budget: budget, Sources: known(sources)},
	}
	f.Why.Notes = append(f.Why.Notes, figure.Note{ID: NoteSimilarDay})
	if f.Estimate {
		f.Why.Notes = append(f.Why.Notes, figure.Note{ID: NoteEstimate})
	}
	return f
}

// exact is a figure of what is decided; it has no range of its own.
func (e *explainer) exact(x float64, u quantity.Unit, formula string, sources ...string) figure.Figure {
	e.input("hours", e.hours, quantity.Hour)
	return figure.Figure{
		Known: true, Value: x, Unit: u, Range: quantity.Range{Low: x, High: x}, Ranged: true,
		Why: figure.Why{Formula: formula, Inputs: append([]figure.Input(nil), e.inputs...), Sources: known(sources)},
	}
}

// known drops empty ids.
func known(ids []string) []string {
	var list []string
	for _, id := range ids {
		if id != "" {
			list = append(list, id)
		}
	}
	return list
}

// strength is carbohydrate of the drinks over their volume.
func (e *explainer) strength(q Prediction) figure.Figure {
	e.inputs = nil
	grams, litres := "", ""
	for s := Water; s <= Drink3; s++ {
		item := &e.p.menu[s]
		if !item.InUse || !(e.mix[s] > 0) {
			continue
		}
		g, l := fmt.Sprintf("carbohydrate%d", s), fmt.Sprintf("drunk%d", s)
		e.input(g, item.Unit.CarbohydrateG*e.mix[s], quantity.Gram)
		e.input(l, item.Unit.FluidL*e.mix[s], quantity.Litre)
		grams, litres = grams+" + "+g, litres+" + "+l
	}
	if litres == "" {
		return figure.Figure{}
	}
	formula := "(" + strings.TrimPrefix(grams, " + ") + ") / (10 * (" + strings.TrimPrefix(litres, " + ") + "))"
	return e.exact(q.StrengthPercent, "g/100 mL", formula, "drink.strength.low", "drink.strength.high")
}

// sodium fills in sodium in, out and its share.
func (e *explainer) sodium(f *Figures, q Prediction) {
	e.inputs = nil
	in := strings.TrimPrefix(e.sum(" + ", "sodium", func(u *Unit) float64 { return u.SodiumMg }, quantity.Milligram), " + ")
	taken := e.inputs
	f.SodiumIn = e.exact(q.Sodium.InMgH, quantity.MilligramPerHour, "("+orZero(in)+") / hours", "sodium.molar-mass")
	if q.Sodium.Incomplete {
		f.SodiumIn.Ranged = false
		f.SodiumIn.Why.Notes = append(f.SodiumIn.Why.Notes, figure.Note{ID: NoteSodiumUnknown})
	}
	if !q.Sodium.LossMgH.Known {
		return
	}
	b := e.p.basis
	e.inputs = []figure.Input{
		{Symbol: "rate", Value: b.SweatRate.Value, Unit: quantity.LitrePerHour, U: halfWidth(b.SweatRate)},
		{Symbol: "concentration", Value: b.Sodium.Value, Unit: quantity.MillimolePerLitre, U: halfWidth(b.Sodium)},
	}
	e.input("molarmass", evidence.SodiumMolarMass, "mg/mmol")
	budget := e.sodiumBudget()
	f.SodiumLoss = e.figure(q.Sodium.LossMgH, quantity.MilligramPerHour, "rate * concentration * molarmass", budget, "sodium.molar-mass")
	e.inputs = append(e.inputs, taken...)
	e.input("hours", e.hours, quantity.Hour)
	share := q.Sodium.Share.times(100)
	f.Share = e.figure(share, quantity.PerCent, "100 * ("+orZero(in)+") / (rate * concentration * molarmass * hours)", budget, "sodium.molar-mass")
}

// sodiumBudget parts the variance of the sodium loss between rate and
// concentration, by their relative uncertainties, the larger first.
func (e *explainer) sodiumBudget() []figure.Share {
	b := e.p.basis
	square := func(r Ranged) float64 {
		if !(r.Value > 0) {
			return 0
		}
		u := halfWidth(r) / r.Value
		return u * u
	}
	rate, conc := square(b.SweatRate), square(b.Sodium)
	if rate+conc == 0 {
		return nil
	}
	list := []figure.Share{
		{Source: SourcePlannedRate, Part: rate / (rate + conc)},
		{Source: SourcePlannedSodium, Part: conc / (rate + conc)},
	}
	if conc > rate {
		list[0], list[1] = list[1], list[0]
	}
	return list
}

package consult

import (
	"math"
	"strconv"
	"strings"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
	"ebbwell/internal/uncertainty"
)

// intakeOf puts the parts together. The range is made of the weighings and of
// what a label may be off by.
func intakeOf(t record.Test, r sweat.Result, minutes float64, timed bool, d Setup) fuel.Intake {
	var in fuel.Intake
	ready := true
	for i, b := range t.Bottles {
		if b.Use == record.UsePoured {
			continue
		}
		part := bottlePart(i, b, r, d.Pantry)
		ready = ready && part.Known
		in.Bottles = append(in.Bottles, part)
	}
	for i, f := range t.Foods {
		part := foodPart(i, f, d.Pantry)
		ready = ready && part.Known
		in.Foods = append(in.Foods, part)
	}
	if len(t.Bottles) == 0 && !t.Loss.NothingDrunk {
		ready = false
	}
	in.Unknown = unknownParts(in)
	carbohydrate := gather(in, "carbohydrate", func(p fuel.Part) fuel.Content { return p.Carbohydrate })
	sodium := gather(in, "sodium", func(p fuel.Part) fuel.Content { return p.Sodium })
	in.Carbohydrate = carbohydrate.total(quantity.Gram, ready)
	in.Sodium = sodium.total(quantity.Milligram, ready)
	if timed && minutes > 0 {
		in.CarbohydrateRate = carbohydrate.rate(minutes, quantity.GramPerHour, ready)
		in.SodiumRate = sodium.rate(minutes, quantity.MilligramPerHour, ready)
	}
	in.SodiumShare = shareOf(in.SodiumRate, r.Sodium.LossRate)
	return in
}

func bottlePart(i int, b record.Bottle, r sweat.Result, p *Pantry) fuel.Part {
	part := fuel.Part{Item: i + 1}
	product, found := p.Find(b.ProductID)
	if !found {
		product = fuel.Product{Name: b.Name}
	}
	part.Product = product
	for _, drunk := range r.Bottles {
		if drunk.Item != i+1 || !drunk.Known {
			continue
		}
		density := 1.0
		if product.Density.Known {
			density = product.Density.Value
		}
		part.Known, part.Millilitres, part.Grams, part.Bounds = true, drunk.Drunk, drunk.Drunk*density, drunk.Bounds
	}
	return part.Filled()
}

func foodPart(i int, f record.FoodEaten, p *Pantry) fuel.Part {
	product, found := p.Find(f.ProductID)
	if !found {
		product = fuel.Product{Name: f.Name}
	}
	part := fuel.Part{Item: i + 1, Product: product}
	part.Grams, part.Known = FoodGrams(f, p)
	return part.Filled()
}

// unknownParts names products that were taken and whose contents are not known.
func unknownParts(in fuel.Intake) []string {
	var list []string
	for _, p := range append(append([]fuel.Part(nil), in.Bottles...), in.Foods...) {
		if p.Known && p.Grams > 0 && (!p.Carbohydrate.Known || !p.Sodium.Known) {
			list = append(list, p.Product.Name)
		}
	}
	return list
}

// sum is a total of one content with its formula and error.
type sum struct {
	q       uncertainty.Quantity
	terms   []string
	inputs  []figure.Input
	missing bool
}

// gather adds up one content over all parts: amount times content per 100 g.
func gather(in fuel.Intake, name string, of func(fuel.Part) fuel.Content) sum {
	s := sum{q: uncertainty.Exact(0)}
	add := func(kind string, p fuel.Part) {
		held := of(p)
		if p.Known && p.Grams > 0 && !held.Known {
			s.missing = true
		}
		if !held.Known || p.Grams == 0 {
			return
		}
		s.add(kind+strconv.Itoa(p.Item), name, p, 100*held.Value/p.Grams)
	}
	for _, p := range in.Bottles {
		add("bottle", p)
	}
	for _, p := range in.Foods {
		add("food", p)
	}
	return s
}

// add counts in one part whose 100 g hold per100.
func (s *sum) add(symbol, name string, p fuel.Part, per100 float64) {
	weighed := evidence.BottleWeighingU * math.Sqrt2
	amount := uncertainty.Measured(p.Grams, weighed, uncertainty.Source{Name: sweat.SourceBottle, Item: p.Item})
	if p.Bounds.Width() > 0 {
		density := p.Grams / p.Millilitres
		amount = amount.Plus(uncertainty.Between(-p.Bounds.Width()/2*density, p.Bounds.Width()/2*density,
			uncertainty.Source{Name: sweat.SourceShared, Item: p.Item}))
	}
	label := uncertainty.Measured(per100, evidence.LabelRelativeU*per100, uncertainty.Source{Name: SourceLabel + p.Product.ID})
	s.q = s.q.Plus(amount.Times(label).Scaled(1.0 / 100))
	unit := quantity.Unit("g/100 g")
	if name == "sodium" {
		unit = "mg/100 g"
	}
	s.inputs = append(s.inputs,
		figure.Input{Symbol: symbol, Value: p.Grams, Unit: quantity.Gram, U: amount.U()},
		figure.Input{Symbol: name + "in" + symbol, Value: per100, Unit: unit, U: label.U()})
	s.terms = append(s.terms, symbol+" * "+name+"in"+symbol+" / 100")
}

// SourceLabel begins the name under which a label's error stands in a budget.
const SourceLabel = "label."

// total is the figure of the sum. A product whose content is not known leaves
// it provisional.
func (s sum) total(u quantity.Unit, ready bool) figure.Figure {
	return s.figure(s.q, s.formula(), s.inputs, u, ready)
}

// rate is the sum by the hour.
func (s sum) rate(minutes float64, u quantity.Unit, ready bool) figure.Figure {
	time := uncertainty.Measured(minutes/60, evidence.DurationU/60, uncertainty.Source{Name: sweat.SourceTime})
	inputs := append(append([]figure.Input(nil), s.inputs...),
		figure.Input{Symbol: "minutes", Value: minutes, Unit: quantity.Minute, U: evidence.DurationU})
	return s.figure(s.q.Over(time), "("+s.formula()+") / (minutes / 60)", inputs, u, ready)
}

func (s sum) formula() string {
	if len(s.terms) == 0 {
		return "0"
	}
	return strings.Join(s.terms, " + ")
}

func (s sum) figure(q uncertainty.Quantity, formula string, inputs []figure.Input, u quantity.Unit, ready bool) figure.Figure {
	f := figure.Figure{
		Known: ready || len(s.terms) > 0, Value: q.Value(), Unit: u, U: q.U(), Ranged: ready && !s.missing,
		Why: figure.Why{Formula: formula, Inputs: inputs, Budget: budgetOf(q), Sources: []string{"intake.label"}},
	}
	f.Range = q.Interval()
	f.Range.Low = max(0, f.Range.Low)
	return f
}

// budgetOf joins the shares of all labels under one name.
func budgetOf(q uncertainty.Quantity) []figure.Share {
	var list []figure.Share
	labels := 0.0
	for _, b := range q.Budget() {
		if strings.HasPrefix(b.Source, SourceLabel) {
			labels += b.Part
			continue
		}
		list = append(list, figure.Share{Source: b.Source, Part: b.Part})
	}
	if labels > 0 {
		list = append([]figure.Share{{Source: "label", Part: labels}}, list...)
	}
	return list
}

// shareOf is sodium in as a share of sodium out, %; with the range of both,
// taken as independent.
func shareOf(in, out figure.Figure) figure.Figure {
	if !in.Known || !out.Known || out.Value <= 0 {
		return figure.Figure{}
	}
	q := uncertainty.Measured(in.Value, in.U, uncertainty.Source{Name: "sodium-in"}).
		Over(uncertainty.Measured(out.Value, out.U, uncertainty.Source{Name: "sodium-out"})).Scaled(100)
	f := figure.Figure{
		Known: true, Value: q.Value(), Unit: quantity.PerCent, U: q.U(), Ranged: in.Ranged && out.Ranged, Range: q.Interval(),
		Why: figure.Why{
			Formula: "100 * sodiumin / sodiumlost",
			Inputs: []figure.Input{
				{Symbol: "sodiumin", Value: in.Value, Unit: in.Unit, U: in.U},
				{Symbol: "sodiumlost", Value: out.Value, Unit: out.Unit, U: out.U},
			},
			Budget: budgetOf(q),
		},
	}
	f.Range.Low = max(0, f.Range.Low)
	return f
}

package sweat

import (
	"math"
	"strconv"

	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// term is a quantity together with the arithmetic that made it, so that what a
// "why" shows is what was computed.
type term struct {
	q     uncertainty.Quantity
	text  string
	binds int // how tightly the text holds together
	in    []figure.Input
}

// How tightly a formula holds together.
const (
	sum = iota
	product
	atom
)

// symbol is a measured or computed value under a name.
func symbol(name string, q uncertainty.Quantity, u quantity.Unit) term {
	return term{q, name, atom, []figure.Input{{Symbol: name, Value: q.Value(), Unit: u, U: q.U()}}}
}

// constant is an exact value under a name.
func constant(name string, x float64, u quantity.Unit) term {
	return symbol(name, uncertainty.Exact(x), u)
}

// number is a plain number in a formula: 60, 100.
func number(x float64) term {
	return term{uncertainty.Exact(x), strconv.FormatFloat(x, 'g', -1, 64), atom, nil}
}

func (a term) plus(b term) term {
	return term{a.q.Plus(b.q), a.text + " + " + b.text, sum, join(a.in, b.in)}
}

func (a term) minus(b term) term {
	return term{a.q.Minus(b.q), a.text + " - " + b.within(product), sum, join(a.in, b.in)}
}

func (a term) times(b term) term {
	return term{a.q.Times(b.q), a.within(product) + " * " + b.within(product), product, join(a.in, b.in)}
}

func (a term) over(b term) term {
	return term{a.q.Over(b.q), a.within(product) + " / " + b.within(atom), product, join(a.in, b.in)}
}

// with adds the error of a source that has no symbol of its own.
func (a term) with(u float64, s uncertainty.Source) term {
	a.q = a.q.With(u, s)
	return a
}

// within puts brackets round a formula that binds less than asked for.
func (a term) within(binds int) string {
	if a.binds < binds {
		return "(" + a.text + ")"
	}
	return a.text
}

// join lists the inputs of both, each symbol once. Lists are never written to,
// so one may be handed on as it is.
func join(a, b []figure.Input) []figure.Input {
	if len(b) == 0 {
		return a
	}
	if len(a) == 0 {
		return b
	}
	list := make([]figure.Input, len(a), len(a)+len(b))
	copy(list, a)
	for _, x := range b {
		if !has(list, x.Symbol) {
			list = append(list, x)
		}
	}
	return list
}

// has reports whether a symbol is in the list.
func has(list []figure.Input, symbol string) bool {
	for _, x := range list {
		if x.Symbol == symbol {
			return true
		}
	}
	return false
}

// mean is the plain mean of terms.
func mean(list []term) term {
	total := list[0]
	for _, t := range list[1:] {
		total = total.plus(t)
	}
	if len(list) == 1 {
		return total
	}
	return total.over(number(float64(len(list))))
}

// kind says what a figure may be.
type kind struct {
	unit quantity.Unit
	// from is the lowest end a range can have.
	from float64
	// in is false while something the figure is based on is missing.
	in bool
}

// anywhere is a range without a lowest end.
func anywhere() float64 { return math.Inf(-1) }

// figure makes a figure of the term. A value that is not a finite number, as
// only kept nonsense can give, stays unknown.
func (a term) figure(k kind, sources ...string) figure.Figure {
	f := figure.Figure{Unit: k.unit, Why: figure.Why{Formula: a.text, Inputs: a.in, Sources: sources}}
	f.Value, f.U = a.q.Value(), a.q.U()
	f.Range = a.q.Interval()
	if !finite(f.Value, f.U, f.Range.Low, f.Range.High) {
		return figure.Figure{Unit: k.unit}
	}
	f.Known = true
	// A bias moves a range that many patches make narrow; the value stays inside.
	f.Range = quantity.Range{Low: min(f.Range.Low, f.Value), High: max(f.Range.High, f.Value)}
	f.Range.Low = max(f.Range.Low, min(k.from, f.Value))
	if f.Ranged = k.in; !k.in {
		f.U, f.Range = 0, quantity.Range{}
		return f
	}
	f.Why.Budget = shares(a.q)
	return f
}

// shares is the budget of a quantity as a "why" shows it.
func shares(q uncertainty.Quantity) []figure.Share {
	budget := q.Budget()
	list := make([]figure.Share, len(budget))
	for i, s := range budget {
		list[i] = figure.Share(s)
	}
	return list
}

// finite reports whether all values are numbers.
func finite(list ...float64) bool {
	for _, x := range list {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

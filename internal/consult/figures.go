package consult

import (
	"ebbwell/internal/figure"
	"ebbwell/internal/sweat"
)

// Named is a figure of a test with its stable name; its word is in the
// catalogue of texts under "findings.figure."+Name.
type Named struct {
	Name   string
	Figure figure.Figure
}

// Figures lists every figure of the findings that can be shown, in the order
// of the page. Unknown ones are in the list too.
func (f Findings) Figures() []Named {
	fluid, sodium, in := f.Sweat.Fluid, f.Sweat.Sodium, f.Intake
	return []Named{
		{"sweat-loss", fluid.Loss},
		{"sweat-rate", fluid.Rate},
		{"sweat-rate-by-mass", fluid.RateByMass},
		{"deficit", fluid.Deficit},
		{"deficit-share", fluid.DeficitShare},
		{"not-replaced", fluid.NotReplaced},
		{"drunk", fluid.Drunk},
		{"drinking-rate", fluid.DrinkingRate},
		{"replaced", fluid.Replaced},
		{"carbohydrate", in.Carbohydrate},
		{"carbohydrate-rate", in.CarbohydrateRate},
		{"sodium-in", in.Sodium},
		{"sodium-in-rate", in.SodiumRate},
		{"sodium-share", in.SodiumShare},
		{"sodium-concentration", sodium.Concentration},
		{"sodium-lost", sodium.Loss},
		{"sodium-lost-rate", sodium.LossRate},
		{"sodium-hold", sodium.Hold},
	}
}

// FigureNamed returns one figure of the list; unknown when there is none of
// that name.
func (f Findings) FigureNamed(name string) figure.Figure {
	for _, n := range f.Figures() {
		if n.Name == name {
			return n.Figure
		}
	}
	return figure.Figure{}
}

// OtherLosses is what beside sweat and drinks makes up the deficit of a test, kg.
type OtherLosses struct {
	// Breath is water breathed out and gas exchange, zero by the field method;
	// Urine holds stool too; Food is what was eaten.
	Breath, Urine, Food float64
}

// OtherLosses reads them off the balance.
func (f Findings) OtherLosses() OtherLosses {
	var o OtherLosses
	for _, l := range f.Sweat.Balance {
		switch l.ID {
		case sweat.LineRespiratory, sweat.LineExchange:
			o.Breath -= l.Kilograms
		case sweat.LineUrine, sweat.LineStool:
			o.Urine -= l.Kilograms
		case sweat.LineEaten:
			o.Food += l.Kilograms
		}
	}
	return o
}

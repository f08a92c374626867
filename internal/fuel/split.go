package fuel

import "ebbwell/internal/quantity"

// Split parts carbohydrate by the way it is taken up, g. Glucose, lactose,
// maltose, starch and maltodextrin count as the glucose family, fructose as
// its own; sucrose is half and half by mass. Unknown is what no analysis
// assigns: it may be either.
type Split struct {
	Glucose, Fructose, Unknown float64
}

// Total is all three parts, g.
func (s Split) Total() float64 { return s.Glucose + s.Fructose + s.Unknown }

// FructoseShare is the fructose family's share of the carbohydrate whose
// family is known, 0 to 1; zero when nothing is known.
func (s Split) FructoseShare() float64 {
	if known := s.Glucose + s.Fructose; known > 0 {
		return s.Fructose / known
	}
	return 0
}

func (s Split) times(f float64) Split {
	return Split{Glucose: s.Glucose * f, Fructose: s.Fructose * f, Unknown: s.Unknown * f}
}

func (s Split) plus(t Split) Split {
	return Split{Glucose: s.Glucose + t.Glucose, Fructose: s.Fructose + t.Fructose, Unknown: s.Unknown + t.Unknown}
}

// Split parts the available carbohydrate of 100 g. Where the analysed sugars
// come to more than the available carbohydrate (rounding in the source, 0.26 g
// at most in the USDA rows) they are scaled down to it. It is all zero when the available
// carbohydrate is unknown.
func (c Composition) Split() Split {
	available := c.AvailableCarbohydrate()
	if !available.Known {
		return Split{}
	}
	s := c.Sugars
	known := Split{
		Glucose:  s.Glucose.Value + s.Lactose.Value + s.Maltose.Value + s.Starch.Value + s.Maltodextrin.Value + s.Sucrose.Value/2,
		Fructose: s.Fructose.Value + s.Sucrose.Value/2,
	}
	sum := known.Glucose + known.Fructose
	if sum > available.Value {
		return known.times(available.Value / sum)
	}
	known.Unknown = available.Value - sum
	return known
}

// FructoseRange is the share of the fructose family in the carbohydrate, 0 to
// 1: the low end when all that no analysis assigns is of the glucose family,
// the high end when all of it is fructose. ok is false where there is no
// carbohydrate, or nothing is known of its kinds.
func (s Split) FructoseRange() (r quantity.Range, ok bool) {
	total := s.Total()
	if total <= 0 || s.Glucose+s.Fructose <= 0 {
		return quantity.Range{}, false
	}
	return quantity.Range{Low: s.Fructose / total, High: (s.Fructose + s.Unknown) / total}, true
}

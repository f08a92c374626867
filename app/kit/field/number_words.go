package field

import (
	"errors"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// judge shows what is wrong with the number, or has the listener show it.
func (n *Number) judge() {
	r := n.Reading()
	weight, note := Fine, ""
	switch r.State {
	case Warned:
		weight = Odd
	case Refused, Unreadable:
		weight = Wrong
	}
	if weight != Fine {
		note = n.sentence(r)
	}
	n.setup.quiet = n.OnProblem != nil
	was, words := n.Trouble()
	n.SetTrouble(weight, note)
	if n.OnProblem != nil && (was != weight || words != note) {
		n.OnProblem(weight, note)
	}
}

// sentence says what is wrong, or asks about it.
func (n *Number) sentence(r Reading) string {
	if n.Hint != nil {
		if s := n.Hint(r); s != "" {
			return s
		}
	}
	w := n.host.Words
	if r.State == Unreadable {
		if _, err := quantity.Parse(r.Raw, n.is.shown); errors.Is(err, quantity.ErrOtherUnit) {
			return w.Say("field.number.otherunit", string(n.is.shown))
		}
		return w.Say("field.number.unreadable")
	}
	return n.problem(*r.Problem)
}

// problem puts a problem into words, with its limit in the unit shown.
func (n *Number) problem(p evidence.Problem) string {
	w := n.host.Words
	if p.Code != evidence.CodeOutside {
		return w.Say("field.number.unreadable")
	}
	low, high := n.limit(p.Limit.Low, p.Unit), n.limit(p.Limit.High, p.Unit)
	refused, plain := p.Severity == evidence.Refuses, n.setup.suffix == ""
	switch {
	case refused && plain:
		return w.Say("field.number.refused.plain", low, high)
	case refused:
		return w.Say("field.number.refused", low, high, n.setup.suffix)
	case plain:
		return w.Say("field.number.odd.plain", low, high)
	}
	return w.Say("field.number.odd", low, high, n.setup.suffix)
}

// limit writes the end of a limit in the unit shown.
func (n *Number) limit(x float64, from quantity.Unit) string {
	shown, err := quantity.Convert(x, from, n.is.shown)
	if err != nil {
		shown = x
	}
	decimals := max(neededDecimals(shown), n.is.decimals)
	if from != n.is.shown {
		decimals = min(decimals, quantity.Decimals(n.is.shown))
	}
	return n.host.Words.Number(shown, decimals)
}

// PoundsHint is a [Number.Hint] for masses shown in kilograms: a number that
// passes a limit, and would not in pounds, is asked about.
func (n *Number) PoundsHint(r Reading) string {
	if r.Problem == nil || n.is.shown != quantity.Kilogram || r.Unit != quantity.Kilogram {
		return ""
	}
	inPounds, err := quantity.Convert(r.Value, quantity.Pound, quantity.Kilogram)
	l, ok := evidence.LimitOf(n.is.field)
	if err != nil || !ok || r.Value <= l.Warn.High || !l.Warn.Contains(inPounds) {
		return ""
	}
	w := n.host.Words
	return w.Say("field.number.pounds", r.Raw, w.Number(inPounds, 1))
}

// MetresHint is a [Number.Hint] for heights shown in centimetres: a number
// that is refused, and would not be in metres, is asked about.
func (n *Number) MetresHint(r Reading) string {
	l, ok := evidence.LimitOf(n.is.field)
	if r.State != Refused || n.is.shown != quantity.Centimetre || r.Unit != quantity.Centimetre || !ok {
		return ""
	}
	asMetres, err := quantity.Convert(r.Value, n.is.base, quantity.Centimetre)
	if err != nil || l.Unit != quantity.Metre || !l.Warn.Contains(asMetres) {
		return ""
	}
	return n.host.Words.Say("field.number.metres", r.Raw, n.host.Words.Number(asMetres*100, 0))
}

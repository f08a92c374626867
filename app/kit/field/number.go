package field

import (
	"errors"
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// State is what a [Number] makes of its text.
type State int

// The states.
const (
	// Empty: nothing was typed.
	Empty State = iota
	// Good: a number within its limits.
	Good
	// Warned: a number that is used, with a question beside it.
	Warned
	// Refused: a number that is not used until it is corrected, or kept with a
	// written reason.
	Refused
	// Unreadable: not a number, or one in a unit of another kind.
	Unreadable
)

// Reading is a typed number, read.
type Reading struct {
	// Raw is the text as it was typed.
	Raw string
	// Value is in the unit the field is computed in; meaningful when Known.
	Value float64
	// Known is true when the text could be read, also when it was refused.
	Known bool
	// Unit is the unit that was typed, or the one shown when none was.
	Unit    quantity.Unit
	State   State
	Problem *evidence.Problem
}

// Usable reports whether the value may be computed with.
func (r Reading) Usable() bool { return r.State == Good || r.State == Warned }

// Number is a number with a unit and limits. It reads comma and point, takes a
// typed unit of the same kind, and keeps the text as typed.
type Number struct {
	entry

	// OnChanged is told the reading at every keystroke, OnLeft when the
	// keyboard leaves or Enter is pressed, OnEnter at Enter.
	OnChanged func(Reading)
	OnLeft    func(Reading)
	OnEnter   func(Reading)
	// OnProblem is given the words of a problem, empty when it is over; the
	// field then shows the bar and leaves the words to the listener.
	OnProblem func(Weight, string)
	// Hint may offer a sentence instead of the usual one for a reading: see
	// [Number.PoundsHint].
	Hint func(Reading) string

	is numberKind
}

// numberKind is what a number measures and how it is shown.
type numberKind struct {
	field evidence.Field
	item  int
	// base is the unit that is computed in, shown the one on screen.
	base, shown quantity.Unit
	// decimals fixes the decimals SetValue writes; -1 is as many as needed, or
	// as usual for a unit that was converted into.
	decimals int
	format   func(float64) string
	also     alsoUnit
}

var _ Field = (*Number)(nil)

// NewNumber makes a number of a field that is computed in a unit. The limits
// of the field, if it has any, come from internal/evidence.
func NewNumber(h *Host, name string, f evidence.Field, base quantity.Unit) *Number {
	n := &Number{is: numberKind{field: f, base: base, shown: base, decimals: -1}}
	n.setup.right = true
	n.setup.suffix = string(base)
	n.editor.most = 40
	n.hooks = entryHooks{
		changed: n.onChanged,
		left:    n.onLeft,
		enter:   func() bool { return tell(n.OnEnter, n.Reading()) },
	}
	n.start(n, h, name)
	return n
}

// SetItem numbers the field where there are several (bottle 3), for its
// problems.
func (n *Number) SetItem(item int) { n.is.item = item }

// SetShown shows and reads the number in another unit of the same kind. What
// was typed is written anew when it could be read.
func (n *Number) SetShown(u quantity.Unit) {
	if u == n.is.shown || !quantity.SameKind(u, n.is.base) {
		return
	}
	r := n.Reading()
	n.is.shown = u
	n.setup.suffix = string(u)
	if r.Known {
		n.SetRaw(n.write(r.Value))
	}
	n.Refresh()
}

// SetSuffix shows other words than the unit behind the number: "bar".
func (n *Number) SetSuffix(text string) {
	n.setup.suffix = text
	n.Refresh()
}

// SetDecimals fixes how many decimals SetValue writes; -1, as at first, is as
// many as the number needs.
func (n *Number) SetDecimals(decimals int) { n.is.decimals = decimals }

// SetFormat lets SetValue write a shown number in another way: "½".
func (n *Number) SetFormat(format func(shown float64) string) { n.is.format = format }

// SetValue writes a value that is in the unit the field is computed in. A text
// that is read as that value stays as it was typed. Nobody is told.
func (n *Number) SetValue(x float64) {
	if r := n.Reading(); r.Known && math.Abs(r.Value-x) < 1e-9 {
		return
	}
	n.SetRaw(n.write(x))
}

// SetRaw puts back a text as it was typed. Nobody is told.
func (n *Number) SetRaw(text string) {
	n.SetText(text)
	n.judge()
}

// Clear empties the field. Nobody is told.
func (n *Number) Clear() { n.SetRaw("") }

// write is a value as text, in the unit shown.
func (n *Number) write(x float64) string {
	shown, err := quantity.Convert(x, n.is.base, n.is.shown)
	if err != nil {
		return ""
	}
	if n.is.format != nil {
		return n.is.format(shown)
	}
	decimals := n.is.decimals
	if decimals < 0 {
		decimals = neededDecimals(shown)
		if n.is.shown != n.is.base {
			decimals = min(decimals, quantity.Decimals(n.is.shown))
		}
	}
	return n.host.Words.Typed(shown, decimals)
}

// neededDecimals is how many decimals a number needs, four at most.
func neededDecimals(x float64) int {
	for d := range 4 {
		if diff := quantity.Round(x, d) - x; diff < 1e-9 && diff > -1e-9 {
			return d
		}
	}
	return 4
}

// Value returns the number in the unit the field is computed in; ok is false
// when nothing usable was typed.
func (n *Number) Value() (x float64, ok bool) {
	r := n.Reading()
	return r.Value, r.Usable()
}

// Reading reads what was typed.
func (n *Number) Reading() Reading {
	r := Reading{Raw: n.Text(), Unit: n.is.shown}
	typed, err := quantity.Parse(r.Raw, n.is.shown)
	switch {
	case errors.Is(err, quantity.ErrEmpty):
		return r
	case errors.Is(err, quantity.ErrOtherUnit) && n.readAlso(&r):
	case err != nil:
		r.State = Unreadable
		return r
	default:
		if r.Value, err = quantity.Convert(typed.Value, n.is.shown, n.is.base); err != nil {
			r.State = Unreadable
			return r
		}
		r.Unit = typed.Unit
	}
	r.Known, r.State, r.Problem = true, Good, n.check(r.Value)
	if r.Problem != nil {
		r.State = Warned
		if r.Problem.Severity == evidence.Refuses {
			r.State = Refused
		}
	}
	return r
}

// check holds a value against the limits of the field, in their unit.
func (n *Number) check(x float64) *evidence.Problem {
	l, ok := evidence.LimitOf(n.is.field)
	if !ok {
		return nil
	}
	inLimit, err := quantity.Convert(x, n.is.base, l.Unit)
	if err != nil {
		inLimit = x
	}
	return evidence.Check(n.is.field, n.is.item, inLimit)
}

// onChanged takes a trouble back as soon as it is over; a new one waits until
// the field is left, so that half a number is not scolded.
func (n *Number) onChanged() {
	if s := n.Reading().State; s == Good || s == Empty {
		n.judge()
	}
	tell(n.OnChanged, n.Reading())
}

func (n *Number) onLeft() {
	n.judge()
	tell(n.OnLeft, n.Reading())
}

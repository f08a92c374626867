package climate

import (
	"errors"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// refused holds a value against its limit and returns an error only when the
// limit refuses it.
func refused(f evidence.Field, x float64) error {
	if p := evidence.Check(f, 0, x); p != nil && p.Severity == evidence.Refuses {
		return *p
	}
	return nil
}

// limits are the limits of input, looked up once for many values: they are
// held against whenever a value in the planner moves.
type limits []evidence.Limit

// refusedAny joins the refusals of several fields.
func refusedAny(values ...fieldValue) error { return limits(evidence.Limits()).refused(values...) }

// refused joins the refusals of several fields.
func (l limits) refused(values ...fieldValue) error {
	var list []error
	for _, v := range values {
		if !l.within(v) {
			list = append(list, refused(v.field, v.value))
		}
	}
	return errors.Join(list...)
}

// within reports whether a value is one that its limit does not refuse.
func (l limits) within(v fieldValue) bool {
	for i := range l {
		if l[i].Field == v.field {
			return l[i].Refuse.Contains(v.value)
		}
	}
	return false
}

// fieldValue is a value with the field whose limit it is held against.
type fieldValue struct {
	field evidence.Field
	value float64
}

// problem is a refusal with a code.
func problem(f evidence.Field, code string, x float64) error {
	return evidence.Problem{Field: f, Code: code, Severity: evidence.Refuses, Value: x}
}

// outOfFit is the refusal of a value beyond where a formula was fitted, in the
// formula's own unit.
func outOfFit(f evidence.Field, x, low, high float64, u quantity.Unit) error {
	return evidence.Problem{Field: f, Code: evidence.CodeOutOfFit, Severity: evidence.Refuses, Value: x,
		Limit: quantity.Range{Low: low, High: high}, Unit: u}
}

// Problems lists the problems inside an error of this package, so that a
// screen can put each beside its field. Errors of other kinds are left out.
func Problems(err error) []evidence.Problem {
	var list []evidence.Problem
	var walk func(error)
	walk = func(err error) {
		switch e := any(err).(type) {
		case nil:
		case evidence.Problem:
			list = append(list, e)
		case interface{ Unwrap() []error }:
			for _, inner := range e.Unwrap() {
				walk(inner)
			}
		default:
			walk(errors.Unwrap(err))
		}
	}
	walk(err)
	return list
}

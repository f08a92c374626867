package store

import (
	"math"
	"reflect"
	"strconv"
	"time"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// same reports whether two rows hold the same in a field.
func (l leaf) same(a, b reflect.Value) bool {
	switch x := a.FieldByIndex(l.index).Interface().(type) {
	case record.Number:
		return x.Same(b.FieldByIndex(l.index).Interface().(record.Number))
	case *time.Time:
		y := b.FieldByIndex(l.index).Interface().(*time.Time)
		return x == y || x != nil && y != nil && x.Equal(*y)
	default:
		return x == b.FieldByIndex(l.index).Interface()
	}
}

// put adds the columns of a field to a row that is to be written. An empty
// link is null.
func (l leaf) put(into map[string]any, row reflect.Value) {
	switch x := row.FieldByIndex(l.index).Interface().(type) {
	case record.Number:
		into[l.columns[0]], into[l.columns[1]] = nil, string(x.Unit)
		if x.Value != nil {
			into[l.columns[0]] = *x.Value
		}
	case record.ID:
		into[l.columns[0]] = nil
		if x != "" {
			into[l.columns[0]] = string(x)
		}
	case *time.Time:
		into[l.columns[0]] = nil
		if x != nil {
			into[l.columns[0]] = kept(*x)
		}
	default:
		into[l.columns[0]] = x
	}
}

// kept is a time as every database keeps it.
func kept(t time.Time) time.Time { return t.UTC().Truncate(time.Microsecond) }

// finite reports whether a field can be kept: SQLite has no NaN, and an
// infinite mass is a mistake.
func (l leaf) finite(row reflect.Value) bool {
	n, ok := row.FieldByIndex(l.index).Interface().(record.Number)
	return !ok || n.Value == nil || !math.IsNaN(*n.Value) && !math.IsInf(*n.Value, 0)
}

// text writes a field for the history: a number with the unit it was typed
// in, a time as RFC 3339, yes and no as true and false.
func (l leaf) text(row reflect.Value) string {
	switch x := row.FieldByIndex(l.index).Interface().(type) {
	case record.Number:
		return numberText(x, l.unit)
	case *time.Time:
		if x == nil {
			return ""
		}
		return kept(*x).Format(time.RFC3339Nano)
	case bool:
		return strconv.FormatBool(x)
	case int:
		return strconv.Itoa(x)
	default:
		return row.FieldByIndex(l.index).String()
	}
}

// numberText writes a number in the unit it was typed in, or in the unit it is
// kept in where the two measure different things, as a concentration may.
func numberText(n record.Number, unit quantity.Unit) string {
	if n.Value == nil {
		return ""
	}
	x := *n.Value
	if n.Unit != "" && unit != "" {
		if typed, err := quantity.Convert(x, unit, n.Unit); err == nil {
			x, unit = typed, n.Unit
		}
	} else if unit == "" {
		unit = n.Unit
	}
	text := plainNumber(x)
	if unit != "" {
		text += " " + string(unit)
	}
	return text
}

// plainNumber writes a number to 12 significant digits, so that a conversion
// there and back does not show.
func plainNumber(x float64) string {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 12, 64), 64)
	if err != nil {
		rounded = x
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

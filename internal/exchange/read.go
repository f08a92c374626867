package exchange

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"time"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Fault is what is wrong with one cell, or with a row or a table.
type Fault struct {
	Table string
	// Row counts from 1 below the heading; 0 for the table.
	Row int
	// Column is its heading; empty for the row.
	Column string
	// Cell is what stands there.
	Cell string
	Kind FaultKind
}

// FaultKind says what is wrong.
type FaultKind string

// What can be wrong.
const (
	FaultNumber   FaultKind = "number"   // not a finite number
	FaultDay      FaultKind = "day"      // not a day
	FaultClock    FaultKind = "clock"    // not a time of day
	FaultMoment   FaultKind = "moment"   // not a moment
	FaultYesNo    FaultKind = "yesno"    // neither yes nor empty
	FaultUnit     FaultKind = "unit"     // not a unit of what the number measures
	FaultTable    FaultKind = "table"    // no such table
	FaultTwice    FaultKind = "twice"    // the id, the heading or the table stands twice
	FaultNoID     FaultKind = "noid"     // the row has no id
	FaultNoParent FaultKind = "noparent" // what the row belongs to is not there
	FaultShort    FaultKind = "short"    // the row has more cells than there are headings
)

// Read makes records of tables. A column that is not known is left alone, one
// that is missing leaves its fields empty. When there is a fault there are no records.
func Read(tables []Table) (Records, []Fault) {
	r := reader{tables: map[string]Table{}}
	all, known := shapes(), map[string]bool{}
	for _, top := range all {
		for _, s := range top.all() {
			known[s.name] = true
		}
	}
	for _, t := range tables {
		switch _, twice := r.tables[t.Name]; {
		case !known[t.Name]:
			r.fault(Fault{Table: t.Name, Kind: FaultTable})
		case twice:
			r.fault(Fault{Table: t.Name, Kind: FaultTwice})
		}
		r.tables[t.Name] = t
	}
	var records Records
	whole := reflect.ValueOf(&records).Elem()
	for i, s := range all {
		whole.Field(i).Set(r.rows(s, nil)[""])
	}
	if len(r.faults) > 0 {
		return Records{}, r.faults
	}
	return records, nil
}

// reader reads tables and gathers what is wrong.
type reader struct {
	tables map[string]Table
	faults []Fault
}

// fault notes a fault.
func (r *reader) fault(f Fault) { r.faults = append(r.faults, f) }

// rows reads the rows of a shape with all their lists, by the id of what they
// belong to; at the top all belong to "". parent is the field with that id.
func (r *reader) rows(s *shape, parent []int) map[string]reflect.Value {
	lists := make([]map[string]reflect.Value, len(s.lists))
	for i, l := range s.lists {
		lists[i] = r.rows(l.rows, l.parent)
	}
	grouped, seen := map[string]reflect.Value{}, map[string]bool{}
	if parent == nil {
		grouped[""] = reflect.Zero(reflect.SliceOf(s.of))
	}
	t := r.tables[s.name]
	at := r.places(s, t)
	for i, cells := range t.Rows {
		row := reflect.New(s.of).Elem()
		r.row(s, t, at, i, cells, row)
		id := row.FieldByName("ID").String()
		switch {
		case id == "":
			r.fault(Fault{Table: s.name, Row: i + 1, Kind: FaultNoID})
		case seen[id]:
			r.fault(Fault{Table: s.name, Row: i + 1, Column: "id", Cell: id, Kind: FaultTwice})
		}
		seen[id] = true
		for j, l := range s.lists {
			if own, ok := lists[j][id]; ok {
				row.FieldByIndex(l.index).Set(own)
			}
		}
		key := ""
		if parent != nil {
			key = row.FieldByIndex(parent).String()
		}
		if _, ok := grouped[key]; !ok {
			grouped[key] = reflect.Zero(reflect.SliceOf(s.of))
		}
		grouped[key] = reflect.Append(grouped[key], row)
	}
	for j, l := range s.lists {
		r.orphans(l.rows, lists[j], seen)
	}
	return grouped
}

// orphans finds rows whose owner is not there.
func (r *reader) orphans(s *shape, grouped map[string]reflect.Value, owners map[string]bool) {
	var keys []string
	for key := range grouped {
		if !owners[key] {
			keys = append(keys, key)
		}
	}
	slices.Sort(keys)
	for _, key := range keys {
		r.fault(Fault{Table: s.name, Cell: key, Kind: FaultNoParent})
	}
}

// places says for each field in which cell of a row it stands; -1 where it does not.
func (r *reader) places(s *shape, t Table) []int {
	at, found := make([]int, len(s.fields)), map[string]int{}
	for i, c := range t.Columns {
		if _, twice := found[c.Name]; twice {
			r.fault(Fault{Table: s.name, Column: c.Heading(), Kind: FaultTwice})
		}
		found[c.Name] = i
	}
	for i, f := range s.fields {
		at[i] = -1
		if place, ok := found[f.column.Name]; ok {
			at[i] = place
		}
	}
	return at
}

// row reads the cells of one row.
func (r *reader) row(s *shape, t Table, at []int, i int, cells []string, into reflect.Value) {
	if len(cells) > len(t.Columns) {
		r.fault(Fault{Table: s.name, Row: i + 1, Kind: FaultShort})
	}
	for j, f := range s.fields {
		if at[j] < 0 || at[j] >= len(cells) || cells[at[j]] == "" {
			continue
		}
		if kind := f.set(into.FieldByIndex(f.index), cells[at[j]]); kind != "" {
			r.fault(Fault{Table: s.name, Row: i + 1, Column: f.column.Heading(), Cell: cells[at[j]], Kind: kind})
		}
	}
}

// set puts a cell that is not empty into a field; it returns what is wrong.
func (f field) set(v reflect.Value, text string) FaultKind {
	switch f.column.Holds {
	case HoldsNumber:
		x, err := finite(text)
		if err != nil {
			return FaultNumber
		}
		v.Set(reflect.ValueOf(&x))
	case HoldsWhole:
		n, err := strconv.Atoi(text)
		if err != nil {
			return FaultNumber
		}
		v.SetInt(int64(n))
	case HoldsYesNo:
		if !strings.EqualFold(text, yes) {
			return FaultYesNo
		}
		v.SetBool(true)
	case HoldsMoment:
		return setMoment(v, text)
	default:
		return f.setText(v, text)
	}
	return ""
}

// setText puts a text into a field whose texts may have a form.
func (f field) setText(v reflect.Value, text string) FaultKind {
	switch f.column.Holds {
	case HoldsDay:
		if _, ok := record.Date(text).Time(); !ok {
			return FaultDay
		}
	case HoldsClock:
		if _, ok := record.Clock(text).Minutes(); !ok {
			return FaultClock
		}
	case HoldsUnit:
		if !quantity.SameKind(quantity.Unit(text), f.measures) {
			return FaultUnit
		}
	}
	v.SetString(text)
	return ""
}

// setMoment puts a moment into a field, or into what it points at.
func setMoment(v reflect.Value, text string) FaultKind {
	t, err := time.Parse(time.RFC3339Nano, text)
	if err != nil {
		return FaultMoment
	}
	t = t.UTC()
	if v.Kind() == reflect.Pointer {
		v.Set(reflect.ValueOf(&t))
	} else {
		v.Set(reflect.ValueOf(t))
	}
	return ""
}

// finite reads a number with a point.
func finite(text string) (float64, error) {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, fmt.Errorf("read a number: %w", err)
	}
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, errors.New("read a number: not finite")
	}
	return x, nil
}

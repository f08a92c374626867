package exchange

import (
	"reflect"
	"strconv"
	"time"
)

// write writes rows, and the rows of their lists, as tables.
func (s *shape) write(rows reflect.Value) []Table {
	byName := map[string]*Table{}
	var tables []*Table
	for _, each := range s.all() {
		t := &Table{Name: each.name, Columns: each.columns()}
		byName[each.name], tables = t, append(tables, t)
	}
	s.fill(rows, byName)
	list := make([]Table, len(tables))
	for i, t := range tables {
		list[i] = *t
	}
	return list
}

// fill appends the rows to the tables.
func (s *shape) fill(rows reflect.Value, tables map[string]*Table) {
	t := tables[s.name]
	for i := range rows.Len() {
		row := rows.Index(i)
		cells := make([]string, len(s.fields))
		for j, f := range s.fields {
			cells[j] = cell(row.FieldByIndex(f.index))
		}
		t.Rows = append(t.Rows, cells)
		for _, l := range s.lists {
			l.rows.fill(row.FieldByIndex(l.index), tables)
		}
	}
}

// cell writes one value.
func cell(v reflect.Value) string {
	switch x := v.Interface().(type) {
	case time.Time:
		return moment(x)
	case *time.Time:
		if x == nil {
			return ""
		}
		return moment(*x)
	case *float64:
		if x == nil {
			return ""
		}
		return strconv.FormatFloat(*x, 'g', -1, 64)
	}
	switch v.Kind() {
	case reflect.Bool:
		if v.Bool() {
			return yes
		}
		return ""
	case reflect.Int:
		return strconv.FormatInt(v.Int(), 10)
	}
	return v.String()
}

// yes is what stands for true.
const yes = "yes"

// moment writes a time; the zero time is empty.
func moment(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.UTC().Format(time.RFC3339Nano)
}

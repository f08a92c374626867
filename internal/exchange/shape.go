package exchange

import (
	"reflect"
	"slices"
	"strings"
	"time"
	"unicode"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// shape is how one sort of row stands in a table.
type shape struct {
	name   string
	of     reflect.Type
	fields []field
	lists  []list
}

// field is one column and where in the row its value is.
type field struct {
	column Column
	index  []int
	// measures is a unit of what the number before it measures, in the column of a typed unit.
	measures quantity.Unit
}

// list is a list within a row, a table of its own.
type list struct {
	index []int
	// parent is the field of its rows that holds the id of the row it is in.
	parent []int
	rows   *shape
}

// newShape finds the shape of a record type by reflection.
func newShape(name string, of reflect.Type) *shape {
	s := &shape{name: name, of: of}
	s.walk(of, "", nil)
	return s
}

// walk adds the fields of a struct, and of the structs within it.
func (s *shape) walk(of reflect.Type, prefix string, index []int) {
	for i := range of.NumField() {
		f := of.Field(i)
		name, at := prefix+pathName(f.Name), append(slices.Clone(index), i)
		switch {
		case f.Tag.Get("gorm") == "-": // worked out on loading, not kept
		case f.Anonymous:
			s.walk(f.Type, prefix, at)
		case f.Type == reflect.TypeFor[record.Number]():
			s.add(Column{Name: name, Unit: f.Tag.Get("unit"), Holds: HoldsNumber}, append(slices.Clone(at), 0))
			s.fields = append(s.fields, field{
				column: Column{Name: name + ".typed", Holds: HoldsUnit}, index: append(slices.Clone(at), 1), measures: quantity.Unit(f.Tag.Get("unit")),
			})
		case f.Type.Kind() == reflect.Slice:
			s.addList(f, at)
		case f.Type.Kind() == reflect.Struct && f.Type != reflect.TypeFor[time.Time]():
			s.walk(f.Type, name+".", at)
		default:
			s.add(Column{Name: name, Holds: holds(f.Type)}, at)
		}
	}
}

// add adds a column.
func (s *shape) add(c Column, index []int) {
	s.fields = append(s.fields, field{column: c, index: index})
}

// addList adds a list; its tag names the field of its rows that points back.
func (s *shape) addList(f reflect.StructField, at []int) {
	rows := f.Type.Elem()
	_, key, _ := strings.Cut(f.Tag.Get("gorm"), "foreignKey:")
	key, _, _ = strings.Cut(key, ";")
	parent, ok := rows.FieldByName(key)
	if !ok {
		panic("exchange: list " + f.Name + " of " + s.name + " has no field that points back")
	}
	s.lists = append(s.lists, list{index: at, parent: parent.Index, rows: newShape(s.name+"."+pathName(f.Name), rows)})
}

// holds says what a field of a type holds.
func holds(t reflect.Type) Holds {
	switch t {
	case reflect.TypeFor[record.ID]():
		return HoldsRecord
	case reflect.TypeFor[record.Date]():
		return HoldsDay
	case reflect.TypeFor[record.Clock]():
		return HoldsClock
	case reflect.TypeFor[time.Time](), reflect.TypeFor[*time.Time]():
		return HoldsMoment
	case reflect.TypeFor[quantity.Unit]():
		return HoldsUnit
	case reflect.TypeFor[string]():
		return HoldsText
	}
	switch t.Kind() {
	case reflect.Bool:
		return HoldsYesNo
	case reflect.Int:
		return HoldsWhole
	case reflect.String:
		return HoldsChoice
	}
	panic("exchange: no column holds a " + t.String())
}

// pathName is a Go name as it stands in a path: "UsualMass" is "usualMass".
func pathName(name string) string {
	if name == "ID" {
		return "id"
	}
	runes := []rune(name)
	runes[0] = unicode.ToLower(runes[0])
	return string(runes)
}

// columns lists the columns.
func (s *shape) columns() []Column {
	all := make([]Column, len(s.fields))
	for i, f := range s.fields {
		all[i] = f.column
	}
	return all
}

// all lists the shape and those of its lists, each above its own lists.
func (s *shape) all() []*shape {
	list := []*shape{s}
	for _, l := range s.lists {
		list = append(list, l.rows.all()...)
	}
	return list
}

// shapes lists the shapes of the kinds of record, in the order of [Records].
func shapes() []*shape {
	var list []*shape
	of := reflect.TypeFor[Records]()
	for i := range of.NumField() {
		list = append(list, newShape(pathName(of.Field(i).Name), of.Field(i).Type.Elem()))
	}
	return list
}

package store

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"
	"time"

	"gorm.io/gorm/schema"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// shape is what reflection finds out about one record type, once: its fields
// with their paths and columns, and its lists of rows with their own shapes.
type shape struct {
	model  reflect.Type
	leaves []leaf
	lists  []list
	// ordered: the rows have a place in their list, kept in column "position".
	ordered bool
}

// leaf is one field a person fills in.
type leaf struct {
	path  string // "air.temperature"
	index []int
	// unit is the unit a number is kept in.
	unit quantity.Unit
	// columns are one, or for a number its value and its typed unit.
	columns []string
}

// list is a slice of rows inside a record.
type list struct {
	path  string // "bottles"
	index []int
	of    *shape
	// parent is the field of the rows that holds the id of the record, and its column.
	parent       []int
	parentColumn string
}

// newShapes makes the shape of every kind of record.
func newShapes() (map[record.Kind]*shape, error) {
	cache, shapes := &sync.Map{}, map[record.Kind]*shape{}
	for kind, model := range map[record.Kind]any{
		record.KindPractice: record.Practice{}, record.KindAthlete: record.Athlete{}, record.KindGroup: record.Group{},
		record.KindTest: record.Test{}, record.KindPlan: record.Plan{}, record.KindTrip: record.Trip{},
		record.KindProduct: record.Product{}, record.KindSession: record.GroupSession{},
	} {
		sh, err := newShape(reflect.TypeOf(model), cache)
		if err != nil {
			return nil, err
		}
		shapes[kind] = sh
	}
	return shapes, nil
}

// newShape reads a record type with GORM's eyes for the columns and our own
// for the paths.
func newShape(model reflect.Type, cache *sync.Map) (*shape, error) {
	parsed, err := schema.Parse(reflect.New(model).Interface(), cache, schema.NamingStrategy{})
	if err != nil {
		return nil, fmt.Errorf("read the shape of %s: %w", model, err)
	}
	columns := map[string]string{}
	for _, f := range parsed.Fields {
		columns[strings.Join(f.BindNames, ".")] = f.DBName
	}
	sh := &shape{model: model}
	sh.addLeaves(model, columns, place{})
	sh.ordered = slices.ContainsFunc(sh.leaves, func(l leaf) bool { return l.columns[0] == "position" && l.path == "order" })
	for i := range model.NumField() {
		f := model.Field(i)
		if f.Type.Kind() != reflect.Slice {
			continue
		}
		of, err := newShape(f.Type.Elem(), cache)
		if err != nil {
			return nil, err
		}
		relation := parsed.Relationships.Relations[f.Name]
		if relation == nil || len(relation.References) != 1 {
			return nil, fmt.Errorf("read the shape of %s: list %s has no parent field", model, f.Name)
		}
		key := relation.References[0].ForeignKey
		sh.lists = append(sh.lists, list{path: record.PathName(f.Name), index: f.Index, of: of,
			parent: key.StructField.Index, parentColumn: key.DBName})
	}
	return sh, nil
}

// place is where in a record the walk stands.
type place struct {
	path  []string
	names []string
	index []int
}

// in returns the place of a field inside this one.
func (p place) in(f reflect.StructField) place {
	return place{
		path:  append(slices.Clone(p.path), record.PathName(f.Name)),
		names: append(slices.Clone(p.names), f.Name),
		index: append(slices.Clone(p.index), f.Index...),
	}
}

// addLeaves adds the fields of a struct and of the structs in it; Meta is the
// store's own business.
func (sh *shape) addLeaves(t reflect.Type, columns map[string]string, at place) {
	for i := range t.NumField() {
		f := t.Field(i)
		here := at.in(f)
		name := strings.Join(here.names, ".")
		switch {
		case f.Type == reflect.TypeFor[record.Meta](), f.Type.Kind() == reflect.Slice, f.Tag.Get("gorm") == "-":
		case f.Type == reflect.TypeFor[record.Number]():
			sh.leaves = append(sh.leaves, leaf{path: strings.Join(here.path, "."), index: here.index,
				unit: quantity.Unit(f.Tag.Get("unit")), columns: []string{columns[name+".Value"], columns[name+".Unit"]}})
		case f.Type.Kind() == reflect.Struct && f.Type != reflect.TypeFor[time.Time]():
			sh.addLeaves(f.Type, columns, here)
		default:
			sh.leaves = append(sh.leaves, leaf{path: strings.Join(here.path, "."), index: here.index, columns: []string{columns[name]}})
		}
	}
}

// Fields lists the paths of all fields of a kind as they stand in
// [record.Change] and [record.RawText], with "*" in the place of a row's id:
// "usualMass", "bottles.*.refills.*.added". Every path of the history is one
// of these, a row ("bottles.*") or the record itself ("").
func Fields(kind record.Kind) ([]string, error) {
	shapes, err := newShapes()
	if err != nil {
		return nil, err
	}
	sh, ok := shapes[kind]
	if !ok {
		return nil, &Error{Code: CodeInvalid, Doing: "list fields", Ref: record.Ref{Kind: kind}}
	}
	return sh.fields(""), nil
}

// fields lists the paths below a prefix.
func (sh *shape) fields(prefix string) []string {
	var all []string
	for _, l := range sh.leaves {
		all = append(all, prefix+l.path)
	}
	for _, l := range sh.lists {
		all = append(all, l.of.fields(prefix+l.path+".*.")...)
	}
	return all
}

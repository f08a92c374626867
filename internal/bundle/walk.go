package bundle

import (
	"reflect"
	"strconv"
	"strings"
	"time"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// list is a list of rows within a record.
type list struct {
	// path is the list's name, "bottles".
	path string
	rows reflect.Value
	// parent is the field of a row that holds the id of what it is in.
	parent []int
}

// metaOf is the Meta of a row.
func metaOf(v reflect.Value) *record.Meta {
	return v.FieldByName("Meta").Addr().Interface().(*record.Meta)
}

// eachLeaf hands over every field a person fills in of a row, with its path below a
// prefix; what is a practice's own (the import it came with, whether a plan's test was
// corrected) is not among them.
func eachLeaf(v reflect.Value, prefix string, do func(path string, leaf reflect.Value, f reflect.StructField)) {
	t := v.Type()
	for i := range t.NumField() {
		f := t.Field(i)
		path := prefix + record.PathName(f.Name)
		switch {
		case f.Type == reflect.TypeFor[record.Meta](), f.Type.Kind() == reflect.Slice, f.Tag.Get("gorm") == "-":
		case f.Name == "ImportID", f.Type == reflect.TypeFor[record.TestCorrected]():
		case f.Type == reflect.TypeFor[record.Number](), f.Type.Kind() != reflect.Struct, f.Type == reflect.TypeFor[time.Time]():
			do(path, v.Field(i), f)
		default:
			eachLeaf(v.Field(i), path+".", do)
		}
	}
}

// eachList hands over every list of rows of a row, but for the groups an athlete is
// in, which are the practice's own.
func eachList(v reflect.Value, do func(list)) {
	t := v.Type()
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Type.Kind() != reflect.Slice || f.Type == reflect.TypeFor[[]record.Membership]() {
			continue
		}
		_, key, _ := strings.Cut(f.Tag.Get("gorm"), "foreignKey:")
		parent, _ := f.Type.Elem().FieldByName(key)
		do(list{path: record.PathName(f.Name), rows: v.Field(i), parent: parent.Index})
	}
}

// rowsByID finds the rows of a list.
func rowsByID(rows reflect.Value) map[record.ID]reflect.Value {
	all := map[record.ID]reflect.Value{}
	for i := range rows.Len() {
		all[metaOf(rows.Index(i)).ID] = rows.Index(i)
	}
	return all
}

// Value is a field as a person is shown it.
type Value struct {
	// Text is a text, a day, a word of the program or empty.
	Text string
	// Number is set for a number, in Unit.
	Number *float64
	Unit   quantity.Unit
}

// valueOf is a field as a person is shown it.
func valueOf(leaf reflect.Value, f reflect.StructField) Value {
	switch x := leaf.Interface().(type) {
	case record.Number:
		return Value{Number: x.Value, Unit: quantity.Unit(f.Tag.Get("unit"))}
	case *time.Time:
		if x == nil {
			return Value{}
		}
		return Value{Text: x.UTC().Format(time.RFC3339Nano)}
	case bool:
		return Value{Text: strconv.FormatBool(x)}
	case int:
		return Value{Text: strconv.Itoa(x)}
	}
	return Value{Text: leaf.String()}
}

// key is a text by which two values are put in an order, so that equal times decide
// the same from both sides.
func (v Value) key() string {
	if v.Number != nil {
		return strconv.FormatFloat(*v.Number, 'e', -1, 64)
	}
	return v.Text
}

// sameLeaf reports whether two fields hold the same.
func sameLeaf(a, b reflect.Value) bool {
	switch x := a.Interface().(type) {
	case record.Number:
		return x.Same(b.Interface().(record.Number))
	case *time.Time:
		y := b.Interface().(*time.Time)
		return x == y || x != nil && y != nil && x.Equal(*y)
	default:
		return x == b.Interface()
	}
}

// sameContent reports whether two rows, with those in them, hold the same.
func sameContent(a, b reflect.Value) bool {
	same := true
	eachLeaf(a, "", func(path string, leaf reflect.Value, _ reflect.StructField) {
		same = same && sameLeaf(leaf, fieldAt(b, path))
	})
	others := map[string]reflect.Value{}
	eachList(b, func(l list) { others[l.path] = l.rows })
	eachList(a, func(l list) {
		theirs := rowsByID(others[l.path])
		same = same && l.rows.Len() == len(theirs)
		for i := range l.rows.Len() {
			row := l.rows.Index(i)
			other, ok := theirs[metaOf(row).ID]
			same = same && ok && sameContent(row, other)
		}
	})
	return same
}

// fieldAt finds a field of a row by its path.
func fieldAt(v reflect.Value, path string) reflect.Value {
	for _, name := range strings.Split(path, ".") {
		v = v.FieldByNameFunc(func(n string) bool { return record.PathName(n) == name })
	}
	return v
}

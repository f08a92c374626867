package store

import (
	"errors"
	"fmt"
	"reflect"
	"time"

	"ebbwell/internal/record"
)

// row is one row of a record: the record itself, or a row of a list in it.
type row struct {
	shape *shape
	value reflect.Value // addressable struct
	path  string        // "" for the record, "bottles.<id>"
	// parentColumn and parent link a row of a list to what it is in.
	parentColumn string
	parent       record.ID
}

// meta is the row's own Meta, to be read and written.
func (r row) meta() *record.Meta {
	return r.value.FieldByName("Meta").Addr().Interface().(*record.Meta)
}

// rootMeta is the Meta of the record that root points at.
func rootMeta(root any) *record.Meta {
	return row{value: reflect.ValueOf(root).Elem()}.meta()
}

// columns are the values to write.
func (r row) columns() map[string]any {
	into := map[string]any{}
	for _, l := range r.shape.leaves {
		l.put(into, r.value)
	}
	return into
}

// rowsOf lists the rows of a record, each before those inside it.
func rowsOf(sh *shape, value reflect.Value) []row {
	return appendRows(nil, row{shape: sh, value: value}, "")
}

// appendRows adds a row and those inside it; prefix is its path with a dot.
func appendRows(all []row, r row, prefix string) []row {
	all = append(all, r)
	for _, l := range r.shape.lists {
		items := r.value.FieldByIndex(l.index)
		for i := range items.Len() {
			item := row{shape: l.of, value: items.Index(i), parentColumn: l.parentColumn, parent: r.meta().ID}
			item.path = prefix + l.path + "." + string(item.meta().ID)
			all = appendRows(all, item, item.path+".")
		}
	}
	return all
}

// copyOf copies a record with its lists, so that stamping it cannot be seen by
// whoever holds the original. Numbers are never changed in place and stay shared.
func copyOf[T any](in T) T {
	out := in
	copyLists(reflect.ValueOf(&out).Elem())
	return out
}

// copyLists gives a struct slices of its own; an empty list becomes nil.
func copyLists(value reflect.Value) {
	for i := range value.NumField() {
		f := value.Field(i)
		if f.Kind() != reflect.Slice {
			continue
		}
		if f.Len() == 0 {
			f.SetZero()
			continue
		}
		fresh := reflect.MakeSlice(f.Type(), f.Len(), f.Len())
		reflect.Copy(fresh, f)
		f.Set(fresh)
		for j := range f.Len() {
			copyLists(f.Index(j))
		}
	}
}

// link gives every row an id and the id of what it is in, and brings times to
// the form they are kept in.
func (sh *shape) link(value reflect.Value) {
	meta := row{shape: sh, value: value}.meta()
	if meta.ID == "" {
		meta.ID = record.NewID()
	}
	for _, l := range sh.leaves {
		if t, ok := value.FieldByIndex(l.index).Interface().(*time.Time); ok && t != nil {
			at := kept(*t)
			value.FieldByIndex(l.index).Set(reflect.ValueOf(&at))
		}
	}
	for _, l := range sh.lists {
		items := value.FieldByIndex(l.index)
		for i := range items.Len() {
			items.Index(i).FieldByIndex(l.parent).SetString(string(meta.ID))
			l.of.link(items.Index(i))
		}
	}
}

// sound returns an error when rows cannot be kept: an id that comes twice or
// is too long, a number that is not finite.
func sound(rows []row) error {
	seen := make(map[record.ID]bool, len(rows))
	for _, r := range rows {
		id := r.meta().ID
		if seen[id] {
			return &Error{Code: CodeInvalid, Doing: "read rows", Field: r.path, Err: errors.New("the id comes twice")}
		}
		if seen[id] = true; len(id) > 36 {
			return &Error{Code: CodeInvalid, Doing: "read rows", Field: r.path, Err: fmt.Errorf("the id has %d characters", len(id))}
		}
		for _, l := range r.shape.leaves {
			if !l.finite(r.value) {
				return &Error{Code: CodeInvalid, Doing: "read rows", Field: join(r.path, l.path), Err: errors.New("the number is not finite")}
			}
		}
	}
	return nil
}

// join puts the path of a field behind that of its row.
func join(row, field string) string {
	if row == "" {
		return field
	}
	return row + "." + field
}

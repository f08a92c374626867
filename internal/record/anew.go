package record

import "reflect"

// Anew returns a copy without ids, its rows' neither: the store gives it its own.
func (t Test) Anew() Test {
	t = t.Clone()
	withoutIDs(reflect.ValueOf(&t).Elem())
	return t
}

// Anew returns a copy without ids, its rows' neither: the store gives it its own.
func (a Athlete) Anew() Athlete {
	a = a.Clone()
	withoutIDs(reflect.ValueOf(&a).Elem())
	return a
}

// withoutIDs empties the id of a record and of the rows in it.
func withoutIDs(v reflect.Value) {
	v.FieldByName("Meta").Addr().Interface().(*Meta).ID = "" //nolint:forcetypeassert // every record and row has one
	for i := range v.NumField() {
		if f := v.Field(i); f.Kind() == reflect.Slice && f.Type().Elem().Kind() == reflect.Struct {
			for j := range f.Len() {
				withoutIDs(f.Index(j))
			}
		}
	}
}

package record

import (
	"reflect"
	"strings"
	"testing"

	"ebbwell/internal/quantity"
)

// filled is an air that has something in every field, set by reflection.
func filled(t *testing.T) Air {
	t.Helper()
	var a Air
	v := reflect.ValueOf(&a).Elem()
	for i := range v.NumField() {
		switch f := v.Field(i); f.Interface().(type) {
		case Number:
			f.Set(reflect.ValueOf(Num(float64(i+1), quantity.None)))
		default:
			if f.Kind() != reflect.String {
				t.Fatalf("%s is of a kind that AirFields cannot compare", v.Type().Field(i).Name)
			}
			f.SetString("something")
		}
	}
	return a
}

// Every field of the record is described once, under its own name, and in the
// order of the record.
func TestAirFieldsAreAllThere(t *testing.T) {
	var a Air
	v := reflect.ValueOf(&a).Elem()
	list := AirFields()
	if len(list) != v.NumField() {
		t.Fatalf("%d of %d fields are described", len(list), v.NumField())
	}
	for i, f := range list {
		name := v.Type().Field(i).Name
		if want := strings.ToLower(name[:1]) + name[1:]; f.Path != want || f.at(&a) != v.Field(i).Addr().Interface() {
			t.Errorf("%q stands for %s", f.Path, name)
		}
	}
}

// A difference in any one field is seen.
func TestAirSame(t *testing.T) {
	whole := filled(t)
	if !whole.Same(filled(t)) || !(Air{}).Same(Air{}) {
		t.Error("the same air is another")
	}
	for i := range reflect.TypeOf(whole).NumField() {
		other := filled(t)
		reflect.ValueOf(&other).Elem().Field(i).SetZero()
		if whole.Same(other) || other.Same(whole) {
			t.Errorf("airs that differ in %s say the same", reflect.TypeOf(whole).Field(i).Name)
		}
	}
}

// What goes with a session is kept elsewhere, what is of the place is not, and a
// reading neither.
func TestAirWithout(t *testing.T) {
	got, whole := filled(t).Without(AirOfPlace, AirRead), filled(t)
	if want := (Air{Wind: whole.Wind, Sun: whole.Sun, Clothing: whole.Clothing}); !got.Same(want) {
		t.Errorf("elsewhere the air is %+v", got)
	}
	got = whole.Without(AirRead)
	if want := whole; got.Wbgt.Known() || got.Temperature != want.Temperature || got.Altitude != want.Altitude {
		t.Errorf("without readings the air is %+v", got)
	}
}

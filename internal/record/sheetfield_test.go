package record

import (
	"reflect"
	"strings"
	"testing"
	"time"
)

// described collects every field of a record by reflection: its path with "*" for
// rows, and where it is. Meta, links between rows and their order are the store's.
func described(v reflect.Value, path string, into map[string]reflect.Value) {
	for i := range v.NumField() {
		f, name := v.Field(i), v.Type().Field(i).Name
		at := strings.ToLower(name[:1]) + name[1:]
		if path != "" {
			at = path + "." + at
		}
		switch x := f.Addr().Interface().(type) {
		case *Number, **time.Time:
			into[at] = f.Addr()
			continue
		case *Meta:
			continue
		case *ID:
			if name != "ProductID" {
				continue // a link
			}
			into[at] = f.Addr()
			continue
		default:
			_ = x
		}
		switch {
		case name == "Order":
		case f.Kind() == reflect.Struct:
			described(f, at, into)
		case f.Kind() == reflect.Slice:
			row := reflect.MakeSlice(f.Type(), 1, 1)
			f.Set(row)
			described(f.Index(0), at+".*", into)
		default:
			into[at] = f.Addr()
		}
	}
}

// Every field of a test sheet is described once, stands for the field of its path,
// and is either entered by a control with words, or says why not.
func TestEveryFieldOfTheSheetIsDescribed(t *testing.T) {
	var sheet Test
	all := map[string]reflect.Value{}
	described(reflect.ValueOf(&sheet).Elem(), "", all)
	for _, own := range []string{"state", "closedAt", "closedBy"} { // set by closing it
		if _, there := all[own]; !there {
			t.Errorf("%s is no field any more", own)
		}
		delete(all, own)
	}
	rows := map[string]any{
		"": &sheet, "weighings": &sheet.Weighings[0], "bottles": &sheet.Bottles[0], "bottles.*.refills": &sheet.Bottles[0].Refills[0],
		"foods": &sheet.Foods[0], "patches": &sheet.Patches[0], "partway": &sheet.Partway[0], "safety": &sheet.Safety[0],
	}
	seen := map[string]bool{}
	for _, f := range SheetFields() {
		if seen[f.Path] {
			t.Errorf("%s is described twice", f.Path)
		}
		seen[f.Path] = true
		field, there := all[f.Path]
		switch got := f.of(rows[f.List()]); {
		case !there:
			t.Errorf("%s is no field of a sheet", f.Path)
		case got != field.Interface():
			t.Errorf("%s stands for another field", f.Path)
		}
		if _, number := field.Interface().(*Number); number != (f.NumberIn(rows[f.List()]) != nil) {
			t.Errorf("%s is a number, or not", f.Path)
		}
		if entered := f.Control != ""; entered == (f.Elsewhere != "") || entered != (f.Paper != "") {
			t.Errorf("%s: control %q, on paper %q, elsewhere %q", f.Path, f.Control, f.Paper, f.Elsewhere)
		}
		if found, ok := SheetFieldOf(strings.ReplaceAll(f.Path, "*", "0000-id")); !ok || found.Path != f.Path {
			t.Errorf("%s is not found by a path with ids", f.Path)
		}
	}
	for path := range all {
		if !seen[path] {
			t.Errorf("%s is not described: add it to SheetFields", path)
		}
	}
}

// Numbers come with the path and the row they stand in.
func TestSheetNumbers(t *testing.T) {
	sheet := Test{
		Bottles: []Bottle{{Meta: Meta{ID: "b1"}}, {Meta: Meta{ID: "b2"}, Refills: []Refill{{Meta: Meta{ID: "r1"}, Added: Num(250, "g")}}}},
	}
	got := map[string]int{}
	for _, n := range SheetNumbers(&sheet) {
		got[n.Path] = n.Row
	}
	for path, row := range map[string]int{"session.met": 0, "bottles.b1.before": 1, "bottles.b2.after": 2, "bottles.b2.refills.r1.added": 2} {
		if at, there := got[path]; !there || at != row {
			t.Errorf("%s stands in row %d (%v), want %d", path, at, there, row)
		}
	}
	if _, there := got["foods.*.mass"]; there {
		t.Error("a list without rows has a number")
	}
}

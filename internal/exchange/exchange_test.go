package exchange

import (
	"bytes"
	"reflect"
	"slices"
	"strconv"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// drawn makes records of every kind with random values in every field.
func drawn(t *rapid.T) Records {
	var r Records
	whole := reflect.ValueOf(&r).Elem()
	for i, s := range shapes() {
		whole.Field(i).Set(drawRows(t, s, nil, ""))
	}
	return r
}

// drawRows draws rows of a shape with their lists; parent is where the id of
// what they are in stands.
func drawRows(t *rapid.T, s *shape, parent []int, of string) reflect.Value {
	rows := reflect.Zero(reflect.SliceOf(s.of))
	most := 2
	if parent != nil {
		most = 1
	}
	for range rapid.IntRange(0, most).Draw(t, s.name) {
		row := reflect.New(s.of).Elem()
		for _, f := range s.fields {
			drawField(t, f, row.FieldByIndex(f.index))
		}
		id := string(record.NewID())
		row.FieldByName("ID").SetString(id)
		if parent != nil {
			row.FieldByIndex(parent).SetString(of)
		}
		for _, l := range s.lists {
			row.FieldByIndex(l.index).Set(drawRows(t, l.rows, l.parent, id))
		}
		rows = reflect.Append(rows, row)
	}
	return rows
}

// texts draws what a person may type: any script, quotes, lines, what a
// spreadsheet would take for a formula. A table keeps a line's end as one sign.
func texts() *rapid.Generator[string] {
	letters := rapid.StringOfN(rapid.RuneFrom([]rune("aZ0 ,;\"'=+-@＝＠\t\nßжλ漢🙂|\\/<>&%")), 0, 12, -1)
	return rapid.OneOf(letters, rapid.SampledFrom([]string{"=1+1", "'=1", "''", "@SUM(A1)", "-", "a;=1", "a;'=1", "a\t''=1", "＝1", "a\n－1", "1.50", "yes", "  two  ", "2026-05-14"}))
}

// drawField draws a value for one field.
func drawField(t *rapid.T, f field, v reflect.Value) {
	if rapid.IntRange(0, 3).Draw(t, "empty") == 0 {
		return
	}
	at := time.Unix(rapid.Int64Range(0, 4e9).Draw(t, "seconds"), rapid.Int64Range(0, 999999).Draw(t, "micro")*1000).UTC()
	switch f.column.Holds {
	case HoldsNumber:
		x := rapid.Float64Range(-1e300, 1e300).Draw(t, "number")
		v.Set(reflect.ValueOf(&x))
	case HoldsWhole:
		v.SetInt(int64(rapid.IntRange(-1000, 1e6).Draw(t, "whole")))
	case HoldsYesNo:
		v.SetBool(true)
	case HoldsDay:
		v.SetString(string(record.DateOf(at)))
	case HoldsClock:
		v.SetString(string(record.ClockAt(float64(at.Unix() % 1440))))
	case HoldsMoment:
		if v.Kind() == reflect.Pointer {
			v.Set(reflect.ValueOf(&at))
		} else {
			v.Set(reflect.ValueOf(at))
		}
	case HoldsUnit:
		v.SetString(string(f.measures))
	default:
		v.SetString(texts().Draw(t, "text"))
	}
}

// same fails unless two sets of records are the same, empty lists like none.
func same(t *rapid.T, way string, want, got Records, faults []Fault, err error) {
	if err != nil || len(faults) > 0 {
		t.Fatalf("%s: %v, %+v", way, err, faults)
	}
	now := Tables(got)
	for i, table := range Tables(want) {
		if len(table.Rows) != len(now[i].Rows) {
			t.Fatalf("%s: %s: %d rows, want %d", way, table.Name, len(now[i].Rows), len(table.Rows))
		}
		for j, row := range table.Rows {
			for k, cell := range row {
				if now[i].Rows[j][k] != cell {
					t.Fatalf("%s: %s, row %d, %s: %q, want %q", way, table.Name, j+1, table.Columns[k].Heading(), now[i].Rows[j][k], cell)
				}
			}
		}
	}
	if !reflect.DeepEqual(tidied(want), tidied(got)) {
		t.Fatalf("%s: the records differ though their tables do not", way)
	}
}

// digits15 is the records with every number rounded as a workbook keeps it, to
// 15 significant digits (Excel specifications and limits).
func digits15(r Records) Records {
	tables := Tables(r)
	for _, t := range tables {
		for j, c := range t.Columns {
			if c.Holds != HoldsNumber {
				continue
			}
			for _, row := range t.Rows {
				if x, err := strconv.ParseFloat(row[j], 64); err == nil {
					row[j] = strconv.FormatFloat(x, 'g', 15, 64)
				}
			}
		}
	}
	rounded, _ := Read(tables)
	return rounded
}

// tidied is the records with every empty list nil.
func tidied(r Records) Records {
	tidy(reflect.ValueOf(&r).Elem())
	return r
}

func tidy(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[time.Time]() {
			return
		}
		for i := range v.NumField() {
			tidy(v.Field(i))
		}
	case reflect.Slice:
		if v.Len() == 0 {
			v.Set(reflect.Zero(v.Type()))
		}
		for i := range v.Len() {
			tidy(v.Index(i))
		}
	}
}

// TestNothingIsLost: what goes out in any form comes back the same.
func TestNothingIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := drawn(t)
		got, faults := Read(Tables(want))
		same(t, "tables", want, got, faults, nil)

		var out bytes.Buffer
		if err := WriteCSV(&out, want, nil, nil); err != nil {
			t.Fatal(err)
		}
		got, faults, err := ReadCSV(bytes.NewReader(out.Bytes()), int64(out.Len()))
		same(t, "CSV", want, got, faults, err)

		out.Reset()
		if err := WriteJSON(&out, want); err != nil {
			t.Fatal(err)
		}
		got, err = ReadJSON(&out)
		same(t, "JSON", want, got, nil, err)

		if rapid.IntRange(0, 4).Draw(t, "workbook") > 0 {
			return // a workbook takes ten times as long as the others together
		}
		out.Reset()
		if err := WriteXLSX(&out, want, nil, nil); err != nil {
			t.Fatal(err)
		}
		got, faults, err = ReadXLSX(bytes.NewReader(out.Bytes()))
		same(t, "XLSX", digits15(want), got, faults, err)
	})
}

// TestEveryFieldHasAColumn counts fields and columns apart: a field of a new
// sort stops the program's tests, not its user.
func TestEveryFieldHasAColumn(t *testing.T) {
	for _, top := range shapes() {
		for _, s := range top.all() {
			if want := leaves(s.of); want != len(s.fields) {
				t.Errorf("%s: %d fields, %d columns", s.name, want, len(s.fields))
			}
		}
	}
}

// leaves counts the plain fields of a struct and of those in it.
func leaves(t reflect.Type) int {
	n := 0
	for i := range t.NumField() {
		f := t.Field(i)
		switch {
		case f.Tag.Get("gorm") == "-", f.Type.Kind() == reflect.Slice:
		case f.Type.Kind() == reflect.Struct && f.Type != reflect.TypeFor[time.Time]():
			n += leaves(f.Type)
		default:
			n++
		}
	}
	return n
}

// one is a small set of records with a sheet of one bottle.
func one() Records {
	a := record.Athlete{Meta: record.Meta{ID: "a1"}, Name: "=Cora Lindqvale"}
	b := record.Bottle{Meta: record.Meta{ID: "b1"}, TestID: "t1", Before: record.Num(650.5, quantity.Gram)}
	s := record.Test{Meta: record.Meta{ID: "t1"}, AthleteID: "a1", Bottles: []record.Bottle{b}}
	s.Session.Date = "2026-05-14"
	return Records{Athletes: []record.Athlete{a}, Tests: []record.Test{s}}
}

// change makes records of one as tables, lets a test change them, and reads them.
func change(f func(map[string]*Table)) (Records, []Fault) {
	tables := Tables(one())
	at := map[string]*Table{}
	for i := range tables {
		at[tables[i].Name] = &tables[i]
	}
	f(at)
	return Read(tables)
}

// put writes a cell of the first row, by the column's name.
func put(t *Table, column, text string) {
	i := slices.IndexFunc(t.Columns, func(c Column) bool { return c.Name == column })
	t.Rows[0][i] = text
}

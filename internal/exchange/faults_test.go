package exchange

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"
)

func TestFaultsAreNamedByPlace(t *testing.T) {
	for _, c := range []struct {
		name string
		do   func(map[string]*Table)
		want Fault
	}{
		{"a word for a number", func(m map[string]*Table) { put(m["tests.bottles"], "before", "much") },
			Fault{"tests.bottles", 1, "before [g]", "much", FaultNumber}},
		{"no number", func(m map[string]*Table) { put(m["tests.bottles"], "before", "NaN") },
			Fault{"tests.bottles", 1, "before [g]", "NaN", FaultNumber}},
		{"endless", func(m map[string]*Table) { put(m["tests.bottles"], "before", "1e999") },
			Fault{"tests.bottles", 1, "before [g]", "1e999", FaultNumber}},
		{"a decimal comma", func(m map[string]*Table) { put(m["tests.bottles"], "before", "650,5") },
			Fault{"tests.bottles", 1, "before [g]", "650,5", FaultNumber}},
		{"no day", func(m map[string]*Table) { put(m["tests"], "session.date", "14.5.2026") },
			Fault{"tests", 1, "session.date", "14.5.2026", FaultDay}},
		{"no such day", func(m map[string]*Table) { put(m["tests"], "session.date", "2026-02-30") },
			Fault{"tests", 1, "session.date", "2026-02-30", FaultDay}},
		{"no time of day", func(m map[string]*Table) { put(m["tests"], "session.start", "25:00") },
			Fault{"tests", 1, "session.start", "25:00", FaultClock}},
		{"no moment", func(m map[string]*Table) { put(m["tests"], "closedAt", "yesterday") },
			Fault{"tests", 1, "closedAt", "yesterday", FaultMoment}},
		{"a unit of another thing", func(m map[string]*Table) { put(m["tests.bottles"], "before.typed", "°C") },
			Fault{"tests.bottles", 1, "before.typed", "°C", FaultUnit}},
		{"perhaps", func(m map[string]*Table) { put(m["tests"], "loss.noUrine", "perhaps") },
			Fault{"tests", 1, "loss.noUrine", "perhaps", FaultYesNo}},
		{"no id", func(m map[string]*Table) { put(m["athletes"], "id", "") },
			Fault{Table: "athletes", Row: 1, Kind: FaultNoID}},
		{"an id twice", func(m map[string]*Table) { m["athletes"].Rows = append(m["athletes"].Rows, m["athletes"].Rows[0]) },
			Fault{"athletes", 2, "id", "a1", FaultTwice}},
		{"a bottle of no test", func(m map[string]*Table) { put(m["tests.bottles"], "testID", "t9") },
			Fault{Table: "tests.bottles", Cell: "t9", Kind: FaultNoParent}},
		{"a heading twice", func(m map[string]*Table) { m["groups"].Columns = append(m["groups"].Columns, Column{Name: "name"}) },
			Fault{Table: "groups", Column: "name", Kind: FaultTwice}},
		{"a strange table", func(m map[string]*Table) { m["groups"].Name = "invoices" }, Fault{Table: "invoices", Kind: FaultTable}},
		{"a row too long", func(m map[string]*Table) { m["athletes"].Rows[0] = append(m["athletes"].Rows[0], "more") },
			Fault{Table: "athletes", Row: 1, Kind: FaultShort}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, faults := change(c.do)
			if !slices.Contains(faults, c.want) {
				t.Errorf("the faults are %+v", faults)
			}
			if !reflect.DeepEqual(r, Records{}) {
				t.Error("there are records in spite of a fault")
			}
		})
	}
}

func TestColumnsOfOnesOwnAreLeftAlone(t *testing.T) {
	r, faults := change(func(m map[string]*Table) {
		b := m["tests.bottles"]
		b.Columns = append([]Column{{Name: "my remark"}}, b.Columns...)
		b.Rows[0] = append([]string{"sticky cap"}, b.Rows[0]...)
		g := m["groups"]
		g.Columns = nil
	})
	if len(faults) > 0 || r.Tests[0].Bottles[0].Before.Or(0) != 650.5 {
		t.Errorf("%+v, %+v", r, faults)
	}
}

// TestNoCellIsAFormula: no text that goes out begins as a formula does.
func TestNoCellIsAFormula(t *testing.T) {
	var out bytes.Buffer
	if err := WriteCSV(&out, one(), nil, nil); err != nil {
		t.Fatal(err)
	}
	archive, err := zip.NewReader(bytes.NewReader(out.Bytes()), int64(out.Len()))
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for _, f := range archive.File {
		in, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(in).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range rows[1:] {
			for _, cell := range row {
				found = found || cell == "'=Cora Lindqvale"
				if cell != "" && strings.ContainsRune("=@\t\r", rune(cell[0])) {
					t.Errorf("%s: the cell %q begins as a formula", f.Name, cell)
				}
			}
		}
	}
	if !found {
		t.Error("the name that looks like a formula is nowhere")
	}
}

func TestFilesThatAreRefused(t *testing.T) {
	bomb := zipOf(t, "athletes.csv", strings.Repeat("a,", 1<<20))
	if _, _, err := ReadCSV(bytes.NewReader(bomb), int64(len(bomb))); !errors.Is(err, ErrTooLarge) {
		t.Errorf("a million columns: %v", err)
	}
	wrong := zipOf(t, "athletes.csv", "id,name\na1,M\xfcller\n")
	if _, _, err := ReadCSV(bytes.NewReader(wrong), int64(len(wrong))); !errors.Is(err, ErrNotText) {
		t.Errorf("another encoding: %v", err)
	}
	empty := zipOf(t, "readme.txt", "hello")
	if _, _, err := ReadCSV(bytes.NewReader(empty), int64(len(empty))); !errors.Is(err, ErrNoTables) {
		t.Errorf("no tables: %v", err)
	}
	if _, err := ReadJSON(strings.NewReader(`{"Format":"something else"}`)); !errors.Is(err, ErrNoTables) {
		t.Errorf("another JSON: %v", err)
	}
	if _, _, err := ReadXLSX(strings.NewReader("PK\x03\x04 but no workbook")); err == nil {
		t.Error("a broken workbook is read")
	}
}

// zipOf is a zip with one file.
func zipOf(t *testing.T, name, text string) []byte {
	t.Helper()
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	f, err := w.Create(name)
	if err == nil {
		_, err = f.Write([]byte(text))
	}
	if err = errors.Join(err, w.Close()); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// TestNoColumnLacksAMeaning asks every field of every record, by reflection, what it
// means: name, meaning, unit, range and source, in the table that is written.
func TestNoColumnLacksAMeaning(t *testing.T) {
	d := NewDictionary(func(table string, c Column) string { return table + "/" + c.Name })
	n := 0
	for _, t := range written(Records{}, nil, nil)[:len(Tables(Records{}))+1] {
		n += len(t.Columns)
	}
	if len(d) != n || d[0].OnScreen != "athletes/id" {
		t.Errorf("%d columns explained of %d, the first as %q", len(d), n, d[0].OnScreen)
	}
	table := d.table()
	if len(table.Rows) != n+1 {
		t.Errorf("the table has %d rows for %d columns and its head", len(table.Rows), n)
	}
	for i, row := range table.Rows[1:] {
		for j, cell := range row {
			if cell == "" {
				t.Errorf("%s.%s has no %s", d[i].Table, d[i].Column.Name, table.Columns[j].Name)
			}
		}
	}
}

// TestEveryMeaningIsUsed: no line of the file is of a column that is not there, and
// no column of its own name is explained by another line than its own.
func TestEveryMeaningIsUsed(t *testing.T) {
	used := map[string]bool{}
	for _, m := range NewDictionary(nil) {
		used[m.Table+"/"+m.Column.Name], used["*/"+m.Column.Name] = true, true
	}
	for key := range meanings() {
		if !used[key] {
			t.Errorf("%s is explained and is no column", key)
		}
	}
	for _, c := range []struct{ table, column, limits string }{
		{"tests", "air.temperature", "0 to 42 °C without asking; -20 to 55 °C at all, unless a reason is given"},
		{"athletes", "sex", "female | male"},
		{"tests.bottles", "name", "any text"},
	} {
		i := slices.IndexFunc(NewDictionary(nil), func(m Meaning) bool { return m.Table == c.table && m.Column.Name == c.column })
		if got := NewDictionary(nil)[i].Range; got != c.limits {
			t.Errorf("%s.%s may hold %q, want %q", c.table, c.column, got, c.limits)
		}
	}
}

func FuzzReadCSV(f *testing.F) {
	f.Add([]byte("id,name\na1,Cora\n"))
	f.Add([]byte("\ufeffid,before [g],testID\nb1,1e3,t1\n"))
	held := heldBy()
	f.Fuzz(func(t *testing.T, data []byte) {
		for _, name := range []string{"athletes", "tests", "tests.bottles"} {
			table, err := readCSV(data, name, held[name])
			if err != nil {
				continue
			}
			r, faults := Read([]Table{table})
			if len(faults) > 0 {
				continue
			}
			again, faults := Read(Tables(r))
			if len(faults) > 0 || !reflect.DeepEqual(tidied(again), tidied(r)) {
				t.Errorf("%q is read, and what was read is not: %+v", data, faults)
			}
		}
	})
}

func FuzzReadJSON(f *testing.F) {
	f.Add([]byte(`{"Format":"ebbwell records 1","Records":{"Athletes":[{"ID":"a"}]}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := ReadJSON(bytes.NewReader(data))
		if err != nil {
			return
		}
		var out bytes.Buffer
		if err := WriteJSON(&out, r); err != nil {
			t.Fatal(err)
		}
		again, err := ReadJSON(&out)
		if err != nil || !reflect.DeepEqual(tidied(again), tidied(r)) {
			t.Errorf("%q changes when it is written again, %v", data, err)
		}
	})
}

// TestNoPartOfACellIsAFormula: where a spreadsheet parts a text at another sign than
// the comma, no part begins as a formula does, and reading gives the text again.
func TestNoPartOfACellIsAFormula(t *testing.T) {
	for _, text := range []string{
		"a;=1+1", "=1;+2;-3;@4", "note\n=1", "note\r=1", "a\t=1", "a|=1", "＝1+1", "a;＋1", "－1", "＠x", "'=1", "a;'=1", "a;''＝1", "\t\t=1", ";=", "'", ";'", "plain; text", "",
	} {
		kept := disarm(text)
		parts := strings.FieldsFunc(kept, func(r rune) bool { return strings.ContainsRune(cellEnds, r) })
		for _, part := range append(parts, kept) {
			if strings.ContainsAny(firstOf(part), "=+-@＝＋－＠\t\r") {
				t.Errorf("%q is written as %q, of which %q begins as a formula does", text, kept, part)
			}
		}
		if again := rearm(kept); again != text {
			t.Errorf("%q is written as %q and read as %q", text, kept, again)
		}
	}
}

// firstOf is the first letter of a text.
func firstOf(text string) string {
	for _, r := range text {
		return string(r)
	}
	return ""
}

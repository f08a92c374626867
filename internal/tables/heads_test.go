package tables

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// merged is a workbook whose cells are merged as named.
func merged(t testing.TB, spans [][2]string, rows ...[]any) []byte {
	t.Helper()
	f := excelize.NewFile()
	for i, row := range rows {
		cell, err := excelize.CoordinatesToCellName(1, i+1)
		if err != nil {
			t.Fatal(err)
		}
		if err := f.SetSheetRow("Sheet1", cell, &row); err != nil {
			t.Fatal(err)
		}
	}
	for _, s := range spans {
		if err := f.MergeCell("Sheet1", s[0], s[1]); err != nil {
			t.Fatal(err)
		}
	}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// groupedFiles are files with two rows of headings, groups above and columns below, as practices
// keep them.
func groupedFiles(t testing.TB) map[string]struct {
	data []byte
	want want
} {
	t.Helper()
	return map[string]struct {
		data []byte
		want want
	}{
		"workbook, merged across and down": {merged(t, [][2]string{{"A1", "A2"}, {"B1", "B2"}, {"C1", "C2"}, {"D1", "E1"}, {"F1", "G1"}, {"H1", "I1"}, {"J1", "K1"}},
			[]any{"Athlete", "DOB", "Date", "Session", nil, "Body mass (kg)", nil, "Bottle (g)", nil, "Air", nil},
			[]any{nil, nil, nil, "Start", "End", "Pre", "Post", "Before", "After", "Temp (°C)", "RH (%)"},
			[]any{"Ada Fennwick", "1999-03-14", "2025-06-21", "09:30", "11:00", 61.4, 60.25, 812, 162, 24.5, 58}),
			want{"Ada Fennwick", "1999-03-14", "", "2025-06-21", "09:30", "11:00", 61.4, 60.25, 650, 0, 0, 24.5, 58, 0, 0, "", record.ImportTests, 1}},
		"text file, groups once, empty beside": {[]byte("Name,DOB,Date,Session,,Weight,,,Losses\n,,,start,finish,before (kg),after (kg),Comments,urine (mL)\n" +
			"Borin Haskel,1987-11-02,2025-06-22,10:00,12:00,78.2,76.9,windy,120\n"),
			want{"Borin Haskel", "1987-11-02", "", "2025-06-22", "10:00", "12:00", 78.2, 76.9, 0, 120, 0, 0, 0, 0, 0, "", record.ImportTests, 1}},
		"german, a title above, units below": {[]byte("Schweißtests 2025;;;;;;;\nName;Geburtsdatum;Datum;Zeit;;Körpermasse;;Trinken\n;;;Beginn;Ende;vorher;nachher;Trinkmenge\n;;;;;kg;kg;ml\n" +
			"Jörn Grünwaß;05.09.1995;03.05.2025;18:15;19:30;82,35;81,10;1250\n"),
			want{"Jörn Grünwaß", "1995-09-05", "", "2025-05-03", "18:15", "19:30", 82.35, 81.1, 1250, 0, 0, 0, 0, 0, 0, "", record.ImportTests, 1}},
	}
}

// TestTwoRowsOfHeadings reads groups of columns with nothing but what was guessed.
func TestTwoRowsOfHeadings(t *testing.T) {
	for name, c := range groupedFiles(t) {
		t.Run(name, func(t *testing.T) {
			m, d := read(t, c.data, nil, Options{})
			noFaults(t, m, d)
			if !m.Grouped || m.Kind != c.want.kind || len(d.Rows) != c.want.rows {
				t.Fatalf("%s with %d rows\n%+v", m.Kind, len(d.Rows), m)
			}
			wantRow(t, d.Rows[0], c.want)
			if t.Failed() {
				t.Logf("%+v", m.Columns)
			}
		})
	}
}

// TestOneRowStaysOne: a title, a line of words or a first row of data above or below does
// not become a group.
func TestOneRowStaysOne(t *testing.T) {
	for name, c := range spreadsheets(t) {
		m, _ := read(t, c.data, nil, Options{})
		if m.Grouped {
			t.Errorf("%s: read with groups: %+v", name, m.Columns)
		}
	}
}

// TestMergedNames: a name that is merged over the rows of several tests is that of each.
func TestMergedNames(t *testing.T) {
	data := merged(t, [][2]string{{"A2", "A4"}, {"B2", "B4"}},
		[]any{"Name", "DOB", "Date", "Start", "End", "Mass before (kg)", "Mass after (kg)"},
		[]any{"Ada Fennwick", "1999-03-14", "2025-06-21", "09:30", "11:00", 61.4, 60.25},
		[]any{nil, nil, "2025-07-21", "09:30", "11:00", 61.5, 60.35},
		[]any{nil, nil, "2025-08-21", "09:30", "11:00", 61.6, 60.45},
		[]any{"Borin Haskel", "1987-11-02", "2025-06-22", "10:00", "12:00", 78.2, 76.9})
	m, d := read(t, data, nil, Options{})
	noFaults(t, m, d)
	if len(d.Rows) != 4 {
		t.Fatalf("%d rows", len(d.Rows))
	}
	for i, r := range d.Rows {
		if want := map[bool]string{true: "Ada Fennwick", false: "Borin Haskel"}[i < 3]; r.Athlete.Name != want {
			t.Errorf("row %d is of %q", i+1, r.Athlete.Name)
		}
	}
}

// TestTemplateOfGroups: a template made of a file with groups fits the next one.
func TestTemplateOfGroups(t *testing.T) {
	for name, c := range groupedFiles(t) {
		m, _ := read(t, c.data, nil, Options{})
		data, err := m.Marshal()
		if err != nil {
			t.Fatal(err)
		}
		kept, err := ReadMapping(data)
		if err != nil {
			t.Fatal(err)
		}
		b, err := Open(c.data)
		if err != nil {
			t.Fatal(err)
		}
		fitted, ok := kept.Fit(b)
		if !ok || !fitted.Grouped || fitted.Heading != m.Heading || len(fitted.Columns) != len(m.Columns) {
			t.Errorf("%s: fits %v: %+v", name, ok, fitted)
		}
	}
}

// TestRatings: a rating from 0 to 10 goes onto the sheet; one from 6 to 20 stays as it was
// written, in the note, and is asked about; one beyond the scale is a fault.
func TestRatings(t *testing.T) {
	const head = "Name,DOB,Date,Start,End,Mass before (kg),Mass after (kg),"
	row := func(rating string) string { return "Ann,1999-01-01,2025-05-14,09:00,10:00,70,69," + rating + "\n" }
	twenty := func(rating string) string { return "Effort, 6–20 scale: " + rating }
	for name, c := range map[string]struct {
		file   string
		unit   quantity.Unit
		effort float64
		note   string
		asked  bool
		fault  bool
	}{
		"values above ten":       {head + "RPE\n" + row("13") + row("9"), ScaleOfTwenty, 0, "Effort, 6–20 scale: 13", true, false},
		"said by the heading":    {head + "Borg (6-20)\n" + row("8"), ScaleOfTwenty, 0, "Effort, 6–20 scale: 8", true, false},
		"said otherwise":         {head + "RPE 0-10\n" + row("7"), ScaleOfTen, 7, "", false, false},
		"values up to ten":       {head + "RPE\n" + row("7") + row("3"), ScaleOfTen, 7, "", false, false},
		"beyond the scale":       {head + "RPE (6-20)\n" + row("21"), ScaleOfTwenty, 0, "", false, true},
		"beyond the other scale": {head + "RPE (0-10)\n" + row("13"), ScaleOfTen, 0, "", false, true},
		"no rating":              {head + "RPE (6-20)\n" + row("-"), ScaleOfTwenty, 0, "", false, false},
	} {
		t.Run(name, func(t *testing.T) {
			m, d := read(t, []byte(c.file), nil, Options{Twenty: twenty})
			column := m.first(Effort)
			if column < 0 || m.Columns[column].Unit != c.unit {
				t.Fatalf("read as %+v", m.Columns)
			}
			if (len(d.Faults) > 0) != c.fault {
				t.Fatalf("faults %+v", d.Faults)
			}
			if c.fault {
				return
			}
			asked := false
			for _, q := range d.Questions {
				asked = asked || q.Code == QuestionScale
			}
			one := d.Rows[0].Test
			if one.Session.Effort.Or(0) != c.effort || one.Note != c.note || asked != c.asked {
				t.Errorf("effort %v, note %q, asked %v", one.Session.Effort.Or(0), one.Note, asked)
			}
		})
	}
}

// TestOrderAskedOnce: where every date can be read both ways it is asked; not where one
// tells, nor once somebody chose, nor by a template that somebody chose in.
func TestOrderAskedOnce(t *testing.T) {
	file := func(days ...string) []byte {
		rows := []string{"Name,DOB,Date,Start,End,Mass before (kg),Mass after (kg)"}
		for _, day := range days {
			rows = append(rows, "Ann,1999-01-20,"+day+",09:00,10:00,70,69")
		}
		return []byte(strings.Join(rows, "\n"))
	}
	for name, c := range map[string]struct {
		days   []string
		chosen bool
		asked  bool
	}{
		"all can be both":   {[]string{"03/04/2025", "05/06/2025"}, false, true},
		"one tells":         {[]string{"03/04/2025", "25/06/2025"}, false, false},
		"both are the same": {[]string{"04/04/2025"}, false, false},
		"points tell":       {[]string{"03.04.2025"}, false, false},
		"somebody chose":    {[]string{"03/04/2025"}, true, false},
	} {
		t.Run(name, func(t *testing.T) {
			m, d := read(t, file(c.days...), func(m *Mapping) { m.Ordered = c.chosen }, Options{})
			if d.OrderOpen() != c.asked {
				t.Errorf("asked %v: %+v", d.OrderOpen(), d.Questions)
			}
			if both := BothWays(mustOpen(t, file(c.days...)), m, today, 3); c.asked && (len(both) == 0 || both[0] != (TwoDays{Text: "03/04/2025", DayFirst: "2025-04-03", MonthFirst: "2025-03-04"})) {
				t.Errorf("read both ways: %+v", both)
			}
		})
	}
	if _, d := read(t, bytes.Replace(file("03/04/2025"), []byte("1999-01-20"), []byte("20/01/1999"), 1), nil, Options{}); d.OrderOpen() {
		t.Error("asked though a birth date tells")
	}
	m, _ := read(t, file("03/04/2025"), func(m *Mapping) { m.Order, m.Ordered = MonthDayYear, true }, Options{})
	data, err := m.Marshal()
	if err != nil {
		t.Fatal(err)
	}
	kept, err := ReadMapping(data)
	if err != nil {
		t.Fatal(err)
	}
	again := mustOpen(t, file("07/08/2025"))
	fitted, ok := kept.Fit(again)
	d, err := Build(context.Background(), again, fitted, Options{Today: today})
	if err != nil || !ok || d.OrderOpen() || d.Rows[0].Test.Session.Date != "2025-07-08" {
		t.Errorf("%v, fits %v, asked %v, %+v", err, ok, d.OrderOpen(), d.Rows)
	}
}

// mustOpen opens a file that can be read.
func mustOpen(t testing.TB, data []byte) Book {
	t.Helper()
	b, err := Open(data)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

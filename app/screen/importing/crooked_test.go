package importing

import (
	"archive/zip"
	"bytes"
	"context"
	"fmt"
	"html"
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"golang.org/x/text/encoding/charmap"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/tables"
)

// Spreadsheets as practices keep them for years, by several hands. All athletes and all
// values are invented.

// germanFile has decimal commas, units in the cells, days written in three ways, two
// lines for a heading, a mass nobody wrote down and an athlete twice.
const germanFile = "Schweißtests Saison 2025;;;;;;;;;;;\r\n" +
	";;;;;;;;;;;\r\n" +
	"Nr.;Name, Vorname;geb.;Geschl.;Datum;Beginn;Ende;Gewicht vor dem Training;Gewicht nach dem Training;Trinkmenge;Lufttemp.;rel. Feuchte\r\n" +
	"1;Rabenfeld, Tilo;03.02.1998;m;3. Mai 2025;17.30 Uhr;19.00 Uhr;82,4 kg;81,15 kg;1,2 l;22,5 °C;55 %\r\n" +
	"2;Ohlenbusch, Käthe;17.11.2001;w;04.05.25;9:00;10:15;58,9 kg;k. A.;650 ml;19 °C;62 %\r\n" +
	"3;Rabenfeld, Tilo;03.02.98;m;11.5.2025;17.30 Uhr;19.00 Uhr;82,1 kg;80,9 kg;950 ml;24,0 °C;48 %\r\n" +
	"4;RABENFELD Tilo;03.02.1998;m;11.05.2025;17:30;19:00;82,1 kg;80,9 kg;950 ml;24 °C;48 %\r\n" +
	";Mittelwert;;;;;;76,4;81,0;1,0;22,4;53\r\n"

// americanRows are pounds, ounces and °F, days as text in three orders of writing, heights
// in feet and inches, and what somebody wrote beside a number.
func americanRows() [][]any {
	return [][]any{
		{"Athlete (Last, First)", "DOB", "M/F", "Ht", "Practice Date", "Start", "Practice Length", "Pre-Practice Wt (lbs)", "Post-Practice Wt (lbs)", "Fluid In (fl oz)", "Urine (oz)", "Temp (F)", "RH%", "Comments"},
		{"Marsh, Dario", "3/14/2001", "M", `6'1"`, "Aug 21, 2024", "5:05 PM", "1:35", "192.4 lb", "188.8 lb", 40.5, 0, 91, 0.58, "two-a-day"},
		{"Quill, Nadia", "11/2/2003", "F", `5'7"`, "8/22/2024", "9 AM", "105 min", 141.2, 139, "32 oz", 8, "88 °F", "61%", ""},
		{"Osprey, Hale", "7/30/2002", "M", "5 ft 11 in", "2024-08-22", "09:00", "1 hr 45 min", 201, "DNF", "48", "n/a", 88, "61 %", "left early"},
	}
}

// mergedRows are groups of headings over columns, in the second sheet, with a mean below.
func mergedRows() [][]any {
	return [][]any{
		{"Sweat testing, preseason camp"},
		{},
		{"Athlete", nil, "Session", nil, nil, "Nude body mass (kg)", nil, "Bottle (g)", nil, "Environment", nil, "Sweat [Na+]"},
		{"Name", "Born", "Date", "Start", "End", "Before", "After", "Full", "Empty", "Temp (°C)", "RH (%)", "mmol/L, forearm"},
		{"Iselin Thorne", "1997-06-05", "2025-07-01", "08:30", "10:00", 64.2, 63.1, 812, 170, 27, 66, 52},
		{"Piers Ashdown", "1999-09-19", "2025-07-01", "08:30", "10:00", 77.0, nil, 820, 88, 27, 66, 71},
		{"Mean", nil, nil, nil, nil, 70.6, 63.1, 816, 129, 27, 66, 61.5},
		{"SD", nil, nil, nil, nil, 9.1, nil, 5.7, 58, 0, 0, 13.4},
	}
}

// carelessFile is a list with headings again in its middle, names in several spellings,
// and rows that say nothing.
const carelessFile = "player;dob;date;start;duration;weight in;weight out;fluids\n" +
	"Åsa Lindqvale;1999-05-06;2025-03-11;18:00;80;61,2;60,1;500\n" +
	"lindqvale asa;1999-05-06;2025-03-18;18:00;80;61,4;60,5;~450\n" +
	"\n" +
	"player;dob;date;start;duration;weight in;weight out;fluids\n" +
	"Åsa  Lindqvale ;06/05/1999;2025-03-25;18h00;1h20;61,3;60,2;0,5 L\n" +
	"Åsa Lindqvale;1999-05-06;2025-03-25;18:00;80;61,3;60,2;500\n" +
	"Bram O’Keeld;1995-12-01;2025-03-25;18:00;80;;;\n" +
	"Bram O'Keeld;1995-12-01;2025-04-01;18:00;80;88,1;88.9;2500\n" +
	"-;-;-;-;-;-;-;-\n"

// laboratoryRows is a report of a laboratory with its own head, marks beside values, a
// sample that was too small and one below what is measured.
func laboratoryRows(name, day string) [][]any {
	return [][]any{
		{"Report no. 4471", nil, "Printed 02.06.2026"},
		{"Client: Saltmarsh (invented)"},
		{},
		{"Sample", "Collected", "Site", "Na+ (mmol/L)", "K+ (mmol/L)", "Cl- (mmol/L)", "Remark"},
		{name + " A", day, "R forearm", "51.5*", "<1.0", 44, "* repeated"},
		{"Nobody Here A", day, "R forearm", 60, 4, 55, ""},
		{name + " B", day, "L forearm", "QNS", "QNS", "QNS", "quantity not sufficient"},
	}
}

// bookOf writes a workbook with nothing but its cells (ECMA-376, part 1); sheets are by
// name, in order; spans are merged in the last.
func bookOf(t *testing.T, names []string, sheets [][][]any, spans ...[2]string) string {
	t.Helper()
	const main, relations = "http://schemas.openxmlformats.org/spreadsheetml/2006/main", "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
	const packages = "http://schemas.openxmlformats.org/package/2006/"
	parts := map[string]string{
		"_rels/.rels": `<Relationships xmlns="` + packages + `relationships"><Relationship Id="r" Type="` + relations + `/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
	}
	var types, list, leads strings.Builder
	for i, name := range names {
		fmt.Fprintf(&types, `<Override PartName="/xl/worksheets/sheet%d.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>`, i+1)
		fmt.Fprintf(&list, `<sheet name=%q sheetId="%d" r:id="r%d"/>`, name, i+1, i+1)
		fmt.Fprintf(&leads, `<Relationship Id="r%d" Type="%s/worksheet" Target="worksheets/sheet%d.xml"/>`, i+1, relations, i+1)
		text := `<worksheet xmlns="` + main + `"><sheetData>` + cellsOf(sheets[i]) + `</sheetData>`
		if i == len(names)-1 && len(spans) > 0 {
			text += "<mergeCells>"
			for _, s := range spans {
				text += `<mergeCell ref="` + s[0] + ":" + s[1] + `"/>`
			}
			text += "</mergeCells>"
		}
		parts[fmt.Sprintf("xl/worksheets/sheet%d.xml", i+1)] = text + "</worksheet>"
	}
	parts["[Content_Types].xml"] = `<Types xmlns="` + packages + `content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
		`<Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>` + types.String() + `</Types>`
	parts["xl/workbook.xml"] = `<workbook xmlns="` + main + `" xmlns:r="` + relations + `"><sheets>` + list.String() + `</sheets></workbook>`
	parts["xl/_rels/workbook.xml.rels"] = `<Relationships xmlns="` + packages + `relationships">` + leads.String() + `</Relationships>`
	var out bytes.Buffer
	archive := zip.NewWriter(&out)
	for name, text := range parts {
		f, err := archive.Create(name)
		if err == nil {
			_, err = f.Write([]byte(text))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := archive.Close(); err != nil {
		t.Fatal(err)
	}
	return file(t, "crooked.xlsx", out.String())
}

// cellsOf writes rows of texts and numbers.
func cellsOf(rows [][]any) string {
	var b strings.Builder
	for r, row := range rows {
		fmt.Fprintf(&b, `<row r="%d">`, r+1)
		for c, value := range row {
			at := fmt.Sprintf("%s%d", tables.Letters(c), r+1)
			switch x := value.(type) {
			case nil:
			case string:
				fmt.Fprintf(&b, `<c r="%s" t="inlineStr"><is><t>%s</t></is></c>`, at, html.EscapeString(x))
			default:
				fmt.Fprintf(&b, `<c r="%s"><v>%v</v></c>`, at, x)
			}
		}
		b.WriteString("</row>")
	}
	return b.String()
}

// textOf shows a tab and returns what stands there, a blank between two texts.
func (v *View) textOf(part string) string {
	v.ui.showPart(part)
	return strings.ReplaceAll(strings.Join(apptest.VisibleTexts(v.ui.stage), "\n"), "\u00a0", " ")
}

// wantSaid fails for a sentence that does not stand in a tab.
func wantSaid(t *testing.T, v *View, part string, sentences ...string) {
	t.Helper()
	text := v.textOf(part)
	for _, sentence := range sentences {
		if !strings.Contains(text, sentence) {
			t.Errorf("%s: %q is not said in\n%s", part, sentence, text)
		}
	}
}

// sheetOf is the sheet of an athlete on a day, as it was imported.
func sheetOf(t *testing.T, d *desk.Desk, name string, day record.Date) record.Test {
	t.Helper()
	a := apptest.AthleteNamed(t, d, name)
	tests, err := d.Store.Tests(context.Background(), a.ID)
	if err != nil {
		t.Fatal(err)
	}
	at := slices.IndexFunc(tests, func(x record.Test) bool { return x.Session.Date == day })
	if at < 0 {
		t.Fatalf("%s has no sheet of %s among %d", name, day, len(tests))
	}
	return tests[at]
}

// measured is what stands in a file: masses in kg, what was drunk in mL, air in °C and %.
type measured struct{ before, after, drunk, temperature, humidity float64 }

// wantSheet compares a sheet with what stands in the file.
func wantSheet(t *testing.T, s record.Test, start, end record.Clock, want measured) {
	t.Helper()
	var got [3]float64
	for _, w := range s.Weighings {
		if w.Moment == record.Before {
			got[0] = w.Mass.Or(0)
		} else {
			got[1] = w.Mass.Or(0)
		}
	}
	for _, b := range s.Bottles {
		got[2] += b.Volume.Or(0) + b.Before.Or(0) - b.After.Or(0)
	}
	near := func(a, b float64) bool { return math.Abs(a-b) < 0.005*math.Max(1, math.Abs(b)/1000) }
	if s.Session.Start != start || s.Session.End != end || !near(got[0], want.before) || !near(got[1], want.after) || !near(got[2], want.drunk) ||
		!near(s.Air.Temperature.Or(0), want.temperature) || !near(s.Air.Humidity.Or(0), want.humidity) {
		t.Errorf("%s %s to %s, %v, %v °C, %v %%", s.Session.Date, s.Session.Start, s.Session.End, got, s.Air.Temperature.Or(0), s.Air.Humidity.Or(0))
	}
}

// taken imports what the screen shows, without rows with faults, and sees that so many
// tests and athletes came.
func taken(t *testing.T, d *desk.Desk, v *View, w fyne.Window, tests, athletes int) {
	t.Helper()
	athletesBefore, testsBefore := count(t, d)
	if len(v.s.faulty()) > 0 {
		apptest.Click(t, w, "import.without")
	}
	apptest.Click(t, w, "import.write")
	if a, n := count(t, d); a-athletesBefore != athletes || n-testsBefore != tests {
		t.Fatalf("%d athletes and %d tests came: %q", a-athletesBefore, n-testsBefore, apptest.VisibleTexts(v.Body()))
	}
}

func TestCrookedGermanFile(t *testing.T) {
	text, err := charmap.Windows1252.NewEncoder().String(germanFile)
	if err != nil {
		t.Fatal(err)
	}
	d, _ := apptest.Desk(t)
	v, w := open(t, d, desk.Place{Screen: desk.Import, Part: file(t, "Schweißtests.csv", text)})
	wantSaid(t, v, partFaults, "This looks like a sum or a mean, not an athlete.")
	wantSaid(t, v, partTwins, "The same as row 6.")
	wantSaid(t, v, partQuestions, "A body mass is missing.")
	if strings.Contains(v.textOf(partQuestions), "No heading gives the unit") {
		t.Error("the unit of values that have one each is asked about")
	}
	taken(t, d, v, w, 3, 2)
	wantSheet(t, sheetOf(t, d, "Tilo Rabenfeld", "2025-05-03"), "17:30", "19:00", measured{82.4, 81.15, 1200, 22.5, 55})
	wantSheet(t, sheetOf(t, d, "Tilo Rabenfeld", "2025-05-11"), "17:30", "19:00", measured{82.1, 80.9, 950, 24, 48})
	wantSheet(t, sheetOf(t, d, "Käthe Ohlenbusch", "2025-05-04"), "09:00", "10:15", measured{58.9, 0, 650, 19, 62})
	if a := apptest.AthleteNamed(t, d, "Käthe"); a.Sex != record.Female || a.Born != "2001-11-17" {
		t.Errorf("%s, %s", a.Sex, a.Born)
	}
}

func TestCrookedAmericanBook(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, w := open(t, d, desk.Place{Screen: desk.Import, Part: bookOf(t, []string{"Practice"}, [][][]any{americanRows()})})
	if text := v.textOf(partFaults); !strings.Contains(text, "No faults.") {
		t.Errorf("the faults are %s", text)
	}
	wantSaid(t, v, partQuestions, "A body mass is missing.")
	taken(t, d, v, w, 3, 3)
	marsh := sheetOf(t, d, "Dario Marsh", "2024-08-21")
	wantSheet(t, marsh, "17:05", "18:40", measured{192.4 * 0.45359237, 188.8 * 0.45359237, 40.5 * 29.5735, (91 - 32) / 1.8, 58})
	if !marsh.Loss.NoUrine || marsh.Note != "two-a-day" {
		t.Errorf("%+v, %q", marsh.Loss, marsh.Note)
	}
	wantSheet(t, sheetOf(t, d, "Nadia Quill", "2024-08-22"), "09:00", "10:45", measured{141.2 * 0.45359237, 139 * 0.45359237, 32 * 29.5735, (88 - 32) / 1.8, 61})
	wantSheet(t, sheetOf(t, d, "Hale Osprey", "2024-08-22"), "09:00", "10:45", measured{201 * 0.45359237, 0, 48 * 29.5735, (88 - 32) / 1.8, 61})
	for name, inches := range map[string]float64{"Dario Marsh": 73, "Nadia Quill": 67, "Hale Osprey": 71} {
		if got := apptest.AthleteNamed(t, d, name).Height.Or(0); math.Abs(got-inches*0.0254) > 1e-6 {
			t.Errorf("%s is %g m tall", name, got)
		}
	}
}

// The bottles of this book are named in a way that says nothing for sure: what they are is
// chosen on the screen.
func TestCrookedMergedBook(t *testing.T) {
	d, _ := apptest.Desk(t)
	path := bookOf(t, []string{"Read me", "Data"}, [][][]any{{{"Colours: green is fine"}, {"Name of file", "v3"}}, mergedRows()},
		[2]string{"A3", "B3"}, [2]string{"C3", "E3"}, [2]string{"F3", "G3"}, [2]string{"H3", "I3"}, [2]string{"J3", "K3"})
	v, w := open(t, d, desk.Place{Screen: desk.Import, Part: path})
	if v.s.mapping.Sheet != "Data" || len(v.s.faulty()) != 2 {
		t.Fatalf("sheet %q, rows with faults %v", v.s.mapping.Sheet, v.s.faulty())
	}
	v.ui.columns.rows[7].meaning.OnChosen(string(tables.BottleBefore))
	v.ui.columns.rows[8].meaning.OnChosen(string(tables.BottleAfter))
	taken(t, d, v, w, 2, 2)
	thorne := sheetOf(t, d, "Iselin Thorne", "2025-07-01")
	wantSheet(t, thorne, "08:30", "10:00", measured{64.2, 63.1, 642, 27, 66})
	wantSheet(t, sheetOf(t, d, "Piers Ashdown", "2025-07-01"), "08:30", "10:00", measured{77, 0, 732, 27, 66})
	if len(thorne.Patches) != 1 || thorne.Patches[0].Sodium.Or(0) != 52 || thorne.Patches[0].Site != record.SiteForearmDorsal {
		t.Errorf("patches %+v", thorne.Patches)
	}
}

func TestCrookedCarelessFile(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, w := open(t, d, desk.Place{Screen: desk.Import, Part: file(t, "tests.csv", carelessFile)})
	if text := v.textOf(partFaults); !strings.Contains(text, "No faults.") {
		t.Errorf("the faults are %s", text)
	}
	wantSaid(t, v, partTwins, "The same as row 6.")
	wantSaid(t, v, partQuestions, "Heavier after than before: a red flag.", "A body mass is missing.", "Volume taken 1: 2500 mL is unusual")
	taken(t, d, v, w, 5, 2)
	wantSheet(t, sheetOf(t, d, "Åsa Lindqvale", "2025-03-18"), "18:00", "19:20", measured{61.4, 60.5, 450, 0, 0})
	wantSheet(t, sheetOf(t, d, "Åsa Lindqvale", "2025-03-25"), "18:00", "19:20", measured{61.3, 60.2, 500, 0, 0})
	wantSheet(t, sheetOf(t, d, "Bram", "2025-04-01"), "18:00", "19:20", measured{88.1, 88.9, 2500, 0, 0})
}

// A report of a laboratory: what is below its limit stays empty, a mark beside a value and
// a sample that was too small are faults of their rows.
func TestCrookedLaboratoryReport(t *testing.T) {
	d, _ := apptest.Desk(t)
	ctx := context.Background()
	a := apptest.Athlete(t, d)
	one := record.Test{AthleteID: a.ID, State: record.TestWaiting, Patches: []record.Patch{
		{Order: 1, Site: record.SiteForearmDorsal, Side: "right", Condition: record.PatchGood}, {Order: 2, Site: record.SiteForearmDorsal, Side: "left", Condition: record.PatchGood},
	}}
	one.Session.Date = "2026-05-10"
	one, err := d.Store.SaveTest(ctx, one, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	rows := laboratoryRows(a.Name, "10.05.2026")
	v, _ := open(t, d, desk.Place{Screen: desk.Import, Part: bookOf(t, []string{"Report"}, [][][]any{rows})})
	if v.s.mapping.Kind != record.ImportLaboratory {
		t.Fatalf("read as %s: %+v", v.s.mapping.Kind, v.s.mapping.Columns)
	}
	wantSaid(t, v, partFaults, "“51.5*” is not a number.", "No athlete of that name or number is on record.", "The row has no result.")
	wantSaid(t, v, partQuestions, "“<1.0” is a limit, not a value. The patch stays empty.")
	rows[4][3] = "51.5" // as the dietitian mends it
	v, w := open(t, d, desk.Place{Screen: desk.Import, Part: bookOf(t, []string{"Report"}, [][][]any{rows})})
	taken(t, d, v, w, 0, 0)
	kept, err := d.Store.LoadTest(ctx, one.ID)
	if err != nil || kept.Patches[0].Sodium.Or(0) != 51.5 || kept.Patches[0].Potassium.Known() || kept.Patches[1].Sodium.Known() {
		t.Errorf("%+v, %v", kept.Patches, err)
	}
}

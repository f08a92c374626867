package importing

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/exchange"
	"ebbwell/internal/record"
	"ebbwell/internal/tables"
)

const heads = "Name,Date of birth,Sex,Date,Start,Duration (min),Mass before (kg),Mass after (kg),Fluid intake (mL),Sweat Na (mmol/L) forearm\n"

// file writes a file into a folder of the test's own.
func file(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// open opens the screen on a desk without records; went are the places it led to.
func open(t *testing.T, d *desk.Desk, place desk.Place) (*View, fyne.Window) {
	t.Helper()
	v, err := New(d, place)
	if err != nil {
		t.Fatal(err)
	}
	return v, apptest.Window(t, v.Body(), 1100, 720, false, 100)
}

// count counts athletes and tests that are kept.
func count(t *testing.T, d *desk.Desk) (athletes, tests int) {
	t.Helper()
	list, err := d.Store.Athletes(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range list {
		some, err := d.Store.Tests(context.Background(), a.ID)
		if err != nil {
			t.Fatal(err)
		}
		tests += len(some)
	}
	return len(list), tests
}

// shows reports whether a text stands on the screen.
func shows(v *View, text string) bool {
	return slices.ContainsFunc(apptest.VisibleTexts(v.Body()), func(s string) bool { return strings.Contains(s, text) })
}

// TestImportOnScreen walks the main path: a file with a fault and a gain, the fault left
// out, imported, the same file again, undone.
func TestImportOnScreen(t *testing.T) {
	d, _ := apptest.Desk(t)
	path := file(t, "old tests.csv", heads+
		"Ada Moss,14/03/1999,F,21/06/2025,09:30,90,61.4,60.3,650,47\n"+
		"Bo Lund,02/11/1987,M,21/06/2025,09:30,90,78.2,78.9,2400,61\n"+
		"Cy Rook,05/05/2012,M,21/06/2025,09:30,90,48.0,47.5,400,35\n"+
		"Di Vane,05/05/1992,F,21/06/2025,09:30,90,seventy,69.5,400,35\n")
	v, w := open(t, d, desk.Place{Screen: desk.Import})
	athletesBefore, testsBefore := count(t, d)
	apptest.Click(t, w, "import.ask")
	apptest.Type(t, w, "import.file.path", path)
	apptest.Click(t, w, "import.file.yes")
	if !shows(v, "A: Name") || !shows(v, "3 tests and 3 new athletes") {
		t.Fatalf("the screen shows %q", apptest.VisibleTexts(v.Body()))
	}
	apptest.Click(t, w, "import.write") // a fault stands
	if a, n := count(t, d); a != athletesBefore || n != testsBefore {
		t.Fatal("imported in spite of a fault")
	}
	v.ui.showPart(partFaults)
	if !shows(v, "“seventy” is not a number.") || !shows(v, "G: Mass before (kg)") {
		t.Errorf("the faults are %q", apptest.VisibleTexts(v.Body()))
	}
	v.ui.showPart(partQuestions)
	if !shows(v, "Heavier after than before: a red flag.") || !shows(v, "Under 18: body mass is hidden") {
		t.Errorf("the questions are %q", apptest.VisibleTexts(v.Body()))
	}
	for _, text := range apptest.VisibleTexts(v.ui.stage) {
		if strings.Contains(text, "48") || strings.Contains(text, "47.5") {
			t.Errorf("the mass of one whose mass is hidden is asked about: %q", text)
		}
	}
	apptest.Click(t, w, "import.without")
	apptest.Click(t, w, "import.write")
	if a, n := count(t, d); a != athletesBefore+3 || n != testsBefore+3 || !shows(v, "old tests.csv is imported") {
		t.Fatalf("%d athletes and %d tests, the screen shows %q", a, n, apptest.VisibleTexts(v.Body()))
	}
	wantGuarded(t, d)

	// The same file again: all of it is there already.
	v2, w2 := open(t, d, desk.Place{Screen: desk.Import, Part: path})
	v2.ui.showPart(partTwins)
	if !shows(v2, "Already on record.") || !shows(v2, "To be imported: nothing.") {
		t.Errorf("again: %q", apptest.VisibleTexts(v2.Body()))
	}
	apptest.Click(t, w2, "import.another.1")
	if !shows(v2, "To be imported: 1 test.") {
		t.Errorf("ticked: %q", apptest.VisibleTexts(v2.Body()))
	}

	v = undo(t, d)
	if a, n := count(t, d); a != athletesBefore || n != testsBefore || !shows(v, "3 tests and 3 new athletes") {
		t.Errorf("undone: %d athletes and %d tests, the screen shows %q", a, n, apptest.VisibleTexts(v.Body()))
	}
}

// undo takes the last import back, from the list of imports.
func undo(t *testing.T, d *desk.Desk) *View {
	t.Helper()
	list, err := d.Store.Imports(context.Background())
	if err != nil || len(list) == 0 {
		t.Fatalf("%d imports, %v", len(list), err)
	}
	v, w := open(t, d, desk.Place{Screen: desk.Import, Record: list[0].ID})
	apptest.Click(t, w, "import.undo")
	apptest.Click(t, w, "import.undo.ask.yes")
	return v
}

// wantGuarded sees that what came from a file is guarded as what was typed: a minor's
// mass is hidden, a gain is a red flag, no consent is invented.
func wantGuarded(t *testing.T, d *desk.Desk) {
	t.Helper()
	young, gained := apptest.AthleteNamed(t, d, "Cy Rook"), apptest.AthleteNamed(t, d, "Bo Lund")
	if !care.MassHidden(young, d.Now()) || len(care.Of(young, d.Now()).Outstanding) == 0 || len(young.Consents) != 0 {
		t.Errorf("the minor: hidden %v, unsettled %v, consents %v", care.MassHidden(young, d.Now()), care.Of(young, d.Now()).Outstanding, young.Consents)
	}
	tests, err := d.Store.Tests(context.Background(), gained.ID)
	if err != nil || len(tests) != 1 {
		t.Fatalf("%d tests: %v", len(tests), err)
	}
	found := consult.Find(tests[0], gained, nil, d.Calculate())
	if _, ok := consult.RedFlagOf(found, gained, d.Now()); !ok || !consult.Blocks(found, gained) {
		t.Error("a gain in mass is no red flag")
	}
}

// TestTemplateIsKnownAgain: columns nobody could guess are chosen once, saved, and known
// in the next file by their headings.
func TestTemplateIsKnownAgain(t *testing.T) {
	d, _ := apptest.Desk(t)
	const strange = "Wer,Wann,von,bis,M1,M2\n"
	v, w := open(t, d, desk.Place{Screen: desk.Import, Part: file(t, "a.csv", strange+"Ada Moss,21/06/2025,09:30,11:00,61.4,60.3\n")})
	for i, target := range []string{"name", "date", "start", "end", "mass-before", "mass-after"} {
		v.ui.columns.rows[i].meaning.OnChosen(target)
	}
	if !shows(v, "To be imported: 1 test and 1 new athlete.") {
		t.Fatalf("the screen shows %q", apptest.VisibleTexts(v.Body()))
	}
	apptest.Type(t, w, "import.template", "Club sheet")
	apptest.Click(t, w, "import.template.save")
	v, w = open(t, d, desk.Place{Screen: desk.Import, Part: file(t, "b.csv", "Report\n\nM2,Wer,Wann,von,bis,M1\n60.1,Bo Lund,22/06/2025,09:30,11:00,61.2\n")})
	if !shows(v, "Club sheet") || !shows(v, "To be imported: 1 test and 1 new athlete.") {
		t.Errorf("the screen shows %q", apptest.VisibleTexts(v.Body()))
	}
	apptest.Click(t, w, "import.template.remove")
	if list, err := d.Store.Templates(context.Background()); err != nil || len(list) != 0 {
		t.Errorf("%v, %v", list, err)
	}
}

// TestStoppedWritesNothing: a check or an import that is stopped leaves the records and
// the screen as they were.
func TestStoppedWritesNothing(t *testing.T) {
	d, _ := apptest.Desk(t)
	said := ""
	d.Say = func(sentence, _ string, _ func()) { said = sentence }
	_, w := open(t, d, desk.Place{Screen: desk.Import, Part: file(t, "a.csv", heads+"Ada Moss,14/03/1999,F,21/06/2025,09:30,90,61.4,60.3,650,47\n")})
	athletes, tests := count(t, d)
	d.Beside = stopped{}
	apptest.Click(t, w, "import.write")
	if a, n := count(t, d); a != athletes || n != tests || said != "Stopped. Nothing was imported." || !apptest.Has(w, "import.write") {
		t.Errorf("%d athletes, %d tests, said %q", a, n, said)
	}
	d.Beside = desk.Inline{}
	apptest.Click(t, w, "import.write")
	if a, _ := count(t, d); a != athletes+1 {
		t.Error("it cannot be imported afterwards")
	}
}

// stopped is a runner whose work is stopped as it begins.
type stopped struct{}

func (stopped) Run(work func(ctx context.Context) error, done func(error)) (stop func()) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	done(work(ctx))
	return func() {}
}

// TestFilesThatCannotBeRead are refused in words, and another can be chosen.
func TestFilesThatCannotBeRead(t *testing.T) {
	d, _ := apptest.Desk(t)
	for text, want := range map[string]string{
		"": "The file is empty.", "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1rest": "Save it as .xlsx", "PK\x03\x04": "neither a workbook nor a text file",
		"name" + strings.Repeat(",", 400) + "x\n": "more than 300 columns", strings.Repeat("x", 5000) + ",b\n": "more than 4000 characters",
	} {
		v, w := open(t, d, desk.Place{Screen: desk.Import, Part: file(t, "a.csv", text)})
		if !shows(v, want) || !shows(v, "a.csv can’t be read.") || !apptest.Has(w, "import.ask") {
			t.Errorf("%.20q: %q", text, apptest.VisibleTexts(v.Body()))
		}
	}
	v, _ := open(t, d, desk.Place{Screen: desk.Import, Part: filepath.Join(t.TempDir(), "none.csv")})
	if !shows(v, "That file does not exist") {
		t.Errorf("%q", apptest.VisibleTexts(v.Body()))
	}
}

// TestOwnExportComesBack: athletes, groups and tests of the invented practice go out in
// every form and come into an empty one the same, and once more are all there already.
func TestOwnExportComesBack(t *testing.T) {
	from, _ := apptest.Demo(t)
	all := everything(t, from)
	for name, write := range map[string]func(*bytes.Buffer) error{
		"a.json": func(out *bytes.Buffer) error { return exchange.WriteJSON(out, all) },
		"a.zip":  func(out *bytes.Buffer) error { return exchange.WriteCSV(out, all, nil, nil) },
		"a.xlsx": func(out *bytes.Buffer) error { return exchange.WriteXLSX(out, all, nil, nil) },
	} {
		t.Run(name, func(t *testing.T) {
			var out bytes.Buffer
			if err := write(&out); err != nil {
				t.Fatal(err)
			}
			to, _ := apptest.Desk(t)
			path := file(t, name, out.String())
			v, w := open(t, to, desk.Place{Screen: desk.Import, Part: path})
			apptest.Click(t, w, "import.write")
			if !shows(v, name+" is imported") {
				t.Fatalf("the screen shows %q", apptest.VisibleTexts(v.Body()))
			}
			wantSame(t, all, everything(t, to), name == "a.xlsx")
			again, _ := open(t, to, desk.Place{Screen: desk.Import, Part: path})
			if again.s.ready() || len(again.s.twins()) != len(all.Tests) {
				t.Errorf("again: %d of %d tests are there already", len(again.s.twins()), len(all.Tests))
			}
			// Undone, it can be imported once more.
			undo(t, to)
			v, w = open(t, to, desk.Place{Screen: desk.Import, Part: path})
			apptest.Click(t, w, "import.write")
			if !shows(v, name+" is imported") {
				t.Errorf("after it was undone: %q", apptest.VisibleTexts(v.Body()))
			}
		})
	}
}

// everything reads the athletes, groups and tests of a practice.
func everything(t *testing.T, d *desk.Desk) (r exchange.Records) {
	t.Helper()
	ctx := context.Background()
	list, err := d.Store.Athletes(ctx)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range list {
		a, err := d.Store.LoadAthlete(ctx, p.ID)
		if err != nil {
			t.Fatal(err)
		}
		tests, err := d.Store.Tests(ctx, p.ID)
		if err != nil {
			t.Fatal(err)
		}
		r.Athletes, r.Tests = append(r.Athletes, a), append(r.Tests, tests...)
	}
	if r.Groups, err = d.Store.Groups(ctx); err != nil {
		t.Fatal(err)
	}
	return r
}

// wantSame compares what was exported with what came back, but for who made it when
// and with which import; rounded to the digits a workbook keeps where it was one.
func wantSame(t *testing.T, want, got exchange.Records, rounded bool) {
	t.Helper()
	texts := func(r exchange.Records) []string {
		var list []string
		for _, table := range exchange.Tables(r) {
			for _, row := range table.Rows {
				var cells []string
				for i, c := range table.Columns {
					switch {
					case slices.Contains([]string{"createdAt", "createdBy", "changedAt", "changedBy", "importID", "deletedAt"}, c.Name):
					case rounded && c.Holds == exchange.HoldsNumber && row[i] != "":
						var x float64
						_, _ = fmt.Sscan(row[i], &x)
						cells = append(cells, fmt.Sprintf("%.12g", x))
					default:
						cells = append(cells, row[i])
					}
				}
				list = append(list, table.Name+": "+strings.Join(cells, "|"))
			}
		}
		slices.Sort(list)
		return list
	}
	a, b := texts(want), texts(got)
	if len(a) != len(b) {
		t.Fatalf("%d rows went out, %d came back", len(a), len(b))
	}
	for i := range a {
		if a[i] != b[i] {
			t.Fatalf("went out as\n%s\ncame back as\n%s", a[i], b[i])
		}
	}
}

// TestLaboratoryOnScreen: results find the patches that wait for them.
func TestLaboratoryOnScreen(t *testing.T) {
	d, _ := apptest.Demo(t)
	ctx := context.Background()
	var sheet record.Test
	var who record.Athlete
	list, err := d.Store.Athletes(ctx)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range list {
		tests, err := d.Store.Tests(ctx, p.ID)
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range tests {
			if len(x.Patches) > 0 && x.State != record.TestClosed {
				sheet = x
				who, _ = d.Store.LoadAthlete(ctx, p.ID)
			}
		}
	}
	if sheet.ID == "" {
		t.Fatal("no sheet of the invented practice waits")
	}
	text := "Sample ID;Date;Site;Na (mmol/L)\n" + who.Name + ";" + string(sheet.Session.Date) + ";" + string(sheet.Patches[0].Site) + ";51,5\n"
	v, w := open(t, d, desk.Place{Screen: desk.Import, Part: file(t, "lab.csv", text)})
	if v.s.mapping.Kind != record.ImportLaboratory || !shows(v, "results for 1 patch") {
		t.Fatalf("%s: %q", v.s.mapping.Kind, apptest.VisibleTexts(v.Body()))
	}
	apptest.Click(t, w, "import.write")
	if kept, err := d.Store.LoadTest(ctx, sheet.ID); err != nil || kept.Patches[0].Sodium.Or(0) != 51.5 {
		t.Errorf("the patch has %v, %v", kept.Patches[0].Sodium.Or(0), err)
	}
}

// TestDayOrMonthIsAskedOnce: a file whose dates can all be read both ways is not imported
// before somebody said which is right, over the first dates in words; a template made then
// is not asked again.
func TestDayOrMonthIsAskedOnce(t *testing.T) {
	d, _ := apptest.Desk(t)
	path := file(t, "both ways.csv", heads+"Ada Moss,02/03/1999,F,03/04/2025,09:30,90,61.4,60.3,650,47\nBo Lund,02/11/1987,M,05/06/2025,09:30,90,78.2,77.9,400,61\n")
	v, w := open(t, d, desk.Place{Screen: desk.Import, Part: path})
	if v.s.ready() || !shows(v, "Day or month first?") || !shows(v, "“03/04/2025” is 3 April 2025 or 4 March 2025") || !shows(v, "First choose whether day or month comes first") {
		t.Fatalf("the screen shows %q", apptest.VisibleTexts(v.Body()))
	}
	apptest.Click(t, w, "import.both.mdy")
	if !v.s.ready() || shows(v, "Day or month first?") || v.s.draft.Rows[0].Test.Session.Date != "2025-03-04" {
		t.Fatalf("chosen: %q", apptest.VisibleTexts(v.Body()))
	}
	apptest.Type(t, w, "import.template", "clinic")
	apptest.Click(t, w, "import.template.save")
	again, _ := open(t, d, desk.Place{Screen: desk.Import, Part: path})
	if !again.s.ready() || shows(again, "Day or month first?") || again.s.mapping.Order != tables.MonthDayYear {
		t.Errorf("by the template: %q", apptest.VisibleTexts(again.Body()))
	}
}

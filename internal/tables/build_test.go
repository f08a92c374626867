package tables

import (
	"strings"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// wantWithin fails for a value of a draft beyond what the sheet takes.
func wantWithin(t *testing.T, d Draft) {
	t.Helper()
	for _, r := range d.Rows {
		if r.Test == nil {
			continue
		}
		for _, e := range consult.Entries(*r.Test) {
			if !e.Number.Known() {
				continue
			}
			if p := evidence.Check(e.Field, e.Item, *e.Number.Value); p != nil && p.Severity == evidence.Refuses {
				t.Errorf("row %d: %v", r.Row, p)
			}
		}
	}
}

// head is a heading for the tests below.
const head = "Name,DOB,Date,Start,Duration (min),Mass before (kg),Mass after (kg),Fluid (mL),Na forearm (mmol/L),Sex,RPE\n"

// TestFaultsByRowAndColumn: each fault names its cell.
func TestFaultsByRowAndColumn(t *testing.T) {
	for name, c := range map[string]struct {
		row    string
		column int
		code   FaultCode
	}{
		"no name":             {",1999-01-01,2025-05-14,10:00,60,70,69,500,,,", -1, FaultNoName},
		"a word for a number": {"Ann,1999-01-01,2025-05-14,10:00,60,seventy,69,500,,,", 5, FaultNumber},
		"another unit":        {"Ann,1999-01-01,2025-05-14,10:00,60,70 °C,69,500,,,", 5, FaultUnit},
		"too heavy":           {"Ann,1999-01-01,2025-05-14,10:00,60,700,69,500,,,", 5, FaultLimit},
		"no such day":         {"Ann,1999-01-01,31/02/2025,10:00,60,70,69,500,,,", 2, FaultDay},
		"a day to come":       {"Ann,1999-01-01,2027-05-14,10:00,60,70,69,500,,,", 2, FaultFuture},
		"no day":              {"Ann,1999-01-01,,10:00,60,70,69,500,,,", 2, FaultNoDate},
		"no clock":            {"Ann,1999-01-01,2025-05-14,25:00,60,70,69,500,,,", 3, FaultClock},
		"no duration":         {"Ann,1999-01-01,2025-05-14,10:00,long,70,69,500,,,", 4, FaultMinutes},
		"too short":           {"Ann,1999-01-01,2025-05-14,10:00,3,70,69,500,,,", 4, FaultLimit},
		"no start":            {"Ann,1999-01-01,2025-05-14,,60,70,69,500,,,", 4, FaultNoStart},
		"too salty":           {"Ann,1999-01-01,2025-05-14,10:00,60,70,69,500,900,,", 8, FaultLimit},
		"no sex known":        {"Ann,1999-01-01,2025-05-14,10:00,60,70,69,500,,perhaps,", 9, FaultChoice},
		"effort of 25":        {"Ann,1999-01-01,2025-05-14,10:00,60,70,69,500,,,25", 10, FaultLimit},
		"born tomorrow":       {"Ann,2030-01-01,2025-05-14,10:00,60,70,69,500,,,", 1, FaultFuture},
		"born after the test": {"Ann,2025-06-01,2025-05-14,10:00,60,70,69,500,,,", 2, FaultBorn},
		"drunk below nothing": {"Ann,1999-01-01,2025-05-14,10:00,60,70,69,-500,,,", 7, FaultLimit},
		"a name without end":  {strings.Repeat("Ann", 100) + ",1999-01-01,2025-05-14,10:00,60,70,69,500,,,", 0, FaultLong},
	} {
		t.Run(name, func(t *testing.T) {
			good := "Bo,1998-01-01,2025-05-14,10:00,60,70,69.2,500,47,f,6\n"
			_, d := read(t, []byte(head+good+c.row+"\n"+good), nil, Options{})
			if len(d.Faults) != 1 || d.Faults[0].Row != 2 || d.Faults[0].Column != c.column || d.Faults[0].Code != c.code {
				t.Errorf("the faults are %+v", d.Faults)
			}
			if len(d.Rows) != 2 || d.Rows[1].Twin.Row != 1 {
				t.Errorf("the other rows are %+v", d.Rows)
			}
			if left := d.Standing(Choice{LeaveOut: map[int]bool{2: true}}); len(left) != 0 {
				t.Errorf("left out, and still %+v", left)
			}
		})
	}
}

// TestQuestions: what is odd is asked and taken all the same.
func TestQuestions(t *testing.T) {
	for name, c := range map[string]struct {
		row  string
		code QuestionCode
	}{
		"heavier after":       {"Ann,1999-01-01,2025-05-14,10:00,60,70,70.8,500,,,", QuestionGain},
		"light":               {"Ann,1999-01-01,2025-05-14,10:00,60,38,37.5,500,,,", QuestionLimit},
		"no birth date":       {"Ann,,2025-05-14,10:00,60,70,69.2,500,,,", QuestionNoBorn},
		"young":               {"Ann,2012-01-01,2025-05-14,10:00,60,52,51.5,500,,,", QuestionMinor},
		"over midnight":       {"Ann,1999-01-01,2025-05-14,23:30,60,70,69.2,500,,,", QuestionOvernight},
		"a loss of a tenth":   {"Ann,1999-01-01,2025-05-14,10:00,60,70,63,500,,,", QuestionSheet},
		"thousands or litres": {"Ann,1999-01-01,2025-05-14,10:00,60,70,69.2,\"1,250\",,,", QuestionGrouped},
	} {
		t.Run(name, func(t *testing.T) {
			m, d := read(t, []byte(head+c.row+"\n"), nil, Options{})
			noFaults(t, m, d)
			found := false
			for _, q := range d.Questions {
				found = found || q.Code == c.code && q.Row == 1
			}
			if !found || len(d.Rows) != 1 {
				t.Errorf("%+v", d.Questions)
			}
			if name == "young" {
				for _, q := range d.Questions {
					if !q.Hidden {
						t.Errorf("not hidden: %+v", q)
					}
				}
			}
		})
	}
}

// TestStartChosenForAll: where only the duration is known the start is the chosen one,
// and the note says so.
func TestStartChosenForAll(t *testing.T) {
	data := []byte("Name,Date,Duration (min),Mass before (kg),Mass after (kg),Comments\nAnn,2025-05-14,75,70,69.2,hot\n")
	m, d := read(t, data, func(m *Mapping) { m.Begin = "12:00" }, Options{NoStart: "Start not recorded."})
	noFaults(t, m, d)
	if s := d.Rows[0].Test; s.Session.Start != "12:00" || s.Session.End != "13:15" || s.Note != "hot\nStart not recorded." {
		t.Errorf("%+v", s)
	}
}

// TestTwins: what is kept already, or stands in a row before, is left out unless the
// person says otherwise.
func TestTwins(t *testing.T) {
	known := Known{
		Athletes: []record.Athlete{{Meta: record.Meta{ID: "a1"}, Name: "Ada Möss", Born: "1999-01-01"}, {Meta: record.Meta{ID: "a2"}, Name: "Bo Lund", Born: "1990-01-01"}, {Meta: record.Meta{ID: "a3"}, Name: "Bo Lund", Born: "1995-01-01"}},
		Tests:    []KnownTest{{"a1", "2025-05-14", "10:00"}},
	}
	data := []byte("Name,DOB,Date,Start,End,Mass before (kg),Mass after (kg)\n" +
		"MOSS Ada,1999-01-01,2025-05-14,10:00,11:00,70,69\n" + // kept already, name turned round
		"Ada Möss,1999-01-01,2025-05-15,10:00,11:00,70,69\n" + // her next test
		"Ada Möss,1999-01-01,2025-05-15,10:00,11:00,70,69\n" + // the same again
		"Ada Möss,2003-01-01,2025-05-14,10:00,11:00,70,69\n" + // another Ada
		"Bo Lund,,2025-05-14,10:00,11:00,70,69\n") // which Bo?
	_, d := read(t, data, nil, Options{Known: known})
	if len(d.Faults) != 1 || d.Faults[0].Code != FaultWho || d.Faults[0].Row != 5 {
		t.Fatalf("%+v", d.Faults)
	}
	if r := d.Rows; !r[0].Twin.Kept || r[0].Athlete.ID != "a1" || r[1].Twin.Any() || r[2].Twin.Row != 2 || r[3].Existing || r[3].Twin.Any() {
		t.Errorf("%+v", d.Rows)
	}
	if taken := d.Take(Choice{}); len(taken.Athletes) != 1 || len(taken.Tests) != 2 {
		t.Errorf("%d athletes, %d tests", len(taken.Athletes), len(taken.Tests))
	}
	if taken := d.Take(Choice{Another: map[int]bool{1: true, 3: true}, LeaveOut: map[int]bool{4: true}}); len(taken.Athletes) != 0 || len(taken.Tests) != 3 {
		t.Errorf("%d athletes, %d tests", len(taken.Athletes), len(taken.Tests))
	}
}

// TestListOfAthletes: athletes without tests; one that is known is left out, or
// imported as another person.
func TestListOfAthletes(t *testing.T) {
	known := Known{Athletes: []record.Athlete{{Meta: record.Meta{ID: "a1"}, Name: "Ada Moss", Born: "1999-01-01"}}}
	data := []byte("Surname;First name;Date of birth;Gender;Sport;Height (cm);Weight (kg)\nMoss;Ada;01.01.1999;f;Laufen;168;61\nPell;Una;3.4.2011;f;Rudern;160;50\nPell;Una;3.4.2011;f;Rudern;160;50\n")
	m, d := read(t, data, nil, Options{Known: known, Sports: map[string]string{"Laufen": "running"}})
	noFaults(t, m, d)
	if m.Kind != record.ImportAthletes || len(d.Rows) != 3 || !d.Rows[0].Twin.Kept || d.Rows[2].Twin.Row != 2 {
		t.Fatalf("%s %+v", m.Kind, d.Rows)
	}
	if a := d.Rows[0].Athlete; a.Sport != "running" || a.Height.Or(0) != 1.68 || a.UsualMass.Or(0) != 61 || a.ID == "a1" {
		t.Errorf("%+v", a)
	}
	if n := len(d.Take(Choice{}).Athletes); n != 1 {
		t.Errorf("%d athletes by default", n)
	}
	if n := len(d.Take(Choice{Another: map[int]bool{1: true, 3: true}}).Athletes); n != 3 {
		t.Errorf("%d athletes as others", n)
	}
}

// TestLaboratory: results find sheet and patch by name or bib, day and site.
func TestLaboratory(t *testing.T) {
	patch := func(id record.ID, site record.Site) record.Patch {
		return record.Patch{Meta: record.Meta{ID: id}, Site: site, AtLaboratory: true}
	}
	sheet := func(id, who record.ID, state record.TestState, patches ...record.Patch) record.Test {
		s := record.Test{Meta: record.Meta{ID: id}, AthleteID: who, State: state, Patches: patches}
		s.Session.Date = "2025-05-14"
		return s
	}
	known := Known{
		Athletes: []record.Athlete{{Meta: record.Meta{ID: "a1"}, Name: "Ada Moss"}, {Meta: record.Meta{ID: "a2"}, Name: "Una Pell"}, {Meta: record.Meta{ID: "a3"}, Name: "Cy Rook"}},
		Sheets: []record.Test{
			sheet("t1", "a1", record.TestWaiting, patch("p1", record.SiteForearmDorsal), patch("p2", record.SiteChest)),
			sheet("t2", "a2", record.TestOpen, patch("p3", record.SiteBack)),
			sheet("t3", "a3", record.TestClosed, patch("p4", record.SiteBack)),
		},
		Bibs: map[record.ID]string{"t2": "17"},
	}
	data := []byte("Sample ID;Collection date;Site;Na (mg/L);K (mmol/L)\n" +
		"MOSS_ADA-forearm;14.05.2025;;1100;4,2\n" +
		"Ada Moss;14.05.2025;chest;1200;\n" +
		"17;14.05.2025;;900;5\n" +
		"Cy Rook;14.05.2025;back;900;5\n" +
		"Ada Moss;15.05.2025;chest;900;5\n" +
		"Nobody Known;14.05.2025;chest;900;5\n" +
		"Una Pell;14.05.2025;calf;900;5\n" +
		"Ada Moss;14.05.2025;;900;5\n" +
		"Ada Moss;14.05.2025;chest;1000;\n")
	m, d := read(t, data, nil, Options{Known: known})
	if m.Kind != record.ImportLaboratory {
		t.Fatalf("%+v", m)
	}
	var codes []string
	for _, f := range d.Faults {
		codes = append(codes, string(f.Code))
	}
	if got := strings.Join(codes, " "); got != "closed nosheet nobody nopatch nosite twice" {
		t.Errorf("the faults are %s", got)
	}
	taken := d.Take(Choice{})
	if len(taken.Results) != 3 || len(taken.Athletes)+len(taken.Tests) != 0 {
		t.Fatalf("%+v", taken)
	}
	near(t, "sodium in mg/L", taken.Results[0].Sodium, 1100/22.990)
	near(t, "potassium", taken.Results[0].Potassium, 4.2)
	if r := taken.Results; r[0].Patch != "p1" || r[1].Patch != "p2" || r[2].Patch != "p3" || r[2].Sodium.Unit != quantity.MillimolePerLitre {
		t.Errorf("%+v", r)
	}
}

// TestTemplatesFitByHeadings: a template is known again by its headings in another
// order and with a column more, and not where one it uses is missing.
func TestTemplatesFitByHeadings(t *testing.T) {
	open := func(text string) Book {
		b, err := Open([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	m := Guess(open("Name,Date,Wert 1,Wert 2,Extra 1\nAnn,14/05/2025,70,69,x\n"), DayMonthYear)
	m = m.With(2, MassBefore).With(3, MassAfter)
	data, err := m.Marshal()
	if err != nil {
		t.Fatal(err)
	}
	if m, err = ReadMapping(data); err != nil {
		t.Fatal(err)
	}
	fitted, ok := m.Fit(open("Title\n\nDate,Wert 2,Name,Wert 1,Extra 1,New\n14/05/2025,69,Ann,70,x,y\n"))
	if !ok || fitted.Heading != 2 || fitted.Columns[3].Target != MassBefore || fitted.Columns[1].Target != MassAfter || fitted.Columns[5].Target != Unused {
		t.Errorf("%v %+v", ok, fitted)
	}
	if _, ok := m.Fit(open("Date,Wert 2,Name\n14/05/2025,69,Ann\n")); ok {
		t.Error("fits without a column it uses")
	}
	if _, ok := m.Fit(open("Date,Wert 2,Name,Wert 1,a,b,c\n14/05/2025,69,Ann,70,1,2,3\n")); ok {
		t.Error("fits a file with many new columns")
	}
}

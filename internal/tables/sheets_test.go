package tables

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
	"golang.org/x/text/encoding/charmap"
	xunicode "golang.org/x/text/encoding/unicode"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// today is the day of the tests of this package.
const today = record.Date("2026-11-28")

// read opens, guesses and builds, as the screen does.
func read(t testing.TB, data []byte, change func(*Mapping), o Options) (Mapping, Draft) {
	t.Helper()
	book, err := Open(data)
	if err != nil {
		t.Fatal(err)
	}
	m := Guess(book, DayMonthYear)
	if change != nil {
		change(&m)
	}
	if o.Today == "" {
		o.Today = today
	}
	d, err := Build(context.Background(), book, m, o)
	if err != nil {
		t.Fatal(err)
	}
	return m, d
}

// noFaults fails with every fault there is.
func noFaults(t testing.TB, m Mapping, d Draft) {
	t.Helper()
	for _, f := range d.Faults {
		heading := ""
		if f.Column >= 0 && f.Column < len(m.Columns) {
			heading = m.Columns[f.Column].Heading
		}
		t.Errorf("row %d, column %d (%s): %q %s %v", f.Row+1, f.Column+1, heading, f.Cell, f.Code, f.Problem)
	}
	if t.Failed() {
		t.Logf("%+v", m)
		t.FailNow()
	}
}

// book writes a workbook with one sheet; formats says which columns have which format.
func book(t testing.TB, formats map[string]string, rows ...[]any) []byte {
	t.Helper()
	f := excelize.NewFile()
	for i, row := range rows {
		if err := f.SetSheetRow("Sheet1", fmt.Sprintf("A%d", i+1), &row); err != nil {
			t.Fatal(err)
		}
	}
	for column, format := range formats {
		style, err := f.NewStyle(&excelize.Style{CustomNumFmt: &format})
		if err != nil {
			t.Fatal(err)
		}
		if err := f.SetCellStyle("Sheet1", column+"2", fmt.Sprintf("%s%d", column, len(rows)), style); err != nil {
			t.Fatal(err)
		}
	}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// want is what the first row of a spreadsheet is to become.
type want struct {
	name                           string
	born                           record.Date
	sex                            record.Sex
	day                            record.Date
	start, end                     record.Clock
	before, after                  float64 // kg
	drunk                          float64 // mL
	urine, food                    float64 // g
	temperature, humidity, gravity float64
	sodium                         float64
	site                           record.Site
	kind                           record.ImportKind
	rows                           int
}

// near fails unless two numbers agree to a thousandth; 0 is none.
func near(t testing.TB, what string, got record.Number, want float64) {
	t.Helper()
	if got.Known() != (want != 0) || math.Abs(got.Or(0)-want) > 1e-3*math.Max(1, want) {
		t.Errorf("%s is %v, want %v", what, got.Or(0), want)
	}
}

// latin writes a text in Windows-1252.
func latin(t testing.TB, text string) []byte {
	t.Helper()
	data, err := charmap.Windows1252.NewEncoder().String(text)
	if err != nil {
		t.Fatal(err)
	}
	return []byte(data)
}

// utf16 writes a text in UTF-16 with a mark.
func utf16(t testing.TB, text string) []byte {
	t.Helper()
	data, err := xunicode.UTF16(xunicode.LittleEndian, xunicode.UseBOM).NewEncoder().String(text)
	if err != nil {
		t.Fatal(err)
	}
	return []byte(data)
}

// spreadsheets are files as practices keep them: other heads, units, languages,
// orders of dates, encodings. The athletes and the values are invented.
func spreadsheets(t testing.TB) map[string]struct {
	data []byte
	want want
} {
	t.Helper()
	return map[string]struct {
		data []byte
		want want
	}{
		"english, comma": {[]byte("Name,DOB,Sex,Sport,Date,Start,End,Pre BM (kg),Post BM (kg),Fluid intake (mL),Urine (mL),Temp (°C),RH (%),USG,Na forearm (mmol/L),RPE,Sweat rate (L/h),Comments\n" +
			"Ada Fennwick,14/03/1999,F,Running,21/06/2025,09:30,11:00,61.40,60.25,650,120,24.5,58,1.018,47,6,1.12,windy\n" +
			"Borin Haskel,2/11/1987,M,Cycling,22/06/2025,10:00,12:00,78.2,76.9,900,0,26,50,1.021,61,7,1.1,\n"),
			want{"Ada Fennwick", "1999-03-14", record.Female, "2025-06-21", "09:30", "11:00", 61.4, 60.25, 650, 120, 0, 24.5, 58, 1.018, 47, record.SiteForearmDorsal, record.ImportTests, 2}},
		"american, pounds": {[]byte("Player,Birthdate,M/F,Session Date,Start Time,Duration (min),Weight In (lbs),Weight Out (lbs),Fluid (oz),Temp F,Humidity\n" +
			"\"Moss, Ivo\",3/14/2001,M,8/21/2024,5:05 PM,95,172.4,169.8,33.8,88,61\n"),
			want{"Ivo Moss", "2001-03-14", record.Male, "2024-08-21", "17:05", "18:40", 78.1993, 77.0200, 999.586, 0, 0, 31.1111, 61, 0, 0, "", record.ImportTests, 1}},
		"german, semicolon, Windows-1252": {latin(t, "Name;Vorname;Geburtsdatum;Geschlecht;Datum;Beginn;Dauer (min);Gewicht vorher (kg);Gewicht nachher (kg);Trinkmenge (ml);Urinmenge (ml);Lufttemperatur (°C);Luftfeuchte (%);Spez. Gewicht;Natrium Unterarm (mmol/l);Schweißrate (l/h)\r\n"+
			"Grünwaß;Jörn;05.09.1995;m;03.05.2025;18:15;75;82,35;81,10;1.250;0;17,5;62;1,012;38,5;1,4\r\n"),
			want{"Jörn Grünwaß", "1995-09-05", record.Male, "2025-05-03", "18:15", "19:30", 82.35, 81.10, 1250, 0, 0, 17.5, 62, 1.012, 38.5, record.SiteForearmDorsal, record.ImportTests, 1}},
		"spanish, litres, tab, UTF-16": {utf16(t, "Nombre y apellidos\tFecha de nacimiento\tSexo\tFecha\tHora de inicio\tHora de fin\tPeso antes (kg)\tPeso después (kg)\tIngesta de líquido (L)\tTemperatura ambiente (ºC)\tHumedad relativa (%)\tDensidad urinaria\tSodio en sudor antebrazo (mmol/L)\n"+
			"Telma Orzuna\t9/1/2003\tmujer\t30/09/2025\t19:00\t20:30\t57,2\t56,1\t0,75\t28\t70\t1,024\t52\n"),
			want{"Telma Orzuna", "2003-01-09", record.Female, "2025-09-30", "19:00", "20:30", 57.2, 56.1, 750, 0, 0, 28, 70, 1.024, 52, record.SiteForearmDorsal, record.ImportTests, 1}},
		"french, mark and semicolon": {[]byte("\ufeffNom;Prénom;Date de naissance;Sexe;Date du test;Heure de début;Durée;Poids avant (kg);Poids après (kg);Boissons bues (mL);Aliments (g);Température (°C);Humidité (%);Densité urinaire\n" +
			"Vautrel;Maëlle;17/12/1998;F;12/07/2025;08h30;1h15;54,8;54,0;400;60;22;55;1,015\n"),
			want{"Maëlle Vautrel", "1998-12-17", record.Female, "2025-07-12", "08:30", "09:45", 54.8, 54.0, 400, 0, 60, 22, 55, 1.015, 0, "", record.ImportTests, 1}},
		"workbook with real dates and times": {book(t, map[string]string{"B": "dd/mm/yyyy", "D": "d/m/yy", "E": "hh:mm", "F": "hh:mm", "K": "0%"},
			[]any{"Athlete", "Date of birth", "Sex", "Test date", "Start time", "Finish time", "Body mass pre", "Body mass post", "Fluid consumed (ml)", "Ambient temp", "Humidity", "Sweat [Na+] (mmol/L) chest", "Notes"},
			[]any{"Nessa Quillory", 36965.0, "female", 45823.0, 0.4375, 0.5, 66.45, 65.9, 500, 19, 0.45, 33, "=SUM(A1:A9)"}),
			want{"Nessa Quillory", "2001-03-15", record.Female, "2025-06-15", "10:30", "12:00", 66.45, 65.9, 500, 0, 0, 19, 45, 0, 33, record.SiteChest, record.ImportTests, 1}},
		"workbook with a title above and units below": {book(t, nil,
			[]any{"Squad sweat testing 2024 - confidential"},
			[]any{},
			[]any{"Full name", "DOB", "Date", "Start", "Duration", "Mass before", "Mass after", "Fluid intake", "Urine", "Air temp"},
			[]any{"", "", "", "", "min", "kg", "kg", "L", "mL", "°C"},
			[]any{"Rhun Ostrava", "1990-02-02", "2024-04-05", "07:45", 60, 71.5, 70.6, 0.5, 150, 12}),
			want{"Rhun Ostrava", "1990-02-02", "", "2024-04-05", "07:45", "08:45", 71.5, 70.6, 500, 150, 0, 12, 0, 0, 0, "", record.ImportTests, 1}},
		"no units, capitals run together, gravity without its point": {[]byte("Surname,FirstName,DOB,TestDate,StartTime,DurationMin,PreWeight,PostWeight,FluidIn,UrineOut,USG\n" +
			"Okello,Bram,1993-07-30,2025-02-10,06:30,80,69.9,68.8,0.6,0.2,1022\n" +
			"Okello,Sten,1996-01-12,2025-02-10,06:30,80,74.1,73.2,0.8,0.1,1009\n"),
			want{"Bram Okello", "1993-07-30", "", "2025-02-10", "06:30", "07:50", 69.9, 68.8, 600, 200, 0, 0, 0, 1.022, 0, "", record.ImportTests, 2}},
		"sep line, months in words, ppm": {[]byte("sep=;\nAthlete;Date;Time on;Time off;Weight before [kg];Weight after [kg];Drink [ml];Sweat Na [ppm] forearm\n" +
			"Una Pell;4 May 2025;14:00;16:10;58.3;57.1;700;1100\n"),
			want{"Una Pell", "", "", "2025-05-04", "14:00", "16:10", 58.3, 57.1, 700, 0, 0, 0, 0, 0, 1100 / 22.990, record.SiteForearmDorsal, record.ImportTests, 1}},
		"bottles weighed, two drinks": {[]byte("Name,DOB,Date,Start,End,BM 1 (kg),BM 2 (kg),Bottle before (g),Bottle after (g),Gel mass (g),Urine loss (g)\n" +
			"Cato Vries,1989-10-10,2025-08-01,10:00,11:30,80.0,79.1,812,205,33,0\n"),
			want{"Cato Vries", "1989-10-10", "", "2025-08-01", "10:00", "11:30", 80, 79.1, 607, 0, 33, 0, 0, 0, 0, "", record.ImportTests, 1}},
	}
}

// TestSpreadsheetsOfPractices reads ten files as practices keep them, with nothing
// but what was guessed.
func TestSpreadsheetsOfPractices(t *testing.T) {
	for name, c := range spreadsheets(t) {
		t.Run(name, func(t *testing.T) {
			m, d := read(t, c.data, nil, Options{})
			noFaults(t, m, d)
			if m.Kind != c.want.kind || len(d.Rows) != c.want.rows {
				t.Fatalf("%s with %d rows, want %s with %d\n%+v", m.Kind, len(d.Rows), c.want.kind, c.want.rows, m)
			}
			wantRow(t, d.Rows[0], c.want)
			if t.Failed() {
				for i, column := range m.Columns {
					t.Logf("%s %q: %s %s %s", Letters(i), column.Heading, column.Target, column.Unit, column.Site)
				}
			}
		})
	}
}

// wantRow compares a row with what it is to become.
func wantRow(t *testing.T, r RowDraft, w want) {
	t.Helper()
	a, s := r.Athlete, *r.Test
	if a.Name != w.name || a.Born != w.born || a.Sex != w.sex {
		t.Errorf("the athlete is %q, %s, %s", a.Name, a.Born, a.Sex)
	}
	if s.Session.Date != w.day || s.Session.Start != w.start || s.Session.End != w.end {
		t.Errorf("the session is on %s from %s to %s", s.Session.Date, s.Session.Start, s.Session.End)
	}
	var before, after, sodium, food, drunk record.Number
	for _, x := range s.Weighings {
		if x.Moment == record.Before {
			before = x.Mass
		} else {
			after = x.Mass
		}
	}
	for _, b := range s.Bottles {
		drunk = record.Num(drunk.Or(0)+b.Volume.Or(0)+b.Before.Or(0)-b.After.Or(0), quantity.Millilitre)
	}
	for _, p := range s.Patches {
		sodium = p.Sodium
		if p.Site != w.site {
			t.Errorf("the patch is at %s", p.Site)
		}
	}
	for _, f := range s.Foods {
		food = f.Mass
	}
	near(t, "mass before", before, w.before)
	near(t, "mass after", after, w.after)
	near(t, "drunk", drunk, w.drunk)
	near(t, "urine", s.Loss.Urine, w.urine)
	near(t, "food", food, w.food)
	near(t, "temperature", s.Air.Temperature, w.temperature)
	near(t, "humidity", s.Air.Humidity, w.humidity)
	near(t, "gravity", s.Urine.Gravity, w.gravity)
	near(t, "sodium", sodium, w.sodium)
	if strings.Contains(s.Note, "SUM") && s.Note != "=SUM(A1:A9)" {
		t.Errorf("the note is %q", s.Note)
	}
}

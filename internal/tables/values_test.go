package tables

import (
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

func TestDays(t *testing.T) {
	for _, c := range []struct {
		text  string
		order Order
		day   record.Date
		clock record.Clock
	}{
		{"2025-05-14", MonthDayYear, "2025-05-14", ""}, {"14/05/2025", DayMonthYear, "2025-05-14", ""}, {"5/14/25", MonthDayYear, "2025-05-14", ""},
		{"14.5.25", DayMonthYear, "2025-05-14", ""}, {"25/05/14", YearMonthDay, "2025-05-14", ""}, {"14 May 2025", MonthDayYear, "2025-05-14", ""},
		{"May 14, 2025", DayMonthYear, "2025-05-14", ""}, {"14-Mai-25", MonthDayYear, "2025-05-14", ""}, {"1. März 2025", DayMonthYear, "2025-03-01", ""},
		{"3 de enero de 2025", DayMonthYear, "2025-01-03", ""}, {"1er août 2025", DayMonthYear, "2025-08-01", ""}, {"2nd May 2025", DayMonthYear, "2025-05-02", ""}, {"12 août 2025", DayMonthYear, "2025-08-12", ""},
		{"14/05/2025 17:05", DayMonthYear, "2025-05-14", "17:05"}, {"2025-05-14T09:30:00Z", DayMonthYear, "2025-05-14", "09:30"},
		{"31/02/2025", DayMonthYear, "", ""}, {"5/14/2025", DayMonthYear, "", ""}, {"yesterday", DayMonthYear, "", ""}, {"2025", DayMonthYear, "", ""},
		{"14/05", DayMonthYear, "", ""}, {"0/0/2025", DayMonthYear, "", ""}, {"14/05/1025", DayMonthYear, "", ""},
	} {
		day, clock, err := parseDay(c.text, c.order, today, false)
		if day != c.day || clock != c.clock || (err != nil) != (c.day == "") {
			t.Errorf("%q as %s is %q %q, %v", c.text, c.order, day, clock, err)
		}
	}
	if day, _, _ := parseDay("1/2/98", DayMonthYear, today, true); day != "1998-02-01" {
		t.Errorf("a birth date of two digits is %s", day)
	}
	if day, _, _ := parseDay("1/2/27", DayMonthYear, today, true); day != "1927-02-01" {
		t.Errorf("a birth date to come is %s", day)
	}
}

func TestClocksAndDurations(t *testing.T) {
	for text, want := range map[string]record.Clock{
		"17:05": "17:05", "9:30": "09:30", "5:05 pm": "17:05", "12:10 a.m.": "00:10", "12 pm": "12:00", "17h05": "17:05", "17 h": "17:00", "17.05 Uhr": "17:05",
		"1705": "17:05", "17:05:30": "17:05", "7 am": "07:00", "25:00": "", "17:5": "", "noon": "", "90": "", "13 pm": "", "17:60": "", "-1:00": "",
	} {
		if got, ok := parseClock(text); got != want || ok != (want != "") {
			t.Errorf("%q is %q, %v", text, got, ok)
		}
	}
	for text, want := range map[string]float64{
		"90": 90, "1:30": 90, "1:30:00": 90, "1h30": 90, "1 h 30 min": 90, "1.5 h": 90, "95 min": 95, "90:00": 90, "75'": 75, "long": -1, "1:75": -1,
	} {
		got, err := parseMinutes(Cell{Text: text}, false, quantity.Minute)
		if err == nil && got != want || (err != nil) != (want < 0) {
			t.Errorf("%q is %v, %v", text, got, err)
		}
	}
	if got, _ := parseMinutes(Cell{Text: "1,25"}, true, quantity.Hour); got != 75 {
		t.Errorf("1,25 in hours is %v min", got)
	}
}

func TestNumbersOfFiles(t *testing.T) {
	for _, c := range []struct {
		text      string
		comma     bool
		want      float64
		ambiguous bool
	}{
		{"72.4", false, 72.4, false}, {"72,4", true, 72.4, false}, {"72,4", false, 72.4, false}, {"72.4", true, 72.4, false},
		{"1,250", false, 1250, true}, {"1.250", true, 1250, true}, {"1,250.5", false, 1250.5, false}, {"1.250,5", true, 1250.5, false},
		{"0,750", false, 0.75, false}, {"72.4 kg", false, 72.4, false}, {"1 250", false, 1250, false},
	} {
		got, err := parseNumber(Cell{Text: c.text}, c.comma, quantity.Kilogram)
		if err != nil || got.value != c.want || got.ambiguous != c.ambiguous {
			t.Errorf("%q (comma %v) is %+v, %v", c.text, c.comma, got, err)
		}
	}
}

// TestWrittenNumbersAreRead: a mass written in any of the ways a file may write it is
// read as the mass it was.
func TestWrittenNumbersAreRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tenths := rapid.IntRange(300, 2000).Draw(t, "tenths of a kilogram")
		sign := rapid.SampledFrom([]string{".", ","}).Draw(t, "sign")
		unit := rapid.SampledFrom([]string{"", " kg", "kg"}).Draw(t, "unit")
		text := plainNumber(float64(tenths/10)) + sign + plainNumber(float64(tenths%10)) + unit
		n, err := parseNumber(Cell{Text: text}, sign == ",", quantity.Kilogram)
		if err != nil || n.value != float64(tenths)/10 || n.ambiguous {
			t.Fatalf("%q is %+v, %v", text, n, err)
		}
	})
}

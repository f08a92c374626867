package field_test

import (
	"errors"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ebbwell/app/kit/field"
	"ebbwell/internal/record"
)

func dayReader(side field.Side) field.DayReader {
	return field.DayReader{Today: today(), TodayKey: "t", YesterdayKey: "y", Side: side, Months: []string{"January", "February",
		"March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}}
}

func TestReadDay(t *testing.T) {
	for _, c := range []struct {
		text string
		side field.Side
		want record.Date
	}{
		{"", field.Nearest, ""}, {"  ", field.Nearest, ""},
		{"14.5.2026", field.Nearest, "2026-05-14"}, {"14/5/2026", field.Nearest, "2026-05-14"}, {"14-05-2026", field.Nearest, "2026-05-14"},
		{"2026-05-14", field.Nearest, "2026-05-14"}, {"2026/5/14", field.Nearest, "2026-05-14"}, {"14.5.26", field.Nearest, "2026-05-14"},
		{"14052026", field.Nearest, "2026-05-14"}, {"20260514", field.Nearest, "2026-05-14"}, {"140526", field.Nearest, "2026-05-14"},
		{"14 May 2026", field.Nearest, "2026-05-14"}, {"14 may", field.Nearest, "2027-05-14"}, {"14may", field.Past, "2026-05-14"},
		{"May 14, 2026", field.Nearest, "2026-05-14"}, {"14 Sept", field.Nearest, "2026-09-14"}, {"1 Dec", field.Past, "2025-12-01"},
		{"24.11.", field.Coming, "2027-11-24"}, {"25.11", field.Past, "2026-11-25"}, {"25.11", field.Coming, "2026-11-25"},
		{"t", field.Nearest, "2026-11-25"}, {"Y", field.Nearest, "2026-11-24"},
		{"29.2.2024", field.Nearest, "2024-02-29"}, {"29.2.", field.Past, "2024-02-29"}, {"29 Feb", field.Coming, "2028-02-29"},
		{"3.4.98", field.Past, "1998-04-03"}, {"3.4.30", field.Past, "1930-04-03"}, {"3.4.30", field.Nearest, "2030-04-03"},
	} {
		got, err := dayReader(c.side).Read(c.text)
		if err != nil || got != c.want {
			t.Errorf("%q: %q, %v; want %q", c.text, got, err, c.want)
		}
	}
}

func TestReadDayRefuses(t *testing.T) {
	for _, text := range []string{"31.2.2026", "29.2.2025", "0.5.2026", "14.13.2026", "14", "May", "14 Ma", "14.5.20260", "14.5.226",
		"1.1.1899", "1.1.2200", "x", "14.5.2026.1", "14_5_2026", "99999999", "-1.5.2026x", "14 May 2026 June", "½.5.2026", "000000", "14.5.0000", "14050000", "2026-05-00"} {
		if got, err := dayReader(field.Nearest).Read(text); !errors.Is(err, field.ErrNotDay) {
			t.Errorf("%q was read as %q, %v", text, got, err)
		}
	}
}

// A day written in any of the forms is read back as itself.
func TestReadDayRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		day := time.Date(1900, 1, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, rapid.IntRange(0, 109000).Draw(t, "days"))
		if day.Year() > 2199 {
			t.Skip("beyond the years that are read")
		}
		form := rapid.SampledFrom([]string{"2.1.2006", "2006-01-02", "2 January 2006", "02/01/2006", "2 Jan 2006", "January 2, 2006", "20060102"}).Draw(t, "form")
		got, err := dayReader(field.Nearest).Read(day.Format(form))
		if err != nil || got != record.DateOf(day) {
			t.Fatalf("%q: %q, %v", day.Format(form), got, err)
		}
	})
}

func FuzzReadDay(f *testing.F) {
	for _, s := range []string{"14.5.2026", "2026-05-14", "14 May", "t", "29.2.", "140526", "ſ", "١٤.٥.٢٠٢٦"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, side := range []field.Side{field.Nearest, field.Past, field.Coming} {
			got, err := dayReader(side).Read(text)
			if err != nil && got != "" {
				t.Fatalf("%q: %q beside an error", text, got)
			}
			if _, ok := got.Time(); got != "" && !ok {
				t.Fatalf("%q: %q is no day", text, got)
			}
		}
	})
}

func TestReadClock(t *testing.T) {
	for text, want := range map[string]record.Clock{
		"": "", "9:05": "09:05", "9.05": "09:05", "9,05": "09:05", "905": "09:05", "0905": "09:05", "9": "09:00", "21": "21:00", "9h05": "09:05",
		"2105": "21:05", "00:00": "00:00", "0": "00:00", "23:59": "23:59", "9:05 pm": "21:05", "9:05PM": "21:05", "12 am": "00:00", "12:30 pm": "12:30", "9:5": "09:05", "9 05": "09:05",
	} {
		if got, err := field.ReadClock(text); err != nil || got != want {
			t.Errorf("%q: %q, %v; want %q", text, got, err, want)
		}
	}
	for _, text := range []string{"24:00", "9:60", "x", "12345", "13 pm", "0 am", "9:05:10", "-9", "+9", "pm", ":", "9:055"} {
		if got, err := field.ReadClock(text); err == nil {
			t.Errorf("%q was read as %q", text, got)
		}
	}
}

func FuzzReadClock(f *testing.F) {
	for _, s := range []string{"9:05", "905", "9.05 pm", "2400", "٩:٠٥"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got, err := field.ReadClock(text)
		if err != nil && got != "" {
			t.Fatalf("%q: %q beside an error", text, got)
		}
		if got == "" {
			return
		}
		if again, err := field.ReadClock(string(got)); err != nil || again != got {
			t.Fatalf("%q: %q is not read back", text, got)
		}
	})
}

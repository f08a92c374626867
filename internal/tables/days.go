package tables

import (
	"errors"
	"strconv"
	"strings"
	"time"

	"ebbwell/internal/record"
)

// errDay means: a text is no day.
var errDay = errors.New("not a day")

// parseDay reads a day, and the time of day behind it where one stands there. born:
// a day in the past, so that a year of two digits is not one to come.
func parseDay(text string, order Order, today record.Date, born bool) (day record.Date, clock record.Clock, err error) {
	text = strings.TrimSpace(text)
	if i := strings.IndexAny(text, " T"); i > 0 && strings.Contains(text[i:], ":") {
		if c, ok := parseClock(strings.TrimRight(text[i+1:], "Z")); ok {
			clock = c
		}
		text = text[:i]
	}
	numbers, month, at, ok := dayParts(text)
	if !ok {
		return "", "", errDay
	}
	y, mo, d, ok := ordered(numbers, month, at, order)
	if !ok {
		return "", "", errDay
	}
	y = fullYear(y, today, born)
	t := time.Date(y, time.Month(mo), d, 0, 0, 0, 0, time.UTC)
	if t.Year() != y || int(t.Month()) != mo || t.Day() != d || y < 1900 || y > 2200 {
		return "", "", errDay
	}
	return record.DateOf(t), clock, nil
}

// dayParts cuts a day into its numbers and the month named, which stands before the
// number at.
func dayParts(text string) (numbers []int, month, at int, ok bool) {
	for _, p := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" .-/,\u00a0", r) }) {
		for _, end := range []string{"th", "st", "nd", "rd", "er", "º"} {
			if rest, ok := strings.CutSuffix(p, end); ok && strings.Trim(rest, "0123456789") == "" {
				p = rest
			}
		}
		if n, err := strconv.Atoi(p); err == nil && len(p) <= 4 && n >= 0 {
			numbers = append(numbers, n)
			continue
		}
		if n := monthNamed(p); n > 0 && month == 0 {
			month, at = n, len(numbers)
		} else if p != "de" && p != "of" {
			return nil, 0, 0, false
		}
	}
	return numbers, month, at, true
}

// ordered tells year, month and day apart.
func ordered(n []int, month, at int, order Order) (y, mo, d int, ok bool) {
	if month > 0 {
		switch {
		case len(n) != 2, at == 2: // the month last is nothing anyone writes
			return 0, 0, 0, false
		case n[0] > 31:
			return n[0], month, n[1], true
		}
		return n[1], month, n[0], true
	}
	switch {
	case len(n) != 3:
		return 0, 0, 0, false
	case n[0] > 31 || order == YearMonthDay:
		return n[0], n[1], n[2], true
	case order == MonthDayYear:
		return n[2], n[0], n[1], true
	}
	return n[2], n[1], n[0], true
}

// fullYear makes four digits of two: of this century unless that is to come.
func fullYear(y int, today record.Date, born bool) int {
	if y >= 100 {
		return y
	}
	year := 2000
	if t, ok := today.Time(); ok {
		year = t.Year()
	}
	full := year/100*100 + y
	if full > year && (born || full > year+1) {
		full -= 100
	}
	return full
}

// monthNamed is the number of a month by its name in one of four languages, or its
// first letters; 0 for none.
func monthNamed(word string) int {
	word = worded(word)
	if len(word) < 3 {
		return 0
	}
	names := [12]string{
		"january januar janner enero janvier", "february februar febrero fevrier feb", "march marz maerz marzo mars mrz", "april abril avril",
		"may mai mayo", "june juni junio juin", "july juli julio juillet", "august agosto aout ago", "september septiembre septembre sept set",
		"october oktober octubre octobre", "november noviembre novembre", "december dezember diciembre decembre",
	}
	for i, list := range names {
		for _, name := range strings.Fields(list) {
			if word == name || len(word) >= 3 && len(word) <= 4 && strings.HasPrefix(name, word) && (len(word) > 3 || name[:3] == word) {
				return i + 1
			}
		}
	}
	return 0
}

// orderOf finds out the order of day and month from days that can only be read one
// way; ok is false where none can, or where two contradict each other.
func orderOf(s Sheet, m Mapping) (Order, bool) {
	var dayFirst, monthFirst bool
	for _, t := range []Target{Date, Born} {
		i := m.first(t)
		if i < 0 {
			continue
		}
		for _, row := range m.Rows(s) {
			text, _, _ := strings.Cut(s.At(row, i).Text, " ")
			parts := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(".-/", r) })
			if len(parts) != 3 || len(parts[0]) > 2 {
				continue
			}
			a, err1 := strconv.Atoi(parts[0])
			b, err2 := strconv.Atoi(parts[1])
			if err1 != nil || err2 != nil {
				continue
			}
			dayFirst = dayFirst || a > 12 && a <= 31 && b <= 12 || strings.Contains(text, ".")
			monthFirst = monthFirst || b > 12 && b <= 31 && a <= 12
		}
	}
	switch {
	case dayFirst && !monthFirst:
		return DayMonthYear, true
	case monthFirst && !dayFirst:
		return MonthDayYear, true
	}
	return "", false
}

// parseClock reads a time of day: "17:05", "5.05 pm", "17h05", "1705", "17 Uhr".
func parseClock(text string) (record.Clock, bool) {
	low := strings.ToLower(strings.TrimSpace(text))
	low, half := halfOfDay(low)
	bare := low
	for _, end := range []string{"uhr", "hrs", "hr", "h"} {
		low = strings.TrimSpace(strings.TrimSuffix(low, end))
	}
	parts := strings.FieldsFunc(low, func(r rune) bool { return strings.ContainsRune(":.hu", r) })
	if len(parts) == 1 && len(low) == 4 && strings.Trim(low, "0123456789") == "" {
		parts = []string{low[:2], low[2:]}
	}
	if len(parts) == 0 || len(parts) > 3 || len(parts) == 1 && half == "" && low == bare {
		return "", false
	}
	hour, err1 := strconv.Atoi(strings.TrimSpace(parts[0]))
	minute, err2 := 0, error(nil)
	if len(parts) > 1 {
		if len(parts[1]) != 2 {
			return "", false
		}
		minute, err2 = strconv.Atoi(parts[1])
	}
	if err1 != nil || err2 != nil {
		return "", false
	}
	return clockOf(hour, minute, half)
}

// halfOfDay takes "am" or "pm" off a time of day; half is the letter it begins with.
func halfOfDay(low string) (rest, half string) {
	for _, end := range []string{"pm", "p.m.", "p. m.", "p.m", "am", "a.m.", "a. m.", "a.m"} {
		if rest, ok := strings.CutSuffix(low, end); ok {
			return strings.TrimSpace(rest), end[:1]
		}
	}
	return low, ""
}

// clockOf is a time of day by its hour, of the half of the day where one is named.
func clockOf(hour, minute int, half string) (record.Clock, bool) {
	if half != "" && (hour < 1 || hour > 12) {
		return "", false
	}
	switch {
	case half == "p" && hour < 12:
		hour += 12
	case half == "a" && hour == 12:
		hour = 0
	}
	if hour < 0 || hour > 23 || minute < 0 || minute > 59 {
		return "", false
	}
	return record.ClockAt(float64(hour*60 + minute)), true
}

// day reads a day, and the time of day behind it; said: something stands in the cell.
func (w *builder) day(t Target) (day record.Date, clock record.Clock, said bool) {
	text, column := w.text(t)
	if text == "" {
		return "", "", false
	}
	day, clock, err := parseDay(text, w.m.Order, w.o.Today, t == Born)
	switch {
	case err != nil:
		w.cellFault(column, FaultDay)
		return "", "", true
	case w.o.Today != "" && day > w.o.Today:
		w.cellFault(column, FaultFuture)
		return "", "", true
	}
	return day, clock, true
}

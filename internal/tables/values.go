package tables

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Nothing reports whether a cell says that there is nothing.
func nothing(text string) bool {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "", "-", "–", "—", ".", "n/a", "na", "n.a.", "nd", "n.d.", "k.a.", "k. a.", "s/d", "s.d.", "nc", "null", "nan", "none", "?", "x", "/":
		return true
	}
	return false
}

// calculationFailed reports whether a spreadsheet says that it could not work a cell
// out.
func calculationFailed(text string) bool {
	return strings.HasPrefix(text, "#") && (strings.HasSuffix(text, "!") || strings.HasSuffix(text, "?") || text == "#N/A" || text == "#NV" || text == "#N/D")
}

// number reads a cell as a number without a unit, as guesses need it.
func (m Mapping) number(c Cell) (float64, bool) {
	if nothing(c.Text) {
		return 0, false
	}
	n, err := parseNumber(c, m.DecimalComma, "")
	return n.value, err == nil
}

// numeral is a number as it was read.
type numeral struct {
	value float64
	// unit stands behind it; empty for none.
	unit quantity.Unit
	// other is what it would be if its only sign were read the other way: "1,250" may
	// be 1250 or 1.25.
	other     float64
	ambiguous bool
}

// parseNumber reads a number; expected is the unit of the column.
func parseNumber(c Cell, comma bool, expected quantity.Unit) (numeral, error) {
	text := strings.TrimPrefix(strings.TrimSpace(c.Text), "~")
	if c.Number {
		typed, err := quantity.Parse(text, expected)
		if err != nil && strings.HasSuffix(text, "%") {
			typed, err = quantity.Parse(text, quantity.PerCent)
		}
		return numeral{value: typed.Value, unit: typed.Unit}, wrap(err)
	}
	digits := strings.TrimRightFunc(text, func(r rune) bool { return !unicode.IsDigit(r) })
	grouping, point := ",", "."
	if comma {
		grouping, point = point, grouping
	}
	n := numeral{}
	if grouped(digits, grouping) {
		rest := text[len(digits):]
		whole := strings.ReplaceAll(digits, grouping, "")
		typed, err := quantity.Parse(strings.Replace(whole, point, ".", 1)+rest, expected)
		if err != nil {
			return numeral{}, wrap(err)
		}
		n = numeral{value: typed.Value, unit: typed.Unit}
		if strings.Count(digits, grouping) == 1 && !strings.Contains(digits, point) {
			if other, err := quantity.Parse(text, expected); err == nil {
				n.other, n.ambiguous = other.Value, true
			}
		}
		return n, nil
	}
	typed, err := quantity.Parse(text, expected)
	if err != nil {
		return numeral{}, wrap(err)
	}
	return numeral{value: typed.Value, unit: typed.Unit}, nil
}

// wrap keeps the error of a number.
func wrap(err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("read a number: %w", err)
}

// grouped reports whether a sign groups the thousands of a number.
func grouped(digits, sign string) bool {
	whole := strings.TrimLeft(digits, "-+− ")
	if i := strings.IndexAny(whole, ".,"); i < 0 {
		return false
	}
	parts := strings.Split(whole, sign)
	if len(parts) < 2 || len(parts[0]) < 1 || len(parts[0]) > 3 || strings.HasPrefix(parts[0], "0") {
		return false
	}
	for i, p := range parts[1:] {
		if i == len(parts)-2 {
			p, _, _ = strings.Cut(strings.ReplaceAll(p, ",", "."), ".")
		}
		if len(p) != 3 || strings.Trim(p, "0123456789") != "" {
			return false
		}
	}
	return strings.Trim(parts[0], "0123456789") == ""
}

// commas finds out whether a comma is the decimal sign: by the numbers that can only
// be read one way, else by the separator.
func commas(s Sheet, m Mapping, separator rune) bool {
	votes := 0
	for _, row := range m.Rows(s) {
		for i, c := range s.Rows[row] {
			if c.Number || i >= len(m.Columns) {
				continue
			}
			of, ok := meaningOf(m.Columns[i].Target)
			if !ok || of.sort != SortNumber && of.sort != SortMinutes {
				continue
			}
			whole := strings.TrimRightFunc(c.Text, func(r rune) bool { return !unicode.IsDigit(r) })
			switch comma, point := strings.Count(whole, ","), strings.Count(whole, "."); {
			case comma == 1 && point == 0 && !grouped(whole, ","):
				votes++
			case point == 1 && comma == 0 && !grouped(whole, "."):
				votes--
			}
		}
	}
	return votes > 0 || votes == 0 && separator == ';'
}

// toUnit turns a number in a chosen unit into the one a target is kept in. Of what
// is drunk and passed a gram is a millilitre (common practice, no source); sodium and
// potassium by their molar mass.
func toUnit(x float64, from quantity.Unit, of meaning) (float64, error) {
	const g, ml = quantity.Gram, quantity.Millilitre
	switch {
	case from == "" || from == of.unit:
		return x, nil
	case from == quantity.MilligramPerLitre && of.unit == quantity.MillimolePerLitre:
		if of.target == Potassium {
			return x / evidence.PotassiumMolarMass, nil
		}
		return x / evidence.SodiumMolarMass, nil
	case of.unit == g && quantity.SameKind(from, ml):
		of.unit = ml
	case of.unit == ml && quantity.SameKind(from, g):
		of.unit = g
	}
	y, err := quantity.Convert(x, from, of.unit)
	if err != nil {
		return 0, fmt.Errorf("convert a value: %w", err)
	}
	return y, nil
}

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
	word = plain(word)
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

// parseMinutes reads a duration: "90", "1:30", "1:30:00", "1 h 30", "1h30min", "95 min",
// in minutes. A number without a unit is in the unit of the column.
func parseMinutes(c Cell, comma bool, unit quantity.Unit) (float64, error) {
	text := strings.ToLower(strings.TrimSpace(c.Text))
	if parts := strings.Split(text, ":"); len(parts) == 2 || len(parts) == 3 {
		return minutesOf(parts)
	}
	if before, after, ok := strings.Cut(text, "h"); ok && strings.ContainsAny(after, "0123456789") {
		after = strings.TrimFunc(after, func(r rune) bool { return !unicode.IsDigit(r) })
		return minutesOf([]string{strings.TrimSpace(before), after})
	}
	for from, to := range map[string]string{"minutes": "min", "minuten": "min", "minutos": "min", "mins": "min", "'": "min", "hours": "h", "hrs": "h", "hr": "h", "std": "h"} {
		if rest, ok := strings.CutSuffix(text, from); ok {
			text = rest + to
			break
		}
	}
	if unit == "" {
		unit = quantity.Minute
	}
	n, err := parseNumber(Cell{Text: text, Number: c.Number}, comma, unit)
	if err != nil {
		return 0, err
	}
	minutes, err := quantity.Convert(n.value, unit, quantity.Minute)
	if err != nil {
		return 0, fmt.Errorf("convert a duration: %w", err)
	}
	return minutes, nil
}

// minutesOf makes minutes of hours, minutes and seconds; where the hours are more
// than a day has, two parts are minutes and seconds.
func minutesOf(parts []string) (float64, error) {
	var x [3]float64
	for i, p := range parts {
		n, err := strconv.Atoi(strings.TrimSpace(p))
		if err != nil || n < 0 || i > 0 && n > 59 {
			return 0, wrap(quantity.ErrNotNumber)
		}
		x[i] = float64(n)
	}
	if len(parts) == 2 && x[0] >= 24 {
		return math.Round(x[0] + x[1]/60), nil
	}
	return math.Round(x[0]*60 + x[1] + x[2]/60), nil
}

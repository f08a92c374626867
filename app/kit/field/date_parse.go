package field

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// What can be wrong with a typed day or time.
var (
	// ErrNotDay: the text is no day of the calendar.
	ErrNotDay = errors.New("not a day")
	// ErrFuture means: the day is still to come, and the thing has happened.
	ErrFuture = errors.New("the day is still to come")
	// ErrNotTime: the text is no time of day.
	ErrNotTime = errors.New("not a time of day")
)

// The years a day may lie in.
const (
	firstYear = 1900
	lastYear  = 2199
)

// Side says on which side of today a day without its year, or with two figures
// of it, lies.
type Side int

// The sides.
const (
	// Nearest is the nearest such day.
	Nearest Side = iota
	// Past is today or before: a birthday, the day of a test.
	Past
	// Coming is today or after: a review, an event.
	Coming
)

// DayReader reads days as people type them.
type DayReader struct {
	// Today is where "t", "y" and missing years are counted from.
	Today time.Time
	// Months are the twelve names; the first three letters are enough.
	Months []string
	// Between are words of a written day that say nothing: "de" in "14 de mayo".
	Between []string
	// TodayKey and YesterdayKey stand for those days.
	TodayKey, YesterdayKey string
	Side                   Side
}

// Read reads a day: 14.5.2026, 14/5/26, 2026-05-14, 14052026, 14 May, May 14
// 2026. Days come before months except where the year comes first. An empty
// text is an empty day; what is no day is [ErrNotDay], and one that is still to come
// where the thing has happened [ErrFuture].
func (r DayReader) Read(text string) (record.Date, error) {
	day, err := r.read(text)
	if err == nil && r.Side == Past && day > record.DateOf(r.Today) {
		return "", ErrFuture
	}
	return day, err
}

// read reads a day on any side of today.
func (r DayReader) read(text string) (record.Date, error) {
	text = strings.ToLower(strings.TrimSpace(text))
	switch text {
	case "":
		return "", nil
	case r.TodayKey:
		return record.DateOf(r.Today), nil
	case r.YesterdayKey:
		return record.DateOf(r.Today.AddDate(0, 0, -1)), nil
	}
	parts := slices.DeleteFunc(dayParts(text), func(part string) bool { return slices.Contains(r.Between, part) })
	var typed typedDay
	switch len(parts) {
	case 1:
		typed = runTogether(parts[0])
	case 2, 3:
		typed = r.ordered(parts)
	}
	return r.complete(typed)
}

// typedDay is a day as it was typed; the year is 0 when it was left out, and
// twoFigures more when only two figures of it were typed. The zero typedDay is
// no day.
type typedDay struct{ year, month, day int }

// twoFigures marks a year of which only two figures were typed.
const twoFigures = 10000

// dayParts cuts a text into runs of digits and runs of letters.
func dayParts(text string) []string {
	var parts []string
	kind := 0
	for _, c := range text {
		k := 0
		switch {
		case c >= '0' && c <= '9':
			k = 1
		case unicode.IsLetter(c):
			k = 2
		case !strings.ContainsRune(" .,/-\u00a0", c):
			return nil
		}
		if k != 0 && k == kind {
			parts[len(parts)-1] += string(c)
		} else if k != 0 {
			parts = append(parts, string(c))
		}
		kind = k
	}
	return parts
}

// runTogether reads 14052026, 140526 and 20260514.
func runTogether(s string) typedDay {
	n, err := strconv.Atoi(s)
	switch {
	case err != nil:
		return typedDay{}
	case len(s) == 8 && n/10000 >= firstYear && n/10000 <= lastYear:
		return typedDay{n / 10000, n / 100 % 100, n % 100}
	case len(s) == 8 && n%10000 > 0:
		return typedDay{n % 10000, n / 10000 % 100, n / 1000000}
	case len(s) == 6:
		return typedDay{n%100 + twoFigures, n / 100 % 100, n / 10000}
	}
	return typedDay{}
}

// ordered reads two or three parts: day and month, in any order where the
// month is a word, and then the year; or all three with the year first.
func (r DayReader) ordered(parts []string) typedDay {
	if len(parts) == 3 && figures(parts[0]) == 4 {
		parts = []string{parts[2], parts[1], parts[0]}
	}
	if r.monthNamed(parts[0]) > 0 {
		parts[0], parts[1] = parts[1], parts[0]
	}
	d := typedDay{month: r.monthNamed(parts[1])}
	if d.month == 0 && figures(parts[1]) <= 2 {
		d.month, _ = strconv.Atoi(parts[1])
	}
	if figures(parts[0]) <= 2 {
		d.day, _ = strconv.Atoi(parts[0])
	}
	if len(parts) < 3 {
		return d
	}
	d.year, _ = strconv.Atoi(parts[2])
	switch n := figures(parts[2]); {
	case n == 2:
		d.year += twoFigures
	case n != 4 || d.year == 0:
		return typedDay{}
	}
	return d
}

// figures is how many figures a part has; none for a word.
func figures(part string) int {
	if part[0] < '0' || part[0] > '9' {
		return 0
	}
	return len(part)
}

// monthNamed is the number of a month by its name, or its first letters, three
// or more; 0 when it is none.
func (r DayReader) monthNamed(text string) int {
	if len([]rune(text)) < 3 {
		return 0
	}
	for i, name := range r.Months {
		if strings.HasPrefix(words.Slug(name), words.Slug(text)) {
			return i + 1
		}
	}
	return 0
}

// complete finds the year and checks that there is such a day.
func (r DayReader) complete(typed typedDay) (record.Date, error) {
	if typed.year != 0 && typed.year < twoFigures {
		return dayOf(typed.year, typed.month, typed.day)
	}
	best, found := record.Date(""), false
	for _, y := range r.candidates(typed.year) {
		if d, err := dayOf(y, typed.month, typed.day); err == nil && (!found || r.better(d, best)) {
			best, found = d, true
		}
	}
	if !found {
		return "", ErrNotDay
	}
	return best, nil
}

// candidates lists the years a typed one may mean: every century for two
// figures, the years around today (a 29 February among them) for none.
func (r DayReader) candidates(year int) []int {
	var list []int
	if year >= twoFigures {
		for century := firstYear; century <= lastYear; century += 100 {
			list = append(list, century+year-twoFigures)
		}
		return list
	}
	for y := r.Today.Year() - 8; y <= r.Today.Year()+8; y++ {
		list = append(list, y)
	}
	return list
}

// better reports whether a suits the side of today better than b.
func (r DayReader) better(a, b record.Date) bool {
	off := func(d record.Date) float64 {
		t, _ := d.Time()
		today, _ := record.DateOf(r.Today).Time()
		days := t.Sub(today).Hours() / 24
		switch {
		case r.Side == Past && days > 0, r.Side == Coming && days < 0:
			return 1e6 + max(days, -days)
		}
		return max(days, -days)
	}
	return off(a) < off(b)
}

// dayOf makes a day and checks that the calendar has it.
func dayOf(year, month, day int) (record.Date, error) {
	t := time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
	if year < firstYear || year > lastYear || month < 1 || month > 12 || t.Day() != day || t.Month() != time.Month(month) {
		return "", ErrNotDay
	}
	return record.DateOf(t), nil
}

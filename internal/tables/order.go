package tables

import (
	"slices"

	"ebbwell/internal/record"
)

// OrderOpen reports whether day and month of every date could be the other way round, and
// nobody has said which it is.
func (d Draft) OrderOpen() bool {
	return slices.ContainsFunc(d.Questions, func(q Question) bool { return q.Code == QuestionOrder })
}

// TwoDays is a date that can be read in two ways.
type TwoDays struct {
	Text                 string
	DayFirst, MonthFirst record.Date
}

// BothWays lists the first dates of a file that are another day when day and month are
// read the other way round.
func BothWays(b Book, m Mapping, today record.Date, most int) []TwoDays {
	s, ok := m.Find(b)
	column := m.first(Date)
	if !ok || column < 0 {
		return nil
	}
	var list []TwoDays
	for _, row := range m.Rows(s) {
		text := s.At(row, column).Text
		day, _, err1 := parseDay(text, DayMonthYear, today, true)
		month, _, err2 := parseDay(text, MonthDayYear, today, true)
		if err1 != nil || err2 != nil || day == month {
			continue
		}
		if list = append(list, TwoDays{text, day, month}); len(list) == most {
			break
		}
	}
	return list
}

package amount

import (
	"time"

	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// Speaker words what is shown for one reader: texts in their language, amounts
// in the units of the practice, days as they are said today. The desk makes it;
// where body mass is hidden it speaks of litres only. A screen that has
// sentences of its own embeds it.
type Speaker struct {
	Words *words.Words
	By    Writer
	// Today is the present day: dates of other years are written with theirs.
	Today time.Time
}

// Say is a text of the catalogue.
func (sp Speaker) Say(key string, args ...any) string { return sp.Words.Say(key, args...) }

// Day writes a day without its year where it is this year's.
func (sp Speaker) Day(t time.Time) string {
	if t.Year() == sp.Today.Year() {
		return sp.Words.Day(t)
	}
	return sp.Words.Date(t)
}

// Dated is [Speaker.Day] for a day as it is kept; other stands for one that is
// not known.
func (sp Speaker) Dated(d record.Date, other string) string {
	if t, ok := d.Time(); ok {
		return sp.Day(t)
	}
	return other
}

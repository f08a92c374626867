package amount

import (
	"strings"
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

// Symbol is the word for a symbol of a formula; keyOf is the key of the text of one,
// and of "numbered": one of several keeps its number. A symbol without a word stands
// as it is.
func (sp Speaker) Symbol(symbol string, keyOf func(symbol string) string) string {
	base := strings.TrimRight(symbol, "0123456789")
	key := keyOf(base)
	if !sp.Words.Has(key) {
		return symbol
	}
	if number := symbol[len(base):]; number != "" {
		return sp.Say(keyOf("numbered"), sp.Say(key), number)
	}
	return sp.Say(key)
}

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

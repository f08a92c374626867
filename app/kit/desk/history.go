package desk

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// HistoryEntry is one change of a record as it is read: what, from what to
// what, when and by whom, and why.
type HistoryEntry struct{ What, Change, When, Why string }

// NewHistoryEntry says when, by whom and why a change was made. Where body mass
// is hidden a reason with figures in it is not told: it may hold a weighing.
func NewHistoryEntry(sp amount.Speaker, c record.Change, hidden bool) HistoryEntry {
	at := c.At.In(sp.Today.Location())
	e := HistoryEntry{When: sp.Say("profile.history.when", sp.Words.Date(at), sp.Words.Clock(at), c.By), Why: c.Why}
	if hidden && strings.ContainsAny(e.Why, "0123456789") {
		e.Why = ""
	}
	return e
}

// HistoryPath splits the path of a change into the field and its ending:
// [store.RawEnding], [store.ReasonEnding] or none.
func HistoryPath(field string) (path, ending string) {
	for _, end := range []string{store.RawEnding, store.ReasonEnding} {
		if cut, ok := strings.CutSuffix(field, end); ok {
			return cut, end
		}
	}
	return field, ""
}

// HistoryField is the word for a field with the ending of its path.
func HistoryField(sp amount.Speaker, word, ending string) string {
	switch ending {
	case store.RawEnding:
		return sp.Say("profile.history.typed", word)
	case store.ReasonEnding:
		return sp.Say("profile.history.reason", word)
	}
	return word
}

// HistoryChange says from what to what; value words a value that is there.
func HistoryChange(sp amount.Speaker, c record.Change, value func(string) string) string {
	switch {
	case c.Before == "" && c.After == store.Present:
		return sp.Say("profile.history.made")
	case c.Before == store.Present && c.After == "":
		return sp.Say("profile.history.removed")
	}
	say := func(text string) string {
		if text == "" {
			return sp.Say("profile.history.nothing")
		}
		return value(text)
	}
	return sp.Say("profile.history.change", say(c.Before), say(c.After))
}

// HistoryBox shows an entry.
func HistoryBox(sp amount.Speaker, e HistoryEntry) fyne.CanvasObject {
	box := look.VBox(0, look.NewParagraph(e.What+": "+e.Change, look.Note, look.Ink), look.NewParagraph(e.When, look.Note, look.Ink2))
	if e.Why != "" {
		box.Add(look.NewParagraph(sp.Say("profile.history.why", e.Why), look.Note, look.Ink2))
	}
	return box
}

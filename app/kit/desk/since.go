package desk

import (
	"strings"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

// SinceSentence says what was corrected of the records an agreed plan is based on,
// with what it was and is; empty where nothing was.
func SinceSentence(w *words.Words, by amount.Writer, s consult.Since) string {
	switch {
	case !s.Changed:
		return ""
	case s.Gone:
		return w.Say("since.gone")
	case s.Test.ID != "" && s.Before.Known && s.After.Known && by.Found(s.Before) != by.Found(s.After):
		return w.Say("since.test", w.Day(s.On), by.Found(s.Before), by.Found(s.After))
	case s.Test.ID != "":
		return w.Say("since.test.undated")
	case s.Products:
		return w.Say("since.products")
	}
	return w.Say("since.other")
}

// SinceWords are [SinceSentence], the steps that are above the limit by now, and
// that nothing changes by itself; name says what a step is called by its place.
func SinceWords(w *words.Words, by amount.Writer, c consult.Case, name func(place int) string) string {
	first := SinceSentence(w, by, c.Since)
	if first == "" {
		return ""
	}
	list := []string{first}
	for _, h := range c.AboveLimit() {
		list = append(list, w.Say("since.over", name(h.Place), by.Amount(h.FluidL, quantity.Litre), by.Amount(h.LimitL, quantity.Litre)))
	}
	return strings.Join(append(list, w.Say("since.stays")), " ")
}

package desk

import (
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/words"
)

// Statements word what is known and no figure follows from, by the ids of
// [evidence.Statements], each with its source and how surely that was read. What is in
// per cent of body mass is left out where that is hidden.
func Statements(w *words.Words, hidden bool, ids ...string) []string {
	var list []string
	for _, s := range evidence.Statements() {
		if !slices.Contains(ids, s.ID) || s.ID == "deficit.by-heat" && hidden {
			continue
		}
		list = append(list, w.Say("findings.statement", w.Say("statement."+s.ID), s.Source.Name(w.Say), Sureness(w, s.Sure)))
	}
	return list
}

package desk

import (
	"strconv"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/sweat"
	"ebbwell/internal/words"
)

// NoteSentence says a note that stands beside a figure.
func NoteSentence(sp amount.Speaker, n figure.Note) string {
	args := make([]any, len(n.Args))
	for i, x := range n.Args {
		if u := noteUnit(n.ID); u != quantity.None {
			args[i] = sp.By.Amount(x, u)
		} else {
			args[i] = plain(sp.Words, x)
		}
	}
	return sp.Say(n.ID, args...)
}

// noteUnit is the unit of the numbers of a note that has them with their unit, in
// the reader's; none where the text names a unit everybody reads.
func noteUnit(id string) quantity.Unit {
	switch id {
	case sweat.NoteAsWeighed, sweat.NoteSharedBottles:
		return quantity.Litre
	case sweat.NoteRateAsWeighed, sweat.NoteDayToDay:
		return quantity.LitrePerHour
	}
	return quantity.None
}

// MissingSentence says what is missing and what that may do to the loss.
func MissingSentence(sp amount.Speaker, m sweat.Missing) string {
	text := sp.Say(m.ID)
	if m.Item > 0 {
		text = sp.Say(m.ID, strconv.Itoa(m.Item))
	}
	low, high := m.Effect.Low, m.Effect.High
	switch {
	case high > 0 && low >= 0:
		text += " " + sp.Say("missing.effect.high", sp.By.Number(low, quantity.Litre), sp.By.Amount(high, quantity.Litre))
	case low < 0 && high <= 0:
		text += " " + sp.Say("missing.effect.low", sp.By.Number(-high, quantity.Litre), sp.By.Amount(-low, quantity.Litre))
	}
	return text
}

// Sureness says how surely a line of the evidence was read.
func Sureness(w *words.Words, s evidence.Sureness) string { return w.Say("sure." + string(s)) }

package desk

import (
	"strconv"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/sweat"
	"ebbwell/internal/words"
)

// NoteSentence says a note that stands beside a figure.
func NoteSentence(w *words.Words, n figure.Note) string {
	args := make([]any, len(n.Args))
	for i, x := range n.Args {
		args[i] = plain(w, x)
	}
	return w.Say(n.ID, args...)
}

// MissingSentence says what is missing and what that may do to the loss.
func MissingSentence(w *words.Words, m sweat.Missing) string {
	text := w.Say(m.ID)
	if m.Item > 0 {
		text = w.Say(m.ID, strconv.Itoa(m.Item))
	}
	low, high := m.Effect.Low, m.Effect.High
	switch {
	case high > 0 && low >= 0:
		text += " " + w.Say("missing.effect.high", two(w, low), two(w, high))
	case low < 0 && high <= 0:
		text += " " + w.Say("missing.effect.low", two(w, -high), two(w, -low))
	}
	return text
}

// two writes a number with two decimals at the most.
func two(w *words.Words, x float64) string { return plain(w, quantity.Round(x, 2)) }

// Sureness says how surely a line of the evidence was read.
func Sureness(w *words.Words, s evidence.Sureness) string { return w.Say("sure." + string(s)) }
